//! The parts of a message, one after the other: each behind its length in bytes and a colon, so that every text passes
//! as it is, whatever stands in it.

use core::fmt::{Display, Write};
use core::str::FromStr;

use slotwright_core::choice::Choice;

/// Puts parts together.
#[derive(Debug, Default)]
pub struct Writer(String);

impl Writer {
    /// A text.
    pub fn text(&mut self, text: &str) {
        // Writing to a String cannot fail.
        let _ = write!(self.0, "{}:{text}", text.len());
    }

    /// What can be said in a word.
    pub fn say<T: Display>(&mut self, word: &T) {
        self.text(&word.to_string());
    }

    /// A choice.
    pub fn choice(&mut self, choice: &Choice) {
        self.text(&choice.to_compact());
    }

    /// Whether something holds.
    pub fn flag(&mut self, holds: bool) {
        self.text(if holds { "1" } else { "" });
    }

    /// Something that may be missing.
    pub fn option<T>(&mut self, option: Option<&T>, mut write: impl FnMut(&mut Self, &T)) {
        self.flag(option.is_some());
        if let Some(value) = option {
            write(self, value);
        }
    }

    /// Several things of a kind.
    pub fn list<T>(&mut self, list: &[T], mut write: impl FnMut(&mut Self, &T)) {
        self.say(&list.len());
        for value in list {
            write(self, value);
        }
    }

    /// All of them.
    pub fn into_text(self) -> String {
        self.0
    }
}

/// Takes them apart. Each function gives `None` where something else stands.
#[derive(Debug)]
pub struct Parts<'a>(&'a str);

impl<'a> Parts<'a> {
    /// Those of a message.
    pub const fn of(text: &'a str) -> Self {
        Self(text)
    }

    /// A text.
    pub fn text(&mut self) -> Option<&'a str> {
        let (length, rest) = self.0.split_once(':')?;
        let (text, rest) = rest.split_at_checked(length.parse().ok()?)?;
        self.0 = rest;
        Some(text)
    }

    /// A text to keep.
    pub fn owned(&mut self) -> Option<String> {
        self.text().map(String::from)
    }

    /// What was said in a word.
    pub fn parse<T: FromStr>(&mut self) -> Option<T> {
        self.text()?.parse().ok()
    }

    /// A choice.
    pub fn choice(&mut self) -> Option<Choice> {
        Choice::of_compact(self.text()?)
    }

    /// Whether something holds.
    pub fn flag(&mut self) -> Option<bool> {
        self.text().map(|text| !text.is_empty())
    }

    /// Something that may be missing.
    pub fn option<T>(&mut self, read: impl FnOnce(&mut Self) -> Option<T>) -> Option<Option<T>> {
        Some(if self.flag()? { Some(read(self)?) } else { None })
    }

    /// Several things of a kind.
    pub fn list<T>(&mut self, mut read: impl FnMut(&mut Self) -> Option<T>) -> Option<Vec<T>> {
        let count: usize = self.parse()?;
        (0..count).map(|_| read(self)).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_text_passes_as_it_is() {
        let texts = ["", "3:abc", "a\u{1f}b\n:", "\u{20ac}\u{202f}1\u{202f}204.00", "12"];
        let mut writer = Writer::default();
        writer.list(&texts, |writer, text| writer.text(text));
        writer.option(None::<&u8>, Writer::say);
        writer.option(Some(&7_u8), Writer::say);
        writer.flag(false);
        let text = writer.into_text();
        let mut parts = Parts::of(&text);
        assert_eq!(parts.list(Parts::text).as_deref(), Some(&texts[..]));
        assert_eq!((parts.option(Parts::parse::<u8>), parts.option(Parts::parse::<u8>)), (Some(None), Some(Some(7))));
        assert_eq!((parts.flag(), parts.text()), (Some(false), None));
    }

    #[test]
    fn what_was_not_written_so_is_nothing() {
        for text in ["", "5", "x:abc", "4:abc", "1:\u{20ac}", "-1:a", "99999999999999999999:a"] {
            assert_eq!(Parts::of(text).text(), None, "{text}");
        }
        // A length that nobody could hold takes no memory.
        assert_eq!(Parts::of("10:4000000000").list(Parts::text), None);
    }
}

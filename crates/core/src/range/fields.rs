//! Reading the keys of a table one by one, each problem logged with its place.
//!
//! A key that is missing or of the wrong kind gives a neutral value and a problem; the whole is
//! thrown away in the end if there is any. Reading goes on, so that all problems come together.

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::read_log::ReadLog;
use super::wrong::{Found, Wanted, Wrong};
use super::{Key, OrdersTo};
use crate::input::members::{is_seen, may_stand};
use crate::units::day::Day;
use crate::units::decimal::read_decimal;
use crate::units::money::Money;
use crate::units::quantity::{Dim, Length};

/// Most characters of a text.
pub const TEXT_MOST: usize = 200;

/// The keys of one table that were not read yet.
#[derive(Debug)]
pub(crate) struct Fields<'a> {
    table: DeTable<'a>,
    path: String,
    offset: usize,
    /// Whether there is no such table: then that was the problem, and all of it is neutral.
    lost: bool,
    log: &'a mut ReadLog,
}

impl<'a> Fields<'a> {
    pub(crate) fn new(table: DeTable<'a>, log: &'a mut ReadLog) -> Self {
        Self { table, path: String::new(), offset: 0, lost: false, log }
    }

    fn path_of(&self, name: &str) -> String {
        if self.path.is_empty() { name.into() } else { format!("{}.{name}", self.path) }
    }

    fn problem(&mut self, offset: usize, name: &str, wrong: Wrong) {
        if !self.lost {
            let path = self.path_of(name);
            self.log.problems.push((offset, path, wrong));
        }
    }

    /// Whether a key that may be left out is there.
    pub(crate) fn has(&mut self, name: &str) -> bool {
        let has = self.table.contains_key(name);
        if !has && !self.lost {
            let path = self.path_of(name);
            self.log.absent.push(path);
        }
        has
    }

    /// The value of a key, which is then read.
    fn take(&mut self, name: &str) -> Option<Spanned<DeValue<'a>>> {
        let Some(value) = self.table.remove(name) else {
            self.problem(self.offset, name, Wrong::Missing);
            return None;
        };
        let path = self.path_of(name);
        self.log.places.insert(path, value.span().start);
        Some(value)
    }

    fn mistyped(&mut self, name: &str, offset: usize, wanted: Wanted, found: &DeValue<'_>) {
        let wrong = Wrong::Kind { wanted, found: quoted(found) };
        self.problem(offset, name, wrong);
    }

    /// A number; an integer will do.
    pub(crate) fn number(&mut self, name: &str) -> f64 {
        let Some(value) = self.take(name) else { return 0.0 };
        self.number_of(name, value)
    }

    fn number_of(&mut self, name: &str, value: Spanned<DeValue<'_>>) -> f64 {
        let (offset, value) = (value.span().start, value.into_inner());
        let number = match &value {
            DeValue::Integer(integer) if integer.radix() == 10 => read_decimal(integer.as_str()),
            DeValue::Float(float) => read_decimal(float.as_str()),
            _ => None,
        };
        number.unwrap_or_else(|| {
            self.mistyped(name, offset, Wanted::Number, &value);
            0.0
        })
    }

    /// A whole number up to `most`.
    pub(crate) fn whole(&mut self, name: &str, most: u32) -> u32 {
        let Some(value) = self.take(name) else { return 0 };
        self.whole_of(name, most, value)
    }

    fn whole_of(&mut self, name: &str, most: u32, value: Spanned<DeValue<'_>>) -> u32 {
        let (offset, value) = (value.span().start, value.into_inner());
        let number = match &value {
            DeValue::Integer(integer) if integer.radix() == 10 => integer.as_str().parse().ok(),
            _ => None,
        };
        number.filter(|number| *number <= most).unwrap_or_else(|| {
            let wrong = Wrong::Kind { wanted: Wanted::Whole { most }, found: quoted(&value) };
            self.problem(offset, name, wrong);
            0
        })
    }

    /// A whole number up to 255.
    pub(crate) fn small(&mut self, name: &str) -> u8 {
        u8::try_from(self.whole(name, 255)).unwrap_or(u8::MAX)
    }

    /// A length in millimetres.
    pub(crate) fn length(&mut self, name: &str) -> Length {
        Length::mm(self.number(name))
    }

    /// A length that people pick: millimetres with at most one decimal.
    pub(crate) fn dim(&mut self, name: &str) -> Dim {
        let number = self.number(name);
        self.dim_of(name, number)
    }

    fn dim_of(&mut self, name: &str, number: f64) -> Dim {
        Dim::try_from(number).unwrap_or_else(|wrong| {
            let offset = self.log.places.get(&self.path_of(name)).copied().unwrap_or(self.offset);
            self.problem(offset, name, Wrong::Dim(wrong));
            Dim::default()
        })
    }

    /// An amount in minor units.
    pub(crate) fn money(&mut self, name: &str) -> Money {
        Money::minor(self.whole(name, u32::MAX).into())
    }

    /// A text of at most [`TEXT_MOST`] characters.
    pub(crate) fn text(&mut self, name: &str) -> String {
        let Some(value) = self.take(name) else { return String::new() };
        self.text_of(name, value)
    }

    fn text_of(&mut self, name: &str, value: Spanned<DeValue<'_>>) -> String {
        let offset = value.span().start;
        match value.into_inner() {
            DeValue::String(text) if is_printable(&text) => text.into_owned(),
            other => {
                self.mistyped(name, offset, Wanted::Text { most: TEXT_MOST }, &other);
                String::new()
            }
        }
    }

    /// A text that says what it is by itself: a key, a day.
    fn parsed<T>(&mut self, name: &str, value: Spanned<DeValue<'_>>) -> Option<T>
    where
        T: core::str::FromStr,
        T::Err: Into<Wrong>,
    {
        let offset = value.span().start;
        let text = self.text_of(name, value);
        match text.parse() {
            Ok(parsed) => Some(parsed),
            Err(wrong) => {
                self.problem(offset, name, wrong.into());
                None
            }
        }
    }

    /// A key; for one that cannot be read stands the last part of the table's own path.
    pub(crate) fn key(&mut self, name: &str) -> Key {
        let key = self.take(name).and_then(|value| self.parsed(name, value));
        key.unwrap_or_else(|| Key::unread(self.path.rsplit('.').next().unwrap_or_default()))
    }

    /// A day.
    pub(crate) fn day(&mut self, name: &str) -> Day {
        self.take(name).and_then(|value| self.parsed(name, value)).unwrap_or(Day::LAST)
    }

    /// Where orders go.
    pub(crate) fn orders_to(&mut self, name: &str) -> Option<OrdersTo> {
        self.take(name).and_then(|value| self.parsed(name, value))
    }

    /// One word of a few.
    pub(crate) fn word<T: Copy>(&mut self, name: &str, words: &[(&'static str, T)], neutral: T) -> T {
        let Some(value) = self.take(name) else { return neutral };
        let offset = value.span().start;
        let text = self.text_of(name, value);
        self.word_of(name, offset, &text, words).unwrap_or(neutral)
    }

    fn word_of<T: Copy>(&mut self, name: &str, offset: usize, text: &str, words: &[(&'static str, T)]) -> Option<T> {
        let at = self.which(name, offset, text, &mut words.iter().map(|(word, _)| *word))?;
        words.get(at).map(|(_, meaning)| *meaning)
    }

    /// Which of these words it is.
    fn which(
        &mut self,
        name: &str,
        offset: usize,
        text: &str,
        words: &mut dyn Iterator<Item = &'static str>,
    ) -> Option<usize> {
        let words: Vec<&'static str> = words.collect();
        let at = words.iter().position(|word| *word == text);
        if at.is_none() {
            self.problem(offset, name, Wrong::Word { found: text.chars().take(40).collect(), wanted: words });
        }
        at
    }

    /// A list of words of a few.
    pub(crate) fn words<T: Copy>(&mut self, name: &str, words: &[(&'static str, T)]) -> Vec<T> {
        self.elements(name, |fields, value| {
            let offset = value.span().start;
            let text = fields.text_of(name, value);
            fields.word_of(name, offset, &text, words)
        })
    }

    /// A list of keys.
    pub(crate) fn keys(&mut self, name: &str) -> Vec<Key> {
        self.elements(name, |fields, value| fields.parsed(name, value))
    }

    /// A list of days.
    pub(crate) fn days(&mut self, name: &str) -> Vec<Day> {
        self.elements(name, |fields, value| fields.parsed(name, value))
    }

    /// A list of lengths that people pick.
    pub(crate) fn dims(&mut self, name: &str) -> Vec<Dim> {
        self.elements(name, |fields, value| {
            let number = fields.number_of(name, value);
            Some(fields.dim_of(name, number))
        })
    }

    /// A list of lengths in millimetres.
    pub(crate) fn lengths(&mut self, name: &str) -> Vec<Length> {
        self.elements(name, |fields, value| Some(Length::mm(fields.number_of(name, value))))
    }

    /// A list of whole numbers up to 255.
    pub(crate) fn smalls(&mut self, name: &str) -> Vec<u8> {
        self.elements(name, |fields, value| u8::try_from(fields.whole_of(name, 255, value)).ok())
    }

    /// `true` or `false`.
    pub(crate) fn truth(&mut self, name: &str) -> bool {
        let Some(value) = self.take(name) else { return false };
        let (offset, value) = (value.span().start, value.into_inner());
        value.as_bool().unwrap_or_else(|| {
            self.mistyped(name, offset, Wanted::Truth, &value);
            false
        })
    }

    fn elements<T>(
        &mut self,
        name: &str,
        mut read: impl FnMut(&mut Self, Spanned<DeValue<'_>>) -> Option<T>,
    ) -> Vec<T> {
        let mut all = Vec::new();
        self.each_element(name, &mut |fields, value| all.extend(read(fields, value)));
        all
    }

    // What follows reads through a callback, so that it is there once and not for each type: the page pays for each byte.
    fn each_element(&mut self, name: &str, read: &mut dyn FnMut(&mut Self, Spanned<DeValue<'a>>)) {
        let Some(value) = self.take(name) else { return };
        let (offset, value) = (value.span().start, value.into_inner());
        match value {
            DeValue::Array(elements) => elements.into_iter().for_each(|element| read(self, element)),
            other => self.mistyped(name, offset, Wanted::List, &other),
        }
    }

    /// A table that has to be there; for one that cannot be read stand its neutral values.
    pub(crate) fn section<T>(&mut self, name: &str, read: fn(&mut Fields<'_>) -> T) -> T {
        let mut fields = self.open(name);
        let section = read(&mut fields);
        fields.done();
        section
    }

    /// A table, read by its own function.
    pub(crate) fn table<T>(&mut self, name: &str, read: fn(&mut Fields<'_>) -> T) -> Option<T> {
        let mut fields = self.open(name);
        if fields.lost {
            return None;
        }
        let table = read(&mut fields);
        fields.done();
        Some(table)
    }

    fn open(&mut self, name: &str) -> Fields<'_> {
        match self.take(name) {
            Some(value) => self.within(name, value),
            None => self.lose(name),
        }
    }

    /// A list of tables, each read on its own.
    pub(crate) fn tables<T>(&mut self, name: &str, read: fn(&mut Fields<'_>) -> T) -> Vec<T> {
        let mut all = Vec::new();
        self.each_table(name, &mut |fields| all.push(read(fields)));
        all
    }

    fn each_table(&mut self, name: &str, read: &mut dyn FnMut(&mut Fields<'_>)) {
        let mut number = 0;
        self.each_element(name, &mut |fields, value| {
            number += 1;
            let key = value.get_ref().as_table().and_then(|table| table.get("key"));
            let own = key.and_then(|key| key.get_ref().as_str()).and_then(|key| key.parse::<Key>().ok());
            let name = format!("{name}.{}", own.map_or_else(|| number.to_string(), String::from));
            let path = fields.path_of(&name);
            fields.log.places.insert(path, value.span().start);
            let mut fields = fields.within(&name, value);
            if !fields.lost {
                read(&mut fields);
                fields.done();
            }
        });
    }

    /// The keys of a value that should be a table.
    fn within(&mut self, name: &str, value: Spanned<DeValue<'a>>) -> Fields<'_> {
        let (offset, value) = (value.span().start, value.into_inner());
        match value {
            DeValue::Table(table) => {
                Fields { table, path: self.path_of(name), offset, lost: self.lost, log: &mut *self.log }
            }
            other => {
                self.mistyped(name, offset, Wanted::Table, &other);
                self.lose(name)
            }
        }
    }

    /// The keys of a table that is not there.
    fn lose(&mut self, name: &str) -> Fields<'_> {
        let path = self.path_of(name);
        Fields { table: DeTable::new(), path, offset: self.offset, lost: true, log: &mut *self.log }
    }

    /// Either a bare word or a table, whichever stands there.
    pub(crate) fn is_table(&self, name: &str) -> bool {
        self.table.get(name).is_some_and(|value| value.get_ref().is_table())
    }

    /// Keys that nobody read have no meaning.
    pub(crate) fn done(&mut self) {
        let strange: Vec<(usize, String)> =
            self.table.keys().map(|key| (key.span().start, key.get_ref().to_string())).collect();
        for (offset, name) in strange {
            self.problem(offset, &name.chars().take(60).collect::<String>(), Wrong::Strange);
        }
    }
}

/// A value as messages show it.
fn quoted(value: &DeValue<'_>) -> Found {
    match value {
        DeValue::String(text) => {
            let cut: String = text.chars().take(40).collect();
            let whole = (cut.len() < text.len()).then(|| text.chars().count());
            Found::Text { cut, whole }
        }
        DeValue::Integer(number) => Found::Number(number.as_str().chars().take(40).collect()),
        DeValue::Float(number) => Found::Number(number.as_str().chars().take(40).collect()),
        DeValue::Boolean(_) => Found::Truth,
        DeValue::Datetime(_) => Found::Date,
        DeValue::Array(_) => Found::List,
        DeValue::Table(_) => Found::Table,
    }
}

/// Neither blank nor too long, and no character that does something to a screen or means nothing.
fn is_printable(text: &str) -> bool {
    text.chars().count() <= TEXT_MOST && text.chars().any(is_seen) && text.chars().all(may_stand)
}

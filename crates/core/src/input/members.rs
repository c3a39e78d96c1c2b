//! Reading JSON member by member, each fault with its JSON pointer (RFC 6901).

use serde_json::error::Category;
use serde_json::{Deserializer, Map, Value};

use crate::input::fault::{Fault, NotJson, ReadError, Wanted};
use crate::input::seal::canonical;
use crate::input::spelling::nearest;
use crate::input::strict::{Strict, TWICE};
use crate::units::quantity::Dim;

/// The byte order mark that some editors put before a text.
const MARK: char = '\u{feff}';

/// Parses JSON; no object may name a member twice.
///
/// # Errors
///
/// [`ReadError::NotJson`] with its place.
pub fn parse(text: &str) -> Result<Value, ReadError> {
    if text.starts_with(MARK) {
        return Err(ReadError::NotJson(NotJson::Marked));
    }
    if text.trim().is_empty() {
        return Err(ReadError::NotJson(NotJson::Empty));
    }
    let mut reader = Deserializer::from_str(text);
    let value = serde::Deserialize::deserialize(&mut reader);
    let read = value.map_err(|error| broken(&error)).and_then(|Strict(value)| match reader.end() {
        Ok(()) => Ok(value),
        Err(error) => Err(more(text, error.line(), error.column())),
    });
    read.map_err(ReadError::NotJson)
}

/// Why the first document of a text cannot be read.
fn broken(error: &serde_json::Error) -> NotJson {
    let (line, said) = (error.line(), error.to_string());
    match (error.classify(), said.strip_prefix(TWICE).and_then(|said| said.rsplit_once(TWICE))) {
        (_, Some((name, _))) => NotJson::Twice { name: shown(name), line },
        (Category::Eof, _) => NotJson::EndsEarly { line },
        (Category::Syntax | Category::Data | Category::Io, _) => NotJson::Other(shown(&said)),
    }
}

/// What follows the first document of a text: another one, or something else.
fn more(text: &str, line: usize, column: usize) -> NotJson {
    let rest = text.lines().nth(line.saturating_sub(1)).and_then(|rest| rest.get(column.saturating_sub(1)..));
    if rest.is_some_and(|rest| rest.starts_with(['{', '['])) {
        NotJson::Several { line }
    } else {
        NotJson::More { line, column }
    }
}

/// Outside text in a message: quoted, cut, escaped.
pub(crate) fn quoted(value: &Value) -> String {
    let text = canonical(value);
    let cut: String = text.chars().take(60).collect();
    let shown = shown(&cut);
    if cut.len() < text.len() { format!("{shown}…") } else { shown }
}

/// The same with every character that would do something to a screen written as its number.
pub(crate) fn shown(text: &str) -> String {
    let visible = |character: char| !character.is_control() && !is_unseen(character);
    text.chars()
        .map(
            |character| if visible(character) { character.to_string() } else { character.escape_unicode().to_string() },
        )
        .collect()
}

/// Characters that are not seen but reorder, break or hide what is.
// Source: Unicode Standard, general categories Cf, Zl and Zp; those of them that text may carry in.
pub(crate) fn is_unseen(character: char) -> bool {
    matches!(character,
        '\u{ad}' | '\u{61c}' | '\u{180e}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}'
        | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e007f}')
}

/// Characters that may stand in a text that people read: the joiners, which other scripts need, among them.
// Source: Unicode Standard, 9.2 and 12.1: ZWNJ and ZWJ decide which letter is shown. General category Co and the
// noncharacters (23.7) mean nothing to anybody else.
pub(crate) fn may_stand(character: char) -> bool {
    let joins = matches!(character, '\u{200c}' | '\u{200d}');
    let private = matches!(character, '\u{e000}'..='\u{f8ff}' | '\u{f0000}'..);
    let none = matches!(character, '\u{fdd0}'..='\u{fdef}') || u32::from(character) & 0xfffe == 0xfffe;
    !character.is_control() && (joins || !is_unseen(character)) && !private && !none
}

/// Characters of which something can be seen; letters that fill a place are none.
// Source: Unicode Character Database, Default_Ignorable_Code_Point; and the blank pattern of Braille.
pub(crate) fn is_seen(character: char) -> bool {
    let empty = matches!(character,
        '\u{34f}' | '\u{115f}' | '\u{1160}' | '\u{17b4}' | '\u{17b5}' | '\u{180b}'..='\u{180f}' | '\u{2800}'
        | '\u{3164}' | '\u{fe00}'..='\u{fe0f}' | '\u{ffa0}' | '\u{e0100}'..='\u{e01ef}');
    !character.is_whitespace() && !is_unseen(character) && !empty
}

/// A whole number, however it is written: `1`, `1.0` and `1e0` are one number in JSON.
pub(crate) fn whole(value: &Value) -> Option<i64> {
    // 2⁵³: up to there every whole number has its own double.
    let exact = |number: &f64| number.fract() == 0.0 && number.abs() <= 9_007_199_254_740_992.0;
    #[expect(clippy::cast_possible_truncation, reason = "whole and within 2⁵³")]
    value.as_i64().or_else(|| value.as_f64().filter(exact).map(|number| number as i64))
}

fn fault(pointer: &str, fault: impl Into<Fault>) -> ReadError {
    ReadError::Field { pointer: pointer.into(), fault: fault.into() }
}

/// A value and where it stands.
#[derive(Clone, Debug)]
pub struct Place {
    value: Value,
    pointer: String,
}

impl Place {
    /// The whole of a document.
    pub fn whole(value: Value) -> Self {
        Self { value, pointer: String::new() }
    }

    /// A fault at this place: something else was expected.
    ///
    /// # Errors
    ///
    /// Always.
    pub fn refuse<T>(&self, wanted: Wanted) -> Result<T, ReadError> {
        Err(fault(&self.pointer, Fault::Kind { wanted, found: quoted(&self.value) }))
    }

    /// A finite number.
    ///
    /// # Errors
    ///
    /// Something else stands there.
    pub fn number(self) -> Result<f64, ReadError> {
        self.value.as_f64().map_or_else(|| self.refuse(Wanted::Number), Ok)
    }

    /// A whole number between two bounds.
    ///
    /// # Errors
    ///
    /// Something else stands there.
    pub fn whole_between(self, least: i64, most: i64) -> Result<i64, ReadError> {
        let whole = whole(&self.value).filter(|number| (least..=most).contains(number));
        whole.map_or_else(|| self.refuse(Wanted::Whole { least, most }), Ok)
    }

    /// A whole number from 0 to 255.
    pub(crate) fn small(self) -> Result<u8, ReadError> {
        self.whole_between(0, 255).map(|number| u8::try_from(number).unwrap_or(u8::MAX))
    }

    /// A length that people pick.
    pub(crate) fn dim(self) -> Result<Dim, ReadError> {
        let pointer = self.pointer.clone();
        Dim::try_from(self.number()?).map_err(|wrong| fault(&pointer, wrong))
    }

    /// A text.
    ///
    /// # Errors
    ///
    /// Something else stands there.
    pub fn text(self) -> Result<String, ReadError> {
        match self.value {
            Value::String(text) => Ok(text),
            _ => self.refuse(Wanted::Text),
        }
    }

    /// Yes or no.
    ///
    /// # Errors
    ///
    /// Something else stands there.
    pub fn flag(self) -> Result<bool, ReadError> {
        self.value.as_bool().map_or_else(|| self.refuse(Wanted::Flag), Ok)
    }

    /// A text that says by itself what it is: a key, a day, a digest.
    ///
    /// # Errors
    ///
    /// Something else stands there.
    pub fn parsed<T>(self) -> Result<T, ReadError>
    where
        T: core::str::FromStr,
        T::Err: Into<Fault>,
    {
        let pointer = self.pointer.clone();
        self.text()?.parse().map_err(|wrong: T::Err| fault(&pointer, wrong))
    }

    /// A list, each element read by `read`.
    ///
    /// # Errors
    ///
    /// Something else stands there, or in the list.
    pub fn list<T>(self, read: fn(Self) -> Result<T, ReadError>) -> Result<Vec<T>, ReadError> {
        let Value::Array(elements) = self.value else { return self.refuse(Wanted::List) };
        let places = elements.into_iter().enumerate();
        places.map(|(at, value)| read(Self { value, pointer: format!("{}/{at}", self.pointer) })).collect()
    }

    /// A list of two, each read by `read`.
    ///
    /// # Errors
    ///
    /// Something else stands there, or in the list.
    pub fn pair<T>(self, read: fn(Self) -> Result<T, ReadError>) -> Result<[T; 2], ReadError> {
        let elements = self.value.as_array().and_then(|elements| <&[Value; 2]>::try_from(elements.as_slice()).ok());
        let Some([first, second]) = elements else { return self.refuse(Wanted::Pair) };
        let place = |at, value: &Value| Self { value: value.clone(), pointer: format!("{}/{at}", self.pointer) };
        Ok([read(place(0, first))?, read(place(1, second))?])
    }

    /// An object.
    ///
    /// # Errors
    ///
    /// Something else stands there.
    pub fn members(self) -> Result<Members, ReadError> {
        match self.value {
            Value::Object(members) => Ok(Members { unread: members, pointer: self.pointer, absent: Vec::new() }),
            _ => self.refuse(Wanted::Object),
        }
    }

    /// The name of this member, which says by itself what it is.
    pub(crate) fn key_of<T>(&self, name: &str) -> Result<T, ReadError>
    where
        T: core::str::FromStr,
        T::Err: Into<Fault>,
    {
        name.parse().map_err(|wrong: T::Err| fault(&self.pointer, wrong))
    }

    /// Whether it is a text.
    pub(crate) fn is_text(&self) -> bool {
        self.value.is_string()
    }

    /// Whether it is this text.
    pub fn is(&self, text: &str) -> bool {
        self.value == text
    }
}

/// The members of an object that were not read yet.
#[derive(Debug)]
pub struct Members {
    unread: Map<String, Value>,
    pointer: String,
    /// What may be there and is not.
    absent: Vec<&'static str>,
}

impl Members {
    fn pointer_of(&self, name: &str) -> String {
        let token: String = name.replace('~', "~0").replace('/', "~1").chars().take(60).collect();
        format!("{}/{}", self.pointer, shown(&token))
    }

    /// A member that must be there. Where one of nearly the same name is there, that name was meant.
    ///
    /// # Errors
    ///
    /// It is not there.
    pub fn take(&mut self, name: &'static str) -> Result<Place, ReadError> {
        let place = self.remove(name);
        place.ok_or_else(|| match nearest(name, self.unread.keys().map(String::as_str)) {
            Some(near) => fault(&self.pointer_of(near), Fault::Misspelt { meant: name }),
            None => fault(&self.pointer, Fault::Missing(name)),
        })
    }

    /// A member that may be there; `null` is the same as none.
    pub fn maybe(&mut self, name: &'static str) -> Option<Place> {
        let Some(place) = self.remove(name) else {
            self.absent.push(name);
            return None;
        };
        (!place.value.is_null()).then_some(place)
    }

    fn remove(&mut self, name: &str) -> Option<Place> {
        let pointer = self.pointer_of(name);
        self.unread.remove(name).map(|value| Place { value, pointer })
    }

    /// The next member, whatever its name.
    pub(crate) fn next(&mut self) -> Option<(String, Place)> {
        let name = self.unread.keys().next()?.clone();
        let place = self.remove(&name)?;
        Some((name, place))
    }

    /// Nothing may be left.
    pub(crate) fn done(self) -> Result<(), ReadError> {
        match self.unread.keys().next() {
            None => Ok(()),
            Some(name) => {
                let meant = nearest(name, self.absent.iter().copied());
                let strange = meant.map_or(Fault::Strange, |meant| Fault::Misspelt { meant });
                Err(fault(&self.pointer_of(name), strange))
            }
        }
    }
}

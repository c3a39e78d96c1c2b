//! Something wrong in a good text.

use std::collections::BTreeSet;
use std::fmt;
use std::ops::Range;

use proptest::prelude::*;
use proptest::sample::{Index, select};

/// One thing wrong.
#[derive(Clone, Debug)]
enum Edit {
    /// Another byte.
    Byte(Index, u8),
    /// Something that means something stands where it should not.
    Insert(Index, &'static str),
    /// A few bytes are lost.
    Lose(Index, usize),
    /// Some lines are lost.
    LoseLines(Index, usize),
    /// Some lines stand elsewhere as well.
    RepeatLines(Index, usize, Index),
    /// A number is another one.
    Number(Index, String),
    /// A number is one from elsewhere in the text.
    Exchange(Index, Index),
}

/// A text with something wrong in it.
#[derive(Clone)]
pub(crate) struct Edited {
    good: String,
    pub(crate) text: String,
}

/// The lines that the edits brought, and those that they took.
impl fmt::Debug for Edited {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let lines = |text: &'_ str| text.lines().map(str::to_owned).collect::<BTreeSet<_>>();
        let (good, now) = (lines(&self.good), lines(&self.text));
        let came: Vec<&String> = now.difference(&good).collect();
        let went: Vec<&String> = good.difference(&now).collect();
        write!(f, "came {came:#?} went {went:#?}, {} bytes became {}", self.good.len(), self.text.len())
    }
}

/// Good texts with up to so many things wrong in them.
pub(crate) fn edited(good: impl Strategy<Value = String>, most: usize) -> impl Strategy<Value = Edited> {
    (good, proptest::collection::vec(edit(), 0..=most)).prop_map(|(good, edits)| {
        let bytes = edits.iter().fold(good.clone().into_bytes(), |bytes, edit| edit.of(bytes));
        Edited { good, text: String::from_utf8_lossy(&bytes).into_owned() }
    })
}

fn edit() -> impl Strategy<Value = Edit> {
    const TOKENS: &[&str] = &[
        "[",
        "]",
        "[[",
        "{",
        "}",
        "\"",
        "'''",
        "=",
        ".",
        ",",
        ":",
        "#",
        "\n",
        "\\u0000",
        "\\",
        "\u{202e}",
        "\u{0}",
        "\u{e9}",
        "null",
        "true",
        "[[bay]]\n",
        "2026-02-30",
        "1979-05-27T07:32:00Z",
        "0x1f",
        "_",
        "e9",
        "- ",
        "nan",
    ];
    let at = any::<Index>;
    prop_oneof![
        1 => (at(), any::<u8>()).prop_map(|(at, byte)| Edit::Byte(at, byte)),
        1 => (at(), select(TOKENS)).prop_map(|(at, token)| Edit::Insert(at, token)),
        1 => (at(), 1..20_usize).prop_map(|(at, count)| Edit::Lose(at, count)),
        2 => (at(), 1..16_usize).prop_map(|(at, count)| Edit::LoseLines(at, count)),
        2 => (at(), 1..16_usize, at()).prop_map(|(at, count, to)| Edit::RepeatLines(at, count, to)),
        9 => (at(), number()).prop_map(|(at, number)| Edit::Number(at, number)),
        3 => (at(), at()).prop_map(|(at, of)| Edit::Exchange(at, of)),
    ]
}

/// Absurd numbers, and some that may pass.
fn number() -> impl Strategy<Value = String> {
    const ABSURD: &[&str] = &[
        "0",
        "-0",
        "-1",
        "1e308",
        "-1e308",
        "nan",
        "inf",
        "-inf",
        "1e-300",
        "9223372036854775807",
        "-9223372036854775808",
        "999999999999999",
        "0.00000000000001",
        "4294967295",
        "4294967296",
        "65536",
        "256",
        "255",
        "100000",
        "100000.1",
        "0.05",
        "9999-12-31",
    ];
    prop_oneof![
        3 => select(ABSURD).prop_map(str::to_owned),
        2 => (0..40_u32).prop_map(|number| number.to_string()),
        2 => (0..7000_u32).prop_map(|number| number.to_string()),
        1 => (0..4000_u32).prop_map(|number| format!("{}.{}", number / 10, number % 10)),
        1 => (0..100_u32).prop_map(|number| format!("0.{number:03}")),
    ]
}

impl Edit {
    fn of(&self, mut bytes: Vec<u8>) -> Vec<u8> {
        if bytes.is_empty() {
            return bytes;
        }
        match self {
            Self::Byte(at, byte) => {
                let at = at.index(bytes.len());
                bytes[at] = *byte;
            }
            Self::Insert(at, token) => {
                let at = at.index(bytes.len());
                bytes.splice(at..at, token.bytes());
            }
            Self::Lose(at, count) => {
                let at = at.index(bytes.len());
                bytes.drain(at..bytes.len().min(at + count));
            }
            Self::LoseLines(at, count) => {
                bytes.drain(lines(&bytes, *at, *count));
            }
            Self::RepeatLines(at, count, to) => {
                let copy = bytes[lines(&bytes, *at, *count)].to_vec();
                let to = lines(&bytes, *to, 1).start;
                bytes.splice(to..to, copy);
            }
            Self::Number(at, number) => {
                let Some(place) = pick(&bytes, *at) else { return bytes };
                bytes.splice(place, number.bytes());
            }
            Self::Exchange(at, of) => {
                let Some((place, of)) = pick(&bytes, *at).zip(pick(&bytes, *of)) else { return bytes };
                let number = bytes[of].to_vec();
                bytes.splice(place, number);
            }
        }
        bytes
    }
}

/// So many whole lines.
fn lines(bytes: &[u8], at: Index, count: usize) -> Range<usize> {
    let starts: Vec<usize> =
        core::iter::once(0).chain((1..bytes.len()).filter(|at| bytes[at - 1] == b'\n')).chain([bytes.len()]).collect();
    let first = at.index(starts.len() - 1);
    starts[first]..starts[(first + count).min(starts.len() - 1)]
}

/// A number of the text; digits within a name are none.
fn pick(bytes: &[u8], at: Index) -> Option<Range<usize>> {
    let within = |byte: u8| byte.is_ascii_digit() || byte == b'.';
    let named = |byte: u8| byte.is_ascii_alphanumeric() || b"_-.".contains(&byte);
    let starts: Vec<usize> = (0..bytes.len())
        .filter(|at| bytes[*at].is_ascii_digit() && !at.checked_sub(1).is_some_and(|before| named(bytes[before])))
        .collect();
    let start = *starts.get(at.index(starts.len().max(1)))?;
    let long = bytes[start..].iter().take_while(|byte| within(**byte)).count();
    Some(start..start + long)
}

//! A choice as the short text of a link, after the `#` of the page's address: nothing of a person, a version first.
//!
//! `1/teasel/1640x420x340/25/birch-9/chalk/2o,1s2:h=grommet@-30:d=receiver,4l/w3000/s550/p=hdmi/@a1b2c3d4=113194`
//!
//! Version, model, width × height × depth, corner radius, back, finish, then the bays: share, then `o` for open, `s` and
//! how many shelves, `l` or `r` for a leaf and where it is hung; `:h=` a hole's kind and place, `:d=` a device. What
//! comes after them may be missing: `b` the boards of a plinth, `e` how far the ends are bowed, with `l` or `r` where one of them
//! is, `w` the free wall, `c` the ceiling, `s` the screen in tenths of an inch, `p=` a plug,
//! `@` the beginning of the range's digest and the price with tax in minor units when the link was made. Lengths are in
//! mm. Version 2 has plinth, bows and ceiling; a link without them is of version 1, which pages read that know no other.
//! Every character may stand in the fragment of an address as it is (RFC 3986, 3.5).

use core::fmt;
use core::str::FromStr;

use super::Choice;
use crate::range::{BAYS_MOST, Range};
use crate::units::money::Money;

mod read;
#[cfg(test)]
mod tests;
mod write;

/// The last version of links that are written; all that was ever written stays readable. A link is of the first version that
/// can say it.
pub const VERSION: u32 = 2;

/// Longest text that is read at all, in characters: an address with it, every character escaped.
pub const CHARACTERS_MOST: usize = 2000;

/// What a link holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Link {
    /// The unit.
    pub choice: Choice,
    /// What was true when the link was made; nothing if the unit could not be ordered then.
    pub made: Option<Made>,
}

/// The range and the price when a link was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Made {
    /// The range, which may be another one by now.
    pub range: Mark,
    /// The price with tax.
    pub price: Money,
}

/// The first eight hexadecimal digits of a range's digest: enough to see that a range has changed, no seal.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mark(u32);

/// A text that is no mark.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotAMark;

/// A part of a link, for what is said of one that cannot be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The model.
    Model,
    /// Width, height and depth.
    Sizes,
    /// The radius of the corners.
    Corners,
    /// The board of the back.
    Back,
    /// The finish.
    Finish,
    /// How far which ends are bowed.
    Bow,
    /// All bays.
    Bays,
    /// A bay, counted from 1.
    Bay(usize),
    /// The plinth.
    Plinth,
    /// The free wall.
    Wall,
    /// The ceiling.
    Ceiling,
    /// The screen.
    Screen,
    /// The plug.
    Plug,
    /// The range and the price at that time.
    Made,
}

/// Why a text is no link, with pieces of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LinkError<Text = String> {
    /// It has more characters than are read.
    TooLong,
    /// It does not begin as a link does.
    NoLink,
    /// It is of another version.
    OtherVersion(u32),
    /// It ends before a part that all links have.
    Missing(Part),
    /// A part cannot be read; its text, cut and without what cannot be printed.
    Unread(Part, Text),
    /// It has more bays than a choice can name.
    TooManyBays(usize),
    /// It has something that links do not have, or have once.
    Unexpected(Text),
}

/// Whether a text is meant as a link, whether or not it can be read: a document is not, nor the name of a file.
///
/// ```
/// use slotwright_core::choice::link::is_meant;
/// assert!(is_meant("#1/teasel/1640x420x340/25/birch-9/chalk/1o") && is_meant("https://example.org/"));
/// assert!(!is_meant("choice.json") && !is_meant("{\"model\": 1}"));
/// ```
pub fn is_meant(text: &str) -> bool {
    let text = text.trim_start();
    let digits = text.bytes().take_while(u8::is_ascii_digit).count();
    let rest = text.get(digits..).unwrap_or_default();
    text.starts_with('#') || is_address(text) || digits > 0 && rest.starts_with('/')
}

fn is_address(text: &str) -> bool {
    ["http:", "https:"].iter().any(|scheme| text.starts_with(scheme))
}

impl Mark {
    /// That of a range.
    pub fn of(range: &Range) -> Self {
        Self(u32::from_be_bytes(range.digest().first()))
    }
}

impl fmt::Display for Mark {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:08x}", self.0)
    }
}

impl FromStr for Mark {
    type Err = NotAMark;

    fn from_str(text: &str) -> Result<Self, NotAMark> {
        let digits = text.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'));
        let mark = u32::from_str_radix(text, 16).ok().filter(|_| digits && text.len() == 8);
        mark.map(Self).ok_or(NotAMark)
    }
}

/// Whether a choice has no more bays than links are read with.
pub fn can_be_read(choice: &Choice) -> bool {
    choice.bays.len() <= BAYS_MOST
}

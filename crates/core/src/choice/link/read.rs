//! Reading the parts of a link.

use super::{CHARACTERS_MOST, Link, LinkError, Made, Part, VERSION, is_address};
use crate::choice::{Bowed, Choice, Place};
use crate::range::{BAYS_MOST, Bay, Fill, Hole, Hung, Key};
use crate::units::decimal::read_decimal;
use crate::units::money::Money;
use crate::units::quantity::Dim;

/// How much of a part is shown that cannot be read.
const SHOWN_MOST: usize = 40;

impl Link {
    /// Reads a link: the text itself, with `#` before it, or the whole address; percent escapes are undone.
    ///
    /// # Errors
    ///
    /// What of it cannot be read.
    pub fn of_link(text: &str) -> Result<Self, LinkError> {
        let plain = fragment(text)?;
        Ok(link(&plain)?)
    }

    /// The same where nothing is said of a bad one.
    pub fn of_good(text: &str) -> Option<Self> {
        link(&fragment(text).ok()?).ok()
    }
}

/// Why a text is no link, with pieces of it as they stand there: whoever only wants a good link does nothing for them.
type Fault<'a> = LinkError<&'a str>;

impl From<Fault<'_>> for LinkError {
    fn from(fault: Fault<'_>) -> Self {
        match fault {
            Fault::TooLong => Self::TooLong,
            Fault::NoLink => Self::NoLink,
            Fault::OtherVersion(version) => Self::OtherVersion(version),
            Fault::Missing(part) => Self::Missing(part),
            Fault::Unread(part, text) => Self::Unread(part, shown(text)),
            Fault::TooManyBays(count) => Self::TooManyBays(count),
            Fault::Unexpected(text) => Self::Unexpected(shown(text)),
        }
    }
}

/// What stands after the `#` of an address, without escapes.
fn fragment(text: &str) -> Result<String, Fault<'static>> {
    if text.chars().nth(CHARACTERS_MOST).is_some() {
        return Err(Fault::TooLong);
    }
    let text = text.trim();
    match text.split_once('#') {
        Some((_, fragment)) => Ok(unescaped(fragment)),
        None if is_address(text) => Err(Fault::NoLink),
        None => Ok(unescaped(text)),
    }
}

fn link(plain: &str) -> Result<Link, Fault<'_>> {
    let mut parts = plain.split('/');
    let version = parts.next().and_then(whole).and_then(|version| u32::try_from(version).ok());
    match version {
        Some(version @ 1..=VERSION) => unit(version, parts),
        // A number alone, or one before a word, is no link of any version.
        Some(other) if parts.count() > 1 => Err(Fault::OtherVersion(other)),
        _ => Err(Fault::NoLink),
    }
}

fn unit<'a>(version: u32, mut parts: impl Iterator<Item = &'a str>) -> Result<Link, Fault<'a>> {
    let mut take = |part| parts.next().ok_or(Fault::Missing(part));
    let model = key(Part::Model, take(Part::Model)?)?;
    let [width_mm, height_mm, depth_mm] = sizes(take(Part::Sizes)?)?;
    let corners = take(Part::Corners)?;
    let corner_radius_mm = dim(corners).ok_or(Fault::Unread(Part::Corners, corners))?;
    let back = key(Part::Back, take(Part::Back)?)?;
    let finish = key(Part::Finish, take(Part::Finish)?)?;
    let bays = bays(take(Part::Bays)?)?;
    let mut rest = Rest::default();
    for part in parts {
        // What some programs add to an address that they show.
        if !part.is_empty() {
            rest.take(version, part)?;
        }
    }
    let Rest { plinth_mm, ends, place, made } = rest;
    let (bow_mm, bowed) = ends.unwrap_or_default();
    let choice = Choice {
        model,
        width_mm,
        height_mm,
        depth_mm,
        bays,
        back,
        finish,
        corner_radius_mm,
        plinth_mm,
        bow_mm,
        bowed,
        place,
    };
    Ok(Link { choice, made })
}

/// The parts that may be missing.
#[derive(Default)]
struct Rest {
    plinth_mm: Option<Dim>,
    ends: Option<(Dim, Bowed)>,
    place: Place,
    made: Option<Made>,
}

impl Rest {
    fn take<'a>(&mut self, version: u32, text: &'a str) -> Result<(), Fault<'a>> {
        let later = |_: &&str| version > 1;
        let place = &mut self.place;
        let again = if let Some(plug) = text.strip_prefix("p=") {
            place.plug.replace(key(Part::Plug, plug)?).is_some()
        } else if let Some(plinth) = text.strip_prefix('b').filter(later) {
            self.plinth_mm.replace(dim(plinth).ok_or(Fault::Unread(Part::Plinth, text))?).is_some()
        } else if let Some(ends) = text.strip_prefix('e').filter(later) {
            self.ends.replace(bowed(ends).ok_or(Fault::Unread(Part::Bow, text))?).is_some()
        } else if let Some(wall) = text.strip_prefix('w') {
            place.wall_mm.replace(dim(wall).ok_or(Fault::Unread(Part::Wall, text))?).is_some()
        } else if let Some(ceiling) = text.strip_prefix('c').filter(later) {
            place.ceiling_mm.replace(dim(ceiling).ok_or(Fault::Unread(Part::Ceiling, text))?).is_some()
        } else if let Some(tenths) = text.strip_prefix('s') {
            let tenths = whole(tenths).and_then(|tenths| u16::try_from(tenths).ok());
            place.screen_tenth_inch.replace(tenths.ok_or(Fault::Unread(Part::Screen, text))?).is_some()
        } else if let Some(mark) = text.strip_prefix('@') {
            self.made.replace(made(mark).ok_or(Fault::Unread(Part::Made, text))?).is_some()
        } else {
            true
        };
        if again { Err(Fault::Unexpected(text)) } else { Ok(()) }
    }
}

/// How far the ends are bowed, and which of them where it is not both.
fn bowed(text: &str) -> Option<(Dim, Bowed)> {
    let one = |end, bowed| text.strip_suffix(end).map(|bow| (bow, bowed));
    let (bow, bowed) = one('l', Bowed::Left).or_else(|| one('r', Bowed::Right)).unwrap_or((text, Bowed::Both));
    Some((dim(bow)?, bowed))
}

fn made(text: &str) -> Option<Made> {
    let (range, price) = text.split_once('=')?;
    let minor = i64::try_from(whole(price)?).ok()?;
    // What is beyond the largest amount is none.
    Some(Made { range: range.parse().ok()?, price: Money::minor(minor) }).filter(|made| made.price.in_minor() == minor)
}

fn sizes(text: &str) -> Result<[Dim; 3], Fault<'_>> {
    let mut sizes = text.split('x').map(dim);
    match (sizes.next().flatten(), sizes.next().flatten(), sizes.next().flatten(), sizes.next()) {
        (Some(width), Some(height), Some(depth), None) => Ok([width, height, depth]),
        _ => Err(Fault::Unread(Part::Sizes, text)),
    }
}

fn bays(text: &str) -> Result<Vec<Bay>, Fault<'_>> {
    if text.is_empty() {
        return Ok(Vec::new());
    }
    let count = text.split(',').count();
    if count > BAYS_MOST {
        return Err(Fault::TooManyBays(count));
    }
    let bays = text.split(',').enumerate();
    bays.map(|(at, text)| bay(text).ok_or(Fault::Unread(Part::Bay(at + 1), text))).collect()
}

fn bay(text: &str) -> Option<Bay> {
    let mut parts = text.split(':');
    let holds = parts.next()?;
    let (share, fill) = holds.split_at_checked(holds.bytes().take_while(u8::is_ascii_digit).count())?;
    let fill = match fill {
        "o" => Fill::Open,
        "l" => Fill::Leaf(Hung::Left),
        "r" => Fill::Leaf(Hung::Right),
        _ => Fill::Shelves(small(fill.strip_prefix('s')?)?),
    };
    let mut bay = Bay { share: small(share)?, fill, hole: None, device: None };
    for part in parts {
        match part.split_once('=')? {
            ("h", hole) if bay.hole.is_none() => {
                let (kind, offset) = hole.split_once('@')?;
                bay.hole = Some(Hole { kind: kind.parse().ok()?, offset_mm: dim(offset)? });
            }
            ("d", device) if bay.device.is_none() => bay.device = Some(device.parse().ok()?),
            _ => return None,
        }
    }
    Some(bay)
}

fn key(part: Part, text: &str) -> Result<Key, Fault<'_>> {
    text.parse().map_err(|_| Fault::Unread(part, text))
}

fn dim(text: &str) -> Option<Dim> {
    read_decimal(text).and_then(|mm| Dim::try_from(mm).ok())
}

/// Digits alone, without a sign.
fn whole(text: &str) -> Option<u64> {
    text.parse().ok().filter(|_| text.bytes().all(|byte| byte.is_ascii_digit()))
}

fn small(text: &str) -> Option<u8> {
    whole(text).and_then(|value| u8::try_from(value).ok())
}

/// Text from outside as it may be shown: cut, and nothing but what links are written with.
fn shown(text: &str) -> String {
    let plain = |letter: char| if letter == ' ' || letter.is_ascii_graphic() { letter } else { '\u{fffd}' };
    text.chars().take(SHOWN_MOST).map(plain).collect()
}

/// A text with its percent escapes undone (RFC 3986, 2.1); what is none stays as it is, and no link has bytes beyond
/// ASCII.
fn unescaped(text: &str) -> String {
    let mut plain = String::new();
    let mut rest = text;
    while let Some(letter) = rest.chars().next() {
        let escaped = rest.strip_prefix('%').and_then(|after| after.get(..2));
        let byte =
            escaped.filter(|digits| !digits.starts_with('+')).and_then(|digits| u8::from_str_radix(digits, 16).ok());
        match byte {
            Some(byte) if byte.is_ascii() => plain.push(byte.into()),
            Some(_) => plain.push('\u{fffd}'),
            None => plain.push(letter),
        }
        rest = rest.get(if byte.is_some() { 3 } else { letter.len_utf8() }..).unwrap_or_default();
    }
    plain
}

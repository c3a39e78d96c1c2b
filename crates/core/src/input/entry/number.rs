//! A number as people write it.
//!
//! Points, commas, spaces and apostrophes may stand between thousands, points and commas before decimals:
//!
//! - of two kinds of marks the last one stands before decimals: `1.400,50`, `1,400.50`, `1 400,50`;
//! - one kind several times stands between thousands: `1.400.000`;
//! - a lone mark before exactly three digits is what [`Lone`] says, unless a zero begins the number;
//! - every other lone mark stands before decimals: `1.40`, `14,50`, `0,500`.
//!
//! Thousands are groups of three. A fraction may follow a whole number: `64 1/2`, `64-1/2`, `64½`.

use crate::units::decimal::read_decimal;

/// What a point or a comma is that stands alone before exactly three digits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Lone {
    /// It stands between thousands: `1,400` mm, grams or money.
    Thousands,
    /// It stands before decimals: `1.400` m, `12.500` kg, `64.125` inches.
    Decimals,
}

/// Fractions that are one letter.
const FRACTIONS: [(char, &str); 9] = [
    ('½', " 1/2"),
    ('¼', " 1/4"),
    ('¾', " 3/4"),
    ('⅛', " 1/8"),
    ('⅜', " 3/8"),
    ('⅝', " 5/8"),
    ('⅞', " 7/8"),
    ('⅓', " 1/3"),
    ('⅔', " 2/3"),
];

/// The text in small letters, with plain spaces, apostrophes, inch marks and fractions.
pub(super) fn plain(text: &str) -> String {
    let mut plain = String::new();
    for letter in text.trim().chars() {
        if let Some((_, fraction)) = FRACTIONS.iter().find(|(known, _)| *known == letter) {
            plain.push_str(fraction);
            continue;
        }
        let mut letter = match letter {
            '\u{2032}' | '\u{2018}' | '\u{2019}' | '\u{b4}' | '\u{2b9}' | '`' => '\'',
            '\u{2033}' | '\u{201c}' | '\u{201d}' | '\u{2ba}' => '"',
            '\u{2044}' | '\u{2215}' => '/',
            space if space.is_whitespace() => ' ',
            letter => letter.to_ascii_lowercase(),
        };
        // Two apostrophes are an inch mark.
        if letter == '\'' && plain.ends_with('\'') {
            plain.pop();
            letter = '"';
        }
        plain.push(letter);
    }
    plain
}

/// Reads a number of [`plain`] text, never a negative one.
pub(super) fn amount(text: &str, lone: Lone) -> Option<f64> {
    let text = text.trim();
    let Some((before, below)) = text.split_once('/') else { return figure(text, lone) };
    let (whole, above) = before.trim().rsplit_once([' ', '-']).unwrap_or(("0", before));
    let digits = |text: &str| read_decimal(text.trim()).filter(|_| !text.contains(['-', '.']));
    let sum = figure(whole.trim(), lone)? + digits(above)? / digits(below)?;
    sum.is_finite().then_some(sum)
}

/// Reads digits with their marks.
fn figure(text: &str, lone: Lone) -> Option<f64> {
    let (whole, decimals) = match text.rfind(['.', ',']).and_then(|at| text.split_at_checked(at)) {
        None => (text, ""),
        Some((whole, marked)) => {
            let decimals = marked.get(1..)?;
            let again = whole.contains(marked.get(..1)?);
            let alone = !whole.contains(MARKS);
            let three = alone && decimals.len() == 3 && !whole.starts_with('0') && lone == Lone::Thousands;
            if again || (three && (1..=3).contains(&whole.len())) { (text, "") } else { (whole, decimals) }
        }
    };
    let mut digits = String::new();
    let mark = whole.find(MARKS).and_then(|at| whole.get(at..=at));
    for (at, group) in whole.split(mark.unwrap_or(" ")).enumerate() {
        let is_group = group.len() == 3 || (at == 0 && (1..3).contains(&group.len()));
        if mark.is_some() && !is_group {
            return None;
        }
        digits.push_str(group);
    }
    if digits.is_empty() && !decimals.is_empty() {
        digits.push('0');
    }
    if !decimals.is_empty() {
        digits.push('.');
        digits.push_str(decimals);
    }
    // A sign, or any mark that is still there, is none of a number that people pick.
    digits.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.').then(|| read_decimal(&digits)).flatten()
}

/// What may stand between thousands.
const MARKS: [char; 4] = ['.', ',', ' ', '\''];

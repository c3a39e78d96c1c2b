//! Findings, changes and figures in words: the one place where sentences are made.
//!
//! What, by how much, the limit; the customer's words, no blame. Figures are written by [`format`]. Names from the
//! range stand in sentences as the range writes them.

pub mod adviser;
mod assembly;
pub mod desk;
mod english;
mod finding;
pub mod format;
pub mod page;
pub mod picture;
pub mod stage;
pub mod tool;

use crate::change::Change;
use crate::choice::{Fill, Hung};
use crate::day::Day;
use crate::entry::Expected;
use crate::finding::Finding;
use crate::money::Money;
use crate::options::why::{Release, Why};
use crate::panel::PanelId;
use crate::quantity::{Dim, Length, Mass};
use crate::question::Question;
use crate::range::{Key, Range};

pub use assembly::{CAUTIONS, burden, disturbed, last_step, step};
pub use finding::{reason, sentence};

use format::Locale;

/// Whose figures these sentences have.
const LOCALE: Locale = Locale::English;

/// A number with at most that many decimals, the trailing zeros left out.
pub fn decimal(value: f64, decimals: u32) -> String {
    LOCALE.decimal(value, decimals)
}

/// A picked size in millimetres, without its unit.
pub fn size(dim: Dim) -> String {
    LOCALE.size(dim)
}

/// A picked size with its unit.
pub fn length(dim: Dim) -> String {
    LOCALE.length(dim)
}

/// A computed length to a tenth of a millimetre, with its unit.
pub fn distance(length: Length) -> String {
    LOCALE.distance(length)
}

/// A mass in kilograms with at most one decimal.
pub fn mass(mass: Mass) -> String {
    LOCALE.mass(mass)
}

/// A mass in kilograms with at most one decimal, without its unit.
pub fn kilograms(mass: Mass) -> String {
    LOCALE.kilograms(mass)
}

/// An amount with its hundredths, without its currency.
pub fn amount(amount: Money) -> String {
    LOCALE.amount(amount)
}

/// An amount with its hundredths and its currency.
pub fn money(amount: Money, currency: &str) -> String {
    LOCALE.money(amount, currency)
}

/// A day as people say it: `Fri 18 December`.
pub fn day(day: Day) -> String {
    LOCALE.day(day)
}

/// What a field says when it cannot read what was typed, with examples of what it reads.
pub const fn not_read(expected: Expected) -> &'static str {
    match expected {
        Expected::Size => "This is no size. Write it like 1\u{202f}400, 140 cm or 4\u{2032} 6\u{2033}.",
        Expected::Diagonal => "This is no size. Write it like 55, 140 cm or 4\u{2032} 7\u{2033}.",
        Expected::Money => "This is no price. Write it like 1\u{202f}400 or 1\u{202f}400.50.",
        Expected::Mass => "This is no weight. Write it like 12, 12.5 kg or 26 lb.",
    }
}

/// The name of a part.
pub fn part(id: PanelId) -> String {
    match id {
        PanelId::BaseLower => "lower base plate".into(),
        PanelId::BaseUpper => "upper base plate".into(),
        PanelId::Upright(number) => format!("upright {number}"),
        PanelId::Back => "back".into(),
        PanelId::Shelf { bay, row } => format!("shelf {row} of bay {bay}"),
        PanelId::Stile(number) => format!("stile {number}"),
        PanelId::Leaf(bay) => format!("door of bay {bay}"),
        PanelId::Top => "top".into(),
    }
}

/// What a question is about, within a sentence.
pub fn question(question: Question) -> String {
    match question {
        Question::Place => "place".into(),
        Question::Model => "model".into(),
        Question::Width => "width".into(),
        Question::Height => "height".into(),
        Question::Depth => "depth".into(),
        Question::Bays => "number of bays".into(),
        Question::Bay(number) => format!("bay {number}"),
        Question::Shares => "shares of the width".into(),
        Question::Hole(number) => format!("hole in bay {number}"),
        Question::Device(number) => format!("device in bay {number}"),
        Question::Back => "back".into(),
        Question::Finish => "finish".into(),
        Question::Corners => "corners".into(),
    }
}

/// What a bay holds.
pub fn fill(fill: Fill) -> String {
    match fill {
        Fill::Open => "Open".into(),
        Fill::Shelves(1) => "One shelf".into(),
        Fill::Shelves(2) => "Two shelves".into(),
        Fill::Shelves(3) => "Three shelves".into(),
        Fill::Shelves(count) => format!("{count} shelves"),
        Fill::Leaf(Hung::Left) => "Door, hung left".into(),
        Fill::Leaf(Hung::Right) => "Door, hung right".into(),
    }
}

/// What a bay holds, within a sentence.
pub fn fill_within(fill: Fill) -> String {
    // These words are ours, no name of the range.
    self::fill(fill).to_ascii_lowercase()
}

/// With its first letter a capital: for a sentence that begins with a word of ours.
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().into_iter().flat_map(char::to_uppercase).chain(letters).collect()
}

/// What a change does, as a thing to do: `Make it 1 400 mm wide`.
pub fn change(change: &Change, range: &Range) -> String {
    capital(&to_do(change, range))
}

/// The same within a sentence: `make it 1 400 mm wide`.
fn to_do(change: &Change, range: &Range) -> String {
    fn named(name: Option<&String>, key: &Key) -> String {
        name.cloned().unwrap_or_else(|| key.to_string())
    }
    let hole = |key: &Key| named(range.hole(key).map(|hole| &hole.name), key);
    match change {
        Change::Model(key) => format!("begin afresh with {}", named(range.model(key).map(|model| &model.name), key)),
        Change::WidthMm(width) => format!("make it {} wide", length(*width)),
        Change::HeightMm(height) => format!("make it {} high", length(*height)),
        Change::DepthMm(depth) => format!("make it {} deep", length(*depth)),
        Change::BayCount(1) => "make it one bay".into(),
        Change::BayCount(count) => format!("make it {count} bays"),
        Change::Share { bay, share } => format!("give bay {bay} a share of {share}"),
        Change::Fill { bay, fill: Fill::Open } => format!("leave bay {bay} open"),
        Change::Fill { bay, fill: Fill::Leaf(Hung::Left) } => format!("hang a door in bay {bay}, on the left"),
        Change::Fill { bay, fill: Fill::Leaf(Hung::Right) } => format!("hang a door in bay {bay}, on the right"),
        Change::Fill { bay, fill: shelves } => format!("put {} in bay {bay}", fill_within(*shelves)),
        Change::Hole { bay, hole: None } => format!("cut no cable hole in bay {bay}"),
        Change::Hole { bay, hole: Some(taken) } => {
            format!("cut a {} in bay {bay}, {}", hole(&taken.kind), offset(taken.offset_mm))
        }
        Change::Device { bay, device: None } => format!("put no device in bay {bay}"),
        Change::Device { bay, device: Some(key) } => {
            format!("put the {} in bay {bay}", named(range.device(key).map(|device| &device.name), key))
        }
        Change::Back(key) => format!("take a back of {}", named(range.board(key).map(|board| &board.name), key)),
        Change::Finish(key) => format!("take the finish {}", named(range.finish(key).map(|finish| &finish.name), key)),
        Change::CornerRadiusMm(radius) if *radius == Dim::mm(0) => "leave the corners square".into(),
        Change::CornerRadiusMm(radius) => format!("round the corners to {}", length(*radius)),
        Change::WallMm(Some(wall)) => format!("suit a wall of {}", length(*wall)),
        Change::WallMm(None) => "suit no wall".into(),
        Change::ScreenTenthInch(Some(tenths)) => {
            format!("put a screen of {} inches on it", decimal(f64::from(*tenths) / 10.0, 1))
        }
        Change::ScreenTenthInch(None) => "put no screen on it".into(),
        Change::Plug(Some(key)) => format!("pass the {}", named(range.plug(key).map(|plug| &plug.name), key)),
        Change::Plug(None) => "name no plug".into(),
    }
}

/// Changes that are done together, after «and»: `make it 1 400 mm wide and put no device in bay 2`.
pub fn together(changes: &[Change], range: &Range) -> String {
    listed(changes.iter().map(|change| to_do(change, range)).collect())
}

/// One, two and three.
fn listed(mut all: Vec<String>) -> String {
    match all.pop() {
        Some(last) if !all.is_empty() => format!("{} and {last}", all.join(", ")),
        last => last.unwrap_or_default(),
    }
}

/// Why an answer is shut, for the customer. All that is let go for it is named, though less of it may be enough.
pub fn shut(why: &Why) -> String {
    let gone = why.release.iter().flat_map(|release| &release.pins).filter(|pin| !why.pins.contains(pin));
    let pins: Vec<Question> = why.pins.iter().chain(gone).copied().collect();
    let end = match pins.as_slice() {
        [] => "No other change makes up for it.".into(),
        pins => format!("You keep {}, so no other change makes up for it.", kept(pins)),
    };
    // What leaves out a bay that is kept breaks no rule.
    match why.rules.as_slice() {
        [] => format!("Bay {} would be gone. {end}", decimal(why.reason.allowed.value, 0)),
        _ => format!("{} {end}", reason(&why.reason)),
    }
}

/// Why an answer is shut of which no more was found out.
pub fn given_up(reason: &Finding) -> String {
    format!("{} No way round it was found.", self::reason(reason))
}

/// What to press to take a shut answer and let go of what is kept: `Take it, let the depth go and make it 520 mm deep`.
pub fn release(release: &Release, range: &Range) -> String {
    let gone = format!("let {} go", kept(&release.pins));
    let changes = release.changes.iter().map(|change| to_do(change, range));
    let all = listed(core::iter::once(gone).chain(changes).collect());
    let joint = if release.changes.is_empty() { " and" } else { "," };
    format!("Take it{joint} {all}")
}

/// What to press to make a change that lets go of what is kept: `Let the width go and make it 1 400 mm wide`.
pub fn letting_go(pin: Question, change: &Change, range: &Range) -> String {
    format!("Let {} go and {}", kept(&[pin]), to_do(change, range))
}

/// What is kept, after «you keep».
pub fn kept(pins: &[Question]) -> String {
    let kept = |pin: &Question| match pin {
        Question::Bay(_) => question(*pin),
        _ => format!("the {}", question(*pin)),
    };
    listed(pins.iter().map(kept).collect())
}

/// Where a hole is in its bay.
pub fn offset(offset: Dim) -> String {
    match offset.in_tenths() {
        0 => "in the middle".into(),
        tenths if tenths < 0 => format!("{} left", length(Dim::tenths(tenths.saturating_neg()))),
        _ => format!("{} right", length(offset)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::choice::Hole;
    use crate::entry;

    #[test]
    fn examples_of_what_is_read_are_read() {
        let reads = |expected, read: &dyn Fn(&str) -> bool| {
            let (_, examples) = not_read(expected).trim_end_matches('.').split_once("Write it like ").unwrap();
            let examples: Vec<&str> = examples.split(", ").flat_map(|some| some.split(" or ")).collect();
            assert!(examples.len() > 1 && examples.iter().all(|example| read(example)), "{examples:?}");
        };
        reads(Expected::Size, &|text| entry::size(text).is_some());
        reads(Expected::Diagonal, &|text| entry::diagonal(text).is_some());
        reads(Expected::Money, &|text| entry::money(text, "EUR").is_some());
        reads(Expected::Mass, &|text| entry::mass(text).is_some());
    }

    /// Names are the range's: no letter of theirs is changed, wherever in a sentence they stand.
    #[test]
    fn names_of_the_range_keep_their_letters() {
        let mut range = crate::testing::demo();
        let plug: Key = "hdmi".parse().unwrap();
        for plug in &mut range.plugs {
            plug.name = "PlayStation plug".into();
        }
        for device in &mut range.devices {
            device.name = "Nordlicht Receiver".into();
        }
        for hole in &mut range.holes {
            hole.name = "Slot B".into();
        }
        let device = Some(range.devices.first().unwrap().key.clone());
        let hole = Hole { kind: range.holes.first().unwrap().key.clone(), offset_mm: Dim::mm(20) };
        for (taken, alone, within) in [
            (Change::Plug(Some(plug)), "Pass the PlayStation plug", "pass the PlayStation plug"),
            (
                Change::Device { bay: 2, device },
                "Put the Nordlicht Receiver in bay 2",
                "put the Nordlicht Receiver in bay 2",
            ),
            (
                Change::Hole { bay: 1, hole: Some(hole) },
                "Cut a Slot B in bay 1, 20 mm right",
                "cut a Slot B in bay 1, 20 mm right",
            ),
        ] {
            assert_eq!(change(&taken, &range), alone);
            assert_eq!(together(std::slice::from_ref(&taken), &range), within);
            assert_eq!(letting_go(Question::Width, &taken, &range), format!("Let the width go and {within}"));
        }
    }

    #[test]
    fn changes_are_things_to_do() {
        let range = crate::testing::demo();
        let plug = Change::Plug(Some("hdmi".parse().unwrap()));
        let fill = Change::Fill { bay: 2, fill: Fill::Shelves(2) };
        let all = [Change::WidthMm(Dim::mm(1400)), fill, plug];
        assert_eq!(
            together(&all, &range),
            "make it 1\u{202f}400 mm wide, put two shelves in bay 2 and pass the HDMI plug"
        );
        assert_eq!(
            (together(&all[..1], &range).as_str(), together(&[], &range)),
            ("make it 1\u{202f}400 mm wide", String::new())
        );
    }
}

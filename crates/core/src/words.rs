//! Findings, changes and figures in words: the one place where sentences are made.
//!
//! What, by how much, the limit; the customer's words, no blame. Sizes are in millimetres with a
//! thin space between thousands.

mod assembly;
mod finding;

use crate::change::Change;
use crate::choice::{Fill, Hung};
use crate::day::Day;
use crate::finding::{Figure, Finding, Question, Unit};
use crate::money::Money;
use crate::options::kept::Given;
use crate::options::why::{Release, Why};
use crate::panel::PanelId;
use crate::quantity::{Dim, Mass};
use crate::range::{Key, Range};
use crate::rules::Rule;

pub use assembly::{CAUTIONS, burden, disturbed, last_step, step};
pub use finding::{reason, sentence};

/// Stands between thousands: a narrow space that does not break.
const THIN: char = '\u{202f}';

/// A whole number with thin spaces between thousands and a real minus.
pub fn number(value: i64) -> String {
    let digits = value.unsigned_abs().to_string();
    let mut text = String::from(if value < 0 { "\u{2212}" } else { "" });
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            text.push(THIN);
        }
        text.push(digit);
    }
    text
}

/// A number with at most that many decimals, the trailing zeros left out.
pub fn decimal(value: f64, decimals: u32) -> String {
    let scale = 10i64.pow(decimals.min(6));
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_precision_loss,
        reason = "rounded; `as` saturates, and the scale is small"
    )]
    let scaled = crate::quantity::round_half_away(value * scale as f64) as i64;
    let (whole, rest) = (scaled / scale, (scaled % scale).unsigned_abs());
    let sign = if scaled < 0 && whole == 0 { "\u{2212}" } else { "" };
    let mut text = format!("{sign}{}", number(whole));
    if rest > 0 {
        let digits = format!("{rest:0width$}", width = decimals as usize);
        text.push('.');
        text.push_str(digits.trim_end_matches('0'));
    }
    text
}

/// A picked size without its unit.
pub fn size(dim: Dim) -> String {
    decimal(f64::from(dim), 1)
}

/// A mass in kilograms with one decimal.
pub fn mass(mass: Mass) -> String {
    format!("{} kg", decimal(mass.in_kg(), 1))
}

/// An amount with its currency, whole units where there are no hundredths.
pub fn money(amount: Money, currency: &str) -> String {
    let minor = amount.in_minor();
    let (whole, rest) = (minor / 100, (minor % 100).unsigned_abs());
    let sign = if minor < 0 && whole == 0 { "\u{2212}" } else { "" };
    let symbol = match currency {
        "EUR" => "€",
        "GBP" => "£",
        other => other,
    };
    format!("{symbol}{THIN}{sign}{}.{rest:02}", number(whole))
}

const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

/// A day as people say it: `Fri 18 December`.
pub fn day(day: Day) -> String {
    let (_, month, date) = day.parts();
    let month = MONTHS.get(usize::from(month).saturating_sub(1)).copied().unwrap_or_default();
    format!("{} {date} {month}", day.weekday_name())
}

/// A figure with its unit.
pub fn figure(figure: Figure) -> String {
    match figure.unit {
        Unit::Mm if figure.value.abs() < 10.0 => format!("{} mm", decimal(figure.value, 1)),
        Unit::Mm => format!("{} mm", decimal(figure.value, 0)),
        Unit::Kg => format!("{} kg", decimal(figure.value, 1)),
        Unit::Count => decimal(figure.value, 0),
        Unit::Ratio => format!("{} to 1", decimal(figure.value, 2)),
        Unit::Percent => format!("{} %", decimal(figure.value, 1)),
        Unit::Nm => format!("{} N·m", decimal(figure.value, 1)),
        Unit::NPerMm2 => format!("{} N/mm²", decimal(figure.value, 2)),
        Unit::Degree => format!("{}°", decimal(figure.value, 0)),
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

/// What a change does, as a thing to do: `Make it 1 400 mm wide`.
pub fn change(change: &Change, range: &Range) -> String {
    fn named(name: Option<&String>, key: &Key) -> String {
        name.cloned().unwrap_or_else(|| key.to_string())
    }
    let hole = |key: &Key| named(range.hole(key).map(|hole| &hole.name), key);
    match change {
        Change::Model(key) => format!("Begin afresh with {}", named(range.model(key).map(|model| &model.name), key)),
        Change::WidthMm(width) => format!("Make it {} mm wide", size(*width)),
        Change::HeightMm(height) => format!("Make it {} mm high", size(*height)),
        Change::DepthMm(depth) => format!("Make it {} mm deep", size(*depth)),
        Change::BayCount(1) => "Make it one bay".into(),
        Change::BayCount(count) => format!("Make it {count} bays"),
        Change::Share { bay, share } => format!("Give bay {bay} a share of {share}"),
        Change::Fill { bay, fill: Fill::Open } => format!("Leave bay {bay} open"),
        Change::Fill { bay, fill: Fill::Leaf(Hung::Left) } => format!("Hang a door in bay {bay}, on the left"),
        Change::Fill { bay, fill: Fill::Leaf(Hung::Right) } => format!("Hang a door in bay {bay}, on the right"),
        Change::Fill { bay, fill: shelves } => format!("Put {} in bay {bay}", small(&fill(*shelves))),
        Change::Hole { bay, hole: None } => format!("Cut no cable hole in bay {bay}"),
        Change::Hole { bay, hole: Some(taken) } => {
            format!("Cut a {} in bay {bay}, {}", small(&hole(&taken.kind)), offset(taken.offset_mm))
        }
        Change::Device { bay, device: None } => format!("Put no device in bay {bay}"),
        Change::Device { bay, device: Some(key) } => {
            format!("Put the {} in bay {bay}", small(&named(range.device(key).map(|device| &device.name), key)))
        }
        Change::Back(key) => format!("Take a back of {}", named(range.board(key).map(|board| &board.name), key)),
        Change::Finish(key) => format!("Take the finish {}", named(range.finish(key).map(|finish| &finish.name), key)),
        Change::CornerRadiusMm(radius) if *radius == Dim::mm(0) => "Leave the corners square".into(),
        Change::CornerRadiusMm(radius) => format!("Round the corners to {} mm", size(*radius)),
        Change::WallMm(Some(wall)) => format!("Suit a wall of {} mm", size(*wall)),
        Change::WallMm(None) => "Let the wall go".into(),
        Change::ScreenTenthInch(Some(tenths)) => {
            format!("Put a screen of {} inches on it", decimal(f64::from(*tenths) / 10.0, 1))
        }
        Change::ScreenTenthInch(None) => "Let the screen go".into(),
        Change::Plug(Some(key)) => format!("Pass the {}", small(&named(range.plug(key).map(|plug| &plug.name), key))),
        Change::Plug(None) => "Name no plug".into(),
    }
}

/// Changes that are done together, after «and»: `make it 1 400 mm wide and put no device in bay 2`.
pub fn together(changes: &[Change], range: &Range) -> String {
    listed(changes.iter().map(|change| small(&self::change(change, range))).collect())
}

/// One, two and three.
fn listed(mut all: Vec<String>) -> String {
    match all.pop() {
        Some(last) if !all.is_empty() => format!("{} and {last}", all.join(", ")),
        last => last.unwrap_or_default(),
    }
}

/// As within a sentence: the first letter small, but not that of an abbreviation.
fn small(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next();
    if letters.clone().next().is_some_and(char::is_uppercase) {
        return text.into();
    }
    first.into_iter().flat_map(char::to_lowercase).chain(letters).collect()
}

/// Why an answer is shut, for the customer. All that is let go for it is named, though less of it may be enough.
pub fn shut(why: &Why) -> String {
    let gone = why.release.iter().flat_map(|release| &release.pins).filter(|pin| !why.pins.contains(pin));
    let pins: Vec<Question> = why.pins.iter().chain(gone).copied().collect();
    let gone = why.release.iter().flat_map(|release| &release.given).filter(|given| !why.given.contains(given));
    let given: Vec<Given> = why.given.iter().chain(gone).copied().collect();
    let end = match held(&pins, &given) {
        held if held.is_empty() => "No other change makes up for it.".into(),
        held => format!("You keep {held}, so no other change makes up for it."),
    };
    // What leaves out a bay that is kept breaks no rule.
    match why.rules.as_slice() {
        [] if why.reason.rule == Rule::FitOutCount => {
            format!("Bay {} would be gone. {end}", decimal(why.reason.allowed.value, 0))
        }
        _ => format!("{} {end}", reason(&why.reason)),
    }
}

/// Why an answer is shut of which no more was found out.
pub fn given_up(reason: &Finding) -> String {
    format!("{} No way round it was found.", self::reason(reason))
}

/// What to press to take a shut answer and let go of what is kept: `Take it, let the depth go and make it 520 mm deep`.
pub fn release(release: &Release, range: &Range) -> String {
    let gone = format!("let {} go", held(&release.pins, &release.given));
    let changes = release.changes.iter().map(|change| small(&self::change(change, range)));
    let all = listed(core::iter::once(gone).chain(changes).collect());
    let joint = if release.changes.is_empty() { " and" } else { "," };
    format!("Take it{joint} {all}")
}

/// What to press to make a change that lets go of what is kept: `Let the width go and make it 1 400 mm wide`.
pub fn letting_go(pin: Question, change: &Change, range: &Range) -> String {
    format!("Let {} go and {}", kept(&[pin]), small(&self::change(change, range)))
}

/// What was given for a visit and does not hold.
pub const fn beyond(given: Given) -> &'static str {
    match given {
        Given::Wall => "It is wider than the wall.",
        Given::Screen => "It does not suit the screen.",
        Given::Budget => "It costs more than you gave.",
        Given::Day => "It comes later than the day that you gave.",
    }
}

/// What is kept, after «you keep».
pub fn kept(pins: &[Question]) -> String {
    held(pins, &[])
}

/// The same with what was given.
pub fn held(pins: &[Question], given: &[Given]) -> String {
    let named = |given: &Given| match given {
        Given::Wall => "the wall".into(),
        Given::Screen => "the screen".into(),
        Given::Budget => "the budget".into(),
        Given::Day => "the day".into(),
    };
    let kept = |pin: &Question| match pin {
        Question::Bay(_) => question(*pin),
        _ => format!("the {}", question(*pin)),
    };
    listed(pins.iter().map(kept).chain(given.iter().map(named)).collect())
}

/// Where a hole is in its bay.
pub fn offset(offset: Dim) -> String {
    match offset.in_tenths() {
        0 => "in the middle".into(),
        tenths if tenths < 0 => format!("{} mm left", size(Dim::tenths(tenths.saturating_neg()))),
        _ => format!("{} mm right", size(offset)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_read_as_people_write_them() {
        for (value, decimals, text) in [
            (1640.0, 0, "1\u{202f}640"),
            (1_234_567.0, 0, "1\u{202f}234\u{202f}567"),
            (999.0, 0, "999"),
            (47.25, 1, "47.3"),
            (47.0, 1, "47"),
            (-0.25, 1, "\u{2212}0.3"),
            (-12.5, 2, "\u{2212}12.5"),
            (0.04, 1, "0"),
        ] {
            assert_eq!(decimal(value, decimals), text);
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

    #[test]
    fn money_shows_its_hundredths() {
        assert_eq!(money(Money::minor(128_405), "EUR"), "€\u{202f}1\u{202f}284.05");
        assert_eq!(money(Money::minor(-5), "SEK"), "SEK\u{202f}\u{2212}0.05");
    }
}

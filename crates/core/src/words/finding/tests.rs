//! Laws of the sentences of findings.

use super::{advice, stop};
use crate::cabinet::panel::PanelId;
use crate::choice::Choice;
use crate::choice::question::Question;
use crate::rules::finding::{Figure, Finding, Limit, Severity, Unit};
use crate::rules::id::Rule;
use crate::rules::judge;
use crate::rules::sample::{Wanted, choices};
use crate::testing::demo;
use crate::units::quantity::Mass;
use crate::words::{LOCALE, reason, sentence};

/// Whether the sentence says what was found and what is allowed.
fn says(finding: &Finding) -> (bool, bool) {
    match finding.rule {
        // Something is there or is not: there is nothing to measure.
        Rule::Known | Rule::HoleStile | Rule::DeviceShut | Rule::DeviceCable => (false, false),
        Rule::HoleEdge | Rule::HoleShelf if finding.found.value < 0.0 => (false, false),
        Rule::LeafGrip if finding.found.value <= 0.0 => (false, true),
        // A low unit that is asked to be fastened for its doors.
        Rule::WallTether if finding.found.unit == Unit::Count => (false, false),
        // How far it tips is not said, only that it does.
        Rule::WallTether if finding.found.unit == Unit::Nm => (false, false),
        // What is allowed is nothing; a package may be too heavy or too bulky as well, and is told by its length alone.
        Rule::Interlock | Rule::Package => (true, false),
        _ => (true, true),
    }
}

/// What the demo range says of seeded choices.
fn findings() -> Vec<Finding> {
    let range = demo();
    let sample = |wanted, count| choices(&range, 16, wanted).take(count);
    let all: Vec<Choice> = sample(Wanted::Any, 400).chain(sample(Wanted::Valid, 40)).collect();
    all.iter().flat_map(|choice| judge(&range, choice).findings).collect()
}

#[test]
fn what_is_found_is_beyond_what_is_allowed_reads_so_and_is_said() {
    let findings = findings();
    let mut rules: Vec<Rule> = findings.iter().map(|finding| finding.rule).collect();
    rules.sort();
    rules.dedup();
    assert!(rules.len() > 25, "{} rules were found", rules.len());
    for finding in &findings {
        let (sentence, (found, allowed)) = (sentence(finding), LOCALE.found_and_allowed(finding));
        assert_ne!(found, allowed, "{sentence}");
        let says = says(finding);
        assert!(!says.0 || sentence.contains(&found), "{found}: {sentence}");
        assert!(!says.1 || sentence.contains(&allowed), "{allowed}: {sentence}");
        // Where the sentence names a bound it is that of the finding.
        assert!(!sentence.contains("the most is") || finding.limit == Limit::AtMost, "{sentence}");
        assert!(!sentence.contains("the least is") || finding.limit == Limit::AtLeast, "{sentence}");
        // The figures say by themselves what is wrong; a package may be too heavy or too bulky instead of too long.
        let (found, allowed) = (finding.found.value, finding.allowed.value);
        let beyond = match finding.limit {
            Limit::AtMost => found > allowed,
            Limit::AtLeast => found < allowed,
            Limit::OneOf => true,
        };
        assert!(beyond || finding.rule == Rule::Package, "{:?}: {found}, {:?} {allowed}", finding.rule, finding.limit);
    }
}

#[test]
fn every_rule_has_a_short_sentence_in_every_severity() {
    let abouts = [
        Question::Place,
        Question::Model,
        Question::Width,
        Question::Height,
        Question::Depth,
        Question::Bays,
        Question::Bay(6),
        Question::Shares,
        Question::Hole(6),
        Question::Device(6),
        Question::Back,
        Question::Finish,
        Question::Corners,
        Question::Plinth,
    ];
    let shelf = PanelId::Shelf { bay: 6, row: 2 };
    // The longest figures are those that are just beyond their limits.
    let hair = 1.0 + 1e-9;
    let mass: fn(f64) -> Figure = |value| Figure::mass(Mass::kg(value));
    let count: fn(f64) -> Figure = |value| Figure::count(if value > 1.0 { 8u32 } else { 7 - u32::from(value < 1.0) });
    for rule in Rule::ALL {
        let figures: &[fn(f64) -> Figure] = match rule {
            Rule::FitOutCount | Rule::BayShare | Rule::Interlock => &[count],
            Rule::LeafShape | Rule::UprightBuckling | Rule::TipOver => &[mass, Figure::ratio],
            _ => &[mass, count],
        };
        for (about, figure) in figures.iter().flat_map(|figure| abouts.map(|about| (about, figure))) {
            for (found, limit) in [
                (figure(hair), Limit::AtMost),
                (figure(1.0 / hair), Limit::AtLeast),
                (figure(0.0), Limit::AtLeast),
                (figure(-1.0), Limit::AtLeast),
                (figure(0.0), Limit::OneOf),
            ] {
                let finding = Finding::stops(*rule, about, found, limit, figure(1.0));
                for severity in [Severity::Stops, Severity::Warns, Severity::Advises] {
                    for parts in [&[][..], &[PanelId::BaseLower], &[shelf, PanelId::Top]] {
                        let finding = finding.clone().but(severity).of(parts.iter().copied());
                        for lifted_by in [None, Some(1), Some(2), Some(3)] {
                            short(&Finding { lifted_by, ..finding.clone() });
                        }
                    }
                }
            }
        }
    }
}

fn short(finding: &Finding) {
    for text in [sentence(finding), reason(finding)] {
        let words = text.split(' ').filter(|word| !word.is_empty()).count();
        assert!((3..=25).contains(&words), "{words} words: {text}");
        assert!(text.ends_with('.') && !text.starts_with(char::is_lowercase), "{text}");
    }
}

/// In every severity that the table of rules gives it, and in no other.
#[test]
fn what_a_rule_says_is_as_severe_as_its_table_has_it() {
    let count = Figure::count(1u32);
    for rule in Rule::ALL.iter().copied() {
        let finding = Finding::stops(rule, Question::Bay(1), count, Limit::AtMost, count);
        let is_said = |severity| rule.remedies(severity).is_some();
        // What does not suit the place only warns, and shuts what would break it.
        let shuts = matches!(rule, Rule::ScreenWidth | Rule::WallWidth | Rule::ViewingHeight);
        assert_eq!(stop(LOCALE, &finding).is_some(), is_said(Severity::Stops) || shuts, "{rule:?}");
        assert_eq!(
            advice(LOCALE, &finding).is_some(),
            is_said(Severity::Warns) || is_said(Severity::Advises),
            "{rule:?}"
        );
    }
}

/// One of them is said as one, and the figure of what has none names none.
#[test]
fn what_is_counted_is_said_in_its_own_form() {
    let said = |rule, about, limit, (found, allowed): (u32, u32), parts: &[PanelId], severity| {
        let finding = Finding::stops(rule, about, Figure::count(found), limit, Figure::count(allowed));
        sentence(&finding.of(parts.iter().copied()).but(severity))
    };
    let (bay, most, least) = (Question::Bay(1), Limit::AtMost, Limit::AtLeast);
    for (rule, about, limit, figures, parts, severity, start) in [
        (
            Rule::FitOutCount,
            bay,
            most,
            (1, 0),
            &[PanelId::Leaf(1)][..],
            Severity::Stops,
            "Up to bay 1 there would be 1 door;",
        ),
        (Rule::FitOutCount, bay, most, (1, 0), &[], Severity::Stops, "In bay 1 there would be 1 shelf;"),
        (Rule::FitOutCount, bay, most, (2, 1), &[], Severity::Stops, "In bay 1 there would be 2 shelves;"),
        (Rule::FitOutCount, Question::Bays, least, (1, 2), &[], Severity::Stops, "1 bay is too few;"),
        (Rule::Interlock, Question::Model, most, (1, 0), &[], Severity::Stops, "1 part does not hold"),
        (Rule::PromiseDay, Question::Model, most, (1, 0), &[], Severity::Stops, "It takes 1 working day until"),
        (Rule::FinishEdges, Question::Finish, least, (1, 4), &[], Severity::Warns, "This light finish has 1 coat;"),
    ] {
        let text = said(rule, about, limit, figures, parts, severity);
        assert!(text.starts_with(start), "{text}");
    }
    let stands = |parts: &[PanelId]| said(Rule::TipOver, Question::Depth, least, (1, 2), parts, Severity::Stops);
    assert_eq!(stands(&[]), "Empty, it could tip over: held 1; the least is 2.");
    assert!(stands(&[PanelId::Leaf(2)]).starts_with("Empty, with its doors open, it could tip over"));
}

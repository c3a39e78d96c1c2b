//! What a change did, in English.

use super::LOCALE;
use super::count::counted;
use super::name::{fill_within, offset, question};
use crate::choice::Bowed;
use crate::choice::change::Change;
use crate::choice::changed::Changed;
use crate::units::money::Money;
use crate::units::quantity::{Dim, Mass};
use crate::words::did::{Did, Step, Sum};
use crate::words::names::Names;

/// More of what did not fit is only counted: it has to be one line.
const NAMED_MOST: usize = 2;

/// What was answered, what that did, and each answer on a line where they are only counted.
pub(in crate::words) fn texts(did: &Did<'_>, names: Names<'_>, currency: &str) -> [String; 3] {
    let whole = |text: &str| [text.into(), String::new(), String::new()];
    let effect = effect(did.before, did.after, currency);
    let mut counted = &[][..];
    let answers = match (did.step, did.changed) {
        (Step::Afresh, _) => return whole("Begun afresh."),
        (Step::AfreshKept, _) => return whole("Begun afresh. What was here is among the drafts."),
        (Step::NotAfresh, _) => "What was here is back".into(),
        // Nothing of the unit: what is kept of it, a budget or a day.
        (Step::Answers | Step::Recalled, []) => return whole("What is kept has changed."),
        (Step::Recalled, [Changed { to: Change::Model(model), .. }, ..]) => {
            format!("{} as you left it", names.model(model))
        }
        (_, [only]) => answered(only, names),
        (_, [Changed { to: Change::Model(model), .. }, rest @ ..]) => {
            let misfits = if rest.len() > NAMED_MOST {
                counted = rest;
                format!("{} answers did not fit", rest.len())
            } else {
                rest.iter().map(|misfit| became(misfit, names)).collect::<Vec<_>>().join(", ")
            };
            format!("{}, {misfits}", names.model(model))
        }
        (_, all) => {
            counted = all;
            format!("{} answers changed", all.len())
        }
    };
    let lines: Vec<String> = counted.iter().map(|changed| answered(changed, names)).collect();
    [format!("{answers}:"), effect, lines.join("\n")]
}

/// Price, mass and day, as far as they differ; of the price also that it does not.
fn effect(before: Option<Sum>, after: Option<Sum>, currency: &str) -> String {
    let (before, after) = match (before, after) {
        (Some(before), Some(after)) => (before, after),
        (_, None) => return "cannot be made".into(),
        (None, Some(after)) => return format!("can be made now, {}", LOCALE.money(after.price, currency)),
    };
    let price = after.price.in_minor().saturating_sub(before.price.in_minor());
    let money = LOCALE.money(Money::minor(price.saturating_abs()), currency);
    let mut said = vec![match price {
        ..0 => format!("{money} less"),
        0 => "same price".into(),
        1.. => format!("{money} more"),
    }];
    let kilograms = after.mass.in_kg() - before.mass.in_kg();
    let mass = LOCALE.mass(Mass::kg(kilograms.abs()));
    if mass != LOCALE.mass(Mass::kg(0.0)) {
        said.push(if kilograms < 0.0 { format!("{mass} lighter") } else { format!("{mass} heavier") });
    }
    if let (Some(before), Some(after)) = (before.day, after.day) {
        let days = before.days_until(after);
        let count = counted(&days.unsigned_abs().to_string(), "day", "days");
        match days {
            ..0 => said.push(format!("{count} sooner")),
            0 => {}
            1.. => said.push(format!("{count} later")),
        }
    }
    said.join(", ")
}

/// One answer before and after, at the beginning of a line.
fn answered(Changed { from, to }: &Changed, names: Names<'_>) -> String {
    let (from, now) = (value(from, names), value(to, names));
    match to {
        Change::Model(_) => format!("{from} to {now}"),
        Change::WidthMm(_) => format!("Width {from} to {now}"),
        Change::HeightMm(_) => format!("Height {from} to {now}"),
        Change::DepthMm(_) => format!("Depth {from} to {now}"),
        Change::BayCount(_) => format!("Bays {from} to {now}"),
        Change::Share { bay, .. } => format!("Share of bay {bay} from {from} to {now}"),
        Change::Fill { bay, .. } => format!("Bay {bay} from {from} to {now}"),
        Change::Hole { bay, .. } => format!("Hole in bay {bay} from {from} to {now}"),
        Change::Device { bay, .. } => format!("Device in bay {bay} from {from} to {now}"),
        Change::Back(_) => format!("Back {from} to {now}"),
        Change::Finish(_) => format!("Finish {from} to {now}"),
        Change::CornerRadiusMm(_) => format!("Corners {from} to {now}"),
        Change::PlinthMm(_) => format!("Plinth {from} to {now}"),
        Change::BowMm(_) => format!("Bow of the ends {from} to {now}"),
        Change::Bowed(_) => format!("Bowed {from} to {now}"),
        Change::WallMm(_) => format!("Free wall {from} to {now}"),
        Change::CeilingMm(_) => format!("Ceiling {from} to {now}"),
        Change::ScreenTenthInch(_) => format!("Screen {from} to {now}"),
        Change::Plug(_) => format!("Plug {from} to {now}"),
    }
}

/// One answer that did not fit another model.
fn became(Changed { from, to }: &Changed, names: Names<'_>) -> String {
    let about = to.question().map(question).unwrap_or_default();
    format!("{about} {} became {}", value(from, names), value(to, names))
}

/// An answer, as short as it can be said.
fn value(answer: &Change, names: Names<'_>) -> String {
    match answer {
        Change::Model(key) => names.model(key).into(),
        Change::WidthMm(size)
        | Change::HeightMm(size)
        | Change::DepthMm(size)
        | Change::PlinthMm(Some(size))
        | Change::WallMm(Some(size))
        | Change::CeilingMm(Some(size)) => LOCALE.size(*size),
        Change::BayCount(number) | Change::Share { share: number, .. } => number.to_string(),
        Change::Fill { fill, .. } => fill_within(*fill),
        Change::Hole { hole: Some(hole), .. } => format!("{} {}", names.hole(&hole.kind), offset(hole.offset_mm)),
        Change::Device { device: Some(key), .. } => names.device(key).into(),
        Change::Hole { hole: None, .. } | Change::Device { device: None, .. } | Change::PlinthMm(None) => "none".into(),
        Change::Back(key) => names.board(key).into(),
        Change::Finish(key) => names.finish(key).into(),
        Change::CornerRadiusMm(radius) if *radius == Dim::mm(0) => "square".into(),
        Change::BowMm(bow) if *bow == Dim::mm(0) => "square".into(),
        Change::CornerRadiusMm(length) | Change::BowMm(length) => LOCALE.length(*length),
        Change::Bowed(Bowed::Both) => "both ends".into(),
        Change::Bowed(Bowed::Left) => "left end".into(),
        Change::Bowed(Bowed::Right) => "right end".into(),
        Change::ScreenTenthInch(Some(tenths)) => format!("{} inches", LOCALE.decimal(f64::from(*tenths) / 10.0, 1)),
        Change::Plug(Some(key)) => names.plug(key).into(),
        Change::WallMm(None) | Change::CeilingMm(None) | Change::ScreenTenthInch(None) | Change::Plug(None) => {
            "any".into()
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::choice::change::Change;
    use crate::choice::changed::changed;
    use crate::choice::question::Question;
    use crate::choice::{Bowed, Choice};
    use crate::testing::demo;
    use crate::units::money::Money;
    use crate::units::quantity::{Dim, Mass};
    use crate::words::did::{Did, Step, Sum};

    fn sum(price: i64, kg: f64, day: &str) -> Sum {
        Sum { price: Money::minor(price), mass: Mass::kg(kg), day: day.parse().ok() }
    }

    /// The line of some changes, one after another, with what they do.
    fn line(changes: &[Change], step: Step, before: Option<Sum>, after: Option<Sum>) -> String {
        let range = demo();
        let from = Choice::first_of(&range).unwrap();
        let to = changes.iter().fold(from.clone(), |choice, change| choice.with(change, &range));
        let did = Did { changed: &changed(&from, &to), step, before, after };
        did.texts(&range)[..2].join(" ").replace('\u{202f}', " ")
    }

    #[test]
    fn a_change_says_in_one_line_what_it_did() {
        let before = Some(sum(128_405, 47.25, "2026-12-18"));
        let width = [Change::WidthMm(Dim::mm(1520))];
        let said = |after| line(&width, Step::Answers, before, after);
        let lighter = Some(sum(124_285, 45.15, "2026-12-16"));
        assert_eq!(said(lighter), "Width 1 640 to 1 520: € 41.20 less, 2.1 kg lighter, 2 days sooner");
        assert_eq!(said(Some(sum(128_406, 47.27, "2026-12-19"))), "Width 1 640 to 1 520: € 0.01 more, 1 day later");
        assert_eq!(said(Some(sum(128_405, 47.97, "2026-12-18"))), "Width 1 640 to 1 520: same price, 0.7 kg heavier");
        assert_eq!(said(before), "Width 1 640 to 1 520: same price");
        assert_eq!(said(None), "Width 1 640 to 1 520: cannot be made");
        assert_eq!(line(&width, Step::Answers, None, before), "Width 1 640 to 1 520: can be made now, € 1 284.05");
        let height = Change::HeightMm(Dim::mm(420));
        assert_eq!(line(&[width[0].clone(), height], Step::Answers, before, before), "2 answers changed: same price");
        assert_eq!(line(&[], Step::Answers, before, before), "What is kept has changed. ");
    }

    /// Beginning afresh is one thing, however many answers differ; its undoing says what it comes to.
    #[test]
    fn beginning_afresh_counts_no_answers() {
        let sums = [sum(128_405, 47.25, "2026-12-18"), sum(124_285, 47.25, "2026-12-18")].map(Some);
        let changes = [Change::WidthMm(Dim::mm(1520)), Change::HeightMm(Dim::mm(420))];
        let said = |step| line(&changes, step, sums[0], sums[1]);
        assert_eq!(said(Step::Afresh), "Begun afresh. ");
        assert_eq!(said(Step::AfreshKept), "Begun afresh. What was here is among the drafts. ");
        assert_eq!(said(Step::NotAfresh), "What was here is back: € 41.20 less");
        assert!(Step::WORDS.iter().all(|(word, step)| Step::of_word(word) == Some(*step) && step.word() == *word));
    }

    /// What is only counted in the line is named beside it.
    const THREE: &str =
        "Teasel, 3 answers did not fit: same price Width 1 640 to 1 560\nHeight 520 to 760\nFinish Clear to Brick";

    #[test]
    fn another_model_says_what_did_not_fit() {
        let sum = Some(sum(128_405, 47.25, "2026-12-18"));
        let teasel = || Change::Model("teasel".parse().unwrap());
        let back_to = |width, height| [teasel(), Change::WidthMm(Dim::mm(width)), Change::HeightMm(Dim::mm(height))];
        let range = demo();
        let sedge = Choice::first_of(&range).unwrap();
        let bays = |to: &Choice| Choice { bays: sedge.bays.clone(), depth_mm: sedge.depth_mm, ..to.clone() };
        let said = |changes: &[Change], step| {
            let to = bays(&changes.iter().fold(sedge.clone(), |choice, change| choice.with(change, &range)));
            let did = Did { changed: &changed(&sedge, &to), step, before: sum, after: sum };
            did.texts(&range).join(" ").trim().replace('\u{202f}', " ")
        };
        assert_eq!(said(&back_to(1640, 520), Step::Answers), "Sedge to Teasel: same price");
        assert_eq!(said(&back_to(1640, 760), Step::Answers), "Teasel, height 520 became 760: same price");
        let brick = Change::Finish("brick".parse().unwrap());
        let [model, width, height] = back_to(1560, 760);
        assert_eq!(said(&[model, width, height, brick], Step::Answers), THREE);
        assert_eq!(said(&back_to(1560, 760), Step::Recalled), "Teasel as you left it: same price");
    }

    /// Every answer has its words: none is empty, and each is another one after a change.
    #[test]
    fn every_answer_has_its_words() {
        let key = |text: &str| text.parse().unwrap();
        let range = demo();
        let hole =
            range.holes.first().map(|kind| crate::choice::Hole { kind: kind.key.clone(), offset_mm: Dim::mm(5) });
        let all = [
            Change::HeightMm(Dim::mm(400)),
            Change::DepthMm(Dim::mm(400)),
            Change::BayCount(4),
            Change::Share { bay: 2, share: 3 },
            Change::Fill { bay: 2, fill: crate::choice::Fill::Open },
            Change::Hole { bay: 1, hole },
            Change::Device { bay: 3, device: range.devices.first().map(|device| device.key.clone()) },
            Change::Back(key("birch-12")),
            Change::Finish(key("brick")),
            Change::CornerRadiusMm(Dim::mm(12)),
            Change::BowMm(Dim::mm(80)),
            Change::Bowed(Bowed::Left),
            Change::WallMm(Some(Dim::mm(3000))),
            Change::CeilingMm(Some(Dim::mm(2400))),
            Change::ScreenTenthInch(Some(405)),
            Change::Plug(range.plugs.first().map(|plug| plug.key.clone())),
        ];
        let mut said: Vec<String> =
            all.iter().map(|change| line(core::slice::from_ref(change), Step::Answers, None, None)).collect();
        assert!(all.iter().any(|change| change.question() == Some(Question::Place)));
        said.sort();
        said.dedup();
        assert_eq!(said.len(), all.len(), "{said:#?}");
        assert!(said.iter().all(|line| line.contains(" to ") && line.ends_with(": cannot be made")), "{said:#?}");
    }
}

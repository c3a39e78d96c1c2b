//! Every state of every answer against a search of every choice, on thinned ranges of all three models.

use std::collections::BTreeMap;

use slotwright_core::change::Change;
use slotwright_core::choice::{Bay, Choice, Fill, Hole, Hung, Place};
use slotwright_core::options::states::{Reach, State, reaches, states};
use slotwright_core::options::why::{Release, why_shut};
use slotwright_core::options::{Answer, Size};
use slotwright_core::quantity::Dim;
use slotwright_core::question::Question;
use slotwright_core::range::{DimRange, Key, Range};
use slotwright_core::rules::{Rule, judge, judge_stops};
use slotwright_tests::demo;

/// A range with few answers to each question.
pub(crate) fn thinned(model: &str) -> Range {
    let mut range = demo().unwrap();
    range.models.retain(|known| known.key.as_str() == model);
    range.holes.truncate(1);
    range.devices.retain(|device| device.key.as_str() == "receiver");
    let thin = |limits: DimRange, values: i32| {
        let span = limits.most.in_tenths() - limits.least.in_tenths();
        DimRange { step: Dim::tenths(span / (values - 1)), start: limits.least, ..limits }
    };
    let model = range.models.first_mut().unwrap();
    (model.width_mm, model.height_mm, model.depth_mm) =
        (thin(model.width_mm, 4), thin(model.height_mm, 2), thin(model.depth_mm, 2));
    model.bays.most = 2;
    model.shelves_most = 1;
    model.leaves_most = 1;
    model.finishes.truncate(1);
    model.corner_radii_mm.truncate(1);
    range
}

/// How important a question is; shifts take the least important ones of the fewest.
pub(crate) fn importance(question: Question) -> u32 {
    match question {
        Question::Corners => 0,
        Question::Back => 1,
        Question::Shares => 2,
        Question::Depth => 3,
        Question::Height => 4,
        Question::Width => 5,
        Question::Hole(bay) => 10 + u32::from(bay),
        Question::Bay(bay) => 20 + u32::from(bay),
        Question::Bays => 30,
        Question::Finish => 31,
        Question::Device(bay) => 40 + u32::from(bay),
        Question::Place | Question::Model => 50,
    }
}

/// The bay that would come next: like the last one, without its device.
fn next_bay(choice: &Choice) -> Bay {
    Bay { device: None, ..choice.bays.last().unwrap().clone() }
}

/// The questions that two choices answer differently; a bay that is new is compared with the one that would come.
fn differing(from: &Choice, to: &Choice) -> Vec<Question> {
    let mut all = Vec::new();
    let mut add = |differs: bool, question| all.extend(differs.then_some(question));
    add(from.bays.len() != to.bays.len(), Question::Bays);
    let (mut shares, next) = (0, next_bay(from));
    for (at, bay) in to.bays.iter().enumerate() {
        let before = from.bays.get(at).unwrap_or(&next);
        let number = u8::try_from(at + 1).unwrap();
        add(before.fill != bay.fill, Question::Bay(number));
        add(before.hole != bay.hole, Question::Hole(number));
        add(before.device != bay.device, Question::Device(number));
        shares += u32::from(before.share != bay.share);
    }
    // One bay's share is one answer; two are not to be had at once.
    add(shares > 0, Question::Shares);
    add(shares > 1, Question::Model);
    add(from.width_mm != to.width_mm, Question::Width);
    add(from.height_mm != to.height_mm, Question::Height);
    add(from.depth_mm != to.depth_mm, Question::Depth);
    add(from.back != to.back, Question::Back);
    add(from.finish != to.finish, Question::Finish);
    add(from.corner_radius_mm != to.corner_radius_mm, Question::Corners);
    all.sort_by_key(|question| core::cmp::Reverse(importance(*question)));
    all
}

/// Every choice of a thinned range, with the rules that it breaks as bits.
pub(crate) fn every(range: &Range) -> Vec<(Choice, u64)> {
    let model = range.models.first().unwrap();
    let fills = [Fill::Open, Fill::Shelves(1), Fill::Leaf(Hung::Left), Fill::Leaf(Hung::Right)];
    let hole = range.holes.first().map(|kind| Hole { kind: kind.key.clone(), offset_mm: Dim::mm(0) });
    let device = range.devices.first().map(|device| device.key.clone());
    let mut bays = Vec::new();
    for share in 1..=4 {
        for fill in fills {
            for hole in [None, hole.clone()] {
                for device in [None, device.clone()] {
                    bays.push(Bay { share, fill, hole: hole.clone(), device });
                }
            }
        }
    }
    let one = bays.iter().map(|bay| vec![bay.clone()]);
    let two = bays.iter().flat_map(|left| bays.iter().map(|right| vec![left.clone(), right.clone()]));
    let rows: Vec<Vec<Bay>> = one.chain(two).collect();
    let mut every = Vec::new();
    for (width_mm, height_mm, depth_mm, back) in sizes(range) {
        for bays in &rows {
            let choice = Choice {
                model: model.key.clone(),
                width_mm,
                height_mm,
                depth_mm,
                bays: bays.clone(),
                back: back.clone(),
                finish: model.finishes.first().unwrap().clone(),
                corner_radius_mm: *model.corner_radii_mm.first().unwrap(),
                place: Place::default(),
            };
            let judged = judge_stops(range, &choice);
            let broken = judged.stops().fold(0, |broken, finding| broken | bit(finding.rule));
            assert_eq!(judged.holds(), broken == 0);
            every.push((choice, broken));
        }
    }
    every
}

fn sizes(range: &Range) -> Vec<(Dim, Dim, Dim, Key)> {
    let model = range.models.first().unwrap();
    let mut sizes = Vec::new();
    for width in model.width_mm.values() {
        for height in model.height_mm.values() {
            for depth in model.depth_mm.values() {
                sizes.extend(model.backs.iter().map(|back| (width, height, depth, back.clone())));
            }
        }
    }
    sizes
}

fn bit(rule: Rule) -> u64 {
    1 << Rule::ALL.iter().position(|known| *known == rule).unwrap()
}

/// Whether a choice can be come to from another one with an answer taken and some questions pinned; what
/// that changes, the most important question first.
fn way(from: &Choice, to: &Choice, asked: Option<Question>, pins: &[Question]) -> Option<Vec<Question>> {
    // Bays that hold a device, or that are asked for, stay.
    let number = |question: &Question| match question {
        Question::Bay(bay) | Question::Hole(bay) | Question::Device(bay) => usize::from(*bay),
        _ => 0,
    };
    let held = from.bays.iter().rposition(|bay| bay.device.is_some()).map_or(0, |at| at + 1);
    let least = asked.iter().chain(pins).map(number).max().unwrap_or(0).max(held);
    let next = next_bay(from);
    let own = from.bays.iter().chain([&next]).zip(&to.bays);
    let devices = own.clone().all(|(before, after)| after.device.is_none() || after.device == before.device);
    let differing = differing(from, to);
    let fixed = differing.iter().any(|question| asked == Some(*question) || pins.contains(question));
    let moved = fixed || differing.contains(&Question::Model);
    (to.bays.len() >= least && devices && !moved).then_some(differing)
}

/// The best set of other changes, by a search of every choice.
fn best(every: &[(Choice, u64)], from: &Choice, asked: Option<Question>, pins: &[Question]) -> Option<Vec<Question>> {
    let ways = every.iter().filter(|(_, broken)| *broken == 0).filter_map(|(to, _)| way(from, to, asked, pins));
    ways.min_by_key(|differing| {
        (differing.len(), differing.iter().map(|question| importance(*question)).collect::<Vec<_>>())
    })
}

/// No rule and no pin of the explanation can be left out, and together they forbid everything.
fn check_rules(every: &[(Choice, u64)], from: &Choice, change: &Change, (rules, kept): (&[Rule], &[Question])) {
    // Beyond the basics they are taken for granted.
    let beyond = rules.iter().all(|rule| !rule.is_basic());
    let granted: Vec<Rule> = Rule::ALL.iter().copied().filter(|rule| beyond && rule.is_basic()).collect();
    let forbids = |rules: &[Rule], pins: &[Question]| {
        let rules = rules.iter().chain(&granted).fold(0, |all, rule| all | bit(*rule));
        !every.iter().any(|(to, broken)| broken & rules == 0 && way(from, to, change.question(), pins).is_some())
    };
    assert!(forbids(rules, kept), "{rules:?} {kept:?}");
    for left_out in 0..rules.len() {
        let mut fewer = rules.to_vec();
        fewer.remove(left_out);
        assert!(!forbids(&fewer, kept), "{rules:?} without {left_out}");
    }
    for left_out in 0..kept.len() {
        let mut fewer = kept.to_vec();
        fewer.remove(left_out);
        assert!(!forbids(rules, &fewer), "{kept:?} without {left_out}");
    }
}

/// With these pins an answer cannot be had, and none of them can be left out.
fn check_pins(every: &[(Choice, u64)], from: &Choice, asked: Option<Question>, pins: &[Question]) {
    let forbid =
        |pins: &[Question]| !every.iter().any(|(to, broken)| *broken == 0 && way(from, to, asked, pins).is_some());
    assert!(forbid(pins), "{pins:?} {from:?}");
    for left_out in 0..pins.len() {
        let mut fewer = pins.to_vec();
        fewer.remove(left_out);
        assert!(!forbid(&fewer), "{pins:?} without {left_out} {from:?}");
    }
}

/// Without what is let go it can be had, and none of that can stay; what changes then is the best that there is.
fn check_release(every: &[(Choice, u64)], from: &Choice, change: &Change, pins: &[Question], release: &Release) {
    let best = |gone: &[Question]| {
        let kept: Vec<Question> = pins.iter().copied().filter(|pin| !gone.contains(pin)).collect();
        best(every, from, change.question(), &kept)
    };
    let mut own: Vec<Question> = release.changes.iter().filter_map(Change::question).collect();
    own.sort_by_key(|question| core::cmp::Reverse(importance(*question)));
    assert_eq!(best(&release.pins), Some(own), "{change:?} {release:?} {from:?}");
    for left_out in 0..release.pins.len() {
        let mut fewer = release.pins.clone();
        fewer.remove(left_out);
        assert_eq!(best(&fewer), None, "{change:?} {release:?} without {left_out} {from:?}");
    }
}

/// States, shifts and reasons of every answer of some choices of one model.
fn check(model: &str, kinds: usize) {
    let range = thinned(model);
    let every = every(&range);
    assert!(every.len() >= 100_000, "{}", every.len());
    let valid: Vec<&Choice> = every.iter().filter(|(_, broken)| *broken == 0).map(|(choice, _)| choice).collect();
    let pinned: [&[Question]; 5] = [
        &[],
        &[Question::Width],
        &[Question::Depth, Question::Bays],
        &[Question::Bay(1), Question::Shares, Question::Width],
        &[Question::Hole(2), Question::Device(2), Question::Width, Question::Height, Question::Depth],
    ];
    let mut seen: BTreeMap<(&str, usize), usize> = BTreeMap::new();
    let (mut reasons, mut released) = (0, 0);
    // One bay with a device, beside which another bay comes without it.
    let held = valid.iter().find(|choice| choice.bays.len() == 1 && choice.bays.iter().any(|bay| bay.device.is_some()));
    for (at, choice) in valid.iter().step_by(valid.len() / 24).chain(held).enumerate() {
        let pins: Vec<Question> = pinned[at % pinned.len()].iter().copied().filter(|pin| choice.has(*pin)).collect();
        let pins = pins.as_slice();
        for Answer { change, state, .. } in states(&range, choice, pins).unwrap().all() {
            let from = choice.with(change, &range);
            let best = best(&every, &from, change.question(), pins);
            match state {
                State::Open => assert_eq!(best, Some(Vec::new()), "{change:?} {choice:?}"),
                State::Shifts { changes, .. } => {
                    let mut own: Vec<Question> = changes.iter().filter_map(Change::question).collect();
                    own.sort_by_key(|question| core::cmp::Reverse(importance(*question)));
                    assert_eq!(Some(&own), best.as_ref(), "{change:?} {pins:?} {choice:?}");
                    let after = changes.iter().fold(from, |choice, change| choice.with(change, &range));
                    assert!(judge(&range, &after).holds(), "{change:?} {changes:?} {choice:?}");
                }
                State::Shut { proven, .. } => {
                    assert!(*proven && best.is_none(), "{change:?} {pins:?} {best:?} {choice:?}");
                    let why = why_shut(&range, choice, change, pins).unwrap();
                    check_pins(&every, &from, change.question(), &why.pins);
                    if reasons < 25 && !why.rules.is_empty() {
                        check_rules(&every, &from, change, (&why.rules, &why.pins));
                        reasons += 1;
                    }
                    assert_eq!(why.release.is_some(), !why.pins.is_empty());
                    if let Some(release) = &why.release {
                        check_release(&every, &from, change, pins, release);
                        released += 1;
                    }
                }
            }
            let kind = match state {
                State::Open => ("open", 0),
                State::Shifts { changes, .. } => ("shifts", changes.len()),
                State::Shut { .. } => ("shut", 0),
            };
            *seen.entry(kind).or_default() += 1;
        }
        for size in Size::ALL {
            for run in reaches(&range, choice, size, pins) {
                let values = size.limits(range.models.first().unwrap()).values();
                for value in values.filter(|value| (run.from..=run.to).contains(value)) {
                    let change = size.to(value);
                    let best = best(&every, &choice.with(&change, &range), change.question(), pins);
                    let reach = match best.as_deref() {
                        Some([]) => Reach::Open,
                        Some(_) => Reach::Shifts,
                        None => Reach::Shut,
                    };
                    assert_eq!(run.state.reach, reach, "{change:?} {pins:?} {choice:?}");
                }
            }
        }
    }
    assert_eq!(seen.len(), kinds, "open, shut, and shifts of one, of two, of more; {reasons} reasons: {seen:?}");
    assert!(reasons >= 10 && released >= 5, "{reasons} {released}");
}

#[test]
fn states_of_a_low_unit_are_exact() {
    check("sedge", 5);
}

#[test]
fn states_of_a_sideboard_are_exact() {
    check("teasel", 5);
}

#[test]
fn states_of_a_tall_shelf_are_exact() {
    check("bulrush", 4);
}

//! Every state of every answer against a search of every choice, on thinned ranges of all three models.

use std::collections::BTreeMap;
use std::ops::RangeInclusive;

use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question;
use slotwright_core::choice::{Bay, Bowed, Choice, Fill, Hole, Hung, Place, SHARE_MOST};
use slotwright_core::range::{DimRange, Key, Range};
use slotwright_core::rules::{Rule, judge, judge_stops};
use slotwright_core::solver::kept::Given;
use slotwright_core::solver::states::{Reach, State, reaches, states};
use slotwright_core::solver::why::{Release, Why, why_shut};
use slotwright_core::solver::{Answer, Size};
use slotwright_core::units::quantity::Dim;
use slotwright_tests::demo;

use crate::suits::Suits;

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
    model.backs.truncate(1);
    model.corner_radii_mm.truncate(1);
    // None, or one of the lowest.
    model.plinth_mm = model.plinth_mm.map(|limits| DimRange { most: limits.least, start: limits.least, ..limits });
    model.bow_mm = None;
    range
}

/// How important a question is; shifts take the least important ones of the fewest.
pub(crate) fn importance(question: Question) -> u32 {
    match question {
        Question::Corners => 0,
        Question::Back => 1,
        Question::Shares => 2,
        Question::Plinth => 3,
        Question::Depth => 4,
        Question::Height => 5,
        Question::Width => 6,
        Question::Hole(bay) => 10 + u32::from(bay),
        Question::Bay(bay) => 20 + u32::from(bay),
        Question::Bays => 30,
        Question::Bowed => 31,
        Question::Bow => 32,
        Question::Finish => 33,
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
    add(from.plinth_mm != to.plinth_mm, Question::Plinth);
    add(from.bow_mm != to.bow_mm, Question::Bow);
    add(from.bowed != to.bowed, Question::Bowed);
    all.sort_by_key(|question| core::cmp::Reverse(importance(*question)));
    all
}

/// Every choice of a thinned range, with the rules that it breaks as bits.
pub(crate) fn every(range: &Range) -> Vec<(Choice, u64)> {
    every_sharing(range, 1..=SHARE_MOST)
}

/// The same with some shares alone.
pub(crate) fn every_sharing(range: &Range, shares: RangeInclusive<u8>) -> Vec<(Choice, u64)> {
    let model = range.models.first().unwrap();
    let fills = [Fill::Open, Fill::Shelves(1), Fill::Leaf(Hung::Left), Fill::Leaf(Hung::Right)];
    let hole = range.holes.first().map(|kind| Hole { kind: kind.key.clone(), offset_mm: Dim::mm(0) });
    let device = range.devices.first().map(|device| device.key.clone());
    let mut bays = Vec::new();
    for share in shares {
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
    let plinths = || core::iter::once(None).chain(model.plinth_mm.into_iter().flat_map(DimRange::values).map(Some));
    let ends = ends(range);
    for ((width_mm, height_mm, depth_mm, back), plinth_mm) in
        sizes(range).into_iter().flat_map(|size| plinths().map(move |plinth| (size.clone(), plinth)))
    {
        for (bays, (bow_mm, bowed)) in rows.iter().flat_map(|bays| ends.iter().map(move |end| (bays, *end))) {
            let choice = Choice {
                model: model.key.clone(),
                width_mm,
                height_mm,
                depth_mm,
                bays: bays.clone(),
                back: back.clone(),
                finish: model.finishes.first().unwrap().clone(),
                corner_radius_mm: *model.corner_radii_mm.first().unwrap(),
                plinth_mm,
                bow_mm,
                bowed,
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

/// All bows, each of both ends and of one; of a model without them square ends alone.
fn ends(range: &Range) -> Vec<(Dim, Bowed)> {
    let model = range.models.first().unwrap();
    let bowed = if model.bow_mm.is_some() { &Bowed::ALL[..] } else { &Bowed::ALL[..1] };
    let of = |bow| bowed.iter().map(move |(_, bowed)| (bow, *bowed));
    model.bows().values().flat_map(of).collect()
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
pub(crate) fn way(from: &Choice, to: &Choice, asked: Option<Question>, pins: &[Question]) -> Option<Vec<Question>> {
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
fn best(
    every: &[(Choice, u64)],
    from: &Choice,
    asked: Option<Question>,
    (pins, suits): (&[Question], Suits),
) -> Option<Vec<Question>> {
    let holds = every.iter().filter(|(to, broken)| *broken == 0 && suits.hold(to));
    let ways = holds.filter_map(|(to, _)| way(from, to, asked, pins));
    ways.min_by_key(|differing| {
        (differing.len(), differing.iter().map(|question| importance(*question)).collect::<Vec<_>>())
    })
}

/// No rule and no pin of the explanation can be left out, and together they forbid everything.
fn check_rules(
    every: &[(Choice, u64)],
    from: &Choice,
    change: &Change,
    (rules, kept, suits): (&[Rule], &[Question], Suits),
) {
    // Beyond the basics they are taken for granted.
    let beyond = rules.iter().all(|rule| !rule.is_basic());
    let granted: Vec<Rule> = Rule::ALL.iter().copied().filter(|rule| beyond && rule.is_basic()).collect();
    let forbids = |rules: &[Rule], pins: &[Question]| {
        let rules = rules.iter().chain(&granted).fold(0, |all, rule| all | bit(*rule));
        let mut may = every.iter().filter(|(to, broken)| broken & rules == 0 && suits.hold(to));
        !may.any(|(to, _)| way(from, to, change.question(), pins).is_some())
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

/// With these pins, and what was given, an answer cannot be had, and none of them can be left out.
fn check_pins(every: &[(Choice, u64)], from: &Choice, asked: Option<Question>, (why, suits): (&Why, Suits)) {
    let (pins, given) = (why.pins.as_slice(), why.given.as_slice());
    let forbidden = |pins: &[Question], suits: Suits| best(every, from, asked, (pins, suits)).is_none();
    let forbid = |pins: &[Question]| forbidden(pins, suits.only(given));
    assert!(forbid(pins), "{pins:?} {given:?} {from:?}");
    for left_out in given {
        assert!(!forbidden(pins, suits.only(given).without(&[*left_out])), "{given:?} {from:?}");
    }
    for left_out in 0..pins.len() {
        let mut fewer = pins.to_vec();
        fewer.remove(left_out);
        assert!(!forbid(&fewer), "{pins:?} without {left_out} {from:?}");
    }
}

/// Without what is let go it can be had, and none of that can stay; what changes then is the best that there is.
fn check_release(
    every: &[(Choice, u64)],
    from: &Choice,
    change: &Change,
    (pins, suits): (&[Question], Suits),
    release: &Release,
) {
    let best = |gone: &[Question], given: &[Given]| {
        let kept: Vec<Question> = pins.iter().copied().filter(|pin| !gone.contains(pin)).collect();
        best(every, from, change.question(), (&kept, suits.without(given)))
    };
    for left_out in &release.given {
        let fewer: Vec<Given> = release.given.iter().copied().filter(|given| given != left_out).collect();
        assert_eq!(best(&release.pins, &fewer), None, "{change:?} {release:?} with {left_out:?} {from:?}");
    }
    let mut own: Vec<Question> = release.changes.iter().filter_map(Change::question).collect();
    own.sort_by_key(|question| core::cmp::Reverse(importance(*question)));
    assert_eq!(best(&release.pins, &release.given), Some(own), "{change:?} {release:?} {from:?}");
    for left_out in 0..release.pins.len() {
        let mut fewer = release.pins.clone();
        fewer.remove(left_out);
        assert_eq!(best(&fewer, &release.given), None, "{change:?} {release:?} without {left_out} {from:?}");
    }
}

/// A choice beside a wall that is as wide, under a screen that is a little narrower, both, or neither.
fn placed(choice: &Choice, at: usize) -> Choice {
    let mut placed = choice.clone();
    if at % 4 % 2 == 1 {
        placed.place.wall_mm = Some(choice.width_mm);
    }
    if at % 4 > 1 {
        let tenths = f64::from(choice.width_mm) * 337.0_f64.sqrt() / 16.0 / 2.54 - 1.0;
        placed.place.screen_tenth_inch = (0..=u16::MAX).rev().find(|whole| f64::from(*whole) <= tenths);
    }
    placed
}

/// States, shifts and reasons of every answer of some choices of one model.
fn check(model: &str, kinds: usize) {
    let range = thinned(model);
    let every = every(&range);
    assert!(every.len() >= 100_000, "{}", every.len());
    let (seen, [reasons, released, given]) = check_in(&range, &every);
    assert_eq!(seen.len(), kinds, "open, shut, and shifts of one, of two, of more; {reasons} reasons: {seen:?}");
    assert!(reasons >= 10 && released >= 5 && given >= 1, "{reasons} {released} {given}");
}

/// How often each kind of state was seen, and how many reasons, releases and given things were looked at.
type Seen = (BTreeMap<(&'static str, usize), usize>, [usize; 3]);

/// The same of all choices of some range.
pub(crate) fn check_in(range: &Range, every: &[(Choice, u64)]) -> Seen {
    let valid: Vec<&Choice> = every.iter().filter(|(_, broken)| *broken == 0).map(|(choice, _)| choice).collect();
    let pinned: [&[Question]; 5] = [
        &[],
        &[Question::Width],
        &[Question::Depth, Question::Bays, Question::Plinth],
        &[Question::Bay(1), Question::Shares, Question::Width],
        &[Question::Hole(2), Question::Device(2), Question::Width, Question::Height, Question::Depth],
    ];
    let mut seen: BTreeMap<(&'static str, usize), usize> = BTreeMap::new();
    let (mut reasons, mut released, mut given) = (0, 0, 0);
    // One bay with a device, beside which another bay comes without it.
    let held = valid.iter().find(|choice| choice.bays.len() == 1 && choice.bays.iter().any(|bay| bay.device.is_some()));
    for (at, choice) in valid.iter().step_by(valid.len() / 45).chain(held).enumerate() {
        let pins: Vec<Question> = pinned[at % pinned.len()].iter().copied().filter(|pin| choice.has(*pin)).collect();
        let pins = pins.as_slice();
        let choice = &placed(choice, at);
        for Answer { change, state, .. } in states(range, choice, pins).unwrap().all() {
            let from = choice.with(change, range);
            let suits = Suits::of(choice, change.question());
            let best = best(every, &from, change.question(), (pins, suits));
            match state {
                State::Open => assert_eq!(best, Some(Vec::new()), "{change:?} {choice:?}"),
                State::Shifts { changes, .. } => {
                    let mut own: Vec<Question> = changes.iter().filter_map(Change::question).collect();
                    own.sort_by_key(|question| core::cmp::Reverse(importance(*question)));
                    assert_eq!(Some(&own), best.as_ref(), "{change:?} {pins:?} {choice:?}");
                    let after = changes.iter().fold(from, |choice, change| choice.with(change, range));
                    assert!(judge(range, &after).holds() && suits.hold(&after), "{change:?} {changes:?} {choice:?}");
                }
                State::Unfound { .. } => panic!("{change:?} {pins:?} was given up: {choice:?}"),
                State::Shut { .. } => {
                    assert!(best.is_none(), "{change:?} {pins:?} {best:?} {choice:?}");
                    let why = why_shut(range, choice, change, pins).unwrap();
                    check_pins(every, &from, change.question(), (&why, suits));
                    if reasons < 25 && !why.rules.is_empty() {
                        check_rules(every, &from, change, (&why.rules, &why.pins, suits.only(&why.given)));
                        reasons += 1;
                    }
                    given += usize::from(!why.given.is_empty());
                    assert_eq!(why.release.is_some(), !why.pins.is_empty() || !why.given.is_empty());
                    if let Some(release) = &why.release {
                        check_release(every, &from, change, (pins, suits), release);
                        released += 1;
                    }
                }
            }
            let kind = match state {
                State::Open => ("open", 0),
                State::Shifts { changes, .. } => ("shifts", changes.len()),
                State::Shut { .. } | State::Unfound { .. } => ("shut", 0),
            };
            *seen.entry(kind).or_default() += 1;
        }
        for size in Size::ALL {
            for run in reaches(range, choice, size, pins) {
                let values = size.limits(range.models.first().unwrap()).values();
                for value in values.filter(|value| (run.from..=run.to).contains(value)) {
                    let change = size.to(value);
                    let suits = Suits::of(choice, change.question());
                    let best = best(every, &choice.with(&change, range), change.question(), (pins, suits));
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
    (seen, [reasons, released, given])
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

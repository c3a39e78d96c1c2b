//! Published examples, and random search spaces against a search of every point.

use core::cell::{Cell, RefCell};

use proptest::prelude::any;
use proptest::prelude::*;

use super::*;

/// A table of answers and rules over them.
#[derive(Debug)]
struct Table {
    /// The answers of each question; the first one is the present one.
    answers: Vec<Vec<i32>>,
    /// Which questions are lines.
    lines: Vec<bool>,
    rules: Vec<Check>,
}

/// A rule over some questions.
#[derive(Debug)]
enum Check {
    /// These pairs of answers cannot be together.
    Never(usize, usize, Vec<(i32, i32)>),
    /// The sum of these answers is at most that.
    AtMost(Vec<usize>, i32),
    /// The sum is at least that.
    AtLeast(Vec<usize>, i32),
    /// Whatever it is.
    Holds(Vec<usize>, fn(&[i32]) -> bool),
}

impl Check {
    fn questions(&self) -> Vec<usize> {
        match self {
            Self::Never(a, b, _) => vec![*a, *b],
            Self::AtMost(all, _) | Self::AtLeast(all, _) | Self::Holds(all, _) => all.clone(),
        }
    }

    fn holds(&self, point: &[i32]) -> bool {
        let sum = |all: &[usize]| all.iter().map(|at| point[*at]).sum::<i32>();
        match self {
            Self::Never(a, b, pairs) => !pairs.contains(&(point[*a], point[*b])),
            Self::AtMost(all, most) => sum(all) <= *most,
            Self::AtLeast(all, least) => sum(all) >= *least,
            Self::Holds(_, check) => check(point),
        }
    }
}

impl Table {
    fn holds(&self, point: &[i32]) -> bool {
        self.rules.iter().all(|rule| rule.holds(point))
    }

    /// Every point.
    fn points(&self) -> Vec<Vec<i32>> {
        let mut points = vec![Vec::new()];
        for answers in &self.answers {
            points =
                points.iter().flat_map(|point| answers.iter().map(|answer| [point, &[*answer][..]].concat())).collect();
        }
        points
    }

    /// The answer of that number, or on that place.
    fn answer(&self, question: u8, answer: i32) -> i32 {
        let at = usize::from(question);
        if self.lines[at] { answer } else { self.answers[at][1 + usize::try_from(answer).unwrap()] }
    }

    fn now(&self) -> Vec<i32> {
        self.answers.iter().map(|answers| answers[0]).collect()
    }

    fn all(&self) -> QuestionSet {
        (0..self.answers.len()).fold(QuestionSet::NONE, |all, at| all.and(QuestionSet::at(u8::try_from(at).unwrap())))
    }
}

impl SearchSpace for Table {
    type Point = Vec<i32>;

    fn at(&self, point: &Vec<i32>) -> At {
        let mut at = At::NOWHERE;
        (0..).zip(point).for_each(|(question, answer)| at.set(question, *answer));
        at
    }

    fn faults(&self, point: &Vec<i32>, _: &At, _: u64) -> Option<Vec<NoGood>> {
        let broken = self.rules.iter().enumerate().filter(|(_, rule)| !rule.holds(point));
        let fault = |(at, rule): (usize, &Check)| {
            let mut fault = NoGood::of(1 << at);
            for question in rule.questions() {
                let (now, line) = (point[question], self.lines[question]);
                let (from, to) = match rule {
                    Check::AtMost(..) if line => (now, i32::MAX),
                    Check::AtLeast(..) if line => (i32::MIN, now),
                    _ => (now, now),
                };
                let place = u8::try_from(question).unwrap();
                fault.narrow(place, from, to);
                // Of a set, what is as far on the wrong side.
                let others = self.answers[question][1..].iter().enumerate().filter(|(_, other)| match rule {
                    Check::AtMost(..) => **other >= now,
                    Check::AtLeast(..) => **other <= now,
                    _ => false,
                });
                let others = others.fold(0, |all, (number, _)| all | 1 << number);
                if !line && others != 0 {
                    fault.extend(place, others);
                }
            }
            fault
        };
        Some(broken.map(fault).collect())
    }

    fn broken(&self, point: &Vec<i32>, at: &At, rules: u64) -> u64 {
        self.faults(point, at, rules).unwrap().iter().fold(0, |all, fault| all | fault.rules) & rules
    }

    fn lines(&self) -> QuestionSet {
        let lines = (0..).zip(&self.lines).filter(|(_, line)| **line);
        lines.fold(QuestionSet::NONE, |all, (at, _)| all.and(QuestionSet::at(at)))
    }

    fn answers(&self, question: u8) -> Answers<'_> {
        let answers = &self.answers[usize::from(question)][1..];
        if self.lines[usize::from(question)] { Answers::Line(answers) } else { Answers::Set(answers.len()) }
    }

    fn moved(&self, at: &At, question: u8, answer: i32) -> Option<At> {
        let mut moved = *at;
        moved.set(question, self.answer(question, answer));
        Some(moved)
    }

    fn with(&self, point: &Vec<i32>, question: u8, answer: i32) -> Vec<i32> {
        let mut point = point.clone();
        point[usize::from(question)] = self.answer(question, answer);
        point
    }
}

fn none(table: &Table) -> RefCell<NoGoods> {
    RefCell::new(NoGoods::none(table.lines()))
}

/// The changed questions of a point.
fn changed(table: &Table, point: &[i32]) -> QuestionSet {
    let differs =
        table.now().iter().zip(point).enumerate().filter(|(_, (a, b))| a != b).map(|(at, _)| at).collect::<Vec<_>>();
    differs.iter().fold(QuestionSet::NONE, |all, at| all.and(QuestionSet::at(u8::try_from(*at).unwrap())))
}

fn space() -> impl Strategy<Value = Table> {
    let question = (proptest::collection::btree_set(-6..7i32, 1..6), any::<bool>(), any::<prop::sample::Index>());
    let rule =
        (0..4u8, any::<[prop::sample::Index; 3]>(), -8..9i32, proptest::collection::vec((-6..7i32, -6..7i32), 0..12));
    (proptest::collection::vec(question, 2..6), proptest::collection::vec(rule, 1..7)).prop_map(|(questions, rules)| {
        let lines = questions.iter().map(|(_, line, _)| *line).collect();
        let answers = questions.into_iter().map(|(answers, _, now)| {
            let mut answers: Vec<i32> = answers.into_iter().collect();
            let now = now.index(answers.len());
            answers.swap(0, now);
            let here = answers[0];
            answers.sort_by_key(|answer| (answer - here).abs());
            answers
        });
        let answers: Vec<Vec<i32>> = answers.collect();
        let rules = rules.into_iter().map(|(kind, of, bound, pairs)| {
            let [a, b, c] = of.map(|index| index.index(answers.len()));
            let mut some = vec![a, b, c];
            some.sort_unstable();
            some.dedup();
            match kind {
                0 => Check::AtMost(some, bound),
                1 => Check::AtLeast(some, bound),
                _ => Check::Never(a, b, pairs),
            }
        });
        Table { rules: rules.collect(), answers, lines }
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1500))]

    /// The set is the first by size and importance among all points that hold; where there is none, none is found.
    #[test]
    fn the_smallest_set_is_that_of_a_search_of_every_point(table in space()) {
        let best = table.points().into_iter().filter(|point| table.holds(point)).map(|point| {
            let set = changed(&table, &point);
            (set.len(), set)
        });
        match (best.min(), smallest(&table, &table.now(), (table.all(), u64::MAX), (&none(&table), &Cell::new(u32::MAX)))) {
            (Some((_, set)), Outcome::Point((own, point))) => {
                prop_assert!(table.holds(&point));
                prop_assert_eq!((own, changed(&table, &point)), (set, set));
            }
            (None, Outcome::Nothing(nothing)) => {
                // What the proof names is enough: with its rules alone there is none either.
                let alone = |point: &Vec<i32>| table.rules.iter().enumerate().all(|(at, rule)| nothing.rules & (1 << at) == 0 || rule.holds(point));
                prop_assert!(!table.points().iter().any(alone));
            }
            (best, own) => prop_assert!(false, "{best:?} {own:?}"),
        }
    }

    /// What was found for one answer does not make another one wrong: all of them, with a store that they share, and
    /// with some of the rules alone.
    #[test]
    fn what_is_remembered_holds_for_every_answer(table in space(), mask in 1..64u64) {
        let known = none(&table);
        let left = Cell::new(u32::MAX);
        for question in 0..table.answers.len() {
            let free = table.all().without(u8::try_from(question).unwrap());
            for answer in &table.answers[question] {
                let mut point = table.now();
                point[question] = *answer;
                let best = |rules: u64| {
                    let holds = |point: &&Vec<i32>| table.rules.iter().enumerate().all(|(at, rule)| rules & (1 << at) == 0 || rule.holds(point));
                    let points = table.points();
                    let like = points.iter().filter(|other| other[question] == *answer).filter(holds);
                    let sets = like.map(|other| {
                        let differs = (0..other.len()).filter(|at| other[*at] != point[*at]);
                        let set = differs.fold(QuestionSet::NONE, |all, at| all.and(QuestionSet::at(u8::try_from(at).unwrap())));
                        (set.len(), set)
                    });
                    sets.min().map(|(_, set)| set)
                };
                let found = match smallest(&table, &point, (free, u64::MAX), (&known, &left)) {
                    Outcome::Point((set, _)) => Some(set),
                    Outcome::Nothing(_) => None,
                    Outcome::GivenUp => panic!("given up"),
                };
                prop_assert_eq!(found, best(u64::MAX));
                let some = matches!(Search::with_rules(&table, &known, mask).within(&point, free), Outcome::Point(_));
                prop_assert_eq!(some, best(mask).is_some());
            }
        }
    }

    /// A lone line comes to rest at its nearest place that holds.
    #[test]
    fn a_line_changes_as_little_as_it_can(table in space()) {
        let now = table.now();
        for line in (0..now.len()).filter(|at| table.lines[*at]) {
            let place = u8::try_from(line).unwrap();
            let free = QuestionSet::at(place);
            let near = table.answers[line].iter().filter(|answer| {
                let mut point = now.clone();
                point[line] = **answer;
                table.holds(&point)
            });
            let near = near.map(|answer| (answer - now[line]).abs()).min();
            match Search::with_rules(&table, &none(&table), u64::MAX).within(&now, free) {
                Outcome::Point(point) => prop_assert_eq!(Some((point[line] - now[line]).abs()), near),
                Outcome::Nothing(_) => prop_assert_eq!(near, None),
                Outcome::GivenUp => prop_assert!(false),
            }
        }
    }
}

/// Answers of a question that can be taken when others are fixed: its valid domain.
fn domain(table: &Table, question: usize, fixed: &[(usize, i32)]) -> Vec<i32> {
    let free = fixed.iter().fold(table.all(), |free, (at, _)| free.without(u8::try_from(*at).unwrap()));
    let free = free.without(u8::try_from(question).unwrap());
    let can = |answer: &&i32| {
        let mut point = table.now();
        for (at, answer) in fixed {
            point[*at] = *answer;
        }
        point[question] = **answer;
        matches!(Search::with_rules(table, &none(table), u64::MAX).within(&point, free), Outcome::Point(_))
    };
    let mut domain: Vec<i32> = table.answers[question].iter().filter(can).copied().collect();
    domain.sort_unstable();
    domain
}

// Source: Hadzic, Jensen and Andersen's notes on valid domains (2007), the T-shirt: colour black, white, red,
// blue; size S, M, L; print MIB (black only), STW (not S).
#[test]
fn the_shirt_has_its_published_domains() {
    let table = Table {
        answers: vec![vec![0, 1, 2, 3], vec![0, 1, 2], vec![0, 1]],
        lines: vec![false; 3],
        rules: vec![
            Check::Holds(vec![0, 2], |point| point[2] != 0 || point[0] == 0),
            Check::Holds(vec![1, 2], |point| point[2] != 1 || point[1] != 0),
        ],
    };
    assert_eq!(table.points().iter().filter(|point| table.holds(point)).count(), 11);
    let shown = |fixed: &[(usize, i32)]| [0, 1, 2].map(|question| domain(&table, question, fixed));
    assert_eq!(shown(&[(1, 0)])[0], [0], "small ones are black");
    assert_eq!(shown(&[(1, 0)])[2], [0]);
    assert_eq!(shown(&[(2, 0)]), [vec![0], vec![0, 1, 2], vec![0, 1]]);
    assert_eq!((&shown(&[(0, 2)])[1], &shown(&[(0, 2)])[2]), (&vec![1, 2], &vec![1]));
}

/// Three things of two kinds, all different: each pair can be, all three cannot.
#[test]
fn what_holds_in_pairs_may_not_hold_together() {
    let differ = |a, b| Check::Never(a, b, vec![(0, 0), (1, 1)]);
    let table = Table {
        answers: vec![vec![0, 1]; 3],
        lines: vec![false; 3],
        rules: vec![differ(0, 1), differ(0, 2), differ(1, 2)],
    };
    assert!((0..3).all(|question| domain(&table, question, &[]).is_empty()));
}

// Source: bounds propagation, worked by hand: x in 1..10, y in 3..8, z in 0..7, x + y = z.
#[test]
fn lines_have_their_bounds() {
    let table = Table {
        answers: vec![(1..=10).collect(), (3..=8).collect(), (0..=7).collect()],
        lines: vec![true; 3],
        rules: vec![Check::Holds(vec![0, 1, 2], |point| point[0] + point[1] == point[2])],
    };
    let shown = [0, 1, 2].map(|question| domain(&table, question, &[]));
    assert_eq!(shown, [vec![1, 2, 3, 4], vec![3, 4, 5, 6], vec![4, 5, 6, 7]]);
}

/// Wishes that are kept (1) or dropped (0): the questions; what the kept ones ask has to hold for some world.
fn wishes(count: usize, holds: fn(&[i32]) -> bool) -> Table {
    Table {
        answers: vec![vec![1, 0]; count],
        lines: vec![false; count],
        rules: vec![Check::Holds((0..count).collect(), holds)],
    }
}

fn dropped(table: &Table) -> Vec<u8> {
    match smallest(table, &table.now(), (table.all(), u64::MAX), (&none(table), &Cell::new(u32::MAX))) {
        Outcome::Point((set, _)) => set.places().map(|place| place + 1).collect(),
        other => panic!("{other:?}"),
    }
}

// Sources: Junker, "QuickXplain", AAAI 2004, tables 1 and 2: options of 500, 500, 800, 500 and 2600 within 3000;
// O'Sullivan, Papadopoulos, Faltings and Pu, "Representative explanations", AAAI 2007: a budget of 3000, a roof rack
// 500, a convertible 500, a player 500, leather 2600, no rack on a convertible.
#[test]
fn of_published_diagnoses_the_smallest_is_found() {
    let car = wishes(5, |kept| {
        [500, 500, 800, 500, 2600].iter().zip(kept).map(|(cost, kept)| cost * kept).sum::<i32>() <= 3000
    });
    assert_eq!(dropped(&car), [5], "of {{5}} and {{1, 2, 3, 4}}");
    let convertible = wishes(5, |kept| {
        let cost: i32 = [500, 500, 500, 2600].iter().zip(&kept[1..]).map(|(cost, kept)| cost * kept).sum();
        (kept[0] == 0 || cost <= 3000) && !(kept[1] == 1 && kept[2] == 1)
    });
    assert_eq!(dropped(&convertible), [1, 2], "the least important of {{1,2}}, {{1,3}}, {{2,5}}, {{3,5}}, {{2,3,4}}");
}

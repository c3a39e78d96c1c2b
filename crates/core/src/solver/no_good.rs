//! What is known of the points of a search space: proofs that points with some answers do not hold.

use alloc::collections::BTreeMap;

use smallvec::SmallVec;

use super::question_set::QuestionSet;

/// Where a point stands, question by question: an answer of a set by a number of its own, a place on a line.
#[derive(Clone, Copy, Debug)]
pub(crate) struct At {
    answers: [i32; QuestionSet::PLACES],
    /// The mark of each of them.
    marks: [u64; QuestionSet::PLACES],
    /// The questions that are answered at all.
    answered: QuestionSet,
}

/// A number by which answers are found again; different answers may share one, though hardly ever do.
// Source: the mixing of SplitMix64; Steele, Lea and Flood, OOPSLA 2014, figure 17.
const fn mark(question: u8, answer: i32) -> u64 {
    if answer == At::NONE {
        return 0;
    }
    let mixed = ((question as u64) << 32 | answer.cast_unsigned() as u64).wrapping_mul(0x9e37_79b9_7f4a_7c15);
    let mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    mixed ^ (mixed >> 31)
}

impl At {
    /// No question is answered.
    pub(crate) const NOWHERE: Self = Self {
        answers: [Self::NONE; QuestionSet::PLACES],
        marks: [0; QuestionSet::PLACES],
        answered: QuestionSet::NONE,
    };

    /// Stands for no answer.
    pub(crate) const NONE: i32 = i32::MIN;

    /// The answer to a question.
    pub(crate) fn of(&self, question: u8) -> i32 {
        self.answers.get(usize::from(question)).copied().unwrap_or(Self::NONE)
    }

    /// Answers a question.
    pub(crate) fn set(&mut self, question: u8, answer: i32) {
        let place = usize::from(question);
        if let Some((at, marked)) = self.answers.get_mut(place).zip(self.marks.get_mut(place)) {
            (*at, *marked) = (answer, mark(question, answer));
            let rest = self.answered.without(question);
            self.answered = if answer == Self::NONE { rest } else { rest.and(QuestionSet::at(question)) };
        }
    }

    /// The mark of the answers to some questions together.
    fn mark_of(&self, scope: QuestionSet) -> u64 {
        let marks = scope.places().filter_map(|question| self.marks.get(usize::from(question)));
        marks.fold(0, |all, mark| all.wrapping_add(*mark))
    }
}

/// A proof that points do not hold: as long as the questions of the scope keep their answers, or their
/// places within the spans, those rules forbid every point.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct NoGood {
    /// The rules, as bits of a set.
    pub(crate) rules: u64,
    /// The questions that it depends on.
    pub(crate) scope: QuestionSet,
    /// Between what each of them stands, the least important one first.
    spans: Spans,
    also: Option<Also>,
    /// The questions all of whose answers that a search may give were gone through for it.
    pub(crate) exhausted: QuestionSet,
}

/// Other answers to a question of its scope, with which a proof holds as well.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Also {
    question: u8,
    /// By their numbers, as bits.
    answers: u64,
}

impl Also {
    fn has(self, other: Self) -> bool {
        self.question == other.question && other.answers & !self.answers == 0
    }
}

/// First and last place.
type Span = (i32, i32);

type Spans = SmallVec<[Span; 8]>;

impl NoGood {
    /// Of a rule, whatever is answered.
    pub(crate) fn of(rule: u64) -> Self {
        Self { rules: rule, ..Self::default() }
    }

    /// Limits it to points where a question stands between two places.
    pub(crate) fn narrow(&mut self, question: u8, from: i32, to: i32) {
        let at = self.scope.before(question);
        match self.spans.get_mut(at) {
            Some(span) if self.scope.has(question) => *span = (span.0.max(from), span.1.min(to)),
            _ => self.spans.insert(at, (from, to)),
        }
        self.scope = self.scope.and(QuestionSet::at(question));
    }

    /// Between which places of a question it is known to hold.
    pub(crate) fn span(&self, question: u8) -> Span {
        let span = self.spans.get(self.scope.before(question)).filter(|_| self.scope.has(question));
        span.copied().unwrap_or((i32::MIN, i32::MAX))
    }

    /// It holds with these answers to a question of its scope as well: their numbers as bits, so whoever shares
    /// proofs has to number that question's answers alike.
    pub(crate) fn extend(&mut self, question: u8, answers: u64) {
        self.also = Some(Also { question, answers }).filter(|also| also.answers != 0);
    }

    /// With which other answers to a question it holds: their numbers as bits.
    pub(crate) fn others(&self, question: u8) -> u64 {
        match self.also {
            _ if !self.scope.has(question) => u64::MAX,
            Some(also) if also.question == question => also.answers,
            _ => 0,
        }
    }

    /// It holds whatever that question is answered with.
    pub(crate) fn forget(&mut self, question: u8) {
        self.also = self.also.filter(|also| also.question != question);
        if self.scope.has(question) {
            self.spans.remove(self.scope.before(question));
            self.scope = self.scope.without(question);
            self.exhausted = self.exhausted.and(QuestionSet::at(question));
        }
    }

    /// Only where both hold.
    pub(crate) fn join(&mut self, other: &Self) {
        self.rules |= other.rules;
        self.exhausted = self.exhausted.and(other.exhausted);
        if let Some(Also { question, .. }) = self.also.or(other.also) {
            self.extend(question, self.others(question) & other.others(question));
        }
        for (question, span) in other.scope.places().zip(&other.spans) {
            self.narrow(question, span.0, span.1);
        }
    }
}

/// Proofs, to be found again by points: those of one scope together, by the answers that are no line.
#[derive(Clone, Debug)]
pub(crate) struct NoGoods {
    lines: QuestionSet,
    /// Those that depend on the fewest questions first, then in the order of their scopes.
    groups: Vec<Group>,
}

#[derive(Clone, Debug)]
struct Group {
    scope: QuestionSet,
    /// Sets to which every proof has an answer: most speak of things that other points do not have.
    answered: QuestionSet,
    /// The marks that proofs have: most that are asked for are none of them.
    seen: Seen,
    /// By the mark of the answers to those that are no line.
    proofs: BTreeMap<u64, Vec<Proof>>,
}

/// Marks by eight of their bits: the first two and the last six.
#[derive(Clone, Copy, Debug, Default)]
struct Seen([u64; 4]);

impl Seen {
    fn add(&mut self, mark: u64) {
        if let Some(part) = self.0.get_mut((mark >> 62) as usize) {
            *part |= 1 << (mark & 63);
        }
    }

    fn may_have(&self, mark: u64) -> bool {
        self.0.get((mark >> 62) as usize).is_some_and(|part| part & (1 << (mark & 63)) != 0)
    }
}

/// What is known of points with some answers.
#[derive(Clone, Debug)]
struct Proof {
    rules: u64,
    /// The answers to questions that are no line.
    answers: SmallVec<[i32; 8]>,
    /// Where it holds on the lines.
    spans: SmallVec<[Span; 3]>,
    also: Option<Also>,
    exhausted: QuestionSet,
}

impl Proof {
    fn holds(&self, answers: impl Iterator<Item = i32>, lines: impl Iterator<Item = i32>) -> bool {
        let within = self.spans.iter().zip(lines).all(|(span, at)| (span.0..=span.1).contains(&at));
        within && self.answers.iter().copied().eq(answers)
    }

    /// Whether it says all that another one says.
    fn covers(&self, other: &Self) -> bool {
        let alike = self.answers == other.answers;
        let wider = self.spans.iter().zip(&other.spans).all(|(own, other)| own.0 <= other.0 && own.1 >= other.1);
        let more = other.also.is_none_or(|other| self.also.is_some_and(|own| own.has(other)));
        alike && wider && more && self.rules & !other.rules == 0
    }
}

/// How many proofs of the same answers, apart on the lines, are remembered: each is compared with all of them. The first of more is
/// forgotten, which costs a search steps and changes nothing that it finds.
// Chosen: the states of 150 units of the demo range take as long as with all of them.
const ALIKE_MOST: usize = 256;

impl NoGoods {
    /// None yet, of points where these questions are lines.
    pub(crate) fn none(lines: QuestionSet) -> Self {
        Self { lines, groups: Vec::new() }
    }

    /// Remembers one, unless it holds nowhere: shares of different numbers of bays are different answers.
    pub(crate) fn add(&mut self, proof: &NoGood) {
        if proof.spans.iter().any(|(from, to)| from > to) {
            return;
        }
        let (scope, lines) = (proof.scope, self.lines);
        let rank = |scope: QuestionSet| (scope.len(), scope);
        let found = self.groups.binary_search_by_key(&rank(scope), |group| rank(group.scope));
        let at = found.unwrap_or_else(|at| {
            self.groups.insert(at, Group::of(scope, lines));
            at
        });
        let Some(group) = self.groups.get_mut(at) else { return };
        let spans = |of: QuestionSet| of.places().map(|question| proof.span(question));
        let answers: SmallVec<[i32; 8]> = spans(scope.minus(lines)).map(|span| span.0).collect();
        let marks = scope.minus(lines).places().zip(&answers).map(|(question, answer)| mark(question, *answer));
        let mark = marks.fold(0, u64::wrapping_add);
        group.seen.add(mark);
        let none = scope.minus(lines).places().zip(&answers).filter(|(_, answer)| **answer == At::NONE);
        none.for_each(|(question, _)| group.answered = group.answered.without(question));
        let known = group.proofs.entry(mark).or_default();
        let spans = spans(scope.meeting(lines)).collect();
        let new = Proof { rules: proof.rules, answers, spans, also: proof.also, exhausted: proof.exhausted };
        if !known.iter().any(|known| known.covers(&new)) {
            known.retain(|known| !new.covers(known));
            if known.len() == ALIKE_MOST {
                known.remove(0);
            }
            known.push(new);
        }
    }

    /// A proof that some rules forbid a point whatever the free questions are answered with.
    pub(crate) fn closed(&self, at: &At, free: QuestionSet, rules: u64) -> Option<NoGood> {
        let speak = |group: &&Group| group.scope.meeting(free).is_empty() && group.may_speak_of(at);
        let mut groups = self.groups.iter().filter(speak);
        groups.find_map(|group| Some(group.said(group.find(at, self.lines, rules)?, at, self.lines)))
    }

    /// The proof that some rules forbid a point which leaves the fewest free questions to be tried.
    pub(crate) fn narrowest(&self, at: &At, free: QuestionSet, rules: u64) -> Option<NoGood> {
        let (mut best, mut least) = (None, u32::MAX);
        for group in self.groups.iter().filter(|group| group.may_speak_of(at)) {
            let open = group.scope.meeting(free).len();
            if open < least
                && let Some(found) = group.find(at, self.lines, rules)
            {
                (best, least) = (Some((group, found)), open);
                if open == 0 {
                    break;
                }
            }
        }
        best.map(|(group, found)| group.said(found, at, self.lines))
    }
}

impl Group {
    fn of(scope: QuestionSet, lines: QuestionSet) -> Self {
        Self { scope, answered: scope.minus(lines), seen: Seen::default(), proofs: BTreeMap::new() }
    }

    /// Whether a point has all that its proofs speak of.
    fn may_speak_of(&self, at: &At) -> bool {
        self.answered.minus(at.answered).is_empty()
    }

    /// What is known of a point by some rules alone.
    fn find(&self, at: &At, lines: QuestionSet, rules: u64) -> Option<&Proof> {
        let sets = self.scope.minus(lines);
        let mark = at.mark_of(sets);
        let known = if self.seen.may_have(mark) { self.proofs.get(&mark)? } else { return None };
        let here = |scope: QuestionSet| scope.places().map(|question| at.of(question));
        let lines = self.scope.meeting(lines);
        let holds = |known: &&Proof| known.rules & !rules == 0 && known.holds(here(sets), here(lines));
        known.iter().find(holds)
    }

    /// What a proof says of a point.
    fn said(&self, known: &Proof, at: &At, lines: QuestionSet) -> NoGood {
        let (here, lines) = (self.scope.places().map(|question| at.of(question)), self.scope.meeting(lines));
        let spans = self.scope.places().zip(here).map(|(question, at)| {
            let on_line = known.spans.get(lines.before(question)).filter(|_| lines.has(question));
            on_line.copied().unwrap_or((at, at))
        });
        let Proof { rules, also, exhausted, .. } = *known;
        NoGood { rules, scope: self.scope, spans: spans.collect(), also, exhausted }
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn some_answer() -> impl Strategy<Value = i32> {
        prop_oneof![Just(At::NONE), 0..4]
    }

    proptest! {
        /// What is found by marks is what a look at every proof finds.
        #[test]
        fn proofs_are_found_by_their_marks(
            proofs in proptest::collection::vec((1..32_u64, proptest::collection::btree_map(0..6_u8, some_answer(), 1..5)), 1..40),
            points in proptest::collection::vec(proptest::collection::vec(some_answer(), 6), 1..40),
            free in 0..64_u8,
        ) {
            // The first question is a line, on which a proof holds up to a place.
            let mut known = NoGoods::none(QuestionSet::at(0));
            let proof = |(rules, answers): (u64, BTreeMap<u8, i32>)| {
                let mut proof = NoGood::of(rules);
                for (question, answer) in answers {
                    proof.narrow(question, if question == 0 { i32::MIN } else { answer }, answer);
                }
                proof
            };
            let proofs: Vec<NoGood> = proofs.into_iter().map(proof).collect();
            for proof in &proofs {
                known.add(proof);
            }
            let free = (0..6).filter(|at| free & (1 << at) != 0).fold(QuestionSet::NONE, |all, at| all.and(QuestionSet::at(at)));
            for answers in points {
                let mut at = At::NOWHERE;
                for (question, answer) in (0..).zip(&answers) {
                    at.set(question, *answer);
                }
                let holds = |proof: &&NoGood| {
                    let within = |question| (proof.span(question).0..=proof.span(question).1).contains(&at.of(question));
                    proof.rules & !15 == 0 && proof.scope.places().all(within)
                };
                let rank = |scope: QuestionSet| (scope.meeting(free).len(), scope.len());
                let least = proofs.iter().filter(holds).map(|proof| rank(proof.scope)).min();
                prop_assert_eq!(known.narrowest(&at, free, 15).map(|found| rank(found.scope)), least);
                let closed = proofs.iter().filter(holds).any(|proof| proof.scope.meeting(free).is_empty());
                prop_assert_eq!(known.closed(&at, free, 15).is_some(), closed);
            }
        }
    }
}

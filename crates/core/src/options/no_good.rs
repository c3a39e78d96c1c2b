//! What is known of the points of a puzzle: proofs that points with some answers do not hold.

use alloc::collections::BTreeMap;

use smallvec::SmallVec;

use super::scope::Scope;

/// Where a point stands, question by question: an answer of a set by a number of its own, a place on a line.
#[derive(Clone, Copy, Debug)]
pub(crate) struct At([i32; Scope::PLACES]);

impl At {
    /// No question is answered.
    pub(crate) const NOWHERE: Self = Self([Self::NONE; Scope::PLACES]);

    /// Stands for no answer.
    pub(crate) const NONE: i32 = i32::MIN;

    /// The answer to a question.
    pub(crate) fn of(&self, question: u8) -> i32 {
        self.0.get(usize::from(question)).copied().unwrap_or(Self::NONE)
    }

    /// Answers a question.
    pub(crate) fn set(&mut self, question: u8, answer: i32) {
        if let Some(at) = self.0.get_mut(usize::from(question)) {
            *at = answer;
        }
    }
}

/// A proof that points do not hold: as long as the questions of the scope keep their answers, or their
/// places within the spans, those rules forbid every point.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct NoGood {
    /// The rules, as bits of a set.
    pub(crate) rules: u64,
    /// The questions that it depends on.
    pub(crate) scope: Scope,
    /// Between what each of them stands, the least important one first.
    spans: Spans,
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
        self.scope = self.scope.and(Scope::at(question));
    }

    /// Between which places of a question it is known to hold.
    pub(crate) fn span(&self, question: u8) -> Span {
        let span = self.spans.get(self.scope.before(question)).filter(|_| self.scope.has(question));
        span.copied().unwrap_or((i32::MIN, i32::MAX))
    }

    /// It holds whatever that question is answered with.
    pub(crate) fn forget(&mut self, question: u8) {
        if self.scope.has(question) {
            self.spans.remove(self.scope.before(question));
            self.scope = self.scope.without(question);
        }
    }

    /// Only where both hold.
    pub(crate) fn join(&mut self, other: &Self) {
        self.rules |= other.rules;
        for (question, span) in other.scope.places().zip(&other.spans) {
            self.narrow(question, span.0, span.1);
        }
    }
}

/// Proofs, to be found again by points: those of one scope together, by the answers that are no line.
#[derive(Clone, Debug)]
pub(crate) struct NoGoods {
    lines: Scope,
    groups: Vec<Group>,
}

#[derive(Clone, Debug)]
struct Group {
    scope: Scope,
    /// By the answers of those that are no line.
    proofs: BTreeMap<SmallVec<[i32; 8]>, Vec<OnLines>>,
}

/// What a proof says of rules and lines.
#[derive(Clone, Debug)]
struct OnLines {
    rules: u64,
    spans: SmallVec<[Span; 3]>,
}

impl OnLines {
    fn holds(&self, at: impl Iterator<Item = i32>) -> bool {
        self.spans.iter().zip(at).all(|(span, at)| (span.0..=span.1).contains(&at))
    }

    /// Whether it says all that another one says.
    fn covers(&self, other: &Self) -> bool {
        let wider = self.spans.iter().zip(&other.spans).all(|(own, other)| own.0 <= other.0 && own.1 >= other.1);
        wider && self.rules & !other.rules == 0
    }
}

impl NoGoods {
    /// None yet, of points where these questions are lines.
    pub(crate) fn none(lines: Scope) -> Self {
        Self { lines, groups: Vec::new() }
    }

    /// Remembers one, unless it holds nowhere: shares of different numbers of bays are different answers.
    pub(crate) fn add(&mut self, proof: &NoGood) {
        if proof.spans.iter().any(|(from, to)| from > to) {
            return;
        }
        let (scope, lines) = (proof.scope, self.lines);
        let at = self.groups.iter().position(|group| group.scope == scope).unwrap_or_else(|| {
            self.groups.push(Group { scope, proofs: BTreeMap::new() });
            self.groups.len() - 1
        });
        let Some(group) = self.groups.get_mut(at) else { return };
        let spans = |of: Scope| of.places().map(|question| proof.span(question));
        let answers = spans(scope.minus(lines)).map(|span| span.0).collect();
        let new = OnLines { rules: proof.rules, spans: spans(scope.meeting(lines)).collect() };
        let known = group.proofs.entry(answers).or_default();
        if !known.iter().any(|known| known.covers(&new)) {
            known.retain(|known| !new.covers(known));
            known.push(new);
        }
    }

    /// A proof that some rules forbid a point whatever the free questions are answered with.
    pub(crate) fn closed(&self, at: &At, free: Scope, rules: u64) -> Option<NoGood> {
        let mut groups = self.groups.iter().filter(|group| group.scope.meeting(free).is_empty());
        groups.find_map(|group| group.find(at, self.lines, rules))
    }

    /// The proof that some rules forbid a point which leaves the fewest free questions to be tried.
    pub(crate) fn narrowest(&self, at: &At, free: Scope, rules: u64) -> Option<NoGood> {
        let mut best = None;
        let mut least = (u32::MAX, u32::MAX);
        for group in &self.groups {
            let rank = (group.scope.meeting(free).len(), group.scope.len());
            if rank < least
                && let Some(found) = group.find(at, self.lines, rules)
            {
                (best, least) = (Some(found), rank);
            }
        }
        best
    }
}

impl Group {
    fn find(&self, at: &At, lines: Scope, rules: u64) -> Option<NoGood> {
        let here = |scope: Scope| scope.places().map(|question| at.of(question));
        let answers: SmallVec<[i32; 8]> = here(self.scope.minus(lines)).collect();
        let lines = self.scope.meeting(lines);
        let holds = |known: &&OnLines| known.rules & !rules == 0 && known.holds(here(lines));
        let known = self.proofs.get(&answers)?.iter().find(holds)?;
        let spans = self.scope.places().zip(here(self.scope)).map(|(question, at)| {
            let on_line = known.spans.get(lines.before(question)).filter(|_| lines.has(question));
            on_line.copied().unwrap_or((at, at))
        });
        Some(NoGood { rules: known.rules, scope: self.scope, spans: spans.collect() })
    }
}

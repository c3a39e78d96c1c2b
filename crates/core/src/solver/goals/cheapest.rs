//! The cheapest unit that is found: each question in turn gets its cheapest answer, until none of them saves anything.
//!
//! Of one question alone that is exact. Of several it is the cheapest found: two answers together may save what neither
//! saves alone.

use super::{Figure, Search};
use crate::choice::Choice;
use crate::rules::{can_be_made, judge_stops};
use crate::solver::kept::broken;
use crate::solver::question_set::QuestionSet;

impl Search<'_> {
    pub(super) fn cheapest(&mut self, begun: &Choice, free: QuestionSet) -> Choice {
        let mut point = begun.clone();
        let Some(mut figure) = self.figure(&point) else { return point };
        loop {
            let before = figure;
            for question in free.places() {
                if let Some((cheaper, reached)) = self.cheapest_answer(&point, question, figure) {
                    (point, figure) = (cheaper, reached);
                }
            }
            if figure == before || *self.trials == 0 {
                return point;
            }
        }
    }

    /// The cheapest of all answers to one question, with what it costs, if it is cheaper than that.
    fn cheapest_answer(&mut self, point: &Choice, question: u8, figure: Figure) -> Option<(Choice, Figure)> {
        let (mut best, mut most) = (None, figure);
        // What is cheap at least comes first, so that most others cannot be cheaper.
        let mut all: Vec<(Figure, Choice)> = self.others(point, question).into_iter().collect();
        all.sort_by(|(one, _), (other, _)| one.partial_cmp(other).unwrap_or(core::cmp::Ordering::Equal));
        for (least, next) in all {
            if least >= most || *self.trials == 0 {
                break;
            }
            if broken(self.range, &next, self.visit) & self.rules == 0
                && let Some(reached) = self.figure(&next).filter(|reached| *reached < most)
            {
                (best, most) = (Some(next), reached);
            }
        }
        best.map(|best| (best, most))
    }

    /// All other answers to a question with which the unit can be made, each with what it costs at least.
    fn others(&self, point: &Choice, question: u8) -> Vec<(Figure, Choice)> {
        let mut points = self.points(point, question);
        if super::is_size(question) {
            points.extend(self.sizes(point, question, |place, now| place > now));
        }
        let costs = |next: Choice| {
            let (least, _) = judge_stops(self.range, &next).at_least(&next, (self.today, self.backlog))?;
            can_be_made(self.range, &next).then_some((Figure::Price(least), next))
        };
        points.into_iter().filter_map(costs).collect()
    }
}

#[cfg(test)]
mod tests {
    use crate::business::promise::Backlog;
    use crate::choice::Choice;
    use crate::choice::question::Question;
    use crate::order::derive::derive_unproven;
    use crate::range::Range;
    use crate::rules::can_be_made;
    use crate::rules::sample::{Wanted, choices};
    use crate::solver::goals::{Goal, toward};
    use crate::solver::{Size, options};
    use crate::testing::demo;
    use crate::units::money::Money;

    fn price(range: &Range, choice: &Choice) -> Option<Money> {
        let (today, backlog) = ("2026-11-25".parse().unwrap(), Backlog::default());
        let built = can_be_made(range, choice).then(|| derive_unproven(range, choice, today, &backlog).built);
        Some(built??.price.total_minor)
    }

    fn cheapest(range: &Range, choice: &Choice, pins: &[Question]) -> Choice {
        let backlog = Backlog::default();
        let today = "2026-11-25".parse().unwrap();
        let changes = toward(range, choice, Goal::Cheapest, pins, (today, &backlog)).unwrap();
        changes.iter().fold(choice.clone(), |choice, change| choice.with(change, range))
    }

    fn pins_but(choice: &Choice, free: &[Question]) -> Vec<Question> {
        let bays = (1..=choice.bays.len()).filter_map(|bay| u8::try_from(bay).ok());
        let all = Question::OF_UNIT.into_iter().chain(bays.flat_map(Question::of_bay));
        all.filter(|question| !free.contains(question)).collect()
    }

    /// With one question free: no other answer to it is cheaper, and none is dearer than the present one.
    #[test]
    fn of_one_question_it_is_the_cheapest_answer() {
        let range = demo();
        let mut saved = 0;
        for choice in choices(&range, 74, Wanted::Valid).take(6) {
            for size in [Size::Height, Size::Depth] {
                let found = cheapest(&range, &choice, &pins_but(&choice, &[size.question()]));
                let all = size.limits(range.model(&choice.model).unwrap()).values();
                let all = all.map(|value| choice.with(&size.to(value), &range));
                let suits = |choice: &Choice| crate::rules::place::breaches(choice).count();
                let least =
                    all.filter(|next| suits(next) <= suits(&choice)).filter_map(|next| price(&range, &next)).min();
                assert!(price(&range, &found) <= least, "{choice:?}");
                saved += usize::from(price(&range, &found) < price(&range, &choice));
            }
        }
        assert!(saved > 5, "{saved}");
    }

    /// Whatever is free: it is no dearer than before, keeps what is kept, and no single answer makes it cheaper.
    #[test]
    fn no_single_answer_makes_it_cheaper() {
        let range = demo();
        let mut saved = 0;
        for choice in choices(&range, 75, Wanted::Valid).take(4) {
            let pins = [Question::Width, Question::Bays, Question::Finish];
            let found = cheapest(&range, &choice, &pins);
            let (before, now) = (price(&range, &choice).unwrap(), price(&range, &found).unwrap());
            assert!(now <= before && found.width_mm == choice.width_mm && found.finish == choice.finish);
            assert_eq!(found.bays.len(), choice.bays.len());
            saved += usize::from(now < before);
            for answer in options(&range, &found).unwrap().all() {
                let question = answer.change.question();
                if question.is_none_or(|question| pins.contains(&question) || question == Question::Place) {
                    continue;
                }
                let single = found.with(&answer.change, &range);
                assert!(price(&range, &single).is_none_or(|price| price >= now), "{:?} of {found:?}", answer.change);
            }
        }
        assert!(saved > 1, "{saved}");
    }
}

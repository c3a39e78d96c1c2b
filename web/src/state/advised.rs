//! What the adviser said, and of which choice.

use leptos::prelude::*;
use slotwright_core::choice::link::Mark;
use slotwright_core::rules::finding::Severity;
use slotwright_protocol::adviser::{About, Advice, Answer, Explained, Going, Outcome, Question, Wanted, Way};

use super::Desk;
use crate::browser::adviser;

/// An answer and its question.
#[derive(Clone, Debug)]
struct Answered {
    question: Question,
    answer: Answer,
    /// The compact text of the choice that it is about; nothing once something else is kept.
    of: String,
}

/// What the adviser said.
#[derive(Clone, Copy, Debug)]
pub struct Advised {
    /// The last answer of each kind, but what is said of findings.
    told: RwSignal<Vec<Answered>>,
    /// What is said of findings: it stays until there is newer advice, so that nothing comes and goes while a size is
    /// dragged.
    findings: RwSignal<Vec<Advice>>,
    /// The choice that they are of, like [`Answered::of`].
    of: RwSignal<String>,
    /// Whether there is no adviser, or none any more.
    alone: RwSignal<bool>,
    /// What links call the range, once the adviser has said it.
    pub mark: RwSignal<Option<Mark>>,
}

impl Advised {
    /// Nothing was said yet.
    pub fn new() -> Self {
        Self {
            told: RwSignal::new(Vec::new()),
            findings: RwSignal::new(Vec::new()),
            of: RwSignal::new(String::new()),
            alone: RwSignal::new(false),
            mark: RwSignal::new(None),
        }
    }

    /// Nobody gives advice any more, and what was said is none.
    pub fn end(self) {
        self.told.set(Vec::new());
        self.findings.set(Vec::new());
        self.of.set(String::new());
        self.alone.set(true);
    }

    /// Is run again whenever something else is said.
    pub fn track(self) {
        self.told.track();
        self.findings.track();
    }

    /// Something else is kept: what was said without it is old.
    pub fn grow_old(self) {
        self.told.update(|told| told.iter_mut().for_each(|told| told.of.clear()));
        self.of.set(String::new());
    }

    /// These are other questions: what was said of the old ones is not even a look of theirs.
    pub fn forget_answers(self) {
        self.told.set(Vec::new());
    }

    /// This is another model: no finding of the one before is one of it.
    pub fn forget_findings(self) {
        self.findings.set(Vec::new());
    }
}

impl Desk {
    /// What a question to the adviser is about.
    pub fn about(self) -> About {
        About { choice: self.choice.get(), pins: self.pins.get(), bounds: self.bounds.get(), today: self.present_day() }
    }

    /// Takes what the adviser says; what is about an earlier choice comes too late.
    pub(super) fn receive(self, question: Question, answer: Answer) {
        if let Answer::Range(mark) = answer {
            return self.advised.mark.set(Some(mark));
        }
        if self.choice.with_untracked(|present| question.choice() != Some(present)) {
            return;
        }
        let of = self.compact.get_untracked();
        if let Answer::Findings(all) = answer {
            self.advised.of.set(of);
            if self.advised.findings.with_untracked(|known| *known != all) {
                self.advised.findings.set(all);
            }
        } else {
            self.advised.told.update(|told| {
                told.retain(|known| !question.replaces(&known.question));
                told.push(Answered { question, answer, of });
            });
        }
    }

    /// What was said in answer to a kind of question of the present choice.
    fn said<T>(self, pick: impl Fn(&Answered) -> Option<T>) -> Option<T> {
        self.compact.with(|compact| {
            self.advised.told.with(|told| told.iter().filter(|told| told.of == *compact).find_map(pick))
        })
    }

    /// What was said of one answer, if that was the last one asked for.
    pub fn explained(self, wanted: Wanted) -> Option<Explained> {
        self.said(|told| {
            let (Question::Why(_, asked), Answer::Why(explained)) = (&told.question, &told.answer) else { return None };
            (*asked == wanted).then(|| explained.clone())
        })
    }

    /// What the goal that was named last comes to, and how to get there.
    pub fn goal(self) -> Option<(String, Option<Way>)> {
        self.said(|told| {
            let Answer::Goal(sentence, way) = &told.answer else { return None };
            Some((sentence.clone(), way.clone()))
        })
    }

    /// Nobody asks for a goal any more.
    pub fn forget_goal(self) {
        adviser::forget(|question| matches!(question, Question::Goal(..)));
        self.advised.told.update(|told| told.retain(|told| !matches!(told.question, Question::Goal(..))));
    }

    /// What was answered in the last step, what that did, and each answer on a line where they are only counted; nothing
    /// once something else has changed.
    pub fn did(self) -> [String; 3] {
        let did = self.said(|told| {
            let Answer::Did(did) = &told.answer else { return None };
            Some(did.clone())
        });
        did.unwrap_or_default()
    }

    /// How some of all answers go, of whichever choice that was said last, and whether that is the present one.
    pub fn going(self, which: core::ops::Range<usize>) -> (Vec<Going>, bool) {
        self.compact.with(|compact| {
            self.advised.told.with(|told| {
                let states = told.iter().find_map(|told| {
                    let Answer::States(states) = &told.answer else { return None };
                    Some((states.get(which.clone())?.to_vec(), told.of == *compact))
                });
                states.unwrap_or_default()
            })
        })
    }

    /// What is said of findings: of what stops the order, and of what is good to know.
    pub fn advice<T>(self, read: impl FnOnce(&[Advice]) -> T) -> T {
        self.advised.findings.with(|advice| read(advice))
    }

    /// How many of them are good to know.
    pub fn hints(self) -> usize {
        self.advice(|all| all.iter().filter(|advice| advice.severity != Severity::Stops).count())
    }

    /// Whether the advice on findings is about an earlier choice.
    pub fn is_advice_old(self) -> bool {
        self.compact.with(|compact| self.advised.of.with(|of| of != compact))
    }

    /// Whether nobody gives advice.
    pub fn is_alone(self) -> bool {
        self.advised.alone.get()
    }

    /// Takes a way out that was said of a finding; none of an earlier choice.
    pub fn take_way_out(self, outcome: &Outcome) {
        if !untrack(move || self.is_advice_old()) {
            self.follow(outcome);
        }
    }
}

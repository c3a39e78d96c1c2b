//! The states that were passed through, one a step, and at which of them one is: what can be undone and done again.

/// States in the order of their steps, without end.
#[derive(Clone, Debug)]
pub struct History<T> {
    /// How many before them were forgotten.
    forgotten: usize,
    /// Those before the present one, the first one first.
    before: Vec<T>,
    present: T,
    /// Those that were undone, the last one first.
    undone: Vec<T>,
}

impl<T> History<T> {
    /// Nothing was done yet.
    pub const fn new(first: T) -> Self {
        Self::numbered(first, 0)
    }

    /// The same with the number of the first: those before it were forgotten.
    pub const fn numbered(first: T, number: usize) -> Self {
        Self { forgotten: number, before: Vec::new(), present: first, undone: Vec::new() }
    }

    /// Where one is.
    pub const fn present(&self) -> &T {
        &self.present
    }

    /// The number of the present state; that of the first is 0.
    pub const fn number(&self) -> usize {
        self.forgotten + self.before.len()
    }

    /// How many steps can be undone.
    pub const fn behind(&self) -> usize {
        self.before.len()
    }

    /// How many steps can be done again.
    pub const fn ahead(&self) -> usize {
        self.undone.len()
    }

    /// The present state and those before it, the nearest first.
    pub fn backwards(&self) -> impl Iterator<Item = &T> {
        core::iter::once(&self.present).chain(self.before.iter().rev())
    }

    /// Takes a step; what was undone can be done again no longer.
    pub fn push(&mut self, state: T) {
        self.undone.clear();
        self.before.push(core::mem::replace(&mut self.present, state));
    }

    /// Has another state in place of the present one, without a step.
    pub fn amend(&mut self, state: T) {
        self.present = state;
    }

    /// Forgets all states before the one of that number, or before the present one if that is earlier.
    pub fn forget(&mut self, number: usize) {
        let gone = number.saturating_sub(self.forgotten).min(self.before.len());
        self.before.drain(..gone);
        self.forgotten += gone;
    }

    /// Goes to the state of that number; whether there is one.
    pub fn go_to(&mut self, number: usize) -> bool {
        let Some(number) = number.checked_sub(self.forgotten) else { return false };
        if number > self.before.len() + self.undone.len() {
            return false;
        }
        while number < self.before.len() {
            let Some(state) = self.before.pop() else { break };
            self.undone.push(core::mem::replace(&mut self.present, state));
        }
        while number > self.before.len() {
            let Some(state) = self.undone.pop() else { break };
            self.before.push(core::mem::replace(&mut self.present, state));
        }
        true
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    /// The slow twin: all states in a row, and where one is.
    fn follow(steps: &[Option<u16>], moves: &[usize]) -> (History<u16>, Vec<u16>, usize) {
        let mut history = History::new(0);
        let (mut states, mut at) = (vec![0], 0);
        for (step, number) in steps.iter().zip(moves) {
            if let Some(state) = *step {
                states.truncate(at + 1);
                states.push(state);
                at += 1;
                history.push(state);
            } else {
                let there = *number < states.len();
                at = if there { *number } else { at };
                assert_eq!(history.go_to(*number), there);
            }
            assert_eq!((*history.present(), history.number()), (states[at], at));
            assert_eq!(history.ahead(), states.len() - 1 - at);
        }
        (history, states, at)
    }

    proptest! {
        /// After any steps and moves, undoing gives exactly the states before, and doing again those after.
        #[test]
        fn what_is_undone_comes_again(
            steps in prop::collection::vec(prop::option::weighted(0.7, any::<u16>()), 0..60),
            moves in prop::collection::vec(0_usize..40, 60),
        ) {
            let (mut history, states, at) = follow(&steps, &moves);
            prop_assert!(history.backwards().eq(states[..=at].iter().rev()));
            for number in (0..at).rev() {
                prop_assert!(history.go_to(number));
                prop_assert_eq!(*history.present(), states[number]);
            }
            for (number, state) in states.iter().enumerate() {
                prop_assert!(history.go_to(number));
                prop_assert_eq!(history.present(), state);
            }
            prop_assert!(!history.go_to(states.len()));
        }

        /// What is forgotten does not come back, and all others keep their numbers.
        #[test]
        fn what_is_forgotten_does_not_come_back(
            states in prop::collection::vec(any::<u16>(), 1..40), back in 0_usize..40, gone in 0_usize..60,
        ) {
            let mut history = History::new(0);
            for state in &states {
                history.push(*state);
            }
            let at = states.len().saturating_sub(back);
            history.go_to(at);
            let all: Vec<u16> = [0].into_iter().chain(states).collect();
            let first = gone.min(at);
            history.forget(gone);
            prop_assert_eq!((history.number(), history.behind(), history.present()), (at, at - first, &all[at]));
            for (number, state) in all.iter().enumerate() {
                let mut history = history.clone();
                prop_assert_eq!(history.go_to(number), number >= first);
                prop_assert_eq!(history.present(), if number >= first { state } else { &all[at] });
            }
        }

        /// With the number of its first state it goes on as after it forgot those before.
        #[test]
        fn it_goes_on_with_the_number_of_its_first(states in prop::collection::vec(any::<u16>(), 1..20), gone in 0_usize..19) {
            let mut history = History::new(0);
            for state in &states {
                history.push(*state);
            }
            let gone = gone.min(states.len());
            history.forget(gone);
            let all: Vec<u16> = [0].into_iter().chain(states).skip(gone).collect();
            let mut again = History::numbered(all[0], gone);
            for state in &all[1..] {
                again.push(*state);
            }
            prop_assert_eq!((again.number(), again.behind()), (history.number(), history.behind()));
            prop_assert!(again.backwards().eq(history.backwards()) && again.go_to(gone) && !again.go_to(gone.wrapping_sub(1)));
        }

        /// A new step cuts what was undone, and nothing before it.
        #[test]
        fn a_new_step_cuts_what_was_undone(states in prop::collection::vec(any::<u16>(), 1..40), back in 0_usize..40) {
            let mut history = History::new(0);
            for state in &states {
                history.push(*state);
            }
            let kept = states.len().saturating_sub(back);
            history.go_to(kept);
            history.push(7);
            prop_assert_eq!((history.number(), history.ahead()), (kept + 1, 0));
            prop_assert!(history.backwards().eq([7].iter().chain(states[..kept].iter().rev()).chain([&0])));
        }
    }
}

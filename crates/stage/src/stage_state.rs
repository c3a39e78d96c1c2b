//! What the stage tells the page of what it shows.

/// What is shown besides the picture.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct StageState {
    /// Lines, figures and names over the picture, as SVG.
    pub lines: String,
    /// How the unit is shown, in words.
    pub shown: String,
    /// Whether doors are open.
    pub open: bool,
    /// Whether a person stands by.
    pub person: bool,
    /// How far it is apart, in hundredths.
    pub apart: u8,
    /// The step of the assembly that is shown; none for the finished unit.
    pub step: Option<StepState>,
}

/// A step of the assembly.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct StepState {
    /// What to do in it.
    pub sentence: String,
    /// Whether the assembly is playing.
    pub plays: bool,
    /// Whether it is the first step.
    pub first: bool,
    /// Whether it is the last one.
    pub last: bool,
}

impl StageState {
    /// As texts between two threads.
    pub fn into_texts(self) -> Vec<String> {
        let flag = |value: bool| String::from(if value { "1" } else { "" });
        let apart = self.apart.to_string();
        let mut texts = vec![self.lines, self.shown, flag(self.open), flag(self.person), apart];
        if let Some(StepState { sentence, plays, first, last }) = self.step {
            texts.extend([sentence, flag(plays), flag(first), flag(last)]);
        }
        texts
    }

    /// From such texts; what is missing is as in a unit that stands whole.
    pub fn of_texts(texts: impl IntoIterator<Item = String>) -> Self {
        let mut texts = texts.into_iter();
        let mut next = || texts.next().unwrap_or_default();
        let is = |text: String| !text.is_empty();
        let (lines, shown, open, person) = (next(), next(), is(next()), is(next()));
        let apart = next().parse().unwrap_or_default();
        let (sentence, plays, first, last) = (next(), is(next()), is(next()), is(next()));
        let step = (!sentence.is_empty()).then_some(StepState { sentence, plays, first, last });
        Self { lines, shown, open, person, apart, step }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_sent_is_read() {
        let step = StepState { sentence: "3 of 9".into(), last: true, ..StepState::default() };
        for step in [None, Some(step)] {
            let state =
                StageState { shown: "From above.".into(), open: true, apart: 40, step, ..StageState::default() };
            assert_eq!(StageState::of_texts(state.clone().into_texts()), state);
        }
        assert_eq!(StageState::of_texts([]), StageState::default());
    }
}

//! What the stage tells the page of what it shows.

use slotwright_core::words;

/// What is shown besides the picture.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Told {
    /// Dimension lines over the picture, as SVG.
    pub dimensions: String,
    /// What to do in the step of the assembly that is shown; empty for the finished unit.
    pub sentence: String,
    /// Whether the assembly is playing.
    pub plays: bool,
    /// Whether leaves are open.
    pub open: bool,
    /// Whether a person stands by.
    pub person: bool,
    /// How far it is apart, in hundredths.
    pub apart: u8,
}

impl Told {
    /// As texts between two threads.
    pub fn into_texts(self) -> [String; 6] {
        let flag = |value: bool| String::from(if value { "1" } else { "" });
        let apart = words::decimal(f64::from(self.apart), 0);
        [self.dimensions, self.sentence, flag(self.plays), flag(self.open), flag(self.person), apart]
    }

    /// From such texts; what is missing is as in a unit that stands whole.
    pub fn of_texts(texts: impl IntoIterator<Item = String>) -> Self {
        let mut texts = texts.into_iter();
        let mut next = || texts.next().unwrap_or_default();
        let (dimensions, sentence) = (next(), next());
        let [plays, open, person] = [next(), next(), next()].map(|text| !text.is_empty());
        Self { dimensions, sentence, plays, open, person, apart: next().parse().unwrap_or_default() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_told_is_heard() {
        let told = Told { sentence: "3 of 9".into(), open: true, apart: 40, ..Told::default() };
        assert_eq!(Told::of_texts(told.clone().into_texts()), told);
        assert_eq!(Told::of_texts([]), Told::default());
    }
}

//! What the adviser says of findings.

use slotwright_core::choice::question::Question;
use slotwright_core::solver::remedy::MOST;

use crate::parts::notices::Tone;

/// So many texts are what the adviser says of one finding.
pub(super) const TEXTS: usize = 5 + 3 * MOST;

/// What the adviser says of a finding.
#[derive(Clone, Debug, PartialEq)]
pub struct FindingAdvice {
    /// The question concerned.
    pub about: Question,
    /// How much it matters.
    pub tone: Tone,
    /// The sentence.
    pub sentence: String,
    /// Why, and where the figures come from.
    pub grounds: [String; 2],
    /// What can be done about it, the compact texts of the choices that come of it, and what of that which is kept is
    /// let go.
    pub remedies: Vec<[String; 3]>,
}

impl FindingAdvice {
    pub(super) fn of(texts: &[String]) -> Option<Self> {
        let [about, tone, sentence, why, source, remedies @ ..] = texts else { return None };
        let tone = match tone.as_str() {
            "stops" => Tone::Stop,
            "warns" => Tone::Warn,
            _ => Tone::Hint,
        };
        let (sentence, grounds) = (sentence.clone(), [why.clone(), source.clone()]);
        let remedies = remedies.chunks(3).filter_map(|remedy| <[String; 3]>::try_from(remedy.to_vec()).ok());
        let remedies = remedies.filter(|remedy| !remedy[0].is_empty()).collect();
        Some(Self { about: about.parse().ok()?, tone, sentence, grounds, remedies })
    }
}

//! What the adviser says of findings.

use slotwright_core::question::Question;
use slotwright_core::remedy::MOST;

use crate::parts::tells::Tone;

/// So many texts are a note of the adviser's.
pub(super) const NOTE: usize = 5 + 3 * MOST;

/// What the adviser says of a finding.
#[derive(Clone, Debug, PartialEq)]
pub struct Note {
    /// The question concerned.
    pub about: Question,
    /// How much it matters.
    pub tone: Tone,
    /// The sentence.
    pub sentence: String,
    /// Why, and where the figures come from.
    pub grounds: [String; 2],
    /// What can be done about it, the notes of the choices that come of it, and what of that which is kept is let go.
    pub ways: Vec<[String; 3]>,
}

impl Note {
    pub(super) fn of(texts: &[String]) -> Option<Self> {
        let [about, tone, sentence, why, source, ways @ ..] = texts else { return None };
        let tone = match tone.as_str() {
            "stops" => Tone::Stop,
            "warns" => Tone::Warn,
            _ => Tone::Hint,
        };
        let (sentence, grounds) = (sentence.clone(), [why.clone(), source.clone()]);
        let ways = ways.chunks(3).filter_map(|way| <[String; 3]>::try_from(way.to_vec()).ok());
        let ways = ways.filter(|way| !way[0].is_empty()).collect();
        Some(Self { about: about.parse().ok()?, tone, sentence, grounds, ways })
    }
}

//! The faces that documents are set in: widths, kerning, and what stands for letters that a face lacks.

use std::collections::BTreeMap;

use skrifa::instance::{LocationRef, Size};
use skrifa::raw::{FontRef, TableProvider};
use skrifa::{GlyphId, MetadataProvider};

use super::kerning::Kerning;

/// A face and weight.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Face {
    /// For text.
    #[default]
    Text,
    /// The same, strong.
    Strong,
    /// The bookish one, for titles and big figures.
    Heading,
}

impl Face {
    pub(super) const ALL: [Self; 3] = [Self::Text, Self::Strong, Self::Heading];

    /// The file, a subset of its maker's; how it was made stands beside it.
    pub(super) const fn bytes(self) -> &'static [u8] {
        match self {
            Self::Text => include_bytes!("../../fonts/atkinson-400.ttf"),
            Self::Strong => include_bytes!("../../fonts/atkinson-700.ttf"),
            Self::Heading => include_bytes!("../../fonts/literata-600.ttf"),
        }
    }

    const fn number(self) -> usize {
        match self {
            Self::Text => 0,
            Self::Strong => 1,
            Self::Heading => 2,
        }
    }
}

/// Where our faces keep figures of one width: ten places of the private use area.
const LEVEL_FIGURES: u32 = 0xe000;
/// What stands for a letter that no face has: a box, put into our faces for that.
const LACKING: char = '\u{25a1}';

/// Whether a letter is there for what stands around it: where a word may be broken, how letters join, which way they
/// run. Nothing is drawn for it.
const fn is_silent(letter: char) -> bool {
    matches!(letter, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{2069}' | '\u{feff}')
}

/// Whether a letter means nothing outside the face or the program that it was made for.
// Source: Unicode 16.0, 23.5 private-use characters, 23.7 noncharacters.
const fn is_private(letter: char) -> bool {
    let code = letter as u32;
    matches!(code, 0xe000..=0xf8ff | 0xfdd0..=0xfdef | 0xf_0000..) || code & 0xfffe == 0xfffe
}

/// The letter as it may stand in a file: all that is private is one that Unicode has for letters that are not known.
pub(super) fn public(letter: char) -> char {
    match letter {
        _ if letter.is_control() => ' ',
        _ if is_private(letter) => char::REPLACEMENT_CHARACTER,
        _ => letter,
    }
}

/// A glyph with the room that it takes.
#[derive(Clone, Copy, Debug)]
pub(super) struct Glyph {
    pub(super) id: u16,
    /// From it to the next one, kerning included, in parts of the type's height.
    pub(super) advance: f64,
    /// The bytes of the text that it stands for.
    pub(super) from: usize,
    pub(super) to: usize,
}

/// Glyphs of one face, one after the other.
#[derive(Clone, Debug)]
pub(super) struct Run {
    pub(super) face: Face,
    pub(super) glyphs: Vec<Glyph>,
}

#[derive(Debug)]
struct Loaded {
    per_unit: f64,
    /// The glyphs of letters; there are no others than the first 65 536.
    glyphs: BTreeMap<char, u16>,
    /// Widths of glyphs by their number, in units of the face.
    widths: Vec<f32>,
    kerning: Kerning,
}

/// All faces, ready to measure with.
#[derive(Debug)]
pub(super) struct Faces([Option<Loaded>; 3]);

impl Loaded {
    fn of(face: Face) -> Option<Self> {
        let font = FontRef::new(face.bytes()).ok()?;
        let metrics = font.glyph_metrics(Size::unscaled(), LocationRef::default());
        let widths = (0..metrics.glyph_count()).map(|id| metrics.advance_width(GlyphId::new(id)).unwrap_or(0.0));
        let letters = font
            .charmap()
            .mappings()
            .filter_map(|(code, glyph)| Some((char::from_u32(code)?, u16::try_from(glyph.to_u32()).ok()?)));
        Some(Self {
            per_unit: 1.0 / f64::from(font.head().ok()?.units_per_em()),
            glyphs: letters.collect(),
            widths: widths.collect(),
            kerning: Kerning::of(&font, u16::try_from(metrics.glyph_count()).ok()?),
        })
    }

    fn width(&self, glyph: u16) -> f64 {
        self.widths.get(usize::from(glyph)).map_or(0.0, |width| f64::from(*width) * self.per_unit)
    }

    fn kerning(&self, left: u16, right: u16) -> f64 {
        f64::from(self.kerning.between(left, right)) * self.per_unit
    }
}

impl Faces {
    pub(super) fn load() -> Self {
        Self(Face::ALL.map(Loaded::of))
    }

    fn of(&self, face: Face) -> Option<&Loaded> {
        self.0.get(face.number())?.as_ref()
    }

    /// The face and the glyph of a letter, and whether it is there: what the face lacks is taken from the bookish one,
    /// which has more, and what that lacks as well is the box.
    fn glyph(&self, letter: char, face: Face, level: bool) -> Option<(Face, u16, bool)> {
        let shown = public(letter);
        let shown = level_figure(shown).filter(|_| level).unwrap_or(shown);
        let of = |face: Face, letter: char| self.of(face)?.glyphs.get(&letter).copied();
        let found = [face, Face::Heading].into_iter().find_map(|face| Some((face, of(face, shown)?, true)));
        found.or_else(|| Some((face, of(face, LACKING)?, false)))
    }

    /// The glyphs of a text, and the letters that no face has; `level` figures are all of one width.
    pub(super) fn shape(&self, text: &str, face: Face, level: bool) -> (Vec<Run>, Vec<char>) {
        let (mut runs, mut lacking): (Vec<Run>, Vec<char>) = (Vec::new(), Vec::new());
        for (from, letter) in text.char_indices().filter(|(_, letter)| !is_silent(*letter)) {
            let Some((face, id, is_there)) = self.glyph(letter, face, level) else { continue };
            let Some(loaded) = self.of(face) else { continue };
            lacking.extend((!is_there).then_some(letter));
            let glyph = Glyph { id, advance: loaded.width(id), from, to: from + letter.len_utf8() };
            match runs.last_mut().filter(|run| run.face == face) {
                Some(run) => {
                    if let Some(before) = run.glyphs.last_mut() {
                        before.advance += loaded.kerning(before.id, id);
                    }
                    run.glyphs.push(glyph);
                }
                None => runs.push(Run { face, glyphs: vec![glyph] }),
            }
        }
        (runs, lacking)
    }

    /// How long a text is, in parts of its type's height.
    pub(super) fn width(&self, text: &str, face: Face, level: bool) -> f64 {
        let mut width = 0.0;
        let mut before: Option<(Face, u16)> = None;
        for letter in text.chars().filter(|letter| !is_silent(*letter)) {
            let Some((face, id, _)) = self.glyph(letter, face, level) else { continue };
            let Some(loaded) = self.of(face) else { continue };
            if let Some((_, left)) = before.filter(|(other, _)| *other == face) {
                width += loaded.kerning(left, id);
            }
            width += loaded.width(id);
            before = Some((face, id));
        }
        width
    }
}

fn level_figure(letter: char) -> Option<char> {
    char::from_u32(LEVEL_FIGURES + letter.to_digit(10)?)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn width(text: &str, face: Face) -> f64 {
        Faces::load().width(text, face, false)
    }

    #[test]
    fn all_faces_are_read() {
        assert!(Faces::load().0.iter().all(Option::is_some));
    }

    // Source: hmtx, cmap and GPOS of the three files as fontTools 4.68 reads them.
    #[test]
    fn letters_have_the_widths_and_the_kerning_of_their_face() {
        let pair = width("AV", Face::Text) - width("A", Face::Text) - width("V", Face::Text);
        assert!(pair < -0.02, "{pair}");
        assert!((Faces::load().width("1", Face::Text, true) - 0.632).abs() < 1e-6);
        assert!((width("1", Face::Text) - 0.407).abs() < 1e-6);
        assert!((width("\u{202f}", Face::Text) - 0.18).abs() < 1e-6);
    }

    #[test]
    fn a_text_is_as_long_as_its_glyphs() {
        let faces = Faces::load();
        for text in ["To be kerned: AVATAR, fi, Ōtani 李 → 1\u{202f}240.5", "", "co\u{ad}operate"] {
            let (runs, _) = faces.shape(text, Face::Text, true);
            let sum: f64 = runs.iter().flat_map(|run| &run.glyphs).map(|glyph| glyph.advance).sum();
            assert!((sum - faces.width(text, Face::Text, true)).abs() < 1e-9, "{text}");
        }
    }

    #[test]
    fn figures_in_a_column_are_of_one_width() {
        let faces = Faces::load();
        for face in Face::ALL {
            let widths = ["1111", "0000", "4714"].map(|text| faces.width(text, face, true));
            assert!(widths.iter().all(|width| (width - widths[0]).abs() < 1e-9), "{face:?} {widths:?}");
        }
    }

    /// What the issue wants printed is there, in the face or in the bookish one; nothing that is not is dropped.
    #[test]
    fn no_letter_vanishes() {
        let faces = Faces::load();
        let signs = "\u{a0}\u{202f}×–−°²³½€£↑↓←→≤≥·•☐ŌōŁőßẞșț";
        for face in Face::ALL {
            let (runs, lacking) = faces.shape(signs, face, false);
            assert_eq!(lacking, [], "{face:?}");
            assert_eq!(runs.iter().flat_map(|run| &run.glyphs).count(), signs.chars().count());
            let (runs, lacking) = faces.shape("Li 李 א", face, false);
            assert_eq!(lacking, ['李', 'א']);
            assert_eq!(runs.iter().flat_map(|run| &run.glyphs).count(), 6);
        }
    }
}

//! How much nearer pairs of letters stand than their widths say: a face's table, made ready to look up.

use std::collections::BTreeMap;

use skrifa::GlyphId16;
use skrifa::raw::tables::gpos::{PairPos, PairPosFormat1, PairPosFormat2, PositionLookup};
use skrifa::raw::{FontRef, TableProvider};

/// Pairs of a face, one table after the other; the first that knows a pair says it.
// Source: OpenType 1.9.1, GPOS, lookup type 2, pair adjustment.
#[derive(Debug, Default)]
pub(super) struct Kerning(Vec<Pairs>);

#[derive(Debug)]
enum Pairs {
    /// Single pairs.
    Single(BTreeMap<(u16, u16), i16>),
    /// Classes of the left glyph, where it is covered, and of the right one; a row of values for each left class.
    Classes { left: Vec<Option<usize>>, right: Vec<usize>, values: Vec<Vec<i16>> },
}

impl Kerning {
    /// The pairs of a face of so many glyphs; none where it says nothing that is understood.
    pub(super) fn of(font: &FontRef<'_>, glyphs: u16) -> Self {
        Self(pairs(font, glyphs).unwrap_or_default())
    }

    /// In units of the face.
    pub(super) fn between(&self, left: u16, right: u16) -> i16 {
        self.0.iter().find_map(|pairs| pairs.between(left, right)).unwrap_or(0)
    }
}

impl Pairs {
    fn between(&self, left: u16, right: u16) -> Option<i16> {
        match self {
            Self::Single(pairs) => pairs.get(&(left, right)).copied(),
            Self::Classes { left: classes, right: others, values } => {
                let row = values.get((*classes.get(usize::from(left))?)?)?;
                row.get(*others.get(usize::from(right))?).copied()
            }
        }
    }
}

fn pairs(font: &FontRef<'_>, glyphs: u16) -> Option<Vec<Pairs>> {
    let list = font.gpos().ok()?.lookup_list().ok()?;
    let mut all = Vec::new();
    for lookup in list.lookups().iter().flatten() {
        let PositionLookup::Pair(lookup) = lookup else { continue };
        for table in lookup.subtables().iter().flatten() {
            all.extend(match table {
                PairPos::Format1(table) => single(&table),
                PairPos::Format2(table) => classes(&table, glyphs),
            });
        }
    }
    Some(all)
}

fn single(table: &PairPosFormat1<'_>) -> Option<Pairs> {
    let mut pairs = BTreeMap::new();
    for (left, set) in table.coverage().ok()?.iter().zip(table.pair_sets().iter().flatten()) {
        for pair in set.pair_value_records().iter().flatten() {
            let key = (left.to_u16(), pair.second_glyph().to_u16());
            pairs.entry(key).or_insert(pair.value_record1().x_advance().unwrap_or(0));
        }
    }
    Some(Pairs::Single(pairs))
}

fn classes(table: &PairPosFormat2<'_>, glyphs: u16) -> Option<Pairs> {
    let (coverage, first, second) = (table.coverage().ok()?, table.class_def1().ok()?, table.class_def2().ok()?);
    let left = (0..glyphs).map(|id| {
        let id = GlyphId16::new(id);
        coverage.get(id).map(|_| usize::from(first.get(id)))
    });
    let right = (0..glyphs).map(|id| usize::from(second.get(GlyphId16::new(id))));
    let values = table.class1_records().iter().flatten().map(|row| {
        let row = row.class2_records().iter().flatten();
        row.map(|value| value.value_record1().x_advance().unwrap_or(0)).collect()
    });
    Some(Pairs::Classes { left: left.collect(), right: right.collect(), values: values.collect() })
}

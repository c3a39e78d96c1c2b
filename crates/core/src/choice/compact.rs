//! A choice as a short TOML text: what the page keeps for the next visit and passes to its order
//! desk. Orders themselves are JSON.

use core::fmt::Write;

use toml::de::DeTable;

use super::{Bowed, Choice, Fill, Hung, Place};
use crate::range::{Fields, ReadLog, read_bay};
use crate::units::quantity::Dim;

impl Choice {
    /// The choice as its compact text.
    pub fn to_compact(&self) -> String {
        let mut compact = String::new();
        // Writing to a String cannot fail.
        let _ = self.write(&mut compact);
        compact
    }

    fn write(&self, compact: &mut String) -> core::fmt::Result {
        writeln!(compact, "model = \"{}\"\nback = \"{}\"\nfinish = \"{}\"", self.model, self.back, self.finish)?;
        writeln!(compact, "width_mm = {}\nheight_mm = {}", self.width_mm, self.height_mm)?;
        writeln!(compact, "depth_mm = {}\ncorner_radius_mm = {}", self.depth_mm, self.corner_radius_mm)?;
        if let Some(plinth) = self.plinth_mm {
            writeln!(compact, "plinth_mm = {plinth}")?;
        }
        if !self.bow_mm.is_zero() {
            writeln!(compact, "bow_mm = {}", self.bow_mm)?;
        }
        if self.bowed != Bowed::default() {
            writeln!(compact, "bowed = \"{}\"", self.bowed.word())?;
        }
        if let Some(wall) = self.place.wall_mm {
            writeln!(compact, "wall_mm = {wall}")?;
        }
        if let Some(ceiling) = self.place.ceiling_mm {
            writeln!(compact, "ceiling_mm = {ceiling}")?;
        }
        if let Some(tenths) = self.place.screen_tenth_inch {
            writeln!(compact, "screen_tenth_inch = {tenths}")?;
        }
        if let Some(plug) = &self.place.plug {
            writeln!(compact, "plug = \"{plug}\"")?;
        }
        for bay in &self.bays {
            write!(compact, "[[bay]]\nshare = {}\nfill = ", bay.share)?;
            match bay.fill {
                Fill::Open => writeln!(compact, "\"open\"")?,
                Fill::Shelves(count) => writeln!(compact, "{{ shelves = {count} }}")?,
                Fill::Leaf(Hung::Left) => writeln!(compact, "{{ leaf = \"left\" }}")?,
                Fill::Leaf(Hung::Right) => writeln!(compact, "{{ leaf = \"right\" }}")?,
            }
            if let Some(hole) = &bay.hole {
                writeln!(compact, "hole = {{ kind = \"{}\", offset_mm = {} }}", hole.kind, hole.offset_mm)?;
            }
            if let Some(device) = &bay.device {
                writeln!(compact, "device = \"{device}\"")?;
            }
        }
        Ok(())
    }

    /// Reads a compact text; `None` if it is none.
    pub fn of_compact(compact: &str) -> Option<Self> {
        let root = DeTable::parse(compact).ok()?;
        let mut log = ReadLog::default();
        let mut fields = Fields::new(root.into_inner(), &mut log);
        let choice = read(&mut fields);
        fields.done();
        log.problems.is_empty().then_some(choice)
    }
}

fn read(fields: &mut Fields<'_>) -> Choice {
    let tenths = |fields: &mut Fields<'_>| fields.whole("screen_tenth_inch", u16::MAX.into());
    Choice {
        model: fields.key("model"),
        back: fields.key("back"),
        finish: fields.key("finish"),
        width_mm: fields.dim("width_mm"),
        height_mm: fields.dim("height_mm"),
        depth_mm: fields.dim("depth_mm"),
        corner_radius_mm: fields.dim("corner_radius_mm"),
        plinth_mm: fields.has("plinth_mm").then(|| fields.dim("plinth_mm")),
        bow_mm: if fields.has("bow_mm") { fields.dim("bow_mm") } else { Dim::default() },
        bowed: if fields.has("bowed") { fields.word("bowed", &Bowed::ALL, Bowed::Both) } else { Bowed::Both },
        place: Place {
            wall_mm: fields.has("wall_mm").then(|| fields.dim("wall_mm")),
            ceiling_mm: fields.has("ceiling_mm").then(|| fields.dim("ceiling_mm")),
            screen_tenth_inch: if fields.has("screen_tenth_inch") { u16::try_from(tenths(fields)).ok() } else { None },
            plug: fields.has("plug").then(|| fields.key("plug")),
        },
        bays: if fields.has("bay") { fields.tables("bay", read_bay) } else { Vec::new() },
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::rules::sample::{Wanted, choices};
    use crate::testing::demo;

    proptest! {
        /// What was written is what is read, absurd choices too.
        #[test]
        fn a_compact_text_keeps_the_choice(seed in any::<u64>()) {
            let range = demo();
            for choice in choices(&range, seed, Wanted::Any).take(4) {
                prop_assert_eq!(Choice::of_compact(&choice.to_compact()), Some(choice));
            }
        }

        #[test]
        fn no_text_makes_it_panic(text in "\\PC{0,200}") {
            let _ = Choice::of_compact(&text);
        }
    }
}

//! A choice as a short TOML text: what the page keeps for the next visit and passes to its order
//! desk. Orders themselves are JSON.

use core::fmt::Write;

use toml::de::DeTable;

use super::{Choice, Fill, Hung, Place};
use crate::range::{Fields, Notes, read_bay};

impl Choice {
    /// The choice as a note.
    pub fn to_note(&self) -> String {
        let mut note = String::new();
        // Writing to a String cannot fail.
        let _ = self.write(&mut note);
        note
    }

    fn write(&self, note: &mut String) -> core::fmt::Result {
        writeln!(note, "model = \"{}\"\nback = \"{}\"\nfinish = \"{}\"", self.model, self.back, self.finish)?;
        writeln!(note, "width_mm = {}\nheight_mm = {}", self.width_mm, self.height_mm)?;
        writeln!(note, "depth_mm = {}\ncorner_radius_mm = {}", self.depth_mm, self.corner_radius_mm)?;
        if let Some(wall) = self.place.wall_mm {
            writeln!(note, "wall_mm = {wall}")?;
        }
        if let Some(tenths) = self.place.screen_tenth_inch {
            writeln!(note, "screen_tenth_inch = {tenths}")?;
        }
        if let Some(plug) = &self.place.plug {
            writeln!(note, "plug = \"{plug}\"")?;
        }
        for bay in &self.bays {
            write!(note, "[[bay]]\nshare = {}\nfill = ", bay.share)?;
            match bay.fill {
                Fill::Open => writeln!(note, "\"open\"")?,
                Fill::Shelves(count) => writeln!(note, "{{ shelves = {count} }}")?,
                Fill::Leaf(Hung::Left) => writeln!(note, "{{ leaf = \"left\" }}")?,
                Fill::Leaf(Hung::Right) => writeln!(note, "{{ leaf = \"right\" }}")?,
            }
            if let Some(hole) = &bay.hole {
                writeln!(note, "hole = {{ kind = \"{}\", offset_mm = {} }}", hole.kind, hole.offset_mm)?;
            }
            if let Some(device) = &bay.device {
                writeln!(note, "device = \"{device}\"")?;
            }
        }
        Ok(())
    }

    /// Reads a note; `None` if it is none.
    pub fn of_note(note: &str) -> Option<Self> {
        let root = DeTable::parse(note).ok()?;
        let mut notes = Notes::default();
        let mut fields = Fields::new(root.into_inner(), &mut notes);
        let choice = read(&mut fields);
        fields.done();
        notes.problems.is_empty().then_some(choice)
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
        place: Place {
            wall_mm: fields.has("wall_mm").then(|| fields.dim("wall_mm")),
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
    use crate::sample::{Wanted, choices};
    use crate::testing::demo;

    proptest! {
        /// What was noted is what is read, absurd choices too.
        #[test]
        fn a_note_keeps_the_choice(seed in any::<u64>()) {
            let range = demo();
            for choice in choices(&range, seed, Wanted::Any).take(4) {
                prop_assert_eq!(Choice::of_note(&choice.to_note()), Some(choice));
            }
        }

        #[test]
        fn no_text_makes_it_panic(text in "\\PC{0,200}") {
            let _ = Choice::of_note(&text);
        }
    }
}

//! Sizes of paper, and how labels lie on it.

use slotwright_core::units::quantity::Length;

use crate::vector::Spot;

/// So many points of type; 72 of them are an inch. Source: ISO 32000-1:2008, 8.3.2.3, default user space.
pub const fn pt(points: f64) -> Length {
    Length::mm(points * 25.4 / 72.0)
}

/// A size of paper, upright or lying.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Format {
    /// Width.
    pub width: Length,
    /// Height.
    pub height: Length,
}

impl Format {
    /// Source: ISO 216:2007, A4.
    pub const A4: Self = Self::mm(210.0, 297.0);
    /// Source: ANSI/ASME Y14.1, size A, 8½ × 11 in; from memory.
    pub const LETTER: Self = Self::mm(215.9, 279.4);

    /// A size in millimetres.
    pub const fn mm(width: f64, height: f64) -> Self {
        Self { width: Length::mm(width), height: Length::mm(height) }
    }

    /// The same paper turned by a quarter.
    #[must_use]
    pub const fn turned(self) -> Self {
        Self { width: self.height, height: self.width }
    }
}

/// How labels of one size lie on a sheet, in columns and rows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Labels {
    /// The sheet.
    pub format: Format,
    /// Side by side.
    pub columns: u32,
    /// One below the other.
    pub rows: u32,
    /// Width of a label.
    pub width: Length,
    /// Height of a label.
    pub height: Length,
    /// The first one's corner at the top left.
    pub first: Spot,
    /// From one to the next: across and down.
    pub pitch: Spot,
}

impl Labels {
    /// A4 with 3 × 8 labels of 70 × 37 mm. Common practice.
    pub const A4_3_BY_8: Self = Self::on(Format::A4, (3, 8), (70.0, 37.0), (0.0, 0.5), (70.0, 37.0));
    /// A4 with 2 × 7 labels of 99.1 × 38.1 mm. Common practice.
    pub const A4_2_BY_7: Self = Self::on(Format::A4, (2, 7), (99.1, 38.1), (4.65, 15.15), (101.6, 38.1));
    /// Letter with 3 × 10 labels of 66.7 × 25.4 mm. Common practice.
    pub const LETTER_3_BY_10: Self = Self::on(Format::LETTER, (3, 10), (66.7, 25.4), (4.75, 12.7), (69.85, 25.4));
    /// A label printer's roll, 100 × 50 mm. Common practice.
    pub const ROLL_100_BY_50: Self = Self::roll(100.0, 50.0);
    /// A label printer's roll, 62 × 29 mm. Common practice.
    pub const ROLL_62_BY_29: Self = Self::roll(62.0, 29.0);

    /// All of them.
    pub const ALL: [Self; 5] =
        [Self::A4_3_BY_8, Self::A4_2_BY_7, Self::LETTER_3_BY_10, Self::ROLL_100_BY_50, Self::ROLL_62_BY_29];

    const fn on(
        format: Format,
        (columns, rows): (u32, u32),
        (width, height): (f64, f64),
        (left, top): (f64, f64),
        (across, down): (f64, f64),
    ) -> Self {
        let (width, height) = (Length::mm(width), Length::mm(height));
        Self { format, columns, rows, width, height, first: Spot::mm(left, top), pitch: Spot::mm(across, down) }
    }

    const fn roll(width: f64, height: f64) -> Self {
        Self::on(Format::mm(width, height), (1, 1), (width, height), (0.0, 0.0), (width, height))
    }

    /// How many a sheet has.
    pub const fn count(self) -> u32 {
        self.columns.saturating_mul(self.rows)
    }

    /// Where on its sheet the label of that number lies, counted from 0 along the rows.
    pub fn at(self, number: u32) -> Spot {
        let on_sheet = number % self.count().max(1);
        let (column, row) = (on_sheet % self.columns.max(1), on_sheet / self.columns.max(1));
        self.first.moved(Spot::new(self.pitch.x * f64::from(column), self.pitch.y * f64::from(row)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn all_labels_lie_on_their_sheet_and_apart() {
        for labels in Labels::ALL {
            for number in 0..labels.count() {
                let at = labels.at(number);
                let inside = at.x >= Length::ZERO && at.y >= Length::ZERO;
                let (right, bottom) = ((at.x + labels.width).in_mm(), (at.y + labels.height).in_mm());
                let fits = right < labels.format.width.in_mm() + 0.01 && bottom < labels.format.height.in_mm() + 0.01;
                assert!(inside && fits, "{number} of {labels:?}");
            }
            assert!(labels.pitch.x >= labels.width && labels.pitch.y >= labels.height, "{labels:?}");
            // What is left on both sides is the same.
            let margin = labels.format.width - labels.at(labels.columns - 1).x - labels.width;
            assert!((margin - labels.first.x).abs().in_mm() < 0.02, "{labels:?}: {margin:?}");
        }
    }

    #[test]
    fn the_label_after_a_full_sheet_is_the_first_again() {
        assert_eq!(Labels::A4_3_BY_8.at(24), Labels::A4_3_BY_8.at(0));
        assert_eq!(Labels::A4_3_BY_8.at(4), Spot::mm(70.0, 37.5));
    }
}

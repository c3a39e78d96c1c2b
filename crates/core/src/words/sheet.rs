//! What stands on the sheet of paper that a unit is printed on, beside names, figures and findings.

use crate::units::day::Day;
use crate::units::quantity::Dim;

/// A text of the sheet.
#[derive(Clone, Copy, Debug)]
pub enum Message {
    /// The day on which it was drawn.
    DrawnOn(Day),
    /// Overall sizes.
    Sizes {
        /// Width.
        width: Dim,
        /// Height.
        height: Dim,
        /// Depth.
        depth: Dim,
    },
    /// The views are so many times smaller than the unit.
    Scale(u32),
    /// What the bar is for by which a print is checked.
    Bar,
    /// The heading of a bay, counted from 1.
    Bay(usize),
    /// The day on which it arrives, if it is ordered on the day of the sheet.
    ByIfOrdered(Day, Day),
    /// So many more hints than have room.
    MoreHints(usize),
    /// What to mind about cables and devices.
    Electrics,
    /// What the code is for.
    Code,
    /// No QR code holds the link.
    NoCode,
}

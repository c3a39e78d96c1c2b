//! What the finishing sheet says of parts: what a hand does to edges, tabs and pivots; which places are masked, and how far.

/// What of a part is masked.
///
/// In the order in which a part's row names them: the part's mark is written on the first one, so what the unit hides stands first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Masked {
    /// Tabs, from their shoulders.
    Tabs,
    /// Pivots of a door.
    Pivots,
    /// Ears of a shelf.
    Ears,
    /// Hooks on which the back hangs.
    Hooks,
    /// The tongue of a door stop, with its nose.
    Tongue,
    /// Notches that take another part.
    Notches,
    /// Slots.
    Slots,
    /// Holes that pivots turn in.
    Bores,
    /// The corner of a door that is cut away for the tongue.
    Corner,
}

/// What is said of parts; lengths are texts already.
#[derive(Clone, Copy, Debug)]
pub enum Message<'a> {
    /// What a hand does to the edges of the parts of a lot.
    EaseParts {
        /// Whether some are rounded.
        are_rounded: bool,
    },
    /// How a hand rounds the pivots of doors.
    RoundPivots {
        /// To which diameter.
        diameter: &'a str,
        /// By how much it chamfers the tips of those that the top has to find.
        tip: Option<&'a str>,
    },
    /// How much a hand chamfers the ends of tabs that the top has to find.
    TabEnds(&'a str),
    /// To which diameter a part's pivots are rounded.
    RoundedPivots(&'a str),
    /// By how much the ends of a part's tabs are chamfered: those in which edge.
    EasedTabs {
        /// Its name.
        edge: &'a str,
        /// Width of the chamfer.
        size: &'a str,
    },
    /// What a hand does to edges of a part: which, how far on both faces, and how much.
    Eased {
        /// Their names.
        edges: &'a str,
        /// How far.
        long: &'a str,
        /// Width of the chamfer, or radius of the rounding.
        size: &'a str,
    },
    /// Rims of holes in a part that a hand chamfers.
    EasedRims {
        /// How many holes.
        count: u32,
        /// How long the rims are, both faces together.
        long: &'a str,
        /// Width of the chamfer.
        size: &'a str,
    },
    /// Places of one kind on a part.
    Places {
        /// Which.
        masked: Masked,
        /// How many.
        count: usize,
        /// At which edges, but for what is masked through the whole thickness.
        edges: Option<&'a str>,
        /// How far each of them is masked, in millimetres: where that differs, all of it.
        far: &'a [String],
    },
    /// How such places are masked.
    How(Masked),
    /// Why: what coats on both sides of a slot would take, and the clearance of a joint.
    Why {
        /// The coats after cutting, on both walls together.
        coats: &'a str,
        /// The clearance.
        clearance: &'a str,
    },
}

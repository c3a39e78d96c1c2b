//! What of parts stays uncoated, as the finishing sheet says it: which places of a part are masked, and how far.

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

/// What is said of them; lengths are texts already.
#[derive(Clone, Copy, Debug)]
pub enum Message<'a> {
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

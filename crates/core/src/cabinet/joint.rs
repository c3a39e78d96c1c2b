//! Joints: what goes into what. A joint owns both sides; tab and slot are both made from it.

use core::fmt;

use crate::cabinet::panel::PanelId;
use crate::geometry::space::Block;
use crate::units::quantity::Length;

/// Which joint: the part that goes in, the part that takes it, and which of several between the two.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct JointId {
    /// The part whose feature goes in.
    pub goes_in: PanelId,
    /// The part whose feature takes it.
    pub takes: PanelId,
    /// Counted from 1.
    pub number: u8,
}

impl fmt::Display for JointId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} in {} {}", self.goes_in, self.takes, self.number)
    }
}

/// How two parts meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JointKind {
    /// A tab in a slot.
    Tab,
    /// A shelf's ear in the front-open slot of an upright.
    Ear,
    /// A hook of an upright in a slot of the back, which hangs on it.
    Hook,
    /// A round pivot in a round hole.
    Pivot,
    /// Two boards on edge that cross, each cut half way: the upper one goes in.
    Lap,
}

/// One feature of one panel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FeatureRef {
    /// The panel.
    pub panel: PanelId,
    /// Its place among [`crate::cabinet::panel::Panel::features`].
    pub index: u16,
}

/// Two parts meeting.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    /// Which joint.
    pub id: JointId,
    /// How they meet.
    pub kind: JointKind,
    /// The feature that goes in.
    pub goes_in: FeatureRef,
    /// The feature that takes it.
    pub takes: FeatureRef,
    /// The material of the part that goes in, inside the one that takes it; of a part that stands turned, the box round it.
    pub shared: Block,
    /// How much wider the taking feature is than the coated material in it, both sides together.
    pub clearance: Length,
}

//! What stands until the top comes: a part whose tab stands in the base alone leans by what its slot lets it, and a leaf on its
//! lower pivot alone sinks onto its free corner.

use crate::cabinet::case::Case;
use crate::cabinet::joint::Joint;
use crate::cabinet::panel::PanelId;
use crate::range::Build;
use crate::units::quantity::Length;

/// How thick the card under the free corner of a leaf is: as the gap, so that the leaf stands as it will hang. Of the top, that
/// which lies under all leaves.
pub(super) fn card(case: &Case, build: &Build, id: PanelId) -> Option<Length> {
    let lies = match id {
        PanelId::Leaf(_) => true,
        PanelId::Top => case.panels.iter().any(|panel| matches!(panel.id, PanelId::Leaf(_))),
        _ => false,
    };
    (lies && build.leaf_gap_mm > Length::ZERO).then_some(build.leaf_gap_mm)
}

/// How many heads the top does not find by itself: they lean further than their chamfer and their clearance catch.
pub(super) fn guided(case: &Case, build: &Build) -> u8 {
    let heads = case.panels.iter().filter_map(|panel| Head::of(case, panel.id));
    let far = heads.filter(|head| head.leans > head.caught(build)).count();
    u8::try_from(far).unwrap_or(u8::MAX)
}

/// The upper end of a part that stands in the base alone until the top comes.
#[derive(Clone, Copy, Debug)]
pub(super) struct Head {
    /// How far it may lean from plumb: by the play of what stands in the base, as often as it is higher than that is deep.
    pub(super) leans: Length,
    /// Clearance of its joint in the top.
    pub(super) clearance: Length,
}

impl Head {
    /// That of a part; of none that another part holds, or that does not go into the top.
    pub(super) fn of(case: &Case, id: PanelId) -> Option<Self> {
        let (mut foot, mut top) = (None, None);
        for joint in case.joints.iter().filter(|joint| joint.id.goes_in == id || joint.id.takes == id) {
            match joint.id.takes {
                PanelId::Top if id != PanelId::Top => top = Some(joint),
                PanelId::BaseUpper | PanelId::BaseLower if joint.id.goes_in == id => foot = Some(joint),
                _ => return None,
            }
        }
        let (Joint { shared, clearance, .. }, head) = (foot?, top?);
        let deep = shared.to.z - shared.from.z;
        Some(Self { leans: case.panel(id)?.height * (*clearance / deep), clearance: head.clearance })
    }

    /// How far from its place the top still catches it.
    pub(super) fn caught(self, build: &Build) -> Length {
        build.tab_chamfer_mm + self.clearance / 2.0
    }
}

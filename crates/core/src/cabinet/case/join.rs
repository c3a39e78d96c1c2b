//! Making both sides of a joint from one place in the case.

use crate::cabinet::case::Case;
use crate::cabinet::joint::{FeatureRef, Joint, JointId, JointKind};
use crate::cabinet::panel::{Edge, Feature, Panel, PanelId};
use crate::geometry::outline::Point;
use crate::geometry::space::{Block, Spot};
use crate::units::quantity::Length;

/// Panels and joints while the case is put together, in the order of their ids.
#[derive(Debug)]
pub(super) struct Bench {
    panels: Vec<Panel>,
    joints: Vec<Joint>,
    clearance: Length,
}

/// A rectangle on a panel.
#[derive(Clone, Copy)]
struct Patch {
    from: Point,
    to: Point,
}

impl Patch {
    fn of(panel: &Panel, block: Block) -> Self {
        Self { from: panel.case_from_panel.point(block.from), to: panel.case_from_panel.point(block.to) }
    }

    fn grown(self, by: Length) -> Self {
        let Self { from, to } = self;
        Self { from: Point::new(from.u - by, from.v - by), to: Point::new(to.u + by, to.v + by) }
    }
}

impl Bench {
    pub(super) fn new(clearance: Length) -> Self {
        Self { panels: Vec::new(), joints: Vec::new(), clearance }
    }

    pub(super) fn lay(&mut self, panel: Panel) {
        let at = self.panels.partition_point(|known| known.id < panel.id);
        self.panels.insert(at, panel);
    }

    pub(super) fn done(self) -> Case {
        Case { panels: self.panels, joints: self.joints }
    }

    fn panel(&mut self, id: PanelId) -> Option<&mut Panel> {
        let at = self.panels.binary_search_by(|panel| panel.id.cmp(&id)).ok()?;
        self.panels.get_mut(at)
    }

    /// Adds a feature, or finds the very same one: two shelves may share a slot, two plates a tab.
    pub(super) fn feature(&mut self, id: PanelId, feature: Feature) -> Option<FeatureRef> {
        let panel = self.panel(id)?;
        let at = panel.features.iter().position(|known| known.is_like(feature)).unwrap_or(panel.features.len());
        if at == panel.features.len() {
            panel.features.push(feature);
        }
        Some(FeatureRef { panel: id, index: u16::try_from(at).ok()? })
    }

    fn join(&mut self, kind: JointKind, goes_in: FeatureRef, takes: FeatureRef, shared: Block, clearance: Length) {
        let same =
            self.joints.iter().filter(|joint| joint.id.goes_in == goes_in.panel && joint.id.takes == takes.panel);
        let number = u8::try_from(same.count() + 1).unwrap_or(u8::MAX);
        let id = JointId { goes_in: goes_in.panel, takes: takes.panel, number };
        let at = self.joints.partition_point(|known| known.id < id);
        self.joints.insert(at, Joint { id, kind, goes_in, takes, shared, clearance });
    }

    /// Lets `solid`, a part of `tab` that stands out of its rectangle, go through every one of `takers`.
    pub(super) fn tab(&mut self, kind: JointKind, tab: PanelId, takers: &[PanelId], solid: Block) -> Option<()> {
        let (half, clearance) = (self.clearance / 2.0, self.clearance);
        let panel = self.panel(tab)?;
        let feature = standing_out(panel, Patch::of(panel, solid));
        let goes_in = self.feature(tab, feature)?;
        for &taker in takers {
            let panel = self.panel(taker)?;
            let feature = cut_in(panel, Patch::of(panel, solid).grown(half));
            let shared = shared(panel, solid);
            let takes = self.feature(taker, feature)?;
            self.join(kind, goes_in, takes, shared, clearance);
        }
        Some(())
    }

    /// Laps two parts that cross in `solid`: the standing one is open upwards, the dropping one downwards.
    pub(super) fn lap(&mut self, standing: PanelId, dropping: PanelId, solid: Block) -> Option<()> {
        let (half, clearance) = (self.clearance / 2.0, self.clearance);
        let Block { from, to } = solid;
        let middle = (from.z + to.z) / 2.0;
        let upper = Block { from: Spot { z: middle, ..from }, to };
        let lower = Block { from, to: Spot { z: middle, ..to } };
        let panel = self.panel(standing)?;
        let takes = cut_in(panel, Patch::of(panel, upper).grown(half));
        let takes = self.feature(standing, takes)?;
        let panel = self.panel(dropping)?;
        let goes_in = cut_in(panel, Patch::of(panel, lower).grown(half));
        let goes_in = self.feature(dropping, goes_in)?;
        self.join(JointKind::Lap, goes_in, takes, upper, clearance);
        Some(())
    }

    /// Lets a pivot of `leaf` turn in a round hole of `taker`; `solid` is the square round the pivot.
    pub(super) fn pivot(&mut self, leaf: PanelId, taker: PanelId, solid: Block, clearance: Length) -> Option<()> {
        let panel = self.panel(leaf)?;
        let Patch { from, to } = Patch::of(panel, solid);
        let (at, diameter) = ((from.u + to.u) / 2.0, to.u - from.u);
        let (edge, depth) =
            if from.v < Length::ZERO { (Edge::Bottom, -from.v) } else { (Edge::Top, to.v - panel.height) };
        let goes_in = self.feature(leaf, Feature::Pivot { edge, at, diameter, depth })?;
        let panel = self.panel(taker)?;
        let Patch { from, to } = Patch::of(panel, solid);
        let centre = Point::new((from.u + to.u) / 2.0, (from.v + to.v) / 2.0);
        let hole = Feature::Bore { centre, diameter: diameter + clearance };
        let shared = shared(panel, solid);
        let takes = self.feature(taker, hole)?;
        self.join(JointKind::Pivot, goes_in, takes, shared, clearance);
        Some(())
    }
}

/// The tab that a patch beyond one edge of the panel makes.
fn standing_out(panel: &Panel, patch: Patch) -> Feature {
    let Patch { from, to } = patch;
    let along_u = |edge, depth| Feature::Tab { edge, from: from.u, to: to.u, depth };
    let along_v = |edge, depth| Feature::Tab { edge, from: from.v, to: to.v, depth };
    if to.u > panel.width {
        along_v(Edge::Right, to.u - panel.width)
    } else if from.u < Length::ZERO {
        along_v(Edge::Left, -from.u)
    } else if to.v > panel.height {
        along_u(Edge::Top, to.v - panel.height)
    } else {
        along_u(Edge::Bottom, -from.v)
    }
}

/// The slot that a patch makes, or the notch if it reaches beyond an edge.
fn cut_in(panel: &Panel, patch: Patch) -> Feature {
    let Patch { from, to } = patch;
    if to.v >= panel.height {
        Feature::Notch { edge: Edge::Top, from: from.u, to: to.u, depth: panel.height - from.v }
    } else if from.v <= Length::ZERO {
        Feature::Notch { edge: Edge::Bottom, from: from.u, to: to.u, depth: to.v }
    } else if from.u <= Length::ZERO {
        Feature::Notch { edge: Edge::Left, from: from.v, to: to.v, depth: to.u }
    } else if to.u >= panel.width {
        Feature::Notch { edge: Edge::Right, from: from.v, to: to.v, depth: panel.width - from.u }
    } else {
        Feature::Slot { from, to }
    }
}

/// The part of `solid` within the thickness of `taker`.
fn shared(taker: &Panel, solid: Block) -> Block {
    let near = taker.case_from_panel.spot(Point::default(), Length::ZERO);
    let far = taker.case_from_panel.spot(Point::default(), taker.thickness);
    let Block { from, to } = solid;
    let within = |low: Length, high: Length, near: Length, far: Length| {
        if near == far { (low, high) } else { (low.max(near), high.min(far)) }
    };
    let (x, y, z) =
        (within(from.x, to.x, near.x, far.x), within(from.y, to.y, near.y, far.y), within(from.z, to.z, near.z, far.z));
    Block { from: Spot::new(x.0, y.0, z.0), to: Spot::new(x.1, y.1, z.1) }
}

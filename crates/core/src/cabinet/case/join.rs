//! Making both sides of a joint from one place in the case.

use crate::cabinet::case::Case;
use crate::cabinet::hook::Hooks;
use crate::cabinet::joint::{FeatureRef, Joint, JointId, JointKind};
use crate::cabinet::panel::{Edge, Feature, Hook, Panel, PanelId, Taper, TurnedSlot};
use crate::geometry::outline::Point;
use crate::geometry::space::{Block, Lie, Spot};
use crate::range::Build;
use crate::units::quantity::Length;

/// Panels and joints while the case is put together, in the order of their ids.
#[derive(Debug)]
pub(super) struct Bench {
    panels: Vec<Panel>,
    joints: Vec<Joint>,
    clearance: Length,
    /// Of slots that hold nothing in its place.
    loose: Length,
    taper: Taper,
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
    pub(super) fn new(build: &Build) -> Self {
        let taper = Taper { across: build.taper_across_mm, along: build.taper_along_mm };
        let (clearance, loose) = (build.clearance_mm, build.clearance_loose_mm);
        Self { panels: Vec::new(), joints: Vec::new(), clearance, loose, taper }
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

    /// Lets `solid`, a part of `tab` that stands out of its rectangle, go through every one of `takers`, and holds it in its place.
    pub(super) fn tab(&mut self, kind: JointKind, tab: PanelId, takers: &[PanelId], solid: Block) -> Option<()> {
        takers.iter().try_for_each(|taker| self.let_in((kind, self.clearance), tab, *taker, solid))
    }

    /// Lets a tab go into the top, which it holds in its place or not.
    pub(super) fn tab_in_top(&mut self, tab: PanelId, solid: Block, holds: bool) -> Option<()> {
        let clearance = if holds { self.clearance } else { self.loose };
        self.let_in((JointKind::Tab, clearance), tab, PanelId::Top, solid)
    }

    fn let_in(
        &mut self,
        (kind, clearance): (JointKind, Length),
        tab: PanelId,
        taker: PanelId,
        solid: Block,
    ) -> Option<()> {
        // An ear slides along its edge: the corners at its end lead nothing in.
        let taper = if kind == JointKind::Tab { self.taper } else { Taper::default() };
        let panel = self.panel(tab)?;
        let feature = standing_out(panel, Patch::of(panel, solid), taper);
        let goes_in = self.feature(tab, feature)?;
        let panel = self.panel(taker)?;
        let feature = cut_in(panel, Patch::of(panel, solid).grown(clearance / 2.0));
        let shared = shared(panel, solid);
        let takes = self.feature(taker, feature)?;
        self.join(kind, goes_in, takes, shared, clearance);
        Some(())
    }

    /// Drops a board onto another one that it crosses: `crossing` is what both would take of the same place, of which the upper
    /// board has the upper half, both cut so deep.
    pub(super) fn lap(&mut self, upper: PanelId, lower: PanelId, crossing: Block, deep: Length) -> Option<()> {
        let (half, clearance) = (self.clearance / 2.0, self.clearance);
        let mut cut = |id, edge| {
            let panel = self.panel(id)?;
            let Patch { from, to } = Patch::of(panel, crossing).grown(half);
            self.feature(id, Feature::Notch { edge, from: from.u, to: to.u, depth: deep })
        };
        let (goes_in, takes) = (cut(upper, Edge::Bottom)?, cut(lower, Edge::Top)?);
        let shared = Block { from: Spot { z: crossing.from.z + deep, ..crossing.from }, to: crossing.to };
        self.join(JointKind::Lap, goes_in, takes, shared, clearance);
        Some(())
    }

    /// Lets a tab of a part that stands turned go through a plate: between two places along its lower or upper edge, and from one
    /// height over its lower edge to another.
    pub(super) fn turned_tab(
        &mut self,
        tab: PanelId,
        taker: PanelId,
        (from, to): (Length, Length),
        (low, high): (Length, Length),
    ) -> Option<()> {
        // The top is held elsewhere.
        let clearance = if taker == PanelId::Top { self.loose } else { self.clearance };
        let taper = self.taper;
        let panel = self.panel(tab)?;
        let (place, thickness) = (panel.case_from_panel, panel.thickness);
        let Lie::Turned(aim) = place.lie else { return None };
        let feature = standing_out(panel, Patch { from: Point::new(from, low), to: Point::new(to, high) }, taper);
        let goes_in = self.feature(tab, feature)?;
        let panel = self.panel(taker)?;
        let middle = place.spot(Point::new((from + to) / 2.0, low), thickness / 2.0);
        let slot = TurnedSlot {
            centre: panel.case_from_panel.point(middle),
            length: to - from + clearance,
            width: thickness + clearance,
            aim,
        };
        let corners = [(from, Length::ZERO), (to, Length::ZERO), (to, thickness), (from, thickness)];
        let [first, others @ ..] = corners.map(|(u, deep)| [low, high].map(|v| place.spot(Point::new(u, v), deep)));
        let [from, to] = first;
        let around = others.into_iter().flatten().fold(Block { from, to: from }.around(to), Block::around);
        let shared = shared(panel, around);
        let takes = self.feature(taker, Feature::TurnedSlot(slot))?;
        self.join(JointKind::Tab, goes_in, takes, shared, clearance);
        Some(())
    }

    /// Hangs a part on a hook of `standing`: `neck` is what of the hook lies within the thickness of the one that hangs.
    pub(super) fn hook(&mut self, standing: PanelId, hanging: PanelId, neck: Block, hooks: Hooks) -> Option<()> {
        let (half, clearance) = (self.clearance / 2.0, self.clearance);
        let panel = self.panel(standing)?;
        let Patch { from, to } = Patch::of(panel, neck);
        let (long, Hooks { nose, rise, .. }) = (to.u + half - panel.width, hooks);
        let hook = Hook { from: from.v, to: to.v, neck: long, nose, rise };
        let goes_in = self.feature(standing, Feature::Hook(hook))?;
        let panel = self.panel(hanging)?;
        let Patch { from, to } = Patch::of(panel, neck);
        // It lies on the neck, and is as much higher as it takes to come over the nose.
        let slot =
            Feature::Slot { from: Point::new(from.u - half, to.v - hooks.slot()), to: Point::new(to.u + half, to.v) };
        let takes = self.feature(hanging, slot)?;
        self.join(JointKind::Hook, goes_in, takes, neck, clearance);
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
fn standing_out(panel: &Panel, patch: Patch, taper: Taper) -> Feature {
    let Patch { from, to } = patch;
    let tab = |edge, from, to, depth| {
        let taper = taper.within(to - from, depth);
        Feature::Tab { edge, from, to, depth, taper }
    };
    let along_u = |edge, depth| tab(edge, from.u, to.u, depth);
    let along_v = |edge, depth| tab(edge, from.v, to.v, depth);
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

//! Parts as unions of axis-parallel boxes, and of prisms where something is turned: a hull that holds the part, or a core that
//! the part holds.
//!
//! What is proved free with hulls is free, and what is proved blocked with cores is blocked. Both
//! agree with the part itself at every joint face; they differ where no part ever touches: at
//! rounded corners and bows, reliefs, holes for cables and fingers, and rounded leaf edges. A pivot and its hole stand as
//! squares with the same centre and the circles' diameters: for moves along the axes of the case
//! these meet and pass as the circles do.

use core::ops::Range;

use crate::cabinet::panel::{Edge, Feature, Panel};
use crate::geometry::corner::{Bend, Turn};
use crate::geometry::outline::Point;
use crate::geometry::space::{Block, Lie, Prism, Spot};
use crate::range::Detent;
use crate::units::quantity::Length;

mod turned;

/// Which boxes stand for a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bound {
    /// Boxes that hold the part.
    Hull,
    /// Boxes that the part holds.
    Core,
}

/// A rectangle on a panel, in millimetres.
#[derive(Clone, Copy, Debug)]
struct Patch {
    u: (f64, f64),
    v: (f64, f64),
}

impl Patch {
    fn between(a: Point, b: Point) -> Self {
        let ordered = |a: Length, b: Length| (a.min(b).in_mm(), a.max(b).in_mm());
        Self { u: ordered(a.u, b.u), v: ordered(a.v, b.v) }
    }

    fn round(centre: Point, across_u: Length, across_v: Length) -> Self {
        let (half_u, half_v) = (across_u / 2.0, across_v / 2.0);
        let corner = |sign: f64| Point::new(centre.u + half_u * sign, centre.v + half_v * sign);
        Self::between(corner(-1.0), corner(1.0))
    }

    fn meets(self, other: Self) -> bool {
        self.u.0 < other.u.1 && other.u.0 < self.u.1 && self.v.0 < other.v.1 && other.v.0 < self.v.1
    }

    /// What is left of it beside, below and above a cut.
    fn without(self, cut: Self) -> impl Iterator<Item = Self> {
        let middle = (self.u.0.max(cut.u.0), self.u.1.min(cut.u.1));
        let pieces = [
            Self { u: (self.u.0, cut.u.0), v: self.v },
            Self { u: (cut.u.1, self.u.1), v: self.v },
            Self { u: middle, v: (self.v.0, cut.v.0) },
            Self { u: middle, v: (cut.v.1, self.v.1) },
        ];
        pieces.into_iter().filter(|piece| piece.u.0 < piece.u.1 && piece.v.0 < piece.v.1)
    }
}

/// Boxes and prisms.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Solids {
    /// The boxes.
    pub blocks: Vec<Block>,
    /// The prisms.
    pub prisms: Vec<Prism>,
}

impl Solids {
    /// Adds what lies under a rectangle of a panel in some of its thickness.
    fn add(&mut self, panel: &Panel, patch: Patch, deep: Range<Length>) {
        let point = |u, v| Point::new(Length::mm(u), Length::mm(v));
        let place = panel.case_from_panel;
        if let Lie::Turned(_) = place.lie {
            let corners =
                [(patch.u.0, deep.start), (patch.u.1, deep.start), (patch.u.1, deep.end), (patch.u.0, deep.end)];
            let plan = corners.map(|(u, deep)| place.spot(point(u, patch.v.0), deep)).map(|spot| (spot.x, spot.y));
            let height = |v| place.spot(point(0.0, v), Length::ZERO).z;
            self.prisms.push(Prism { plan: plan.into(), under: height(patch.v.0), over: height(patch.v.1) });
            return;
        }
        let from: Spot = place.spot(point(patch.u.0, patch.v.0), deep.start);
        self.blocks.push(Block { from, to: place.spot(point(patch.u.1, patch.v.1), deep.end) });
    }
}

/// The boxes and prisms of a part where it stands in the finished unit.
pub fn solids(panel: &Panel, bound: Bound) -> Solids {
    let mut solids = Solids::default();
    let origin = Point::default();
    let mut body = vec![Patch::between(origin, Point::new(panel.width, panel.height))];
    body.extend(bowed(panel, bound));
    let mut tabs = Vec::new();
    let mut pins = Vec::new();
    for feature in &panel.features {
        match *feature {
            Feature::Bow(_) => {}
            Feature::TurnedSlot(slot) => {
                cut(&mut body, turned::cleared(slot, panel, bound));
                solids.prisms.extend(turned::walls(slot, panel, bound));
            }
            Feature::Tab { edge, from, to, depth, .. } => tabs.push(beside(panel, edge, from..to, depth)),
            Feature::Pivot { edge, at, diameter, depth } => {
                let half = diameter / 2.0;
                pins.push((beside(panel, edge, at - half..at + half, depth), (panel.thickness - diameter) / 2.0));
            }
            Feature::Hook(hook) => tabs.extend(hook.rectangles().map(|((from, to), (near, far))| {
                Patch::between(panel.beside(Edge::Right, from, near), panel.beside(Edge::Right, to, far))
            })),
            Feature::Detent(detent) => {
                for patch in free(panel, detent, bound) {
                    cut(&mut body, patch);
                }
                tabs.extend(tongue(panel, detent, bound));
            }
            Feature::Notch { edge, from, to, depth } => cut(&mut body, beside(panel, edge, from..to, -depth)),
            Feature::Slot { from, to } => cut(&mut body, Patch::between(from, to)),
            Feature::Bore { centre, diameter } => cut(&mut body, Patch::round(centre, diameter, diameter)),
            Feature::Hole { centre, length, height } => {
                if bound == Bound::Core {
                    cut(&mut body, Patch::round(centre, length, height));
                }
            }
        }
    }
    body.append(&mut tabs);
    if bound == Bound::Core {
        for bend in panel.all_bends() {
            lost(bend).for_each(|patch| cut(&mut body, patch));
        }
    }
    for patch in body {
        if bound == Bound::Core && panel.rounding > Length::ZERO {
            rounded(panel, patch).for_each(|(patch, deep)| solids.add(panel, patch, deep));
        } else {
            solids.add(panel, patch, Length::ZERO..panel.thickness);
        }
    }
    for (patch, skin) in pins {
        solids.add(panel, patch, skin..panel.thickness - skin);
    }
    solids
}

/// So many strips stand for a bow: its edge meets no other part.
const STRIPS: u8 = 6;

/// What stands out of the rectangle in bows, as strips across their edges.
fn bowed(panel: &Panel, bound: Bound) -> impl Iterator<Item = Patch> {
    let bows = panel.features.iter().filter_map(|feature| match feature {
        Feature::Bow(bow) => Some(*bow),
        _ => None,
    });
    bows.flat_map(move |bow| {
        (0..STRIPS).map(move |strip| {
            let place = |at: u8| bow.from + (bow.to - bow.from) * (f64::from(at) / f64::from(STRIPS));
            let (from, to) = (place(strip), place(strip + 1));
            let (near, far) = (bow.out_at(from), bow.out_at(to));
            let middle = (bow.from + bow.to) / 2.0;
            let out = match bound {
                Bound::Core => near.min(far),
                Bound::Hull if from <= middle && middle <= to => bow.rise,
                Bound::Hull => near.max(far),
            };
            beside(panel, bow.edge, from..to, out)
        })
    })
    .filter(|patch| patch.u.0 < patch.u.1 && patch.v.0 < patch.v.1)
}

/// What the gap over a detent's tongue and the slit under it leave free: all that lies before their round ends, or these as well.
fn free(panel: &Panel, detent: Detent, bound: Bound) -> [Patch; 2] {
    let [gap, slit] = match bound {
        Bound::Hull => [detent.free(); 2],
        Bound::Core => [detent.free() + detent.relief(), detent.root],
    };
    let at = |inwards: Length, down: Length| Point::new(inwards, panel.height - down);
    [
        Patch::between(at(Length::ZERO, Length::ZERO), at(gap, detent.travel)),
        Patch::between(at(Length::ZERO, detent.under()), at(slit, detent.wood())),
    ]
}

/// Rectangles round what of a detent stands out, or within it: the tongue and its nose.
fn tongue(panel: &Panel, detent: Detent, bound: Bound) -> [Patch; 2] {
    let ((_, (rear, low), tip), half) = (detent.rear_flank(), detent.tongue / 2.0);
    let at = |out: Length, down: Length| Point::new(-out, panel.height - down);
    let (end, nose) = match bound {
        Bound::Hull => (detent.out(), [at(detent.nose, detent.under()), at(detent.out(), detent.deep())]),
        Bound::Core => (detent.out() - half, [at(rear, detent.under()), at(tip + (tip - rear), low)]),
    };
    [Patch::between(at(Length::ZERO, detent.travel), at(end, detent.under())), Patch::between(nose[0], nose[1])]
}

/// The rectangle that stands out of an edge by `out`, or is cut into it if that is negative.
fn beside(panel: &Panel, edge: Edge, along: Range<Length>, out: Length) -> Patch {
    Patch::between(panel.beside(edge, along.start, Length::ZERO), panel.beside(edge, along.end, out))
}

fn cut(patches: &mut Vec<Patch>, cut: Patch) {
    let mut at = 0;
    while let Some(patch) = patches.get(at).copied() {
        if patch.meets(cut) {
            patches.swap_remove(at);
            patches.extend(patch.without(cut));
        } else {
            at += 1;
        }
    }
}

/// Rectangles that hold what a turn takes away.
fn lost(bend: Bend) -> impl Iterator<Item = Patch> {
    let Bend { at, leaves, turn } = bend;
    let one = |patch| [Some(patch), None, None];
    let patches = match turn {
        Turn::Sharp | Turn::Fillet(_) | Turn::Arc(_) => [None; 3],
        Turn::CutOff { back, ahead } => {
            one(Patch::between(leaves.turned_right().back().from(at, back), leaves.from(at, ahead)))
        }
        Turn::Ahead(radius) => {
            one(Patch::between(at, leaves.turned_left().from(leaves.from(at, radius * 2.0), radius)))
        }
        Turn::Behind(radius) => {
            let back = leaves.turned_right();
            one(Patch::between(at, leaves.back().from(back.from(at, radius * 2.0), radius)))
        }
        // Its chord meets both walls √2 r from the corner; half a disc on it stays within that.
        Turn::Across(radius) => {
            let across = radius * (2.0 * core::f64::consts::SQRT_2);
            one(Patch::round(at, across, across))
        }
        // Three steps under the quarter circle: at x from the corner it stands r − √(r² − (r − x)²) off.
        Turn::Rounded(radius) => [0.0, 0.1, 0.4].map(|share| {
            let off = 1.0 - (1.0 - (1.0_f64 - share) * (1.0 - share)).sqrt();
            let next = if share == 0.0 {
                0.1
            } else if share < 0.2 {
                0.4
            } else {
                1.0
            };
            let back = leaves.turned_right().back();
            let near = leaves.from(at, radius * share);
            Some(Patch::between(near, back.from(leaves.from(at, radius * next), radius * off)))
        }),
    };
    patches.into_iter().flatten()
}

/// Two boxes within a plate whose upright edges are rounded: the whole width less deep, and the
/// whole depth less wide.
fn rounded(panel: &Panel, patch: Patch) -> impl Iterator<Item = (Patch, Range<Length>)> {
    let radius = panel.rounding.in_mm();
    let inner = Patch { u: (patch.u.0.max(radius), patch.u.1.min(panel.width.in_mm() - radius)), v: patch.v };
    let flat = panel.rounding..panel.thickness - panel.rounding;
    let flat = (flat.start < flat.end).then_some((patch, flat));
    let full = (inner.u.0 < inner.u.1).then_some((inner, Length::ZERO..panel.thickness));
    flat.into_iter().chain(full)
}

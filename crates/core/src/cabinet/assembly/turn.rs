//! Which other way round a part would go in as well: what stands lets it, and it is wrong.

use crate::cabinet::case::Case;
use crate::cabinet::joint::JointId;
use crate::cabinet::panel::{Edge, Feature, Panel, PanelId};
use crate::geometry::outline::Point;
use crate::geometry::space::Aim;
use crate::units::quantity::Length;

/// What differs by less (mm) is the same place: far below every clearance, far above what rounding does.
const NEAR: f64 = 0.01;

/// A half turn of a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Turn {
    /// In its plane: the same face is seen, and both ends change places.
    InPlane,
    /// About its u axis: the other face is seen, and bottom and top change places.
    AboutU,
    /// About its v axis: the other face is seen, and left and right change places.
    AboutV,
}

impl Turn {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::InPlane, Self::AboutU, Self::AboutV];

    /// Whether the other face is seen then.
    pub const fn shows_other_face(self) -> bool {
        matches!(self, Self::AboutU | Self::AboutV)
    }

    /// The turns of a part that leave it another shape and in which the joints of its step close all the same: who does not look
    /// notices it in a later step, or never.
    pub fn wrong(case: &Case, id: PanelId, closes: &[JointId]) -> Vec<Self> {
        let Some(panel) = case.panel(id) else { return Vec::new() };
        let marks = Mark::all(panel);
        let joints = case.joints.iter().filter(|joint| closes.contains(&joint.id));
        let meets: Vec<usize> = joints
            .map(|joint| usize::from(if joint.id.goes_in == id { joint.goes_in.index } else { joint.takes.index }))
            .collect();
        let met: Vec<&Mark> = meets.iter().filter_map(|at| marks.get(*at)).collect();
        let passes = |turn: &Self| {
            let turned: Vec<Mark> = marks.iter().map(|mark| mark.turned(panel, *turn)).collect();
            let is_same = turned.iter().all(|turned| marks.iter().any(|mark| turned.is_like(mark)));
            let closes = met.iter().all(|met| turned.iter().any(|turned| turned.goes_for(met)));
            // What else stands out there would meet the part that takes the others.
            let beside = |turned: &&Mark| {
                met.iter().any(|met| met.side(panel).is_some() && met.side(panel) == turned.side(panel))
            };
            let is_free = turned.iter().filter(beside).all(|turned| met.iter().any(|met| turned.goes_for(met)));
            !is_same && closes && is_free
        };
        Self::ALL.into_iter().filter(passes).collect()
    }

    const fn swaps(self) -> (bool, bool) {
        match self {
            Self::InPlane => (true, true),
            Self::AboutU => (false, true),
            Self::AboutV => (true, false),
        }
    }
}

/// What kind of feature a mark stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    Tab,
    Pivot,
    Hook,
    Detent,
    Notch,
    Slot,
    /// A bore or a hole.
    Round,
    Bow,
}

/// A feature by the room that it takes.
#[derive(Clone, Copy, Debug)]
struct Mark {
    kind: Kind,
    low: Point,
    high: Point,
    /// How it is turned.
    aim: Aim,
    /// Which way up and round it is, if that makes a difference.
    round: Option<(bool, bool)>,
}

impl Mark {
    fn all(panel: &Panel) -> Vec<Self> {
        panel.features.iter().map(|feature| Self::of(panel, *feature)).collect()
    }

    fn of(panel: &Panel, feature: Feature) -> Self {
        let between = |kind, a: Point, b: Point| Self {
            kind,
            low: Point::new(a.u.min(b.u), a.v.min(b.v)),
            high: Point::new(a.u.max(b.u), a.v.max(b.v)),
            aim: Aim { x: 1.0, y: 0.0 },
            round: None,
        };
        let at_edge = |kind, edge, from, to, out: Length| {
            between(kind, panel.beside(edge, from, Length::ZERO), panel.beside(edge, to, out))
        };
        let around = |kind, centre: Point, wide: Length, high: Length| {
            let half = Point::new(wide / 2.0, high / 2.0);
            let corner = |sign: f64| Point::new(centre.u + half.u * sign, centre.v + half.v * sign);
            between(kind, corner(-1.0), corner(1.0))
        };
        match feature {
            Feature::Tab { edge, from, to, depth, .. } => at_edge(Kind::Tab, edge, from, to, depth),
            Feature::Pivot { edge, at, diameter, depth } => {
                at_edge(Kind::Pivot, edge, at - diameter / 2.0, at + diameter / 2.0, depth)
            }
            Feature::Hook(hook) => {
                let room = at_edge(Kind::Hook, Edge::Right, hook.from, hook.to, hook.out());
                Self { round: Some((false, false)), ..room }
            }
            // It stands at a corner: turned it is elsewhere.
            Feature::Detent(_) => {
                let room = at_edge(Kind::Detent, Edge::Top, Length::ZERO, Length::ZERO, Length::ZERO);
                Self { round: Some((false, false)), ..room }
            }
            Feature::Notch { edge, from, to, depth } => at_edge(Kind::Notch, edge, from, to, -depth),
            Feature::Slot { from, to } => between(Kind::Slot, from, to),
            Feature::Bore { centre, diameter } => around(Kind::Round, centre, diameter, diameter),
            Feature::Hole { centre, length, height } => around(Kind::Round, centre, length, height),
            Feature::TurnedSlot(slot) => {
                Self { aim: slot.aim, ..around(Kind::Slot, slot.centre, slot.length, slot.width) }
            }
            Feature::Bow(bow) => at_edge(Kind::Bow, bow.edge, bow.from, bow.to, bow.rise),
        }
    }

    /// Where it comes to lie on the panel's place.
    fn turned(&self, panel: &Panel, turn: Turn) -> Self {
        let (swaps_u, swaps_v) = turn.swaps();
        let swapped = |low: Length, high: Length, all: Length, swaps: bool| {
            if swaps { (all - high, all - low) } else { (low, high) }
        };
        let (left, right) = swapped(self.low.u, self.high.u, panel.width, swaps_u);
        let (bottom, top) = swapped(self.low.v, self.high.v, panel.height, swaps_v);
        let sign = |swaps: bool| if swaps { -1.0 } else { 1.0 };
        Self {
            kind: self.kind,
            low: Point::new(left, bottom),
            high: Point::new(right, top),
            aim: Aim { x: self.aim.x * sign(swaps_u), y: self.aim.y * sign(swaps_v) },
            round: self.round.map(|(u, v)| (u != swaps_u, v != swaps_v)),
        }
    }

    /// Beyond which edge it stands out, if it does.
    fn side(&self, panel: &Panel) -> Option<Edge> {
        let out = Length::mm(NEAR);
        let stands_out = matches!(self.kind, Kind::Tab | Kind::Pivot | Kind::Hook | Kind::Detent);
        stands_out.then_some(())?;
        let sides = [
            (self.low.v < -out, Edge::Bottom),
            (self.high.u > panel.width + out, Edge::Right),
            (self.high.v > panel.height + out, Edge::Top),
            (self.low.u < -out, Edge::Left),
        ];
        sides.into_iter().find_map(|(is_beyond, edge)| is_beyond.then_some(edge))
    }

    /// Whether it does where another is wanted: what goes in is no larger, what takes is no smaller.
    fn goes_for(&self, wanted: &Self) -> bool {
        let within = |inner: &Self, outer: &Self| {
            let near = Length::mm(NEAR);
            outer.low.u < inner.low.u + near
                && outer.low.v < inner.low.v + near
                && inner.high.u < outer.high.u + near
                && inner.high.v < outer.high.v + near
        };
        let goes = match self.kind {
            Kind::Tab | Kind::Pivot | Kind::Hook | Kind::Detent | Kind::Bow => within(self, wanted),
            Kind::Notch | Kind::Slot | Kind::Round => within(wanted, self),
        };
        goes && self.kind == wanted.kind && self.round == wanted.round && self.is_along(wanted)
    }

    /// Whether both take the same room.
    fn is_like(&self, other: &Self) -> bool {
        let near = |a: Length, b: Length| (a - b).abs() < Length::mm(NEAR);
        let same = |a: Point, b: Point| near(a.u, b.u) && near(a.v, b.v);
        self.kind == other.kind
            && self.round == other.round
            && same(self.low, other.low)
            && same(self.high, other.high)
            && self.is_along(other)
    }

    /// Whether both are turned alike; a slot that points backwards is the same one.
    fn is_along(&self, other: &Self) -> bool {
        (self.aim.x * other.aim.y - self.aim.y * other.aim.x).abs() < 1e-4
    }
}

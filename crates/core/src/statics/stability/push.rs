//! The pushes at the top under which a unit begins to tip, to all four sides.

use serde::Serialize;

use crate::cabinet::case::Weighed;
use crate::cabinet::layout::{Layout, Picked};
use crate::cabinet::leaf;
use crate::cabinet::panel::{End, PanelId};
use crate::cabinet::plinth::Foot;
use crate::choice::{Choice, Fill};
use crate::geometry::space::Spot;
use crate::statics::stability::Rising;
use crate::units::quantity::{Area, AreaMass, Force, Length, Mass};

/// A side to which a unit can tip.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Towards {
    /// Away from the wall.
    Front,
    /// Against the wall.
    Rear,
    /// To the left, seen from the front.
    Left,
    /// To the right.
    Right,
}

impl Towards {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Front, Self::Rear, Self::Left, Self::Right];

    /// How far a place lies within that side of a foot; beyond it if negative.
    fn within(self, foot: Foot, at: Spot) -> Length {
        match self {
            Self::Front => at.y - foot.front,
            Self::Rear => foot.rear - at.y,
            Self::Left => at.x - foot.left,
            Self::Right => foot.right - at.x,
        }
    }

    /// What an arc takes from the moment that masses hold with: beside its outermost point a bowed foot lies further in, where their
    /// common centre goes over it. In newton millimetres.
    fn curved(self, layout: &Layout, masses: &[Held]) -> f64 {
        let end = match self {
            Self::Front | Self::Rear => return 0.0,
            Self::Left => End::Left,
            Self::Right => End::Right,
        };
        let Some(bow) = layout.bow(end).filter(|_| layout.plinth.is_none()) else { return 0.0 };
        let weight: f64 = masses.iter().map(|held| held.newton).sum();
        let back: f64 = masses.iter().map(|held| held.newton * held.back.in_mm()).sum();
        weight * bow.foot_within(end, Length::mm(back / weight)).in_mm()
    }
}

/// A weight, its lever and how far behind the front edge of the top it is.
#[derive(Clone, Copy, Debug)]
struct Held {
    newton: f64,
    lever: Length,
    back: Length,
}

/// A part: where its centre is, shut and open, and the axis of its pivots if it is a leaf.
#[derive(Clone, Copy, Debug)]
struct Part {
    id: PanelId,
    mass: Mass,
    at: [Spot; 2],
    axis: Option<Spot>,
}

impl Part {
    /// As it holds least.
    fn least(self, towards: Towards, rising: Rising, foot: Foot) -> Held {
        let [shut, open] = self.at;
        let within = |at| towards.within(foot, at);
        let at = if within(open) < within(shut) { open } else { shut };
        let about = self.axis.filter(|_| rising == Rising::Case).map_or(Length::ZERO, within);
        Held { newton: self.mass.weight().in_newton(), lever: within(at) - about, back: at.y }
    }
}

/// The push at the upper edge of the top, level and to one side, under which a unit begins to tip on a level floor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Push {
    /// To which side.
    pub towards: Towards,
    /// With nothing in it or on it; nothing if it tips by itself.
    pub empty: Force,
    /// With what the range lays its shelves and its top out for.
    pub loaded: Force,
    /// Empty, if base and plinth were tied to what stands on them: never smaller.
    pub tied: Force,
}

/// The pushes to all sides of a unit of weighed parts, every leaf open at a right angle or shut as it holds the unit least: of
/// all that may rise as one, what rises first.
///
/// By hand, an empty tall shelf without leaves, 400 × 2200 × 340 mm. Over its foot, whose edge is 12 mm behind that of the top, all of
/// it holds: 27.0 kg at 198 mm take 27.0 × 9.81 × 186 / 2200 = 22.3 N. Out of its base, about the uprights' front edge 39 mm in and 36 mm
/// over the floor, uprights, back and top hold alone: 23.8 kg at 201 mm take 23.8 × 9.81 × 162 / 2164 = 17.5 N, and that is it.
///
/// What is left out: to a side the case leans before it rises as one, since nothing but weight and shelves keeps its back from rising
/// at one end (`tests/outside/racking.py`); friction in slots holds it.
// Source: statics: F h = Σ m g x, about the edge of what it stands on at that side, h from there up.
pub fn pushes(picked: Picked<'_>, choice: &Choice, layout: &Layout, parts: &[(PanelId, Weighed)]) -> [Push; 4] {
    let build = &picked.range.build;
    let parts: Vec<Part> = parts.iter().map(|(id, part)| hung(picked, choice, layout, (*id, *part))).collect();
    let loads = loads(picked, layout);
    Towards::ALL.map(|towards| {
        let begins = |rising: Rising| {
            let foot = rising.foot(build, layout);
            let arcs = |masses: &[Held]| if rising == Rising::Unit { towards.curved(layout, masses) } else { 0.0 };
            let push = |masses: &[Held]| {
                let moment: f64 = masses.iter().map(|held| held.newton * held.lever.in_mm()).sum();
                let high = layout.height - rising.under(layout);
                Force::newton((moment - arcs(masses)).max(0.0) / high.in_mm())
            };
            let own = parts.iter().filter(|part| rising.has(part.id));
            let mut masses: Vec<Held> = own.map(|part| part.least(towards, rising, foot)).collect();
            let empty = push(&masses);
            masses.extend(loads.iter().map(|(mass, at)| Held {
                newton: mass.weight().in_newton(),
                lever: towards.within(foot, *at),
                back: at.y,
            }));
            (empty, push(&masses))
        };
        let ((tied, whole), (case, full)) = (begins(Rising::Unit), begins(Rising::Case));
        Push { towards, empty: tied.min(case), loaded: whole.min(full), tied }
    })
}

/// The smallest of the pushes that a wall behind the unit does not stop. Loads stand within the foot and only help, so
/// it is one at the empty unit.
// Source: EN 16122:2012, 11.1: units that stand against a wall are not tested to the rear.
pub fn least([front, _, left, right]: [Push; 4]) -> Push {
    [left, right].into_iter().fold(front, |least, push| if push.empty < least.empty { push } else { least })
}

/// A part as its leaf may stand; others stay where they are.
fn hung(picked: Picked<'_>, choice: &Choice, layout: &Layout, (id, part): (PanelId, Weighed)) -> Part {
    let Weighed { mass, centre } = part;
    let axis = || {
        let PanelId::Leaf(bay) = id else { return None };
        let at = usize::from(bay).wrapping_sub(1);
        let (span, chosen) = layout.bays.get(at).zip(choice.bays.get(at))?;
        let Fill::Leaf(hung) = chosen.fill else { return None };
        Some(Spot { x: leaf::of(span, layout, &picked.range.build, hung).axis, ..centre })
    };
    let axis = axis();
    let open = axis.map_or(centre, |axis| Spot { y: centre.y - (centre.x - axis.x).abs(), ..axis });
    Part { id, mass, at: [centre, open], axis }
}

/// What the range lays shelves and top out for, each spread over the whole of it.
fn loads(picked: Picked<'_>, layout: &Layout) -> Vec<(Mass, Spot)> {
    let on = |load: AreaMass, area: Area| Mass::kg(load.in_kg_per_m2() * area.in_m2());
    let inside = (layout.upright_front + layout.back_front) / 2.0;
    let (area, middle) = layout.top();
    let top = (on(picked.model.top_load_kg_per_m2, area), Spot::new(middle, layout.depth / 2.0, layout.height));
    let shelves = layout.bays.iter().flat_map(|span| {
        let mass = on(picked.model.shelf_load_kg_per_m2, span.clear() * layout.clear_depth());
        span.shelves.iter().map(move |under| (mass, Spot::new(span.middle(), inside, *under + layout.body)))
    });
    shelves.chain([top]).collect()
}

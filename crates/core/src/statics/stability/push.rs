//! The pushes at the top under which a unit begins to tip, to all four sides.

use serde::Serialize;

use crate::cabinet::bow::Bow;
use crate::cabinet::case::Weighed;
use crate::cabinet::layout::{Layout, Picked};
use crate::cabinet::leaf;
use crate::cabinet::panel::{End, PanelId};
use crate::choice::{Choice, Fill};
use crate::geometry::space::Spot;
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

    /// How far a place lies within the edge of the foot at that side; beyond it if negative.
    fn within(self, picked: Picked<'_>, layout: &Layout, at: Spot) -> Length {
        let foot = layout.foot(&picked.range.build);
        match self {
            Self::Front => at.y - foot.front,
            Self::Rear => foot.rear - at.y,
            Self::Left => at.x - foot.left,
            Self::Right => foot.right - at.x,
        }
    }

    /// The moment with which masses hold a unit, in newton millimetres about the edge of the foot before their common centre.
    fn held(self, picked: Picked<'_>, layout: &Layout, masses: &[(Mass, Spot)]) -> f64 {
        let (mut moment, mut weight, mut back) = (0.0, 0.0, 0.0);
        for (mass, at) in masses {
            let newton = mass.weight().in_newton();
            moment += newton * self.within(picked, layout, *at).in_mm();
            weight += newton;
            back += newton * at.y.in_mm();
        }
        let end = match self {
            Self::Front | Self::Rear => return moment,
            Self::Left => End::Left,
            Self::Right => End::Right,
        };
        // Beside its outermost point the foot's arc lies further in.
        let curve = |bow: Bow| bow.foot_within(end, Length::mm(back / weight)).in_mm();
        moment - weight * layout.bow(end).filter(|_| layout.plinth.is_none()).map_or(0.0, curve)
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
}

/// The pushes to all sides of a unit of weighed parts, every leaf open at a right angle or shut as it holds the unit least.
// Source: statics: F h = Σ m g x, about the edge of the foot at that side.
pub fn pushes(picked: Picked<'_>, choice: &Choice, layout: &Layout, parts: &[(PanelId, Weighed)]) -> [Push; 4] {
    let both = |(id, Weighed { mass, centre }): &(PanelId, Weighed)| {
        (*mass, [*centre, opened(picked, choice, layout, *id, *centre)])
    };
    let parts: Vec<(Mass, [Spot; 2])> = parts.iter().map(both).collect();
    let loads = loads(picked, layout);
    Towards::ALL.map(|towards| {
        let arm = |at: Spot| towards.within(picked, layout, at);
        let least =
            |(mass, [shut, open]): &(Mass, [Spot; 2])| (*mass, if arm(*open) < arm(*shut) { *open } else { *shut });
        let mut masses: Vec<(Mass, Spot)> = parts.iter().map(least).collect();
        let empty = towards.held(picked, layout, &masses);
        masses.extend(&loads);
        let loaded = towards.held(picked, layout, &masses);
        let push = |moment: f64| Force::newton(moment.max(0.0) / layout.height.in_mm());
        Push { towards, empty: push(empty), loaded: push(loaded) }
    })
}

/// The smallest of the pushes that a wall behind the unit does not stop. Loads stand within the foot and only help, so
/// it is one at the empty unit.
// Source: EN 16122:2012, 11.1: units that stand against a wall are not tested to the rear.
pub fn least([front, _, left, right]: [Push; 4]) -> Push {
    [left, right].into_iter().fold(front, |least, push| if push.empty < least.empty { push } else { least })
}

/// Where the centre of a part is once its leaf stands open; others stay where they are.
fn opened(picked: Picked<'_>, choice: &Choice, layout: &Layout, id: PanelId, shut: Spot) -> Spot {
    let PanelId::Leaf(bay) = id else { return shut };
    let at = usize::from(bay).wrapping_sub(1);
    let Some((span, chosen)) = layout.bays.get(at).zip(choice.bays.get(at)) else { return shut };
    let Fill::Leaf(hung) = chosen.fill else { return shut };
    let axis = leaf::of(span, layout, &picked.range.build, hung).axis;
    Spot { x: axis, y: shut.y - (shut.x - axis).abs(), ..shut }
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

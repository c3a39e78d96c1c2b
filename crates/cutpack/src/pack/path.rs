//! What the machine does with a sheet: which outline it cuts when, which way round, where it goes down, and what stays.
//!
//! Outlines are edges of parts, as they are drawn: who runs the machine offsets them by the cutter's radius. Inside cuts
//! come before outside ones, while the sheet is still whole; of the outside ones small parts come first, since a large
//! rest of the sheet holds them. All outlines are run in climb direction: with the spindle turning clockwise, as seen
//! from above, that leaves the part to the right of the cutter (common practice).

use slotwright_core::geometry::outline::{Corner, Outline, Point, Segment};
use slotwright_core::range::{Cutting, Hold, Range};
use slotwright_core::units::quantity::Length;

use super::lot::Lot;
use super::sheet::{Placed, Rectangle, Sheet};

mod between;

/// On which side of the material a cut runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Side {
    /// A hole: what is inside falls out.
    Inside,
    /// Round a part.
    Outside,
}

/// One outline as it is cut.
#[derive(Clone, Debug)]
pub struct Cut {
    /// Inside or outside.
    pub side: Side,
    /// Which of the sheet's parts it belongs to.
    pub part: usize,
    /// The edge, in climb direction, begun where the cutter comes to it.
    pub outline: Outline,
    /// The way of the cutter's centre on which it goes down, in the waste; its end lies beside the outline's beginning. Of no
    /// length where there is no room: then the cutter goes straight down.
    pub lead_in: [Point; 2],
    /// The bridges that are left, each from one end to the other on the outline.
    pub bridges: Vec<[Point; 2]>,
    /// What is cut through between bridges: ways along the outline on which the cutter takes nothing of any bridge, neither of
    /// its own part nor of a neighbour. Empty where the outline itself is cut through.
    pub between: Vec<Vec<Corner>>,
}

/// How deep cuts go: down from the upper face of the sheet, by its mean thickness with its coats.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Depths {
    /// Through the sheet: holes, and what lies between bridges.
    pub through: Length,
    /// All round parts: through the sheet, or as far as a skin or the bridges are left.
    pub outside: Length,
}

/// All cuts of a sheet, in their order.
#[derive(Clone, Debug)]
pub struct Program {
    /// The cuts.
    pub cuts: Vec<Cut>,
    /// How deep they go.
    pub depths: Depths,
    /// Length of all outlines and lead-ins, once round.
    pub length: Length,
    /// Minutes that the machine cuts.
    pub minutes: f64,
}

impl Depths {
    /// Those of a sheet: an offcut has its own thickness.
    pub fn of(lot: &Lot<'_>, sheet: &Sheet<'_>) -> Self {
        let (coated, cutting) = (sheet.coated(lot), &lot.range.cutting);
        let through = coated + cutting.below_mm;
        let outside = match cutting.hold {
            Hold::Vacuum => through,
            Hold::Skin { thickness_mm } | Hold::Bridges { thickness_mm, .. } => coated - thickness_mm,
        };
        Self { through, outside }
    }
}

impl Program {
    /// That of a sheet.
    pub fn of(lot: &Lot<'_>, sheet: &Sheet<'_>) -> Self {
        let mut cuts: Vec<Cut> = Vec::new();
        // From left to right, so that the machine does not run to and fro.
        let mut by_place: Vec<(usize, &Placed<'_>)> = sheet.placed.iter().enumerate().collect();
        by_place.sort_by(|(_, a), (_, b)| a.at.u.total_cmp(&b.at.u).then(a.at.v.total_cmp(&b.at.v)));
        for (part, placed) in &by_place {
            cuts.extend(placed.holes().map(|hole| Cut::inside(lot.range, *part, &hole)));
        }
        by_place.sort_by(|(_, a), (_, b)| a.part.panel.area().total_cmp(&b.part.panel.area()));
        for (part, placed) in &by_place {
            cuts.push(Cut::outside(lot.range, *part, placed));
        }
        between::add(&mut cuts, &sheet.placed, lot.range.build.cutter_mm / 2.0);
        let length = cuts.iter().map(|cut| cut.outline.length() + distance(cut.lead_in[0], cut.lead_in[1])).sum();
        let minutes = lot.range.machine_minutes(length, u32::try_from(cuts.len()).unwrap_or(u32::MAX));
        Self { cuts, depths: Depths::of(lot, sheet), length, minutes }
    }
}

fn distance(a: Point, b: Point) -> Length {
    Length::mm(libm::hypot((b.u - a.u).in_mm(), (b.v - a.v).in_mm()))
}

/// A straight edge of an outline, with what runs along it.
#[derive(Clone, Copy, Debug)]
struct Straight {
    at: usize,
    segment: Segment,
    /// How many bridges lie on it.
    bridges: u32,
}

impl Straight {
    fn length(&self) -> Length {
        self.segment.length()
    }

    /// Where on it the outline begins: between its bridges.
    fn start(&self) -> f64 {
        match self.bridges {
            0 => 0.5,
            1 => 0.25,
            many => 1.0 / f64::from(many),
        }
    }

    /// The middles of its bridges.
    fn middles(self) -> impl Iterator<Item = f64> {
        (0..self.bridges).map(move |number| f64::from(2 * number + 1) / f64::from(2 * self.bridges))
    }
}

/// The straight edges of an outline, the longest first.
fn straights(outline: &Outline) -> Vec<Straight> {
    let edges = outline.segments().enumerate().filter(|(_, segment)| segment.bulge == 0.0);
    let mut straights: Vec<Straight> = edges.map(|(at, segment)| Straight { at, segment, bridges: 0 }).collect();
    straights.sort_by(|a, b| b.length().total_cmp(&a.length()));
    straights
}

impl Cut {
    fn inside(range: &Range, part: usize, hole: &Outline) -> Self {
        // Holes are stored clockwise.
        let outline = hole.reversed();
        let radius = range.build.cutter_mm / 2.0;
        let (outline, lead_in) = if let Some(edge) = straights(&outline).first() {
            // The cutter keeps clear of the wall behind it.
            let room = edge.length() / 2.0 - radius;
            let way = range.cutting.lead_in_mm.min(room).max(Length::ZERO);
            let lead_in = beside(edge.segment, edge.start(), radius, Length::ZERO, way);
            (outline.begun_within(edge.at, edge.start()), lead_in)
        } else {
            let centre = outline.centroid();
            let first = outline.corners().first().map_or(centre, |corner| corner.at);
            let from_centre = distance(centre, first);
            let share = ((from_centre - radius) / from_centre).max(0.0);
            let end = Segment { from: centre, to: first, bulge: 0.0 }.at(share);
            (outline, [centre, end])
        };
        Self { side: Side::Inside, part, outline, lead_in, bridges: Vec::new(), between: Vec::new() }
    }

    fn outside(range: &Range, part: usize, placed: &Placed<'_>) -> Self {
        let outline = placed.outline().reversed();
        let radius = range.build.cutter_mm / 2.0;
        let mut edges = straights(&outline);
        let bridges = bridges(&mut edges, &range.cutting, placed.rectangle_without_tabs());
        let side = Side::Outside;
        let Some(edge) = edges.first() else {
            let first = outline.corners().first().map_or(Point::default(), |corner| corner.at);
            return Self { side, part, outline, lead_in: [first, first], bridges, between: Vec::new() };
        };
        // In the middle between this part and the next, which is a cutter and the allowance away.
        let off = range.cutting.allowance_mm / 2.0;
        let way = range.cutting.lead_in_mm.min(edge.length() * (edge.start() / 2.0));
        let lead_in = beside(edge.segment, edge.start(), radius, off, way);
        let outline = outline.begun_within(edge.at, edge.start());
        Self { side, part, outline, lead_in, bridges, between: Vec::new() }
    }
}

/// A way of the cutter's centre to a point of an edge, with the waste to its left: it begins `way` back along the edge and
/// `off` farther from it.
fn beside(edge: Segment, share: f64, radius: Length, off: Length, way: Length) -> [Point; 2] {
    let length = edge.length();
    let (along_u, along_v) = ((edge.to.u - edge.from.u) / length, (edge.to.v - edge.from.v) / length);
    let at = edge.at(share);
    let from = |back: Length, out: Length| {
        Point::new(at.u - back * along_u - out * along_v, at.v - back * along_v + out * along_u)
    };
    [from(way, radius + off), from(Length::ZERO, radius)]
}

/// Bridges on the plain edges of a part, those of its rectangle: no tab, notch or lap has one. Two on an edge are at most so far
/// apart as the range says, and there are two at least if there is room for them.
fn bridges(edges: &mut [Straight], cutting: &Cutting, plain: Rectangle) -> Vec<[Point; 2]> {
    let Hold::Bridges { length_mm, apart_mm, .. } = cutting.hold else { return Vec::new() };
    // A bridge with as much edge on both of its sides; sooner than on a short edge it lies on one of twice that.
    let (room, long) = (length_mm * 4.0, length_mm * 12.0);
    let is_plain = |edge: &Straight| edge.length() >= room && plain.has_side(edge.segment.from, edge.segment.to);
    let count = edges.iter().filter(|edge| is_plain(edge) && edge.length() >= long).count();
    for (place, edge) in edges.iter_mut().filter(|edge| is_plain(edge)).enumerate() {
        if place < count.max(2) {
            edge.bridges = whole(libm::ceil(edge.length() / apart_mm)).max(1);
        }
    }
    let along = |edge: &Straight| {
        let half = length_mm / edge.length() / 2.0;
        let segment = edge.segment;
        edge.middles().map(move |middle| [segment.at(middle - half), segment.at(middle + half)])
    };
    edges.iter().flat_map(along).collect()
}

fn whole(value: f64) -> u32 {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole and small; `as` saturates")]
    let whole = value as u32;
    whole
}

#[cfg(test)]
mod tests;

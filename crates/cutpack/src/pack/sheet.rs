//! A sheet with the parts that are cut from it.

use slotwright_core::business::nesting::Grained;
use slotwright_core::cabinet::panel::GrainAxis;
use slotwright_core::geometry::outline::{Outline, Point};
use slotwright_core::geometry::quarters::Quarters;
use slotwright_core::range::Grain;
use slotwright_core::units::quantity::{Area, Length, Mass};

use super::lot::{Lot, Part};

/// Where a sheet comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Stock {
    /// A new sheet of a format of the range, by its key.
    Bought(String),
    /// An offcut, by its name.
    Offcut(String),
}

/// A rectangle on a sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rectangle {
    /// Lower left corner.
    pub from: Point,
    /// Upper right corner.
    pub to: Point,
}

impl Rectangle {
    /// Along the sheet's length, across it.
    pub fn size(&self) -> (Length, Length) {
        (self.to.u - self.from.u, self.to.v - self.from.v)
    }

    /// Its area.
    pub fn area(&self) -> Area {
        let (long, wide) = self.size();
        long * wide
    }

    /// Whether two points lie on one of its sides, to a thousandth of a millimetre.
    pub fn has_side(&self, one: Point, other: Point) -> bool {
        let on = |side: Length, a: Length, b: Length| (a - side).abs().max((b - side).abs()) < Length::mm(1e-3);
        on(self.from.u, one.u, other.u)
            || on(self.to.u, one.u, other.u)
            || on(self.from.v, one.v, other.v)
            || on(self.to.v, one.v, other.v)
    }
}

/// A sheet: its length runs along u, its width along v, the origin is its lower left corner.
#[derive(Clone, Debug)]
pub struct Sheet<'a> {
    /// Which sheet of the pack it is, from 1.
    pub number: u32,
    /// Where it comes from.
    pub stock: Stock,
    /// Its side along u.
    pub length: Length,
    /// Its side along v.
    pub width: Length,
    /// Direction of its face grain.
    pub grain: Grain,
    /// Thickness of its board without coats: of the batch that it comes from, or of its lot's where nobody measured that.
    pub uncoated: Length,
    /// Whether that was measured.
    pub is_measured: bool,
    /// The parts on it.
    pub placed: Vec<Placed<'a>>,
    /// What of it is kept.
    pub kept: Vec<Rectangle>,
}

/// A part on a sheet.
#[derive(Clone, Copy, Debug)]
pub struct Placed<'a> {
    /// The part.
    pub part: Part<'a>,
    /// How it is turned: by quarters that let its grain run as that of its sheet.
    pub turn: Quarters,
    /// Lower left corner of its blank on the sheet.
    pub at: Point,
}

/// How a part is turned for its grain to run as that of its sheet; half a turn more would do as well.
pub fn turn(part: &Part<'_>, grain: Grain) -> Quarters {
    if (part.panel.grain == GrainAxis::AlongU) == (grain == Grain::Length) { Quarters::None } else { Quarters::One }
}

/// The rectangle from `low` of that size, turned.
fn turned(turn: Quarters, low: Point, (u, v): (Length, Length)) -> Rectangle {
    let (one, other) = (turn.turn((low.u, low.v)), turn.turn((low.u + u, low.v + v)));
    Rectangle {
        from: Point::new(one.0.min(other.0), one.1.min(other.1)),
        to: Point::new(one.0.max(other.0), one.1.max(other.1)),
    }
}

impl<'a> Placed<'a> {
    /// How far the panel's origin is moved.
    fn shift(&self) -> Point {
        let panel = self.part.panel;
        let blank = turned(self.turn, panel.blank_corner(), panel.blank());
        Point::new(self.at.u - blank.from.u, self.at.v - blank.from.v)
    }

    /// Size of its blank on the sheet: along u, along v.
    pub fn size(&self) -> (Length, Length) {
        let (u, v) = self.part.panel.blank();
        if self.turn.is_across() { (v, u) } else { (u, v) }
    }

    /// The rectangle of its blank.
    pub fn rectangle(&self) -> Rectangle {
        let (u, v) = self.size();
        Rectangle { from: self.at, to: Point::new(self.at.u + u, self.at.v + v) }
    }

    /// The panel's rectangle on the sheet, without what stands out of it.
    pub fn rectangle_without_tabs(&self) -> Rectangle {
        let (shift, panel) = (self.shift(), self.part.panel);
        let plain = turned(self.turn, Point::default(), (panel.width, panel.height));
        let moved = |at: Point| Point::new(at.u + shift.u, at.v + shift.v);
        Rectangle { from: moved(plain.from), to: moved(plain.to) }
    }

    /// Its outer outline on the sheet, counter-clockwise.
    pub fn outline(&self) -> Outline {
        self.part.panel.outline().placed(self.turn, self.shift())
    }

    /// Its holes on the sheet, clockwise.
    pub fn holes(&self) -> impl Iterator<Item = Outline> + 'a {
        let (turn, shift) = (self.turn, self.shift());
        self.part.panel.holes().map(move |hole| hole.placed(turn, shift))
    }
}

impl Sheet<'_> {
    /// A rectangle on it by its grain, from its size along the sheet's length and across it.
    pub const fn grained(&self, (long, wide): (Length, Length)) -> Grained {
        match self.grain {
            Grain::Length => Grained { along: long, across: wide },
            Grain::Width => Grained { along: wide, across: long },
        }
    }

    /// Its area.
    pub fn area(&self) -> Area {
        self.length * self.width
    }

    /// Whether a part is cut from it.
    pub fn has(&self, part: &Part<'_>) -> bool {
        self.placed.iter().any(|placed| (placed.part.order, placed.part.number) == (part.order, part.number))
    }

    /// Area of its parts, what is cut out of them not counted.
    pub fn used(&self) -> Area {
        self.placed.iter().map(|placed| placed.part.panel.area()).sum()
    }

    /// The share of it that ends up in parts.
    pub fn used_share(&self) -> f64 {
        self.used() / self.area()
    }

    /// Its thickness when it is cut, with the coats of its lot.
    pub fn coated(&self, lot: &Lot<'_>) -> Length {
        self.uncoated + lot.film()
    }

    /// Its mass when it is cut, coats of its lot on both faces counted.
    pub fn mass(&self, lot: &Lot<'_>) -> Mass {
        let board = lot.board.density_kg_per_m3.mass_of(self.area(), self.uncoated);
        board + lot.finish.film_kg_per_m3.mass_of(self.area(), lot.film())
    }

    /// Whether it is an offcut that has to be measured before it is cut.
    pub const fn is_unmeasured_offcut(&self) -> bool {
        matches!(self.stock, Stock::Offcut(_)) && !self.is_measured
    }

    /// The path of its files in a pack without their ends: number, board and finish.
    pub fn path(&self, lot: &Lot<'_>) -> String {
        format!("sheets/{:02}-{}", self.number, lot.key())
    }
}

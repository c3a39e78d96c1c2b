//! Where everything stands: the few lengths from which panels, joints and rules are made.

use smallvec::SmallVec;

use crate::cabinet::panel::Stock;
use crate::choice::{BAYS_MOST, Bay, Choice, Fill};
use crate::range::{Board, Finish, Model, Range};
use crate::units::quantity::Length;

/// The parts of a range that a choice refers to.
#[derive(Clone, Copy, Debug)]
pub struct Picked<'a> {
    /// The range itself.
    pub range: &'a Range,
    /// The model.
    pub model: &'a Model,
    /// Board of the body.
    pub body: &'a Board,
    /// Board of the back.
    pub back: &'a Board,
    /// The finish.
    pub finish: &'a Finish,
}

impl<'a> Picked<'a> {
    /// Looks up what the choice names; `None` if the range does not have it.
    pub fn of(range: &'a Range, choice: &Choice) -> Option<Self> {
        let model = range.model(&choice.model)?;
        Some(Self {
            range,
            model,
            body: range.board(&model.body)?,
            back: range.board(&choice.back)?,
            finish: range.finish(&choice.finish)?,
        })
    }

    /// What a part of that stock is cut from.
    pub const fn board(self, stock: Stock) -> &'a Board {
        match stock {
            Stock::Body => self.body,
            Stock::Back => self.back,
        }
    }
}

/// Less room than this is no bay, no row and, twice, no depth, whatever the range asks.
pub(crate) const LEAST_ROOM: Length = Length::mm(40.0);

/// Most shelves that are laid out in one bay; models allow fewer.
pub const SHELVES_MOST: u8 = 12;

/// Undersides of the shelves of a bay.
pub type Shelves = SmallVec<[Length; 6]>;

/// Positions in the case.
#[derive(Clone, Debug, PartialEq)]
pub struct Layout {
    /// Overall width.
    pub width: Length,
    /// Overall depth.
    pub depth: Length,
    /// Overall height.
    pub height: Length,
    /// Coated thickness of body parts.
    pub body: Length,
    /// Coated thickness of the back.
    pub back: Length,
    /// Top face of the base.
    pub floor: Length,
    /// Underside of the top.
    pub ceiling: Length,
    /// Front face of stiles and leaves.
    pub face: Length,
    /// Front edge of the uprights and shelves.
    pub upright_front: Length,
    /// Rear edge of the uprights.
    pub upright_rear: Length,
    /// Front face of the back.
    pub back_front: Length,
    /// The bays from left to right.
    pub bays: SmallVec<[BaySpan; BAYS_MOST]>,
    /// Which uprights have a stile before them; one more than there are bays.
    pub stiles: SmallVec<[bool; BAYS_MOST + 1]>,
    /// Width of a stile.
    pub stile: Length,
}

/// The clear space of one bay.
#[derive(Clone, Debug, PartialEq)]
pub struct BaySpan {
    /// Right face of the upright at its left.
    pub left: Length,
    /// Left face of the upright at its right.
    pub right: Length,
    /// Left end of the opening between stiles.
    pub opening_left: Length,
    /// Right end of the opening between stiles.
    pub opening_right: Length,
    /// Undersides of its shelves, from the bottom.
    pub shelves: Shelves,
}

impl BaySpan {
    /// Clear width.
    pub fn clear(&self) -> Length {
        self.right - self.left
    }

    /// Width between the stiles.
    pub fn opening(&self) -> Length {
        self.opening_right - self.opening_left
    }

    /// Middle of the clear width.
    pub fn middle(&self) -> Length {
        (self.left + self.right) / 2.0
    }
}

impl Layout {
    /// Lays the choice out; any sizes, however absurd.
    ///
    /// `None` if there are no bays, more than [`BAYS_MOST`], or bays without any share.
    pub fn of(picked: Picked<'_>, choice: &Choice) -> Option<Self> {
        let build = &picked.range.build;
        let film = picked.finish.dry_film() * 2.0;
        let (body, back) = (picked.body.thickness() + film, picked.back.thickness() + film);
        let (width, depth, height) = (choice.width_mm.length(), choice.depth_mm.length(), choice.height_mm.length());
        let shares: u32 = choice.bays.iter().map(|bay| u32::from(bay.share)).sum();
        if choice.bays.is_empty() || choice.bays.len() > BAYS_MOST || shares == 0 {
            return None;
        }
        let (floor, ceiling) = (body * 2.0, height - body);
        let count = count(&choice.bays);
        let clear = width - build.end_inset_mm * 2.0 - body * (count + 1.0);
        let upright_front = build.front_inset_mm + body;
        let upright_rear = depth - build.rear_inset_mm;
        let stiles = stiles(&choice.bays);

        let mut left = build.end_inset_mm + body;
        let mut bays = SmallVec::new();
        for (bay, sides) in choice.bays.iter().zip(stiles.windows(2)) {
            let right = left + clear * (f64::from(bay.share) / f64::from(shares));
            let first = bays.is_empty();
            let last = bays.len() + 1 == choice.bays.len();
            let into = |stile: Option<&bool>, end: bool| match stile {
                Some(true) if end => build.stile_mm - body,
                Some(true) => (build.stile_mm - body) / 2.0,
                _ => Length::ZERO,
            };
            bays.push(BaySpan {
                left,
                right,
                opening_left: left + into(sides.first(), first),
                opening_right: right - into(sides.last(), last),
                shelves: shelves(bay.fill, floor, ceiling, body),
            });
            left = right + body;
        }
        Some(Self {
            width,
            depth,
            height,
            body,
            back,
            floor,
            ceiling,
            face: build.front_inset_mm,
            upright_front,
            upright_rear,
            back_front: upright_rear - build.chase_mm - back,
            bays,
            stiles,
            stile: build.stile_mm,
        })
    }

    /// Whether its parts have room: what the rules on room let pass, whatever the range asks.
    pub fn has_room(&self) -> bool {
        let wide = self.bays.iter().all(|bay| bay.clear() >= LEAST_ROOM && bay.opening() >= LEAST_ROOM);
        let high = self.bays.iter().all(|bay| self.row_height(bay) >= LEAST_ROOM);
        wide && high && self.clear_depth() >= LEAST_ROOM * 2.0
    }

    /// Left face of an upright, counted from 0 at the left.
    pub fn upright_left(&self, number: usize) -> Option<Length> {
        match self.bays.get(number) {
            Some(bay) => Some(bay.left - self.body),
            None => self.bays.last().filter(|_| number == self.bays.len()).map(|bay| bay.right),
        }
    }

    /// Clear height between base and top.
    pub fn clear_height(&self) -> Length {
        self.ceiling - self.floor
    }

    /// Clear height of a row of a bay: all rows are as high as its lowest one.
    pub fn row_height(&self, bay: &BaySpan) -> Length {
        bay.shelves.first().copied().unwrap_or(self.ceiling) - self.floor
    }

    /// From the front edge of the uprights to the back.
    pub fn clear_depth(&self) -> Length {
        self.back_front - self.upright_front
    }
}

/// The number of bays, at most [`BAYS_MOST`], as a factor.
fn count(bays: &[Bay]) -> f64 {
    bays.iter().map(|_| 1.0).sum()
}

/// An upright has a stile if a bay beside it holds shelves, which it keeps in, or a leaf, which it frames.
fn stiles(bays: &[Bay]) -> SmallVec<[bool; BAYS_MOST + 1]> {
    let wants = |bay: Option<&Bay>| bay.is_some_and(|bay| bay.fill != Fill::Open);
    (0..=bays.len())
        .map(|number| wants(bays.get(number)) || wants(number.checked_sub(1).and_then(|left| bays.get(left))))
        .collect()
}

/// Undersides of evenly spaced shelves.
fn shelves(fill: Fill, floor: Length, ceiling: Length, body: Length) -> Shelves {
    let Fill::Shelves(count) = fill else {
        return Shelves::new();
    };
    let count = count.min(SHELVES_MOST);
    let row = (ceiling - floor - body * f64::from(count)) / f64::from(count + 1);
    (0..count).map(|below| floor + row * f64::from(below + 1) + body * f64::from(below)).collect()
}

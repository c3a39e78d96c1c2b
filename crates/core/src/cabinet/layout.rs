//! Where everything stands: the few lengths from which panels, joints and rules are made.

use smallvec::SmallVec;

use crate::cabinet::bow::Bow;
use crate::cabinet::hook::Hooks;
use crate::cabinet::panel::{End, Stock};
use crate::cabinet::plinth::{Foot, Plinth};
use crate::choice::{BAYS_MOST, Bay, Bowed, Choice, Fill};
use crate::range::{Board, Build, Finish, Model, Range};
use crate::units::quantity::{Area, Dim, Length};

mod bay;

pub use bay::{BaySpan, Shelves};

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
    /// What it stands on, if that is not the lower base plate.
    pub plinth: Option<Plinth>,
    /// Underside of the base.
    pub base: Length,
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
    /// What the back hangs on.
    pub hooks: Hooks,
    /// The bowed ends, the left one first; none that are square.
    pub bows: [Option<Bow>; 2],
    /// From the left and from the right end of the upper plates to the outer face of the end upright there.
    pub ends: [Length; 2],
    /// The bays from left to right.
    pub bays: SmallVec<[BaySpan; BAYS_MOST]>,
    /// Which uprights have a stile before them; one more than there are bays.
    pub stiles: SmallVec<[bool; BAYS_MOST + 1]>,
    /// Width of a stile.
    pub stile: Length,
    /// Front edge of the stops.
    pub stop_front: Length,
    /// Rear edge of the stops.
    pub stop_rear: Length,
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
        let plinth = Plinth::of(build, choice, depth);
        let base = plinth.map_or(Length::ZERO, |plinth| plinth.height);
        let (floor, ceiling) = (base + body * 2.0, height - body);
        let count = count(&choice.bays);
        let bows = bows(picked.range, choice, body);
        let ends = bows.map(|bow| bow.map_or(build.end_inset_mm, |bow| bow.upright));
        let [left_end, right_end] = ends;
        let clear = width - (left_end + right_end) - body * (count + 1.0);
        let upright_front = build.front_inset_mm + body;
        let stop_front = upright_front + build.stop_gap_mm;
        let back_front = depth - build.chase_mm - back;
        let (stiles, stile) = (stiles(&choice.bays), picked.model.stile_mm);

        let mut left = left_end + body;
        let mut bays = SmallVec::new();
        for (bay, sides) in choice.bays.iter().zip(stiles.windows(2)) {
            let right = left + clear * (f64::from(bay.share) / f64::from(shares));
            let first = bays.is_empty();
            let last = bays.len() + 1 == choice.bays.len();
            let into = |has: Option<&bool>, end: bool| match has {
                Some(true) if end => stile - body,
                Some(true) => (stile - body) / 2.0,
                _ => Length::ZERO,
            };
            let opening = (left + into(sides.first(), first), right - into(sides.last(), last));
            let shelves = shelves(bay.fill, floor, ceiling, body);
            let span = BaySpan::between((left, right), opening, shelves);
            bays.push(match bay.fill {
                Fill::Leaf(hung) => span.with_leaf(build, body, hung),
                Fill::Open | Fill::Shelves(_) => span,
            });
            left = right + body;
        }
        Some(Self {
            width,
            depth,
            height,
            body,
            back,
            plinth,
            base,
            floor,
            ceiling,
            face: build.front_inset_mm,
            upright_front,
            upright_rear: back_front - build.clearance_mm / 2.0,
            back_front,
            hooks: Hooks::of(build, ceiling - floor),
            bows,
            ends,
            bays,
            stiles,
            stile,
            stop_front,
            stop_rear: stop_front + build.stop_depth_mm,
        })
    }

    /// Whether its parts have room: what the rules on room let pass, whatever the range asks.
    pub fn has_room(&self) -> bool {
        let wide = self.bays.iter().all(|bay| bay.clear() >= LEAST_ROOM && bay.access() >= LEAST_ROOM);
        let deep = self.stop_rear <= self.back_front || self.bays.iter().all(|bay| bay.stop.is_none());
        let high = self.bays.iter().all(|bay| self.row_height(bay) >= LEAST_ROOM);
        let bowed = self.bows.iter().flatten().all(Bow::has_room);
        let room = bowed && self.hooks.has_room() && self.plinth_has_room();
        wide && high && deep && room && self.clear_depth() >= LEAST_ROOM * 2.0
    }

    /// The bow of an end, if it is bowed.
    pub const fn bow(&self, end: End) -> Option<Bow> {
        let [left, right] = self.bows;
        match end {
            End::Left => left,
            End::Right => right,
        }
    }

    /// Area of the top, its corners not rounded, and the middle of it along the width.
    pub fn top(&self) -> (Area, Length) {
        let [left, right] = self.plate_insets(false);
        let (across, middle) = (self.width - left - right, left + (self.width - left - right) / 2.0);
        let mut area = (across * self.depth).in_mm2();
        let mut moment = area * middle.in_mm();
        for end in End::ALL {
            if let Some((cap, out)) = self.bow(end).map(|bow| bow.cap(false)) {
                area += cap.in_mm2();
                let at = if end == End::Left { left - out } else { self.width - right + out };
                moment += cap.in_mm2() * at.in_mm();
            }
        }
        (Area::mm2(area), if area > 0.0 { Length::mm(moment / area) } else { middle })
    }

    /// How far the rectangle of a plate stands in at both ends: of the lower base plate, or of the others.
    pub(crate) fn plate_insets(&self, lower: bool) -> [Length; 2] {
        self.bows.map(|bow| bow.map_or(Length::ZERO, |bow| bow.plate_inset(lower)))
    }

    /// Left face of an upright, counted from 0 at the left.
    pub fn upright_left(&self, number: usize) -> Option<Length> {
        match self.bays.get(number) {
            Some(bay) => Some(bay.left - self.body),
            None => self.bays.last().filter(|_| number == self.bays.len()).map(|bay| bay.right),
        }
    }

    /// How high the part that is lifted highest reaches while the unit is put together: an upright over the base, or
    /// the back over the hooks. The proof of assembly finds the same, part by part.
    pub fn lifted(&self, build: &Build) -> Length {
        let over_base = self.floor - self.base - build.tab_short_mm;
        self.height - build.tab_short_mm + over_base.max(self.hooks.drop())
    }

    /// From the left to the right end of the long boards of a plinth: flush with the outer faces of the ends.
    pub fn plinth_ends(&self) -> Option<(Length, Length)> {
        Some((self.upright_left(0)?, self.bays.last()?.right + self.body))
    }

    /// Left faces of the bearers: one under each divider, and one beside each end, where wood has to be left at the ends of the
    /// long boards. So the base spans from bearer to bearer no further than from upright to upright, and loads of uprights go
    /// straight into the floor.
    pub fn bearers(&self) -> impl Iterator<Item = Length> + '_ {
        let beyond = self.plinth.map_or(Length::ZERO, |plinth| plinth.beyond);
        (0..=self.bays.len()).filter_map(move |number| {
            let left = self.upright_left(number)?;
            Some(if number == 0 {
                left + beyond
            } else if number == self.bays.len() {
                left - beyond
            } else {
                left
            })
        })
    }

    /// Middles and length of the tabs with which a long board of the plinth goes into the base: in the first and the last bay,
    /// or in the only one, between bearers and clear of the tabs of the uprights.
    pub(crate) fn plinth_tabs(&self, build: &Build) -> (SmallVec<[Length; 2]>, Length) {
        let beyond = self.plinth.map_or(Length::ZERO, |plinth| plinth.beyond);
        match self.bays.as_slice() {
            [] => (SmallVec::new(), Length::ZERO),
            [only] => {
                let (left, wide) = (only.left + beyond, only.clear() - beyond * 2.0);
                let long = build.tab_mm.min(wide / 4.0);
                let places: &[f64] = if wide > long * 4.0 { &[0.25, 0.75] } else { &[0.5] };
                (places.iter().map(|place| left + wide * *place).collect(), long)
            }
            [first, .., last] => {
                let wide = first.clear().min(last.clear()) - beyond;
                let (left, right) = (first.left + beyond + first.right, last.left + last.right - beyond);
                (SmallVec::from([left / 2.0, right / 2.0]), build.tab_mm.min(wide / 4.0))
            }
        }
    }

    /// What stands on the floor: the lower base plate, or the plinth's bearers in front and behind and its long boards at
    /// both sides.
    pub fn foot(&self, build: &Build) -> Foot {
        if let (Some(plinth), Some((left, right))) = (self.plinth, self.plinth_ends()) {
            return Foot { front: plinth.front, rear: plinth.rear, left, right };
        }
        // The lower base plate stands back along a bow as well.
        let [left, right] = self.bows.map(|bow| bow.map_or(Length::ZERO, |bow| bow.recess));
        Foot { front: build.foot_recess_mm, rear: self.depth, left, right: self.width - right }
    }

    /// Whether the boards of its plinth stand clear of each other, if it has one.
    fn plinth_has_room(&self) -> bool {
        self.plinth.is_none_or(|plinth| {
            let beside = self.bays.iter().all(|bay| bay.clear() >= plinth.bay_least());
            beside && plinth.height >= LEAST_ROOM && plinth.between(self.body) >= LEAST_ROOM
        })
    }

    /// Where the lower base plate ends and the upper one begins.
    pub fn seam(&self) -> Length {
        self.base + self.body
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

/// The bowed ends of a choice, whatever its model offers.
fn bows(range: &Range, choice: &Choice, body: Length) -> [Option<Bow>; 2] {
    if choice.bow_mm == Dim::mm(0) {
        return [None; 2];
    }
    let bow = Some(Bow::of(range, choice.bow_mm.length(), choice.depth_mm.length(), body));
    match choice.bowed {
        Bowed::Both => [bow; 2],
        Bowed::Left => [bow, None],
        Bowed::Right => [None, bow],
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

//! Lots: all parts of all orders that are cut from sheets of one board in one finish. Sheets are coated before they are
//! cut, so nothing else shares them.

use core::f64::consts::SQRT_2;

use slotwright_core::cabinet::layout::Picked;
use slotwright_core::cabinet::panel::{Feature, GrainAxis, Panel};
use slotwright_core::input::seal::Digest;
use slotwright_core::order::derive::Derived;
use slotwright_core::range::{Board, Finish, Range, relief_radius};
use slotwright_core::units::quantity::{Length, Mass};

use super::TakenOrder;

/// Sheets of one board in one finish, and all that is cut from them.
#[derive(Clone, Debug)]
pub struct Lot<'a> {
    /// The range by which parts are cut.
    pub range: &'a Range,
    /// Its digest, as orders name it.
    pub digest: Digest,
    /// The board.
    pub board: &'a Board,
    /// The finish.
    pub finish: &'a Finish,
    /// The parts, by order, then in reading order.
    pub parts: Vec<Part<'a>>,
}

/// A part of an order that is to be cut.
#[derive(Clone, Copy, Debug)]
pub struct Part<'a> {
    /// Which order of the pack it belongs to, from 1.
    pub order: u32,
    /// Which part of its order it is, from 1, in reading order.
    pub number: u32,
    /// The part.
    pub panel: &'a Panel,
    /// Its mass.
    pub mass: Mass,
    /// The step of the assembly in which it goes in, from 1.
    pub step: u32,
    /// How many people carry it.
    pub people: u8,
}

impl Part<'_> {
    /// What stands on its label and in all lists: order and part, `3-07`.
    pub fn mark(&self) -> String {
        format!("{}-{:02}", self.order, self.number)
    }

    /// The path of its drawing in a pack.
    pub fn path(&self) -> String {
        format!("parts/{}-{}.dxf", self.mark(), self.panel.id)
    }

    /// Size of its blank: along the face grain, across it.
    pub fn along_and_across(&self) -> (Length, Length) {
        let (u, v) = self.panel.blank();
        match self.panel.grain {
            GrainAxis::AlongU => (u, v),
            GrainAxis::AlongV => (v, u),
        }
    }
}

impl<'a> Lot<'a> {
    /// The coats before cutting, those of both faces together.
    pub fn film(&self) -> Length {
        self.finish.film_before() * 2.0
    }

    /// Thickness of its new sheets when they are cut: sanded board with the coats before cutting.
    pub fn coated(&self) -> Length {
        self.board.thickness() + self.film()
    }

    /// Thickness of its board without coats, if its batch was measured.
    pub fn measured(&self) -> Option<Length> {
        self.board.is_measured().then(|| self.board.thickness())
    }

    /// A part that is cut into somewhere more narrowly than the cutter and its reliefs need, and the widest cutter there.
    pub fn too_narrow(&self) -> Option<(&Part<'a>, Length)> {
        let cutter = self.range.build.cutter_mm;
        // A relief begins in the corner: in a slot that is narrower there is no room for one.
        let with_reliefs = |narrow: Length| narrow / SQRT_2 - relief_radius(Length::ZERO) * 2.0;
        let most = |feature: &Feature| match *feature {
            Feature::Slot { from, to } => Some(with_reliefs((to.u - from.u).min(to.v - from.v))),
            Feature::TurnedSlot(slot) => Some(with_reliefs(slot.length.min(slot.width))),
            Feature::Notch { from, to, .. } => Some(with_reliefs(to - from)),
            Feature::Bore { diameter, .. } => Some(diameter),
            Feature::Hole { height, .. } => Some(height),
            // Between the edge and the nose.
            Feature::Hook(hook) => Some(hook.neck / SQRT_2),
            // Its slit ends in half a circle.
            Feature::Detent(detent) => Some(detent.slit),
            Feature::Tab { .. } | Feature::Pivot { .. } | Feature::Bow(_) => None,
        };
        let narrowest = |part: &'_ Part<'a>| {
            let all = part.panel.features.iter().filter_map(most);
            all.fold(Length::mm(f64::MAX), Length::min)
        };
        self.parts.iter().map(|part| (part, narrowest(part))).find(|(_, most)| cutter > *most)
    }

    /// Its name in file names: board and finish.
    pub fn key(&self) -> String {
        format!("{}-{}", self.board.key, self.finish.key)
    }

    fn holds(&self, digest: Digest, board: &Board, finish: &Finish) -> bool {
        self.digest == digest && self.board.key == board.key && self.finish.key == finish.key
    }
}

/// The lots of orders, in the order in which their first parts come.
pub fn lots<'a>(orders: &'a [TakenOrder<'a>]) -> Vec<Lot<'a>> {
    let mut lots: Vec<Lot<'a>> = Vec::new();
    for order in orders {
        for (picked, part) in parts(order.number, &order.cut) {
            let (board, finish) = (picked.board(part.panel.stock), picked.finish);
            match lots.iter_mut().find(|lot| lot.holds(order.spec.range.digest, board, finish)) {
                Some(lot) => lot.parts.push(part),
                None => lots.push(Lot {
                    range: picked.range,
                    digest: order.spec.range.digest,
                    board,
                    finish,
                    parts: vec![part],
                }),
            }
        }
    }
    lots
}

/// The parts of an order in reading order, and what was picked for it.
pub(super) fn parts<'a>(order: u32, cut: &'a Derived<'a>) -> impl Iterator<Item = (Picked<'a>, Part<'a>)> {
    let picked = Picked::of(cut.range, cut.choice);
    let built = picked.and_then(|picked| Some((picked, cut.built.as_ref()?)));
    built.into_iter().flat_map(move |(picked, built)| {
        built.cut.weighed().zip(1..).map(move |((panel, weighed), number)| {
            let steps = cut.assembly.iter().flat_map(|assembly| &assembly.steps).zip(1..);
            let step = steps.clone().find(|(step, _)| step.part == panel.id);
            let (step, people) = step.map_or((0, 1), |(step, at)| (at, step.people));
            (picked, Part { order, number, panel, mass: weighed.mass, step, people })
        })
    })
}

#[cfg(test)]
mod tests;

//! Ways in and out: one straight move, or two of which the second begins once the first has gone far enough.

use smallvec::SmallVec;

use super::{Blocking, Body, Direction};
use crate::units::quantity::Length;

/// One straight move.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leg {
    /// The way it goes.
    pub moves: Direction,
    /// How far it goes.
    pub travel: Length,
}

/// A way of one or two straight moves, in the order in which they are made.
pub type Way = SmallVec<[Leg; 2]>;

/// A way out: for good along `last`, after so far along another direction where something is in its way before.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Out {
    pub(super) first: Option<(Direction, Length)>,
    pub(super) last: Direction,
}

impl Out {
    /// The same way as one in, with how far the part comes from until it is clear of what stands, and how high it is lifted on it.
    pub(super) fn reversed<'a>(self, body: &Body, standing: impl Iterator<Item = &'a Body>) -> (Way, Length) {
        let turned = self.first.map(|(direction, by)| body.moved(direction.step(by)));
        let from = turned.as_ref().unwrap_or(body);
        let travel = standing.map(|other| from.clear_of(other, self.last)).fold(Length::ZERO, Length::max);
        let mut way: Way = SmallVec::new();
        way.push(Leg { moves: self.last.opposite(), travel });
        way.extend(self.first.map(|(direction, by)| Leg { moves: direction.opposite(), travel: by }));
        let first = self.first.map_or(Length::ZERO, |(direction, by)| direction.step(by).z);
        let lifted = first.max(first + self.last.step(travel).z).max(Length::ZERO);
        (way, lifted)
    }
}

/// Finds ways out of parts from among what stands.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ways<'a> {
    pub(super) hulls: &'a Blocking,
    pub(super) bodies: &'a [Body],
    /// Less than this is no move: the free play of joints.
    pub(super) play: Length,
    /// How far from what it passes a part goes, where there is as much room.
    pub(super) room: Length,
}

impl Ways<'_> {
    /// The bodies in the way along a direction, each with how far it lets the other one go.
    fn stops(self, body: usize, standing: &[usize], along: Direction) -> impl Iterator<Item = Length> {
        let others = standing.iter().filter(move |other| **other != body);
        others.filter_map(move |other| self.hulls.travel(body, along, *other))
    }

    /// One straight move that nothing stops.
    pub(super) fn straight(self, body: usize, standing: &[usize], may: impl Fn(Direction) -> bool) -> Option<Out> {
        let is_free = |along: &Direction| may(*along) && self.stops(body, standing, *along).next().is_none();
        Direction::ALL.into_iter().find(is_free).map(|last| Out { first: None, last })
    }

    /// Two straight moves that nothing stops: the first one as short as it can be.
    pub(super) fn bent(self, body: usize, standing: &[usize], may: impl Fn(Direction) -> bool) -> Option<Out> {
        let own = self.bodies.get(body)?;
        let others = standing.iter().filter(|other| **other != body).filter_map(|other| self.bodies.get(*other));
        Direction::ALL.into_iter().filter(|first| may(*first)).find_map(|first| {
            let most = self.stops(body, standing, first).min_by(Length::total_cmp).filter(|most| *most > self.play)?;
            let mut lasts = Direction::ALL.into_iter().filter(|last| may(*last) && !last.is_along(first));
            lasts.find_map(|last| {
                let (from, to) = own.turns(others.clone(), (first, last), most)?;
                Some(Out { first: Some((first, from + ((to - from) / 2.0).min(self.room))), last })
            })
        })
    }
}

#[cfg(test)]
mod tests;

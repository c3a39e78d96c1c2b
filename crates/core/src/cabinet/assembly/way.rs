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
        let travel = from.clear_of_all(standing, self.last);
        let mut way: Way = SmallVec::new();
        way.push(Leg { moves: self.last.opposite(), travel });
        way.extend(self.first.map(|(direction, by)| Leg { moves: direction.opposite(), travel: by }));
        let first = self.first.map_or(Length::ZERO, |(direction, by)| direction.step(by).z);
        let lifted = first.max(first + self.last.step(travel).z).max(Length::ZERO);
        (way, lifted)
    }
}

/// What ways out are looked for by.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ways<'a> {
    pub(super) hulls: &'a Blocking,
    pub(super) bodies: &'a [Body],
    /// Less than this is no move: the free play of joints.
    pub(super) play: Length,
    /// How far from what it passes a part goes, where there is as much room.
    pub(super) room: Length,
}

/// Finds ways out of parts from among what stands.
#[derive(Clone, Debug)]
pub(super) struct Standing<'a> {
    ways: Ways<'a>,
    /// What stands.
    pub(super) bodies: Vec<usize>,
    /// For each body and direction how many of them are in its way.
    stops: Vec<[usize; 6]>,
}

impl<'a> Standing<'a> {
    /// All bodies.
    pub(super) fn all(ways: Ways<'a>) -> Self {
        let bodies: Vec<usize> = (0..ways.hulls.count()).collect();
        let stops = |body: &usize| {
            let stops =
                |along| bodies.iter().filter(|other| ways.hulls.travel(*body, along, **other).is_some()).count();
            Direction::ALL.map(stops)
        };
        Self { ways, stops: bodies.iter().map(stops).collect(), bodies }
    }

    /// The same without one that is gone.
    pub(super) fn take(&mut self, gone: usize) {
        self.bodies.retain(|body| *body != gone);
        for (body, stops) in self.stops.iter_mut().enumerate() {
            for (stops, along) in stops.iter_mut().zip(Direction::ALL) {
                *stops -= usize::from(self.ways.hulls.travel(body, along, gone).is_some());
            }
        }
    }

    /// One straight move that nothing stops.
    pub(super) fn straight(&self, body: usize, may: impl Fn(Direction) -> bool) -> Option<Out> {
        let mut stops = Direction::ALL.into_iter().zip(self.stops.get(body)?);
        stops.find(|(along, stops)| may(*along) && **stops == 0).map(|(last, _)| Out { first: None, last })
    }

    /// How far a body may go along a direction until something stops it, if that is a move.
    fn most(&self, body: usize, along: Direction) -> Option<Length> {
        let stops = self.bodies.iter().filter_map(|other| self.ways.hulls.travel(body, along, *other));
        let mut most = None;
        for stop in stops {
            if stop <= self.ways.play {
                return None;
            }
            most = Some(most.map_or(stop, |most: Length| most.min(stop)));
        }
        most
    }

    /// Two straight moves that nothing stops: the first one as short as it can be.
    pub(super) fn bent(&self, body: usize, may: impl Fn(Direction) -> bool) -> Option<Out> {
        let own = self.ways.bodies.get(body)?;
        let others =
            self.bodies.iter().filter(|other| **other != body).filter_map(|other| self.ways.bodies.get(*other));
        Direction::ALL.into_iter().filter(|first| may(*first)).find_map(|first| {
            let most = self.most(body, first)?;
            let mut lasts = Direction::ALL.into_iter().filter(|last| may(*last) && !last.is_along(first));
            lasts.find_map(|last| {
                let (from, to) = own.turns(others.clone(), (first, last), most)?;
                Some(Out { first: Some((first, from + ((to - from) / 2.0).min(self.ways.room))), last })
            })
        })
    }
}

#[cfg(test)]
mod tests;

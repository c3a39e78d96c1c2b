//! The order in which parts go in: taking them out one by one, reversed.

use super::{Blocking, Direction};

/// A body that was taken out along a straight move free of everything that still stood.
#[derive(Clone, Debug)]
pub(super) struct Taken {
    /// Which one.
    pub(super) body: usize,
    /// The way it went out.
    pub(super) out: Direction,
    /// What stood on.
    pub(super) standing: Vec<usize>,
}

/// The order in which the bodies go in, and those that cannot be taken out. The last body is the
/// floor and stays. Of several bodies that could go, the last in reading order goes first, so that
/// going in follows the reading order: from the ground up, from left to right.
pub(super) fn order(hulls: &Blocking) -> (Vec<Taken>, Vec<usize>) {
    let Some(floor) = hulls.count().checked_sub(1) else { return (Vec::new(), Vec::new()) };
    let mut standing: Vec<usize> = (0..floor).collect();
    let mut taken = Vec::new();
    let free = |body: usize, out: Direction, standing: &[usize]| {
        let blocks = |other: usize| hulls.travel(body, out, other).is_some();
        !blocks(floor) && !standing.iter().any(|other| *other != body && blocks(*other))
    };
    loop {
        let next = standing.iter().rev().find_map(|body| {
            let out = Direction::ALL.into_iter().find(|out| free(*body, *out, &standing))?;
            Some((*body, out))
        });
        let Some((body, out)) = next else { break };
        standing.retain(|other| *other != body);
        taken.push(Taken { body, out, standing: standing.clone() });
    }
    taken.reverse();
    (taken, standing)
}

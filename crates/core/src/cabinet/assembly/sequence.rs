//! The order in which parts go in: taking them out one by one, reversed.

use super::way::{Out, Standing};

/// A body that was taken out along a way free of everything that still stood.
#[derive(Clone, Debug)]
pub(super) struct Taken {
    /// Which one.
    pub(super) body: usize,
    /// The way it went out.
    pub(super) out: Out,
    /// What stood on, the floor too.
    pub(super) standing: Vec<usize>,
}

/// The order in which the bodies go in, and those that cannot be taken out. The last body is the
/// floor and stays. Of several bodies that could go, the last in reading order goes first, so that
/// going in follows the reading order: from the ground up, from left to right. Two moves are looked for only where
/// one takes nothing out.
pub(super) fn order(mut standing: Standing<'_>) -> (Vec<Taken>, Vec<usize>) {
    let Some(floor) = standing.bodies.last().copied() else { return (Vec::new(), Vec::new()) };
    let mut taken = Vec::new();
    loop {
        let parts = || standing.bodies.iter().rev().copied().filter(|body| *body != floor);
        let straight = parts().find_map(|body| Some((body, standing.straight(body, |_| true)?)));
        let bent = || parts().find_map(|body| Some((body, standing.bent(body, |_| true)?)));
        let Some((body, out)) = straight.or_else(bent) else { break };
        standing.take(body);
        taken.push(Taken { body, out, standing: standing.bodies.clone() });
    }
    taken.reverse();
    standing.bodies.retain(|body| *body != floor);
    (taken, standing.bodies)
}

//! The order in which parts go in: taking them out one by one, reversed.

use super::way::{Out, Ways};

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
pub(super) fn order(ways: Ways<'_>) -> (Vec<Taken>, Vec<usize>) {
    let Some(floor) = ways.hulls.count().checked_sub(1) else { return (Vec::new(), Vec::new()) };
    let mut standing: Vec<usize> = (0..=floor).collect();
    let mut taken = Vec::new();
    loop {
        let parts = || standing.iter().rev().copied().filter(|body| *body != floor);
        let straight = parts().find_map(|body| Some((body, ways.straight(body, &standing, |_| true)?)));
        let bent = || parts().find_map(|body| Some((body, ways.bent(body, &standing, |_| true)?)));
        let Some((body, out)) = straight.or_else(bent) else { break };
        standing.retain(|other| *other != body);
        taken.push(Taken { body, out, standing: standing.clone() });
    }
    taken.reverse();
    standing.retain(|body| *body != floor);
    (taken, standing)
}

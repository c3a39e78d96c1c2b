//! One sheet filled with parts in an order.

use crate::pieces::{Kind, Pieces};
use crate::space::{Rect, Rule, Space};

/// Where a part lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Put {
    pub(crate) kind: u32,
    pub(crate) left: i32,
    pub(crate) low: i32,
    pub(crate) turned: bool,
}

impl Put {
    /// What it takes of the sheet, its spacing included.
    pub(crate) fn place(&self, pieces: &Pieces) -> Rect {
        let (width, height) = pieces.kinds.get(self.kind as usize).map_or((0, 0), |kind| (kind.width, kind.height));
        let (width, height) = if self.turned { (height, width) } else { (width, height) };
        Rect { left: self.left, low: self.low, right: self.left + width, high: self.low + height }
    }
}

/// Where a part of a kind lies best, turned or not.
fn best(space: &Space, kind: &Kind, rule: Rule) -> Option<(Rect, bool)> {
    let upright = space.best(kind.width, kind.height, rule);
    let turned = if kind.turns { space.best(kind.height, kind.width, rule) } else { None };
    match (upright, turned) {
        (Some((score, _)), Some((turned, place))) if turned < score => Some((place, true)),
        (Some((_, place)), _) => Some((place, false)),
        (None, turned) => turned.map(|(_, place)| (place, true)),
    }
}

/// Puts each part of an order where it lies best, if anywhere; what does not fit is the rest, in its order.
pub(crate) fn fill(
    space: &mut Space,
    kinds: &[Kind],
    order: &[u32],
    rule: Rule,
    (puts, rest): (&mut Vec<Put>, &mut Vec<u32>),
) {
    let mut refused = u32::MAX;
    for &number in order {
        let place =
            if number == refused { None } else { kinds.get(number as usize) }.and_then(|kind| best(space, kind, rule));
        if let Some((place, turned)) = place {
            space.take(place);
            puts.push(Put { kind: number, left: place.left, low: place.low, turned });
        } else {
            // What did not fit does not fit later either.
            refused = number;
            rest.push(number);
        }
    }
}

/// The least width and height of parts.
pub(crate) fn least(kinds: &[Kind], order: &[u32]) -> (i32, i32) {
    let mut least = (i32::MAX, i32::MAX);
    for kind in order.iter().filter_map(|number| kinds.get(*number as usize)) {
        let (width, height) = if kind.turns {
            (kind.width.min(kind.height), kind.width.min(kind.height))
        } else {
            (kind.width, kind.height)
        };
        least = (least.0.min(width), least.1.min(height));
    }
    least
}

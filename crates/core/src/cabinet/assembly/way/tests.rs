//! Ways of two moves, by hand.

use super::*;
use crate::geometry::space::{Block, Spot};

fn block(from: [f64; 3], to: [f64; 3]) -> Block {
    let spot = |[x, y, z]: [f64; 3]| Spot::new(Length::mm(x), Length::mm(y), Length::mm(z));
    Block { from: spot(from), to: spot(to) }
}

/// Worked: a plate hangs by a slot on a hook, its neck 3 high and its nose rising by so much over it; the slot has 4 to spare
/// under the neck. The plate goes up until it is over the nose, then back.
#[test]
fn a_plate_is_lifted_off_its_hook() {
    let standing = |rise: f64| {
        let boxes = [
            ([0.0, -10.0, 0.0], [2.0, 0.0, 20.0]),
            ([0.0, 0.0, 4.0], [2.0, 4.0, 7.0]),
            ([0.0, 2.0, 7.0], [2.0, 4.0, 7.0 + rise]),
        ];
        Body::of(boxes.map(|(from, to)| block(from, to)))
    };
    let plate = [
        ([-5.0, 0.0, -4.0], [0.0, 2.0, 20.0]),
        ([2.0, 0.0, -4.0], [7.0, 2.0, 20.0]),
        ([0.0, 0.0, 7.0], [2.0, 2.0, 20.0]),
        ([0.0, 0.0, -4.0], [2.0, 2.0, 0.0]),
    ];
    let out = |rise: f64, play: f64, room: f64| {
        let bodies = [standing(rise), Body::of(plate.map(|(from, to)| block(from, to)))];
        let hulls = Blocking::of(&bodies);
        let ways = Ways { hulls: &hulls, bodies: &bodies, play: Length::mm(play), room: Length::mm(room) };
        let standing = Standing::all(ways);
        assert_eq!(standing.straight(1, |_| true), None);
        assert_eq!(standing.bent(1, |out| out != Direction::Up), None, "it has to go up");
        standing.bent(1, |_| true)
    };
    let lifted = |mm: f64| Some(Out { first: Some((Direction::Up, Length::mm(mm))), last: Direction::Back });
    assert_eq!(out(3.0, 0.1, 10.0), lifted(3.5), "in the middle of what is free");
    assert_eq!(out(3.0, 0.1, 0.2), lifted(3.2), "or so far from the nose");
    assert_eq!(out(4.0, 0.1, 10.0), lifted(4.0), "just so");
    assert_eq!(out(4.1, 0.1, 10.0), None, "the nose rises further than the slot lets it");
    assert_eq!(out(3.0, 4.5, 10.0), None, "so little is play, and no move");
}

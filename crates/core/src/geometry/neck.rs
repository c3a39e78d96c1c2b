//! Narrow wood: where two pieces of a part's outlines face each other through the wood and are near.
//!
//! From every place of the outlines one goes straight into the wood, square to the outline there, and from an inside corner every
//! way between those of its two walls, to where the wood ends: a chord. Where two pieces are nearest to each other the line between
//! them is square to both, so no narrowest place is missed, whatever stands at an angle. A stretch of the outline whose chords
//! are shorter than asked is a narrow place, and has the length of that stretch; it is found from both its sides.
//!
//! Chords are worked out in closed form, line by line and arc by arc: a piece of an outline is divided where what its rays hit
//! first may change (at the ends of others, where a ray touches an arc) and where a chord is as long as asked; in between chords
//! are those to one line or one circle, and grow or shrink throughout. So figures are exact but for the last bits. Where an
//! outline comes to a corner of less than a right angle, chords go down to nothing.

use core::f64::consts::FRAC_PI_4;

use crate::geometry::outline::{Outline, Point};
use crate::units::quantity::Length;

use self::beam::Beam;
use self::wall::{Hit, Place, Wall};

mod beam;
#[cfg(test)]
mod tests;
mod wall;

/// A narrow place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Neck {
    /// What it is.
    pub kind: NeckKind,
    /// Its shortest chord.
    pub width: Length,
    /// How far the outline goes along it.
    pub length: Length,
    /// Where that chord begins and ends.
    pub chord: [Point; 2],
}

/// What a narrow place is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum NeckKind {
    /// Wood between a hole and another hole or the edge; or a short waist, at both sides of which a part goes on.
    Ligament,
    /// Wood of one outline that is longer than wide: of all its chords those up to some length are together longer than that.
    Strip,
    /// What is no longer than wide and holds nothing beyond it that stands out further than the width asked for.
    Stub,
}

/// Stretches shorter than this are none, and lengths nearer than this are equal.
const SAME: f64 = 1e-6;

/// The outlines of a part, as walls.
struct Outlined<'a> {
    /// Those of each outline, in its order.
    walls: &'a [Vec<Wall>],
    /// What is narrower is looked for.
    width: f64,
}

/// A straight way through the wood.
#[derive(Clone, Copy)]
struct Chord {
    from: Place,
    to: Place,
    size: f64,
}

/// Neighbouring rays that hit the same wall.
#[derive(Clone, Copy)]
struct Piece {
    length: f64,
    /// Its first and its last ray.
    ends: [Chord; 2],
    /// From which wall, of the same outline, its rays come; and which one they hit, and of which outline.
    of: usize,
    hits: (usize, usize),
}

/// The narrow places of a part of which these are the outer outline, counter-clockwise, and the holes, clockwise: all that is
/// narrower than `width`.
///
/// ```
/// use slotwright_core::geometry::neck::{NeckKind, necks};
/// use slotwright_core::geometry::outline::{Outline, Point};
/// use slotwright_core::units::quantity::Length;
/// // A hole of 30 mm in a board of 100 × 50 mm, 10 mm over its lower edge: the wood below it is narrower than 12 mm over
/// // 2 √(15² − 13²) mm of that edge.
/// let at = |u, v| Point::new(Length::mm(u), Length::mm(v));
/// let board = Outline::rectangle(at(0.0, 0.0), at(100.0, 50.0));
/// let hole = Outline::circle(at(50.0, 25.0), Length::mm(30.0)).reversed();
/// let found = necks(&[board, hole], Length::mm(12.0));
/// assert!(found.iter().all(|neck| neck.kind == NeckKind::Ligament && (neck.width.in_mm() - 10.0).abs() < 1e-9));
/// assert!((found[0].length.in_mm() - 14.966_629_5).abs() < 1e-6);
/// ```
pub fn necks(outlines: &[Outline], width: Length) -> Vec<Neck> {
    let walls: Vec<Vec<Wall>> = outlines.iter().map(|outline| outline.segments().map(Wall::of).collect()).collect();
    let outlined = Outlined { walls: &walls, width: width.in_mm() };
    (0..walls.len()).flat_map(|number| outlined.along(number)).collect()
}

impl Outlined<'_> {
    /// The narrow places along one of the outlines.
    fn along(&self, number: usize) -> Vec<Neck> {
        let Some(walls) = self.walls.get(number) else { return Vec::new() };
        let mut pieces: Vec<Option<Piece>> = Vec::new();
        let before = walls.iter().cycle().skip(walls.len().saturating_sub(1));
        for (at, (wall, before)) in walls.iter().zip(before).enumerate() {
            let (arrives, leaves) = (before.ways().1, wall.ways().0);
            let turn = libm::atan2(arrives.cross(leaves), arrives.dot(leaves));
            if turn > FRAC_PI_4 {
                // An outside corner ends what is narrow beside it.
                pieces.push(None);
            } else if turn < -SAME {
                self.pieces(Beam::of_corner(wall.from, arrives, -turn), at, &mut pieces);
            }
            self.pieces(Beam::of(wall), at, &mut pieces);
        }
        // From one that is wide once round, if there is one.
        let begin = pieces.iter().position(Option::is_none).unwrap_or(0);
        pieces.rotate_left(begin);
        let same = |a: &Option<Piece>, b: &Option<Piece>| match (a, b) {
            (Some(a), Some(b)) => (a.hits.0 == number) == (b.hits.0 == number),
            _ => false,
        };
        let chains = pieces.chunk_by(same).map(|chain| chain.iter().flatten().copied().collect::<Vec<Piece>>());
        chains.filter_map(|chain| self.neck(number, &chain)).collect()
    }

    /// What neighbouring pieces are together.
    fn neck(&self, number: usize, chain: &[Piece]) -> Option<Neck> {
        let chords = || chain.iter().flat_map(|piece| piece.ends.map(|chord| (*piece, chord)));
        let (piece, least) = chords().min_by(|(_, a), (_, b)| a.size.total_cmp(&b.size))?;
        let narrowest = chords().filter(|(_, chord)| chord.size <= least.size + SAME);
        let out = || narrowest.map(|(piece, chord)| self.cut_off(piece, chord)).fold(0.0, f64::max);
        let kind = if piece.hits.0 != number {
            NeckKind::Ligament
        } else if is_long(chain) {
            NeckKind::Strip
        } else if out() <= self.width.max(least.size) + SAME {
            NeckKind::Stub
        } else {
            NeckKind::Ligament
        };
        let length = Length::mm(chain.iter().map(|piece| piece.length).sum());
        Some(Neck { kind, width: Length::mm(least.size), length, chord: [least.from.point(), least.to.point()] })
    }

    /// The rays of a beam, piece by piece; none where chords are longer than asked.
    fn pieces(&self, beam: Beam, of: usize, out: &mut Vec<Option<Piece>>) {
        let (low, high) = beam.bounds(self.width);
        let near: Vec<((usize, usize), &Wall)> = (0..)
            .zip(self.walls)
            .flat_map(|(outline, walls)| (0..).zip(walls).map(move |(at, wall)| ((outline, at), wall)))
            .filter(|(_, wall)| {
                let (from, to) = wall.bounds();
                from.u <= high.u && from.v <= high.v && to.u >= low.u && to.v >= low.v
            })
            .collect();
        let extent = beam.extent();
        let mut breaks = vec![0.0, extent];
        for (_, wall) in &near {
            beam.breaks(wall, self.width, &mut breaks);
        }
        breaks.retain(|at| (0.0..=extent).contains(at));
        breaks.sort_by(f64::total_cmp);
        for (from, to) in breaks.iter().zip(breaks.iter().skip(1)) {
            let middle = (from + to) / 2.0;
            if to - from < SAME * SAME {
                continue;
            }
            let (begins, ahead) = beam.ray(middle);
            let hits = near.iter().filter_map(|(id, wall)| Some((*id, *wall, wall.hit(begins, ahead)?)));
            let first = hits.min_by(|(_, _, a), (_, _, b)| a.distance.total_cmp(&b.distance));
            let piece = first.filter(|(.., hit)| hit.distance < self.width).map(|(hits, wall, hit)| {
                let ends = [*from, *to].map(|at| chord(beam, at, wall, hit));
                Piece { length: beam.length(*from, *to), ends, of, hits }
            });
            out.push(piece);
        }
    }

    /// How far what a chord between two places of the same outline cuts off stands out beyond it: of its two sides the one that
    /// does less.
    fn cut_off(&self, piece: Piece, chord: Chord) -> f64 {
        let Some(walls) = self.walls.get(piece.hits.0) else { return 0.0 };
        let ((of, to), out) = ((piece.of, piece.hits.1), (chord.to - chord.from).unit().left());
        // What is run from the beginning of the chord to its end has its wood at the right of it.
        let ahead = reach(walls, (of, chord.from), (to, chord.to), out * -1.0);
        let back = reach(walls, (to, chord.to), (of, chord.from), out);
        ahead.min(back)
    }
}

/// The ray of a beam at a place, to the line or circle that a ray beside it hits.
fn chord(beam: Beam, at: f64, wall: &Wall, hit: Hit) -> Chord {
    let (from, ahead) = beam.ray(at);
    let size = wall.beside(hit, from, ahead).max(0.0);
    Chord { from, to: from + ahead * size, size }
}

/// Whether pieces no wider than some width are together longer than that.
fn is_long(chain: &[Piece]) -> bool {
    let most = |piece: &Piece| piece.ends.map(|chord| chord.size).into_iter().fold(0.0, f64::max);
    chain.iter().map(most).any(|width| {
        let within = chain.iter().filter(|piece| most(piece) <= width + SAME);
        within.map(|piece| piece.length).sum::<f64>() > width + SAME
    })
}

/// How far an outline reaches along a way of length 1 while it goes from one place on it to another.
fn reach(walls: &[Wall], (of, from): (usize, Place), (on, to): (usize, Place), way: Place) -> f64 {
    let (Some(first), Some(last)) = (walls.get(of), walls.get(on)) else { return 0.0 };
    if of == on && first.along(from) <= first.along(to) {
        return first.between(from, to).reach(from, way);
    }
    let begins = first.between(from, first.to).reach(from, way);
    let ends = last.between(last.from, to).reach(from, way);
    let count = if on > of { on - of } else { on + walls.len() - of };
    let whole = walls.iter().cycle().skip(of + 1).take(count - 1).map(|wall| wall.reach(from, way));
    whole.fold(begins.max(ends), f64::max)
}

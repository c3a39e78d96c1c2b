//! Outlines as polygons with normals.

use earcut::Earcut;
use slotwright_core::geometry::outline::{Outline, Segment};
use slotwright_core::units::quantity::Length;

/// A straight piece of a polygon: where it goes, and the outward normals at its ends. Outward means
/// to the right: the material is at the left.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Piece {
    pub(crate) from: [f64; 2],
    pub(crate) to: [f64; 2],
    pub(crate) normals: [[f64; 2]; 2],
}

/// The pieces of an outline; no chord is further from its arc than `tolerance` (mm).
pub(crate) fn pieces(outline: &Outline, tolerance: f64) -> Vec<Piece> {
    let mut pieces = Vec::new();
    for segment in outline.segments() {
        if segment.bulge == 0.0 {
            let (from, to) = ends(segment);
            let along = [to[0] - from[0], to[1] - from[1]];
            let length = libm::hypot(along[0], along[1]);
            let normal = [along[1] / length, -along[0] / length];
            pieces.push(Piece { from, to, normals: [normal; 2] });
        } else {
            arc(&mut pieces, segment, tolerance);
        }
    }
    pieces
}

/// The corners of an outline as a polygon; no chord is further from its arc than `tolerance`.
pub fn polygon(outline: &Outline, tolerance: Length) -> Vec<[f64; 2]> {
    pieces(outline, tolerance.in_mm()).into_iter().map(|piece| piece.from).collect()
}

fn ends(segment: Segment) -> ([f64; 2], [f64; 2]) {
    ([segment.from.u.in_mm(), segment.from.v.in_mm()], [segment.to.u.in_mm(), segment.to.v.in_mm()])
}

fn arc(pieces: &mut Vec<Piece>, segment: Segment, tolerance: f64) {
    let (from, to) = ends(segment);
    let (radius, angle) = (segment.radius().in_mm(), 4.0 * libm::atan(segment.bulge));
    // The centre lies on the chord's bisector, to the left of it for a counter-clockwise arc below half a turn.
    let off = (1.0 - segment.bulge * segment.bulge) / (4.0 * segment.bulge);
    let half = [(to[0] - from[0]) / 2.0, (to[1] - from[1]) / 2.0];
    let centre = [from[0] + half[0] - half[1] * off * 2.0, from[1] + half[1] + half[0] * off * 2.0];
    let start = libm::atan2(from[1] - centre[1], from[0] - centre[0]);
    // A chord over the angle a stands r (1 − cos(a/2)) off its arc.
    let widest = 2.0 * libm::acos((1.0 - tolerance / radius).clamp(0.0, 1.0));
    let count = libm::ceil(angle.abs() / widest.max(1e-3)).clamp(2.0, 360.0);
    let outward = angle.signum();
    let spoke = |step: f64| {
        let at = start + angle * (step / count);
        [libm::cos(at), libm::sin(at)]
    };
    let place = |spoke: [f64; 2]| [centre[0] + radius * spoke[0], centre[1] + radius * spoke[1]];
    let normal = |spoke: [f64; 2]| [spoke[0] * outward, spoke[1] * outward];
    let (mut step, mut before, mut at) = (1.0, spoke(0.0), from);
    while step <= count {
        let after = spoke(step);
        // The last piece ends where the next segment begins, to the last bit.
        let end = if step < count { place(after) } else { to };
        pieces.push(Piece { from: at, to: end, normals: [normal(before), normal(after)] });
        (step, before, at) = (step + 1.0, after, end);
    }
}

/// Triangles of the area within the first loop and outside the others, by corner counted through all
/// loops. Counter-clockwise.
pub(crate) fn triangles(loops: &[Vec<Piece>]) -> Vec<[u32; 3]> {
    let corners = loops.iter().flatten().map(|piece| piece.from);
    let mut holes: Vec<u32> = Vec::new();
    let mut count = 0;
    for pieces in loops {
        if count > 0 {
            holes.push(count);
        }
        count += u32::try_from(pieces.len()).unwrap_or(0);
    }
    let (mut earcut, mut indices) = (Earcut::new(), Vec::new());
    earcut.earcut(corners, &holes, &mut indices);
    indices.chunks_exact(3).filter_map(|chunk| <[u32; 3]>::try_from(chunk).ok()).collect()
}

//! What proves that something is blocked is wood.

use super::*;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(20))]

    /// A core lies in its part, whatever the cutter: no corner of its boxes is outside the outline or in
    /// a hole.
    #[test]
    fn cores_lie_within_their_parts(seed in any::<u64>(), cutter in 4u8..=11) {
        let mut range = demo();
        range.build.cutter_mm = Length::mm(f64::from(cutter));
        let choice = choices(&range, seed, Wanted::Valid).next().unwrap();
        let (_, case) = made(&range, &choice);
        for panel in case.panels.iter().filter(|panel| panel.rounding == Length::ZERO) {
            let loops: Vec<Vec<(f64, f64)>> =
                core::iter::once(panel.outline()).chain(panel.holes()).map(|outline| polygon(&outline)).collect();
            let solids = solids(panel, Bound::Core);
            for prism in &solids.prisms {
                for spot in within(prism) {
                    let point = panel.case_from_panel.point(spot);
                    let point = (point.u.in_mm(), point.v.in_mm());
                    let crossings: usize = loops.iter().map(|corners| crossings(corners, point)).sum();
                    prop_assert!(crossings % 2 == 1, "{} {point:?}", panel.id);
                }
            }
            for block in solids.blocks {
                let (low, high) = (panel.case_from_panel.point(block.from), panel.case_from_panel.point(block.to));
                let (u, v) = ((low.u.in_mm(), high.u.in_mm()), (low.v.in_mm(), high.v.in_mm()));
                // No place is so far within both sides of a sliver.
                if (u.1 - u.0).abs().min((v.1 - v.0).abs()) < 2e-2 {
                    continue;
                }
                let along = |(low, high): (f64, f64), share: f64| low + 1e-2 + (high - low - 2e-2) * share;
                for at in [(0.0, 0.0), (1.0, 0.0), (0.0, 1.0), (1.0, 1.0), (0.5, 0.0), (0.5, 1.0), (0.0, 0.5), (1.0, 0.5)] {
                    let point = (along(u, at.0), along(v, at.1));
                    let crossings: usize = loops.iter().map(|corners| crossings(corners, point)).sum();
                    prop_assert!(crossings % 2 == 1, "{} {u:?} {v:?} at {at:?}", panel.id);
                }
            }
        }
    }
}

/// An outline as a polygon, arcs in 400 chords. One of 240 mm radius over 130 degrees, the largest bow, is off by
/// 240 (1 − cos(130°/800)) = 0.001 mm.
fn polygon(outline: &Outline) -> Vec<(f64, f64)> {
    let mut corners = Vec::new();
    for segment in outline.segments() {
        let (from, to) =
            ((segment.from.u.in_mm(), segment.from.v.in_mm()), (segment.to.u.in_mm(), segment.to.v.in_mm()));
        corners.push(from);
        if segment.bulge != 0.0 {
            // Bulge b: the centre is (1 − b²)/(4b) chords to the left of the chord's middle.
            let (du, dv) = (to.0 - from.0, to.1 - from.1);
            let off = (1.0 - segment.bulge * segment.bulge) / (4.0 * segment.bulge);
            let centre = (from.0 + du / 2.0 - dv * off, from.1 + dv / 2.0 + du * off);
            let (start, angle) = (libm::atan2(from.1 - centre.1, from.0 - centre.0), 4.0 * libm::atan(segment.bulge));
            let radius = segment.radius().in_mm();
            corners.extend((1..400).map(|step| {
                let at = start + angle * f64::from(step) / 400.0;
                (centre.0 + radius * libm::cos(at), centre.1 + radius * libm::sin(at))
            }));
        }
    }
    corners
}

/// How often a ray to the right crosses a polygon.
fn crossings(corners: &[(f64, f64)], (u, v): (f64, f64)) -> usize {
    let ends = corners.iter().cycle().skip(1);
    corners
        .iter()
        .zip(ends)
        .filter(|(a, b)| (a.1 > v) != (b.1 > v) && u < a.0 + (v - a.1) / (b.1 - a.1) * (b.0 - a.0))
        .count()
}

//! Bowed ends on drawings: plates with their arcs, and the staves along them.

use slotwright_core::cabinet::panel::{End, Panel, PanelId, Stock};
use slotwright_core::geometry::outline::Point;
use slotwright_core::units::quantity::Length;

use super::Subject;
use super::pen::{Dot, Pen};
use super::wood::plies;

/// The upper plates from above, where an end is bowed; `down` takes depths to the picture.
pub(super) fn plate(pen: &mut Pen, subject: Subject<'_>, down: impl Fn(f64) -> f64) {
    let Some(panel) = subject.built.cut.case.panel(PanelId::BaseUpper) else { return };
    let outline = panel.outline();
    let corners = outline.corners().iter().map(|corner| {
        let spot = panel.case_from_panel.spot(corner.at, Length::ZERO);
        // Depths run upwards in the picture: what turned to the left turns to the right.
        ((spot.x.in_mm(), down(spot.y.in_mm())), -corner.bulge)
    });
    pen.area("wood", &corners.collect::<Vec<_>>());
}

/// A stave that is cut, seen from above.
pub(super) fn cut(pen: &mut Pen, subject: Subject<'_>, stave: &Panel, down: impl Fn(f64) -> f64) {
    let corners = corners(stave).map(|(x, y)| (x, down(y)));
    pen.layered_turned("cut", corners, plies(subject, stave.stock));
}

/// How far each bowed end rises, in a row of level dimension lines.
pub(super) fn dims(pen: &mut Pen, subject: Subject<'_>, y: f64) {
    let layout = &subject.built.layout;
    let width = layout.width.in_mm();
    for end in End::ALL {
        if let Some(rise) = layout.bow(end).map(|bow| bow.rise.in_mm()) {
            let (from, to) = if end == End::Left { (0.0, rise) } else { (width - rise, width) };
            pen.dim_level(from, to, y);
        }
    }
}

/// The staves from the front, between base and top; what stands further back is drawn first.
pub(super) fn front(pen: &mut Pen, subject: Subject<'_>, floor: f64, ceiling: f64) {
    let is_stave = |panel: &&Panel| matches!(panel.id, PanelId::Stave { .. });
    let staves = subject.built.cut.case.panels.iter().filter(is_stave);
    let plies = plies(subject, Stock::Body);
    // In reading order they come from the front to the rear.
    for corners in staves.rev().map(corners) {
        let ends = corners.into_iter().cycle().skip(1);
        // Counter-clockwise from above: a side that runs to the right faces the front. The first and the third are faces.
        for (side, (from, to)) in corners.into_iter().zip(ends).enumerate().filter(|(_, (from, to))| from.0 < to.0) {
            let (left, right) = ((from.0, floor), (to.0, ceiling));
            if side % 2 == 0 {
                pen.rect("face", left, right, 0.0);
                pen.grain(left, right, false);
            } else {
                pen.layered("edge", left, right, plies);
            }
        }
    }
}

/// The corners of a turned part from above, counter-clockwise with x to the right and y to the rear, its outer face first.
fn corners(stave: &Panel) -> [Dot; 4] {
    let (wide, thick) = (stave.width, stave.thickness);
    [(Length::ZERO, Length::ZERO), (wide, Length::ZERO), (wide, thick), (Length::ZERO, thick)].map(|(u, deep)| {
        let spot = stave.case_from_panel.spot(Point::new(u, Length::ZERO), deep);
        (spot.x.in_mm(), spot.y.in_mm())
    })
}

/// Whether an end is bowed.
pub(super) fn is_bowed(subject: Subject<'_>) -> bool {
    End::ALL.into_iter().any(|end| subject.built.layout.bow(end).is_some())
}

//! The unit cut from front to back through a bay, its front edge on the left.

use slotwright_core::cabinet::panel::{PanelId, Stock};
use slotwright_core::choice::{Fill, Hung};
use slotwright_core::units::quantity::Length;

use super::pen::{Dot, Pen};
use super::wood::{plies, runs_along_u};
use super::{Lit, Subject};

/// `alone`, not beside an elevation that has the height already.
pub(super) fn draw(pen: &mut Pen, subject: Subject<'_>, lit: Lit, alone: bool) {
    let layout = &subject.built.layout;
    let (depth, height, body) = (layout.depth.in_mm(), layout.height.in_mm(), layout.body.in_mm());
    let (floor, ceiling) = (layout.floor.in_mm(), layout.ceiling.in_mm());
    let up = |z: f64| height - z;
    let front = layout.upright_front.in_mm();
    let recess = subject.range.build.foot_recess_mm.in_mm();

    let (base, seam) = (layout.base.in_mm(), layout.seam().in_mm());
    if let Some(plinth) = layout.plinth {
        // Beside the cut stands a bearer.
        let bearer = ((plinth.front.in_mm(), up(0.0)), (plinth.rear.in_mm(), up(base)));
        pen.rect("wood", bearer.0, bearer.1, 0.0);
        pen.grain(bearer.0, bearer.1, runs_along_u(subject, PanelId::Bearer(1)));
    }
    let upright = ((front, up(floor)), (layout.upright_rear.in_mm(), up(ceiling)));
    pen.rect("wood", upright.0, upright.1, 0.0);
    let number = u8::try_from(lit + 1).unwrap_or(u8::MAX);
    pen.grain(upright.0, upright.1, runs_along_u(subject, PanelId::Upright(number)));
    // Before that upright stands the stop of a leaf that is hung at the other side.
    let fill = subject.choice.bays.get(lit).map(|bay| bay.fill);
    if fill == Some(Fill::Leaf(Hung::Right)) {
        let stop = ((layout.stop_front.in_mm(), up(floor)), (layout.stop_rear.in_mm(), up(ceiling)));
        pen.rect("wood", stop.0, stop.1, 0.0);
        pen.grain(stop.0, stop.1, runs_along_u(subject, PanelId::Stop(number)));
    }
    let back = (layout.back_front.in_mm(), layout.back_front.in_mm() + layout.back.in_mm());
    // Behind the back its hooks: the nose with the end of its neck.
    let hooks = layout.hooks;
    for neck in hooks.necks().map(Length::in_mm) {
        let (low, high) = (floor + neck - hooks.neck.in_mm(), floor + neck + hooks.rise.in_mm());
        pen.rect("wood", (back.1, up(low)), (back.1 + hooks.nose.in_mm(), up(high)), 0.0);
    }
    let (body_plies, back_plies) = (plies(subject, Stock::Body), plies(subject, Stock::Back));
    let mut cut = |from: Dot, to: Dot, plies: u8| pen.layered("cut", from, to, plies);

    cut((recess, up(base)), (depth, up(seam)), body_plies);
    cut((0.0, up(seam)), (depth, up(floor)), body_plies);
    for board in layout.plinth.into_iter().flat_map(|plinth| plinth.long(layout.body)).map(Length::in_mm) {
        cut((board, up(0.0)), (board + body, up(base)), body_plies);
    }
    cut((0.0, up(ceiling)), (depth, up(height)), body_plies);
    cut((back.0, up(floor)), (back.1, up(ceiling)), back_plies);

    let shelves = layout.bays.get(lit).map(|bay| bay.shelves.as_slice()).unwrap_or_default();
    for shelf in shelves {
        let under = shelf.in_mm();
        cut((front, up(under)), (back.1, up(under + body)), body_plies);
    }
    // Before the bay stands its leaf, or the stile beside it.
    let leaf = matches!(fill, Some(Fill::Leaf(_)));
    let before = if leaf { PanelId::Leaf(number) } else { PanelId::Stile(number) };
    if let Some(panel) = subject.built.cut.case.panel(before) {
        let under = panel.case_from_panel.origin.z.in_mm();
        let class = if leaf { "cut" } else { "face" };
        let over = up(under + panel.height.in_mm());
        pen.layered(class, (layout.face.in_mm(), up(under)), (front, over), body_plies);
    }

    pen.open("dims", None);
    let right = depth + pen.px(22.0);
    let mut from = floor;
    for shelf in shelves {
        pen.dim_upright(up(from), up(shelf.in_mm()), right);
        from = shelf.in_mm() + body;
    }
    pen.dim_upright(up(from), up(ceiling), right);
    if base > 0.0 {
        pen.dim_upright(up(0.0), up(base), right);
    }
    if alone {
        let before = pen.px(-20.0);
        pen.dim_upright(up(0.0), up(height), before);
    }
    let below = height + pen.px(22.0);
    pen.dim_level(0.0, depth, below);
    pen.close();
}

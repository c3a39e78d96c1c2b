//! The unit cut from front to back through a bay, its front edge on the left.

use slotwright_core::cabinet::panel::PanelId;
use slotwright_core::choice::Fill;

use super::pen::Pen;
use super::{Lit, Subject};

/// `alone`, not beside an elevation that has the height already.
pub(super) fn draw(pen: &mut Pen, subject: Subject<'_>, lit: Lit, alone: bool) {
    let layout = &subject.built.layout;
    let (depth, height, body) = (layout.depth.in_mm(), layout.height.in_mm(), layout.body.in_mm());
    let (floor, ceiling) = (layout.floor.in_mm(), layout.ceiling.in_mm());
    let up = |z: f64| height - z;
    let front = layout.upright_front.in_mm();
    let recess = subject.range.build.foot_recess_mm.in_mm();

    pen.rect("wood", (front, up(floor)), (layout.upright_rear.in_mm(), up(ceiling)), 0.0);
    pen.rect("cut", (recess, up(0.0)), (depth, up(body)), 0.0);
    pen.rect("cut", (0.0, up(body)), (depth, up(floor)), 0.0);
    pen.rect("cut", (0.0, up(ceiling)), (depth, up(height)), 0.0);
    let back = (layout.back_front.in_mm(), layout.back_front.in_mm() + layout.back.in_mm());
    pen.rect("cut", (back.0, up(floor)), (back.1, up(ceiling)), 0.0);

    let shelves = layout.bays.get(lit).map(|bay| bay.shelves.as_slice()).unwrap_or_default();
    for shelf in shelves {
        let under = shelf.in_mm();
        pen.rect("cut", (front, up(under)), (back.1, up(under + body)), 0.0);
    }
    // Before the bay stands its leaf, or the stile beside it.
    let leaf = subject.choice.bays.get(lit).is_some_and(|bay| matches!(bay.fill, Fill::Leaf(_)));
    let number = u8::try_from(lit + 1).unwrap_or(u8::MAX);
    let before = if leaf { PanelId::Leaf(number) } else { PanelId::Stile(number) };
    if let Some(panel) = subject.built.cut.case.panel(before) {
        let under = panel.case_from_panel.origin.z.in_mm();
        let class = if leaf { "cut" } else { "face" };
        pen.rect(class, (layout.face.in_mm(), up(under)), (front, up(under + panel.height.in_mm())), 0.0);
    }

    pen.open("dims", None);
    let right = depth + pen.px(22.0);
    let mut from = floor;
    for shelf in shelves {
        pen.dim_upright(up(from), up(shelf.in_mm()), right);
        from = shelf.in_mm() + body;
    }
    pen.dim_upright(up(from), up(ceiling), right);
    if alone {
        let before = pen.px(-20.0);
        pen.dim_upright(up(0.0), up(height), before);
    }
    let below = height + pen.px(22.0);
    pen.dim_level(0.0, depth, below);
    pen.close();
}

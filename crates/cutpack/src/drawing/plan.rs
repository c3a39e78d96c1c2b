//! The unit cut level below the top, seen from above; its front edge is downwards.

use slotwright_core::cabinet::leaf;
use slotwright_core::cabinet::panel::PanelId;
use slotwright_core::choice::{Fill, Hung};

use super::pen::Pen;
use super::wood::{plies, runs_along_u};
use super::{BOW_ROW_PX, Lit, Subject, bow};

/// `alone`, not below an elevation that has the width already.
pub(super) fn draw(pen: &mut Pen, subject: Subject<'_>, lit: Lit, alone: bool) {
    let layout = &subject.built.layout;
    let (width, depth) = (layout.width.in_mm(), layout.depth.in_mm());
    let radius = subject.choice.corner_radius_mm.length().in_mm();
    // Depths run to the rear in the case, upwards here; origin at the top left.
    let down = |y: f64| depth - y;

    let bowed = bow::is_bowed(subject);
    if bowed {
        bow::plate(pen, subject, down);
    } else {
        pen.rect("wood", (0.0, 0.0), (width, depth), radius);
    }
    for (number, span) in layout.bays.iter().enumerate() {
        pen.open(if number == lit { "bay lit" } else { "bay" }, Some(number));
        let (front, rear) = (down(layout.upright_front.in_mm()), down(layout.back_front.in_mm()));
        pen.rect("floor", (span.left.in_mm(), front), (span.right.in_mm(), rear), 0.0);
        let along = runs_along_u(subject, PanelId::BaseUpper);
        pen.grain((span.left.in_mm(), front), (span.right.in_mm(), rear), along);
        pen.close();
    }
    for panel in &subject.built.cut.case.panels {
        let origin = panel.case_from_panel.origin;
        let (x, y, thick) = (origin.x.in_mm(), origin.y.in_mm(), panel.thickness.in_mm());
        let (along, deep) = match panel.id {
            PanelId::Stave { .. } => {
                bow::cut(pen, subject, panel, down);
                continue;
            }
            PanelId::Upright(_) | PanelId::Stop(_) => (thick, panel.width.in_mm()),
            PanelId::Back | PanelId::Stile(_) | PanelId::Leaf(_) => (panel.width.in_mm(), thick),
            PanelId::PlinthFront
            | PanelId::PlinthRear
            | PanelId::Bearer(_)
            | PanelId::BaseLower
            | PanelId::BaseUpper
            | PanelId::Shelf { .. }
            | PanelId::Top => continue,
        };
        pen.layered("cut", (x, down(y)), (x + along, down(y + deep)), plies(subject, panel.stock));
    }
    // Behind the back the noses of its hooks, one over the other.
    let behind = (layout.back_front + layout.back).in_mm();
    for left in (0..=layout.bays.len()).filter_map(|number| layout.upright_left(number)) {
        let (left, rear) = (left.in_mm(), behind + layout.hooks.nose.in_mm());
        pen.rect("cut", (left, down(behind)), (left + layout.body.in_mm(), down(rear)), 0.0);
    }
    for (bay, span) in subject.choice.bays.iter().zip(&layout.bays) {
        let Fill::Leaf(hung) = bay.fill else { continue };
        let leaf = leaf::of(span, layout, &subject.range.build, hung);
        let (axis, line) = (leaf.axis.in_mm(), down(layout.face.in_mm() + layout.body.in_mm() / 2.0));
        let (free, left) = free_edge(&leaf, hung);
        let reach = (free - axis).abs();
        pen.line("swing", (axis, line), (axis, line + reach));
        pen.arc("swing", (free, line), (axis, line + reach), reach, left);
    }

    for (bay, span) in subject.choice.bays.iter().zip(&layout.bays) {
        let Some(device) = bay.device.as_ref().and_then(|key| subject.range.device(key)) else { continue };
        let (left, wide) = (span.standing(device.width_mm).in_mm(), device.width_mm.in_mm());
        let rear = layout.back_front.in_mm() - device.plug_behind_mm.in_mm();
        pen.rect("device", (left, down(rear)), (left + wide, down(rear - device.depth_mm.in_mm())), 2.0);
    }

    pen.open("dims", None);
    let (behind, further) = (pen.px(-16.0), pen.px(-16.0 - BOW_ROW_PX));
    bow::dims(pen, subject, behind);
    if alone {
        pen.dim_level(0.0, width, if bowed { further } else { behind });
    }
    let left = pen.px(-20.0);
    pen.dim_upright(down(0.0), 0.0, left);
    let right = width + pen.px(16.0);
    pen.dim_beside(down(layout.back_front.in_mm() + layout.back.in_mm()), down(depth), right);
    pen.close();
}

/// How far the open leaves reach before the unit, in millimetres.
pub(super) fn swings(subject: Subject<'_>) -> f64 {
    let layout = &subject.built.layout;
    let line = (layout.face + layout.body / 2.0).in_mm();
    let leaves = subject.choice.bays.iter().zip(&layout.bays).filter_map(|(bay, span)| match bay.fill {
        Fill::Leaf(hung) => {
            let leaf = leaf::of(span, layout, &subject.range.build, hung);
            Some((free_edge(&leaf, hung).0 - leaf.axis.in_mm()).abs() - line)
        }
        Fill::Open | Fill::Shelves(_) => None,
    });
    leaves.fold(0.0, f64::max)
}

/// Where the edge is that swings, in millimetres, and whether it swings to its left.
fn free_edge(leaf: &leaf::Leaf, hung: Hung) -> (f64, bool) {
    match hung {
        Hung::Left => (leaf.right.in_mm(), true),
        Hung::Right => (leaf.left.in_mm(), false),
    }
}

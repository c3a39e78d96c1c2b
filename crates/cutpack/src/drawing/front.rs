//! The unit from the front.

use slotwright_core::cabinet::leaf;
use slotwright_core::cabinet::panel::{End, PanelId, Stock};
use slotwright_core::choice::{Fill, Hung};

use super::pen::Pen;
use super::wood::{plies, runs_along_u};
use super::{Lit, Subject, bow};

/// `alone`, not beside a section that has the height of the plinth.
pub(super) fn draw(pen: &mut Pen, subject: Subject<'_>, lit: Lit, alone: bool) {
    unit(pen, subject, Some(lit));
    dims(pen, subject, alone);
}

/// The unit without dimension lines.
pub(super) fn unit(pen: &mut Pen, subject: Subject<'_>, lit: Option<Lit>) {
    let layout = &subject.built.layout;
    let (width, height) = (layout.width.in_mm(), layout.height.in_mm());
    let (body, floor, ceiling) = (layout.body.in_mm(), layout.floor.in_mm(), layout.ceiling.in_mm());
    // Heights run upwards in the case and downwards in SVG.
    let up = |z: f64| height - z;
    let plies = plies(subject, Stock::Body);

    for (number, span) in layout.bays.iter().enumerate() {
        let (left, right) = (span.left.in_mm(), span.right.in_mm());
        pen.open(if Some(number) == lit { "bay lit" } else { "bay" }, Some(number));
        pen.rect("back", (left, up(floor)), (right, up(ceiling)), 0.0);
        pen.grain((left, up(floor)), (right, up(ceiling)), runs_along_u(subject, PanelId::Back));
        hole(pen, subject, number, up(floor));
        device(pen, subject, number, up(floor));
        for shelf in &span.shelves {
            let under = shelf.in_mm();
            pen.layered("edge", (left, up(under)), (right, up(under + body)), plies);
        }
        pen.close();
    }
    bow::front(pen, subject, up(floor), up(ceiling));
    for number in 0..=layout.bays.len() {
        if let Some(left) = layout.upright_left(number) {
            let left = left.in_mm();
            pen.layered("edge", (left, up(floor)), (left + body, up(ceiling)), plies);
        }
    }
    stiles(pen, subject, up(floor), up(ceiling));
    for number in 0..layout.bays.len() {
        door(pen, subject, number, &up);
    }
    plinth(pen, subject, &up);
    let (base, seam) = (layout.base.in_mm(), layout.seam().in_mm());
    let [left, right] = End::ALL.map(|end| layout.bow(end).map_or(0.0, |bow| bow.recess.in_mm()));
    pen.layered("edge", (left, up(base)), (width - right, up(seam)), plies);
    for (under, over) in [(seam, floor), (ceiling, height)] {
        pen.layered("edge", (0.0, up(under)), (width, up(over)), plies);
    }
}

/// The front board of the plinth, and before it the ends of the bearers.
fn plinth(pen: &mut Pen, subject: Subject<'_>, up: &impl Fn(f64) -> f64) {
    let layout = &subject.built.layout;
    let (Some(_), Some((left, right))) = (layout.plinth, layout.plinth_ends()) else { return };
    let (under, over, body) = (up(0.0), up(layout.base.in_mm()), layout.body.in_mm());
    pen.rect("face", (left.in_mm(), under), (right.in_mm(), over), 0.0);
    pen.grain((left.in_mm(), under), (right.in_mm(), over), runs_along_u(subject, PanelId::PlinthFront));
    let plies = plies(subject, Stock::Body);
    for left in layout.bearers() {
        pen.layered("edge", (left.in_mm(), under), (left.in_mm() + body, over), plies);
    }
}

fn dims(pen: &mut Pen, subject: Subject<'_>, alone: bool) {
    let layout = &subject.built.layout;
    let (width, height) = (layout.width.in_mm(), layout.height.in_mm());
    pen.open("dims", None);
    let (near, far) = (height + pen.px(22.0), height + pen.px(54.0));
    // Either all bays have their figures or none has a line.
    let bays: Vec<(f64, f64)> = layout.bays.iter().map(|span| (span.left.in_mm(), span.right.in_mm())).collect();
    let row = bays.iter().all(|(left, right)| pen.has_room(*left, *right));
    if row {
        pen.dims_level(&bays, near);
    }
    pen.dim_level(0.0, width, if row { far } else { near });
    let beside = pen.px(-20.0);
    pen.dim_upright(height, 0.0, beside);
    if alone && layout.plinth.is_some() {
        let beyond = width + pen.px(16.0);
        pen.dim_beside(height, height - layout.base.in_mm(), beyond);
    }
    pen.close();
}

fn hole(pen: &mut Pen, subject: Subject<'_>, number: usize, floor: f64) {
    let chosen = subject.choice.bays.get(number).and_then(|bay| bay.hole.as_ref());
    let kind = chosen.and_then(|hole| subject.range.hole(&hole.kind).map(|kind| (hole, kind)));
    let span = subject.built.layout.bays.get(number);
    if let (Some((hole, kind)), Some(span)) = (kind, span) {
        let (x, y) = ((span.middle() + hole.offset_mm.length()).in_mm(), floor - kind.rise_mm.in_mm());
        let (long, high) = kind.shape.extent();
        let (long, high) = (long.in_mm() / 2.0, high.in_mm() / 2.0);
        pen.rect("hole", (x - long, y - high), (x + long, y + high), high);
    }
}

/// A device as a dashed outline: it is the customer's, not a part.
fn device(pen: &mut Pen, subject: Subject<'_>, number: usize, floor: f64) {
    let chosen = subject.choice.bays.get(number).and_then(|bay| bay.device.as_ref());
    let device = chosen.and_then(|key| subject.range.device(key));
    if let (Some(device), Some(span)) = (device, subject.built.layout.bays.get(number)) {
        let (left, wide) = (span.standing(device.width_mm).in_mm(), device.width_mm.in_mm());
        pen.rect("device", (left, floor), (left + wide, floor - device.height_mm.in_mm()), 2.0);
    }
}

fn stiles(pen: &mut Pen, subject: Subject<'_>, floor: f64, ceiling: f64) {
    let layout = &subject.built.layout;
    let places = subject.built.cut.case.panels.iter().filter_map(|panel| match panel.id {
        PanelId::Stile(_) => Some((panel.case_from_panel.origin.x.in_mm(), panel.id)),
        _ => None,
    });
    for (left, id) in places {
        let right = left + layout.stile.in_mm();
        pen.rect("face", (left, floor), (right, ceiling), 0.0);
        pen.grain((left, floor), (right, ceiling), runs_along_u(subject, id));
    }
}

/// A leaf with the dashed lines that meet at its hinges (common practice).
fn door(pen: &mut Pen, subject: Subject<'_>, number: usize, up: &impl Fn(f64) -> f64) {
    let layout = &subject.built.layout;
    let (Some(bay), Some(span)) = (subject.choice.bays.get(number), layout.bays.get(number)) else { return };
    let Fill::Leaf(hung) = bay.fill else { return };
    let leaf = leaf::of(span, layout, &subject.range.build, hung);
    let (left, right) = (leaf.left.in_mm(), leaf.right.in_mm());
    let (under, over) = (up(leaf.under.in_mm()), up(leaf.over.in_mm()));
    pen.open("bay", Some(number));
    pen.rect("face", (left, under), (right, over), 0.0);
    let id = PanelId::Leaf(u8::try_from(number + 1).unwrap_or(u8::MAX));
    pen.grain((left, under), (right, over), runs_along_u(subject, id));
    let (hinge, free) = match hung {
        Hung::Left => (left, right),
        Hung::Right => (right, left),
    };
    if let Some(hole) = leaf.finger_hole(&subject.range.build, layout.body, hung) {
        let (x, y, half) =
            (left + hole.u.in_mm(), (leaf.under + hole.v).in_mm(), subject.range.build.finger_hole_mm / 2.0);
        let half = half.in_mm();
        pen.rect("hole", (x - half, up(y - half)), (x + half, up(y + half)), half);
    }
    let middle = under.midpoint(over);
    pen.line("swing", (free, over), (hinge, middle));
    pen.line("swing", (hinge, middle), (free, under));
    pen.close();
}

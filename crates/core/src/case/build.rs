//! From positions to panels and joints.
//!
//! Base of two plates, uprights with tabs down into them and up into the top, a back that drops
//! into cross-laps, shelves that slide in from the front, stiles that keep them in, leaves on
//! pivots of their own, and the top that drops last.

use crate::case::Case;
use crate::case::join::Bench;
use crate::choice::{Choice, Fill, Hung};
use crate::joint::JointKind;
use crate::layout::{LEAST_ROOM, Layout, Picked};
use crate::leaf;
use crate::outline::Point;
use crate::panel::{Feature, GrainAxis, Panel, PanelId, Stock};
use crate::quantity::Length;
use crate::range::{BackGrain, Build};
use crate::space::{Block, Lie, Placement, Spot};

pub(super) fn case(picked: Picked<'_>, choice: &Choice, layout: &Layout) -> Option<Case> {
    let drawn = Drawn { picked, layout, build: &picked.range.build };
    if !drawn.has_room() {
        return None;
    }
    let mut bench = Bench::new(drawn.build.clearance_mm);
    drawn.plates(&mut bench, choice);
    drawn.back(&mut bench, choice);
    for number in 0..=layout.bays.len() {
        drawn.upright(&mut bench, number)?;
        drawn.stile(&mut bench, number)?;
    }
    for (index, (bay, span)) in (1..).zip(choice.bays.iter().zip(&layout.bays)) {
        match bay.fill {
            Fill::Open => {}
            Fill::Shelves(_) => {
                for (row, under) in (1..).zip(&span.shelves) {
                    drawn.shelf(&mut bench, index, row, *under)?;
                }
            }
            Fill::Leaf(hung) => drawn.leaf(&mut bench, index, hung)?,
        }
    }
    Some(bench.done())
}

struct Drawn<'a> {
    picked: Picked<'a>,
    layout: &'a Layout,
    build: &'a Build,
}

impl Drawn<'_> {
    /// What the rules on room let pass, whatever the range asks, can be built.
    fn has_room(&self) -> bool {
        let layout = self.layout;
        let wide = layout.bays.iter().all(|bay| bay.clear() >= LEAST_ROOM && bay.opening() >= LEAST_ROOM);
        let high = layout.bays.iter().all(|bay| layout.row_height(bay) >= LEAST_ROOM);
        wide && high && layout.clear_depth() >= LEAST_ROOM * 2.0
    }

    fn body(&self, id: PanelId, size: (Length, Length), grain: GrainAxis, origin: Spot, lie: Lie) -> Panel {
        let (width, height) = size;
        Panel {
            id,
            stock: Stock::Body,
            width,
            height,
            thickness: self.layout.body,
            grain,
            corner_radius: Length::ZERO,
            rounding: Length::ZERO,
            cutter: self.build.cutter_mm,
            ease: self.build.ease_mm,
            features: Vec::new(),
            case_from_panel: Placement { origin, lie },
        }
    }

    /// Base and top.
    fn plates(&self, bench: &mut Bench, choice: &Choice) {
        let Layout { width, depth, .. } = *self.layout;
        let recess = self.build.foot_recess_mm;
        for (id, front, under) in [
            (PanelId::BaseLower, recess, Length::ZERO),
            (PanelId::BaseUpper, Length::ZERO, self.layout.body),
            (PanelId::Top, Length::ZERO, self.layout.ceiling),
        ] {
            let origin = Spot::new(Length::ZERO, front, under);
            let mut plate = self.body(id, (width, depth - front), GrainAxis::AlongU, origin, Lie::Flat);
            let fits = plate.width.min(plate.height) / 2.0;
            plate.corner_radius = choice.corner_radius_mm.length().max(Length::ZERO).min(fits);
            bench.lay(plate);
        }
    }

    fn back(&self, bench: &mut Bench, choice: &Choice) {
        let Layout { floor, back_front, .. } = *self.layout;
        let from = self.build.end_inset_mm - self.build.back_ear_mm;
        let size = (self.layout.width - from * 2.0, self.layout.clear_height());
        let grain = match self.picked.model.back_grain {
            BackGrain::Lying => GrainAxis::AlongU,
            BackGrain::Standing => GrainAxis::AlongV,
        };
        let mut back = self.body(PanelId::Back, size, grain, Spot::new(from, back_front, floor), Lie::Facing);
        back.stock = Stock::Back;
        back.thickness = self.layout.back;
        for (bay, span) in choice.bays.iter().zip(&self.layout.bays) {
            let kind = bay.hole.as_ref().and_then(|hole| self.picked.range.hole(&hole.kind).map(|kind| (hole, kind)));
            if let Some((hole, kind)) = kind {
                let centre = Point::new(span.middle() + hole.offset_mm.length() - from, kind.rise_mm);
                let (length, height) = kind.shape.extent();
                back.features.push(Feature::CableHole { centre, length, height });
            }
        }
        bench.lay(back);
    }

    fn upright(&self, bench: &mut Bench, number: usize) -> Option<()> {
        let layout = self.layout;
        let left = layout.upright_left(number)?;
        let right = left + layout.body;
        let id = PanelId::Upright(one_based(number)?);
        let (front, rear) = (layout.upright_front, layout.upright_rear);
        let size = (rear - front, layout.clear_height());
        bench.lay(self.body(id, size, GrainAxis::AlongV, Spot::new(left, front, layout.floor), Lie::Side));

        let long = self.build.tab_mm.min((rear - front) / 4.0);
        let inset = self.build.tab_inset_mm.min((rear - front) / 8.0);
        // The rear tab stands behind the back, or before it where the chase is too short for it.
        let behind = rear - layout.back_front - layout.back;
        let last = if behind > long + inset { rear - inset } else { layout.back_front - inset };
        let down = (self.build.tab_short_mm, layout.floor);
        let up = (layout.ceiling, layout.height - self.build.tab_short_mm);
        for (from, to) in [(front + inset, front + inset + long), (last - long, last)] {
            let tab = |(low, high)| Block { from: Spot::new(left, from, low), to: Spot::new(right, to, high) };
            bench.tab(JointKind::Tab, id, &[PanelId::BaseUpper, PanelId::BaseLower], tab(down))?;
            bench.tab(JointKind::Tab, id, &[PanelId::Top], tab(up))?;
        }
        let crossing = Block {
            from: Spot::new(left, layout.back_front, layout.floor),
            to: Spot::new(right, layout.back_front + layout.back, layout.ceiling),
        };
        bench.lap(id, PanelId::Back, crossing)
    }

    /// A stile goes through the upper base plate only: the lower one stands back at the front.
    fn stile(&self, bench: &mut Bench, number: usize) -> Option<()> {
        let layout = self.layout;
        if layout.stiles.get(number) != Some(&true) {
            return Some(());
        }
        let id = PanelId::Stile(one_based(number)?);
        let upright = layout.upright_left(number)?;
        let left = if number == 0 {
            upright
        } else if number == layout.bays.len() {
            upright + layout.body - layout.stile
        } else {
            upright + (layout.body - layout.stile) / 2.0
        };
        let size = (layout.stile, layout.clear_height());
        bench.lay(self.body(id, size, GrainAxis::AlongV, Spot::new(left, layout.face, layout.floor), Lie::Facing));
        let (from, to) = (left + layout.stile / 4.0, left + layout.stile * 0.75);
        let (front, rear) = (layout.face, layout.upright_front);
        let tab = |low, high| Block { from: Spot::new(from, front, low), to: Spot::new(to, rear, high) };
        let short = self.build.tab_short_mm;
        bench.tab(JointKind::Tab, id, &[PanelId::BaseUpper], tab(layout.body + short, layout.floor))?;
        bench.tab(JointKind::Tab, id, &[PanelId::Top], tab(layout.ceiling, layout.height - short))
    }

    fn shelf(&self, bench: &mut Bench, bay: u8, row: u8, under: Length) -> Option<()> {
        let layout = self.layout;
        let span = layout.bays.get(usize::from(bay) - 1)?;
        let id = PanelId::Shelf { bay, row };
        let play = self.build.clearance_mm / 2.0;
        let short = self.build.tab_short_mm;
        let (left, right) = (span.left + play, span.right - play);
        let (front, rear) = (layout.upright_front, layout.back_front - play);
        let size = (right - left, rear - front);
        bench.lay(self.body(id, size, GrainAxis::AlongU, Spot::new(left, front, under), Lie::Flat));

        let over = under + layout.body;
        let slot = layout.clear_depth() * (f64::from(self.build.shelf_slot_per_mille) / 1000.0);
        // An ear fills an end, and half of a divider: the neighbour's ear has the other half.
        let ear = |end: bool| if end { layout.body - short } else { (layout.body - short) / 2.0 };
        let last = usize::from(bay) == layout.bays.len();
        for (upright, from, to) in [(bay, span.left - ear(bay == 1), left), (bay + 1, right, span.right + ear(last))] {
            let solid = Block { from: Spot::new(from, front, under), to: Spot::new(to, front + slot, over) };
            bench.tab(JointKind::Ear, id, &[PanelId::Upright(upright)], solid)?;
        }
        let long = self.build.tab_mm.min((right - left) / 4.0);
        for middle in rear_tabs(left, right, long) {
            let solid = Block {
                from: Spot::new(middle - long / 2.0, rear, under),
                to: Spot::new(middle + long / 2.0, layout.back_front + layout.back - short, over),
            };
            bench.tab(JointKind::Tab, id, &[PanelId::Back], solid)?;
        }
        Some(())
    }

    fn leaf(&self, bench: &mut Bench, bay: u8, hung: Hung) -> Option<()> {
        let layout = self.layout;
        let span = layout.bays.get(usize::from(bay) - 1)?;
        let id = PanelId::Leaf(bay);
        let leaf = leaf::of(span, layout, self.build, hung);
        let size = (leaf.right - leaf.left, leaf.over - leaf.under);
        let mut panel =
            self.body(id, size, GrainAxis::AlongV, Spot::new(leaf.left, layout.face, leaf.under), Lie::Facing);
        panel.rounding = leaf::rounding(self.build, layout.body);
        bench.lay(panel);
        // The pivots turn bare: rounded over after the sheet was coated, as thick as its wood.
        let half = self.picked.body.thickness() / 2.0;
        let middle = layout.face + layout.body / 2.0;
        let pivot = |low, high| Block {
            from: Spot::new(leaf.axis - half, middle - half, low),
            to: Spot::new(leaf.axis + half, middle + half, high),
        };
        // The lower one stands on the lower base plate and carries the leaf.
        let (short, play) = (self.build.tab_short_mm, self.build.pivot_clearance_mm);
        bench.pivot(id, PanelId::BaseUpper, pivot(layout.body, leaf.under), play)?;
        bench.pivot(id, PanelId::Top, pivot(leaf.over, layout.height - short), play)
    }
}

fn one_based(number: usize) -> Option<u8> {
    u8::try_from(number + 1).ok()
}

/// Middles of a shelf's rear tabs: two on the quarters, or one where two would crowd each other.
pub(crate) fn rear_tabs(left: Length, right: Length, long: Length) -> impl Iterator<Item = Length> {
    let width = right - left;
    let two = width > long * 4.0;
    let places: &[f64] = if two { &[0.25, 0.75] } else { &[0.5] };
    places.iter().map(move |&place| left + width * place)
}

//! From positions to panels and joints.
//!
//! Base of two plates, uprights with tabs down into them and up into the top, a back that drops
//! into cross-laps, shelves that slide in from the front, stiles that keep them in, leaves on
//! pivots of their own, and the top that drops last.

use crate::cabinet::blank::{Blank, Blanks};
use crate::cabinet::case::Case;
use crate::cabinet::case::join::Bench;
use crate::cabinet::joint::JointKind;
use crate::cabinet::layout::{Layout, Picked};
use crate::cabinet::leaf;
use crate::cabinet::panel::{Feature, Panel, PanelId, Stock};
use crate::choice::{Choice, Fill, Hung};
use crate::geometry::outline::Point;
use crate::geometry::space::{Block, Lie, Placement, Spot};
use crate::range::Build;
use crate::units::quantity::Length;

pub(super) fn case(picked: Picked<'_>, choice: &Choice, layout: &Layout) -> Option<Case> {
    let drawn = Drawn { picked, layout, build: &picked.range.build };
    if !layout.has_room() {
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

/// The leaf of a bay alone: what it has cut in comes from itself.
pub(super) fn leaf(picked: Picked<'_>, choice: &Choice, layout: &Layout, bay: u8) -> Option<Panel> {
    let drawn = Drawn { picked, layout, build: &picked.range.build };
    let Fill::Leaf(hung) = choice.bays.get(usize::from(bay).checked_sub(1)?)?.fill else { return None };
    let mut bench = Bench::new(drawn.build.clearance_mm);
    drawn.plates(&mut bench, choice);
    drawn.leaf(&mut bench, bay, hung)?;
    bench.done().panels.into_iter().find(|panel| panel.id == PanelId::Leaf(bay))
}

struct Drawn<'a> {
    picked: Picked<'a>,
    layout: &'a Layout,
    build: &'a Build,
}

impl Drawn<'_> {
    fn blanks(&self) -> Blanks<'_> {
        Blanks { picked: self.picked, layout: self.layout }
    }

    fn panel(&self, blank: Blank, origin: Spot, lie: Lie) -> Panel {
        let Blank { id, stock, grain, size: (width, height), .. } = blank;
        let thickness = match stock {
            Stock::Body => self.layout.body,
            Stock::Back => self.layout.back,
        };
        Panel {
            id,
            stock,
            width,
            height,
            thickness,
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
        for (id, under) in [
            (PanelId::BaseLower, Length::ZERO),
            (PanelId::BaseUpper, self.layout.body),
            (PanelId::Top, self.layout.ceiling),
        ] {
            let origin = Spot::new(Length::ZERO, self.blanks().plate_front(id), under);
            let mut plate = self.panel(self.blanks().plate(id), origin, Lie::Flat);
            let fits = plate.width.min(plate.height) / 2.0;
            plate.corner_radius = choice.corner_radius_mm.length().max(Length::ZERO).min(fits);
            bench.lay(plate);
        }
    }

    fn back(&self, bench: &mut Bench, choice: &Choice) {
        let Layout { floor, back_front, .. } = *self.layout;
        let from = self.blanks().back_left();
        let mut back = self.panel(self.blanks().back(), Spot::new(from, back_front, floor), Lie::Facing);
        for (bay, span) in choice.bays.iter().zip(&self.layout.bays) {
            let kind = bay.hole.as_ref().and_then(|hole| self.picked.range.hole(&hole.kind).map(|kind| (hole, kind)));
            if let Some((hole, kind)) = kind {
                let centre = Point::new(span.middle() + hole.offset_mm.length() - from, kind.rise_mm);
                let (length, height) = kind.shape.extent();
                back.features.push(Feature::Hole { centre, length, height });
            }
        }
        bench.lay(back);
    }

    fn upright(&self, bench: &mut Bench, number: usize) -> Option<()> {
        let layout = self.layout;
        let left = layout.upright_left(number)?;
        let right = left + layout.body;
        let blank = self.blanks().upright(one_based(number)?);
        let id = blank.id;
        let (front, rear) = (layout.upright_front, layout.upright_rear);
        bench.lay(self.panel(blank, Spot::new(left, front, layout.floor), Lie::Side));

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
        let blank = self.blanks().stile(one_based(number)?);
        let id = blank.id;
        let upright = layout.upright_left(number)?;
        let left = if number == 0 {
            upright
        } else if number == layout.bays.len() {
            upright + layout.body - layout.stile
        } else {
            upright + (layout.body - layout.stile) / 2.0
        };
        bench.lay(self.panel(blank, Spot::new(left, layout.face, layout.floor), Lie::Facing));
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
        let blank = self.blanks().shelf(bay, row, span);
        let id = blank.id;
        let play = self.build.clearance_mm / 2.0;
        let short = self.build.tab_short_mm;
        let (left, right) = (span.left + play, span.right - play);
        let (front, rear) = (layout.upright_front, layout.back_front - play);
        bench.lay(self.panel(blank, Spot::new(left, front, under), Lie::Flat));

        let over = under + layout.body;
        let slot = layout.clear_depth() * (f64::from(self.build.shelf_slot_per_mille) / 1000.0);
        let ear = |end| self.blanks().ear(end);
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
        let blank = self.blanks().leaf(bay, span, hung);
        let id = blank.id;
        let leaf = leaf::of(span, layout, self.build, hung);
        let mut panel = self.panel(blank, Spot::new(leaf.left, layout.face, leaf.under), Lie::Facing);
        panel.rounding = leaf::rounding(self.build, layout.body);
        if let Some(centre) = leaf.finger_hole(self.build, layout.body, hung) {
            let (length, height) = (self.build.finger_hole_mm, self.build.finger_hole_mm);
            panel.features.push(Feature::Hole { centre, length, height });
        }
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

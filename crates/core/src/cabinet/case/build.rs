//! From positions to panels and joints.
//!
//! Base of two plates, uprights with tabs down into them and up into the top, a back that hangs on
//! hooks of the uprights, shelves that slide in from the front, stiles that keep them in, leaves on
//! pivots of their own, staves along bowed ends, and the top that drops last.

use crate::cabinet::blank::{Blank, Blanks, Rank};
use crate::cabinet::case::Case;
use crate::cabinet::case::join::Bench;
use crate::cabinet::joint::JointKind;
use crate::cabinet::layout::{Layout, Picked};
use crate::cabinet::leaf;
use crate::cabinet::panel::{Edge, End, Feature, Panel, PanelId, Stock};
use crate::cabinet::swing;
use crate::choice::{Choice, Fill, Hung};
use crate::geometry::outline::Point;
use crate::geometry::space::{Block, Lie, Placement, Spot};
use crate::range::{Build, Detent};
use crate::units::quantity::Length;

pub(super) fn case(picked: Picked<'_>, choice: &Choice, layout: &Layout) -> Option<Case> {
    let drawn = Drawn { picked, layout, build: &picked.range.build };
    if !layout.has_room() {
        return None;
    }
    let mut bench = Bench::new(drawn.build);
    drawn.plates(&mut bench, choice);
    drawn.plinth(&mut bench)?;
    drawn.back(&mut bench, choice)?;
    for number in 0..=layout.bays.len() {
        drawn.upright(&mut bench, number)?;
        drawn.stile(&mut bench, number)?;
    }
    for end in End::ALL {
        drawn.staves(&mut bench, end)?;
    }
    for (index, (bay, span)) in (1..).zip(choice.bays.iter().zip(&layout.bays)) {
        match bay.fill {
            Fill::Open => {}
            Fill::Shelves(_) => {
                for (row, under) in (1..).zip(&span.shelves) {
                    drawn.shelf(&mut bench, index, row, *under)?;
                }
            }
            Fill::Leaf(hung) => {
                drawn.stop(&mut bench, index)?;
                drawn.leaf(&mut bench, index, hung)?;
            }
        }
    }
    Some(bench.done())
}

/// The leaf of a bay alone: what it has cut in comes from itself.
pub(super) fn leaf(picked: Picked<'_>, choice: &Choice, layout: &Layout, bay: u8) -> Option<Panel> {
    let drawn = Drawn { picked, layout, build: &picked.range.build };
    let Fill::Leaf(hung) = choice.bays.get(usize::from(bay).checked_sub(1)?)?.fill else { return None };
    let mut bench = Bench::new(drawn.build);
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
            tab_chamfer: self.build.tab_chamfer_mm,
            features: Vec::new(),
            case_from_panel: Placement { origin, lie },
        }
    }

    /// Base and top.
    fn plates(&self, bench: &mut Bench, choice: &Choice) {
        for (id, under) in [
            (PanelId::BaseLower, self.layout.base),
            (PanelId::BaseUpper, self.layout.seam()),
            (PanelId::Top, self.layout.ceiling),
        ] {
            let lower = id == PanelId::BaseLower;
            let [left, _] = self.layout.plate_insets(lower);
            let origin = Spot::new(left, self.blanks().plate_front(id), under);
            let mut plate = self.panel(self.blanks().plate(id), origin, Lie::Flat);
            let bows = End::ALL.into_iter().filter_map(|end| Some(self.layout.bow(end)?.of_plate(end, lower)));
            plate.features.extend(bows.map(Feature::Bow));
            let fits = plate.width.min(plate.height) / 2.0;
            plate.corner_radius = choice.corner_radius_mm.length().max(Length::ZERO).min(fits);
            bench.lay(plate);
        }
    }

    /// Two long boards with tabs in the lower base plate, and the bearers that drop onto them.
    fn plinth(&self, bench: &mut Bench) -> Option<()> {
        let Some(plinth) = self.layout.plinth else { return Some(()) };
        let (body, (left, _)) = (self.layout.body, self.layout.plinth_ends()?);
        let (middles, long) = self.layout.plinth_tabs(self.build);
        let (under, over) = (self.layout.base, self.layout.base + self.blanks().into_base());
        let fronts = plinth.long(body);
        let ids = [PanelId::PlinthFront, PanelId::PlinthRear];
        for (id, front) in ids.into_iter().zip(fronts) {
            let blank = self.blanks().plinth_board(id, plinth);
            bench.lay(self.panel(blank, Spot::new(left, front, Length::ZERO), Lie::Facing));
            for middle in &middles {
                let (from, to) = (*middle - long / 2.0, *middle + long / 2.0);
                let tab = Block { from: Spot::new(from, front, under), to: Spot::new(to, front + body, over) };
                bench.tab(JointKind::Tab, id, &[PanelId::BaseLower], tab)?;
            }
        }
        for (number, left) in (1..=u8::MAX).zip(self.layout.bearers()) {
            let bearer = PanelId::Bearer(number);
            let blank = self.blanks().plinth_board(bearer, plinth);
            bench.lay(self.panel(blank, Spot::new(left, plinth.front, Length::ZERO), Lie::Side));
            for (id, front) in ids.into_iter().zip(fronts) {
                let crossing = Block {
                    from: Spot::new(left, front, Length::ZERO),
                    to: Spot::new(left + body, front + body, plinth.height),
                };
                bench.lap(bearer, id, crossing, plinth.lap(self.build.clearance_mm))?;
            }
        }
        Some(())
    }

    /// It stands in the upper base plate alone, since it drops by little, and in the top, which locks it.
    fn back(&self, bench: &mut Bench, choice: &Choice) -> Option<()> {
        let Layout { floor, ceiling, back_front, back: thick, .. } = *self.layout;
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
        let (down, up) = (floor - self.blanks().back_into_base(), ceiling + self.blanks().into_top(Rank::Rear));
        // In the middle the top is held in its place, by the back or else by an upright: from there it moves to both sides.
        let bays = self.layout.bays.len();
        for (number, span) in self.layout.bays.iter().enumerate() {
            let holds = number * 2 + 1 == bays;
            let (middle, half) = (span.middle(), self.blanks().back_tab(span.clear()) / 2.0);
            let tab = |low, high| Block {
                from: Spot::new(middle - half, back_front, low),
                to: Spot::new(middle + half, back_front + thick, high),
            };
            bench.tab(JointKind::Tab, PanelId::Back, &[PanelId::BaseUpper], tab(down, floor))?;
            bench.tab_in_top(PanelId::Back, tab(ceiling, up), holds)?;
        }
        Some(())
    }

    fn upright(&self, bench: &mut Bench, number: usize) -> Option<()> {
        let layout = self.layout;
        let left = layout.upright_left(number)?;
        let right = left + layout.body;
        let blank = self.blanks().upright(one_based(number)?);
        let id = blank.id;
        let (front, rear) = (layout.upright_front, layout.upright_rear);
        bench.lay(self.panel(blank, Spot::new(left, front, layout.floor), Lie::Side));

        let long = self.blanks().upright_tab();
        let inset = self.build.tab_inset_mm.min((rear - front) / 8.0);
        let down = (layout.base + self.build.tab_short_mm, layout.floor);
        let places = [(Rank::Front, front + inset), (Rank::Rear, rear - inset - long)];
        for (rank, from) in places {
            let up = (layout.ceiling, layout.ceiling + self.blanks().into_top(rank));
            let tab = |(low, high)| Block { from: Spot::new(left, from, low), to: Spot::new(right, from + long, high) };
            bench.tab(JointKind::Tab, id, &[PanelId::BaseUpper, PanelId::BaseLower], tab(down))?;
            bench.tab_in_top(id, tab(up), number * 2 == layout.bays.len())?;
        }
        for top in layout.hooks.necks() {
            let over = layout.floor + top;
            let neck = Block {
                from: Spot::new(left, layout.back_front, over - layout.hooks.neck),
                to: Spot::new(right, layout.back_front + layout.back, over),
            };
            bench.hook(id, PanelId::Back, neck, layout.hooks)?;
        }
        Some(())
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
        let (middle, half) = (left + layout.stile / 2.0, self.blanks().stile_tab() / 2.0);
        let (from, to) = (middle - half, middle + half);
        let (front, rear) = (layout.face, layout.upright_front);
        let tab = |low, high| Block { from: Spot::new(from, front, low), to: Spot::new(to, rear, high) };
        let short = self.build.tab_short_mm;
        bench.tab(JointKind::Tab, id, &[PanelId::BaseUpper], tab(layout.seam() + short, layout.floor))?;
        bench.tab_in_top(id, tab(layout.ceiling, layout.ceiling + self.blanks().into_top(Rank::Face)), false)
    }

    /// The staves of an end, if it is bowed. They stand in the upper base plate only, as stiles do.
    fn staves(&self, bench: &mut Bench, end: End) -> Option<()> {
        let (layout, tab, short) = (self.layout, self.picked.range.bow.tab_mm, self.build.tab_short_mm);
        let Some(bow) = layout.bow(end) else { return Some(()) };
        for (number, angle) in (1..).zip(bow.angles()) {
            let blank = self.blanks().stave(end, number, &bow);
            let mut stave = self.panel(blank, Spot::default(), Lie::Facing);
            stave.case_from_panel = bow.stave(end, angle, layout.width, layout.floor);
            let (id, height) = (blank.id, stave.height);
            bench.lay(stave);
            let along = ((bow.wide - tab) / 2.0, (bow.wide + tab) / 2.0);
            let down = layout.seam() + short - layout.floor;
            let up = height + self.blanks().into_top(Rank::of_stave(number, bow.count));
            bench.turned_tab(id, PanelId::BaseUpper, along, (down, Length::ZERO))?;
            bench.turned_tab(id, PanelId::Top, along, (height, up))?;
        }
        Some(())
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
        let slot = self.blanks().shelf_slot();
        let ear = |end| self.blanks().ear(end);
        let last = usize::from(bay) == layout.bays.len();
        for (upright, from, to) in [(bay, span.left - ear(bay == 1), left), (bay + 1, right, span.right + ear(last))] {
            let solid = Block { from: Spot::new(from, front, under), to: Spot::new(to, front + slot, over) };
            bench.tab(JointKind::Ear, id, &[PanelId::Upright(upright)], solid)?;
        }
        let long = self.blanks().shelf_tab(right - left);
        for middle in rear_tabs(left, right, long) {
            let solid = Block {
                from: Spot::new(middle - long / 2.0, rear, under),
                to: Spot::new(middle + long / 2.0, layout.back_front + layout.back - short, over),
            };
            bench.tab(JointKind::Tab, id, &[PanelId::Back], solid)?;
        }
        Some(())
    }

    /// A stop stands in the upper base plate only, as stiles do: plinths have their tabs under it. Its tabs stand over each other, or
    /// the upper one behind its detent.
    fn stop(&self, bench: &mut Bench, bay: u8) -> Option<()> {
        let layout = self.layout;
        let left = layout.bays.get(usize::from(bay) - 1)?.stop?;
        let blank = self.blanks().stop(bay);
        let id = blank.id;
        let mut stop = self.panel(blank, Spot::new(left, layout.stop_front, layout.floor), Lie::Side);
        stop.features.extend(Detent::of(self.build, layout.body).map(Feature::Detent));
        bench.lay(stop);
        let tab = |(behind, long), low, high| {
            let from = layout.stop_front + behind;
            Block { from: Spot::new(left, from, low), to: Spot::new(left + layout.body, from + long, high) }
        };
        let (down, up) = (self.build.stop_tab(), self.build.stop_upper_tab());
        let (short, into_top) = (self.build.tab_short_mm, self.blanks().into_top(Rank::Stop));
        bench.tab(JointKind::Tab, id, &[PanelId::BaseUpper], tab(down, layout.seam() + short, layout.floor))?;
        bench.tab_in_top(id, tab(up, layout.ceiling, layout.ceiling + into_top), false)
    }

    fn leaf(&self, bench: &mut Bench, bay: u8, hung: Hung) -> Option<()> {
        let layout = self.layout;
        let span = layout.bays.get(usize::from(bay) - 1)?;
        let blank = self.blanks().leaf(bay, span, hung);
        let id = blank.id;
        let leaf = leaf::of(span, layout, self.build, hung);
        let mut panel = self.panel(blank, Spot::new(leaf.left, layout.face, leaf.under), Lie::Facing);
        panel.rounding = swing::rounding(self.build, layout.body);
        if let Some(centre) = leaf.finger_hole(self.build, layout.body, hung) {
            let (length, height) = (self.build.finger_hole_mm, self.build.finger_hole_mm);
            panel.features.push(Feature::Hole { centre, length, height });
        }
        if let Some((wide, depth)) = leaf.corner(self.build, layout) {
            let (from, to) = match hung {
                Hung::Left => (panel.width - wide, panel.width),
                Hung::Right => (Length::ZERO, wide),
            };
            panel.features.push(Feature::Notch { edge: Edge::Top, from, to, depth });
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
        let (over, play) = (layout.ceiling + self.blanks().into_top(Rank::Face), self.build.pivot_clearance_mm);
        bench.pivot(id, PanelId::BaseUpper, pivot(layout.seam(), leaf.under), play)?;
        bench.pivot(id, PanelId::Top, pivot(leaf.over, over), play)
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

//! The blank of every part: its rectangle, and how far its tabs stand out of it. What a sheet has to
//! hold and what a part weighs at most is known from it before anything is cut in.

use core::mem::discriminant;

use crate::cabinet::bow::Bow;
use crate::cabinet::layout::{BaySpan, Layout, Picked};
use crate::cabinet::leaf;
use crate::cabinet::panel::{End, GrainAxis, PanelId, Stock};
use crate::cabinet::plinth::Plinth;
use crate::choice::{Choice, Fill, Hung};
use crate::range::{BackGrain, Board, Build, Detent, STILE_TAB};
use crate::units::quantity::{AreaMass, Length, Mass};

mod least;

pub(crate) use least::Cuts;

/// One part before it is cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Blank {
    /// Which part.
    pub(crate) id: PanelId,
    /// What it is cut from.
    pub(crate) stock: Stock,
    /// Direction of its face grain.
    pub(crate) grain: GrainAxis,
    /// Width and height of its rectangle, without tabs.
    pub(crate) size: (Length, Length),
    /// How far tabs stand out along the width and along the height, both ends together.
    pub(crate) tabs: (Length, Length),
}

impl Blank {
    /// The rectangle that holds the part with its tabs.
    pub(crate) fn whole(self) -> (Length, Length) {
        (self.size.0 + self.tabs.0, self.size.1 + self.tabs.1)
    }

    /// Whether another part has the same rectangle and the same tabs, for the same purpose: they stand beside each other in
    /// the list of all.
    pub(crate) fn is_like(&self, other: &Self) -> bool {
        discriminant(&self.id) == discriminant(&other.id) && (self.size, self.tabs) == (other.size, other.tabs)
    }

    /// That rectangle along and across the face grain.
    pub(crate) fn by_grain(self) -> (Length, Length) {
        let (width, height) = self.whole();
        match self.grain {
            GrainAxis::AlongU => (width, height),
            GrainAxis::AlongV => (height, width),
        }
    }

    /// What the whole rectangle weighs with its film: the part weighs less.
    pub(crate) fn most_mass(self, coated: Coated) -> Mass {
        let (width, height) = self.whole();
        Mass::kg((width * height).in_m2() * coated.of_stock(self.stock).in_kg_per_m2())
    }
}

/// What boards weigh with their films, area by area: looked up once for all blanks.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Coated {
    body: AreaMass,
    back: AreaMass,
}

impl Coated {
    pub(crate) fn of(picked: Picked<'_>) -> Self {
        let film = picked.finish.film_kg_per_m3.in_kg_per_m3() * picked.finish.dry_film().in_m() * 2.0;
        let coated = |board: &Board| {
            let mass = board.density_kg_per_m3.in_kg_per_m3() * board.thickness().in_m() + film;
            // A part's area is a sum of pieces, whose rounding must not come out above.
            AreaMass::kg_per_m2(mass * (1.0 + 1e-9))
        };
        Self { body: coated(picked.body), back: coated(picked.back) }
    }

    fn of_stock(self, stock: Stock) -> AreaMass {
        match stock {
            Stock::Body => self.body,
            Stock::Back => self.back,
        }
    }
}

/// The tabs that the top meets one after another as it drops, from the rear to the front: each rank is shorter than the one before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Rank {
    /// Of the back, and the rear ones of the uprights.
    Rear,
    /// The front ones of the uprights.
    Front,
    /// Of the stiles, and the pivots of leaves.
    Face,
    /// Of most staves of bowed ends, which stand free until then.
    Stave,
    /// Of the stops of leaves, which stand free as well: half a step, so that reliefs have room in their flanks, beside the taper.
    Stop,
}

impl Rank {
    /// That of a stave, of so many from the front: those of the rear third go with the uprights.
    pub(crate) const fn of_stave(number: u8, count: u8) -> Self {
        if number as u16 * 3 > count as u16 * 2 { Self::Front } else { Self::Stave }
    }

    /// By how many steps it is shorter than the first.
    const fn steps(self) -> f64 {
        match self {
            Self::Rear => 0.0,
            Self::Front => 1.0,
            Self::Face => 2.0,
            Self::Stave => 3.0,
            Self::Stop => 3.5,
        }
    }
}

/// The blanks of a unit that is laid out, in the order of their parts.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Blanks<'a> {
    pub(crate) picked: Picked<'a>,
    pub(crate) layout: &'a Layout,
}

impl<'a> Blanks<'a> {
    fn build(self) -> &'a Build {
        &self.picked.range.build
    }

    fn body(id: PanelId, grain: GrainAxis, size: (Length, Length), tabs: (Length, Length)) -> Blank {
        Blank { id, stock: Stock::Body, grain, size, tabs }
    }

    /// How far a tab reaches into the top: half way at least.
    pub(crate) fn into_top(self, rank: Rank) -> Length {
        let short = self.build().tab_short_mm + self.build().tab_stagger_mm * rank.steps();
        (self.layout.body - short).max(self.layout.body / 2.0)
    }

    /// Length of the tabs of an upright along its edges.
    pub(crate) fn upright_tab(self) -> Length {
        self.build().tab_mm.min((self.layout.upright_rear - self.layout.upright_front) / 4.0)
    }

    /// Length of the tabs of a stile: there is wood between their slots and the pivot holes beside it.
    pub(crate) fn stile_tab(self) -> Length {
        self.layout.stile * STILE_TAB
    }

    /// Length of the tabs of the back in a bay so wide.
    pub(crate) fn back_tab(self, clear: Length) -> Length {
        self.build().tab_mm.min(clear / 2.0)
    }

    /// Length of the rear tabs of a shelf so wide without its ears.
    pub(crate) fn shelf_tab(self, wide: Length) -> Length {
        self.build().tab_mm.min(wide / 4.0)
    }

    /// Depth of the front-open slots of shelves, and length of the ears in them.
    pub(crate) fn shelf_slot(self) -> Length {
        self.layout.clear_depth() * (f64::from(self.build().shelf_slot_per_mille) / 1000.0)
    }

    /// Where a plate begins: the lower base plate stands back.
    pub(crate) fn plate_front(self, id: PanelId) -> Length {
        if id == PanelId::BaseLower { self.build().foot_recess_mm } else { Length::ZERO }
    }

    /// How far a tab of the plinth reaches into the lower base plate.
    pub(crate) fn into_base(self) -> Length {
        self.layout.body - self.build().tab_short_mm
    }

    /// A long board of a plinth, which has tabs, or a bearer, which has none.
    pub(crate) fn plinth_board(self, id: PanelId, plinth: Plinth) -> Blank {
        let (long, tabs) = match (id, self.layout.plinth_ends()) {
            (PanelId::PlinthFront | PanelId::PlinthRear, Some((left, right))) => (right - left, self.into_base()),
            _ => (plinth.rear - plinth.front, Length::ZERO),
        };
        Self::body(id, GrainAxis::AlongU, (long, plinth.height), (Length::ZERO, tabs))
    }

    fn plinth(self, all: &mut Vec<Blank>) {
        let Some(plinth) = self.layout.plinth else { return };
        let bearers = (1..=u8::MAX).zip(self.layout.bearers()).map(|(number, _)| PanelId::Bearer(number));
        let boards = [PanelId::PlinthFront, PanelId::PlinthRear].into_iter().chain(bearers);
        all.extend(boards.map(|id| self.plinth_board(id, plinth)));
    }

    /// A base plate or the top.
    pub(crate) fn plate(self, id: PanelId) -> Blank {
        let lower = id == PanelId::BaseLower;
        let insets: Length = self.layout.plate_insets(lower).into_iter().sum();
        let size = (self.layout.width - insets, self.layout.depth - self.plate_front(id));
        let bows = End::ALL.into_iter().filter_map(|end| Some(self.layout.bow(end)?.of_plate(end, lower).rise));
        Self::body(id, GrainAxis::AlongU, size, (bows.sum(), Length::ZERO))
    }

    /// Where the back begins at the left.
    pub(crate) fn back_left(self) -> Length {
        let [left, _] = self.layout.ends;
        left - self.build().back_ear_mm
    }

    /// The back.
    pub(crate) fn back(self) -> Blank {
        let grain = match self.picked.model.back_grain {
            BackGrain::Lying => GrainAxis::AlongU,
            BackGrain::Standing => GrainAxis::AlongV,
        };
        let [left, right] = self.layout.ends;
        let wide = self.layout.width - (left + right) + self.build().back_ear_mm * 2.0;
        let size = (wide, self.layout.clear_height());
        let tabs = self.back_into_base() + self.into_top(Rank::Rear);
        Blank { stock: Stock::Back, ..Self::body(PanelId::Back, grain, size, (Length::ZERO, tabs)) }
    }

    /// How far a tab of the back reaches into the upper base plate: it comes over that with the play that noses have.
    pub(crate) fn back_into_base(self) -> Length {
        let hooks = self.layout.hooks;
        (self.layout.body - self.build().tab_short_mm).min(hooks.rise - hooks.play)
    }

    /// An end or a divider.
    pub(crate) fn upright(self, number: u8) -> Blank {
        let layout = self.layout;
        let size = (layout.upright_rear - layout.upright_front, layout.clear_height());
        let hooks = layout.back + self.build().clearance_mm + layout.hooks.nose;
        let tabs = layout.floor - layout.base - self.build().tab_short_mm + self.into_top(Rank::Rear);
        Self::body(PanelId::Upright(number), GrainAxis::AlongV, size, (hooks, tabs))
    }

    /// The strip before an upright.
    pub(crate) fn stile(self, number: u8) -> Blank {
        let size = (self.layout.stile, self.layout.clear_height());
        let tabs = self.layout.body - self.build().tab_short_mm + self.into_top(Rank::Face);
        Self::body(PanelId::Stile(number), GrainAxis::AlongV, size, (Length::ZERO, tabs))
    }

    /// The stop of a leaf.
    pub(crate) fn stop(self, bay: u8) -> Blank {
        let size = (self.build().stop_depth_mm, self.layout.clear_height());
        let tabs = self.layout.body - self.build().tab_short_mm + self.into_top(Rank::Stop);
        let tongue = Detent::of(self.build(), self.layout.body).map_or(Length::ZERO, Detent::out);
        Self::body(PanelId::Stop(bay), GrainAxis::AlongV, size, (tongue, tabs))
    }

    /// A stave of a bowed end, which has so many.
    pub(crate) fn stave(self, end: End, number: u8, bow: &Bow) -> Blank {
        let size = (bow.wide, self.layout.clear_height());
        let into_top = self.into_top(Rank::of_stave(number, bow.count));
        let tabs = self.layout.floor - self.layout.seam() - self.build().tab_short_mm + into_top;
        Self::body(PanelId::Stave { end, number }, GrainAxis::AlongV, size, (Length::ZERO, tabs))
    }

    /// How far an ear reaches into an end or, as the neighbour's has the other half, into a divider.
    pub(crate) fn ear(self, end: bool) -> Length {
        let deep = self.layout.body - self.build().tab_short_mm;
        if end { deep } else { deep / 2.0 }
    }

    /// A shelf.
    pub(crate) fn shelf(self, bay: u8, row: u8, span: &BaySpan) -> Blank {
        let layout = self.layout;
        let (play, short) = (self.build().clearance_mm, self.build().tab_short_mm);
        let size = (span.clear() - play, layout.clear_depth() - play / 2.0);
        let ears = self.ear(bay == 1) + self.ear(usize::from(bay) == layout.bays.len()) + play;
        let tabs = (ears, layout.back - short + play / 2.0);
        Self::body(PanelId::Shelf { bay, row }, GrainAxis::AlongU, size, tabs)
    }

    /// A door leaf.
    pub(crate) fn leaf(self, bay: u8, span: &BaySpan, hung: Hung) -> Blank {
        let leaf = leaf::of(span, self.layout, self.build(), hung);
        let size = (leaf.right - leaf.left, leaf.over - leaf.under);
        let pivots = leaf.under - self.layout.seam() + self.layout.ceiling + self.into_top(Rank::Face) - leaf.over;
        Self::body(PanelId::Leaf(bay), GrainAxis::AlongV, size, (Length::ZERO, pivots))
    }

    /// All of them.
    pub(crate) fn all(self, choice: &Choice) -> Vec<Blank> {
        let Layout { bays, stiles, .. } = self.layout;
        let mut all = Vec::with_capacity(4 + stiles.len() * 2 + bays.len() * 5);
        self.plinth(&mut all);
        all.extend([self.plate(PanelId::BaseLower), self.plate(PanelId::BaseUpper)]);
        let numbered = || (1..=u8::MAX).zip(stiles);
        let upright = self.upright(1);
        all.extend(numbered().map(|(number, _)| Blank { id: PanelId::Upright(number), ..upright }));
        all.push(self.back());
        for (bay, span) in (1..=u8::MAX).zip(bays) {
            all.extend((1..=u8::MAX).zip(&span.shelves).map(|(row, _)| self.shelf(bay, row, span)));
        }
        let stile = self.stile(1);
        let standing = numbered().filter(|(_, stile)| **stile);
        all.extend(standing.map(|(number, _)| Blank { id: PanelId::Stile(number), ..stile }));
        let mut stopped =
            (1..=u8::MAX).zip(bays).filter(|(_, span)| span.stop.is_some()).map(|(bay, _)| bay).peekable();
        if let Some(stop) = stopped.peek().map(|bay| self.stop(*bay)) {
            all.extend(stopped.map(|bay| Blank { id: PanelId::Stop(bay), ..stop }));
        }
        for (bay, (span, chosen)) in (1..=u8::MAX).zip(bays.iter().zip(&choice.bays)) {
            if let Fill::Leaf(hung) = chosen.fill {
                all.push(self.leaf(bay, span, hung));
            }
        }
        for end in End::ALL {
            if let Some(bow) = self.layout.bow(end) {
                all.extend((1..=bow.count).map(|number| self.stave(end, number, &bow)));
            }
        }
        all.push(self.plate(PanelId::Top));
        all
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cabinet::case::Case;
    use crate::rules::judge;
    use crate::rules::sample::{Wanted, choices};
    use crate::testing::demo;

    /// The blanks are those of the parts that are cut, and no part outweighs its own.
    #[test]
    fn blanks_are_the_rectangles_of_the_parts() {
        let range = demo();
        let (mut parts, mut leaves) = (0, 0);
        for choice in choices(&range, 31, Wanted::Any).take(900) {
            let judged = judge(&range, &choice);
            let Some((picked, layout)) = judged.picked.zip(judged.layout) else { continue };
            let case = Case::of(picked, &choice, &layout).unwrap();
            let blanks = Blanks { picked, layout: &layout }.all(&choice);
            assert!(blanks.iter().map(|blank| blank.id).eq(case.panels.iter().map(|panel| panel.id)), "{choice:?}");
            for (blank, panel) in blanks.iter().zip(&case.panels) {
                let ((width, height), (wide, high)) = (blank.whole(), panel.blank());
                let apart = (width - wide).abs().max((height - high).abs());
                assert!(apart < Length::mm(1e-9), "{}: {blank:?} {:?}", panel.id, panel.blank());
                let (least, most) = (Case::weigh(panel, picked).mass, blank.most_mass(Coated::of(picked)));
                // Reliefs, rounding and slots take little: the bound is close enough to be of use.
                assert!(least <= most && most < least * 1.5, "{}: {least:?} {most:?}", panel.id);
                if let PanelId::Leaf(bay) = panel.id {
                    assert_eq!(Case::leaf(picked, &choice, &layout, bay).as_ref(), Some(panel), "cut alone");
                    leaves += 1;
                }
                parts += 1;
            }
        }
        assert!(parts > 5000 && leaves > 200, "{parts} {leaves}");
    }
}

//! Parts of a lot on sheets: new ones of the range's formats, and offcuts that are in stock.

use slotwright_core::business::nesting::{self, Grained};
use slotwright_core::cabinet::panel::{Edge, Feature, GrainAxis};
use slotwright_core::geometry::outline::Point;
use slotwright_core::geometry::quarters::Quarters;
use slotwright_core::range::{Grain, Key, Range, Sheet as RangeSheet};
use slotwright_core::units::money::Money;
use slotwright_core::units::quantity::Length;
use slotwright_nest::bound;
use slotwright_nest::packing::{Figures, Packing};
use slotwright_nest::problem::{Format, Item, NoRoom, Problem};
use slotwright_nest::search::{Progress, Search};

use super::lot::{Lot, Part};
use super::sheet::{Placed, Rectangle, Sheet, Stock};
use pair::{Laid, Member, alone, paired};

mod pair;
mod side;

/// An offcut in the rack: coated, so it serves one finish alone.
#[derive(Clone, Debug, PartialEq)]
pub struct StoredOffcut {
    /// What is written on it.
    pub name: String,
    /// Its board.
    pub board: Key,
    /// Its finish.
    pub finish: Key,
    /// Its size by its grain.
    pub size: Grained,
    /// Thickness of its board without coats, by the batch that it comes from; none if nobody measured that.
    pub measured: Option<Length>,
}

/// How many sheets of a format there are.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SheetsInStock {
    /// The board.
    pub board: Key,
    /// The format.
    pub sheet: Key,
    /// How many.
    pub count: u32,
}

/// What is left in stock for the lots that come later.
#[derive(Clone, Debug, Default)]
pub struct InStock {
    /// Offcuts that no lot was offered.
    pub rack: Vec<StoredOffcut>,
    /// Sheets of formats that are short, less those of the lots before.
    pub bounds: Vec<SheetsInStock>,
}

/// A nest that gets better the longer it is looked for: of parts by themselves, and of parts in pairs that interlock. What
/// costs less is taken.
#[derive(Debug)]
pub struct LotNest {
    first: Nest,
    /// In pairs, where there are any and the first is of parts by themselves.
    second: Option<Nest>,
    formats: Vec<Origin>,
    fewest: u32,
}

/// Rectangles with their parts, on sheets.
#[derive(Debug)]
struct Nest {
    laid: Vec<Laid>,
    problem: Problem,
    search: Search,
}

/// A format of sheets that parts may be nested on.
#[derive(Clone, Debug)]
struct Origin {
    stock: Stock,
    grain: Grain,
    size: Grained,
    measured: Option<Length>,
}

impl Lot<'_> {
    /// Whether an offcut may serve it: of its board and its finish, and in slots that are cut for its own batch within the
    /// clearance that the range wants. One that nobody measured has to be measured before it is cut.
    pub fn takes(&self, offcut: &StoredOffcut) -> bool {
        let build = &self.range.build;
        let fits = |measured: Length| {
            let clearance = build.clearance_mm - (measured - self.board.thickness());
            clearance >= build.clearance_least_mm && clearance <= build.clearance_most_mm
        };
        offcut.board == self.board.key && offcut.finish == self.finish.key && offcut.measured.is_none_or(fits)
    }
}

impl LotNest {
    /// Nests the parts of a lot, on offcuts of its finish and thickness too where that costs less. What is short is taken off the stock: a lot
    /// keeps to the sheets of its first nest, so that no sheet is counted on twice.
    ///
    /// # Errors
    ///
    /// A part that fits no sheet, by its place among the parts, or too few sheets.
    pub fn of(lot: &Lot<'_>, stock: &mut InStock) -> Result<Self, NoRoom> {
        let (own, others): (Vec<_>, Vec<_>) =
            core::mem::take(&mut stock.rack).into_iter().partition(|offcut| lot.takes(offcut));
        stock.rack = others;
        let new = Self::on(lot, &[], &stock.bounds);
        let mut nest = if own.is_empty() {
            new?
        } else {
            match (new, Self::on(lot, &own, &stock.bounds)) {
                (Ok(new), Ok(with_rack)) if new.figures().net() <= with_rack.figures().net() => new,
                (_, Ok(with_rack)) => with_rack,
                (new, Err(_)) => new?,
            }
        };
        let mut bounds = stock.bounds.clone();
        for bound in bounds.iter_mut().filter(|bound| bound.board == lot.board.key) {
            let used = nest
                .sheets(lot, 0)
                .iter()
                .filter(|sheet| sheet.stock == Stock::Bought(bound.sheet.to_string()))
                .count();
            let used = u32::try_from(used).unwrap_or(u32::MAX);
            bound.count = used;
            for left in stock.bounds.iter_mut().filter(|left| left.board == bound.board && left.sheet == bound.sheet) {
                left.count = left.count.saturating_sub(used);
            }
        }
        if bounds.iter().any(|bound| bound.board == lot.board.key) {
            let rack = if nest.has_rack() { own.as_slice() } else { &[] };
            nest = Self::on(lot, rack, &bounds)?;
        }
        Ok(nest)
    }

    /// Whether offcuts are among its formats.
    fn has_rack(&self) -> bool {
        self.formats.iter().any(|origin| matches!(origin.stock, Stock::Offcut(_)))
    }

    fn on(lot: &Lot<'_>, rack: &[StoredOffcut], bounds: &[SheetsInStock]) -> Result<Self, NoRoom> {
        let (range, board) = (lot.range, lot.board);
        let mut problem = nesting::problem(range, board, lot.parts.iter().map(solid));
        let mut formats = Vec::new();
        for (sheet, format) in board.sheets.iter().zip(&mut problem.formats) {
            let known = bounds.iter().find(|bound| bound.board == board.key && bound.sheet == sheet.key);
            format.most = known.map(|bound| bound.count);
            let stock = Stock::Bought(sheet.key.to_string());
            let measured = lot.measured();
            formats.push(Origin { stock, grain: sheet.grain, size: Grained::of(sheet), measured });
        }
        for offcut in rack {
            // Drawn with its grain along, whichever side is longer.
            problem.formats.push(nesting::format(offcut.size, offcut_cost(range, lot, offcut), Some(1)));
            let stock = Stock::Offcut(offcut.name.clone());
            formats.push(Origin { stock, grain: Grain::Length, size: offcut.size, measured: offcut.measured });
        }
        let fewest = bound::bounds(&problem)?.fewest();
        // Of the nests in pairs the one that begins best is looked at on.
        let in_pairs = |formats: &[Format]| {
            let laid = paired(lot, formats).into_iter();
            let nests = laid.filter_map(|(_, laid)| Nest::of(laid, problem.clone(), range).ok());
            nests.min_by_key(|nest| nest.search.net())
        };
        // Pairs that go on formats alone of which there are few may be too many.
        let plenty = || problem.formats.iter().filter(|format| format.most.is_none()).copied().collect::<Vec<_>>();
        let second = in_pairs(&problem.formats).or_else(|| in_pairs(&plenty()));
        // Where sheets are short there may be room in pairs alone.
        match (Nest::of(alone(lot), problem.clone(), range), second) {
            (Ok(first), second) => Ok(Self { first, second, formats, fewest }),
            (Err(NoRoom::Sheets { .. }), Some(first)) => Ok(Self { first, second: None, formats, fewest }),
            (Err(none), _) => Err(none),
        }
    }

    /// Looks on with so much effort more for each of its two nests: the same effort, the same nest. Whether any may still get
    /// better.
    pub fn step(&mut self, effort: u32) -> bool {
        let mut goes_on = false;
        for nest in core::iter::once(&mut self.first).chain(&mut self.second) {
            goes_on |= nest.search.step(effort) != Progress::Done;
        }
        goes_on
    }

    /// The best nest so far: of equal ones the first.
    fn best(&self) -> &Nest {
        let second = self.second.as_ref().filter(|second| second.search.net() < self.first.search.net());
        second.unwrap_or(&self.first)
    }

    /// What the best nest so far takes. Parts that interlock count as their common rectangle.
    pub fn figures(&self) -> Figures {
        let best = self.best();
        best.search.best().figures(&best.problem)
    }

    /// No nest has fewer sheets, offcuts counted as sheets, however its parts interlock.
    pub const fn fewest(&self) -> u32 {
        self.fewest
    }

    /// The sheets of the best nest so far, counted on from those of other lots.
    pub fn sheets<'a>(&self, lot: &Lot<'a>, before: u32) -> Vec<Sheet<'a>> {
        let Nest { laid, search, .. } = self.best();
        let Packing { sheets } = search.best();
        let made = (before + 1..).zip(&sheets).filter_map(|(number, sheet)| {
            let origin = self.formats.get(usize::try_from(sheet.format).ok()?)?;
            let placed = sheet.parts.iter().flat_map(|placed| {
                let laid = usize::try_from(placed.item).ok().and_then(|item| laid.get(item));
                laid.into_iter().flat_map(|laid| origin.placed(lot, laid, [placed.x, placed.y]))
            });
            let kept = sheet.offcuts.iter().map(|kept| Rectangle {
                from: origin.point(kept.x, kept.y),
                to: origin.point(kept.x + kept.width, kept.y + kept.height),
            });
            let (length, width) = origin.sides();
            Some(Sheet {
                number,
                stock: origin.stock.clone(),
                length,
                width,
                grain: origin.grain,
                uncoated: origin.measured.unwrap_or_else(|| lot.board.thickness()),
                is_measured: origin.measured.is_some(),
                placed: placed.collect(),
                kept: kept.collect(),
            })
        });
        made.collect()
    }
}

/// All searches begin alike.
const SEED: u64 = 1;

impl Nest {
    /// Rectangles on the sheets of a problem.
    fn of(laid: Vec<Laid>, problem: Problem, range: &Range) -> Result<Self, NoRoom> {
        let items = laid.iter().map(|Laid { size: [width, height], .. }| Item {
            width: *width,
            height: *height,
            turns: false,
            count: 1,
        });
        let problem = Problem { items: items.collect(), ..problem };
        let search = Search::new(&problem, &nesting::worth(range), SEED)?;
        Ok(Self { laid, problem, search })
    }
}

/// The largest rectangle that a part is sure to fill: no notch cuts into it, and its holes take no other part.
fn solid(part: &Part<'_>) -> Grained {
    let panel = part.panel;
    let cut_in = |wanted: Edge| {
        let depths = panel.features.iter().filter_map(|feature| match *feature {
            Feature::Notch { edge, depth, .. } if edge == wanted => Some(depth),
            _ => None,
        });
        depths.fold(Length::ZERO, Length::max)
    };
    // Something is always there.
    let left = |side: Length, cut_in: Length| (side - cut_in).max(Length::mm(0.01));
    let u = left(panel.width, cut_in(Edge::Left) + cut_in(Edge::Right));
    let v = left(panel.height, cut_in(Edge::Bottom) + cut_in(Edge::Top));
    match panel.grain {
        GrainAxis::AlongU => Grained { along: u, across: v },
        GrainAxis::AlongV => Grained { along: v, across: u },
    }
}

impl Origin {
    /// The parts of a rectangle that lies so far along and across the grain.
    fn placed<'a>(&self, lot: &Lot<'a>, laid: &Laid, [along, across]: [i64; 2]) -> Vec<Placed<'a>> {
        let placed = |member: &Member| {
            let part: Part<'a> = *lot.parts.get(member.part)?;
            let [x, y] = member.at;
            if self.grain == Grain::Length {
                return Some(Placed { part, turn: member.turn, at: self.point(along + x, across + y) });
            }
            // All is turned by a quarter: what lay high across the grain lies to the left.
            let [_, high] = laid.size;
            let left = nesting::length(across + high - y) - part.along_and_across().1;
            let at = Point::new(left, nesting::length(along + x));
            Some(Placed { part, turn: member.turn.and(Quarters::One), at })
        };
        laid.members.iter().filter_map(placed).collect()
    }

    /// Its sides along the sheet's length and across it.
    const fn sides(&self) -> (Length, Length) {
        match self.grain {
            Grain::Length => (self.size.along, self.size.across),
            Grain::Width => (self.size.across, self.size.along),
        }
    }

    /// A place that is so far along and across the grain.
    fn point(&self, along: i64, across: i64) -> Point {
        let (along, across) = (nesting::length(along), nesting::length(across));
        match self.grain {
            Grain::Length => Point::new(along, across),
            Grain::Width => Point::new(across, along),
        }
    }
}

/// What an offcut in the rack is worth, in minor units: of the cheapest sheet's price by its area.
fn offcut_cost(range: &Range, lot: &Lot<'_>, offcut: &StoredOffcut) -> i64 {
    let per_m2 = lot.board.cheapest().map_or(0.0, RangeSheet::per_m2);
    let area = range.offcuts.worth(offcut.size.along * offcut.size.across);
    Money::to_minor(per_m2 * area.in_m2()).in_minor()
}

#[cfg(test)]
mod tests;

//! The cut pack: what a workshop makes from orders. Each order is checked anew, parts of all orders are cut from shared
//! sheets, and everything that the machine and the hands need is written: drawings, lists, and the paper.
//!
//! The bytes of a pack follow from its orders, ranges and settings alone: natively and in the browser, today and later.

use slotwright_core::business::promise::Backlog;
use slotwright_core::units::day::Day;
use slotwright_core::units::quantity::Length;
use slotwright_nest::packing::Figures;
use slotwright_nest::problem::NoRoom;

mod cut_by;
pub mod draw;
pub mod dxf;
mod earlier;
mod file;
pub mod list;
pub mod lot;
pub mod manifest;
mod name;
pub mod nest;
mod one_part;
pub mod orders;
pub mod packages;
pub mod papers;
pub mod path;
pub mod sheet;
mod told;
pub mod work;
mod writing;

pub use cut_by::CutBy;
pub use earlier::{Earlier, EarlierOrder};
pub use file::{Kind, PackFile};
pub use one_part::OnePart;
pub use orders::{OrderRead, Orders, Reason, SetAside, TakenOrder};
pub use writing::Writing;

use lot::{Lot, Part, lots};
use nest::{InStock, LotNest, SheetsInStock, StoredOffcut};
use papers::{Papers, Remark};
use path::Program;
use sheet::Sheet;

/// Which version of this program makes packs.
pub const PROGRAM: &str = env!("CARGO_PKG_VERSION");
/// How long nests are looked for unless somebody says otherwise, in steps of the search for each of a lot's two nests, with
/// pairs and without: about a second or two for fifty units.
pub const EFFORT: u32 = 100_000;
/// And at most.
pub const EFFORT_MOST: u32 = 1_000_000_000;
/// So much at once; then the next lot has its turn, and whoever waits can be heard.
pub const EFFORT_SLICE: u32 = 10_000;

/// What a workshop may set for a pack, beside its range.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Settings {
    /// The offcuts in the rack.
    pub rack: Vec<StoredOffcut>,
    /// How many sheets there are of formats that are short.
    pub bounds: Vec<SheetsInStock>,
    /// On which paper documents and labels are.
    pub papers: Papers,
    /// The day after which work begins; that of the last order if nobody says.
    pub today: Option<Day>,
    /// What is booked then.
    pub backlog: Backlog,
}

/// Why there is no pack.
#[derive(Clone, Debug, PartialEq)]
pub enum NoPack {
    /// No order is left that could be cut.
    NoOrder,
    /// No order has that part.
    NoPart(OnePart),
    /// A part fits none of the sheets that there are, with this cutter and this allowance.
    TooLarge {
        /// Its mark.
        mark: String,
        /// Its board: its name and its key.
        board: String,
    },
    /// There are too few sheets.
    TooFewSheets {
        /// Of which board: its name and its key.
        board: String,
        /// So many parts were left over.
        left: u32,
    },
    /// Something is cut into a part that is too narrow for the cutter and its reliefs.
    Cutter {
        /// The part's mark.
        mark: String,
        /// The widest cutter that it takes.
        most: Length,
    },
    /// Sizes or prices are beyond what can be nested.
    Bounds,
}

/// A lot with its sheets and what the machine does with each.
#[derive(Clone, Debug)]
pub struct LotSheets<'a> {
    /// The lot.
    pub lot: Lot<'a>,
    /// Its sheets.
    pub sheets: Vec<(Sheet<'a>, Program)>,
    /// What they take, by the blanks of their parts, those that interlock as one.
    pub figures: Figures,
    /// No nest has fewer sheets.
    pub fewest: u32,
}

/// Everything that is cut, before it is written.
#[derive(Debug)]
pub struct Pack<'a> {
    /// The orders.
    pub orders: &'a Orders<'a>,
    /// The settings.
    pub settings: &'a Settings,
    /// The part that is cut again, if it is only that.
    pub one: Option<OnePart>,
    /// The lots.
    pub lots: Vec<LotSheets<'a>>,
    /// How long nests were looked for, in steps of the search: not in seconds, so that the same pack comes out again.
    pub effort: u32,
    /// What is cut: by this offcuts and labels name it.
    pub name: String,
    /// What else its papers follow from.
    pub plan: String,
}

/// A pack whose nests may still get better.
#[derive(Debug)]
pub struct Nesting<'a> {
    orders: &'a Orders<'a>,
    settings: &'a Settings,
    one: Option<OnePart>,
    lots: Vec<(Lot<'a>, LotNest)>,
    /// How long it was looked for, in steps for each nest of each lot.
    effort: u32,
    /// Whether no nest can get better.
    done: bool,
}

impl<'a> Nesting<'a> {
    /// Nests the parts of all orders, or one part alone.
    ///
    /// # Errors
    ///
    /// There is nothing to cut, or it does not go on the sheets that there are.
    pub fn begin(orders: &'a Orders<'a>, settings: &'a Settings, one: Option<OnePart>) -> Result<Self, NoPack> {
        if orders.taken.is_empty() {
            return Err(NoPack::NoOrder);
        }
        let mut lots = lots(&orders.taken);
        if let Some(wanted) = &one {
            for lot in &mut lots {
                lot.parts.retain(|part| wanted.is(part, orders));
            }
            lots.retain(|lot| !lot.parts.is_empty());
            if lots.is_empty() {
                return Err(NoPack::NoPart(wanted.clone()));
            }
        }
        for lot in &lots {
            if let Some((part, most)) = lot.too_narrow() {
                return Err(NoPack::Cutter { mark: part.mark(), most });
            }
        }
        let mut stock = InStock { rack: settings.rack.clone(), bounds: settings.bounds.clone() };
        let nest = |lot: Lot<'a>| {
            let nest = LotNest::of(&lot, &mut stock).map_err(|none| NoPack::of(none, &lot))?;
            Ok((lot, nest))
        };
        let lots = lots.into_iter().map(nest).collect::<Result<Vec<_>, NoPack>>()?;
        Ok(Self { orders, settings, one, lots, effort: 0, done: false })
    }

    /// How many lots there are.
    pub fn count(&self) -> usize {
        self.lots.len()
    }

    /// How many parts are cut.
    pub fn count_of_parts(&self) -> usize {
        self.lots.iter().map(|(lot, _)| lot.parts.len()).sum()
    }

    /// Looks on with a slice of what is left of so much effort for each lot; whether there is more to do. Where nothing
    /// can get better, all of it counts as spent: the same effort, the same pack, however it was sliced.
    pub fn spend(&mut self, effort: u32, slice: u32) -> bool {
        let left = effort.saturating_sub(self.effort);
        if left == 0 {
            return false;
        }
        if !self.step(left.min(slice)) {
            self.effort = effort;
        }
        self.effort < effort
    }

    /// Whether no nest can get better.
    pub const fn is_done(&self) -> bool {
        self.done
    }

    /// How long it was looked for by now.
    pub const fn effort(&self) -> u32 {
        self.effort
    }

    /// Looks on for better nests, with so much effort for each lot; whether any may still get better.
    pub fn step(&mut self, effort: u32) -> bool {
        self.effort = self.effort.saturating_add(effort);
        let mut goes_on = false;
        for (_, nest) in &mut self.lots {
            goes_on |= nest.step(effort);
        }
        self.done = !goes_on;
        goes_on
    }

    /// What all sheets take.
    pub fn figures(&self) -> Vec<Figures> {
        self.lots.iter().map(|(_, nest)| nest.figures()).collect()
    }

    /// What they cost, less what is kept of them is worth, in minor units.
    pub fn net(&self) -> i64 {
        self.lots.iter().map(|(_, nest)| nest.figures().net()).fold(0, i64::saturating_add)
    }

    /// The pack as it is nested by now.
    pub fn pack(&self) -> Pack<'a> {
        let mut before = 0;
        let lots = self.lots.iter().map(|(lot, nest)| {
            let sheets = nest.sheets(lot, before);
            before += u32::try_from(sheets.len()).unwrap_or(u32::MAX);
            let with_program = |sheet: Sheet<'a>| {
                let program = Program::of(lot, &sheet);
                (sheet, program)
            };
            let sheets = sheets.into_iter().map(with_program).collect();
            LotSheets { lot: lot.clone(), sheets, figures: nest.figures(), fewest: nest.fewest() }
        });
        let lots: Vec<LotSheets<'a>> = lots.collect();
        let (orders, settings, one, effort) = (self.orders, self.settings, self.one.clone(), self.effort);
        let name = name::cut(orders, settings, one.as_ref(), &lots, effort);
        let plan = name::plan(&name, settings);
        Pack { orders, settings, one, lots, effort, name, plan }
    }
}

impl LotSheets<'_> {
    /// The share of its sheets that ends up in parts.
    pub fn used_share(&self) -> f64 {
        let used: f64 = self.sheets.iter().map(|(sheet, _)| sheet.used().in_m2()).sum();
        let area: f64 = self.sheets.iter().map(|(sheet, _)| sheet.area().in_m2()).sum();
        used / area
    }
}

impl NoPack {
    fn of(none: NoRoom, lot: &Lot<'_>) -> Self {
        let board = format!("{} ({})", lot.board.name, lot.board.key);
        match none {
            NoRoom::Bounds => Self::Bounds,
            NoRoom::Sheets { left } => Self::TooFewSheets { board, left },
            NoRoom::Item { item } => {
                let part = usize::try_from(item).ok().and_then(|item| lot.parts.get(item));
                Self::TooLarge { mark: part.map(Part::mark).unwrap_or_default(), board }
            }
        }
    }
}

impl<'a> Pack<'a> {
    /// What stands on its papers and drawings, to tell which of them belong together: `3f2a81c0-9b1c`.
    pub fn full_name(&self) -> String {
        format!("{}-{}", self.name, self.plan)
    }

    /// All sheets in their order, each with its lot and its program.
    pub fn sheets(&self) -> impl Iterator<Item = (&Lot<'a>, &Sheet<'a>, &Program)> {
        self.lots.iter().flat_map(|lot| lot.sheets.iter().map(move |(sheet, program)| (&lot.lot, sheet, program)))
    }

    /// The offcuts in the rack when all is cut.
    pub fn rack_after(&self) -> Vec<StoredOffcut> {
        list::rack_after(&self.settings.rack, &self.lots, &self.name)
    }

    /// All files, the manifest last, and what on the paper is not as it was given.
    pub fn files(&self) -> (Vec<PackFile>, Vec<Remark>) {
        let mut writing = self.writing();
        while writing.step() {}
        writing.done()
    }

    /// Begins to write the files.
    pub fn writing(&self) -> Writing<'_, 'a> {
        Writing::begin(self)
    }
}

#[cfg(test)]
mod testing;
#[cfg(test)]
mod tests;

//! A good packing at once.
//!
//! Few parts: every mix of formats that may cost less than what is known is tried in several orders, the largest parts
//! first, then in orders by chance that are the same for the same parts. Many parts: sheets are filled one after another,
//! each as cheaply for its area as any format in any order does it, until few parts are left.

use crate::fill::Put;
use crate::order::{any_rule, arrange};
use crate::packing::Packing;
use crate::pieces::Pieces;
use crate::plan::{Load, Plan, plans};
use crate::problem::{NoRoom, Problem, Worth};
use crate::random::Random;
use crate::sort::sorted;
use crate::space::{RULES, Rule};
use crate::table::{Laid, Table, net};

/// A good packing at once; the same parts, sheets and worth always give the same.
///
/// # Errors
///
/// See [`NoRoom`].
pub fn quick(problem: &Problem, worth: &Worth) -> Result<Packing, NoRoom> {
    let pieces = Pieces::of(problem, worth)?;
    let sheets = pack(&pieces)?;
    Ok(Packing::of(problem, &pieces, &sheets))
}

/// What a packing takes, without where parts lie.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Quote {
    /// How many sheets.
    pub sheets: u32,
    /// What they cost.
    pub cost: i64,
    /// What their offcuts are worth.
    pub worth: i64,
}

impl Quote {
    /// The cost of the sheets less the worth of the offcuts.
    pub const fn net(&self) -> i64 {
        self.cost - self.worth
    }
}

/// What the packing of [`quick`] takes: for whoever asks for the price alone, at fewer bytes.
///
/// # Errors
///
/// See [`NoRoom`].
pub fn quote(problem: &Problem, worth: &Worth) -> Result<Quote, NoRoom> {
    let pieces = Pieces::of(problem, worth)?;
    let mut quote = Quote::default();
    for sheet in pack(&pieces)? {
        let cost = pieces.boards.get(sheet.board as usize).map_or(0, |board| board.cost);
        quote.sheets += 1;
        quote.cost += cost;
        quote.worth += cost - sheet.net;
    }
    Ok(quote)
}

/// How parts are put in order, the largest first.
#[derive(Clone, Copy, Debug)]
enum By {
    Area,
    Side,
    Width,
    Height,
    Border,
}

const ORDERS: [By; 5] = [By::Area, By::Side, By::Width, By::Height, By::Border];

/// With more parts than this sheets are filled in two orders, by these rules.
const MANY: usize = 400;
const MANY_RULES: &[Rule] = &[Rule::Left, Rule::Far];

/// As many parts are packed on mixes of formats, on as many sheets, and so many mixes are tried.
const FEW: usize = 60;
const SHEETS: usize = 6;
const PLANS: usize = 24;

/// So many parts are put down at most once a packing of few parts is known: under a millisecond natively.
const EFFORT: usize = 7000;
/// So many of them in orders by chance with each mix of formats.
const EFFORT_OF_PLAN: usize = 1500;

/// The parts that are left, in all orders.
struct Orders([Vec<u32>; ORDERS.len()]);

impl Orders {
    fn of(pieces: &Pieces) -> Self {
        Self(ORDERS.map(|by| {
            let size = |at: usize| {
                let Some(kind) = pieces.kinds.get(at) else { return 0 };
                let (width, height) = (i64::from(kind.width), i64::from(kind.height));
                -match by {
                    By::Area => kind.area(),
                    By::Side => width.max(height),
                    By::Width => width,
                    By::Height => height,
                    By::Border => width + height,
                }
            };
            let mut order = Vec::new();
            for number in sorted(pieces.kinds.len(), &size) {
                let count = pieces.counts.get(number as usize).map_or(0, |count| *count as usize);
                order.resize(order.len() + count, number);
            }
            order
        }))
    }

    /// The parts, the largest first.
    fn parts(&self) -> &[u32] {
        let [first, ..] = &self.0;
        first
    }

    /// Orders with the rules by which each is tried.
    fn ways(&self) -> impl Iterator<Item = (&[u32], Rule)> {
        let is_many = self.parts().len() > MANY;
        let orders = self.0.iter().take(if is_many { 2 } else { ORDERS.len() });
        let rules = if is_many { MANY_RULES } else { &RULES };
        orders.flat_map(move |order| rules.iter().map(move |rule| (order.as_slice(), *rule)))
    }

    /// Takes away parts that lie somewhere.
    fn remove(&mut self, puts: &[Put]) {
        for order in &mut self.0 {
            let mut gone: Vec<u32> = puts.iter().map(|put| put.kind).collect();
            order.retain(|part| {
                let at = gone.iter().position(|gone| gone == part);
                at.map(|at| gone.swap_remove(at)).is_none()
            });
        }
    }
}

/// # Errors
///
/// Sheets are too few.
pub(crate) fn pack(pieces: &Pieces) -> Result<Vec<Laid>, NoRoom> {
    let mut table = Table::default();
    let left: Vec<u32> = pieces.boards.iter().map(|board| board.most).collect();
    let orders = Orders::of(pieces);
    let few = settle(&mut table, pieces, &orders, &left);
    if let Some(few) = few {
        return Ok(few);
    }
    let equal = equal(&mut table, pieces, &orders, &left);
    match (one_by_one(&mut table, pieces, orders, left), equal) {
        (Ok(mixed), Some(equal)) if net(&equal) < net(&mixed) => Ok(equal),
        (Err(_), Some(equal)) => Ok(equal),
        (mixed, _) => mixed,
    }
}

/// Fills one sheet after another as cheaply as can be, until the rest is few parts.
///
/// # Errors
///
/// Sheets are too few.
fn one_by_one(table: &mut Table, pieces: &Pieces, mut orders: Orders, mut left: Vec<u32>) -> Result<Vec<Laid>, NoRoom> {
    let mut done: Vec<Laid> = Vec::new();
    while !orders.parts().is_empty() {
        if let Some(last) = settle(table, pieces, &orders, &left) {
            done.extend(last);
            break;
        }
        let Some(sheet) = cheapest(table, pieces, &orders, &left) else {
            return Err(NoRoom::Sheets { left: u32::try_from(orders.parts().len()).unwrap_or(u32::MAX) });
        };
        if let Some(left) = left.get_mut(sheet.board as usize) {
            *left -= 1;
        }
        orders.remove(&sheet.puts);
        done.push(sheet);
    }
    Ok(done)
}

/// The best packing on sheets of one format.
fn equal(table: &mut Table, pieces: &Pieces, orders: &Orders, left: &[u32]) -> Option<Vec<Laid>> {
    let mut best: Option<(i64, Vec<Laid>)> = None;
    for (order, rule) in orders.ways() {
        for (number, left) in (0_u32..).zip(left) {
            let sheets = vec![number; (*left as usize).min(order.len())];
            let is_whole = table.lay(pieces, &sheets, order, rule) == 0;
            let net = net(table.sheets());
            if is_whole && best.as_ref().is_none_or(|(known, _)| net < *known) {
                best = Some((net, table.sheets().to_vec()));
            }
        }
    }
    best.map(|(_, sheets)| sheets)
}

/// The best packing of few parts, if one is found.
fn settle(table: &mut Table, pieces: &Pieces, orders: &Orders, left: &[u32]) -> Option<Vec<Laid>> {
    let parts = orders.parts();
    if parts.len() > FEW {
        return None;
    }
    let (mut order, mut keys) = (parts.to_vec(), Vec::new());
    let is_one_kind = parts.first() == parts.last();
    let mut known = Known { net: i64::MAX, sheets: Vec::new(), effort: 0 };
    for mut plan in plans(pieces, Load::of(pieces, parts), left, i64::MAX, PLANS, SHEETS) {
        if known.is_settled(&plan) {
            break;
        }
        let is_mixed = plan.boards.first() != plan.boards.last();
        for _ in 0..=u32::from(is_mixed) {
            for (order, rule) in orders.ways() {
                known.lay(table, pieces, &plan, order, rule);
                if known.is_settled(&plan) {
                    return Some(known.sheets);
                }
            }
            plan.boards.reverse();
        }
        // The same numbers for every plan: what is found does not depend on what was tried before.
        let mut random = Random::new(1);
        let until = known.effort + EFFORT_OF_PLAN;
        while known.effort < until && !known.is_settled(&plan) {
            let is_known = is_one_kind || arrange(&mut order, &mut keys, &pieces.kinds, &mut random);
            let rule = any_rule(&mut random);
            if is_known {
                // So they were laid by every rule before.
                known.effort += order.len();
            } else {
                known.lay(table, pieces, &plan, &order, rule);
            }
            plan.boards.reverse();
        }
    }
    (known.net < i64::MAX).then_some(known.sheets)
}

/// The best packing that is known so far.
struct Known {
    net: i64,
    sheets: Vec<Laid>,
    effort: usize,
}

impl Known {
    /// Whether sheets cannot give a better one, or enough was tried.
    fn is_settled(&self, plan: &Plan) -> bool {
        plan.bound >= self.net || self.effort > EFFORT && self.net < i64::MAX
    }

    /// Tries an order.
    fn lay(&mut self, table: &mut Table, pieces: &Pieces, plan: &Plan, order: &[u32], rule: Rule) {
        self.effort += order.len();
        let over = table.lay(pieces, &plan.boards, order, rule);
        let net = net(table.sheets());
        if over == 0 && net < self.net {
            self.net = net;
            self.sheets.clear();
            self.sheets.extend_from_slice(table.sheets());
        }
    }
}

/// The one sheet that takes parts at the least cost for their area.
fn cheapest(table: &mut Table, pieces: &Pieces, orders: &Orders, left: &[u32]) -> Option<Laid> {
    let mut best: Option<(f64, Laid)> = None;
    for (order, rule) in orders.ways() {
        for (number, _) in (0_u32..).zip(left).filter(|(_, left)| **left > 0) {
            table.lay(pieces, &[number], order, rule);
            let Some(sheet) = table.sheets().first() else { continue };
            let area = pieces.area_of(sheet.puts.iter().map(|put| put.kind));
            #[expect(clippy::cast_precision_loss, reason = "rounded the same everywhere")]
            let dear = sheet.net.max(0) as f64 / area as f64;
            if best.as_ref().is_none_or(|(known, _)| dear < *known) {
                best = Some((dear, sheet.clone()));
            }
        }
    }
    best.map(|(_, sheet)| sheet)
}

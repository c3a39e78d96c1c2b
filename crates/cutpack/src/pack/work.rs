//! What hands and machine do for a lot, and for all orders together by stage and day.

use std::collections::BTreeSet;

use slotwright_core::business::bill::Bill;
use slotwright_core::business::job::{Job, Minutes};
use slotwright_core::business::material::Material;
use slotwright_core::business::promise::{Backlog, Promise, promise};
use slotwright_core::cabinet::layout::Picked;
use slotwright_core::input::seal::Digest;
use slotwright_core::range::{Key, Range, Stage, Work};
use slotwright_core::units::day::Day;
use slotwright_core::units::quantity::Area;
use slotwright_core::words;
use slotwright_core::words::paper::Message;

use super::sheet::{Sheet, Stock};
use super::{LotSheets, Pack, TakenOrder};

/// A lot as work: its parts, and the sheets that have to be coated for it. Joints are tried unit by unit.
pub fn lot_job<'a>(LotSheets { lot, sheets, .. }: &LotSheets<'a>) -> Job<'a> {
    let mut bill = Bill::default();
    for part in &lot.parts {
        bill.add(part.panel, part.mass);
    }
    // Offcuts are coated already.
    let bought = || sheets.iter().filter(|(sheet, _)| matches!(sheet.stock, Stock::Bought(_)));
    let counted: Area = bought().map(|(sheet, _)| sheet.area()).sum();
    let loaded = sheets.iter().map(|_| 1.0).sum();
    let board = lot.board.key.clone();
    let material = Material { board, sheets: loaded, counted, cost: 0.0, least_used: None };
    Job { range: lot.range, finish: lot.finish, bill, materials: vec![material] }
}

/// An order as work, by itself.
pub fn order_job<'a>(order: &'a TakenOrder<'a>) -> Option<Job<'a>> {
    let picked = Picked::of(order.cut.range, order.cut.choice)?;
    let built = order.cut.built.as_ref()?;
    Some(Job::on(&built.cut, picked, built.materials.clone()))
}

/// Reads how long work takes that is booked at a stage, in minutes.
///
/// # Errors
///
/// Says what is wrong with it.
pub fn read_time(text: &str) -> Result<u32, String> {
    words::entry::minutes(text).map_err(|refused| words::pack::Message::TimeWanted(text, refused).text())
}

/// All orders of a pack, made in turn.
#[derive(Clone, Debug)]
pub struct Schedule<'a> {
    /// The day after which work begins: as it was set, but not before the last on which one of these orders was made.
    pub from: Day,
    /// The day that was set, where that is before the last of the orders: nothing is made before it was ordered.
    pub set_before: Option<Day>,
    /// Whether other work is booked at their stages by then.
    pub is_booked: bool,
    /// What each range's stages have to do.
    pub loads: Vec<RangeLoad<'a>>,
    /// When each order would arrive, those first that were promised first.
    pub arrivals: Vec<Arrival>,
}

/// The stages of a range with the work of a pack.
#[derive(Clone, Debug)]
pub struct RangeLoad<'a> {
    /// The range.
    pub range: &'a Range,
    /// Its digest: two versions of a range have the same name.
    pub digest: Digest,
    /// Its stages in their order.
    pub stages: Vec<StageLoad<'a>>,
}

/// A stage with the work of a pack.
#[derive(Clone, Copy, Debug)]
pub struct StageLoad<'a> {
    /// The stage.
    pub stage: &'a Stage,
    /// Minutes of the pack: sheets are shared, hands are not.
    pub minutes: f64,
}

/// When an order would arrive if all orders of the pack are made in turn, once what is booked is done.
#[derive(Clone, Debug, PartialEq)]
pub struct Arrival {
    /// The number of the order.
    pub order: u32,
    /// The day that was promised.
    pub promised: Day,
    /// What it takes: a sheet that orders share counts for the first of them.
    pub minutes: Minutes,
    /// The days that come out; none if the calendar has no such days.
    pub planned: Option<Promise>,
}

impl Schedule<'_> {
    /// That work begins later than it was set to, in words.
    pub fn told_before(&self) -> Option<String> {
        let from = words::dated(self.from);
        self.set_before.map(|set| Message::SetBefore { set: &words::dated(set), from: &from }.text())
    }
}

impl Arrival {
    /// Whether it would be late.
    pub fn is_late(&self) -> bool {
        self.planned.as_ref().is_none_or(|planned| planned.arrives > self.promised)
    }
}

impl StageLoad<'_> {
    /// Whole working days that the stage takes alone.
    pub fn days(&self) -> f64 {
        libm::ceil(self.minutes / f64::from(self.stage.minutes_per_day))
    }
}

/// The schedule of a pack; none where there are no orders. Those of all ranges wait for each other, since stages of one key are
/// the same people.
pub fn schedule<'a>(pack: &Pack<'a>) -> Option<Schedule<'a>> {
    let mut orders: Vec<&TakenOrder<'a>> = pack.orders.taken.iter().collect();
    orders.sort_by_key(|order| (order.spec.promised.arrives_on, order.number));
    let last = orders.iter().map(|order| order.spec.ordered_on).max()?;
    let from = pack.settings.today.map_or(last, |today| today.max(last));
    let set_before = pack.settings.today.filter(|today| *today < last);
    let mut booked = pack.settings.backlog.clone();
    let (mut loads, mut arrivals, mut is_booked): (Vec<RangeLoad<'a>>, _, _) = (Vec::new(), Vec::new(), false);
    let mut made = BTreeSet::new();
    for order in orders {
        let (range, digest) = (order.cut.range, order.spec.range.digest);
        if !loads.iter().any(|load| load.digest == digest) {
            is_booked |= of_stages(&pack.settings.backlog, range).minutes.values().any(|minutes| *minutes > 0);
            loads.push(RangeLoad::of(pack, digest, range));
        }
        let Some(job) = order_job(order) else { continue };
        let job = Job { materials: first_needed(pack, order.number, &mut made), ..job };
        let (minutes, promised) = (job.minutes(), order.spec.promised.arrives_on);
        let planned = promise(&job, from, &of_stages(&booked, range)).ok();
        for stage in &range.stages {
            book(&mut booked, &stage.key, minutes.of(stage.work));
        }
        arrivals.push(Arrival { order: order.number, promised, minutes, planned });
    }
    Some(Schedule { from, set_before, is_booked, loads, arrivals })
}

/// The sheets that an order needs and that no order before it had made; offcuts are coated already.
fn first_needed(pack: &Pack<'_>, order: u32, made: &mut BTreeSet<u32>) -> Vec<Material> {
    let mut needed: Vec<Material> = Vec::new();
    for LotSheets { lot, sheets, .. } in &pack.lots {
        let of_order = sheets
            .iter()
            .map(|(sheet, _)| sheet)
            .filter(|sheet| sheet.placed.iter().any(|placed| placed.part.order == order));
        let first: Vec<&Sheet<'_>> = of_order.filter(|sheet| made.insert(sheet.number)).collect();
        let bought = first.iter().filter(|sheet| matches!(sheet.stock, Stock::Bought(_)));
        let counted = bought.map(|sheet| sheet.area()).sum();
        let loaded = first.iter().map(|_| 1.0).sum();
        needed.push(Material { board: lot.board.key.clone(), sheets: loaded, counted, cost: 0.0, least_used: None });
    }
    needed
}

impl<'a> RangeLoad<'a> {
    fn of(pack: &Pack<'a>, digest: Digest, range: &'a Range) -> Self {
        let mut minutes: Vec<(Work, f64)> = Vec::new();
        for lot in pack.lots.iter().filter(|lot| lot.lot.digest == digest) {
            let lot = lot_job(lot).minutes();
            minutes.extend([Work::Sheets, Work::Cut].map(|work| (work, lot.of(work))));
        }
        let orders = pack.orders.taken.iter().filter(|order| order.spec.range.digest == digest);
        for job in orders.filter_map(order_job) {
            let of_order = job.minutes();
            minutes.extend([Work::Edges, Work::Pack].map(|work| (work, of_order.of(work))));
        }
        let stages = range.stages.iter().map(|stage| {
            let minutes = minutes.iter().filter(|(work, _)| *work == stage.work).map(|(_, minutes)| minutes).sum();
            StageLoad { stage, minutes }
        });
        Self { range, digest, stages: stages.collect() }
    }

    /// The name of the range where the pack has several.
    pub fn name(&self, schedule: &Schedule<'_>) -> Option<String> {
        (schedule.loads.len() > 1).then(|| format!("{} @{}", self.range.name, self.digest.short()))
    }
}

/// What of a backlog is booked at the stages of a range.
fn of_stages(backlog: &Backlog, range: &Range) -> Backlog {
    let mut booked = backlog.clone();
    booked.minutes.retain(|key, _| range.stages.iter().any(|stage| stage.key == *key));
    booked
}

/// Books whole minutes, rounded up.
fn book(backlog: &mut Backlog, stage: &Key, minutes: f64) {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole; `as` saturates")]
    let whole = libm::ceil(minutes) as u32;
    let booked = backlog.minutes.entry(stage.clone()).or_insert(0);
    *booked = booked.saturating_add(whole);
}

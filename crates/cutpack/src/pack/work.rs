//! What hands and machine do for a lot, and for all orders together by stage and day.

use slotwright_core::business::bill::Bill;
use slotwright_core::business::job::Job;
use slotwright_core::business::material::Material;
use slotwright_core::business::promise::{Backlog, Promise, promise};
use slotwright_core::cabinet::layout::Picked;
use slotwright_core::input::seal::Digest;
use slotwright_core::range::{Key, Range, Stage, Work};
use slotwright_core::units::day::Day;
use slotwright_core::units::quantity::Area;

use super::sheet::Stock;
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

/// All orders of one range, by stage.
#[derive(Clone, Debug)]
pub struct Schedule<'a> {
    /// The range.
    pub range: &'a Range,
    /// The day after which work begins: as it was set, or else the last on which one of these orders was made.
    pub from: Day,
    /// Whether other work is booked at its stages by then.
    pub is_booked: bool,
    /// The stages in their order.
    pub stages: Vec<StageLoad<'a>>,
    /// When each order would arrive, those first that were promised first.
    pub arrivals: Vec<Arrival>,
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
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Arrival {
    /// The number of the order.
    pub order: u32,
    /// The day that was promised.
    pub promised: Day,
    /// The days that come out; none if the calendar has no such days.
    pub planned: Option<Promise>,
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

/// The schedules of a pack, one for each range.
pub fn schedules<'a>(pack: &Pack<'a>) -> Vec<Schedule<'a>> {
    let mut ranges: Vec<(Digest, &'a Range)> = Vec::new();
    for order in &pack.orders.taken {
        if !ranges.iter().any(|(known, _)| *known == order.spec.range.digest) {
            ranges.push((order.spec.range.digest, order.cut.range));
        }
    }
    ranges.into_iter().filter_map(|(digest, range)| schedule(pack, digest, range)).collect()
}

fn schedule<'a>(pack: &Pack<'a>, digest: Digest, range: &'a Range) -> Option<Schedule<'a>> {
    let mut orders: Vec<&TakenOrder<'a>> =
        pack.orders.taken.iter().filter(|order| order.spec.range.digest == digest).collect();
    orders.sort_by_key(|order| (order.spec.promised.arrives_on, order.number));
    let last = orders.iter().map(|order| order.spec.ordered_on).max()?;
    // Nothing is made before it was ordered.
    let from = pack.settings.today.map_or(last, |today| today.max(last));
    let lots = pack.lots.iter().filter(|lot| lot.lot.digest == digest);
    let mut minutes: Vec<(Work, f64)> = Vec::new();
    for lot in lots {
        let lot = lot_job(lot).minutes();
        minutes.extend([Work::Sheets, Work::Cut].map(|work| (work, lot.of(work))));
    }
    let mut arrivals = Vec::new();
    let mut booked = pack.settings.backlog.clone();
    booked.minutes.retain(|key, _| range.stages.iter().any(|stage| stage.key == *key));
    let is_booked = booked.minutes.values().any(|minutes| *minutes > 0);
    for order in orders {
        let Some(job) = order_job(order) else { continue };
        let of_order = job.minutes();
        minutes.extend([Work::Edges, Work::Pack].map(|work| (work, of_order.of(work))));
        let planned = promise(&job, from, &booked).ok();
        arrivals.push(Arrival { order: order.number, promised: order.spec.promised.arrives_on, planned });
        for stage in &range.stages {
            book(&mut booked, &stage.key, of_order.of(stage.work));
        }
    }
    let stages = range.stages.iter().map(|stage| {
        let minutes = minutes.iter().filter(|(work, _)| *work == stage.work).map(|(_, minutes)| minutes).sum();
        StageLoad { stage, minutes }
    });
    Some(Schedule { range, from, is_booked, stages: stages.collect(), arrivals })
}

/// Books whole minutes, rounded up.
fn book(backlog: &mut Backlog, stage: &Key, minutes: f64) {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole; `as` saturates")]
    let whole = libm::ceil(minutes) as u32;
    let booked = backlog.minutes.entry(stage.clone()).or_insert(0);
    *booked = booked.saturating_add(whole);
}

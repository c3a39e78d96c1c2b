//! What there is to make: sheets and what they cost, finish, packages, minutes by stage, and which promise breaks.

use core::fmt::Write;

use slotwright_core::range::Finish;
use slotwright_core::units::money::Money;
use slotwright_core::units::quantity::Mass;
use slotwright_core::words;
use slotwright_core::words::paper;
use slotwright_core::words::workshop::{Label, Message};
use slotwright_cutpack::pack::nest::StoredOffcut;
use slotwright_cutpack::pack::packages::packages;
use slotwright_cutpack::pack::sheet::Stock;
use slotwright_cutpack::pack::work::{RangeLoad, Schedule, lot_job, schedule};
use slotwright_cutpack::pack::{LotSheets, Pack};

use crate::html::{self, element, escaped, pair};
use crate::orders::sides;

/// All figures of a pack.
///
/// Where something that was typed cannot be read, nothing is said of promises: it may have been meant for them.
/// Its name is another one with every better nest: as long as one is looked for it is not said.
pub(crate) fn html(pack: &Pack<'_>, is_read: bool, looks: bool) -> String {
    let name = if looks { String::new() } else { pair(Label::Pack.text(), &pack.full_name()) };
    let mut html = format!("<dl class=\"figures\">{name}{}</dl>", totals(pack));
    // A part that is cut again is no order.
    if let Some(schedule) = schedule(pack).filter(|_| is_read && pack.one.is_none()) {
        html.push_str(&promises(&schedule));
        html.push_str(&stages(&schedule));
    }
    let _ = write!(html, "<h3>{}</h3><dl class=\"figures\">{}</dl>", Label::Finish.text(), litres(pack));
    html + &offcuts(pack)
}

fn totals(pack: &Pack<'_>) -> String {
    let parts: usize = pack.lots.iter().map(|lot| lot.lot.parts.len()).sum();
    let area = |of: fn(&LotSheets<'_>) -> f64| -> f64 { pack.lots.iter().map(of).sum() };
    let whole = area(|lot| lot.sheets.iter().map(|(sheet, _)| sheet.area().in_m2()).sum());
    let used = area(|lot| lot.sheets.iter().map(|(sheet, _)| sheet.used().in_m2()).sum());
    let minutes: f64 = pack.sheets().map(|(_, _, program)| program.minutes).sum();
    let metres: f64 = pack.sheets().map(|(_, _, program)| program.length.in_m()).sum();
    let metres = paper::Message::Metres(&words::decimal(metres, 0)).text();
    [
        pair(Label::Sheets.text(), &Message::SheetsFor(pack.sheets().count(), parts).text()),
        pair(Label::InParts.text(), &Message::Percent(&words::decimal(used / whole * 100.0, 1)).text()),
        pair(Label::Cost.text(), &cost(pack)),
        rack(pack),
        pair(Label::Machine.text(), &Message::Machine(&time(minutes), &metres).text()),
        if pack.one.is_none() { pair(Label::Packages.text(), &packed(pack)) } else { String::new() },
    ]
    .concat()
}

/// How many offcuts of the rack are cut, if there are any.
fn rack(pack: &Pack<'_>) -> String {
    let there = pack.settings.rack.len();
    let used = pack.sheets().filter(|(_, sheet, _)| matches!(sheet.stock, Stock::Offcut(_))).count();
    let serves = |offcut: &&StoredOffcut| pack.lots.iter().any(|lot| lot.lot.takes(offcut));
    let fit = pack.settings.rack.iter().filter(serves).count();
    if there == 0 {
        String::new()
    } else {
        pair(Label::FromRack.text(), &Message::RackUsed { used, fit, there }.text())
    }
}

/// What all sheets cost less what is kept of them, each currency by itself.
fn cost(pack: &Pack<'_>) -> String {
    let mut sums: Vec<(&str, i64)> = Vec::new();
    for lot in &pack.lots {
        let currency = lot.lot.range.currency.as_str();
        match sums.iter_mut().find(|(known, _)| *known == currency) {
            Some((_, sum)) => *sum = sum.saturating_add(lot.figures.net()),
            None => sums.push((currency, lot.figures.net())),
        }
    }
    let all: Vec<String> = sums.into_iter().map(|(currency, sum)| words::money(Money::minor(sum), currency)).collect();
    all.join(", ")
}

fn packed(pack: &Pack<'_>) -> String {
    let masses: Vec<Mass> = pack
        .orders
        .taken
        .iter()
        .filter_map(packages)
        .flat_map(|packed| packed.packages.iter().map(|package| package.mass).collect::<Vec<_>>())
        .collect();
    let least = masses.iter().copied().reduce(Mass::min).map(words::mass).unwrap_or_default();
    let most = masses.iter().copied().reduce(Mass::max).map(words::mass).unwrap_or_default();
    Message::Packages(masses.len(), &least, &most).text()
}

/// Minutes up to two hours, then hours, rounded up.
fn time(minutes: f64) -> String {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole; `as` saturates")]
    let whole = minutes.ceil() as u32;
    if whole < 120 {
        paper::Message::Minutes(&whole.to_string()).text()
    } else {
        paper::Message::Hours(whole / 60, whole % 60).text()
    }
}

fn litres(pack: &Pack<'_>) -> String {
    let mut sums: Vec<(&Finish, f64, f64)> = Vec::new();
    for lot in &pack.lots {
        let job = lot_job(lot);
        let (before, after) = (job.litres_before(), job.litres_after());
        match sums.iter_mut().find(|(finish, ..)| finish.name == lot.lot.finish.name) {
            Some((_, sum_before, sum_after)) => {
                *sum_before += before;
                *sum_after += after;
            }
            None => sums.push((lot.lot.finish, before, after)),
        }
    }
    let said = |litres: f64| paper::Message::Litres(&words::decimal(litres, 1)).text();
    let row = |(finish, before, after): (&Finish, f64, f64)| {
        pair(&finish.name, &Message::Litres(&said(before), &said(after)).text())
    };
    sums.into_iter().map(row).collect()
}

fn offcuts(pack: &Pack<'_>) -> String {
    let kept: Vec<String> = pack
        .sheets()
        .flat_map(|(_, sheet, _)| sheet.kept.iter().map(|piece| (piece.size(), sheet.number)))
        .map(|((long, wide), sheet)| element("li", Message::Kept(&sides(&[long, wide]), sheet).text()))
        .collect();
    let summary = Message::KeptCount(kept.len()).text();
    format!("<details><summary>{summary}</summary><ul class=\"kept-list\">{}</ul></details>", kept.concat())
}

fn stages(schedule: &Schedule<'_>) -> String {
    let tables = schedule.loads.iter().map(|load| stages_of(load, load.name(schedule)));
    format!("<h3>{}</h3>{}", Label::ByStage.text(), tables.collect::<String>())
}

fn stages_of(load: &RangeLoad<'_>, name: Option<String>) -> String {
    let rows: Vec<String> = load
        .stages
        .iter()
        .map(|load| {
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole; `as` saturates")]
            let days = Message::Days(load.days() as u32).text();
            format!(
                "<tr><th scope=\"row\">{}</th><td>{}</td><td>{days}</td></tr>",
                escaped(&load.stage.name),
                time(load.minutes)
            )
        })
        .collect();
    let name = name.map(|name| element("caption", escaped(&name))).unwrap_or_default();
    format!("<table class=\"stages\">{name}{}</table>", rows.concat())
}

fn promises(schedule: &Schedule<'_>) -> String {
    let day = |day| words::day(day, schedule.from);
    let late: String = schedule
        .arrivals
        .iter()
        .filter(|arrival| arrival.is_late())
        .map(|arrival| {
            let planned = arrival.planned.as_ref().map(|planned| day(planned.arrives));
            let planned = planned.unwrap_or_else(|| paper::Label::NoDay.text().into());
            element("li", escaped(&Message::Late(arrival.order, &planned, &day(arrival.promised)).text()))
        })
        .collect();
    let title = element("h3", Label::Promises.text());
    let before = schedule.told_before().map(|told| html::told("warn", &[told])).unwrap_or_default();
    let (all, from) = (late.is_empty(), day(schedule.from));
    let told = escaped(&Message::InTurn { all, from: &from, is_booked: schedule.is_booked }.text());
    if all {
        format!("{title}{before}<p class=\"tell good\">{told}</p>")
    } else {
        format!("{title}{before}<div class=\"tell stop\"><p>{told}</p><ul>{late}</ul></div>")
    }
}

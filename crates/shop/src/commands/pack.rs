//! `slotwright pack`: turns orders into a cut pack.

use std::path::Path;

use slotwright_core::business::promise::Backlog;
use slotwright_core::order::intake::KnownRange;
use slotwright_core::order::spec::BYTES_MOST;
use slotwright_core::units::money::Money;
use slotwright_core::words;
use slotwright_core::words::pack::{Label, Message};
use slotwright_core::words::tool;
use slotwright_cutpack::pack::list::read_offcuts;
use slotwright_cutpack::pack::lot::{Lot, Part};
use slotwright_cutpack::pack::papers::Papers;
use slotwright_cutpack::pack::work::schedule;
use slotwright_cutpack::pack::{
    CutBy, EFFORT_SLICE, LotSheets, Nesting, OrderRead, Orders, PROGRAM, Pack, SetAside, Settings,
};

use crate::args;
use crate::error::FileError;
use crate::nearest::meant;
use crate::output::{self, DIFFERS, GOOD};
use crate::{files, inputs, table};

mod again;

pub(super) fn run(asked: &args::Pack) -> Result<u8, FileError> {
    files::new_folder(&asked.out, asked.force)?;
    let earlier = asked.from.as_deref().map(again::read).transpose()?;
    let cut_by = again::cut_by(asked, earlier.as_ref());
    let known = known(asked, &cut_by)?;
    let mut read: Vec<OrderRead<'_>> =
        (1..).zip(&asked.files).map(|(number, path)| order(number, path, &known)).collect::<Result<_, FileError>>()?;
    if let Some(earlier) = &earlier {
        again::number(&mut read, earlier);
    }
    let orders = Orders::of(&read);
    let settings = settings(asked, &known, again::papers(asked, earlier.as_ref()))?;
    let mut nesting = match Nesting::begin(&orders, &settings, asked.part.clone()) {
        Ok(nesting) => nesting,
        Err(none) => {
            // Why each order was set aside is told as well.
            output::print(table::lines("", &aside(&orders)))?;
            return Err(FileError::NoPack(none));
        }
    };
    let shares = asked.effort.div_ceil(EFFORT_SLICE);
    let shares = usize::try_from(shares).unwrap_or(usize::MAX);
    let mut done = 0;
    while nesting.effort() < asked.effort {
        nesting.spend(asked.effort, EFFORT_SLICE);
        done += 1;
        output::step(done, shares);
    }
    let pack = nesting.pack();
    let (written, remarks) = pack.files();
    files::write_folder(&asked.out, written.iter().map(|file| (file.path.as_str(), &file.bytes)), asked.force)?;
    let again = earlier.map(|earlier| again::told(&earlier, &pack, &cut_by)).unwrap_or_default();
    let mut lines = report(&pack, again, &asked.out, written.len());
    lines.extend(remarks.iter().map(|remark| table::lines("", &[[Label::Mind.text().into(), remark.text()]]).concat()));
    output::print(lines)?;
    Ok(if orders.aside.is_empty() { GOOD } else { DIFFERS })
}

/// The ranges that orders may be of, as their parts are cut.
fn known(asked: &args::Pack, cut_by: &CutBy) -> Result<Vec<KnownRange>, FileError> {
    let mut ranges = Vec::new();
    if asked.ranges.is_empty() {
        ranges.push(inputs::range(None)?);
    }
    for path in &asked.ranges {
        ranges.push(inputs::range(Some(path))?);
    }
    asked.measured.check(&ranges.iter().collect::<Vec<_>>())?;
    Ok(ranges.into_iter().map(|range| cut_by.known(range)).collect())
}

fn order<'a>(number: u32, path: &Path, known: &'a [KnownRange]) -> Result<OrderRead<'a>, FileError> {
    let most = u64::try_from(BYTES_MOST).unwrap_or(u64::MAX);
    let shown = || path.display().to_string();
    let bytes = files::bytes(path, most).map_err(|fault| FileError::Read { path: shown(), fault })?;
    // What is written names no folder of this machine.
    let name = path.file_name().map_or_else(shown, |name| name.to_string_lossy().into_owned());
    Ok(OrderRead::of(number, name, &bytes, known))
}

fn settings(asked: &args::Pack, known: &[KnownRange], papers: Papers) -> Result<Settings, FileError> {
    for bound in &asked.sheets {
        let mut boards = known.iter().filter_map(|known| known.range().board(&bound.board));
        if !boards.any(|board| board.sheets.iter().any(|sheet| sheet.key == bound.sheet)) {
            let boards = known.iter().flat_map(|known| &known.range().boards);
            let formats: Vec<String> = boards
                .flat_map(|board| board.sheets.iter().map(|sheet| format!("{}/{}", board.key, sheet.key)))
                .collect();
            let format = format!("{}/{}", bound.board, bound.sheet);
            let meant = meant(&format, formats.iter().map(String::as_str));
            return Err(FileError::NoFormat { format, meant });
        }
    }
    let rack = match &asked.offcuts {
        None => Vec::new(),
        Some(path) => read_offcuts(files::text(path)?.as_bytes())
            .map_err(|wrong| FileError::Offcuts { path: path.display().to_string(), wrong })?,
    };
    let ranges: Vec<_> = known.iter().map(KnownRange::range).collect();
    let mut backlog = match &asked.backlog {
        Some(path) => inputs::backlog(path, &ranges)?,
        None => Backlog::default(),
    };
    inputs::known_stages("--booked ", &asked.booked.iter().cloned().collect(), &ranges)?;
    for (stage, minutes) in &asked.booked {
        let booked = backlog.minutes.entry(stage.clone()).or_insert(0);
        *booked = booked.saturating_add(*minutes);
    }
    Ok(Settings { rack, bounds: asked.sheets.clone(), papers, today: asked.today, backlog })
}

/// The orders that were set aside, each with its reason.
fn aside(orders: &Orders<'_>) -> Vec<[String; 2]> {
    let row = |aside: &SetAside<'_>| {
        [Label::Aside.text().into(), Message::Aside { file: aside.file, reason: &aside.reason.text() }.text()]
    };
    orders.aside.iter().map(row).collect()
}

/// The part that is cut: who mistook an order sees it here.
fn part(pack: &Pack<'_>) -> Vec<[String; 2]> {
    let parts = pack.lots.iter().flat_map(|lot| lot.lot.parts.iter().map(move |part| (&lot.lot, part)));
    let row = |(lot, part): (&Lot<'_>, &Part<'_>)| {
        let order = pack.orders.taken.iter().find(|order| order.number == part.order)?;
        let (mark, uncoated) = (part.mark(), words::fixed(lot.board.thickness().in_mm(), 2));
        let (part, customer) = (part.panel.id.to_string(), order.spec.customer.name.as_str());
        let finish = lot.finish.name.as_str();
        let told = Message::CutAgain { mark: &mark, part: &part, customer, finish, uncoated: &uncoated }.text();
        Some([Label::Again.text().into(), told])
    };
    parts.filter(|_| pack.one.is_some()).filter_map(row).collect()
}

fn report(pack: &Pack<'_>, again: Vec<[String; 2]>, folder: &Path, files: usize) -> Vec<String> {
    let parts: usize = pack.lots.iter().map(|lot| lot.lot.parts.len()).sum();
    let taken = pack.orders.taken.len();
    let mut rows: Vec<[String; 2]> = Vec::new();
    let mut row = |label: Label, what: String| rows.push([label.text().into(), what]);
    row(Label::Orders, Message::Orders { taken, parts }.text());
    rows.extend(part(pack));
    rows.extend(again);
    rows.extend(aside(pack.orders));
    let mut row = |label: Label, what: String| rows.push([label.text().into(), what]);
    for lot_sheets in &pack.lots {
        let LotSheets { lot, sheets, figures, .. } = lot_sheets;
        let cost = words::money(Money::minor(figures.net()), &lot.range.currency);
        let used = tool::Message::Percent(&words::decimal(lot_sheets.used_share() * 100.0, 1)).text();
        let (board, finish) = (lot.board.name.as_str(), lot.finish.name.as_str());
        let (sheets, parts) = (sheets.len(), lot.parts.len());
        row(Label::Sheets, Message::Lot { board, finish, sheets, parts, used: &used, cost: &cost }.text());
    }
    let kept: usize = pack.sheets().map(|(_, sheet, _)| sheet.kept.len()).sum();
    row(Label::Offcuts, Message::Kept(kept).text());
    let minutes: f64 = pack.sheets().map(|(_, _, program)| program.minutes).sum();
    let metres: f64 = pack.sheets().map(|(_, _, program)| program.length.in_m()).sum();
    let (minutes, metres) = (words::decimal(minutes, 0), words::decimal(metres, 1));
    row(Label::Machine, Message::Machine { minutes: &minutes, metres: &metres }.text());
    if let Some(schedule) = schedule(pack).filter(|_| pack.one.is_none()) {
        let day = |day| words::day(day, schedule.from);
        let booked: Vec<(&str, u32)> =
            pack.settings.backlog.minutes.iter().map(|(stage, minutes)| (stage.as_str(), *minutes)).collect();
        if !booked.is_empty() {
            row(Label::Booked, Message::Booked(&booked).text());
        }
        if let Some(set) = schedule.set_before {
            row(Label::Begins, Message::SetBefore { set: &day(set), from: &day(schedule.from) }.text());
        }
        let late = schedule.arrivals.iter().filter(|arrival| arrival.is_late());
        let late: Vec<String> = late.map(|arrival| arrival.order.to_string()).collect();
        if !late.is_empty() {
            row(Label::Late, Message::Late { orders: &late.join(", "), from: &day(schedule.from) }.text());
        }
    }
    let folder = folder.display().to_string();
    row(Label::Name, Message::Named(&pack.full_name(), PROGRAM).text());
    row(Label::Pack, Message::Written { files, folder: &folder }.text());
    table::lines("", &rows)
}

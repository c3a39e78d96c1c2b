//! The sheet of the whole batch: what the sheets are, what each stage has to do, and which order would be late.

use slotwright_core::units::quantity::Length;
use slotwright_core::words;
use slotwright_core::words::paper::{Label, Message};
use slotwright_core::words::{pack, tool};

use super::super::Kind;
use super::super::packages::packages;
use super::super::work::{Schedule, lot_job};
use super::{Desk, litres, thickness, time};
use crate::paper::{Cell, Column, Paper, Row, Table};

pub(super) fn write(desk: &mut Desk<'_, '_>) {
    let mut paper = desk.paper(Label::BatchSheet, desk.range(), &desk.name(), Label::GuidanceFoot.text());
    let parts: usize = desk.pack.lots.iter().map(|lot| lot.lot.parts.len()).sum();
    let packed = desk.pack.orders.taken.iter().filter_map(packages).map(|packed| packed.packages.len());
    paper.pairs(
        4,
        &[
            (Label::Orders.text().to_owned(), desk.pack.orders.taken.len().to_string()),
            (Label::Parts.text().into(), parts.to_string()),
            (Label::Sheets.text().into(), desk.pack.sheets().count().to_string()),
            (Label::Packages.text().into(), packed.sum::<usize>().to_string()),
        ],
    );
    lots(desk, &mut paper);
    if let Some(schedule) = &desk.schedule {
        stages(&mut paper, schedule);
        arrivals(desk, &mut paper, schedule);
    }
    if !desk.pack.orders.aside.is_empty() {
        paper.minor(Label::SetAside.text());
        let aside = desk
            .pack
            .orders
            .aside
            .iter()
            .map(|aside| pack::Message::Aside { file: aside.file, reason: &aside.reason.text() }.text());
        paper.list(&aside.collect::<Vec<_>>());
    }
    desk.put(Kind::Batch, None, paper);
}

fn lots(desk: &Desk<'_, '_>, paper: &mut Paper) {
    paper.minor(Label::Lots.text());
    let mut table = Table::new([
        Column::share(Label::Board.text(), 1.0),
        Column::fit(Label::Uncoated.text()).end(),
        Column::fit(Label::Sheets.text()).end(),
        Column::fit(Label::Parts.text()).end(),
        Column::fit(Label::Used.text()).end(),
        Column::fit(Label::Machine.text()).end(),
        Column::fit(Label::Litres.text()).end(),
    ]);
    for lot in &desk.pack.lots {
        let (board, finish) = (lot.lot.board.name.as_str(), lot.lot.finish.name.as_str());
        let minutes: f64 = lot.sheets.iter().map(|(_, program)| program.minutes).sum();
        table.rows.push(Row::of([
            Message::Lot { board, finish }.text(),
            thickness(lot.lot.board.thickness()),
            lot.sheets.len().to_string(),
            lot.lot.parts.len().to_string(),
            tool::Message::Percent(&words::fixed(lot.used_share() * 100.0, 1)).text(),
            time(minutes),
            litres(lot_job(lot).litres()),
        ]));
    }
    paper.table(&table);
}

fn stages(paper: &mut Paper, schedule: &Schedule<'_>) {
    paper.minor(Label::ByStage.text());
    for load in &schedule.loads {
        if let Some(name) = load.name(schedule) {
            paper.text(&name, &crate::paper::Style::STRONG);
        }
        let mut table = Table::new([
            Column::share(Label::Stage.text(), 1.0),
            Column::fit(Label::Minutes.text()).end(),
            Column::fit(Label::PerDay.text()).end(),
            Column::fit(Label::Days.text()).end(),
        ]);
        table.rows.extend(load.stages.iter().map(|load| {
            Row::of([
                load.stage.name.clone(),
                time(load.minutes),
                load.stage.minutes_per_day.to_string(),
                words::decimal(load.days(), 0),
            ])
        }));
        paper.table(&table);
    }
    paper.text(Label::SharedSheets.text(), &crate::paper::Style::SMALL);
    paper.space(Length::mm(2.0));
}

fn arrivals(desk: &Desk<'_, '_>, paper: &mut Paper, schedule: &Schedule<'_>) {
    paper.minor(Label::ByOrder.text());
    let mut table = Table::new([
        Column::fit(Label::Order.text()),
        Column::share(Label::Unit.text(), 1.0),
        Column::fit(Label::Promised.text()),
        Column::fit(Label::Planned.text()),
        Column::fit(""),
    ]);
    table.rows.extend(schedule.arrivals.iter().map(|arrival| {
        let planned = arrival.planned.as_ref().map(|planned| words::dated(planned.arrives));
        let planned = planned.unwrap_or_else(|| Label::NoDay.text().into());
        let late: Cell = if arrival.is_late() {
            Cell::Strong(Label::Late.text().into())
        } else {
            Cell::from(Label::InTime.text().to_owned())
        };
        let order = Message::Order(arrival.order).text();
        let unit = desk.pack.orders.taken.iter().find(|order| order.number == arrival.order).map(|order| {
            let (range, choice) = (order.cut.range, order.cut.choice);
            let model = range.model(&choice.model).map_or(choice.model.as_str(), |model| &model.name);
            let finish = range.finish(&choice.finish).map_or(choice.finish.as_str(), |finish| &finish.name);
            format!(
                "{model}, {}\u{a0}\u{d7}\u{a0}{}\u{a0}\u{d7}\u{a0}{}, {finish}",
                words::size(choice.width_mm),
                words::size(choice.height_mm),
                words::size(choice.depth_mm)
            )
        });
        Row::Cells(vec![
            order.into(),
            unit.unwrap_or_default().into(),
            words::dated(arrival.promised).into(),
            planned.into(),
            late,
        ])
    }));
    paper.table(&table);
    super::in_turn(paper, schedule);
}

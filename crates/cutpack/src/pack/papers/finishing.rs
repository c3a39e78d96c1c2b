//! The finishing sheet: what is sanded and coated before parts are cut, and what after it, lot by lot.

use slotwright_core::cabinet::panel::{Ease, Edge, Feature, Panel};
use slotwright_core::range::Work;
use slotwright_core::units::quantity::Length;
use slotwright_core::words;
use slotwright_core::words::paper::{Label, Message};

use super::super::sheet::Stock;
use super::super::work::lot_job;
use super::super::{Kind, LotSheets};
use super::{Desk, litres, metres, mm, square_metres, time};
use crate::paper::{Column, Paper, Row, Table};

pub(super) fn write(desk: &mut Desk<'_, '_>) {
    let mut paper = desk.paper(Label::Finishing, desk.range(), &desk.name(), Label::SprayFoot.text());
    paper.minor(Label::WhileSpraying.text());
    for caution in [Label::SprayCaution, Label::DustCaution] {
        paper.caution(caution.text());
    }
    paper.paragraph(Label::Climate.text());
    for lot in &desk.pack.lots {
        one(&mut paper, lot);
    }
    desk.put(Kind::Finishing, None, paper);
}

fn one(paper: &mut Paper, lot: &LotSheets<'_>) {
    let (job, finish) = (lot_job(lot), lot.lot.finish);
    let (board, name) = (lot.lot.board.name.as_str(), finish.name.as_str());
    paper.heading(&Message::Lot { board, finish: name }.text());
    let hardener = match finish.diisocyanates {
        Some(true) => Label::Diisocyanates,
        Some(false) => Label::NoDiisocyanates,
        None => Label::DiisocyanatesUnknown,
    };
    paper.caution(hardener.text());
    let minutes = job.minutes();
    let coats = |coats: u8| Message::Coats(coats.into()).text();
    let minutes_of = |minutes: u32| time(f64::from(minutes));
    let bought = lot.sheets.iter().filter(|(sheet, _)| matches!(sheet.stock, Stock::Bought(_)));
    let rack = lot.sheets.iter().any(|(sheet, _)| matches!(sheet.stock, Stock::Offcut(_)));
    let bought = bought.count();
    paper.minor(Label::BeforeCutting.text());
    if finish.coats_before == 0 {
        paper.paragraph(Label::NoCoatsBefore.text());
        if bought > 0 {
            paper.ticks(&[Label::SandSheets.text()]);
        }
    } else if bought > 0 {
        paper.pairs(
            4,
            &[
                (Label::Sheets.text().to_owned(), bought.to_string()),
                (Label::Coats.text().into(), coats(finish.coats_before)),
                (Label::Litres.text().into(), litres(job.litres_before())),
                (Label::Minutes.text().into(), time(minutes.of(Work::Sheets))),
                (Label::TurnAfter.text().into(), minutes_of(finish.turn_after_minutes)),
                (Label::NextAfter.text().into(), minutes_of(finish.recoat_after_minutes)),
            ],
        );
        let steps = [Label::SandSheets, Label::CoatSheets, Label::SheetsHarden];
        paper.ticks(&steps.map(|step| hardens(lot, step, Work::Sheets)));
    }
    if rack && finish.coats_before > 0 {
        paper.paragraph(Label::OffcutsCoated.text());
    }
    if lot.sheets.iter().any(|(sheet, _)| sheet.is_unmeasured_offcut()) {
        paper.caution(Label::MeasureFirst.text());
    }
    paper.minor(Label::AfterCutting.text());
    if finish.coats_after == 0 {
        paper.paragraph(Label::NoCoatsAfter.text());
        let steps: Vec<String> = eases(lot).into_iter().chain([Label::SandParts.text().into()]).collect();
        paper.ticks(&steps);
    } else {
        paper.pairs(
            4,
            &[
                (Label::Faces.text().to_owned(), square_metres(job.bill.faces)),
                (Label::Coats.text().into(), coats(finish.coats_after)),
                (Label::Litres.text().into(), litres(job.litres_after())),
                (Label::Edges.text().into(), metres(job.bill.edges)),
            ],
        );
        let coats = [Label::MaskParts, Label::CoatParts, Label::PartsHarden];
        let coats = coats.map(|step| hardens(lot, step, Work::Edges));
        paper.ticks(&eases(lot).into_iter().chain(coats).collect::<Vec<_>>());
    }
    paper.table(&edges(lot));
}

/// What a hand does to edges, tabs and pivots.
fn eases(lot: &LotSheets<'_>) -> Vec<String> {
    let chamfer = lot.lot.range.build.tab_chamfer_mm;
    let ends = (chamfer > Length::ZERO).then(|| Message::TabEnds(&mm(chamfer)).text());
    [Label::EaseParts.text().into()].into_iter().chain(ends).collect()
}

/// A step as a sentence; where something hardens, with the days that the range gives it.
fn hardens(lot: &LotSheets<'_>, step: Label, work: Work) -> String {
    let stage = lot.lot.range.stages.iter().find(|stage| stage.work == work);
    let days = stage.map_or(0, |stage| stage.wait_days.into());
    match step {
        Label::SheetsHarden if days > 0 => Message::SheetsHarden(days).text(),
        Label::PartsHarden if days > 0 => Message::PartsHarden(days).text(),
        _ => step.text().into(),
    }
}

/// What a hand does to the edges of each part.
fn edges(lot: &LotSheets<'_>) -> Table {
    let mut table = Table::new([
        Column::fit(Label::Mark.text()),
        Column::fit(Label::Part.text()),
        // Nearly all parts have chamfers, few are rounded.
        Column::share(Label::Chamfer.text(), 1.3),
        Column::share(Label::Rounding.text(), 0.7),
        Column::fit(Label::TabsAndPivots.text()),
        Column::fit(Label::Edges.text()).end(),
    ]);
    let mut all = Length::ZERO;
    for part in &lot.lot.parts {
        let panel = part.panel;
        let pivots: Vec<Edge> = panel
            .features
            .iter()
            .filter_map(|feature| match *feature {
                Feature::Pivot { edge, .. } => Some(edge),
                Feature::Tab { .. }
                | Feature::Hook(_)
                | Feature::Detent(_)
                | Feature::Notch { .. }
                | Feature::Slot { .. }
                | Feature::Bore { .. }
                | Feature::Hole { .. }
                | Feature::TurnedSlot(_)
                | Feature::Bow(_) => None,
            })
            .collect();
        all += panel.outer_length();
        table.rows.push(Row::of([
            part.mark(),
            words::part(panel.id),
            eased(panel, |ease| match ease {
                Ease::Chamfer(width) => Some(width),
                Ease::Rounding(_) | Ease::TabEnds(_) => None,
            }),
            eased(panel, |ease| match ease {
                Ease::Rounding(radius) => Some(radius),
                Ease::Chamfer(_) | Ease::TabEnds(_) => None,
            }),
            // No part has both.
            if pivots.is_empty() {
                tab_ends(panel)
            } else {
                Message::RoundedPivots(&words::edges(panel.id, &pivots)).text()
            },
            metres(panel.outer_length()),
        ]));
    }
    table.rows.push(Row::total(["", "", "", "", "", metres(all).as_str()]));
    table
}

/// In which edges the ends of tabs are chamfered, and by how much.
fn tab_ends(panel: &Panel) -> String {
    let ends = panel.eased().find_map(|(edge, ease)| match ease {
        Ease::TabEnds(width) => Some((edge, width)),
        Ease::Chamfer(_) | Ease::Rounding(_) => None,
    });
    let Some((edge, width)) = ends else { return String::new() };
    Message::EasedTabs { edge: &words::edges(panel.id, &[edge]), size: &mm(width) }.text()
}

/// Which edges are eased in one way, how far on both faces, and how much.
fn eased(panel: &Panel, wanted: fn(Ease) -> Option<Length>) -> String {
    let (mut edges, mut long, mut size) = (Vec::new(), Length::ZERO, Length::ZERO);
    for (edge, ease) in panel.eased() {
        let Some(of_edge) = wanted(ease) else { continue };
        edges.push(edge);
        long += panel.eased_length(edge, ease) * 2.0;
        size = of_edge;
    }
    if edges.is_empty() {
        return String::new();
    }
    let edges = words::edges(panel.id, &edges);
    Message::Eased { edges: &edges, long: &metres(long), size: &mm(size) }.text()
}

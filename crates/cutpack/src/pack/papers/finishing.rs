//! The finishing sheet: what is sanded and coated before parts are cut, and what after it, lot by lot.

use slotwright_core::range::Work;
use slotwright_core::words::paper::{Label, Message};

use super::super::sheet::Stock;
use super::super::work::lot_job;
use super::super::{Kind, LotSheets};
use super::{Desk, litres, metres, square_metres, time};
use crate::paper::Paper;

mod edges;
mod masking;

pub(super) fn write(desk: &mut Desk<'_, '_>) {
    let mut paper = desk.paper(Label::Finishing, desk.range(), &desk.name(), Label::SprayFoot.text());
    paper.minor(Label::WhileSpraying.text());
    let is_coated = desk.pack.lots.iter().any(|lot| lot.lot.finish.coats() > 0);
    if is_coated {
        paper.caution(Label::SprayCaution.text());
    }
    paper.caution(Label::DustCaution.text());
    if is_coated {
        paper.paragraph(Label::Climate.text());
    }
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
    if finish.coats() > 0 {
        paper.caution(hardener.text());
    }
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
        paper.ticks(&edges::steps(lot));
    } else {
        paper.pairs(
            4,
            &[
                (Label::Faces.text().to_owned(), square_metres(job.bill.faces)),
                (Label::Coats.text().into(), coats(finish.coats_after)),
                (Label::Litres.text().into(), litres(job.litres_after())),
                (Label::Edges.text().into(), metres(job.bill.edges)),
                (Label::TurnAfter.text().into(), minutes_of(finish.turn_after_minutes)),
            ],
        );
        let coats = [Label::MarkParts, Label::MaskParts, Label::CoatParts, Label::PartsHarden];
        let coats = coats.map(|step| hardens(lot, step, Work::Edges));
        paper.ticks(&edges::steps(lot).into_iter().chain(coats).collect::<Vec<_>>());
    }
    paper.table(&edges::table(lot));
    if finish.coats_after > 0 {
        masking::write(paper, lot);
    }
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

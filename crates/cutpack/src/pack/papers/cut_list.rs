//! The cut list: for whoever runs the machine, sheet by sheet.

use slotwright_core::range::{Handling, Hold};
use slotwright_core::units::quantity::Length;
use slotwright_core::words;
use slotwright_core::words::paper::{Label, Message};
use slotwright_core::words::tool;

use super::super::lot::Lot;
use super::super::path::Program;
use super::super::sheet::{Sheet, Stock};
use super::super::{Kind, LotSheets};
use super::{Desk, sketch, tenths, thickness, time};
use crate::paper::{Column, Paper, Row, Table};

pub(super) fn write(desk: &mut Desk<'_, '_>) {
    let mut paper = desk.paper(Label::CutList, desk.range(), &desk.name(), Label::MachineFoot.text());
    paper.minor(Label::Machining.text());
    for caution in [Label::MachineCaution1, Label::MachineCaution2, Label::MachineCaution3, Label::WasteFalls] {
        paper.caution(caution.text());
    }
    // Each range is cut in its own way.
    let mut told = Vec::new();
    for LotSheets { lot, .. } in &desk.pack.lots {
        if !told.contains(&lot.digest) {
            told.push(lot.digest);
            settings(&mut paper, lot);
        }
    }
    for (lot, sheet, program) in desk.pack.sheets() {
        one(&mut paper, lot, sheet, program);
    }
    desk.put(Kind::CutList, None, paper);
}

/// What holds for all sheets of a range.
fn settings(paper: &mut Paper, lot: &Lot<'_>) {
    let range = lot.range;
    paper.minor(&format!("{}: {}", range.name, Label::HowItIsCut.text()));
    let mut pairs = vec![
        (Label::Cutter.text().to_owned(), thickness(range.build.cutter_mm)),
        (Label::Spacing.text().into(), thickness(range.spacing())),
        (Label::Passes.text().into(), range.rates.passes.to_string()),
        (Label::Feed.text().into(), Message::Feed(&words::decimal(range.rates.feed_mm_per_min, 0)).text()),
    ];
    let mut hold = None;
    match range.cutting.hold {
        Hold::Vacuum => {}
        Hold::Skin { .. } => hold = Some(Label::CutSkin),
        Hold::Bridges { length_mm, thickness_mm, apart_mm } => {
            let [long, thick, apart] = [length_mm, thickness_mm, apart_mm].map(tenths);
            pairs.push((Label::Bridges.text().into(), Message::Bridges(&long, &thick, &apart).text()));
            hold = Some(Label::CutBridges);
        }
    }
    paper.pairs(3, &pairs);
    if let Some(hold) = hold {
        paper.caution(hold.text());
    }
    let sentences = [Label::ZeroPoint, Label::OutlinesAreEdges, Label::CutsInOrder, Label::LeadIns];
    paper.list(&sentences.map(Label::text));
}

/// A depth as the layers of drawings have it: with both decimals.
fn depth(depth: Length) -> String {
    Message::Millimetres(&words::fixed(depth.in_mm(), 2)).text()
}

/// Who lifts a sheet onto the machine, as the range counts: people, or a lifter where it is too heavy for the most who lift
/// one thing.
fn lifted_by(lot: &Lot<'_>, sheet: &Sheet<'_>) -> String {
    let (handling, mass, longest) = (&lot.range.handling, sheet.mass(lot), sheet.length.max(sheet.width));
    if mass > handling.together(Handling::PEOPLE_MOST) {
        return Label::Lifter.text().into();
    }
    let people = Message::People(handling.people(mass, longest)).text();
    if handling.is_for_length(mass, longest) { Message::ForLength(&people).text() } else { people }
}

fn one(paper: &mut Paper, lot: &Lot<'_>, sheet: &Sheet<'_>, program: &Program) {
    // Heading, figures and picture stay together.
    paper.keep(Length::mm(130.0).min(paper.height()));
    let (board, finish) = (lot.board.name.as_str(), lot.finish.name.as_str());
    paper.heading(&Message::Sheet { number: sheet.number, board, finish }.text());
    let stock = match &sheet.stock {
        Stock::Bought(key) => Message::Bought(key).text(),
        Stock::Offcut(name) => Message::FromRack(name).text(),
    };
    let used = tool::Message::Percent(&words::decimal(sheet.used_share() * 100.0, 1)).text();
    let kept = sheet.kept.iter().zip('a'..).map(|(kept, letter)| {
        let (long, wide) = kept.size();
        format!("{letter}\u{a0}{}", super::sides(&[long, wide]))
    });
    let kept = kept.collect::<Vec<_>>().join(", ");
    let kept = if kept.is_empty() { Label::NothingKept.text().to_owned() } else { kept };
    paper.pairs(
        4,
        &[
            (Label::Stock.text().to_owned(), stock),
            (Label::Size.text().into(), super::sides(&[sheet.length, sheet.width])),
            (Label::Uncoated.text().into(), thickness(sheet.uncoated)),
            (Label::Coated.text().into(), thickness(sheet.coated(lot))),
            (Label::Mass.text().into(), super::mass(sheet.mass(lot))),
            (Label::LiftedBy.text().into(), lifted_by(lot, sheet)),
            (Label::Used.text().into(), used),
            (Label::Through.text().into(), depth(program.depths.through)),
            (Label::Outside.text().into(), depth(program.depths.outside)),
            (Label::Cuts.text().into(), super::metres(program.length)),
            (Label::Machine.text().into(), time(program.minutes)),
            (Label::Kept.text().into(), kept),
        ],
    );
    if sheet.is_unmeasured_offcut() {
        paper.caution(Label::MeasureFirst.text());
    }
    let picture = sketch::sheet(sheet, paper.width(), Length::mm(92.0));
    paper.figure(&picture, &sketch::sheet_words(sheet), "");
    let mut table = Table::new([
        Column::fit(Label::Mark.text()),
        Column::share(Label::Part.text(), 1.0),
        Column::fit(Label::Along.text()).end(),
        Column::fit(Label::Across.text()).end(),
        Column::fit(Label::Mass.text()).end(),
        Column::fit(Label::Step.text()).end(),
        Column::fit(Label::People.text()).end(),
    ]);
    let mut placed: Vec<_> = sheet.placed.iter().collect();
    placed.sort_by_key(|placed| (placed.part.order, placed.part.number));
    table.rows.extend(placed.into_iter().map(|placed| {
        let part = &placed.part;
        let (along, across) = part.along_and_across();
        let people = part.people.to_string();
        let is_for_length = lot.range.handling.is_for_length(part.mass, along.max(across));
        Row::of([
            part.mark(),
            words::part(part.panel.id),
            words::fixed(along.in_mm(), 1),
            words::fixed(across.in_mm(), 1),
            super::mass(part.mass),
            part.step.to_string(),
            if is_for_length { Message::ForLength(&people).text() } else { people },
        ])
    }));
    paper.table(&table);
}

#[cfg(test)]
mod tests {
    use slotwright_core::units::quantity::Mass;

    use super::super::super::Settings;
    use super::super::super::testing::{demo, with_pack};
    use super::*;

    /// Worked: 2.44 · 1.22 m of 17.7 mm at 685 kg/m³ are 36.09 kg, two films of 64 µm at 1200 kg/m³ on it 0.46 kg: more than two
    /// lift by the range, 33 kg, and less than three do, 37.5 kg. A large one, 3.05 · 1.525 m, weighs 57.1 kg.
    #[test]
    fn a_sheet_is_told_with_its_mass_and_who_lifts_it() {
        with_pack(&demo(), &Settings::default(), |pack| {
            let (lot, found, _) = pack.sheets().next().unwrap();
            let of = |length, width| Sheet {
                stock: Stock::Bought("any".into()),
                length: Length::mm(length),
                width: Length::mm(width),
                ..found.clone()
            };
            let (small, large, half) = (of(2440.0, 1220.0), of(3050.0, 1525.0), of(1220.0, 610.0));
            for (sheet, kg) in [(&small, 36.55), (&large, 57.11), (&half, 9.14)] {
                let off = sheet.mass(lot).in_kg() - kg;
                assert!(off.abs() < 0.02, "{off}");
            }
            let most = lot.range.handling.together(Handling::PEOPLE_MOST);
            assert!(small.mass(lot) < most && large.mass(lot) > most && most < Mass::kg(40.0));
            assert_eq!(lifted_by(lot, &small), Message::People(3).text());
            assert_eq!(lifted_by(lot, &large), Label::Lifter.text());
            assert_eq!(lifted_by(lot, &half), Message::People(1).text());
            // A long light offcut takes two for its length.
            assert_eq!(lifted_by(lot, &of(1800.0, 260.0)), Message::ForLength(&Message::People(2).text()).text());
        });
    }
}

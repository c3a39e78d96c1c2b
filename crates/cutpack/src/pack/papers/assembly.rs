//! The assembly sheet of an order: the unit, what to mind first, what is needed, the parts, then a picture for each step.

use slotwright_core::cabinet::assembly::{Assembly, Space, Step, Turn};
use slotwright_core::cabinet::layout::Picked;
use slotwright_core::cabinet::panel::PanelId;
use slotwright_core::statics::detent::leaf_opens;
use slotwright_core::units::quantity::Length;
use slotwright_core::words;
use slotwright_core::words::needed::{Needed, RoomNeeded};
use slotwright_core::words::paper::{Label, Message};

use super::super::lot::{Part, parts};
use super::super::packages::{Package, packages};
use super::super::{Kind, TakenOrder};
use super::{Desk, mass, sides};
use crate::describe::describe;
use crate::paper::{Column, Paper, Plate, Row, Table};
use crate::picture;

/// Height of the picture of the whole unit.
// Chosen by eye: the title, it and the cautions stay on one page.
const WHOLE: Length = Length::mm(48.0);

pub(super) fn write(desk: &mut Desk<'_, '_>, order: &TakenOrder<'_>) {
    let Some((built, assembly)) = order.cut.built.as_ref().zip(order.cut.assembly.as_ref()) else { return };
    let (range, tethered) = (order.cut.range, order.cut.is_tethered());
    let right = desk.of_customer(order);
    let mut paper = desk.paper(Label::Assembly, Some(range), &right, Label::GuidanceFoot.text());
    paper.paragraph(&describe(range, &order.spec.choice));
    if let Some(whole) = picture::whole(built, assembly) {
        paper.figure(&whole.fitted(paper.width(), WHOLE), Label::WholeUnit.text(), "");
    }
    paper.paragraph(&Message::PeopleForIt(assembly.people()).text());
    paper.paragraph(&RoomNeeded(Space::of(&built.layout, &built.cut.case, assembly)).text());
    mind(&mut paper, order, assembly);
    paper.minor(Label::Needed.text());
    let needed: Vec<String> = Needed::of(assembly, tethered).into_iter().map(Needed::text).collect();
    paper.ticks(&needed);
    let all: Vec<Part<'_>> = parts(order.number, &order.cut).map(|(_, part)| part).collect();
    paper.minor(Label::Parts.text());
    paper.table(&listed(order, &all));
    let marks: Vec<(PanelId, String)> = all.iter().map(|part| (part.panel.id, part.mark())).collect();
    let plates = picture::steps(built, assembly, tethered).into_iter().map(|picture| {
        let wrong = |step: &Step| Turn::wrong(&built.cut.case, step.part, &step.closes);
        let beside = picture.step.map(|step| (words::way_round(step, &wrong(step)), words::burden(step)));
        let (way_round, burden) = beside.unwrap_or_default();
        let step = Message::Step(picture.number, picture.of).text();
        let mark = picture.step.and_then(|step| marks.iter().find(|(id, _)| *id == step.part));
        Plate {
            vector: picture.vector(),
            alternative: picture.sentence.clone(),
            name: mark.map_or_else(|| step.clone(), |(_, mark)| format!("{step} \u{b7} {mark}")),
            text: [way_round.unwrap_or_default(), &picture.sentence, &burden]
                .into_iter()
                .filter(|text| !text.is_empty())
                .collect::<Vec<_>>()
                .join(" "),
        }
    });
    paper.plates(Label::Steps.text(), 2, &plates.collect::<Vec<_>>());
    desk.put(Kind::Assembly, Some(order.number), paper);
}

/// What to mind first, and what comes free of a unit that does not stand as it should.
fn mind(paper: &mut Paper, order: &TakenOrder<'_>, assembly: &Assembly) {
    paper.minor(Label::First.text());
    if order.cut.is_tethered() {
        paper.stop(Label::TetherFirst.text());
        paper.caution(Label::Children.text());
    }
    for caution in words::CAUTIONS {
        paper.caution(caution);
    }
    paper.paragraph(Label::NoHurry.text());
    paper.paragraph(Label::Guidance.text());
    let choice = &order.spec.choice;
    let opens = order.cut.built.as_ref().zip(Picked::of(order.cut.range, choice));
    let opens = opens.and_then(|(built, picked)| leaf_opens(picked, choice, &built.layout));
    if let Some(force) = opens {
        paper.paragraph(&Message::DoorOpens(&words::decimal(force.in_newton(), 0)).text());
    }
    paper.list(&words::all_disturbed(&assembly.disturbed));
}

/// The parts by their marks: which package each is in, and in which step it goes in.
fn listed(order: &TakenOrder<'_>, all: &[Part<'_>]) -> Table {
    let packages = packages(order).map(|packed| packed.packages).unwrap_or_default();
    let package = |id: PanelId| {
        let is_in = |package: &Package<'_>| package.parts().any(|packed| packed.part.panel.id == id);
        packages.iter().zip(1_u32..).find(|(package, _)| is_in(package)).map(|(_, number)| number.to_string())
    };
    let mut table = Table::new([
        Column::fit(Label::Mark.text()),
        Column::share(Label::Part.text(), 1.0),
        Column::fit(Label::Size.text()).end(),
        Column::fit(Label::Mass.text()).end(),
        Column::fit(Label::Package.text()).end(),
        Column::fit(Label::Step.text()).end(),
    ]);
    table.rows.extend(all.iter().map(|part| {
        let (width, height) = part.panel.blank();
        Row::of([
            part.mark(),
            words::part(part.panel.id),
            sides(&[width.max(height), width.min(height)]),
            mass(part.mass),
            package(part.panel.id).unwrap_or_default(),
            part.step.to_string(),
        ])
    }));
    table
}

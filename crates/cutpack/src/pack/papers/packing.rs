//! The packing list of an order: which part lies in which package, and who lifts it.

use slotwright_core::units::quantity::Mass;
use slotwright_core::words;
use slotwright_core::words::paper::{Label, Message};

use super::super::packages::{Packages, packages};
use super::super::{Kind, TakenOrder};
use super::{Desk, mass, sides};
use crate::paper::{Cell, Column, Row, Table};

pub(super) fn write(desk: &mut Desk<'_, '_>, order: &TakenOrder<'_>) {
    let Some(Packages { carrier, packages }) = packages(order) else { return };
    let range = order.cut.range;
    let right = desk.of_order(order);
    let mut paper = desk.paper(Label::PackingList, Some(range), &right, Label::PackFoot.text());
    paper.pairs(
        3,
        &[
            (Label::Order.text().to_owned(), order.number.to_string()),
            (Label::To.text().into(), order.spec.customer.name.clone()),
            (Label::Carrier.text().into(), carrier.name.clone()),
        ],
    );
    paper.paragraph(Label::PackInOrder.text());
    let mut table = Table::new([
        Column::fit(""),
        Column::fit(Label::Mark.text()),
        Column::share(Label::Part.text(), 1.0),
        Column::fit(Label::Step.text()).end(),
        Column::fit(Label::Mass.text()).end(),
    ]);
    let of = u32::try_from(packages.len()).unwrap_or(u32::MAX);
    for (number, package) in (1..).zip(&packages) {
        let head = [
            Message::Package(number, of).text(),
            mass(package.mass),
            sides(&package.sides),
            Message::People(package.people).text(),
        ];
        table.rows.push(Row::group(head.join(" \u{b7} ")));
        table.rows.extend(package.parts.iter().map(|part| {
            Row::Cells(vec![
                Cell::Tick,
                part.mark().into(),
                words::part(part.panel.id).into(),
                part.step.to_string().into(),
                mass(part.mass).into(),
            ])
        }));
    }
    paper.table(&table);
    let mut along = vec![Label::AssemblySheet.text()];
    if order.cut.is_tethered() {
        along.insert(0, Label::Tether.text());
    }
    paper.ticks(&along);
    paper.minor(Label::Lifting.text());
    let mut lifts = Table::new([
        Column::share(Label::Package.text(), 1.0),
        Column::fit(Label::Mass.text()).end(),
        Column::fit(Label::People.text()).end(),
        Column::fit(Label::Recommended.text()).end(),
        Column::fit(Label::LiftingIndex.text()).end(),
    ]);
    for (number, package) in (1..).zip(&packages) {
        let recommended = package.lift.recommended();
        let (limit, index) = if recommended > Mass::ZERO {
            (mass(recommended), words::fixed(libm::ceil(package.lift.index(package.mass) * 10.0) / 10.0, 1))
        } else {
            (Label::BeyondEquation.text().into(), String::new())
        };
        lifts.rows.push(Row::of([
            Message::Package(number, of).text(),
            mass(package.mass),
            package.people.to_string(),
            limit,
            index,
        ]));
    }
    paper.table(&lifts);
    paper.text(Label::Niosh.text(), &crate::paper::Style::SMALL);
    desk.put(Kind::PackingList, Some(order.number), paper);
}

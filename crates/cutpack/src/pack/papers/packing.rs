//! The packing list of an order: which part lies in which package, and who lifts it.

use slotwright_core::units::quantity::{Length, Mass};
use slotwright_core::words;
use slotwright_core::words::paper::{Label, Message};

use super::super::packages::{Package, Packages, packages};
use super::super::{Kind, TakenOrder};
use super::along::along;
use super::{Desk, mass, sides, sketch};
use crate::paper::{Cell, Column, Paper, Row, Style, Table};

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
    paper.paragraph(Label::PackInLayers.text());
    let [per_area, per_package] = [range.rates.pack_kg_per_m2.in_kg_per_m2(), range.rates.pack_kg_per_package.in_kg()]
        .map(|kg| words::decimal(kg, 3));
    paper.text(&Message::PackingWeighs(&per_area, &per_package).text(), &Style::SMALL);
    paper.text(Label::PackedSizes.text(), &Style::SMALL);
    let of = u32::try_from(packages.len()).unwrap_or(u32::MAX);
    for (number, package) in (1..).zip(&packages) {
        one(&mut paper, package, (number, of));
    }
    paper.minor(Label::GoesAlong.text());
    paper.ticks(&along(order));
    paper.minor(Label::Lifting.text());
    paper.table(&lifts(&packages));
    paper.text(Label::Niosh.text(), &Style::SMALL);
    desk.put(Kind::PackingList, Some(order.number), paper);
}

/// A package: its figures, a picture of its layers, and what lies in each of them.
fn one(paper: &mut Paper, package: &Package<'_>, (number, of): (u32, u32)) {
    let picture = sketch::layers(package, paper.width());
    // Heading, figures and picture stay together.
    paper.keep((picture.height + Length::mm(40.0)).min(paper.height()));
    paper.heading(&Message::Package(number, of).text());
    let people = Message::People(package.people).text();
    let figures = [
        Message::Packed(&mass(package.mass), &mass(package.packing)).text(),
        sides(&package.sides),
        if package.is_for_length { Message::ForLength(&people).text() } else { people },
    ];
    paper.text(&figures.join(" \u{b7} "), &Style::STRONG);
    paper.figure(&picture, &Message::LayersPicture(number, package.layers.len()).text(), "");
    let mut table = Table::new([
        Column::fit(""),
        Column::fit(Label::Layer.text()).end(),
        Column::fit(Label::Row.text()).end(),
        Column::fit(Label::Mark.text()),
        Column::share(Label::Part.text(), 1.0),
        Column::fit(Label::Size.text()).end(),
        Column::fit(Label::Step.text()).end(),
        Column::fit(Label::Mass.text()).end(),
    ]);
    for (at, layer) in (1_u32..).zip(&package.layers) {
        table.rows.extend(layer.iter().map(|packed| {
            let part = &packed.part;
            Row::Cells(vec![
                Cell::Tick,
                at.to_string().into(),
                packed.row.to_string().into(),
                part.mark().into(),
                words::part(part.panel.id).into(),
                sides(&packed.size()).into(),
                part.step.to_string().into(),
                mass(part.mass).into(),
            ])
        }));
    }
    paper.table(&table);
}

/// Who lifts which package.
fn lifts(packages: &[Package<'_>]) -> Table {
    let of = u32::try_from(packages.len()).unwrap_or(u32::MAX);
    let mut lifts = Table::new([
        Column::share(Label::Package.text(), 1.0),
        Column::fit(Label::Mass.text()).end(),
        Column::fit(Label::People.text()).end(),
        Column::fit(Label::Recommended.text()).end(),
        Column::fit(Label::LiftingIndex.text()).end(),
    ]);
    for (number, package) in (1..).zip(packages) {
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
    lifts
}

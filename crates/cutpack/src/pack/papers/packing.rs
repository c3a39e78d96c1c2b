//! The packing list of an order: which part lies in which package, and who lifts it.

use slotwright_core::cabinet::panel::PanelId;
use slotwright_core::statics::lifting::Lift;
use slotwright_core::units::quantity::{Length, Mass};
use slotwright_core::words;
use slotwright_core::words::paper::{Label, Message};

use super::super::packages::{Package, Packages, packages};
use super::super::{Kind, TakenOrder};
use super::along::along;
use super::{Desk, layers, mass, order_pairs, sides};
use crate::paper::{Cell, Column, Paper, Row, Style, Table};

pub(super) fn write(desk: &mut Desk<'_, '_>, order: &TakenOrder<'_>) {
    let Some(Packages { carrier, packages }) = packages(order) else { return };
    let range = order.cut.range;
    let right = desk.of_order(order);
    let mut paper = desk.paper(Label::PackingList, Some(range), &right, Label::PackFoot.text());
    let [number, digest] = order_pairs(order);
    let to = (Label::To.text().into(), order.spec.customer.name.clone());
    paper.pairs(4, &[number, digest, to, (Label::Carrier.text().into(), carrier.name.clone())]);
    paper.paragraph(Label::PackInLayers.text());
    paper.list(&minded(order));
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
    paper.paragraph(Label::LiftingMeans.text());
    paper.text(Label::Niosh.text(), &Style::SMALL);
    desk.put(Kind::PackingList, Some(order.number), paper);
}

/// What to mind with the parts of an order: coated faces, and the tongues of its door stops.
fn minded(order: &TakenOrder<'_>) -> Vec<&'static str> {
    let mut steps = order.cut.assembly.iter().flat_map(|assembly| &assembly.steps);
    let has_tongue = steps.any(|step| step.detent && matches!(step.part, PanelId::Stop(_)));
    let mut minded = vec![Label::CoatedFaces.text()];
    minded.extend(has_tongue.then(|| Label::StopTongue.text()));
    minded
}

/// A package: its figures, a picture of its layers, and what lies in each of them.
fn one(paper: &mut Paper, package: &Package<'_>, (number, of): (u32, u32)) {
    let lines = layers::lines(package, paper.width());
    // Heading, figures and the first layers stay together; others go on from page to page.
    let first = lines.first().map_or(Length::ZERO, |line| line.vector.height);
    paper.keep((first + Length::mm(26.0)).min(paper.height()));
    paper.heading(&Message::Package(number, of).text());
    let people = Message::People(package.people).text();
    let figures = [
        Message::Packed(&mass(package.mass), &mass(package.packing)).text(),
        sides(&package.sides),
        if package.is_for_length { Message::ForLength(&people).text() } else { people },
    ];
    paper.text(&figures.join(" \u{b7} "), &Style::STRONG);
    for layers::Line { vector, layers } in &lines {
        paper.figure(vector, &Message::LayersPicture(number, *layers).text(), "");
    }
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
        let [limit, index] = limits(&package.lift, package.mass);
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

/// What the equation recommends and its index of a mass, or that it recommends nothing.
fn limits(lift: &Lift, whole: Mass) -> [String; 2] {
    let recommended = lift.recommended();
    if recommended > Mass::ZERO {
        [mass(recommended), words::fixed(libm::ceil(lift.index(whole) * 10.0) / 10.0, 1)]
    } else {
        [Label::BeyondEquation, Label::NotForOne].map(|label| label.text().into())
    }
}

#[cfg(test)]
mod tests {
    use slotwright_core::choice::Fill;
    use slotwright_core::rules::sample::{Wanted, choices};

    use super::super::super::testing::{demo, order_of, with_orders};
    use super::*;

    /// Who packs reads of tongues where there are some, and of coated faces always.
    #[test]
    fn tongues_are_minded_where_doors_have_them() {
        let range = demo();
        let texts: Vec<String> =
            choices(&range, 3, Wanted::Valid).take(12).map(|choice| order_of(&range, &choice)).collect();
        with_orders(core::slice::from_ref(&range), &texts, |orders| {
            let mut met = [0, 0];
            for order in &orders.taken {
                let has_doors = order.spec.choice.bays.iter().any(|bay| matches!(bay.fill, Fill::Leaf(_)));
                let minded = minded(order);
                assert_eq!(minded.contains(&Label::StopTongue.text()), has_doors, "{:?}", order.spec.choice);
                assert!(minded.contains(&Label::CoatedFaces.text()));
                met[usize::from(has_doors)] += 1;
            }
            assert!(met.iter().all(|met| *met > 0), "{met:?}");
        });
    }

    /// No cell is empty, also where the equation recommends nothing: H is 25 cm and half the depth, at most 63 cm.
    #[test]
    fn what_the_equation_does_not_hold_for_is_told() {
        let of = |wide| limits(&Lift::of_package(Length::mm(wide), Length::mm(90.0)), Mass::kg(20.0));
        let [limit, index] = of(750.0);
        assert!(limit.ends_with("kg") && index.parse::<f64>().is_ok_and(|index| index > 1.0), "{limit} {index}");
        assert_eq!(of(770.0), [Label::BeyondEquation, Label::NotForOne].map(|label| label.text().to_owned()));
        assert!([Label::BeyondEquation, Label::NotForOne].iter().all(|label| !label.text().is_empty()));
    }
}

//! The delivery note of an order, and an address for each of its packages.

use slotwright_core::range::Finish;
use slotwright_core::units::quantity::Length;
use slotwright_core::words;
use slotwright_core::words::paper::{Label, Message};

use super::super::packages::{Package, Packages, packages};
use super::super::{Kind, TakenOrder};
use super::along::along;
use super::{Desk, mass, order_name, order_pairs, sides};
use crate::describe::describe;
use crate::paper::{Column, Face, Paper, Row, Style, Table};
use crate::vector::{Align, Colour, Spot, Stroke};

pub(super) fn write(desk: &mut Desk<'_, '_>, order: &TakenOrder<'_>) {
    let Some(Packages { carrier, packages }) = packages(order) else { return };
    let (range, spec) = (order.cut.range, order.spec);
    let right = desk.of_customer(order);
    let mut paper = desk.paper(Label::DeliveryNote, Some(range), &right, Label::GuidanceFoot.text());
    let customer = &spec.customer;
    let address: Vec<&str> =
        core::iter::once(customer.name.as_str()).chain(customer.address.iter().map(String::as_str)).collect();
    paper.pairs(3, &head(order, &address.join(", "), &carrier.name));
    if let Some(remark) = remark(order) {
        paper.minor(Label::ToDriver.text());
        paper.paragraph(remark);
    }
    paper.paragraph(&describe(range, &spec.choice));
    let mut table = Table::new([
        Column::share(Label::Package.text(), 1.0),
        Column::fit(Label::Parts.text()).end(),
        Column::fit(Label::Size.text()).end(),
        Column::fit(Label::Mass.text()).end(),
        Column::fit(Label::OfItPacking.text()).end(),
        Column::fit(Label::People.text()).end(),
    ]);
    let of = u32::try_from(packages.len()).unwrap_or(u32::MAX);
    table.rows.extend((1..).zip(&packages).map(|(number, package)| {
        Row::of([
            Message::Package(number, of).text(),
            package.parts().count().to_string(),
            sides(&package.sides),
            mass(package.mass),
            mass(package.packing),
            package.people.to_string(),
        ])
    }));
    let whole = packages.iter().map(|package| package.mass).sum();
    let packing = packages.iter().map(|package| package.packing).sum();
    let none = String::new;
    table.rows.push(Row::total([none(), none(), none(), mass(whole), mass(packing), none()]));
    paper.table(&table);
    paper.text(Label::PackedSizes.text(), &Style::SMALL);
    paper.text(Label::CollectedInstead.text(), &Style::SMALL);
    paper.ticks(&along(order));
    paper.space(Length::mm(10.0));
    signature(&mut paper);
    for (number, package) in (1..).zip(&packages) {
        paper.next_page();
        address_of(&mut paper, (order, &address), package, (number, of));
    }
    desk.put(Kind::Delivery, Some(order.number), paper);
}

/// What stands at its head.
fn head(order: &TakenOrder<'_>, address: &str, carrier: &str) -> Vec<(String, String)> {
    let (range, spec) = (order.cut.range, order.spec);
    let finish = range.finish(&spec.choice.finish).map(|finish: &Finish| finish.name.clone()).unwrap_or_default();
    let [number, digest] = order_pairs(order);
    vec![
        (Label::From.text().to_owned(), range.workshop.clone()),
        (Label::To.text().into(), address.into()),
        (Label::Contact.text().into(), spec.customer.contact.clone()),
        number,
        digest,
        (Label::Finish.text().into(), finish),
        (Label::Ordered.text().into(), words::dated(spec.ordered_on)),
        (Label::Arrives.text().into(), words::dated(spec.promised.arrives_on)),
        (Label::Carrier.text().into(), carrier.into()),
    ]
}

/// What the customer said besides, if anything: where it goes is often told there.
fn remark<'a>(order: &TakenOrder<'a>) -> Option<&'a str> {
    Some(order.spec.remark.trim()).filter(|remark| !remark.is_empty())
}

/// A line for whoever receives it.
fn signature(paper: &mut Paper) {
    let mut block = paper.block(Length::mm(22.0));
    let half = block.width / 2.0 - Length::mm(4.0);
    for (left, label) in [(Length::ZERO, Label::ReceivedWhole), (half + Length::mm(8.0), Label::DayAndName)] {
        let low = Length::mm(14.0);
        block.rule(Spot::new(left, low), Spot::new(left + half, low), Stroke::mm(0.25, Colour::SOFT));
        block.line(Spot::new(left, low + Length::mm(1.0)), half, label.text(), &Style::SMALL, Align::Start);
    }
}

/// An address that is read from afar, which package of which order it is, and how it is carried.
fn address_of(
    paper: &mut Paper,
    (order, address): (&TakenOrder<'_>, &[&str]),
    package: &Package<'_>,
    (number, of): (u32, u32),
) {
    paper.heading(&format!("{} \u{b7} {}", Message::Package(number, of).text(), order_name(order)));
    let people = match package.people {
        0 | 1 => Label::OneLifts,
        2 => Label::TwoLift,
        _ => Label::ThreeLift,
    };
    let large = Style::of(Face::Heading, 26.0, Colour::INK);
    for line in address {
        paper.text(line, &large);
    }
    paper.space(Length::mm(6.0));
    paper.text(&format!("{} \u{b7} {}", mass(package.mass), sides(&package.sides)), &Style::STRONG.sized(14.0));
    paper.caution(people.text());
    paper.text(Label::LieFlat.text(), &Style::STRONG.sized(14.0));
}

#[cfg(test)]
mod tests {
    use slotwright_core::choice::Choice;

    use super::super::super::testing::{demo, order, order_remarked, with_orders};
    use super::*;

    /// Order and digest stand together on every paper that goes out, so that the packing list and this one find each other.
    #[test]
    fn number_and_digest_stand_together() {
        let range = demo();
        let texts = [order(&range, 0, 0), order(&range, 1, 0)];
        with_orders(&[range], &texts, |orders| {
            for order in &orders.taken {
                let pairs = order_pairs(order);
                assert_eq!(
                    pairs.clone().map(|(_, value)| value),
                    [order.number.to_string(), order.spec.digest.short()]
                );
                assert!(head(order, "1 Dyke Lane", "van").windows(2).any(|two| two == pairs));
                assert!(pairs.iter().all(|(_, value)| order_name(order).contains(value)), "{}", order_name(order));
            }
            let names: Vec<String> = orders.taken.iter().map(order_name).collect();
            assert_ne!(names[0], names[1]);
        });
    }

    #[test]
    fn a_remark_is_shown_if_there_is_one() {
        let range = demo();
        let choice = Choice::starting(&range.models[0]).unwrap();
        let texts = ["", " Third floor, no lift. "].map(|remark| order_remarked(&range, &choice, remark));
        with_orders(&[range], &texts, |orders| {
            let found: Vec<Option<&str>> = orders.taken.iter().map(remark).collect();
            assert_eq!(found, [None, Some("Third floor, no lift.")]);
        });
    }
}

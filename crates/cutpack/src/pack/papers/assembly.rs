//! The assembly sheet of an order: what to mind first, then a picture for each step.

use slotwright_core::cabinet::layout::Picked;
use slotwright_core::cabinet::panel::PanelId;
use slotwright_core::statics::detent::leaf_opens;
use slotwright_core::words;
use slotwright_core::words::paper::{Label, Message};

use super::super::lot::parts;
use super::super::{Kind, TakenOrder};
use super::Desk;
use crate::describe::describe;
use crate::paper::Plate;
use crate::picture;

pub(super) fn write(desk: &mut Desk<'_, '_>, order: &TakenOrder<'_>) {
    let Some((built, assembly)) = order.cut.built.as_ref().zip(order.cut.assembly.as_ref()) else { return };
    let (range, tethered) = (order.cut.range, order.cut.is_tethered());
    let right = desk.of_customer(order);
    let mut paper = desk.paper(Label::Assembly, Some(range), &right, Label::GuidanceFoot.text());
    paper.paragraph(&describe(range, &order.spec.choice));
    paper.minor(Label::First.text());
    if tethered {
        paper.stop(Label::TetherFirst.text());
        paper.caution(Label::Children.text());
    }
    for caution in words::CAUTIONS {
        paper.caution(caution);
    }
    paper.paragraph(Label::NoHurry.text());
    paper.paragraph(&Message::PeopleForIt(assembly.people()).text());
    paper.paragraph(Label::Guidance.text());
    let opens = Picked::of(range, &order.spec.choice)
        .and_then(|picked| leaf_opens(picked, &order.spec.choice, &built.layout))
        .map(|force| words::decimal(force.in_newton(), 0));
    if let Some(newtons) = opens {
        paper.paragraph(&Message::DoorOpens(&newtons).text());
    }
    let disturbed: Vec<String> = assembly.disturbed.iter().map(words::disturbed).collect();
    paper.list(&disturbed);
    let marks: Vec<(PanelId, String)> =
        parts(order.number, &order.cut).map(|(_, part)| (part.panel.id, part.mark())).collect();
    let plates = picture::steps(built, assembly, tethered).into_iter().map(|picture| {
        let burden = picture.step.map(words::burden).unwrap_or_default();
        let step = Message::Step(picture.number, picture.of).text();
        let mark = picture.step.and_then(|step| marks.iter().find(|(id, _)| *id == step.part));
        Plate {
            vector: picture.vector(),
            alternative: picture.sentence.clone(),
            name: mark.map_or_else(|| step.clone(), |(_, mark)| format!("{step} \u{b7} {mark}")),
            text: if burden.is_empty() { picture.sentence } else { format!("{} {burden}", picture.sentence) },
        }
    });
    paper.plates(Label::Steps.text(), 2, &plates.collect::<Vec<_>>());
    desk.put(Kind::Assembly, Some(order.number), paper);
}

//! What goes along with the parts of an order: all that its assembly takes and that is not cut from a sheet.

use slotwright_core::cabinet::panel::PanelId;
use slotwright_core::rules::tether::longest_screw;
use slotwright_core::units::quantity::Length;
use slotwright_core::words::paper::{Label, Message};

use super::super::TakenOrder;
use super::mm;

/// Each as a text to be ticked.
pub(super) fn along(order: &TakenOrder<'_>) -> Vec<String> {
    let mut along = Vec::new();
    if let Some(built) = order.cut.built.as_ref().filter(|_| order.cut.is_tethered()) {
        along.push(Message::Tether(&mm(longest_screw(&built.layout))).text());
    }
    // The step of the top names the card of all leaves once more.
    let steps = order.cut.assembly.iter().flat_map(|assembly| &assembly.steps);
    let leaves = steps.filter(|step| matches!(step.part, PanelId::Leaf(_)));
    let cards: Vec<Length> = leaves.filter_map(|step| step.card).collect();
    if let Some(thick) = cards.first() {
        along.push(Message::Cards(cards.len(), &mm(*thick)).text());
    }
    along.push(Label::AssemblySheet.text().into());
    along
}

#[cfg(test)]
mod tests {
    use slotwright_core::choice::Fill;
    use slotwright_core::rules::sample::{Wanted, choices};

    use super::super::super::testing::{demo, order_of, with_orders};
    use super::*;

    /// As many strips of card as there are doors, as thick as the steps say; tethers where the unit has to be fastened; the sheet always.
    #[test]
    fn what_the_steps_ask_for_goes_along() {
        let range = demo();
        let texts: Vec<String> =
            choices(&range, 3, Wanted::Valid).take(12).map(|choice| order_of(&range, &choice)).collect();
        let gap = mm(range.build.leaf_gap_mm);
        with_orders(core::slice::from_ref(&range), &texts, |orders| {
            let mut met = [0, 0, 0];
            for order in &orders.taken {
                let is_leaf = |fill: &Fill| matches!(fill, Fill::Leaf(_));
                let doors = order.spec.choice.bays.iter().filter(|bay| is_leaf(&bay.fill)).count();
                let mut wanted = Vec::new();
                if order.cut.is_tethered() {
                    let layout = &order.cut.built.as_ref().unwrap().layout;
                    wanted.push(Message::Tether(&mm(longest_screw(layout))).text());
                }
                wanted.extend((doors > 0).then(|| Message::Cards(doors, &gap).text()));
                wanted.push(Label::AssemblySheet.text().to_owned());
                assert_eq!(along(order), wanted);
                met[doors.min(2)] += 1;
            }
            assert!(met.iter().all(|met| *met > 0), "{met:?}");
        });
    }
}

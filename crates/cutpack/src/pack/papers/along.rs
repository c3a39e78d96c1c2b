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

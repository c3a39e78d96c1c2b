//! What lies here, by the code of its label.

use slotwright_core::words;
use slotwright_core::words::workshop::Message;
use slotwright_cutpack::pack::lot::{Part, lots};
use slotwright_cutpack::pack::nest::StoredOffcut;
use slotwright_cutpack::pack::{OnePart, Orders, Pack, list};
use slotwright_protocol::packs::Found;

use crate::orders::sides;

/// A part of one of the orders, on its sheet if the pack cuts it.
pub(crate) fn part(orders: &Orders<'_>, pack: Option<&Pack<'_>>, code: &str) -> Option<Found> {
    let one: OnePart = code.parse().ok()?;
    let lots = lots(&orders.taken);
    let part = lots.iter().flat_map(|lot| &lot.parts).find(|part| one.is(part, orders))?;
    let customer = orders.taken.iter().find(|order| order.number == part.order).map(|order| &order.spec.customer.name);
    let sheet = pack.and_then(|pack| place(pack, part));
    let (mark, id) = (part.mark(), words::part(part.panel.id));
    let customer = customer.map_or("", String::as_str);
    let told =
        Message::Found { mark: &mark, part: &id, customer, sheet: sheet.map(|(_, sheet)| sheet), step: part.step };
    Some(Found { told: told.text(), order: Some(part.order), mark: mark.clone(), sheet })
}

/// In which lot of a pack a part is, and on which sheet.
fn place(pack: &Pack<'_>, part: &Part<'_>) -> Option<(u32, u32)> {
    let sheets = (0..).zip(&pack.lots).flat_map(|(lot, of)| of.sheets.iter().map(move |(sheet, _)| (lot, sheet)));
    sheets.filter(|(_, sheet)| sheet.has(part)).map(|(lot, sheet)| (lot, sheet.number)).next()
}

/// An offcut that the pack keeps, or one of the rack.
pub(crate) fn offcut(pack: &Pack<'_>, code: &str) -> Option<Found> {
    let told = |offcut: &StoredOffcut, sheet| {
        let sides = sides(&[offcut.size.along, offcut.size.across]);
        Message::FoundOffcut { name: &offcut.name, sides: &sides, sheet }.text()
    };
    let is_it = |offcut: &&StoredOffcut| offcut.name == code;
    for (at, lot) in (0..).zip(&pack.lots) {
        for (sheet, _) in &lot.sheets {
            if let Some(kept) = list::kept(&lot.lot, sheet, &pack.name).iter().find(is_it) {
                let told = told(kept, Some(sheet.number));
                return Some(Found { told, sheet: Some((at, sheet.number)), ..Found::default() });
            }
        }
    }
    let found = pack.settings.rack.iter().find(is_it)?;
    Some(Found { told: told(found, None), ..Found::default() })
}

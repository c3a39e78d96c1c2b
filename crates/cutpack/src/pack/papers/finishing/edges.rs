//! What a hand does to edges, tabs, pivots and rims of holes: only what the lot has.

use slotwright_core::cabinet::panel::{Ease, Feature, Panel};
use slotwright_core::units::quantity::Length;
use slotwright_core::words;
use slotwright_core::words::finishing::Message;
use slotwright_core::words::paper::Label;

use super::super::super::LotSheets;
use super::super::{metres, mm};
use crate::paper::{Column, Row, Table};

/// What the parts of a lot have for a hand to do, beside chamfers.
#[derive(Clone, Copy, Debug)]
struct Has {
    roundings: bool,
    tab_ends: bool,
    pivots: bool,
}

impl Has {
    fn of(lot: &LotSheets<'_>) -> Self {
        let panels = || lot.lot.parts.iter().map(|part| part.panel);
        let eased = |wanted: fn(Ease) -> bool| panels().flat_map(Panel::eased).any(|(_, ease)| wanted(ease));
        Self {
            roundings: eased(|ease| matches!(ease, Ease::Rounding(_))),
            tab_ends: eased(|ease| matches!(ease, Ease::TabEnds(_))),
            pivots: panels().any(|panel| pivots(panel).next().is_some()),
        }
    }
}

/// The diameters of a part's pivots.
fn pivots(panel: &Panel) -> impl Iterator<Item = Length> + '_ {
    panel.features.iter().filter_map(|feature| match *feature {
        Feature::Pivot { diameter, .. } => Some(diameter),
        Feature::Tab { .. }
        | Feature::Hook(_)
        | Feature::Detent(_)
        | Feature::Notch { .. }
        | Feature::Slot { .. }
        | Feature::Bore { .. }
        | Feature::Hole { .. }
        | Feature::TurnedSlot(_)
        | Feature::Bow(_) => None,
    })
}

/// The steps of a lot, each as a sentence.
pub(super) fn steps(lot: &LotSheets<'_>) -> Vec<String> {
    let has = Has::of(lot);
    let chamfer = lot.lot.range.build.tab_chamfer_mm;
    let tip = (chamfer > Length::ZERO).then(|| mm(chamfer));
    let pivot = lot.lot.parts.iter().find_map(|part| pivots(part.panel).next());
    let rounded = pivot.map(|diameter| Message::RoundPivots { diameter: &mm(diameter), tip: tip.as_deref() }.text());
    let ends = tip.as_deref().filter(|_| has.tab_ends).map(|size| Message::TabEnds(size).text());
    let eased = Message::EaseParts { are_rounded: has.roundings }.text();
    [eased].into_iter().chain(rounded).chain(ends).collect()
}

/// The edges of each part; no column for what none of them has.
pub(super) fn table(lot: &LotSheets<'_>) -> Table {
    let has = Has::of(lot);
    let tabs_and_pivots = match (has.tab_ends, has.pivots) {
        (true, true) => Some(Label::TabsAndPivots),
        (true, false) => Some(Label::Tabs),
        (false, true) => Some(Label::Pivots),
        (false, false) => None,
    };
    let columns = [
        Some(Column::fit(Label::Mark.text())),
        Some(Column::fit(Label::Part.text())),
        // Nearly all parts have chamfers, few are rounded; a figure has room in both.
        Some(Column::share(Label::Chamfer.text(), 1.1)),
        has.roundings.then(|| Column::share(Label::Rounding.text(), 0.9)),
        tabs_and_pivots.map(|label| Column::fit(label.text())),
        Some(Column::fit(Label::Edges.text()).end()),
    ];
    let is_there = columns.each_ref().map(Option::is_some);
    let only = |cells: [String; 6]| cells.into_iter().zip(is_there).filter_map(|(cell, is)| is.then_some(cell));
    let mut table = Table::new(columns.into_iter().flatten());
    let mut all = Length::ZERO;
    for part in &lot.lot.parts {
        let panel = part.panel;
        all += panel.finished_length();
        let chamfered = eased(panel, |ease| match ease {
            Ease::Chamfer(width) => Some(width),
            Ease::Rounding(_) | Ease::TabEnds(_) => None,
        });
        table.rows.push(Row::of(only([
            part.mark(),
            words::part(panel.id),
            [chamfered, rims(panel)].into_iter().flatten().collect::<Vec<_>>().join("\n"),
            eased(panel, |ease| match ease {
                Ease::Rounding(radius) => Some(radius),
                Ease::Chamfer(_) | Ease::TabEnds(_) => None,
            })
            .unwrap_or_default(),
            // No part has both.
            tab_ends(panel).or_else(|| rounded(panel)).unwrap_or_default(),
            metres(panel.finished_length()),
        ])));
    }
    let none = String::new;
    table.rows.push(Row::total(only([none(), none(), none(), none(), none(), metres(all)])));
    table
}

/// To which diameter pivots are rounded.
fn rounded(panel: &Panel) -> Option<String> {
    let diameter = pivots(panel).next()?;
    Some(Message::RoundedPivots(&mm(diameter)).text())
}

/// In which edges the ends of tabs are chamfered, and by how much.
fn tab_ends(panel: &Panel) -> Option<String> {
    let (edge, width) = panel.eased().find_map(|(edge, ease)| match ease {
        Ease::TabEnds(width) => Some((edge, width)),
        Ease::Chamfer(_) | Ease::Rounding(_) => None,
    })?;
    Some(Message::EasedTabs { edge: &words::edges(panel.id, &[edge]), size: &mm(width) }.text())
}

/// How many rims of holes are eased, how far on both faces, and how much.
fn rims(panel: &Panel) -> Option<String> {
    let count: u32 = panel.rims().map(|_| 1).sum();
    let long = metres(panel.rims().sum::<Length>() * 2.0);
    (count > 0).then(|| Message::EasedRims { count, long: &long, size: &mm(panel.ease) }.text())
}

/// Which edges are eased in one way, how far on both faces, and how much.
fn eased(panel: &Panel, wanted: fn(Ease) -> Option<Length>) -> Option<String> {
    let (mut edges, mut long, mut size) = (Vec::new(), Length::ZERO, Length::ZERO);
    for (edge, ease) in panel.eased() {
        let Some(of_edge) = wanted(ease) else { continue };
        edges.push(edge);
        long += panel.eased_length(edge, ease) * 2.0;
        size = of_edge;
    }
    let named = words::edges(panel.id, &edges);
    (!edges.is_empty()).then(|| Message::Eased { edges: &named, long: &metres(long), size: &mm(size) }.text())
}

#[cfg(test)]
mod tests {
    use slotwright_core::choice::Choice;

    use super::super::super::super::testing::{demo, order_of, with_orders};
    use super::super::super::super::{Nesting, Settings};
    use super::*;

    /// A back of its own board is a lot of its own, which has no pivots, no tabs in the table and nothing round, but rims of cable holes.
    #[test]
    fn a_lot_is_told_only_what_it_has() {
        let range = demo();
        let mut choice = Choice::first_of(&range).unwrap();
        choice.back = "birch-12".parse().unwrap();
        with_orders(core::slice::from_ref(&range), &[order_of(&range, &choice)], |orders| {
            let settings = Settings::default();
            let nesting = Nesting::begin(orders, &settings, None).unwrap();
            let pack = nesting.pack();
            let [body, back] = ["birch-18", "birch-12"]
                .map(|key| pack.lots.iter().find(|lot| lot.lot.board.key.as_str() == key).unwrap());
            let told = |lot| steps(lot).join(" ").to_lowercase();
            for word in ["pivot", "door", "round", "tabs"] {
                assert!(told(body).contains(word) && !told(back).contains(word), "{word}: {}", told(back));
            }
            assert!(told(body).contains(&format!("diameter of {}", mm(body.lot.board.thickness()))), "{}", told(body));
            assert_eq!((table(body).columns.len(), table(back).columns.len()), (6, 4));
            let panel = back.lot.parts[0].panel;
            // Two round holes of 60 mm, on both faces: 4 · 188.5 mm.
            assert_eq!(rims(panel).unwrap(), "2 rims of holes: 0.8\u{a0}m\u{a0}\u{d7}\u{a0}1\u{a0}mm");
            assert!(panel.finished_length() > panel.outer_length());
        });
    }
}

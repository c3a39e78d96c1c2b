//! What of each part stays uncoated while it is coated after cutting, and how far.
//!
//! The fit counts all coats on the faces of what goes into a slot, and none on the slot's walls but what gets behind the tape
//! (`statics/fit`); outlines are cut without a coat. So walls and narrow sides are masked, and no face is.

use std::collections::BTreeMap;

use slotwright_core::cabinet::panel::{Edge, Feature, Panel, PanelId};
use slotwright_core::units::quantity::Length;
use slotwright_core::words;
use slotwright_core::words::finishing::{Masked, Message};
use slotwright_core::words::paper::Label;

use super::super::super::LotSheets;
use super::super::{tenths, thickness};
use crate::paper::{Column, Paper, Row, Table};

pub(super) fn write(paper: &mut Paper, lot: &LotSheets<'_>) {
    let (finish, build) = (lot.lot.finish, &lot.lot.range.build);
    let through = lot.lot.board.thickness();
    paper.minor(Label::StaysUncoated.text());
    let (coats, clearance) = (thickness(finish.film_after() * 2.0), thickness(build.clearance_mm));
    paper.paragraph(&Message::Why { coats: &coats, clearance: &clearance }.text());
    let by_part: Vec<_> = lot.lot.parts.iter().map(|part| (part, places(part.panel, through))).collect();
    let mut kinds: Vec<Masked> = by_part.iter().flat_map(|(_, places)| places).map(|place| place.masked).collect();
    kinds.sort_unstable();
    kinds.dedup();
    paper.list(&kinds.into_iter().map(|kind| Message::How(kind).text()).collect::<Vec<_>>());
    let mut table = Table::new([
        Column::fit(Label::Mark.text()),
        Column::fit(Label::Part.text()),
        Column::share(Label::HowFar.text(), 1.0),
    ]);
    table.rows.extend(by_part.into_iter().map(|(part, places)| {
        let told: Vec<String> = places.iter().map(|place| place.text(part.panel.id)).collect();
        Row::of([part.mark(), words::part(part.panel.id), told.join("; ")])
    }));
    paper.table(&table);
}

/// Places of one kind on a part that are masked as far.
#[derive(Clone, Debug, PartialEq)]
struct Places {
    masked: Masked,
    count: usize,
    /// None for what is masked through the whole thickness.
    edges: Vec<Edge>,
    /// In millimetres, each figure once.
    far: Vec<String>,
}

impl Places {
    fn text(&self, id: PanelId) -> String {
        let edges = words::edges(id, &self.edges);
        let edges = Some(edges.as_str()).filter(|_| !self.edges.is_empty());
        Message::Places { masked: self.masked, count: self.count, edges, far: &self.far }.text()
    }
}

/// What of a part is masked, of a board so thick.
fn places(panel: &Panel, through: Length) -> Vec<Places> {
    // Figures in tenths of a millimetre, as they are written.
    let mut found: BTreeMap<(Masked, Option<Edge>), (usize, Vec<String>)> = BTreeMap::new();
    for feature in &panel.features {
        let Some((masked, edge, far)) = masked(panel, *feature, through) else { continue };
        let (count, figures) = found.entry((masked, edge)).or_default();
        *count += 1;
        if !figures.contains(&tenths(far)) {
            figures.push(tenths(far));
        }
    }
    let mut all: Vec<Places> = Vec::new();
    for ((masked, edge), (count, far)) in found {
        // What is the same at several edges is said once.
        match all.iter_mut().find(|known| known.masked == masked && known.far == far) {
            Some(known) => {
                known.count += count;
                known.edges.extend(edge);
            }
            None => all.push(Places { masked, count, edges: edge.into_iter().collect(), far }),
        }
    }
    all
}

/// Whether a feature is masked: as what, at which edge, and how far from the edge or through the part.
fn masked(panel: &Panel, feature: Feature, through: Length) -> Option<(Masked, Option<Edge>, Length)> {
    Some(match feature {
        Feature::Tab { edge, depth, .. } => {
            let is_ear = matches!(panel.id, PanelId::Shelf { .. }) && matches!(edge, Edge::Left | Edge::Right);
            (if is_ear { Masked::Ears } else { Masked::Tabs }, Some(edge), depth)
        }
        Feature::Pivot { edge, depth, .. } => (Masked::Pivots, Some(edge), depth),
        Feature::Hook(hook) => (Masked::Hooks, Some(Edge::Right), hook.out()),
        Feature::Detent(detent) => (Masked::Tongue, Some(Edge::Left), detent.out()),
        Feature::Notch { edge, depth, .. } => {
            let masked = if matches!(panel.id, PanelId::Leaf(_)) { Masked::Corner } else { Masked::Notches };
            (masked, Some(edge), depth)
        }
        Feature::Slot { .. } | Feature::TurnedSlot(_) => (Masked::Slots, None, through),
        Feature::Bore { .. } => (Masked::Bores, None, through),
        // Hands and cables go through these, and an arc is an edge like others.
        Feature::Hole { .. } | Feature::Bow(_) => return None,
    })
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use slotwright_core::cabinet::panel::Panel;
    use slotwright_core::rules::sample::{Wanted, choices};

    use super::super::super::super::testing::{demo, order_of, with_orders};
    use super::*;

    /// What goes into another part or takes one is masked, so is the tongue with the corner before it, and nothing else. Each part has
    /// a place for its mark that another part hides.
    #[test]
    fn what_fits_is_masked_and_nothing_else() {
        let range = demo();
        let mut seen = BTreeSet::new();
        for choice in choices(&range, 29, Wanted::Valid).take(12) {
            with_orders(core::slice::from_ref(&range), &[order_of(&range, &choice)], |orders| {
                let case = &orders.taken[0].cut.built.as_ref().unwrap().cut.case;
                let sides = case.joints.iter().flat_map(|joint| [joint.goes_in, joint.takes]);
                let joined: BTreeSet<_> = sides.map(|side| (side.panel, side.index)).collect();
                for panel in &case.panels {
                    for (index, feature) in (0..).zip(&panel.features) {
                        let is_latch = match feature {
                            Feature::Detent(_) => true,
                            Feature::Notch { .. } => matches!(panel.id, PanelId::Leaf(_)),
                            _ => false,
                        };
                        let told = masked(panel, *feature, Length::mm(17.7));
                        let is_joined = joined.contains(&(panel.id, index));
                        assert_eq!(told.is_some(), is_joined || is_latch, "{}: {feature:?}", panel.id);
                        seen.extend(told.map(|told| told.0));
                    }
                    let places = places(panel, Length::mm(17.7));
                    let marked = places.first().unwrap().masked;
                    assert!(!matches!(marked, Masked::Corner | Masked::Tongue), "{}: {marked:?}", panel.id);
                    let counted: usize = places.iter().map(|place| place.count).sum();
                    let features = panel.features.iter().filter(|one| masked(panel, **one, Length::ZERO).is_some());
                    assert_eq!(counted, features.count(), "{}", panel.id);
                }
            });
        }
        assert_eq!(seen.len(), 9, "{seen:?}");
    }

    /// Worked: tabs of 60 mm in both ends, 34.9 and 15.7 or 13.7 mm long, and two slots.
    #[test]
    fn a_part_is_told_how_far_each_place_is_masked() {
        let range = demo();
        let choice = choices(&range, 29, Wanted::Valid).next().unwrap();
        with_orders(core::slice::from_ref(&range), &[order_of(&range, &choice)], |orders| {
            let case = &orders.taken[0].cut.built.as_ref().unwrap().cut.case;
            let upright = case.panels.iter().find(|panel| panel.id == PanelId::Upright(1)).unwrap();
            let tab = |edge, depth| Feature::Tab {
                edge,
                from: Length::mm(40.0),
                to: Length::mm(100.0),
                depth: Length::mm(depth),
                taper: slotwright_core::cabinet::panel::Taper::default(),
            };
            let slot = Feature::Slot {
                from: slotwright_core::geometry::outline::Point::default(),
                to: slotwright_core::geometry::outline::Point::default(),
            };
            let features = vec![
                tab(Edge::Bottom, 34.9),
                tab(Edge::Top, 15.7),
                tab(Edge::Bottom, 34.9),
                tab(Edge::Top, 13.7),
                slot,
                slot,
            ];
            let panel = Panel { features, ..upright.clone() };
            let told: Vec<String> = places(&panel, Length::mm(17.7)).iter().map(|place| place.text(panel.id)).collect();
            let wanted =
                ["2 tabs at bottom: 34.9\u{a0}mm", "2 tabs at top: 15.7 and 13.7\u{a0}mm", "2 slots: 17.7\u{a0}mm"];
            assert_eq!(told, wanted);
        });
    }
}

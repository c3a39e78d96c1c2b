//! Where a vertex lies in the wood of its panel: what a shader draws grain and plies from.

use slotwright_core::cabinet::panel::{End, GrainAxis, Panel, PanelId};
use slotwright_solid::mesh::Vertex;

use crate::single;

/// Metres along the face grain, metres across it, depth as a share of the thickness, and what is seen: 0 on a face; from 1 to 2
/// on an edge, 1 where it runs along the face grain and 2 where it cuts it.
pub(crate) type Place = [f32; 4];

/// Something that is no part of the unit.
pub(crate) const PLAIN: Place = [0.0; 4];

pub(crate) fn place(panel: &Panel, vertex: &Vertex, is_edge: bool) -> Place {
    let ([u, v, w], [out_u, out_v, _]) = (vertex.at, vertex.normal);
    let ((along, across), cut) = match panel.grain {
        GrainAxis::AlongU => ((u, v), out_u),
        GrainAxis::AlongV => ((v, u), out_v),
    };
    let from = sheet_place(panel.id);
    let [along, across] = [along, across].map(|mm| single(mm / 1000.0));
    let depth = single(w / panel.thickness.in_mm());
    [along + from, across + from * 0.7, depth, if is_edge { 1.0 + single(cut.abs()) } else { 0.0 }]
}

/// Where on an endless sheet a part is cut, in metres: each from another place, so that neighbours do not look alike, and the
/// same part always from the same, whatever the size of the unit.
fn sheet_place(id: PanelId) -> f32 {
    let number = match id {
        PanelId::PlinthFront => 200,
        PanelId::PlinthRear => 201,
        PanelId::Bearer(number) => 210 + u16::from(number),
        PanelId::BaseLower => 0,
        PanelId::BaseUpper => 1,
        PanelId::Back => 2,
        PanelId::Top => 3,
        PanelId::Upright(number) => 4 + u16::from(number),
        PanelId::Stile(number) => 300 + u16::from(number),
        PanelId::Stop(bay) => 2200 + u16::from(bay),
        PanelId::Leaf(bay) => 600 + u16::from(bay),
        PanelId::Stave { end, number } => 1500 + u16::from(number) + if end == End::Left { 0 } else { 300 },
        PanelId::Shelf { bay, row } => 900 + u16::from(bay) * 40 + u16::from(row),
    };
    // The golden section leaves no two of them close to each other.
    let turn = f32::from(number) * 0.618_034;
    (turn - libm::floorf(turn)) * 50.0
}

//! Panels and joints as documents say them: outlines with units in their names, and their digest.
//!
//! Lengths are millimetres rounded to a hundredth, masses whole grams.

use serde::Serialize;

use crate::business::built::Built;
use crate::cabinet::joint::JointKind;
use crate::cabinet::panel::{Ease, Edge, GrainAxis, PanelId, Stock};
use crate::geometry::outline::Outline;
use crate::geometry::space::{Lie, Spot};
use crate::input::seal::{Digest, canonical};
use crate::units::quantity::Length;
use crate::units::rounding::round_half_away;

/// All panels and joints.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Parts {
    /// The panels in reading order.
    pub panels: Vec<PanelDocument>,
    /// The joints.
    pub joints: Vec<JointDocument>,
}

/// One panel.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PanelDocument {
    /// Which part.
    #[cfg_attr(feature = "schema", schemars(with = "String"))]
    pub id: PanelId,
    /// `body` or `back`.
    pub stock: &'static str,
    /// Direction of the face grain: `u` or `v`.
    pub grain: &'static str,
    /// Size of the blank with tabs: along u, along v.
    pub blank_mm: [f64; 2],
    /// Thickness with its film.
    pub thickness_mm: f64,
    /// Mass.
    pub mass_g: i64,
    /// Place of its lower left corner in the case: x, y, z.
    pub origin_mm: [f64; 3],
    /// `flat`, `facing`, `side`, or `turned` about the upright axis through its corner.
    pub lie: &'static str,
    /// Of a turned panel: the level direction x, y along which its u runs; its thickness goes a quarter turn further on, from x
    /// to y.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub aim: Option<[f64; 2]>,
    /// What a hand eases on both faces.
    pub eased: Vec<EasedDocument>,
    /// The outer outline, counter-clockwise: u, v, bulge of each corner.
    pub outline: Vec<[f64; 3]>,
    /// The holes, clockwise.
    pub holes: Vec<Vec<[f64; 3]>>,
}

/// An edge that is eased by hand; the outline stays as it is.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EasedDocument {
    /// `bottom`, `right`, `top` or `left`.
    pub edge: &'static str,
    /// `chamfer`, `rounding`, or `tab-ends`: a chamfer of the ends of the tabs in the edge, which stays sharp itself.
    pub how: &'static str,
    /// Width of the chamfer or radius of the rounding.
    pub size_mm: f64,
}

/// One joint.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct JointDocument {
    /// The part that goes in.
    #[cfg_attr(feature = "schema", schemars(with = "String"))]
    pub goes_in: PanelId,
    /// The part that takes it.
    #[cfg_attr(feature = "schema", schemars(with = "String"))]
    pub takes: PanelId,
    /// Which of several between the two.
    pub number: u8,
    /// `tab`, `ear`, `hook` or `pivot`.
    pub kind: &'static str,
    /// Clearance, both sides together.
    pub clearance_mm: f64,
    /// The material inside the taking part, or the box round it where it stands turned, lower corner: x, y, z.
    pub from_mm: [f64; 3],
    /// Its upper corner.
    pub to_mm: [f64; 3],
}

impl EasedDocument {
    fn of((edge, ease): (Edge, Ease)) -> Self {
        let (how, size) = match ease {
            Ease::Chamfer(width) => ("chamfer", width),
            Ease::Rounding(radius) => ("rounding", radius),
            Ease::TabEnds(width) => ("tab-ends", width),
        };
        let edge = match edge {
            Edge::Bottom => "bottom",
            Edge::Right => "right",
            Edge::Top => "top",
            Edge::Left => "left",
        };
        Self { edge, how, size_mm: mm(size) }
    }
}

impl Parts {
    /// Those of a unit.
    pub fn of(built: &Built) -> Self {
        let panels = built.cut.weighed().map(|(panel, weighed)| {
            let (along_u, along_v) = panel.blank();
            PanelDocument {
                id: panel.id,
                stock: match panel.stock {
                    Stock::Body => "body",
                    Stock::Back => "back",
                },
                grain: match panel.grain {
                    GrainAxis::AlongU => "u",
                    GrainAxis::AlongV => "v",
                },
                blank_mm: [mm(along_u), mm(along_v)],
                thickness_mm: mm(panel.thickness),
                mass_g: weighed.mass.to_gram(),
                origin_mm: spot(panel.case_from_panel.origin),
                lie: match panel.case_from_panel.lie {
                    Lie::Flat => "flat",
                    Lie::Facing => "facing",
                    Lie::Side => "side",
                    Lie::Turned(_) => "turned",
                },
                aim: match panel.case_from_panel.lie {
                    Lie::Turned(aim) => Some([aim.x, aim.y].map(millionths)),
                    Lie::Flat | Lie::Facing | Lie::Side => None,
                },
                eased: panel.eased().map(EasedDocument::of).collect(),
                outline: corners(&panel.outline()),
                holes: panel.holes().map(|hole| corners(&hole)).collect(),
            }
        });
        let joints = built.cut.case.joints.iter().map(|joint| JointDocument {
            goes_in: joint.id.goes_in,
            takes: joint.id.takes,
            number: joint.id.number,
            kind: match joint.kind {
                JointKind::Tab => "tab",
                JointKind::Ear => "ear",
                JointKind::Hook => "hook",
                JointKind::Pivot => "pivot",
                JointKind::Lap => "lap",
            },
            clearance_mm: mm(joint.clearance),
            from_mm: spot(joint.shared.from),
            to_mm: spot(joint.shared.to),
        });
        Self { panels: panels.collect(), joints: joints.collect() }
    }

    /// Equal digests, equal parts.
    pub fn digest(&self) -> Digest {
        Digest::of(canonical(self).as_bytes())
    }
}

/// A length as documents show it; never −0.
pub(crate) fn mm(length: Length) -> f64 {
    length.to_hundredth_mm() + 0.0
}

/// A place in the case, likewise.
pub(crate) fn spot(spot: Spot) -> [f64; 3] {
    [mm(spot.x), mm(spot.y), mm(spot.z)]
}

/// Bulges are rounded to a millionth: less than a hundredth of a millimetre on any arc here.
fn corners(outline: &Outline) -> Vec<[f64; 3]> {
    outline.corners().iter().map(|corner| [mm(corner.at.u), mm(corner.at.v), millionths(corner.bulge)]).collect()
}

/// A figure without a unit to a millionth; never −0.
fn millionths(figure: f64) -> f64 {
    round_half_away(figure * 1e6) / 1e6 + 0.0
}

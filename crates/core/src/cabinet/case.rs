//! The case: all panels and joints of one choice.

use crate::cabinet::joint::Joint;
use crate::cabinet::layout::{Layout, Picked};
use crate::cabinet::panel::{Panel, PanelId};
use crate::choice::Choice;
use crate::geometry::space::Spot;
use crate::units::quantity::{Length, Mass};

mod build;
mod join;

/// All panels and joints of one choice.
#[derive(Clone, Debug, PartialEq)]
pub struct Case {
    /// The panels in the order of their ids.
    pub panels: Vec<Panel>,
    /// The joints in the order of their ids.
    pub joints: Vec<Joint>,
}

/// A mass and where it acts.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Weighed {
    /// The mass.
    pub mass: Mass,
    /// Its centre.
    pub centre: Spot,
}

impl Case {
    /// Builds the panels and joints.
    ///
    /// `None` if the layout leaves no room for its parts: the rules on sizes say why.
    pub fn of(picked: Picked<'_>, choice: &Choice, layout: &Layout) -> Option<Self> {
        build::case(picked, choice, layout)
    }

    /// The leaf of a bay as it is in the case, without the rest of it; `None` if the bay has none.
    pub(crate) fn leaf(picked: Picked<'_>, choice: &Choice, layout: &Layout, bay: u8) -> Option<Panel> {
        build::leaf(picked, choice, layout, bay)
    }

    /// The panel of that id.
    pub fn panel(&self, id: PanelId) -> Option<&Panel> {
        self.panels.binary_search_by(|panel| panel.id.cmp(&id)).ok().and_then(|at| self.panels.get(at))
    }

    /// Mass and centre of one panel: board by measured thickness, film on both faces.
    ///
    /// Film on edges is left out; it is under 0.1 % of a panel.
    pub fn weigh(panel: &Panel, picked: Picked<'_>) -> Weighed {
        let board = picked.board(panel.stock);
        let (area, centroid) = panel.solid();
        let wood = board.density_kg_per_m3.mass_of(area, board.thickness());
        let film = picked.finish.film_kg_per_m3.mass_of(area, picked.finish.dry_film() * 2.0);
        let centre = panel.case_from_panel.spot(centroid, panel.thickness / 2.0);
        Weighed { mass: wood + film, centre }
    }

    /// Mass and centre of each panel, in their order.
    pub fn weigh_parts(&self, picked: Picked<'_>) -> Vec<(PanelId, Weighed)> {
        self.panels.iter().map(|panel| (panel.id, Self::weigh(panel, picked))).collect()
    }
}

impl Weighed {
    /// Mass and centre of gravity of all parts of a unit together.
    pub fn whole(parts: &[(PanelId, Self)]) -> Self {
        let (mut mass, mut x, mut y, mut z) = (0.0, 0.0, 0.0, 0.0);
        for (_, part) in parts {
            let kg = part.mass.in_kg();
            mass += kg;
            x += kg * part.centre.x.in_mm();
            y += kg * part.centre.y.in_mm();
            z += kg * part.centre.z.in_mm();
        }
        let centre = Spot::new(Length::mm(x / mass), Length::mm(y / mass), Length::mm(z / mass));
        Self { mass: Mass::kg(mass), centre }
    }
}

/// A case with the mass and centre of each of its panels: cut and weighed once for all who ask.
#[derive(Clone, Debug, PartialEq)]
pub struct WeighedCase {
    /// Panels and joints.
    pub case: Case,
    /// Mass and centre of gravity of each panel, in their order.
    pub parts: Vec<(PanelId, Weighed)>,
}

impl WeighedCase {
    /// Builds the panels and joints, and weighs them.
    ///
    /// `None` if the layout leaves no room for its parts: the rules on sizes say why.
    pub fn of(picked: Picked<'_>, choice: &Choice, layout: &Layout) -> Option<Self> {
        let case = Case::of(picked, choice, layout)?;
        let parts = case.weigh_parts(picked);
        Some(Self { case, parts })
    }

    /// The mass of a part.
    pub(crate) fn mass(&self, id: PanelId) -> Option<Mass> {
        let at = self.parts.binary_search_by(|(known, _)| known.cmp(&id)).ok()?;
        self.parts.get(at).map(|(_, part)| part.mass)
    }

    /// Each panel with its mass and centre of gravity.
    pub fn weighed(&self) -> impl Iterator<Item = (&Panel, Weighed)> {
        self.case.panels.iter().zip(&self.parts).map(|(panel, (_, part))| (panel, *part))
    }

    /// Each part with its width and its mass.
    pub(crate) fn masses(&self) -> impl Iterator<Item = (PanelId, Length, Mass)> {
        self.weighed().map(|(panel, part)| (panel.id, panel.width, part.mass))
    }
}

#[cfg(test)]
mod tests;

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

    /// Mass and centre of gravity of the whole, leaves closed.
    pub fn weigh_all(&self, picked: Picked<'_>) -> Weighed {
        let (mut mass, mut x, mut y, mut z) = (0.0, 0.0, 0.0, 0.0);
        for panel in &self.panels {
            let part = Self::weigh(panel, picked);
            let kg = part.mass.in_kg();
            mass += kg;
            x += kg * part.centre.x.in_mm();
            y += kg * part.centre.y.in_mm();
            z += kg * part.centre.z.in_mm();
        }
        let centre = Spot::new(Length::mm(x / mass), Length::mm(y / mass), Length::mm(z / mass));
        Weighed { mass: Mass::kg(mass), centre }
    }
}

#[cfg(test)]
mod tests;

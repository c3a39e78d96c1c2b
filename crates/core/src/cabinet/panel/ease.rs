//! Which edges a hand eases after cutting: those that people touch, never those that bear or fit. And the ends of tabs that have to
//! find their slots in the top across their faces: an outline tapers them along their faces alone.

use crate::units::quantity::Length;

use super::{Edge, Feature, Panel, PanelId};

/// What is done to an edge on both faces, by hand; it changes no figure of the panel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Ease {
    /// A chamfer that wide.
    Chamfer(Length),
    /// A rounding of that radius.
    Rounding(Length),
    /// A chamfer so wide of the ends of the tabs in the edge; the edge itself stays sharp.
    TabEnds(Length),
}

impl Panel {
    /// Length of an edge of its rectangle, along its bow if it has one.
    pub fn length_of(&self, edge: Edge) -> Length {
        let straight = match edge {
            Edge::Bottom | Edge::Top => self.width,
            Edge::Left | Edge::Right => self.height,
        };
        let bows = self.features.iter().filter_map(|feature| match feature {
            Feature::Bow(bow) if bow.edge == edge => Some(bow.added_length(self)),
            _ => None,
        });
        straight + bows.sum()
    }

    /// How far an edge is eased on one face: the ends of its tabs, or all of it.
    pub fn eased_length(&self, edge: Edge, ease: Ease) -> Length {
        let ends = self.features.iter().filter_map(|feature| match *feature {
            Feature::Tab { edge: of, from, to, taper, .. } if of == edge => Some(to - from - taper.across * 2.0),
            _ => None,
        });
        match ease {
            Ease::Chamfer(_) | Ease::Rounding(_) => self.length_of(edge),
            Ease::TabEnds(_) => ends.sum(),
        }
    }

    /// The eased edges, in the order in which the outline runs along them. Notches and slots in them stay sharp, and tabs but
    /// for the ends of those that are named.
    pub fn eased(&self) -> impl Iterator<Item = (Edge, Ease)> + '_ {
        let chamfer = Ease::Chamfer(self.ease);
        Edge::ALL.into_iter().filter_map(move |edge| {
            let ease = match (self.id, edge) {
                // What goes into the top stands free or may lean to the side until then; hooks hold the back from front to rear.
                (PanelId::Upright(_) | PanelId::Stile(_) | PanelId::Stop(_) | PanelId::Stave { .. }, Edge::Top)
                    if self.tab_chamfer > Length::ZERO =>
                {
                    Ease::TabEnds(self.tab_chamfer)
                }
                (PanelId::BaseLower | PanelId::BaseUpper | PanelId::Top, _)
                // The rear edge of an upright stands against the back.
                | (PanelId::Upright(_), Edge::Left)
                // The ends of a plinth's boards stand free; their long edges bear.
                | (
                    PanelId::PlinthFront
                    | PanelId::PlinthRear
                    | PanelId::Bearer(_)
                    | PanelId::Back
                    | PanelId::Stile(_)
                    | PanelId::Stop(_)
                    | PanelId::Stave { .. },
                    Edge::Left | Edge::Right,
                )
                | (PanelId::Leaf(_), Edge::Bottom | Edge::Top)
                | (PanelId::Shelf { .. }, Edge::Bottom) => chamfer,
                (PanelId::Leaf(_), Edge::Left | Edge::Right) => Ease::Rounding(self.rounding),
                (
                    PanelId::PlinthFront
                    | PanelId::PlinthRear
                    | PanelId::Bearer(_)
                    | PanelId::Upright(_)
                    | PanelId::Back
                    | PanelId::Stile(_)
                    | PanelId::Stop(_)
                    | PanelId::Stave { .. },
                    Edge::Bottom | Edge::Top,
                )
                | (PanelId::Upright(_), Edge::Right)
                | (PanelId::Shelf { .. }, Edge::Left | Edge::Right | Edge::Top) => return None,
            };
            Some((edge, ease))
        })
    }
}

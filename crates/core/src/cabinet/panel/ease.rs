//! Which edges a hand eases after cutting: those that people touch, never those that bear or fit.

use crate::units::quantity::Length;

use super::{Edge, Feature, Panel, PanelId};

/// What is done to an edge on both faces, by hand; it changes no figure of the panel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Ease {
    /// A chamfer that wide.
    Chamfer(Length),
    /// A rounding of that radius.
    Rounding(Length),
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

    /// The eased edges, in the order in which the outline runs along them. Tabs, notches and slots in
    /// them stay sharp.
    pub fn eased(&self) -> impl Iterator<Item = (Edge, Ease)> + '_ {
        let chamfer = Ease::Chamfer(self.ease);
        Edge::ALL.into_iter().filter_map(move |edge| {
            let ease = match (self.id, edge) {
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

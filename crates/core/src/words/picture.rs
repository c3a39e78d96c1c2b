//! Titles of pictures, and the unit in words beside its drawing.

use crate::cabinet::panel::PanelId;
use crate::choice::{Bowed, Fill};
use crate::units::quantity::Dim;

/// A unit as it is told; names are the range's.
#[derive(Clone, Copy, Debug)]
pub struct UnitTold<'a> {
    /// Name of the model.
    pub model: &'a str,
    /// Overall width.
    pub width: Dim,
    /// Overall height.
    pub height: Dim,
    /// Overall depth.
    pub depth: Dim,
    /// From the left.
    pub bays: &'a [BayTold<'a>],
    /// Name of the finish.
    pub finish: &'a str,
    /// How far its ends are bowed, and which, if any are.
    pub bow: Option<(Dim, Bowed)>,
    /// Height of the plinth that it stands on.
    pub plinth: Option<Dim>,
    /// Diagonal of the screen on it in tenths of an inch.
    pub screen_tenth_inch: Option<u16>,
}

/// A bay as it is told.
#[derive(Clone, Copy, Debug)]
pub struct BayTold<'a> {
    /// What it holds.
    pub fill: Fill,
    /// Name and place of its cable hole.
    pub hole: Option<(&'a str, Dim)>,
    /// Name of the device in it.
    pub device: Option<&'a str>,
}

/// Title of the picture of a step.
#[derive(Clone, Copy, Debug)]
pub struct StepTitle {
    /// Which step it is, from 1.
    pub number: u32,
    /// How many there are.
    pub of: u32,
    /// The part that is added; none in the last step.
    pub part: Option<PanelId>,
}

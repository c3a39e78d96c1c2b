//! Controls of our own. None of them knows what a cabinet is.

pub mod choices;
pub mod dimension;
pub mod slider;
pub mod stepper;
pub mod tells;

//! Controls of our own. None of them knows what a cabinet is.

use leptos::prelude::Callback;

pub mod choices;
pub mod optional;
pub mod slider;
pub mod stepper;
pub mod tells;

/// What stands in a field.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Entry {
    /// Its text: as it was typed if it could not be read.
    pub text: String,
    /// Whether it could not be read.
    pub bad: bool,
}

/// A value that a control reads anew whenever it changes: as good as a signal, and far fewer bytes.
pub type Read<T> = Callback<(), T>;

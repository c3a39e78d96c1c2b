//! Controls of our own. None of them knows what a cabinet is.

use leptos::prelude::Callback;

pub mod choices;
pub mod optional;
pub mod slider;
pub mod stepper;
pub mod tells;

/// A value that a control reads anew whenever it changes: as good as a signal, and far fewer bytes.
pub type Read<T> = Callback<(), T>;

//! Controls of our own. None of them knows what a cabinet is.

use leptos::prelude::Callback;
use leptos::tachys::html::InertElement;
use slotwright_core::words::page::Label;

pub mod choices;
pub mod notices;
pub mod optional;
pub mod slider;
pub mod stepper;

/// What stands in a field that is typed into or stepped: one type for all, since each type in a memo is code of its
/// own.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Entry {
    /// The present value in words: as it was typed if that was not taken.
    pub text: String,
    /// Why it was not taken, if it was not.
    pub wrong: String,
    /// Whether less can be had.
    pub less: bool,
    /// Whether more can be had.
    pub more: bool,
    /// Whether the present value is part of what stops the order.
    pub invalid: bool,
}

/// A value that a control reads anew whenever it changes: as good as a signal, and far fewer bytes.
pub type Read<T> = Callback<(), T>;

/// An element that holds nothing but a text, by its opening tag: what never changes is parsed by the browser, and needs
/// no code of its own for its kind of element.
pub fn inert(open: &str, label: Label) -> InertElement {
    InertElement::new([open, label.text()].concat())
}

//! Controls of our own. None of them knows what a cabinet is.

use std::cell::Cell;

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
    /// The same as a figure, where it is only stepped.
    pub figure: i32,
    /// Whether less can be had.
    pub less: bool,
    /// Whether more can be had.
    pub more: bool,
    /// Whether the present value is part of what stops the order.
    pub invalid: bool,
}

/// A value that a control reads anew whenever it changes: as good as a signal, and far fewer bytes.
pub type Read<T> = Callback<(), T>;

/// A name that no other element of the page has.
fn fresh_id() -> String {
    thread_local! {
        static LAST: Cell<u32> = const { Cell::new(0) };
    }
    LAST.set(LAST.get() + 1);
    ["part-", &LAST.get().to_string()].concat()
}

/// How many steps a key asks for, where up is more.
fn steps_of(key: &str) -> Option<i32> {
    Some(match key {
        "ArrowUp" => 1,
        "ArrowDown" => -1,
        "PageUp" => 10,
        "PageDown" => -10,
        _ => return None,
    })
}

/// An element that holds nothing but a text, by its opening tag: what never changes is parsed by the browser, and needs
/// no code of its own for its kind of element.
pub fn inert(open: &str, label: Label) -> InertElement {
    InertElement::new([open, label.text()].concat())
}

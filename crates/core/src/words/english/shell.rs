//! The page before its program runs, in English.

use crate::words::shell::Label;

pub(in crate::words) const fn label(of: Label) -> &'static str {
    match of {
        Label::Language => "en",
        Label::Title => "Slotwright: cabinets that hold by tabs and gravity",
        Label::Description => {
            "Configure a plywood cabinet without screws or glue: what can be made, what it weighs and costs, and when \
             it is ready."
        }
        Label::Promise => {
            "Cabinets of plywood that hold by tabs and gravity, without screws or glue. Choose a size, what goes in it \
             and how it looks: you see at once what can be made, what it costs and when it is ready."
        }
        Label::Loading => "Laying out the sheets \u{2026}",
        Label::NoScript => {
            "To show what can be made, this page computes in your browser, and for that it needs scripts. Allow them for \
             this page, or use another browser."
        }
        Label::Name => "Slotwright",
        Label::NewVersion => "A new version of this page is ready. What you chose stays.",
        Label::NewRange => "The workshop has changed its range: prices or limits may differ from what stands here.",
        Label::LoadNow => "Load it now",
        Label::Later => "Later",
        Label::Trouble => "The page does not go on",
        Label::TooOld => {
            "This browser cannot run the page: it is too old, or WebAssembly is switched off in it. Switch that on, or \
             use another browser."
        }
        Label::Missing => {
            "A part of the page did not arrive, or is of another day than the rest. Try again; what you chose before is \
             saved."
        }
        Label::Stopped => "The page has stopped by a fault of its own. What you chose is saved: load the page again.",
        Label::Slow => "This takes long: the line is slow, or a part of the page does not arrive.",
        Label::WhatIsMade => "What is made here",
    }
}

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
            "The page computes everything in your browser and needs JavaScript and WebAssembly for it. Ask the workshop \
             for a drawing instead."
        }
    }
}

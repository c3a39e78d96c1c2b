//! The drafts: a list of all that is kept in this browser, and up to four of them side by side. What is done in the dialog
//! is a part of the program that is loaded when somebody opens it.

pub mod list;

use leptos::prelude::*;
use slotwright_core::words::page::Label;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::{Element, HtmlInputElement};

use crate::browser::page;
use crate::part;
use crate::state::Desk;

/// The dialog's place in the page.
const DIALOG: &str = "drafts";

/// Something that a person does in the dialog.
#[derive(Debug)]
pub struct Act {
    desk: Desk,
    /// What stands on the button, and of which draft.
    what: String,
    /// What was typed.
    typed: String,
}

/// The dialog of the drafts: empty until `open` fills it.
#[component]
pub fn DraftsDialog() -> impl IntoView {
    let desk = Desk::here();
    let press = move |event: web_sys::MouseEvent| {
        let (Some(dialog), Some(what)) = (page::dialog(DIALOG), page::pressed(&event)) else { return };
        if what == "close" { dialog.close() } else { act(desk, what, String::new()) }
    };
    let rename = move |event: web_sys::Event| {
        let input = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
        if let Some((input, which)) = input.and_then(|input| Some((input.clone(), input.get_attribute("data-id")?))) {
            act(desk, ["rename ", &which].concat(), input.value());
        }
    };
    view! { <dialog id=DIALOG class="drafts-dialog" aria-labelledby="drafts-title" on:click=press on:change=rename></dialog> }
}

/// Opens the list.
pub fn open(desk: Desk) {
    if let Some(dialog) = page::dialog(DIALOG) {
        say(&dialog, Label::OpeningDrafts.text());
        page::show(&dialog, true);
        act(desk, "opened".into(), String::new());
    }
}

fn act(desk: Desk, what: String, typed: String) {
    spawn_local(async move {
        let missing = part::drafts(Act { desk, what, typed }).await.is_err();
        if let Some(dialog) = page::dialog(DIALOG).filter(|_| missing) {
            say(&dialog, Label::DeskNotLoaded.text());
        }
    });
}

/// Shows a sentence in place of the drafts.
fn say(dialog: &Element, sentence: &str) {
    let close = Label::Close.text();
    let title = Label::Drafts.text();
    dialog.set_inner_html(
        &[
            "<div class=\"order-head\"><h2 id=\"drafts-title\">",
            title,
            "</h2><button type=\"button\" data-do=\"close\">",
            close,
            "</button></div><p class=\"told\" role=\"status\"></p>",
        ]
        .concat(),
    );
    page::write(dialog, ".told", sentence);
}

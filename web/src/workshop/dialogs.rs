//! The dialogs: what is set for a pack, a sheet in large, papers to print.

use leptos::prelude::*;
use slotwright_core::words::workshop::Label;
use slotwright_protocol::packs::{Field, Question, Told};
use web_sys::KeyboardEvent;

use super::Saw;
use crate::browser::page;

/// Opens one.
pub(super) fn open(id: &str) {
    if let Some(dialog) = page::dialog(id) {
        page::show(&dialog, true);
    }
}

/// Closes the one that is open.
pub(super) fn close() {
    if let Some(dialog) = page::open_dialog() {
        page::show(&dialog, false);
    }
}

/// The head of a dialog: what it is, and the way out.
fn head(id: &'static str, title: Label) -> impl IntoView {
    view! {
        <div class="order-head">
            <h2 id=id>{title.text()}</h2>
            <button type="button" data-do="close">{Label::Close.text()}</button>
        </div>
    }
}

/// Says beneath each setting what is said of it.
pub(super) fn tell(told: &[Told]) {
    for (name, input) in page::named_inputs("[data-setting]") {
        let said = told.iter().find(|told| told.name == name);
        page::mark(&input, said.is_some_and(|told| told.wrong));
        page::write_to(&["told-", &name].concat(), said.map_or("", |told| &told.text));
    }
}

/// What can be set for a pack.
#[component]
pub(super) fn SettingsDialog(saw: Saw) -> impl IntoView {
    let set = move |_| {
        let fields = page::values("[data-setting]").into_iter().map(|(name, text)| Field { name, text });
        saw.change(&Question::Set(fields.collect()), []);
    };
    view! {
        <dialog id="settings-dialog" class="settings" aria-labelledby="settings-title" on:change=set>
            {head("settings-title", Label::Settings)}
            <div inner_html=move || saw.settings.get()></div>
        </dialog>
    }
}

/// Documents, each of which opens beside the page.
#[component]
pub(super) fn PrintDialog(saw: Saw) -> impl IntoView {
    let one = |[name, address]: [String; 2]| {
        view! { <li><a href=address target="_blank">{name}</a></li> }
    };
    view! {
        <dialog id="print-dialog" aria-labelledby="print-title">
            {head("print-title", Label::PrintAll)}
            <p>{Label::PrintHow.text()}</p>
            <ul class="documents">{move || saw.documents.get().into_iter().map(one).collect_view()}</ul>
        </dialog>
    }
}

/// How much larger or smaller at once.
const FACTOR: [u32; 2] = [3, 2];
/// A sheet is at most so large, in percent of its window.
const LARGEST: u32 = 760;

/// One sheet as large as it has to be.
#[component]
pub(super) fn LargeDialog(saw: Saw) -> impl IntoView {
    let key = move |event: KeyboardEvent| {
        let is_larger = match event.key().as_str() {
            "+" | "=" => true,
            "-" => false,
            _ => return,
        };
        // With a key held the browser enlarges all of the page.
        if !event.ctrl_key() && !event.meta_key() {
            zoom(saw, is_larger);
        }
    };
    view! {
        <dialog id="large-dialog" class="large" aria-labelledby="large-title" on:keydown=key>
            <div class="order-head">
                <h2 id="large-title"></h2>
                <div class="views">
                    <button type="button" data-do="smaller" aria-label=Label::Smaller.text() aria-disabled=move || (saw.zoom.get() <= 100).to_string()>"\u{2212}"</button>
                    <button type="button" data-do="larger" aria-label=Label::Larger.text() aria-disabled=move || (saw.zoom.get() >= LARGEST).to_string()>"+"</button>
                    <button type="button" data-do="close">{Label::Close.text()}</button>
                </div>
            </div>
            <div id="large-sheet" class="large-sheet" tabindex="0" role="region" aria-labelledby="large-title"></div>
        </dialog>
    }
}

/// Shows a sheet in large.
pub(super) fn enlarge(saw: Saw, number: &str) {
    let picture = ["[data-do=\"large ", number, "\"]"].concat();
    saw.zoom.set(100);
    if page::copy_picture(&picture, "large-sheet", "large-title") {
        page::size_picture("large-sheet", 100);
        open("large-dialog");
    }
}

/// Makes it larger or smaller.
pub(super) fn zoom(saw: Saw, is_larger: bool) {
    let [more, less] = FACTOR;
    let now = saw.zoom.get_untracked();
    let zoom = if is_larger { now * more / less } else { now * less / more };
    let zoom = zoom.clamp(100, LARGEST);
    saw.zoom.set(zoom);
    page::size_picture("large-sheet", zoom);
}

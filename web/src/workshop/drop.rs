//! Orders that are dropped anywhere on the page, or picked.

use leptos::prelude::{Callable, Callback};
use slotwright_protocol::packs::Question;
use wasm_bindgen::JsCast;
use web_sys::{DragEvent, File, HtmlInputElement};

use super::Saw;
use crate::browser::{files, page};

/// Takes what is dropped.
pub(super) fn listen(saw: Saw) {
    let Some(window) = web_sys::window() else { return };
    let heard = Callback::new(move |event: web_sys::Event| {
        let Some(event) = event.dyn_ref::<DragEvent>() else { return };
        // Else the browser would open the file in place of the page.
        event.prevent_default();
        let dropped = event.data_transfer().filter(|_| event.type_() == "drop").and_then(|carried| carried.files());
        if let Some(dropped) = dropped {
            take(saw, files::listed(&dropped));
        }
    });
    page::listen(&window, &["dragover", "drop"], Callback::new(move |event| heard.run(event)));
}

/// Takes what was picked; the same can be picked again.
pub(super) fn picked(saw: Saw, input: &HtmlInputElement) {
    if let Some(picked) = input.files() {
        take(saw, files::listed(&picked));
    }
}

fn take(saw: Saw, list: Vec<File>) {
    if list.is_empty() {
        return;
    }
    wasm_bindgen_futures::spawn_local(async move {
        let (names, contents): (Vec<String>, Vec<_>) = files::bytes(list).await.into_iter().unzip();
        saw.change(&Question::Files(names), contents);
    });
}

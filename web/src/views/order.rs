//! The order's dialog. What it shows is a part of the program that is loaded after the first view.

pub mod content;

use leptos::prelude::*;
use slotwright_core::words::page::Label;
use wasm_bindgen_futures::spawn_local;

use crate::browser::{first_view, page};
use crate::part;
use crate::parts::inert;

/// Begins the dialog's content for as long as the page is there; then makes it each time it is opened.
pub type Begin = fn(RwSignal<bool>) -> Callback<(), AnyView>;

/// The order as a dialog.
#[component]
pub fn Order(
    /// Whether it is open.
    open: RwSignal<bool>,
) -> impl IntoView {
    let dialog = NodeRef::<leptos::html::Dialog>::new();
    let (content, missing) = (RwSignal::new(None::<Callback<(), AnyView>>), RwSignal::new(false));
    let page = Owner::current();
    let load = Callback::new(move |()| {
        let page = page.clone();
        spawn_local(async move {
            match (part::dialogs().await, page) {
                // Asked for twice before it came, it is begun once.
                (Ok(dialogs), Some(page)) if content.with_untracked(Option::is_none) => {
                    content.set(Some(page.with(|| (dialogs.order)(open))));
                }
                (Ok(_), Some(_)) => {}
                _ => missing.set(true),
            }
        });
    });
    // It is there before anybody wants it, and waits for nothing of the first view.
    first_view::once_shown(load);
    Effect::new(move |_| {
        let Some(dialog) = dialog.get() else { return };
        page::show(&dialog, open.get());
        if open.get() && content.with_untracked(Option::is_none) {
            load.run(());
        }
    });
    let shown = move || match content.get() {
        Some(make) => make.run(()),
        None => {
            view! { <p class="told" role="status">{missing.get().then(|| Label::DeskNotLoaded.text())}</p> }.into_any()
        }
    };
    view! {
        <dialog node_ref=dialog class="order" aria-labelledby="order-title" on:close=move |_| open.set(false)>
            <div class="order-head">
                {inert("<h2 id=\"order-title\">", Label::OrderSpec)}
                <button type="button" on:click=move |_| open.set(false)>{Label::Close.text()}</button>
            </div>
            {move || open.get().then(shown)}
        </dialog>
    }
}

//! The link of the unit to take away: to copy, to share, and as a QR code for a phone. The order desk writes what is
//! shown of it.

use leptos::prelude::*;
use slotwright_core::words::page::Label;

use crate::browser::orders::{self, Answer};
use crate::browser::{fragment, page, share};
use crate::link;
use crate::state::Desk;

/// The dialog of the link; it opens when the desk has answered what was asked by `ask`.
#[component]
pub fn LinkDialog(
    /// What the desk made of it.
    shown: RwSignal<String>,
) -> impl IntoView {
    let dialog = NodeRef::<leptos::html::Dialog>::new();
    Effect::new(move |_| {
        if let Some(dialog) = dialog.get() {
            page::show(&dialog, !shown.read().is_empty());
        }
    });
    let press = move |event: web_sys::MouseEvent| {
        let Some(dialog) = dialog.get_untracked() else { return };
        let what = page::pressed(&event);
        wasm_bindgen_futures::spawn_local(async move {
            match what.as_deref() {
                Some("copy") => {
                    let copied = share::copy(&dialog).await;
                    let label = if copied { Label::LinkCopied } else { Label::LinkNotCopied };
                    page::write(&dialog, ".told", label.text());
                }
                Some("share") => share::share(&dialog).await,
                Some(_) => dialog.close(),
                None => {}
            }
        });
    };
    view! {
        <dialog node_ref=dialog class="link" aria-labelledby="link-title" on:click=press
            on:close=move |_| shown.set(String::new()) inner_html=move || shown.get()></dialog>
    }
}

/// Asks for what is shown of the present link; `told` gets what is to be said meanwhile, or why there is none.
pub fn ask(desk: Desk, shown: RwSignal<String>, told: RwSignal<String>) {
    told.set(Label::MakingLink.text().into());
    let on_answer = move |answer| match answer {
        Answer::Good(_, html) => {
            told.set(String::new());
            shown.set(html.as_string().unwrap_or_default());
        }
        Answer::Bad(sentence) => told.set(sentence),
    };
    let shared = if share::offered() { "1" } else { "" };
    let address = fragment::address(&link::of(desk).to_link());
    orders::ask(vec!["link".into(), address, shared.into()], Callback::new(on_answer));
}

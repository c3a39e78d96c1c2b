//! The link of the unit to take away: to copy, to share, and as a QR code for a phone. The order desk writes what is
//! shown of it.

use leptos::prelude::*;
use slotwright_core::words::page::Label;
use slotwright_protocol::desk::{Answer, Question};

use crate::browser::{fragment, orders, page, share};
use crate::link;
use crate::state::Desk;

/// The dialog's place in the page.
const DIALOG: &str = "unit-link";

/// The dialog of the link: empty until `ask` fills and opens it.
#[component]
pub fn LinkDialog() -> impl IntoView {
    let press = move |event: web_sys::MouseEvent| {
        let (Some(dialog), Some(what)) = (page::dialog(DIALOG), page::pressed(&event)) else { return };
        wasm_bindgen_futures::spawn_local(async move {
            match what.as_str() {
                "copy" => {
                    let copied = share::copy(&dialog).await;
                    let label = if copied { Label::LinkCopied } else { Label::LinkNotCopied };
                    page::write(&dialog, ".told", label.text());
                }
                "share" => share::share(&dialog).await,
                _ => dialog.close(),
            }
        });
    };
    view! { <dialog id=DIALOG class="link" aria-labelledby="link-title" on:click=press></dialog> }
}

/// Asks for what is shown of the present link; `told` gets what is to be said meanwhile, or why there is none.
pub fn ask(desk: Desk, told: RwSignal<String>) {
    show(desk, fragment::address(&link::of(desk).to_link()), told);
}

/// The same for an address.
pub fn show(desk: Desk, address: String, told: RwSignal<String>) {
    told.set(Label::MakingLink.text().into());
    let shown = move || desk.peek(|snapshot, _| snapshot.choice.clone());
    let asked = shown();
    let on_answer = move |(answer, _)| {
        // Another unit by now, or something else before the page: it can be asked for again.
        if shown() != asked || page::open_dialog().is_some() {
            return told.set(String::new());
        }
        let html = match answer {
            Answer::Shown(html) => html,
            Answer::No(why) => return told.set(why),
            Answer::File(..) | Answer::Order(_) | Answer::Said(_) => String::new(),
        };
        told.set(String::new());
        if let Some(dialog) = page::dialog(DIALOG) {
            dialog.set_inner_html(&html);
            page::show(&dialog, true);
        }
    };
    orders::ask(Question::Link { address, shared: share::offered() }, Callback::new(on_answer));
}

//! The solid to take away: as a file, and to be seen in the person's own room.

use leptos::prelude::*;
use slotwright_core::words::page::{Label, Message};
use slotwright_cutpack::describe::describe;
use slotwright_protocol::desk::{Answer, Question};

use super::link::{self, LinkDialog};
use crate::browser::{files, orders, page, room, speech};
use crate::parts::inert;
use crate::state::Desk;

/// Saving the solid, and standing it in the room where the device can show that.
#[component]
pub fn TakeAway() -> impl IntoView {
    let desk = Desk::here();
    let told = RwSignal::new(String::new());
    let (offered, standing) = (RwSignal::new(false), RwSignal::new(false));
    wasm_bindgen_futures::spawn_local(async move {
        let can = room::offered().await;
        offered.try_set(can);
    });
    speech::follow(Callback::new(move |()| told.get()));
    let free = move || desk.is_free();
    // What was said is about the unit as it was.
    Effect::new(move || {
        free();
        told.set(String::new());
    });
    let stopped = move || {
        let stopped = !untrack(free);
        if stopped {
            told.set(Label::UnmadeNotWritten.text().into());
        }
        stopped
    };
    let save = move |_| {
        if stopped() {
            return;
        }
        let on_answer = move |(answer, bytes)| {
            let saved = files::save(answer, "model/gltf-binary", &bytes);
            told.set(saved.map_or_else(|why| why, |name| Message::Saved(&name).text()));
        };
        told.set(Label::WritingSolid.text().into());
        orders::ask(Question::Solid(desk.unit()), Callback::new(on_answer));
    };
    let stand = move |_| {
        if !stopped() {
            standing.set(true);
        }
    };
    view! {
        <div class="views take" role="toolbar" aria-label=Label::TakeAway.text()>
            <button type="button" aria-disabled=move || (!free()).to_string() on:click=save>{Label::SaveSolid.text()}</button>
            <button type="button" class:away=move || !offered.get() aria-disabled=move || (!free()).to_string() on:click=stand>
                {Label::StandInRoom.text()}
            </button>
            <button type="button" on:click=move |_| link::ask(desk, told)>{Label::Link.text()}</button>
            <p class="told">{move || told.get()}</p>
        </div>
        <Room open=standing/>
        <LinkDialog/>
    }
}

/// The dialog in which the unit stands before it goes into the room.
#[component]
fn Room(open: RwSignal<bool>) -> impl IntoView {
    let desk = Desk::here();
    let dialog = NodeRef::<leptos::html::Dialog>::new();
    let host = NodeRef::<leptos::html::Div>::new();
    let told = RwSignal::new(String::new());
    // Both live as long as the dialog: an answer may come when it was closed, or closed and opened again.
    let broken = Callback::new(move |()| told.set(Label::ViewerNotLoaded.text().into()));
    let on_answer = Callback::new(move |(answer, bytes)| match (answer, host.get_untracked()) {
        (Answer::File(_), Some(host)) if open.get_untracked() => {
            told.set(String::new());
            let alt = desk.peek(|snapshot, range| describe(range, &snapshot.choice));
            room::clear(&host);
            room::stand(&host, &bytes, &alt, broken);
        }
        (Answer::No(sentence), _) => told.set(sentence),
        // Closed before the answer came.
        _ => {}
    });
    Effect::new(move |_| {
        let (Some(dialog), Some(host)) = (dialog.get(), host.get()) else { return };
        page::show(&dialog, open.get());
        room::clear(&host);
        if open.get() {
            told.set(Label::MakingSolid.text().into());
            orders::ask(Question::Solid(desk.unit()), on_answer);
        }
    });
    view! {
        <dialog node_ref=dialog class="room" aria-labelledby="room-title" on:close=move |_| open.set(false)>
            <div class="order-head">
                {inert("<h2 id=\"room-title\">", Label::InYourRoom)}
                <button type="button" on:click=move |_| open.set(false)>{Label::Close.text()}</button>
            </div>
            <div class="standing" node_ref=host></div>
            <p class="told" role="status">{move || told.get()}</p>
            {inert("<p class=\"cautions\">", Label::RoomCautions)}
        </dialog>
    }
}

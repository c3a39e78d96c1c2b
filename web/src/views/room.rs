//! The solid to take away: as a file, and to be seen in the person's own room.

pub mod viewer;

use leptos::prelude::*;
use slotwright_core::words::page::{Label, Message};
use slotwright_protocol::desk::Question;
use wasm_bindgen_futures::spawn_local;

use super::link::{self, LinkDialog};
use crate::browser::{files, orders, room, speech};
use crate::part;
use crate::state::Desk;

/// Makes the dialog in which the unit stands, once that part is there.
pub type Make = fn(RwSignal<bool>) -> AnyView;

/// Saving the solid, and standing it in the room where the device can show that.
#[component]
pub fn TakeAway() -> impl IntoView {
    let desk = Desk::here();
    let told = RwSignal::new(String::new());
    let (viewer, standing) = (RwSignal::new(None::<Make>), RwSignal::new(false));
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
            spawn_local(async move {
                if !room::is_possible().await {
                    return told.set(Label::NoRoom.text().into());
                }
                match part::dialogs().await {
                    Ok(dialogs) => {
                        // Made once: an answer may come to a dialog that was closed and opened again.
                        if viewer.with_untracked(Option::is_none) {
                            viewer.set(Some(dialogs.viewer));
                        }
                        standing.set(true);
                    }
                    Err(_) => told.set(Label::ViewerNotLoaded.text().into()),
                }
            });
        }
    };
    view! {
        <div class="views take" role="toolbar" aria-label=Label::TakeAway.text()>
            <button type="button" class:shut=move || !free() aria-describedby="verdict" on:click=save>{Label::SaveSolid.text()}</button>
            <button type="button" class:away=!room::is_offered() class:shut=move || !free() aria-describedby="verdict" on:click=stand>
                {Label::StandInRoom.text()}
            </button>
            <button type="button" on:click=move |_| link::ask(desk, told)>{Label::Link.text()}</button>
            <p class="told">{move || told.get()}</p>
        </div>
        {move || viewer.get().map(|make| make(standing))}
        <LinkDialog/>
    }
}

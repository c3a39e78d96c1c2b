//! The dialog in which the unit stands before it goes into the room: a part of the program that is loaded when somebody opens it.

use leptos::prelude::*;
use slotwright_core::words::page::Label;
use slotwright_cutpack::describe::describe;
use slotwright_protocol::desk::{Answer, Question};

use crate::browser::{orders, page, room};
use crate::parts::inert;
use crate::state::Desk;

/// The dialog, for as long as the page is there.
pub fn make(open: RwSignal<bool>) -> AnyView {
    view! { <Viewer open/> }.into_any()
}

#[component]
fn Viewer(open: RwSignal<bool>) -> impl IntoView {
    let desk = Desk::here();
    let dialog = NodeRef::<leptos::html::Dialog>::new();
    let host = NodeRef::<leptos::html::Div>::new();
    let told = RwSignal::new(String::new());
    // Both live as long as the dialog: an answer may come when it was closed, or closed and opened again.
    let broken = Callback::new(move |()| told.set(Label::ViewerNotLoaded.text().into()));
    let on_answer = Callback::new(move |(answer, bytes)| match (answer, host.get_untracked()) {
        (Answer::File(..), Some(host)) if open.get_untracked() => {
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

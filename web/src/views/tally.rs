//! The strip that always shows price, weight, date and state.

use std::time::Duration;

use leptos::prelude::*;
use slotwright_core::finding::Question;

use crate::browser::page;
use crate::parts::tells::Tone;
use crate::state::Desk;
use crate::tally::{spoken, tally_text};

/// A screen reader hears of a change when the person has paused for so long.
const PAUSE: Duration = Duration::from_millis(700);

/// Price, weight, date, state, and the way to the order.
#[component]
pub fn Tally(
    /// Hears that the person wants to order.
    order: Callback<()>,
) -> impl IntoView {
    let desk = Desk::here();
    let text = Memo::new(move |_| {
        let hints = desk.notes(|notes| notes.iter().filter(|note| note.tone != Tone::Stop).count());
        desk.read(|known, range| tally_text(range, known, hints))
    });
    let said = RwSignal::new(String::new());
    let pending = StoredValue::new(None::<TimeoutHandle>);
    Effect::new(move |before: Option<()>| {
        let sentence = text.with(spoken);
        if let Some(handle) = pending.try_update_value(Option::take).flatten() {
            handle.clear();
        }
        // The first reading is the page itself.
        if before.is_some() {
            let handle = set_timeout_with_handle(
                move || {
                    said.try_set(sentence);
                },
                PAUSE,
            )
            .ok();
            pending.try_set_value(handle);
        }
    });
    let jump = move |_| {
        let stop = desk.peek(|known, _| known.findings.first().map(|finding| finding.about));
        let first = stop.or_else(|| untrack(move || desk.notes(|notes| notes.first().map(|note| note.about))));
        page::scroll_to(first.map_or("questions", section_of));
    };
    let ask = move |event| {
        if page::lead_to_unread() {
            said.set("An entry could not be read. Mend it, then order.".into());
        } else if text.with_untracked(|text| text.good) {
            order.run(());
        } else {
            jump(event);
        }
    };
    view! {
        <footer class="tally">
            <dl class:off=move || text.with(|text| !text.good)>
                <div><dt>"Price with tax"</dt><dd>{move || text.get().price}</dd><dd class="under">{move || text.get().price_note}</dd></div>
                <div><dt>"Weight"</dt><dd>{move || text.get().mass}</dd><dd class="under">{move || text.get().mass_note}</dd></div>
                <div><dt>"With you by"</dt><dd>{move || text.get().day}</dd><dd class="under">{move || text.get().day_note}</dd></div>
            </dl>
            <button type="button" class="state" class:good=move || text.with(|text| text.good) on:click=jump>
                <span>{move || text.get().state}</span><span class="under">{move || text.get().state_note}</span>
            </button>
            <button type="button" class="main" aria-disabled=move || text.with(|text| !text.good).to_string()
                on:click=ask>
                "Order spec"
            </button>
            <p class="unseen" role="status">{move || said.get()}</p>
        </footer>
    }
}

fn section_of(question: Question) -> &'static str {
    match question {
        Question::Place => "question-place",
        Question::Model | Question::Width | Question::Height | Question::Depth | Question::Bays => "question-size",
        Question::Bay(_) | Question::Shares | Question::Hole(_) | Question::Device(_) => "question-bays",
        Question::Back | Question::Finish | Question::Corners => "question-looks",
    }
}

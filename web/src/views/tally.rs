//! The strip that always shows price, weight, date and state.

use std::time::Duration;

use leptos::prelude::*;
use slotwright_core::choice::question::Question;
use slotwright_core::words::page::{Label, Message};

use crate::browser::page;
use crate::debounce::debounce;
use crate::parts::inert;
use crate::parts::notices::Tone;
use crate::state::Desk;
use crate::tally::{Hindrance, TallyText, spoken, tally_text};
use crate::views::header::{NO_RANGE, WRONG_CLOCK};

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
        let hints = desk.advice(|all| {
            let beyond = all.iter().any(|advice| advice.tone == Tone::Warn && advice.about == Question::Place);
            (all.iter().filter(|advice| advice.tone != Tone::Stop).count(), beyond)
        });
        let (hindrance, today) = (desk.hindrance(), desk.present_day());
        desk.read(|snapshot, range| tally_text(range, (snapshot, today), hints, hindrance))
    });
    let said = RwSignal::new(String::new());
    // The first reading is the page itself.
    let first = text.with_untracked(spoken);
    // What a step did is said once, with what came of it; what is only found out later goes alone.
    let last = StoredValue::new(0);
    let speak = move |(told, did, now): (u32, String, String)| {
        let fresh = !did.is_empty() && last.get_value() != told;
        if fresh {
            last.set_value(told);
        }
        said.update(|said| {
            if fresh {
                *said = [did.as_str(), &now].join(" ");
            } else if !said.is_empty() || now != first {
                *said = now;
            }
        });
    };
    let line = move || {
        let [what, effect] = desk.did();
        if effect.is_empty() { what } else { Message::SpokenStep(&what, &effect).text() }
    };
    debounce(PAUSE, move || (desk.last_step.told.get(), line(), text.with(spoken)), Callback::new(speak));
    let part = move |of: fn(&TallyText) -> &String| move || text.with(|text| of(text).clone());
    let jump = move |_| {
        if page::lead_to_unread() {
            return;
        }
        let stop = desk.peek(|snapshot, _| snapshot.findings.first().map(|finding| finding.about));
        let hindrance = untrack(move || desk.hindrance());
        if hindrance == Some(Hindrance::WrongClock) {
            page::scroll_to(WRONG_CLOCK);
        } else if stop.is_none() && desk.is_built_in() {
            page::scroll_to(NO_RANGE);
        } else if !page::lead_to_notice() {
            page::scroll_to(stop.map_or("questions", section_of));
        }
    };
    let ask = move |event| {
        if text.with_untracked(|text| text.good) {
            order.run(());
        } else {
            said.set(Message::NotOrderedYet(&text.with_untracked(spoken)).text());
            jump(event);
        }
    };
    let turn = move |_| if desk.last_step.undid.get_untracked() { desk.redo() } else { desk.undo() };
    view! {
        <footer class="tally">
            <dl class:off=move || text.with(|text| !text.good)>
                <div>{inert("<dt>", Label::PriceWithTax)}<dd>{part(|text| &text.price)}</dd><dd class="under">{part(|text| &text.price_note)}</dd></div>
                <div>{inert("<dt>", Label::Weight)}<dd>{part(|text| &text.mass)}</dd><dd class="under">{part(|text| &text.mass_note)}</dd></div>
                <div>{inert("<dt>", Label::WithYouBy)}<dd>{part(|text| &text.day)}</dd><dd class="under">{part(|text| &text.day_note)}</dd></div>
            </dl>
            <div class="verdict">
                <button type="button" class="state" class:good=move || text.with(|text| text.good && !text.but)
                    class:but=move || text.with(|text| text.but) on:click=jump>
                    <span>{part(|text| &text.state)}</span><span class="under">{part(|text| &text.state_note)}</span>
                </button>
                <p class="did" class:gone=move || !desk.shows_last_step() || desk.hindrance().is_some()>
                    <span class="what">{move || desk.did()[0].clone()}</span>
                    <span class="effect">{move || desk.did()[1].clone()}</span>
                    <button type="button" class="remedy" on:click=turn>
                        {move || if desk.last_step.undid.get() { Label::Redo } else { Label::Undo }.text()}
                    </button>
                </p>
            </div>
            <button type="button" class="main" aria-disabled=move || text.with(|text| !text.good).to_string()
                on:click=ask>
                {Label::OrderSpec.text()}
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

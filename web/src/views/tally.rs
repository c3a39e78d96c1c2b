//! The strip that always shows price, weight, date and state.

use leptos::prelude::*;
use slotwright_core::choice::question::Question;
use slotwright_core::rules::finding::Severity;
use slotwright_core::words::page::{Label, Message};
use slotwright_protocol::adviser::Advice;

use crate::browser::{page, speech};
use crate::parts::inert;
use crate::state::Desk;
use crate::tally::{Hindrance, TallyText, tally_text};
use crate::views::aloud;
use crate::views::header::{NO_RANGE, WRONG_CLOCK};

/// Price, weight, date, state, and the way to the order.
#[component]
pub fn Tally(
    /// Hears that the person wants to order.
    order: Callback<()>,
) -> impl IntoView {
    let desk = Desk::here();
    let text = Memo::new(move |_| {
        let is_beyond = |advice: &Advice| advice.severity == Severity::Warns && advice.about == Question::Place;
        let hints = (desk.hints(), desk.advice(|all| all.iter().any(is_beyond)));
        let (hindrance, today) = (desk.hindrance(), desk.present_day());
        desk.read(|snapshot, range| tally_text(range, (snapshot, today), hints, hindrance))
    });
    let now = move || aloud::now(desk, text);
    aloud::follow(desk, text);
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
            speech::say(&Message::NotOrderedYet(&untrack(now)).text());
            jump(event);
        }
    };
    let turn = move |_| if desk.last_step.undid.get_untracked() { desk.redo() } else { desk.undo() };
    view! {
        <footer class="tally">
            <dl id="figures" class:off=move || text.with(|text| !text.good)>
                <div>{inert("<dt>", Label::PriceWithTax)}<dd>{part(|text| &text.price)}</dd><dd class="under">{part(|text| &text.price_note)}</dd></div>
                <div>{inert("<dt>", Label::Weight)}<dd>{part(|text| &text.mass)}</dd><dd class="under">{part(|text| &text.mass_note)}</dd></div>
                <div>{inert("<dt>", Label::WithYouBy)}<dd>{part(|text| &text.day)}</dd><dd class="under">{part(|text| &text.day_note)}</dd></div>
            </dl>
            <div class="verdict">
                <button type="button" id="verdict" class="state" class:good=move || text.with(|text| text.good && !text.but)
                    class:but=move || text.with(|text| text.but) on:click=jump>
                    <span>{part(|text| &text.state)}</span><span class="under">{part(|text| &text.state_note)}</span>
                </button>
                <p class="did" class:gone=move || !desk.shows_last_step() || desk.hindrance().is_some()>
                    <span><span class="what">{move || desk.did()[0].clone()}</span>" "<span class="effect">{move || desk.did()[1].clone()}</span></span>
                    <button type="button" class="remedy" class:away=move || desk.did()[2].is_empty() popovertarget="changed">{Label::Which.text()}</button>
                    <span id="changed" popover="auto">{move || desk.did()[2].clone()}</span>
                    <button type="button" class="remedy" on:click=turn>
                        {move || if desk.last_step.undid.get() { Label::Redo } else { Label::Undo }.text()}
                    </button>
                </p>
            </div>
            <button type="button" id="order" class="main" class:shut=move || text.with(|text| !text.good)
                aria-describedby="verdict figures" aria-keyshortcuts="Control+Enter" on:click=ask>
                {Label::OrderSpec.text()}
            </button>
        </footer>
    }
}

fn section_of(question: Question) -> &'static str {
    match question {
        Question::Place => "question-place",
        Question::Model | Question::Width | Question::Height | Question::Depth | Question::Bays | Question::Plinth => {
            "question-size"
        }
        Question::Bay(_) | Question::Shares | Question::Hole(_) | Question::Device(_) => "question-bays",
        Question::Back | Question::Finish | Question::Corners | Question::Bow | Question::Bowed => "question-looks",
    }
}

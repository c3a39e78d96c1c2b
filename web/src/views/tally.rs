//! The strip that always shows price, weight, date and state.

use std::time::Duration;

use leptos::prelude::*;
use slotwright_core::choice::question::Question;
use slotwright_core::rules::finding::{Finding, Severity};
use slotwright_core::words;
use slotwright_core::words::page::{Label, Message};
use slotwright_protocol::adviser::{Advice, Cause};

use crate::browser::{page, speech};
use crate::debounce::debounce;
use crate::parts::inert;
use crate::state::Desk;
use crate::tally::{Hindrance, TallyText, spoken, tally_text};
use crate::views::header::{NO_RANGE, WRONG_CLOCK};

/// A screen reader hears of a change when the person has paused for so long.
const PAUSE: Duration = Duration::from_millis(700);

/// A notice, and what it is about: while that stays it is the same one, whatever figures are in its sentence.
#[derive(Clone)]
struct Told {
    cause: Cause,
    about: Question,
    sentence: String,
}

impl Told {
    fn is_of(&self, other: &Self) -> bool {
        (self.cause, self.about) == (other.cause, other.about)
    }
}

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
    let now =
        move || {
            let wrong = desk.unread.first().map(|field| desk.wrong(field)).unwrap_or_default();
            text.with(|text| {
                if wrong.is_empty() { spoken(text) } else { Message::SpokenUnread(&text.state_note, &wrong).text() }
            })
        };
    // What stops the order, then what else is good to know.
    let notices = move || {
        let stop = |finding: &Finding| Told {
            cause: Cause::Rule(finding.rule),
            about: finding.about,
            sentence: words::reason(finding),
        };
        let hint = |Advice { cause, about, sentence, .. }: &Advice| Told {
            cause: *cause,
            about: *about,
            sentence: sentence.clone(),
        };
        let mut notices: Vec<Told> = desk.read(|snapshot, _| snapshot.findings.iter().map(stop).collect());
        desk.advice(|all| notices.extend(all.iter().filter(|advice| advice.severity != Severity::Stops).map(hint)));
        notices
    };
    // The first reading is the page itself. What a step did is said once, with what it brought or else what came of it;
    // what is only found out later goes alone.
    let last = StoredValue::new((0, untrack(now), Vec::<Told>::new()));
    let speak = move |(told, did, now, notices): (u32, String, String, Vec<Told>)| {
        if untrack(move || desk.is_advice_old() && !desk.is_alone()) {
            // Once there is newer advice, that comes here again.
            return;
        }
        let (before, known, old) = last.get_value();
        let brought = notices.iter().find(|notice| !old.iter().any(|old| old.is_of(notice)));
        let fresh = !did.is_empty() && before != told;
        if fresh {
            let more = brought.map(|told| &told.sentence).or(Some(&now).filter(|now| **now != known));
            let said = core::iter::once(&did).chain(more).map(String::as_str);
            speech::say(&said.collect::<Vec<_>>().join("\n"));
        } else if now != known {
            speech::say(&now);
        }
        last.set_value((if fresh { told } else { before }, now, notices));
    };
    let line = move || {
        let [what, effect] = desk.did();
        if effect.is_empty() { what } else { Message::SpokenStep(&what, &effect).text() }
    };
    debounce(PAUSE, move || (desk.last_step.told.get(), line(), now(), notices()), Callback::new(speak));
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
            <button type="button" id="order" class="main" aria-describedby="figures" aria-keyshortcuts="Control+Enter"
                aria-disabled=move || text.with(|text| !text.good).to_string()
                on:click=ask>
                {Label::OrderSpec.text()}
            </button>
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

//! Solving backwards: a goal is named, the adviser finds the nearest unit that meets it.

use leptos::prelude::*;
use slotwright_core::input::wire;
use slotwright_core::units::day::Day;
use slotwright_core::words;
use slotwright_core::words::entry;
use slotwright_core::words::page::Label;

use crate::browser::{adviser, speech};
use crate::parts::notices::{Notice, Notices, Tone};
use crate::parts::optional::Optional;
use crate::parts::{Entry, inert};
use crate::state::Desk;
use crate::unread::Field;

/// A figure of a goal: what was typed, in a range's currency, as [`wire`] has it; and that as people write it, nothing
/// for nothing.
type Figure = (fn(&str, &str) -> Option<String>, fn(&str) -> String);

const PRICE: Figure = (
    |typed, currency| entry::money(typed, currency).ok().map(wire::of_money),
    |figure| wire::money(figure).map(words::amount).unwrap_or_default(),
);
const WEIGHT: Figure = (
    |typed, _| entry::mass(typed).ok().map(wire::of_mass),
    |figure| wire::mass(figure).map(words::kilograms).unwrap_or_default(),
);
// Fields for days have and show them as ISO 8601.
const DAY: Figure = (|typed, _| typed.parse::<Day>().is_ok().then(|| typed.into()), |figure| figure.into());

/// The goal that nobody names.
const UNASKED: &str = "valid";

/// Goals, and what comes of the one that was named last. What cannot be made is offered the nearest unit that can,
/// unasked.
#[component]
pub fn Goals() -> impl IntoView {
    let desk = Desk::here();
    let wanted = RwSignal::new(false);
    let ask = move |goal: &str, figure: String| {
        wanted.set(goal != UNASKED);
        adviser::ask(desk.question("goal", &[goal.into(), figure, desk.today().to_string()]));
    };
    Effect::new(move || {
        if desk.read(|snapshot, _| !snapshot.findings.is_empty()) {
            ask(UNASKED, String::new());
        }
    });
    let answer = move || <[String; 3]>::try_from(desk.answer("goal")).unwrap_or_default();
    let spoken = move |()| {
        let [sentence, way, _] = answer();
        if wanted.get() && !sentence.is_empty() { [sentence, way].join("\n") } else { String::new() }
    };
    speech::follow(Callback::new(spoken));
    let notices = move |()| {
        let [sentence, way, _] = answer();
        let remedies = Some(way).filter(|way| !way.is_empty()).into_iter().collect();
        let notice = Notice { tone: Tone::Hint, sentence, remedies, grounds: None };
        Some(notice).filter(|notice| !notice.sentence.is_empty()).into_iter().collect()
    };
    let take = move |_| {
        let [_, _, compact] = untrack(answer);
        desk.follow(&compact, "");
    };
    // A budget and a day are kept to from then on, by these names. Money and days are exact, masses to the
    // gram; they are written for people only here.
    let typed = |goal: &'static str, field, name: &'static str, (understood, written): Figure| {
        let own = RwSignal::new(String::new());
        let show = Callback::new(move |()| {
            let unread = desk.unread.entry(field);
            let figure = || if name.is_empty() { own.get() } else { desk.given(name) };
            let text = unread.unwrap_or_else(|| written(&figure()));
            Entry { text, wrong: desk.wrong(field), ..Entry::default() }
        });
        let take = Callback::new(move |typed: String| {
            let currency = desk.peek(|_, range| range.currency.clone());
            let read = if typed.is_empty() { Some(String::new()) } else { understood(&typed, &currency) };
            // What cannot be read asks for nothing: what was told of another figure goes.
            let figure = read.clone().unwrap_or_default();
            if read.is_some() {
                desk.unread.forget(field);
            } else {
                desk.unread.add(field, typed);
            }
            if name.is_empty() {
                own.set(figure.clone());
            } else {
                desk.give(name, figure.clone());
            }
            untrack(|| ask(goal, figure));
        });
        (show, take)
    };
    let (price, take_price) = typed("price", Field::Price, "budget", PRICE);
    let (weight, take_weight) = typed("part", Field::Weight, "", WEIGHT);
    let (day, take_day) = typed("by", Field::Day, "by", DAY);
    let button = |goal: &'static str, reads: Label| {
        view! { <button type="button" on:click=move |_| untrack(|| ask(goal, String::new()))>{reads.text()}</button> }
    };
    let currency = desk.peek(|_, range| range.currency.clone());
    view! {
        <div class="goals" role="group" aria-labelledby="goals-name">
            {inert("<h3 id=\"goals-name\" tabindex=\"-1\">", Label::FindOneThat)}
            <div class="row">{button("widest", Label::IsWidest)}{button("screen", Label::TakesScreen)}</div>
            <div class="fields">
                <Optional label=Label::CostsAtMost.text() unit=currency
                    show=price take=take_price/>
                <Optional label=Label::HasPartsUpTo.text() unit=Label::Kg.text()
                    show=weight take=take_weight/>
                <Optional label=Label::IsThereBy.text() unit=""
                    show=day take=take_day kind="date"/>
            </div>
            <Notices notices=Callback::new(notices) take=Callback::new(take)/>
        </div>
    }
}

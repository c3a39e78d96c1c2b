//! Solving backwards: a goal is named, the adviser finds the nearest unit that meets it.

use leptos::prelude::*;
use slotwright_core::day::Day;
use slotwright_core::decimal::read_decimal;

use crate::browser::ways;
use crate::parts::Entry;
use crate::parts::optional::Optional;
use crate::parts::tells::{Line, Tells, Tone};
use crate::state::Desk;
use crate::unread::Field;

/// Goals, and what comes of the one that was named last. What cannot be made is offered the nearest unit that can,
/// unasked.
#[component]
pub fn Goals() -> impl IntoView {
    let desk = Desk::here();
    let ask = move |goal: &str, figure: String| {
        ways::ask(desk.question("goal", &[goal.into(), figure, desk.today().to_string()]));
    };
    Effect::new(move || {
        if desk.read(|known, _| !known.findings.is_empty()) {
            ask("valid", String::new());
        }
    });
    let told = move || <[String; 3]>::try_from(desk.told("goal")).unwrap_or_default();
    let lines = move |()| {
        let [sentence, way, _] = told();
        let ways = Some(way).filter(|way| !way.is_empty()).into_iter().collect();
        let line = Line { tone: Tone::Hint, sentence, ways, grounds: None };
        Some(line).filter(|line| !line.sentence.is_empty()).into_iter().collect()
    };
    let take = move |_| {
        let [_, _, note] = untrack(told);
        desk.follow(&note, "");
    };
    let typed = |goal: &'static str, field, reads: fn(&str) -> bool| {
        let text = RwSignal::new(String::new());
        let show = Callback::new(move |()| {
            let bad = desk.unread.entry(field).is_some();
            Entry { text: text.get(), bad, ..Entry::default() }
        });
        let take = Callback::new(move |typed: String| {
            text.set(typed.clone());
            if typed.is_empty() || reads(&typed) {
                desk.unread.forget(field);
                untrack(|| ask(goal, typed));
            } else {
                desk.unread.add(field, typed);
                // What was told of another figure goes.
                untrack(|| ask(goal, String::new()));
            }
        });
        (show, take)
    };
    let (price, take_price) = typed("price", Field::Price, is_number);
    let (weight, take_weight) = typed("part", Field::Weight, is_number);
    let (day, take_day) = typed("by", Field::Day, |text| text.parse::<Day>().is_ok());
    let button = |goal: &'static str, reads: &'static str| {
        view! { <button type="button" on:click=move |_| untrack(|| ask(goal, String::new()))>{reads}</button> }
    };
    let currency = desk.peek(|_, range| range.currency.clone());
    view! {
        <div class="goals" role="group" aria-label="Find one that">
            <h3>"Find one that"</h3>
            <div class="row">{button("widest", "is as wide as can be")}{button("screen", "takes the screen")}</div>
            <div class="fields">
                <Optional label="costs at most" unit=currency wrong="This is no price. Write it as 1500."
                    show=price take=take_price/>
                <Optional label="has parts up to" unit="kg" wrong="This is no weight. Write it as 25."
                    show=weight take=take_weight/>
                <Optional label="is there by" unit="" wrong="This is no day. Write it as 2027-01-31."
                    show=day take=take_day kind="date"/>
            </div>
            <Tells lines=Callback::new(lines) take=Callback::new(take)/>
        </div>
    }
}

/// Whether the adviser will read it as a number.
fn is_number(text: &str) -> bool {
    let plain: String = text.chars().filter(|letter| !letter.is_whitespace()).collect();
    read_decimal(&plain.replace(',', ".")).is_some_and(|number| (0.0..=1e7).contains(&number))
}

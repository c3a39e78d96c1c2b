//! Solving backwards: a goal is named, the adviser finds the nearest unit that meets it.

use leptos::prelude::*;

use crate::browser::ways;
use crate::parts::optional::Optional;
use crate::parts::tells::{Line, Tells, Tone};
use crate::state::Desk;

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
    // The adviser says what it cannot read.
    let takes = |goal: &'static str| {
        Callback::new(move |figure: String| {
            untrack(|| ask(goal, figure));
            true
        })
    };
    // A budget and a day are kept to from then on.
    let keeps = |goal: &'static str, name: &'static str| {
        Callback::new(move |figure: String| {
            desk.give(name, figure.clone());
            untrack(|| ask(goal, figure));
            true
        })
    };
    let shows = |name: &'static str| Callback::new(move |()| desk.given(name));
    let empty = Callback::new(|()| String::new());
    let button = |goal: &'static str, reads: &'static str| {
        view! { <button type="button" on:click=move |_| untrack(|| ask(goal, String::new()))>{reads}</button> }
    };
    let currency = desk.peek(|_, range| range.currency.clone());
    view! {
        <div class="goals" role="group" aria-label="Find one that">
            <h3>"Find one that"</h3>
            <div class="row">{button("widest", "is as wide as can be")}{button("screen", "takes the screen")}</div>
            <div class="fields">
                <Optional label="costs at most" unit=currency wrong="" show=shows("budget") take=keeps("price", "budget")/>
                <Optional label="has parts up to" unit="kg" wrong="" show=empty take=takes("part")/>
                <Optional label="is there by" unit="" wrong="" show=shows("by") take=keeps("by", "by") kind="date"/>
            </div>
            <Tells lines=Callback::new(lines) take=Callback::new(take)/>
        </div>
    }
}

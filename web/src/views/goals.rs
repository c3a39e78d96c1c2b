//! Solving backwards: a goal is named, the adviser finds the nearest unit that meets it.

use leptos::prelude::*;
use slotwright_core::solver::goals::Goal;
use slotwright_core::words;
use slotwright_core::words::entry;
use slotwright_core::words::page::Label;
use slotwright_protocol::adviser::{Bounds, Question, Way};

use crate::browser::{adviser, speech};
use crate::parts::notices::{Notice, Notices, Tone};
use crate::parts::optional::Optional;
use crate::parts::{Entry, inert};
use crate::state::Desk;
use crate::unread::Field;
use crate::views::ask::FindingNotices;

/// Goals, and what comes of the one that was named last. What cannot be made is offered the nearest unit that can,
/// unasked.
#[component]
pub fn Goals() -> impl IntoView {
    let desk = Desk::here();
    let wanted = RwSignal::new(false);
    let asked = StoredValue::new(None::<(Goal, String)>);
    let ask = move |goal| {
        // Nobody names this one.
        wanted.set(goal != Goal::Valid);
        asked.set_value((goal != Goal::Valid).then(|| (goal, desk.compact())));
        adviser::ask(Question::Goal(desk.about(), goal));
    };
    // With something else kept, the same goal may come to something else.
    Effect::new(move |before: Option<()>| {
        desk.track_pins();
        let same = |(_, of): &(Goal, String)| *of == untrack(move || desk.compact());
        if before.is_some()
            && let Some((goal, _)) = asked.get_value().filter(same)
        {
            untrack(|| ask(goal));
        }
    });
    Effect::new(move || {
        if desk.read(|snapshot, _| !snapshot.findings.is_empty()) {
            ask(Goal::Valid);
        }
    });
    let spoken = move |()| {
        let (sentence, way) = desk.goal().filter(|_| wanted.get()).unwrap_or_default();
        [sentence, way.map(|way| way.label).unwrap_or_default()].join("\n").trim().into()
    };
    speech::follow(Callback::new(spoken));
    let notices = move |()| {
        let told = desk.goal().filter(|(sentence, _)| !sentence.is_empty());
        let notice = |(sentence, way): (String, Option<Way>)| {
            let remedies = way.into_iter().map(|way| way.label).collect();
            Notice { tone: Tone::Hint, sentence, remedies, grounds: None }
        };
        told.map(notice).into_iter().collect()
    };
    let take = move |_| {
        if let Some((_, Some(way))) = untrack(move || desk.goal()) {
            desk.follow(&way.outcome);
        }
    };
    let weight = RwSignal::new(String::new());
    let shows = |field, written: fn(Bounds) -> String| {
        Callback::new(move |()| {
            let known = || if field == Field::Weight { weight.get() } else { written(desk.bounds()) };
            let text = desk.unread.entry(field).unwrap_or_else(known);
            Entry { text, wrong: desk.wrong(field), ..Entry::default() }
        })
    };
    // A budget and a day are kept to from then on. Money and days are exact, masses to the gram; they are written for
    // people only here.
    let takes = |field, read: fn(&str, &str) -> Option<Goal>| {
        Callback::new(move |typed: String| {
            let currency = desk.peek(|_, range| range.currency.clone());
            let goal = read(&typed, &currency);
            if goal.is_some() || typed.is_empty() {
                desk.unread.forget(field);
            } else {
                desk.unread.add(field, typed);
            }
            match (field, goal) {
                (Field::Price, Some(Goal::Price(most))) => desk.give(|bounds| bounds.budget = Some(most)),
                (Field::Price, _) => desk.give(|bounds| bounds.budget = None),
                (Field::Day, Some(Goal::By(day))) => desk.give(|bounds| bounds.by = Some(day)),
                (Field::Day, _) => desk.give(|bounds| bounds.by = None),
                (_, Some(Goal::Part(most))) => weight.set(words::kilograms(most)),
                (_, _) => weight.set(String::new()),
            }
            // What cannot be read asks for nothing: what was told of another figure goes.
            if let Some(goal) = goal {
                untrack(|| ask(goal));
            } else {
                asked.set_value(None);
                desk.forget_goal();
            }
        })
    };
    let price = shows(Field::Price, |bounds| bounds.budget.map(words::amount).unwrap_or_default());
    let day = shows(Field::Day, |bounds| bounds.by.map(|day| day.to_string()).unwrap_or_default());
    let part = shows(Field::Weight, |_| String::new());
    let take_price = takes(Field::Price, |typed, currency| entry::money(typed, currency).ok().map(Goal::Price));
    let take_part = takes(Field::Weight, |typed, _| entry::mass(typed).ok().map(Goal::Part));
    // Fields for days have and show them as ISO 8601.
    let take_day = takes(Field::Day, |typed, _| typed.parse().ok().map(Goal::By));
    let button = |goal, reads: Label| {
        view! { <button type="button" on:click=move |_| untrack(|| ask(goal))>{reads.text()}</button> }
    };
    let currency = desk.peek(|_, range| range.currency.clone());
    view! {
        <div class="goals" role="group" aria-labelledby="goals-name">
            {inert("<h3 id=\"goals-name\" tabindex=\"-1\">", Label::FindOneThat)}
            <div class="row" role="toolbar" aria-labelledby="goals-name">{button(Goal::Widest, Label::IsWidest)}{button(Goal::Screen, Label::TakesScreen)}{button(Goal::Cheapest, Label::CostsLeast)}</div>
            <div class="fields">
                <Optional label=Label::CostsAtMost.text() unit=currency
                    show=price take=take_price/>
                <Optional label=Label::HasPartsUpTo.text() unit=Label::Kg.text()
                    show=part take=take_part/>
                <Optional label=Label::IsThereBy.text() unit=""
                    show=day take=take_day kind="date"/>
            </div>
            <FindingNotices asked=|_| false given=true/>
            <Notices notices=Callback::new(notices) take=Callback::new(take)/>
        </div>
    }
}

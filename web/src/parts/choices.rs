//! A row of answers of which one is taken; shut ones stay in sight and say why.
//!
//! Keys inside a row are those of `browser/groups`: arrows press what they come to, and a press takes what is open and
//! asks why the rest is not. No answer is called disabled: each of them answers.

use leptos::prelude::*;
use leptos::tachys::html::InertElement;
use slotwright_core::words::page::Message;
use web_sys::{Event, MouseEvent};

use super::Read;
use crate::browser::{page, speech};

/// One answer as it is shown.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct AnswerView {
    /// Its name.
    pub label: String,
    /// A drawing beside the name, as SVG of our own making.
    pub picture: String,
    /// A piece of coated wood beside the name.
    pub swatch: Option<Swatch>,
    /// Whether it is the present one.
    pub taken: bool,
    /// Whether it can be taken.
    pub status: AnswerStatus,
}

/// A piece of wood with a coat: its face with the grain, and an edge with the plies. Shares are those of styles.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Swatch {
    /// Colour of the coat.
    pub colour: String,
    /// How much of the grain is seen through it.
    pub grain: String,
    /// How much of the plies is seen through it.
    pub bare: String,
    /// Whether grain on it has to be light.
    pub dark: bool,
}

/// Whether an answer can be taken, and why not.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct AnswerStatus {
    /// Whether it can.
    pub availability: Availability,
    /// Why not alone, or not at all; nothing until that is known.
    pub why: String,
    /// What has to change with it, or what is let go for it, as a thing to do; nothing until that is known, and if
    /// nothing helps.
    pub way: String,
}

/// Whether an answer can be taken.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Availability {
    /// As things are.
    #[default]
    Open,
    /// Only together with another change.
    Shifts,
    /// Not alone; whether with another change is not known yet.
    Pending,
    /// Not at all, or not with what is kept.
    Shut,
}

impl AnswerView {
    fn is_shifting(&self) -> bool {
        self.status.availability == Availability::Shifts && !self.taken
    }

    fn is_shut(&self) -> bool {
        self.status.availability == Availability::Shut && !self.taken
    }
}

/// No answer.
pub const NONE: usize = usize::MAX;

/// A row of answers. `take` hears the number of the one that was taken.
///
/// Buttons stay mounted while their answers change, so that focus stays where it is.
#[component]
pub fn Choices(
    /// What is asked.
    label: Read<String>,
    /// The answers.
    answers: Read<Vec<AnswerView>>,
    /// Hears which one was taken, with what has to change with it.
    take: Callback<usize>,
    /// The one of which it is asked why it does not go alone.
    #[prop(default = RwSignal::new(NONE))]
    asked: RwSignal<usize>,
    /// A class for the look of the row.
    #[prop(default = "row")]
    look: &'static str,
    /// What the row and its answers are for machines: answers to a question, or tabs.
    #[prop(default = ["radiogroup", "radio"])]
    roles: [&'static str; 2],
) -> impl IntoView {
    let answers = Memo::new(move |_| answers.run(()));
    let question = move || label.run(());
    let reason = move || {
        answers.with(|answers| {
            let answer = answers.get(asked.get())?;
            let (question, label, why) = (question(), &answer.label, &answer.status.why);
            let message = match answer.status.availability {
                Availability::Shut => Message::CannotBeHad { asked: &question, answer: label, why },
                Availability::Open | Availability::Shifts | Availability::Pending => {
                    Message::NotAlone { asked: &question, answer: label, why }
                }
            };
            (!why.is_empty()).then(|| message.text() + " ")
        })
    };
    let way = move || {
        answers.with(|answers| answers.get(asked.get()).map(|answer| answer.status.way.clone()).unwrap_or_default())
    };
    // Whoever is at an answer has heard what it is; what is not known yet is not said.
    let spoken = move |()| {
        answers.with(|answers| {
            let Some(AnswerView { status, .. }) = answers.get(asked.get()) else { return String::new() };
            let AnswerStatus { availability, why, way } = status;
            match availability {
                Availability::Shifts | Availability::Shut if !way.is_empty() => Message::SpokenWay(why, way).text(),
                Availability::Shut => why.clone(),
                Availability::Open | Availability::Shifts | Availability::Pending => String::new(),
            }
        })
    };
    speech::follow(Callback::new(spoken));
    // Rows are as long as their question has answers; another model may have more or fewer.
    let count = Memo::new(move |_| answers.with(Vec::len));
    let buttons =
        move || (0..count.get()).map(|at| view! { <Answer at answers take asked role=roles[1]/> }).collect_view();
    // Whoever goes on to something else has read it; not before that is pressed, since what follows moves up.
    let own = NodeRef::<leptos::html::Div>::new();
    let left = move |event: &Event| {
        let elsewhere = own.get_untracked().is_some_and(|own| !page::is_within(event, &own));
        if elsewhere && asked.get_untracked() != NONE {
            asked.set(NONE);
        }
    };
    let handles = [
        window_event_listener(leptos::ev::click, move |event| left(&event)),
        window_event_listener(leptos::ev::keyup, move |event| left(&event)),
    ];
    on_cleanup(move || handles.into_iter().for_each(WindowListenerHandle::remove));
    // The button is gone then; the focus stays with the answer.
    let taken = move |_| {
        let at = asked.get_untracked();
        take.run(at);
        if let Some(own) = own.get_untracked() {
            page::focus(&own, &format!(".choice:nth-child({})", at.saturating_add(1)));
        }
    };
    view! {
        <div class="asked" node_ref=own>
            <div class=format!("choices {look}") role=roles[0] aria-label=question>{buttons}</div>
            <p class="why">
                {reason}
                <button type="button" class="remedy" on:click=taken>{way}</button>
            </p>
        </div>
    }
}

#[component]
fn Answer(
    at: usize,
    answers: Memo<Vec<AnswerView>>,
    take: Callback<usize>,
    asked: RwSignal<usize>,
    role: &'static str,
) -> impl IntoView {
    let with =
        move |read: fn(&AnswerView) -> String| answers.with(|answers| answers.get(at).map(read).unwrap_or_default());
    // Its look in words: see `Key`.
    let look = |answer: &AnswerView| match (answer.is_shifting(), answer.is_shut()) {
        (true, _) => SHIFTS.to_string(),
        (_, true) => SHUT.to_string(),
        _ => String::new(),
    };
    let is = move |look: fn(&AnswerView) -> bool| move || answers.with(|answers| answers.get(at).is_some_and(look));
    let taken = move |of: &str| (role == of).then(|| with(|answer| answer.taken.to_string()));
    let swatch_class = move || {
        with(|answer| {
            match &answer.swatch {
                None => "",
                Some(swatch) if swatch.dark => "swatch dark",
                Some(_) => "swatch",
            }
            .into()
        })
    };
    let swatch = move |read: fn(&Swatch) -> &String| {
        answers.with(|answers| answers.get(at)?.swatch.as_ref().map(|swatch| read(swatch).clone()))
    };
    let press = move |event: MouseEvent| {
        let (open, way) = answers.with_untracked(|answers| {
            let status = answers.get(at).map(|answer| &answer.status);
            let is_open = status.is_some_and(|status| status.availability == Availability::Open);
            (is_open, status.is_some_and(|status| !status.way.is_empty()))
        });
        // A key takes what was told before, with what goes with it. A hand has a button for that: the second press of
        // two is not meant for it.
        let told = asked.get_untracked() == at && event.detail() == 0;
        asked.set(at);
        if open || told && way {
            take.run(at);
        } else {
            // On a phone the reason would often stand behind the bar.
            page::see_whole(&event);
        }
    };
    view! {
        <button
            type="button"
            class="choice"
            class:shifts=is(AnswerView::is_shifting)
            class:shut=is(AnswerView::is_shut)
            role=role
            aria-checked=move || taken("radio")
            aria-selected=move || taken("tab")
            aria-describedby=move || with(look)
            on:click=press
        >
            <span class="picture" inner_html=move || with(|answer| answer.picture.clone())></span>
            <span class=swatch_class style:background-color=move || swatch(|swatch| &swatch.colour)
                style=("--grain", move || swatch(|swatch| &swatch.grain)) style=("--bare", move || swatch(|swatch| &swatch.bare))></span>
            <span class="label">{move || with(|answer| answer.label.clone())}</span>
        </button>
    }
}

const SHIFTS: &str = "key-shifts";
const SHUT: &str = "key-shut";

/// What the looks of answers mean, for all rows together.
#[component]
pub fn Key() -> impl IntoView {
    InertElement::new(["<p class=\"key\">", &Message::Looks { shifts: SHIFTS, shut: SHUT }.text()].concat())
}

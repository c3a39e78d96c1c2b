//! Whose range it is; opening an order; the drafts; beginning afresh.

use leptos::prelude::*;
use slotwright_core::words::page::{Label, Message};
use slotwright_protocol::desk::{Answer, Opened, Question};
use web_sys::HtmlInputElement;

use super::sheet;
use crate::browser::range_file::NoRange;
use crate::browser::{clock, files, orders, page, range_file, speech};
use crate::parts::inert;
use crate::state::Desk;
use crate::views::drafts::{self, DraftsDialog};

/// Where it is said that the workshop's range file is not there.
pub const NO_RANGE: &str = "no-range";

/// Where it is said that the device has a wrong day.
pub const WRONG_CLOCK: &str = "wrong-clock";

/// The strip at the top, and what a person should know about loading.
#[component]
pub fn Header(
    /// Why the range is the one that is built in.
    built_in: Option<NoRange>,
) -> impl IntoView {
    let desk = Desk::here();
    let (workshop, name, note) = desk.peek(|_, range| (range.workshop.clone(), range.name.clone(), range.note.clone()));
    // What was said of one choice is not true of another.
    let told = move || {
        let [text, about] = desk.banner;
        let holds = about.with(|about| about.is_empty() || *about == desk.compact());
        if holds { text.get() } else { String::new() }
    };
    let stopped = move || {
        let [_, about] = desk.banner;
        !about.with(String::is_empty) && desk.read(|snapshot, _| !snapshot.findings.is_empty())
    };
    // The rest stands there to be read, but why a unit that came cannot be made.
    let spoken = move |()| {
        let told = told();
        if stopped() { told } else { told.lines().next().unwrap_or_default().into() }
    };
    speech::follow(Callback::new(spoken));
    let picker = NodeRef::<leptos::html::Input>::new();
    let opened = move |_| {
        let Some(input) = picker.get_untracked() else { return };
        let Some(file) = HtmlInputElement::files(&input).and_then(|files| files.get(0)) else { return };
        wasm_bindgen_futures::spawn_local(async move {
            open(desk, files::text(file).await);
            if let Some(input) = picker.try_get_untracked().flatten() {
                input.set_value("");
            }
        });
    };
    let about = [Message::RangeNamed(&name).text(), note.clone()].join(". ");
    let begun = Memo::new(move |_| desk.has_just_begun());
    let afresh = move |_| if begun.get_untracked() { desk.undo() } else { desk.begin_afresh() };
    view! {
        <header>
            <svg class="mark" viewBox="0 0 24 20" aria-hidden="true"><path d="M1 1H8V9H16V1H23V19H1Z"/></svg>
            <h1 class="workshop" tabindex="-1">{workshop}</h1>
            <p class="range">{Message::RangeNamed(&name).text()}</p>
            <p class="note">{note}</p>
            <p class="kept" data-offline=Label::Offline.text()>{move || desk.drafts().told.get()}</p>
            <div class="tools">
                <button type="button" aria-haspopup="dialog" on:click=move |_| drafts::open(desk)>
                    {Label::Drafts.text()}" "<b class="count">{move || count(desk)}</b>
                </button>
                <button type="button" aria-disabled=move || (!desk.can_undo()).to_string() on:click=move |_| desk.undo()>{Label::Undo.text()}</button>
                {inert("<button type=\"button\" class=\"opens-menu\" popovertarget=\"menu\">", Label::Menu)}
                <div id="menu" class="menu" popover="auto" on:click=|_| page::close_menu()>
                    <button type="button" aria-disabled=move || (!desk.steps.can_redo()).to_string() on:click=move |_| desk.redo()>{Label::Redo.text()}</button>
                    <label class="button">
                        {Label::OpenOrder.text()}
                        <input class="unseen" node_ref=picker type="file" accept=".json,application/json" on:change=opened/>
                    </label>
                    <button type="button" on:click=afresh>{move || if begun.get() { Label::TakeItBack } else { Label::BeginAfresh }.text()}</button>
                    <button type="button" on:click=move |_| sheet::print(desk)>{Label::Print.text()}</button>
                    <p class="about">{about}</p>
                </div>
            </div>
        </header>
        <DraftsDialog/>
        {built_in.map(|missing| view! { <BuiltIn missing/> })}
        {move || clock::is_off(desk.present_day()).then(|| view! { <WrongClock/> })}
        <div class="banner" class:empty=move || told().is_empty()>
            <p>{told}</p>
            <button type="button" class="back" class:away=move || told() != Label::ClearedForVisitor.text() on:click=move |_| desk.take_back()>
                {Label::TakeItBack.text()}
            </button>
            <button type="button" class:away=move || !stopped() on:click=|_| { page::lead_to_notice(); }>
                {Label::SeeStops.text()}
            </button>
            <button type="button" on:click=move |_| desk.show_banner(String::new(), String::new())>{Label::Close.text()}</button>
        </div>
    }
}

/// How many drafts there are; nothing if there are none.
fn count(desk: Desk) -> String {
    desk.drafts().others.with(|others| if others.is_empty() { String::new() } else { others.len().to_string() })
}

/// That the workshop's range file is not there, what that means, and trying again.
#[component]
fn BuiltIn(missing: NoRange) -> impl IntoView {
    let (why, attempts) = (RwSignal::new(String::new()), StoredValue::new(0_u32));
    // What is wrong with the file is the workshop's to know.
    let details = RwSignal::new(String::new());
    let tell = move |missing: NoRange| {
        why.set(missing.why.text().into());
        details.set(String::new());
        let Some(file) = missing.file else { return };
        let attempt = attempts.get_value();
        let on_answer = move |(answer, _)| {
            // What the desk says of an earlier attempt comes too late; what was said already is true without it.
            if let Answer::Said(sentence) = answer
                && attempts.get_value() == attempt
            {
                details.set(sentence);
            }
        };
        orders::ask(Question::Faults(file), Callback::new(on_answer));
    };
    tell(missing);
    let spoken = move |()| [Label::NothingOrdered.text(), why.get().lines().next().unwrap_or_default()].join(" ");
    speech::follow(Callback::new(spoken));
    let again = move |_| {
        attempts.update_value(|attempts| *attempts += 1);
        why.set(Label::FetchingRange.text().into());
        wasm_bindgen_futures::spawn_local(async move {
            match range_file::read(&range_file::fetch().await).await {
                Ok(_) => range_file::load_anew(),
                Err(still) => tell(still),
            }
        });
    };
    view! {
        <div class="banner" id=NO_RANGE>
            <div>
                <p>{inert("<b>", Label::NothingOrdered)}" "{move || why.get()}" "{Label::BuiltInRange.text()}</p>
                <details class:away=move || details.with(String::is_empty)>
                    {inert("<summary>", Label::ForTheWorkshop)}<p>{move || details.get()}</p>
                </details>
            </div>
            <button type="button" on:click=again>{Label::TryAgain.text()}</button>
        </div>
    }
}

/// That the device has a wrong day, what that means, and looking again.
#[component]
fn WrongClock() -> impl IntoView {
    let desk = Desk::here();
    view! {
        <div class="banner" id=WRONG_CLOCK>
            <p role="status">
                {inert("<b>", Label::NothingOrdered)}" "{move || Message::WrongClock(desk.present_day()).text()}
            </p>
            <button type="button" on:click=move |_| desk.ask_on(clock::today())>{Label::TryAgain.text()}</button>
        </div>
    }
}

/// Takes over an order file and tells what came of it.
fn open(desk: Desk, file: Option<String>) {
    let Some(file) = file else {
        return desk.show_banner(Label::FileUnread.text().into(), String::new());
    };
    let on_answer = move |(answer, _)| match answer {
        Answer::Order(order) => {
            let Opened { said, choice, person } = *order;
            desk.open(said, choice, person);
        }
        Answer::No(why) => desk.show_banner(why, String::new()),
        Answer::File(..) | Answer::Shown(_) | Answer::Said(_) => {}
    };
    orders::ask(Question::Read { range: desk.range_text(), file }, Callback::new(on_answer));
}

//! Loading the range, then the page itself.

use std::sync::Arc;
use std::time::Duration;

use leptos::prelude::*;
use slotwright_core::choice::Choice;
use slotwright_core::choice::link::Link;
use slotwright_core::range::Range;
use slotwright_core::words::page::{Label, Message};
use web_sys::HtmlElement;

use crate::browser::range_file::{self, BUILT_IN};
use crate::browser::{clock, drawer, first_view, focus, fragment, groups, offline};
use crate::debounce::debounce;
use crate::link::{Address, Arrived};
use crate::parts::inert;
use crate::state::{Desk, Loaded, Own, PAUSE, Settings, Snapshot};
use crate::views::bays::Bays;
use crate::views::header::Header;
use crate::views::looks::Looks;
use crate::views::order::Order;
use crate::views::place::PlaceQuestions;
use crate::views::sheet::Sheet;
use crate::views::size::Sizes;
use crate::views::stage::Stage;
use crate::views::tally::Tally;

/// How long a line that failed is left alone before it is tried once more.
const SECOND_TRY: Duration = Duration::from_secs(1);

/// Fetches the range and mounts the page in place of its shell.
pub fn start() {
    attempt(false);
}

fn attempt(again: bool) {
    // Before anything is mounted there is no executor but the browser's own.
    wasm_bindgen_futures::spawn_local(async move {
        let kept = drawer::begin();
        let fetched = range_file::fetch().await;
        // Who waited long already is told.
        if matches!(fetched, Err(Label::RangeNotFetched)) && !again {
            return set_timeout(|| attempt(true), SECOND_TRY);
        }
        if let Some((loaded, arrived)) = load(&fetched, drawer::read(kept).await).await {
            let Some(place) = first_view::workshop() else { return };
            let live = place.clone();
            leptos::mount::mount_to(place, move || view! { <App loaded arrived live/> }).forget();
            let begin = move |()| offline::begin(fetched.as_deref().ok());
            first_view::once_shown(Callback::new(begin));
        }
    });
}

/// The fetched range, or the one built in with the reason; the unit of a link, what was saved, or the first model's
/// choice; and what came by the address.
async fn load(
    fetched: &Result<String, Label>,
    kept: Result<Vec<Vec<String>>, drawer::Fault>,
) -> Option<(Loaded, Option<Arrived>)> {
    let (text, range, built_in) = match range_file::read(fetched).await {
        Ok(range) => (fetched.as_deref().ok()?, range, None),
        Err(missing) => (BUILT_IN, Range::parse_judged(BUILT_IN)?, Some(missing)),
    };
    let (mut own, saved) = Own::find(&range.key, kept).await;
    let (saved, banner) = match saved {
        Some((link, pins)) if range.model(&link.choice.model).is_some() => (Some((link, pins)), None),
        Some((link, _)) => {
            own.show_other().await;
            let banner = Message::ModelGone(link.choice.model.as_str()).text();
            (None, Some(banner))
        }
        None => (None, None),
    };
    let first = || Some((Link { choice: Choice::first_of(&range)?, made: None }, Vec::new()));
    let (there, pins) = saved.or_else(first)?;
    let arrived = Arrived::first(&range, &there);
    let linked = arrived.as_ref().and_then(Arrived::other).map(|choice| (choice.clone(), Vec::new()));
    if linked.is_some() {
        own.show_other().await;
    }
    let (choice, pins) = linked.unwrap_or((there.choice, pins));
    let today = clock::today();
    let first = Snapshot::first(&range, choice, today).await;
    let loaded = Loaded { range: Arc::new(range), text: text.into(), first, pins, banner, built_in, today, own };
    Some((loaded, arrived))
}

/// What is made of the page before it is shown: what is in sight at first.
const SHOWN: u8 = 3;

/// How many parts of the page are made, each in a task of its own: one for all would keep people waiting.
const ALL: u8 = 6;

/// Makes the live page part by part, shows it as soon as that can be done, and begins what can wait.
fn build(made: RwSignal<u8>, live: HtmlElement) {
    wasm_bindgen_futures::spawn_local(async move {
        for part in 1..=ALL {
            first_view::turn().await;
            made.set(part);
            first_view::turn().await;
            if part == SHOWN {
                first_view::give_way(&live);
            }
        }
        first_view::shown();
    });
}

#[component]
fn App(loaded: Loaded, arrived: Option<Arrived>, live: HtmlElement) -> impl IntoView {
    let built_in = loaded.built_in.clone();
    let desk = Desk::new(loaded);
    provide_context(desk);
    let made = RwSignal::new(0);
    build(made, live);
    let is_made = move |part: u8| Memo::new(move |_| made.get() >= part);
    // One type of closure for all parts.
    let part = move |number: u8, view: Box<dyn Fn() -> AnyView + Send + Sync>| {
        let is_made = is_made(number);
        (move || is_made.get().then(&view)).into_any()
    };
    let all_sizes = is_made(4);
    let question = move |number: u8, view: fn(Memo<bool>) -> AnyView| {
        let view = move || {
            desk.begun();
            view(all_sizes)
        };
        part(number, Box::new(view))
    };
    desk.keep_drafts();
    let address = Address::new(desk, arrived);
    let rest = move |_: Settings| {
        if desk.rest() {
            address.keep(false);
        }
    };
    if fragment::is_afresh() {
        desk.begin_afresh();
    }
    let rested = move || {
        // A slider that is let go is a change as well, and what links call the range comes later than the page.
        desk.steps.held.track();
        desk.advised.mark.track();
        desk.settings()
    };
    debounce(PAUSE, rested, Callback::new(rest));
    let left = window_event_listener(leptos::ev::pagehide, move |_| address.keep(true));
    on_cleanup(move || left.remove());
    focus::listen();
    // What is said of a unit goes with it, wherever the focus is.
    Effect::new(move || {
        desk.stir();
        focus::mend();
    });
    // Once the questions are there.
    first_view::once_shown(Callback::new(|()| groups::listen()));
    let ordering = RwSignal::new(false);
    let order = move |()| {
        desk.ask_on(clock::today());
        ordering.set(true);
    };
    view! {
        {inert("<a class=\"skip\" href=\"#questions\">", Label::Skip)}
        {inert("<a class=\"skip\" href=\"#order\">", Label::SkipToOrder)}
        {part(1, Box::new(move || view! { <Header built_in=built_in.clone()/> }.into_any()))}
        <main class="bench">
            {part(1, Box::new(|| view! { <Stage/> }.into_any()))}
            <div id="questions" class="questions" role="region" aria-label=Label::Questions.text() class:old=move || desk.is_advice_old()>
                {question(2, |_| view! { <PlaceQuestions/> }.into_any())}
                {question(3, |all| view! { <Sizes all/> }.into_any())}
                {question(5, |_| view! { <Bays/> }.into_any())}
                {question(6, |_| view! { <Looks/> }.into_any())}
                {part(6, Box::new(|| inert("<p class=\"cautions\">", Label::Cautions).into_any()))}
            </div>
        </main>
        {part(2, Box::new(move || view! { <Tally order=Callback::new(order)/> }.into_any()))}
        {part(4, Box::new(move || view! { <Order open=ordering/><Sheet/> }.into_any()))}
    }
}

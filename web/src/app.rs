//! Loading the range, then the page itself.

use std::sync::Arc;
use std::time::Duration;

use leptos::prelude::*;
use slotwright_core::choice::Choice;
use slotwright_core::range::Range;
use slotwright_core::words::page::{Label, Message};

use crate::browser::{clock, drawer, range_file, storage};
use crate::debounce::debounce;
use crate::link::{Address, Arrived};
use crate::parts::inert;
use crate::state::{Desk, Loaded, Own, PAUSE, Settings};
use crate::views::bays::Bays;
use crate::views::header::Header;
use crate::views::looks::Looks;
use crate::views::order::Order;
use crate::views::place::PlaceQuestions;
use crate::views::size::Sizes;
use crate::views::stage::Stage;
use crate::views::tally::Tally;

/// The range that is built into the page, for when the file cannot be fetched.
const BUILT_IN: &str = include_str!(concat!(env!("OUT_DIR"), "/range.toml"));

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
        if fetched.is_none() && !again {
            return set_timeout(|| attempt(true), SECOND_TRY);
        }
        if let Some((loaded, arrived)) = load(fetched.as_deref(), drawer::read(kept).await).await {
            storage::remove_shell();
            leptos::mount::mount_to_body(move || view! { <App loaded=loaded.clone() arrived=arrived.clone()/> });
        }
    });
}

/// The fetched range, or the one built in with the reason; the unit of a link, what was saved, or the first model's
/// choice; and what came by the address.
async fn load(
    fetched: Option<&str>,
    kept: Result<Vec<Vec<String>>, drawer::Fault>,
) -> Option<(Loaded, Option<Arrived>)> {
    let (text, range, built_in) = match range_file::read(fetched) {
        Ok(range) => (fetched?, range, None),
        Err(missing) => (BUILT_IN, Range::parse(BUILT_IN).ok()?, Some(missing)),
    };
    let (mut own, saved) = Own::find(&range.key, kept).await;
    let (saved, banner) = match saved {
        Some((choice, pins)) if range.model(&choice.model).is_some() => (Some((choice, pins)), None),
        Some((choice, _)) => {
            own.show_other().await;
            let banner = Message::ModelGone(choice.model.as_str()).text();
            (None, Some(banner))
        }
        None => (None, None),
    };
    let there = saved.or_else(|| Some((Choice::first_of(&range)?, Vec::new())))?;
    let arrived = Arrived::first(&range, &there.0);
    let linked = arrived.as_ref().and_then(Arrived::other).map(|choice| (choice.clone(), Vec::new()));
    if linked.is_some() {
        own.show_other().await;
    }
    let (choice, pins) = linked.unwrap_or(there);
    let (range, today) = (Arc::new(range), clock::today());
    let loaded = Loaded { range, text: text.into(), choice, pins, banner, built_in, today, own };
    Some((loaded, arrived))
}

#[component]
fn App(loaded: Loaded, arrived: Option<Arrived>) -> impl IntoView {
    let built_in = loaded.built_in.clone();
    let desk = Desk::new(loaded);
    provide_context(desk);
    desk.keep_drafts();
    let address = Address::new(desk, arrived);
    let rest = move |_: Settings| {
        if desk.rest() {
            address.keep(false);
        }
    };
    let rested = move || {
        // A slider that is let go is a change as well, and what links call the range comes later than the page.
        desk.steps.held.track();
        desk.mark.track();
        desk.settings()
    };
    debounce(PAUSE, rested, Callback::new(rest));
    let left = window_event_listener(leptos::ev::pagehide, move |_| address.keep(true));
    on_cleanup(move || left.remove());
    let ordering = RwSignal::new(false);
    let order = move |()| {
        desk.ask_on(clock::today());
        ordering.set(true);
    };
    view! {
        {inert("<a class=\"skip\" href=\"#questions\">", Label::Skip)}
        <Header built_in/>
        <main class="bench">
            <Stage/>
            <div id="questions" class="questions" class:old=move || desk.is_advice_old()>
                {move || {
                    desk.begun();
                    view! { <PlaceQuestions/><Sizes/><Bays/><Looks/> }
                }}
                {inert("<p class=\"cautions\">", Label::Cautions)}
            </div>
        </main>
        <Tally order=Callback::new(order)/>
        <Order open=ordering/>
    }
}

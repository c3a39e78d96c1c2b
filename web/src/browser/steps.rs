//! The browser's own steps back and forward: one entry for each step, with its number. No other file makes entries;
//! `fragment` changes the address of the present one and leaves its number.

use std::cell::RefCell;
use std::time::Duration;

use leptos::prelude::{Callable, Callback, set_timeout};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{History, PopStateEvent};

use super::page;

/// A browser that has not gone where it was sent by then goes nowhere: it keeps only so many entries.
const ARRIVED: Duration = Duration::from_millis(500);

/// Where the page is, and whether the browser is still on its way there.
struct Walk {
    /// Tells this load of the page from those before: their numbers mean nothing any more.
    load: f64,
    number: usize,
    /// The last step that has an entry.
    last: usize,
    /// How often the browser was sent after the page.
    sent: u32,
    on_the_way: bool,
}

thread_local! {
    static WALK: RefCell<Walk> = const { RefCell::new(Walk { load: 0.0, number: 0, last: 0, sent: 0, on_the_way: false }) };
}

fn history() -> Option<History> {
    web_sys::window()?.history().ok()
}

/// What an entry of the browser holds: the load and the number of the step.
fn entry(walk: &Walk) -> JsValue {
    // Nobody takes more steps than that.
    let number = u32::try_from(walk.number).unwrap_or(u32::MAX);
    js_sys::Array::of2(&walk.load.into(), &number.into()).into()
}

/// Begins with the present entry and the step that it is of, and tells the numbers of the steps to which a person goes by the
/// browser's buttons. Where the entry is of that step already, its load goes on, and its other entries, up to the one of the
/// last step, mean what they meant.
pub fn listen(number: usize, last: usize, on_step: Callback<usize>) {
    let state = history().and_then(|history| history.state().ok()?.dyn_into::<js_sys::Array>().ok());
    WALK.with_borrow_mut(|walk| {
        let load = state.as_ref().and_then(|state| state.get(0).as_f64()).filter(|_| last > 0);
        walk.load = load.unwrap_or_default();
        let goes_on = load.is_some() && state.is_some_and(|state| number_of(walk, &state) == Some(number));
        walk.number = number;
        walk.last = if goes_on { last } else { number };
        if !goes_on {
            walk.load = js_sys::Date::now();
        }
    });
    write(false);
    let gone = move |event: web_sys::Event| {
        let Some(state) = event.dyn_ref::<PopStateEvent>().map(PopStateEvent::state) else { return };
        let (before, gone_to) = WALK.with_borrow_mut(|walk| (walk.number, arrive(walk, &state)));
        let Some(number) = gone_to else { return };
        // Who goes back from a dialog wants to close it: behind one nothing changes.
        match page::open_dialog() {
            Some(dialog) => {
                page::show(&dialog, false);
                follow(before);
            }
            None => on_step.run(number),
        }
    };
    if let Some(window) = web_sys::window() {
        page::listen(&window, &["popstate"], Callback::new(gone));
    }
}

/// The browser is at an entry: the step to which the page has to follow, if a person went there.
fn arrive(walk: &mut Walk, state: &JsValue) -> Option<usize> {
    // A link within the page makes an entry without a number: that is no step.
    let state = state.dyn_ref::<js_sys::Array>()?;
    // What an earlier load left behind counts as the first step of this one.
    let number = number_of(walk, state).unwrap_or(0);
    if !walk.on_the_way {
        walk.number = number;
        return Some(number);
    }
    walk.on_the_way = number != walk.number;
    if walk.on_the_way {
        go(number, walk.number);
    }
    None
}

/// The step that an entry is of, if this load made it.
fn number_of(walk: &Walk, state: &js_sys::Array) -> Option<usize> {
    let own = state.get(0).as_f64().is_some_and(|load| load.to_bits() == walk.load.to_bits());
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "`as` saturates; `entry` wrote it")]
    state.get(1).as_f64().filter(|_| own).map(|number| number as usize)
}

/// Whether the browser is still on its way after the page: until then what is written goes to the wrong entry.
pub fn is_on_the_way() -> bool {
    WALK.with_borrow(|walk| walk.on_the_way)
}

/// The page took a step.
pub fn push(number: usize) {
    WALK.with_borrow_mut(|walk| walk.number = number);
    // An entry without a number was made by a link within the page or a person: the step takes its place.
    if write(!is_unnumbered()) {
        WALK.with_borrow_mut(|walk| walk.last = number);
    }
}

/// Whether the browser is at an entry that no step made. It cut off what lay ahead.
fn is_unnumbered() -> bool {
    history().is_some_and(|history| history.state().is_ok_and(|state| state.is_null()))
}

/// The step of the entry where the browser is.
fn here(walk: &Walk) -> Option<usize> {
    let state = history()?.state().ok()?;
    let number = number_of(walk, state.dyn_ref()?);
    number.filter(|number| *number <= walk.last)
}

/// Writes the present step into an entry of its own or into the one where the browser is; both keep the address. Whether
/// that could be done: where no entry can be made or changed, the page's own buttons do.
fn write(anew: bool) -> bool {
    let Some(history) = history() else { return false };
    let state = WALK.with_borrow(entry);
    let written = if anew {
        history.push_state_with_url(&state, "", None)
    } else {
        history.replace_state_with_url(&state, "", None)
    };
    written.is_ok()
}

/// The page went to another step by itself: the browser goes after it, or gets an entry for it where it has none.
pub fn follow(number: usize) {
    let unnumbered = is_unnumbered();
    let (from, has_entry) = WALK.with_borrow_mut(|walk| {
        let before = std::mem::replace(&mut walk.number, number);
        if unnumbered {
            walk.last = before;
        }
        // Who is on the way will be there.
        let from = if walk.on_the_way { before } else { here(walk).unwrap_or(before) };
        (from + usize::from(unnumbered), number <= walk.last)
    });
    if !has_entry {
        return push(number);
    }
    if from == number {
        return;
    }
    let sent = WALK.with_borrow_mut(|walk| {
        walk.on_the_way = true;
        walk.sent += 1;
        walk.sent
    });
    go(from, number);
    let arrived = move || WALK.with_borrow_mut(|walk| walk.on_the_way &= walk.sent != sent);
    set_timeout(arrived, ARRIVED);
}

fn go(from: usize, to: usize) {
    let far = |number| i32::try_from(number).unwrap_or(i32::MAX);
    let delta = far(to).saturating_sub(far(from));
    // To go nowhere would load the page anew.
    if let Some(history) = history().filter(|_| delta != 0) {
        let _ = history.go_with_delta(delta);
    }
}

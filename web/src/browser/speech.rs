//! What is spoken: one line that a screen reader says once it has finished what it is saying.

use std::cell::RefCell;
use std::time::Duration;

use leptos::prelude::{Callable, Callback, Effect, TimeoutHandle, set_timeout_with_handle};

/// How long something new may still take the place of what is to be said.
const PAUSE: Duration = Duration::from_millis(300);

thread_local! {
    static WAITING: RefCell<Option<TimeoutHandle>> = const { RefCell::new(None) };
}

/// Nobody listens to more than so many letters at once: some 25 words.
const LONG: usize = 130;

/// Says it now. A text of two lines is said one after the other if it is long.
pub fn say(text: &str) {
    if let Some(before) = WAITING.take() {
        before.clear();
    }
    match text.split_once('\n') {
        Some((first, then)) if text.chars().count() > LONG => {
            write(first);
            say_soon(then.into());
        }
        _ => write(text.replace('\n', " ").trim_end()),
    }
}

fn write(text: &str) {
    let page = web_sys::window().and_then(|window| window.document());
    let Some(line) = page.and_then(|page| page.get_element_by_id("said")) else { return };
    // What stands there already is said only if something changes.
    let again = line.text_content().is_some_and(|said| said == text);
    line.set_text_content(Some(&[text, if again { "\u{a0}" } else { "" }].concat()));
}

/// Says it in a moment, if nothing takes its place until then.
fn say_soon(text: String) {
    let handle = set_timeout_with_handle(move || say(&text), PAUSE).ok();
    if let Some(before) = WAITING.replace(handle) {
        before.clear();
    }
}

/// Says what stands somewhere whenever it has become another text.
pub fn follow(read: Callback<(), String>) {
    Effect::new(move |before: Option<String>| {
        let text = read.run(());
        if !text.is_empty() && before.as_ref() != Some(&text) {
            say_soon(text.clone());
        }
        text
    });
}

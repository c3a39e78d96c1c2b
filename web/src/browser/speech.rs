//! What is spoken: one line that a screen reader says once it has finished what it is saying.

use std::cell::RefCell;
use std::time::Duration;

use leptos::prelude::{Callable, Callback, Effect, TimeoutHandle, set_timeout_with_handle};

/// How long something new may still take the place of what is to be said.
const PAUSE: Duration = Duration::from_millis(300);

thread_local! {
    static WAITING: RefCell<Option<TimeoutHandle>> = const { RefCell::new(None) };
}

/// Nobody listens to more than 25 words at once; figures have no such spaces before their units.
const SPACES_MOST: usize = 20;

/// Says it now; of a text that is long the first line or sentence, and then the rest.
pub fn say(text: &str) {
    if let Some(before) = WAITING.take() {
        before.clear();
    }
    let text = text.trim_end();
    let end = [text.find('\n'), text.find(". ").map(|at| at + 1)].into_iter().flatten().min();
    match end.filter(|_| text.matches(' ').count() > SPACES_MOST).and_then(|end| text.split_at_checked(end)) {
        Some((first, then)) => {
            write(first);
            say_soon(then.trim_start().into());
        }
        None => write(&text.replace('\n', " ")),
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

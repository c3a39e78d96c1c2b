//! What is done once something has not moved for a while.

use std::time::Duration;

use leptos::prelude::*;

/// Hands what `read` gives to `act` once it has not changed for so long; the first reading too.
pub fn debounce<T>(pause: Duration, read: impl Fn() -> T + 'static, act: Callback<T>)
where
    T: Send + Sync + 'static,
{
    let waiting = StoredValue::new(None::<(T, TimeoutHandle)>);
    let take = move || waiting.try_update_value(Option::take).flatten();
    let go = move || {
        if let Some((value, handle)) = take() {
            handle.clear();
            act.run(value);
        }
    };
    Effect::new(move || {
        let value = read();
        if let Some((_, handle)) = take() {
            handle.clear();
        }
        match set_timeout_with_handle(go, pause) {
            Ok(handle) => waiting.set_value(Some((value, handle))),
            // Without a clock nothing is waited for.
            Err(_) => act.run(value),
        }
    });
    on_cleanup(move || {
        if let Some((_, handle)) = take() {
            handle.clear();
        }
    });
}

//! What is done once something has not moved for a while.

use std::time::Duration;

use leptos::prelude::*;

/// Hands what `read` gives to `act` once it has not changed for so long; the first reading too.
pub fn at_rest<T: 'static>(pause: Duration, read: impl Fn() -> T + 'static, act: Callback<T>) {
    let pending = StoredValue::new(None::<TimeoutHandle>);
    Effect::new(move || {
        let value = read();
        if let Some(handle) = pending.try_update_value(Option::take).flatten() {
            handle.clear();
        }
        let handle = set_timeout_with_handle(move || act.run(value), pause);
        pending.try_set_value(handle.ok());
    });
}

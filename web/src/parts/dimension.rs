//! A field for a size: typed in any usual unit, or stepped.

use leptos::prelude::*;
use slotwright_core::quantity::Dim;
use slotwright_core::words;

use crate::sizes;

/// A labelled size with buttons for one step less and more.
#[component]
pub fn Dimension(
    /// What is measured.
    label: &'static str,
    /// The present size.
    #[prop(into)]
    value: Signal<Dim>,
    /// The next smaller and larger size that can be taken.
    #[prop(into)]
    neighbours: Signal<(Option<Dim>, Option<Dim>)>,
    /// Whether the present size is part of what stops the order.
    #[prop(into)]
    invalid: Signal<bool>,
    /// Hears a new size.
    take: Callback<Dim>,
) -> impl IntoView {
    let (wrong, set_wrong) = signal(false);
    let typed = move |event| {
        let text = event_target_value(&event);
        let read = sizes::read(&text);
        set_wrong.set(read.is_none());
        if let Some(size) = read {
            take.run(size);
        }
    };
    let step = move |up: bool| {
        let (less, more) = neighbours.get_untracked();
        if let Some(size) = if up { more } else { less } {
            set_wrong.set(false);
            take.run(size);
        }
    };
    let keys = move |event: web_sys::KeyboardEvent| match event.key().as_str() {
        "ArrowUp" => {
            event.prevent_default();
            step(true);
        }
        "ArrowDown" => {
            event.prevent_default();
            step(false);
        }
        _ => {}
    };
    let less = format!("{label}: one step less");
    let more = format!("{label}: one step more");
    view! {
        <div class="field">
            <span class="stepped">
                <button type="button" aria-label=less aria-disabled=move || neighbours.get().0.is_none().to_string()
                    on:click=move |_| step(false)>"\u{2212}"</button>
                <input
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    aria-label=format!("{label} in millimetres")
                    aria-invalid=move || (wrong.get() || invalid.get()).to_string()
                    prop:value=move || words::size(value.get())
                    on:change=typed
                    on:keydown=keys
                />
                <span class="unit" aria-hidden="true">"mm"</span>
                <button type="button" aria-label=more aria-disabled=move || neighbours.get().1.is_none().to_string()
                    on:click=move |_| step(true)>"+"</button>
            </span>
            <Show when=move || wrong.get()>
                <p class="tell stop" role="alert">"This is no size. Write 1640, 164 cm, or 64 1/2 in."</p>
            </Show>
        </div>
    }
}

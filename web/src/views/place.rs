//! Where it stands.

use leptos::prelude::*;
use slotwright_core::change::Change;
use slotwright_core::finding::Question;
use slotwright_core::quantity::Dim;
use slotwright_core::words;

use super::ask::{Found, Heading};
use crate::sizes;
use crate::state::Desk;

/// Wall, screen, plug.
#[component]
pub fn PlaceQuestions() -> impl IntoView {
    let desk = Desk::here();
    let place = Memo::new(move |_| desk.choice.with(|choice| choice.place.clone()));
    let wall = move || place.with(|place| place.wall_mm.map(words::size)).unwrap_or_default();
    let screen = move || {
        let tenths = place.with(|place| place.screen_tenth_inch);
        tenths.map(|tenths| words::decimal(f64::from(tenths) / 10.0, 1)).unwrap_or_default()
    };
    let plugs = desk.with_range(|range| range.plugs.iter().map(|plug| (plug.key.clone(), plug.name.clone())).collect::<Vec<_>>());
    let keys: Vec<_> = plugs.iter().map(|(key, _)| key.clone()).collect();
    let take_plug = move |event| {
        let taken = event_target_value(&event);
        desk.apply(&Change::Plug(keys.iter().find(|key| key.as_str() == taken).cloned()));
    };
    let plug = move || place.with(|place| place.plug.as_ref().map(ToString::to_string)).unwrap_or_default();
    let shown = plugs.into_iter().map(|(key, name)| {
        let (value, own) = (key.to_string(), key.to_string());
        view! { <option value=value selected=move || plug() == own>{name}</option> }
    }).collect_view();
    view! {
        <section id="question-place">
            <Heading number=1 title="Where it stands"/>
            <div class="fields">
                <Optional label="Free wall" unit="mm" value=wall
                    read=|text| sizes::read(text).filter(|size| *size > Dim::mm(0)).map(|size| Change::WallMm(Some(size)))
                    none=Change::WallMm(None)/>
                <Optional label="Screen on top" unit="inch" value=screen
                    read=|text| sizes::read_diagonal(text).map(|tenths| Change::ScreenTenthInch(Some(tenths)))
                    none=Change::ScreenTenthInch(None)/>
                <label class="field">
                    <span class="field-label">"Plug to pass"</span>
                    <select on:change=take_plug>
                        <option value="" selected=move || plug().is_empty()>"none named"</option>
                        {shown}
                    </select>
                </label>
            </div>
            <Found about=|question| question == Question::Place/>
        </section>
    }
}

/// A field that may stay empty.
#[component]
fn Optional(
    label: &'static str,
    unit: &'static str,
    #[prop(into)] value: Signal<String>,
    read: fn(&str) -> Option<Change>,
    none: Change,
) -> impl IntoView {
    let desk = Desk::here();
    let (wrong, set_wrong) = signal(false);
    let typed = move |event| {
        let text = event_target_value(&event);
        let change = if text.trim().is_empty() { Some(none.clone()) } else { read(&text) };
        set_wrong.set(change.is_none());
        if let Some(change) = change {
            desk.apply(&change);
        }
    };
    view! {
        <label class="field">
            <span class="field-label">{label}</span>
            <span class="boxed">
                <input type="text" inputmode="decimal" autocomplete="off" placeholder="any"
                    aria-invalid=move || wrong.get().to_string() prop:value=move || value.get() on:change=typed/>
                <span class="unit">{unit}</span>
            </span>
            <Show when=move || wrong.get()>
                <span class="tell stop" role="alert">"This is no size."</span>
            </Show>
        </label>
    }
}

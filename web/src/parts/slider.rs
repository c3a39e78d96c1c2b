//! A slider whose track shows all that can be made as solid bars, and says why there are gaps.

use core::fmt::Write;

use leptos::prelude::*;
use slotwright_core::solver::track::{Stretch, is_open, nearest_open};

use super::Read;

/// The track and the thumb on it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Track {
    /// The present step.
    pub step: i32,
    /// The last step.
    pub last: i32,
    /// The present value in words.
    pub text: String,
    /// The values at both ends in words.
    pub ends: (String, String),
    /// All stretches.
    pub stretches: Vec<Stretch>,
}

impl Track {
    /// The bars of what can be made, a thousand units long.
    fn bars(&self) -> String {
        let mut path = String::new();
        for stretch in self.stretches.iter().filter(|stretch| stretch.open) {
            let place = |step: i32| step * 1000 / self.last.max(1);
            let (from, to) = (place(stretch.from), place(stretch.to).max(place(stretch.from) + 4));
            // Writing to a String cannot fail.
            let _ = write!(path, "M{from} 0H{to}V6H{from}Z");
        }
        path
    }
}

/// The slider; `take` hears a step that can be made.
#[component]
pub fn Slider(
    /// What is measured.
    label: &'static str,
    /// The track.
    track: Read<Track>,
    /// Hears the step that was taken.
    take: Callback<i32>,
    /// Hears the step that was wanted and cannot be made as things are; nothing if it can.
    refused: Callback<Option<i32>>,
) -> impl IntoView {
    let track = Memo::new(move |_| track.run(()));
    let moved = move |event| {
        let Ok(wanted) = event_target_value(&event).parse::<i32>() else { return };
        let track = track.get_untracked();
        take.run(nearest_open(&track.stretches, wanted));
        refused.run((!is_open(&track.stretches, wanted)).then_some(wanted));
    };
    // A thumb that was left in a gap goes back to what was taken.
    let healed = move |event: web_sys::Event| {
        event_target::<web_sys::HtmlInputElement>(&event)
            .set_value(&track.with_untracked(|track| track.step.to_string()));
    };
    view! {
        <div class="slider">
            <svg class="track" viewBox="0 0 1000 6" preserveAspectRatio="none" aria-hidden="true">
                <path d=move || track.with(Track::bars)></path>
            </svg>
            <input
                type="range"
                min="0"
                max=move || track.with(|track| track.last.to_string())
                step="1"
                aria-label=label
                aria-valuetext=move || track.with(|track| track.text.clone())
                prop:value=move || track.with(|track| track.step.to_string())
                on:input=moved
                on:blur=move |event| healed(event.into())
                on:pointerup=move |event| healed(event.into())
                on:keyup=move |event| healed(event.into())
            />
        </div>
        <p class="ends" aria-hidden="true">
            <span>{move || track.with(|track| track.ends.0.clone())}</span>
            <span>{move || track.with(|track| track.ends.1.clone())}</span>
        </p>
    }
}

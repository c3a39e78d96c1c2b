//! A slider whose track shows all that can be made as solid bars, and says why there are gaps.

use core::fmt::Write;

use leptos::prelude::*;

use super::Read;

/// A stretch of the track, in steps from its beginning.
#[derive(Clone, Debug, PartialEq)]
pub struct Stretch {
    /// First step.
    pub from: i32,
    /// Last step.
    pub to: i32,
    /// Whether all of it can be made as things are.
    pub open: bool,
}

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
    /// The nearest step that can be made; the given one if nothing can.
    pub fn snapped(&self, step: i32) -> i32 {
        let open = self.stretches.iter().filter(|stretch| stretch.open);
        let near = open.map(|stretch| step.clamp(stretch.from, stretch.to));
        near.min_by_key(|near| (near - step).abs()).unwrap_or(step)
    }

    /// Whether a step can be made as things are.
    fn is_open(&self, step: i32) -> bool {
        self.stretches.iter().any(|stretch| stretch.open && stretch.from <= step && step <= stretch.to)
    }

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
        refused.run((!track.is_open(wanted)).then_some(wanted));
        take.run(track.snapped(wanted));
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
            />
        </div>
        <p class="ends" aria-hidden="true">
            <span>{move || track.with(|track| track.ends.0.clone())}</span>
            <span>{move || track.with(|track| track.ends.1.clone())}</span>
        </p>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn track(stretches: &[(i32, i32, bool)]) -> Track {
        let stretch = |&(from, to, open): &(i32, i32, bool)| Stretch { from, to, open };
        Track { last: 30, stretches: stretches.iter().map(stretch).collect(), ..Track::default() }
    }

    #[test]
    fn the_thumb_snaps_to_the_nearest_open_step() {
        let whole = track(&[(0, 3, false), (4, 10, true), (11, 20, false), (21, 30, true)]);
        for (wanted, taken) in [(0, 4), (4, 4), (7, 7), (12, 10), (19, 21), (30, 30)] {
            assert_eq!(whole.snapped(wanted), taken);
        }
        assert_eq!(track(&[(0, 9, false)]).snapped(5), 5);
        assert!(!whole.is_open(12) && whole.is_open(5));
    }
}

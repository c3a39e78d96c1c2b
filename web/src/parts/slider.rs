//! A slider whose track shows all that can be made as solid bars, and says why there are gaps.

use leptos::prelude::*;

/// A stretch of the track, in steps from its beginning.
#[derive(Clone, Debug, PartialEq)]
pub struct Stretch {
    /// First step.
    pub from: i32,
    /// Last step.
    pub to: i32,
    /// Why nothing of it can be made; nothing if it can.
    pub shut: Option<String>,
}

/// The nearest step that can be made; the given one if nothing can.
pub fn snapped(stretches: &[Stretch], step: i32) -> i32 {
    let open = stretches.iter().filter(|stretch| stretch.shut.is_none());
    let near = open.map(|stretch| step.clamp(stretch.from, stretch.to));
    near.min_by_key(|near| (near - step).abs()).unwrap_or(step)
}

/// The slider; `take` hears a step that can be made.
#[component]
pub fn Slider(
    /// What is measured.
    label: &'static str,
    /// The present step.
    #[prop(into)]
    step: Signal<i32>,
    /// The last step.
    #[prop(into)]
    last: Signal<i32>,
    /// The present value in words.
    #[prop(into)]
    text: Signal<String>,
    /// All stretches of the track.
    #[prop(into)]
    stretches: Signal<Vec<Stretch>>,
    /// Hears the step that was taken.
    take: Callback<i32>,
) -> impl IntoView {
    let (reason, set_reason) = signal(None::<String>);
    let moved = move |event| {
        let Ok(wanted) = event_target_value(&event).parse::<i32>() else { return };
        let taken = stretches.with_untracked(|stretches| {
            let at = stretches.iter().find(|stretch| stretch.from <= wanted && wanted <= stretch.to);
            set_reason.set(at.and_then(|stretch| stretch.shut.clone()));
            snapped(stretches, wanted)
        });
        take.run(taken);
    };
    let bars = move || {
        let whole = f64::from(last.get().max(1));
        stretches.get().into_iter().filter(|stretch| stretch.shut.is_none()).map(|stretch| {
            let (from, to) = (f64::from(stretch.from) / whole, f64::from(stretch.to) / whole);
            let (x, width) = (from * 1000.0, ((to - from) * 1000.0).max(4.0));
            view! { <rect x=x.to_string() y="0" width=width.to_string() height="6"></rect> }
        }).collect_view()
    };
    view! {
        <div class="slider">
            <svg class="track" viewBox="0 0 1000 6" preserveAspectRatio="none" aria-hidden="true">{bars}</svg>
            <input
                type="range"
                min="0"
                max=move || last.get().to_string()
                step="1"
                aria-label=label
                aria-valuetext=move || text.get()
                prop:value=move || step.get().to_string()
                on:input=moved
            />
        </div>
        <p class="why" aria-live="polite">{move || reason.get()}</p>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn stretch(from: i32, to: i32, open: bool) -> Stretch {
        Stretch { from, to, shut: if open { None } else { Some("too narrow".into()) } }
    }

    #[test]
    fn the_thumb_snaps_to_the_nearest_open_step() {
        let track = [stretch(0, 3, false), stretch(4, 10, true), stretch(11, 20, false), stretch(21, 30, true)];
        for (wanted, taken) in [(0, 4), (4, 4), (7, 7), (12, 10), (19, 21), (30, 30)] {
            assert_eq!(snapped(&track, wanted), taken);
        }
        assert_eq!(snapped(&[stretch(0, 9, false)], 5), 5);
    }
}

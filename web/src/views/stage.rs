//! The drawing of the unit as it stands.

use leptos::prelude::*;
use slotwright_core::range::Finish;
use slotwright_core::words;
use slotwright_core::words::page::Label;
use slotwright_cutpack::describe::describe;
use slotwright_cutpack::drawing::{Subject, View, is_dark, scale, svg_with_wood};

use super::looks::bare;
use super::room::TakeAway;
use super::solid::Solid;
use crate::browser::{focus, page};
use crate::state::Desk;

/// From this width on the questions stand beside the stage.
const WIDE: &str = "(width >= 62.5em)";
/// On narrower windows the stage keeps fewer controls.
const PHONE: &str = "(width < 40em)";

/// Room for the drawing in pixels by the style's measures, letters taken as they are by default: the window less
/// questions, strip, words and borders; on narrow screens as much as picture and controls of the solid unit take.
fn room() -> (f64, f64) {
    let (width, height) = page::window_size();
    let scale = page::letter_scale();
    let (width, height) = (width / scale, height / scale);
    if page::prefers(WIDE) {
        (width - 480.0, height - 290.0)
    } else if page::prefers(PHONE) {
        (width - 32.0, (height * 0.36).clamp(144.0, 256.0) - 44.0)
    } else {
        (width - 32.0, (height * 0.235).clamp(128.0, 384.0) + 87.0)
    }
}

/// Views as a toolbar, the drawing, and its text alternative.
#[component]
pub fn Stage() -> impl IntoView {
    let desk = Desk::here();
    let (space, measure) = signal(room());
    let handle = window_event_listener(leptos::ev::resize, move |_| measure.set(room()));
    on_cleanup(move || handle.remove());
    // The solid unit first; where there is no picture of it, the drawing takes its place.
    let flat = if page::prefers(WIDE) { View::Sheet } else { View::Front };
    let (view, look) = signal(None::<View>);
    let (no_solid, more) = (RwSignal::new(false), RwSignal::new(false));
    let shown = move || view.get().or(no_solid.get().then_some(flat));
    let lost = Callback::new(move |lost| {
        no_solid.set(lost);
        focus::mend();
    });
    let described = Memo::new(move |_| desk.read(|snapshot, range| describe(range, &snapshot.choice)));
    let of_finish = move |read: fn(&Finish) -> String| {
        desk.read(|snapshot, range| range.finish(&snapshot.choice.finish).map(read)).unwrap_or_default()
    };
    let colour = move || of_finish(|finish| finish.colour.clone());
    let dark = move || desk.read(|snapshot, range| range.finish(&snapshot.choice.finish).is_some_and(is_dark));
    let drawn = move || {
        let view = shown()?;
        let (room, lit) = (space.get(), desk.lit());
        desk.read(|snapshot, range| {
            let built = snapshot.built.as_ref()?;
            let subject = Subject { range, choice: &snapshot.choice, built };
            Some(svg_with_wood(subject, view, lit, scale(subject, view, room), &described.get()))
        })
    };
    let built = move || desk.read(|snapshot, _| snapshot.built.is_some());
    // Why, where people look for the unit.
    let nothing = move || {
        let reason = desk.read(|snapshot, _| snapshot.findings.first().map(words::reason)).unwrap_or_default();
        if built() { String::new() } else { [Label::NothingToDraw.text(), " ", &reason].concat() }
    };
    let flat_only = move || {
        if no_solid.get() { Label::NoSolid.text() } else { "" }
    };
    let tab = move |own: Option<View>, label: Label| {
        view! {
            <button type="button" aria-pressed=move || (shown() == own).to_string()
                aria-describedby=own.is_none().then_some("flat-only")
                aria-disabled=move || (own.is_none() && no_solid.get()).to_string() on:click=move |_| look.set(own)>
                {label.text()}
            </button>
        }
    };
    let touched = move |event: web_sys::MouseEvent| {
        if let Some(bay) = page::touched_bay(&event) {
            desk.look_at(bay);
            page::scroll_to("question-bays");
        }
    };
    view! {
        <section class="stage" class:whole=move || more.get() aria-label=Label::Drawing.text()>
            <div class="knobs tops">
                <div class="views" role="toolbar" aria-label=Label::View.text()>
                    {tab(None, Label::Solid)}{tab(Some(View::Sheet), Label::Sheet)}{tab(Some(View::Front), Label::Elevation)}
                    {tab(Some(View::Plan), Label::Plan)}{tab(Some(View::Section), Label::Section)}
                </div>
                <TakeAway/>
            </div>
            <p id="flat-only" class="flat-only">{flat_only}</p>
            <div class="solid" class:away=move || shown().is_some() || !built()><Solid words=described lost more/></div>
            <div class="paper" class:dark=dark style=("--finish", colour) style=("--bare", move || of_finish(bare)) on:click=touched
                inner_html=move || drawn().unwrap_or_default()>
            </div>
            <p class="nothing">{nothing}</p>
            <p class="words" aria-hidden="true">{move || described.get()}</p>
        </section>
    }
}

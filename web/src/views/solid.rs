//! The unit as a solid thing: it turns, opens, comes apart and goes together. A worker draws it.

use leptos::prelude::*;
use slotwright_core::choice::Fill;
use slotwright_core::units::decimal::Plain;
use slotwright_core::words::page::Label;
use slotwright_stage::stage_state::{StageState, StepState};
use wasm_bindgen::JsCast;
use web_sys::{Event, KeyboardEvent, PointerEvent, WheelEvent};

use crate::browser::{first_view, page, scene, speech};
use crate::parts::inert;
use crate::state::Desk;

/// A button: its name, what stands on it in its place, what it sends to the worker.
type Knob = (Label, &'static str, &'static [&'static str]);

/// A box on a turntable, whose front goes to one side: a bent arrow alone would look like undoing.
const TABLE_TO_LEFT: &str = "<svg class=\"turntable\" viewBox=\"0 0 28 22\" aria-hidden=\"true\"><path d=\"M9 2H19V12H9ZM3 12C3 16 8 18 14 18S25 16 25 12M3 12L1 17M3 12L8 14\"/></svg>";
const TABLE_TO_RIGHT: &str = "<svg class=\"turntable\" viewBox=\"0 0 28 22\" aria-hidden=\"true\"><path d=\"M9 2H19V12H9ZM25 12C25 16 20 18 14 18S3 16 3 12M25 12L27 17M25 12L20 14\"/></svg>";

const CAMERA: [Knob; 9] = [
    (Label::Corner, "", &["corner"]),
    (Label::Front, "", &["facing"]),
    (Label::FromAbove, "", &["top"]),
    (Label::TurnLeft, TABLE_TO_LEFT, &["turn", "0.3", "0"]),
    (Label::TurnRight, TABLE_TO_RIGHT, &["turn", "-0.3", "0"]),
    (Label::LookFromHigher, "\u{2191}", &["turn", "0", "0.2"]),
    (Label::LookFromLower, "\u{2193}", &["turn", "0", "-0.2"]),
    (Label::Nearer, "+", &["near", "1.25"]),
    (Label::Farther, "\u{2212}", &["near", "0.8"]),
];
const DOORS: Knob = (Label::DoorsOpen, "", &["leaves"]);
const PERSON: Knob = (Label::Person, "", &["person"]);
const BUILD: Knob = (Label::BuildItUp, "", &["build"]);
const STEPS: [Knob; 2] = [(Label::StepBack, "\u{2190}", &["step", "-1"]), (Label::StepOn, "\u{2192}", &["step", "1"])];

/// What the picture depends on beside the unit: dark or light, motion or none.
const MOODS: [&str; 2] = ["(prefers-color-scheme: dark)", "(prefers-reduced-motion: reduce)"];

/// What the canvas listens to.
const EVENTS: [&str; 7] =
    ["pointerdown", "pointermove", "pointerup", "pointercancel", "wheel", "keydown", "contextmenu"];

/// Canvas, dimension lines, and every control of the stage.
#[component]
pub fn Solid(
    /// The unit in words.
    words: Memo<String>,
    /// Hears whether there is no picture.
    lost: Callback<bool>,
    /// Whether a narrow page shows all controls of the stage.
    more: RwSignal<bool>,
) -> impl IntoView {
    let desk = Desk::here();
    let canvas = NodeRef::<leptos::html::Canvas>::new();
    let (state, set_state) = signal(StageState::default());
    let begun = RwSignal::new(false);
    let on_message = move |texts: Vec<String>| {
        let mut texts = texts.into_iter();
        match texts.next().unwrap_or_default().as_str() {
            "ready" => {
                scene::send(&["range", &desk.range_text()]);
                begun.set(true);
            }
            "told" => {
                first_view::drop_drawing();
                set_state.set(StageState::of_texts(texts));
            }
            word => lost.run(word == "lost"),
        }
    };
    Effect::new(move |_| {
        if let Some(canvas) = canvas.get() {
            let hands = StoredValue::new(Vec::<Hand>::new());
            page::listen(&canvas, &EVENTS, Callback::new(move |event| on_event(&event, hands)));
            let begin = move |()| scene::open(&canvas, Callback::new(on_message));
            first_view::once_shown(Callback::new(begin));
        }
    });
    let mood = move || {
        let flag = |query| if page::prefers(query) { "1" } else { "" };
        let [dark, still] = MOODS;
        scene::send(&["mood", flag(dark), flag(still)]);
    };
    for query in MOODS {
        page::listen_to_preference(query, Callback::new(move |_| mood()));
    }
    Effect::new(move |_| {
        if begun.get() {
            mood();
        }
    });
    Effect::new(move |_| {
        if begun.get() {
            scene::send(&["unit", &desk.read(|snapshot, _| snapshot.choice.to_compact())]);
        }
    });
    // Until there is a picture, the drawing of the starting unit stands there.
    Effect::new(move |before: Option<()>| {
        words.track();
        if before.is_some() {
            first_view::drop_drawing();
        }
    });
    let label = move || words.with(|unit| state.with(|state| format!("{unit} {}", state.shown)));
    let leaves =
        move || desk.read(|snapshot, _| snapshot.choice.bays.iter().any(|bay| matches!(bay.fill, Fill::Leaf(_))));
    let builds = move || state.with(|state| state.step.is_some());
    let step_state = move |of: fn(&StepState) -> bool| state.with(|state| state.step.as_ref().is_some_and(of));
    let sentence = Memo::new(move |_| {
        state.with(|state| state.step.as_ref().map(|step| step.sentence.clone()).unwrap_or_default())
    });
    speech::follow(Callback::new(move |()| sentence.get()));
    let is_apart = move || state.with(|state| state.apart > 0);
    let part = move |_| scene::send(&["apart", if is_apart() { "0" } else { "100" }]);
    view! {
        <div class="quick">
            <span class:leafless=move || !leaves()>
                {button(DOORS, Some(Callback::new(move |()| state.with(|state| state.open))), None)}
            </span>
            <button type="button" aria-pressed=move || is_apart().to_string() on:click=part>{Label::Apart.text()}</button>
            <button type="button" class="all" aria-expanded=move || more.get().to_string() on:click=move |_| more.update(|more| *more = !*more)>
                {Label::More.text()}
            </button>
        </div>
        <div class="scene">
            <canvas node_ref=canvas role="img" tabindex="0" aria-label=label aria-describedby="scene-keys"></canvas>
            <div class="dims" aria-hidden="true" inner_html=move || state.with(|state| state.lines.clone())></div>
        </div>
        <div class="build" class:idle=move || !builds()>
            <div class="views" role="toolbar" aria-label=Label::Steps.text()>
                {button(STEPS[0], None, Some(Callback::new(move |()| step_state(|step| step.first))))}
                <button type="button" class="play" on:click=move |_| scene::send(&["play"])>
                    {move || if step_state(|step| step.plays) { Label::Pause } else { Label::Play }.text()}
                </button>
                {button(STEPS[1], None, Some(Callback::new(move |()| step_state(|step| step.last))))}
            </div>
            <p>{move || sentence.get()}</p>
        </div>
        {inert("<p id=\"scene-keys\" class=\"unseen\">", Label::SceneKeys)}
        <div class="moves">
            <div class="knobs">
                <div class="views cameras" role="toolbar" aria-label=Label::LookFrom.text()>
                    {CAMERA.into_iter().map(|knob| button(knob, None, None)).collect_view()}
                </div>
                <div class="views poses" class:leafless=move || !leaves() role="toolbar" aria-label=Label::Show.text()>
                    {vec![
                        button(DOORS, Some(Callback::new(move |()| state.with(|state| state.open))), None),
                        button(PERSON, Some(Callback::new(move |()| state.with(|state| state.person))), None),
                        button(BUILD, Some(Callback::new(move |()| builds())), None),
                    ]}
                </div>
            </div>
            <label class="apart">{Label::PullApart.text()}
                <input type="range" min="0" max="100" step="1" value="0" prop:value=move || state.with(|state| state.apart).to_string()
                    on:input=move |event| scene::send(&["apart", &event_target_value(&event)])/>
            </label>
        </div>
    }
}

/// Whether something holds of a button, as things are; `None` where it never matters.
type Flag = Option<Callback<(), bool>>;

/// A button; one that stays down says whether it is, one that can be of no use whether it is now.
fn button((name, sign, command): Knob, down: Flag, off: Flag) -> AnyView {
    let told = |flag: Flag| move || flag.map(|flag| flag.run(()).to_string());
    let name = name.text();
    let sign = if sign.is_empty() { name } else { sign };
    view! {
        <button type="button" aria-label=name title=name aria-pressed=told(down) aria-disabled=told(off)
            on:click=move |_| scene::send(command) inner_html=sign></button>
    }
    .into_any()
}

/// A hand on the picture: its number and where it is.
type Hand = (i32, f64, f64);

/// What hands, wheel and keys do on the picture: one hand turns it, with Shift or the right button it
/// moves it, two pinch and move it.
fn on_event(event: &Event, hands: StoredValue<Vec<Hand>>) {
    if let Some(key) = event.dyn_ref::<KeyboardEvent>() {
        if let Some(command) = command_of(&key.key(), key.shift_key()) {
            event.prevent_default();
            scene::send(command);
        }
    } else if let Some(wheel) = event.dyn_ref::<WheelEvent>() {
        event.prevent_default();
        figures("near", &[1.0 - wheel.delta_y().clamp(-200.0, 200.0) * 0.0015]);
    } else if event.type_() == "contextmenu" {
        event.prevent_default();
    } else if let Some(pointer) = event.dyn_ref::<PointerEvent>() {
        hands.update_value(|hands| follow(hands, pointer));
    }
}

fn follow(hands: &mut Vec<Hand>, event: &PointerEvent) {
    let (id, x, y) = (event.pointer_id(), f64::from(event.client_x()), f64::from(event.client_y()));
    let known = hands.iter().position(|hand| hand.0 == id);
    match (event.type_().as_str(), known) {
        ("pointerdown", None) => {
            page::hold_pointer(event);
            hands.push((id, x, y));
        }
        ("pointermove", Some(at)) => {
            let other = hands.iter().find(|hand| hand.0 != id).copied();
            let Some(hand) = hands.get_mut(at) else { return };
            let (_, from_x, from_y) = core::mem::replace(hand, (id, x, y));
            let (across, down) = (x - from_x, y - from_y);
            if let Some((_, other_x, other_y)) = other {
                let apart = |x: f64, y: f64| (x - other_x).hypot(y - other_y).max(1.0);
                figures("near", &[apart(x, y) / apart(from_x, from_y)]);
                figures("shift", &[across * -0.001, down * 0.001]);
            } else if event.shift_key() || event.buttons() & 2 != 0 {
                figures("shift", &[across * -0.0018, down * 0.0018]);
            } else {
                figures("turn", &[across * -0.008, down * 0.0056]);
            }
        }
        ("pointerup" | "pointercancel", Some(at)) => {
            hands.remove(at);
        }
        _ => {}
    }
}

fn figures(word: &str, figures: &[f64]) {
    let texts: Vec<String> = figures.iter().map(|figure| Plain::of(*figure, 3).to_string()).collect();
    let said: Vec<&str> = core::iter::once(word).chain(texts.iter().map(String::as_str)).collect();
    scene::send(&said);
}

/// What a key sends to the worker.
fn command_of(key: &str, shift: bool) -> Option<&'static [&'static str]> {
    Some(match (key, shift) {
        ("ArrowLeft", false) => &["turn", "0.15", "0"],
        ("ArrowRight", false) => &["turn", "-0.15", "0"],
        ("ArrowUp", false) => &["turn", "0", "0.1"],
        ("ArrowDown", false) => &["turn", "0", "-0.1"],
        ("ArrowLeft", true) => &["shift", "0.05", "0"],
        ("ArrowRight", true) => &["shift", "-0.05", "0"],
        ("ArrowUp", true) => &["shift", "0", "-0.05"],
        ("ArrowDown", true) => &["shift", "0", "0.05"],
        ("+" | "=", _) => &["near", "1.15"],
        ("-", _) => &["near", "0.87"],
        ("Home", _) => &["corner"],
        _ => return None,
    })
}

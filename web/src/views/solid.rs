//! The unit as a solid thing: it turns, opens, comes apart and goes together. A worker draws it.

use leptos::prelude::*;
use slotwright_core::choice::Fill;
use slotwright_core::words::page::Label;
use slotwright_protocol::stage::{Command, News, Shown, Step, View};
use wasm_bindgen::JsCast;
use web_sys::{Event, KeyboardEvent, PointerEvent, WheelEvent};

use crate::browser::{first_view, page, scene, speech};
use crate::parts::inert;
use crate::state::Desk;

/// A button: its name, what stands on it in its place, what it asks of the worker.
type Knob = (Label, &'static str, Command);

/// A box on a turntable, whose front goes to one side: a bent arrow alone would look like undoing.
const TABLE_TO_LEFT: &str = "<svg class=\"turntable\" viewBox=\"0 0 28 22\" aria-hidden=\"true\"><path d=\"M9 2H19V12H9ZM3 12C3 16 8 18 14 18S25 16 25 12M3 12L1 17M3 12L8 14\"/></svg>";
const TABLE_TO_RIGHT: &str = "<svg class=\"turntable\" viewBox=\"0 0 28 22\" aria-hidden=\"true\"><path d=\"M9 2H19V12H9ZM25 12C25 16 20 18 14 18S3 16 3 12M25 12L27 17M25 12L20 14\"/></svg>";

const CAMERA: [Knob; 9] = [
    (Label::Corner, "", Command::Look(View::Corner)),
    (Label::Front, "", Command::Look(View::Front)),
    (Label::FromAbove, "", Command::Look(View::Above)),
    (Label::TurnLeft, TABLE_TO_LEFT, Command::Turn(0.3, 0.0)),
    (Label::TurnRight, TABLE_TO_RIGHT, Command::Turn(-0.3, 0.0)),
    (Label::LookFromHigher, "\u{2191}", Command::Turn(0.0, 0.2)),
    (Label::LookFromLower, "\u{2193}", Command::Turn(0.0, -0.2)),
    (Label::Nearer, "+", Command::Near(1.25)),
    (Label::Farther, "\u{2212}", Command::Near(0.8)),
];
const DOORS: Knob = (Label::DoorsOpen, "", Command::Leaves);
const PERSON: Knob = (Label::Person, "", Command::Person);
const BUILD: Knob = (Label::BuildItUp, "", Command::Build);
const BACK: Knob = (Label::StepBack, "\u{2190}", Command::Step { back: true });
const ON: Knob = (Label::StepOn, "\u{2192}", Command::Step { back: false });

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
    let (state, set_state) = signal(Shown::default());
    let begun = RwSignal::new(false);
    let on_news = move |news| match news {
        News::Found => {
            begun.set(true);
            lost.run(false);
        }
        News::Shown(shown) => {
            first_view::drop_drawing();
            set_state.set(shown);
        }
        News::Lost => lost.run(true),
    };
    Effect::new(move |_| {
        if let Some(canvas) = canvas.get() {
            let hands = StoredValue::new(Vec::<Hand>::new());
            page::listen(&canvas, &EVENTS, Callback::new(move |event| on_event(&event, hands)));
            let begin = move |()| scene::open(&canvas, desk.range_text(), Callback::new(on_news));
            first_view::once_shown(Callback::new(begin));
        }
    });
    let mood = move || {
        let [dark, still] = MOODS.map(page::prefers);
        scene::send(&Command::Mood { dark, still });
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
            scene::send(&Command::Unit(desk.read(|snapshot, _| snapshot.choice.clone())));
        }
    });
    // Until there is a picture, the drawing of the starting unit stands there.
    Effect::new(move |before: Option<()>| {
        words.track();
        if before.is_some() {
            first_view::drop_drawing();
        }
    });
    let label = move || words.with(|unit| state.with(|state| format!("{unit} {}", state.words)));
    let leaves =
        move || desk.read(|snapshot, _| snapshot.choice.bays.iter().any(|bay| matches!(bay.fill, Fill::Leaf(_))));
    let builds = move || state.with(|state| state.step.is_some());
    let step_state = move |of: fn(&Step) -> bool| state.with(|state| state.step.as_ref().is_some_and(of));
    let sentence = Memo::new(move |_| {
        state.with(|state| state.step.as_ref().map(|step| step.sentence.clone()).unwrap_or_default())
    });
    speech::follow(Callback::new(move |()| sentence.get()));
    let pulled = move |event| {
        if let Ok(hundredths) = event_target_value(&event).parse() {
            scene::send(&Command::Apart(hundredths));
        }
    };
    view! {
        <Quick state leaves=Callback::new(move |()| leaves()) more/>
        <div class="scene">
            <canvas node_ref=canvas role="img" tabindex="0" aria-label=label aria-describedby="scene-keys"></canvas>
            <div class="dims" aria-hidden="true" inner_html=move || state.with(|state| state.lines.clone())></div>
        </div>
        <div class="build" class:idle=move || !builds()>
            <div class="views" role="toolbar" aria-label=Label::Steps.text()>
                {button(BACK, None, Some(Callback::new(move |()| step_state(|step| step.first))))}
                <button type="button" class="play" on:click=move |_| scene::send(&Command::Play)>
                    {move || if step_state(|step| step.plays) { Label::Pause } else { Label::Play }.text()}
                </button>
                {button(ON, None, Some(Callback::new(move |()| step_state(|step| step.last))))}
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
                    on:input=pulled/>
            </label>
        </div>
    }
}

/// On a phone: three controls, and the rest behind the last of them.
#[component]
fn Quick(
    state: ReadSignal<Shown>,
    /// Whether the unit has doors.
    leaves: Callback<(), bool>,
    /// Whether the rest is there.
    more: RwSignal<bool>,
) -> impl IntoView {
    let is_apart = move || state.with(|state| state.apart > 0);
    let part = move |_| scene::send(&Command::Apart(if is_apart() { 0 } else { 100 }));
    view! {
        <div class="quick">
            <span class:leafless=move || !leaves.run(())>
                {button(DOORS, Some(Callback::new(move |()| state.with(|state| state.open))), None)}
            </span>
            <button type="button" aria-pressed=move || is_apart().to_string() on:click=part>{Label::Apart.text()}</button>
            <button type="button" class="all" aria-expanded=move || more.get().to_string() on:click=move |_| more.update(|more| *more = !*more)>
                {Label::More.text()}
            </button>
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
            on:click=move |_| scene::send(&command) inner_html=sign></button>
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
            scene::send(&command);
        }
    } else if let Some(wheel) = event.dyn_ref::<WheelEvent>() {
        event.prevent_default();
        scene::send(&Command::Near(1.0 - wheel.delta_y().clamp(-200.0, 200.0) * 0.0015));
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
                scene::send(&Command::Near(apart(x, y) / apart(from_x, from_y)));
                scene::send(&Command::Shift(across * -0.001, down * 0.001));
            } else if event.shift_key() || event.buttons() & 2 != 0 {
                scene::send(&Command::Shift(across * -0.0018, down * 0.0018));
            } else {
                scene::send(&Command::Turn(across * -0.008, down * 0.0056));
            }
        }
        ("pointerup" | "pointercancel", Some(at)) => {
            hands.remove(at);
        }
        _ => {}
    }
}

/// What a key asks of the worker.
fn command_of(key: &str, shift: bool) -> Option<Command> {
    Some(match (key, shift) {
        ("ArrowLeft", false) => Command::Turn(0.15, 0.0),
        ("ArrowRight", false) => Command::Turn(-0.15, 0.0),
        ("ArrowUp", false) => Command::Turn(0.0, 0.1),
        ("ArrowDown", false) => Command::Turn(0.0, -0.1),
        ("ArrowLeft", true) => Command::Shift(0.05, 0.0),
        ("ArrowRight", true) => Command::Shift(-0.05, 0.0),
        ("ArrowUp", true) => Command::Shift(0.0, -0.05),
        ("ArrowDown", true) => Command::Shift(0.0, 0.05),
        ("+" | "=", _) => Command::Near(1.15),
        ("-", _) => Command::Near(0.87),
        ("Home", _) => Command::Look(View::Corner),
        _ => return None,
    })
}

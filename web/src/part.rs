//! The parts of the program that are loaded by those who need them, mostly workers: what the page does not call itself is cut off
//! when the app is built.
#![expect(clippy::unnecessary_wraps, reason = "to load a part can fail, which the macro adds; what it does cannot")]

use slotwright_core::range::Range;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use wasm_bindgen_futures::spawn_local;
use wasm_split_helpers::{SplitLoaderError, wasm_split};
use web_sys::{DedicatedWorkerGlobalScope, WorkerGlobalScope};

use crate::browser::page;
use crate::views;
use crate::views::drafts::Act;
use crate::views::order::Begin;
use crate::views::room::Make;
use crate::workshop;

/// What a worker does, by its name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Finds what else has to change for an answer.
    Adviser,
    /// Writes and reads files.
    Orders,
    /// Makes packs.
    Packs,
    /// Draws the stage.
    Scene,
}

impl Part {
    const ALL: [Self; 4] = [Self::Adviser, Self::Orders, Self::Packs, Self::Scene];

    /// The worker's name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Adviser => "adviser",
            Self::Orders => "orders",
            Self::Packs => "packs",
            Self::Scene => "scene",
        }
    }

    async fn begin(self) -> Result<(), SplitLoaderError> {
        match self {
            Self::Adviser => adviser().await,
            Self::Orders => orders().await,
            Self::Packs => packs().await,
            Self::Scene => scene(None).await.map(|_| ()),
        }
    }
}

#[wasm_split(adviser, fallible)]
fn adviser() -> Result<(), SplitLoaderError> {
    slotwright_adviser::start();
    Ok(())
}

#[wasm_split(orders, fallible)]
fn orders() -> Result<(), SplitLoaderError> {
    slotwright_orders::start();
    Ok(())
}

#[wasm_split(packs, fallible)]
fn packs() -> Result<(), SplitLoaderError> {
    slotwright_packs::start();
    Ok(())
}

/// Draws the stage: in a worker, or for the page that hears of it; then what hears its messages.
#[wasm_split(scene, fallible)]
pub fn scene(page: Option<slotwright_scene::Page>) -> Result<Option<fn(&JsValue)>, SplitLoaderError> {
    if page.is_none() {
        slotwright_scene::start();
    }
    Ok(page.map(slotwright_scene::start_here))
}

/// Does what somebody does in the dialog of the drafts: this part the page loads itself.
#[wasm_split(drafts, fallible)]
pub fn drafts(act: Act) -> Result<(), SplitLoaderError> {
    views::drafts::list::run(act);
    Ok(())
}

/// What makes the content of dialogs that few open.
#[derive(Clone, Copy, Debug)]
pub struct Dialogs {
    /// Of the order's.
    pub order: Begin,
    /// The one in which the unit stands before it goes into a room.
    pub viewer: Make,
}

/// Loads that part: the page does so itself.
#[wasm_split(dialogs, fallible)]
pub fn dialogs() -> Result<Dialogs, SplitLoaderError> {
    Ok(Dialogs { order: views::order::content::begin, viewer: views::room::viewer::make })
}

/// The range of a file, if that is right: this part the page loads itself.
#[wasm_split(judged, fallible)]
pub fn judged(text: String) -> Result<Option<Range>, SplitLoaderError> {
    Ok(Range::parse(&text).ok())
}

/// What the workshop's page shows: no part of the customers' page.
#[wasm_split(workshop, fallible)]
fn workshop() -> Result<(), SplitLoaderError> {
    workshop::start();
    Ok(())
}

/// Opens the workshop's page.
pub fn open_workshop() {
    spawn_local(async {
        if workshop().await.is_err() {
            page::tell_missing();
        }
    });
}

/// Does in a worker what its name says.
pub fn work(scope: DedicatedWorkerGlobalScope) {
    let name = scope.name();
    let Some(part) = Part::ALL.into_iter().find(|part| part.name() == name) else { return };
    spawn_local(async move {
        if let Err(missing) = part.begin().await {
            fail(&scope, missing);
        }
    });
}

/// Makes of a part that cannot be loaded an error of the worker, which the page hears; one within a promise it would not.
fn fail(scope: &WorkerGlobalScope, missing: SplitLoaderError) {
    let thrown = Closure::once_into_js(move || Err::<(), JsValue>(missing.to_string().into()));
    // A scope without timeouts stays silent, and the page's patience ends; none is known.
    let _ = scope.set_timeout_with_callback(thrown.unchecked_ref());
}

//! The parts of the program that are loaded by those who need them, mostly workers: what the page does not call itself is cut off
//! when the app is built.
#![expect(clippy::unnecessary_wraps, reason = "to load a part can fail, which the macro adds; what it does cannot")]

use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use wasm_bindgen_futures::spawn_local;
use wasm_split_helpers::{SplitLoaderError, wasm_split};
use web_sys::{DedicatedWorkerGlobalScope, WorkerGlobalScope};

use crate::views::{self, drafts::Act};

/// What a worker does, by its name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Finds what else has to change for an answer.
    Adviser,
    /// Writes and reads files.
    Orders,
    /// Draws the stage.
    Scene,
}

impl Part {
    const ALL: [Self; 3] = [Self::Adviser, Self::Orders, Self::Scene];

    /// The worker's name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Adviser => "adviser",
            Self::Orders => "orders",
            Self::Scene => "scene",
        }
    }

    async fn begin(self) -> Result<(), SplitLoaderError> {
        match self {
            Self::Adviser => adviser().await,
            Self::Orders => orders().await,
            Self::Scene => scene().await,
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

#[wasm_split(scene, fallible)]
fn scene() -> Result<(), SplitLoaderError> {
    slotwright_scene::start();
    Ok(())
}

/// Does what somebody does in the dialog of the drafts: this part the page loads itself.
#[wasm_split(drafts, fallible)]
pub fn drafts(act: Act) -> Result<(), SplitLoaderError> {
    views::drafts::list::run(act);
    Ok(())
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

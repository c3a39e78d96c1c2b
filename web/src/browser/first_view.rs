//! What stands in the page before the program: the live page is made beside it, a task at a time, and takes its place.

use std::cell::RefCell;

use leptos::prelude::{Callable, Callback};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::JsValue;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Document, Element, HtmlElement};

use super::page;

/// The element that holds it, in `index.html`.
const SHELL: &str = "shell";

/// The element that holds the live page.
const LIVE: &str = "page";

/// Its drawing, which stays until there is a picture.
const DRAWING: &str = "first-drawing";

/// Where the live page has the picture.
const SCENE: &str = ".scene";

/// The first link of either, which skips.
const SKIP: &str = ".skip";

thread_local! {
    /// What waits until the live page is shown; nothing once it is.
    static WAITING: RefCell<Option<Vec<Callback<()>>>> = const { RefCell::new(Some(Vec::new())) };
}

fn document() -> Option<Document> {
    web_sys::window()?.document()
}

/// Lets the browser paint and hear people; goes on in a task of its own.
pub async fn turn() {
    let later = js_sys::Promise::new(&mut |resolve, _| {
        let asked = web_sys::window().is_some_and(|window| window.set_timeout_with_callback(&resolve).is_ok());
        if !asked {
            // Without timeouts it goes on at once; a function that only resolves never fails.
            let _ = resolve.call0(&JsValue::NULL);
        }
    });
    // It is never refused.
    let _ = JsFuture::from(later).await;
}

/// Where the live page is made: no one sees it yet.
pub fn workshop() -> Option<HtmlElement> {
    let live: HtmlElement = document()?.create_element("div").ok()?.dyn_into().ok()?;
    live.set_id(LIVE);
    Some(live)
}

fn drawing() -> Option<Element> {
    document()?.get_element_by_id(DRAWING)
}

/// Shows the live page in its place; its drawing goes behind the picture that is to come.
pub fn give_way(live: &Element) {
    let Some(document) = document() else { return };
    if let (Some(drawing), Ok(Some(scene))) = (drawing(), live.query_selector(SCENE)) {
        // An element that stands in the page can stand elsewhere.
        let _ = scene.prepend_with_node_1(&drawing);
    }
    let shell = document.get_element_by_id(SHELL);
    let had_focus = shell.as_ref().is_some_and(|shell| shell.query_selector(":focus").is_ok_and(|own| own.is_some()));
    match shell {
        // An element that stands in the page can be replaced.
        Some(shell) => drop(shell.replace_with_with_node_1(live)),
        None => drop(document.body().map(|body| body.append_child(live))),
    }
    if had_focus {
        page::focus(live, SKIP);
    }
}

/// What is begun when the live page is shown, since nobody needs it before: workers.
pub fn once_shown(begin: Callback<()>) {
    let waits = WAITING.with_borrow_mut(|waiting| waiting.as_mut().map(|waiting| waiting.push(begin)).is_some());
    if !waits {
        begin.run(());
    }
}

/// The live page is shown.
pub fn shown() {
    for begin in WAITING.take().unwrap_or_default() {
        begin.run(());
    }
}

/// There is a picture, or another unit: its drawing goes.
pub fn drop_drawing() {
    if let Some(drawing) = drawing() {
        drawing.remove();
    }
}

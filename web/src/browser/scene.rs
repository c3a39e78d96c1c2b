//! The worker that draws the stage: what is sent to it, what it sends.

use std::cell::RefCell;

use leptos::prelude::{Callable, Callback};
use slotwright_core::units::decimal::Plain;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{HtmlCanvasElement, MessageEvent, ResizeObserver, Worker};

use super::{page, worker};
use crate::part::Part;

thread_local! {
    /// There is one stage on a page.
    static WORKER: RefCell<Option<Worker>> = const { RefCell::new(None) };
}

/// Hands the canvas to a worker; `on_message` gets all that it sends, `lost` first if there is no picture.
pub fn open(canvas: &HtmlCanvasElement, on_message: Callback<Vec<String>>) {
    let lost = move || on_message.run(vec!["lost".into()]);
    let Ok(worker) = worker::start(Part::Scene) else { return lost() };
    let (own, ear) = (canvas.clone(), worker.clone());
    let listener = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        let texts: Vec<String> =
            js_sys::Array::from(&event.data()).iter().map(|text| text.as_string().unwrap_or_default()).collect();
        if texts.first().is_some_and(|word| word == "ready") {
            // Browsers without canvases for workers show the drawing.
            let handed = own.transfer_control_to_offscreen();
            let list = |canvas: &JsValue| js_sys::Array::of1(canvas);
            if handed.is_ok_and(|canvas| ear.post_message_with_transfer(&canvas, &list(&canvas)).is_ok()) {
                WORKER.set(Some(ear.clone()));
                watch(&own);
            } else {
                return on_message.run(vec!["lost".into()]);
            }
        }
        on_message.run(texts);
    });
    worker.set_onmessage(Some(listener.as_ref().unchecked_ref()));
    let broken = Closure::<dyn FnMut()>::new(lost);
    worker.set_onerror(Some(broken.as_ref().unchecked_ref()));
    // Both live as long as the page.
    listener.forget();
    broken.forget();
}

/// Tells the worker of every change of the canvas's place.
fn watch(canvas: &HtmlCanvasElement) {
    let own = canvas.clone();
    let changed = Closure::<dyn FnMut()>::new(move || {
        let ratio = Plain::of(page::pixel_ratio(), 3).to_string();
        send(&["extent", &own.client_width().to_string(), &own.client_height().to_string(), &ratio]);
    });
    if let Ok(observer) = ResizeObserver::new(changed.as_ref().unchecked_ref()) {
        observer.observe(canvas);
    }
    changed.forget();
}

/// Sends something to the worker: a word and its figures. Without a worker it goes nowhere.
pub fn send(texts: &[&str]) {
    let list: js_sys::Array = texts.iter().map(|text| JsValue::from_str(text)).collect();
    WORKER.with_borrow(|worker| {
        if let Some(worker) = worker {
            // A worker that is gone draws nothing; the last picture stays.
            let _ = worker.post_message(&list);
        }
    });
}

//! The worker that draws the stage: what is asked of it, what it tells.

use std::cell::RefCell;

use leptos::prelude::{Callable, Callback};
use slotwright_protocol::stage::{Command, News};
use slotwright_protocol::{Number, READY, tie, untie};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{HtmlCanvasElement, MessageEvent, ResizeObserver, Worker};

use super::{page, worker};
use crate::part::Part;

thread_local! {
    /// There is one stage on a page.
    static WORKER: RefCell<Option<Worker>> = const { RefCell::new(None) };
}

/// Hands the canvas to a worker, with the range file's text; `on_news` gets all that it tells, and that there is no
/// picture if there is none.
pub fn open(canvas: &HtmlCanvasElement, range: String, on_news: Callback<News>) {
    let lost = move || on_news.run(News::Lost);
    let Ok(worker) = worker::start(Part::Scene) else { return lost() };
    let (own, ear) = (canvas.clone(), worker.clone());
    let listener = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        let text = event.data().as_string().unwrap_or_default();
        if text == READY {
            // Browsers without canvases for workers show the drawing.
            let handed = own.transfer_control_to_offscreen();
            let list = |canvas: &JsValue| js_sys::Array::of1(canvas);
            if handed.is_ok_and(|canvas| ear.post_message_with_transfer(&canvas, &list(&canvas)).is_ok()) {
                WORKER.set(Some(ear.clone()));
                send(&Command::Range(range.clone()));
                watch(&own);
            } else {
                lost();
            }
        } else if let Some((_, news)) = untie(&text) {
            on_news.run(news);
        }
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
        let (across, down) = (f64::from(own.client_width()), f64::from(own.client_height()));
        send(&Command::Extent { across, down, ratio: page::pixel_ratio() });
    });
    if let Ok(observer) = ResizeObserver::new(changed.as_ref().unchecked_ref()) {
        observer.observe(canvas);
    }
    changed.forget();
}

/// Asks something of the worker. Without a worker it goes nowhere.
pub fn send(command: &Command) {
    WORKER.with_borrow(|worker| {
        if let Some(worker) = worker {
            // Nothing of it is answered, so one number is as good as another. A worker that is gone draws nothing; the
            // last picture stays.
            let _ = worker.post_message(&JsValue::from_str(&tie(Number::default(), command)));
        }
    });
}

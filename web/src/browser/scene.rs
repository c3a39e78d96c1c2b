//! What draws the stage, a worker or the page itself: what is asked of it, what it tells.

use std::cell::RefCell;
use std::rc::Rc;

use leptos::prelude::{Callable, Callback};
use slotwright_protocol::stage::{Command, News};
use slotwright_protocol::{Number, READY, tie, untie};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{HtmlCanvasElement, MessageEvent, ResizeObserver};

use super::{page, worker};
use crate::part::{self, Part};

/// What hears commands.
type Ear = Rc<dyn Fn(&JsValue)>;

thread_local! {
    /// There is one stage on a page.
    static STAGE: RefCell<Option<Ear>> = const { RefCell::new(None) };
}

/// Hands the canvas to a worker, with the range file's text; where workers cannot draw, the page does. `on_news` gets all
/// that is told, and that there is no picture if there is none.
pub fn open(canvas: &HtmlCanvasElement, range: String, on_news: Callback<News>) {
    let Ok(worker) = worker::start(Part::Scene) else { return draw_here(canvas, range, on_news) };
    let (own, ear) = (canvas.clone(), worker.clone());
    let listener = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        let text = event.data().as_string().unwrap_or_default();
        let begins = STAGE.with_borrow(Option::is_none);
        if text == READY {
            let handed = own.transfer_control_to_offscreen();
            let list = |canvas: &JsValue| js_sys::Array::of1(canvas);
            if handed.is_ok_and(|canvas| ear.post_message_with_transfer(&canvas, &list(&canvas)).is_ok()) {
                let ear = ear.clone();
                // A worker that is gone draws nothing; the last picture stays.
                return begin(&own, &range, Rc::new(move |message| drop(ear.post_message(message))));
            }
        } else if !begins {
            return hear_news(&text, on_news);
        }
        // It is handed no canvas, or has no WebGL.
        ear.terminate();
        draw_here(&own, range.clone(), on_news);
    });
    worker.set_onmessage(Some(listener.as_ref().unchecked_ref()));
    let broken = Closure::<dyn FnMut()>::new(move || on_news.run(News::Lost));
    worker.set_onerror(Some(broken.as_ref().unchecked_ref()));
    // Both live as long as the page.
    listener.forget();
    broken.forget();
}

fn hear_news(text: &str, on_news: Callback<News>) {
    if let Some((_, news)) = untie(text) {
        on_news.run(news);
    }
}

/// Draws on the page's own canvas.
fn draw_here(canvas: &HtmlCanvasElement, range: String, on_news: Callback<News>) {
    let canvas = canvas.clone();
    wasm_bindgen_futures::spawn_local(async move {
        let told = move |message: &JsValue| hear_news(&message.as_string().unwrap_or_default(), on_news);
        if let Ok(Some(hear)) = part::scene(Some(Rc::new(told))).await {
            hear(&canvas);
            begin(&canvas, &range, Rc::new(hear));
        } else {
            on_news.run(News::Lost);
        }
    });
}

/// There is a canvas to draw on: what draws hears commands from now on, first of the range.
fn begin(canvas: &HtmlCanvasElement, range: &str, hear: Ear) {
    STAGE.set(Some(hear));
    send(&Command::Range(range.into()));
    watch(canvas);
}

/// Tells it of every change of the canvas's place.
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

/// Asks something of what draws. Before it is there that goes nowhere.
pub fn send(command: &Command) {
    if let Some(hear) = STAGE.with_borrow(Clone::clone) {
        // Nothing of it is answered, so one number is as good as another.
        hear(&JsValue::from_str(&tie(Number::default(), command)));
    }
}

//! The stage's picture, drawn in a worker of its own: the page stays quick whatever is drawn. Where workers cannot draw, the
//! page does it by the same code and the same messages.
//!
//! The first message is the canvas; every other one is a command, and so much as there is to tell is told: see
//! [`slotwright_protocol::stage`].

use std::cell::RefCell;
use std::rc::Rc;

use slotwright_protocol::stage::News;
use slotwright_protocol::{Number, READY, tie, untie};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{DedicatedWorkerGlobalScope, Event, MessageEvent, OffscreenCanvas};

mod gl;
mod live;
mod overlay;

use live::Live;

thread_local! {
    static LIVE: RefCell<Live> = RefCell::default();
    /// Who hears what there is to tell.
    static PAGE: RefCell<Option<Page>> = const { RefCell::new(None) };
}

/// Hears messages.
pub type Page = Rc<dyn Fn(&JsValue)>;

/// The worker, or the page itself: what is asked of either has the same name in both.
fn scope() -> DedicatedWorkerGlobalScope {
    js_sys::global().unchecked_into()
}

/// Starts in the worker, if it can draw; else that is told.
pub fn start() {
    let scope = scope();
    let heard = Closure::<dyn FnMut(MessageEvent)>::new(|event: MessageEvent| hear(&event.data()));
    scope.set_onmessage(Some(heard.as_ref().unchecked_ref()));
    // The ear stays for as long as its worker.
    heard.forget();
    // Where nobody listens any more, nothing is lost.
    PAGE.set(Some(Rc::new(move |message| drop(scope.post_message(message)))));
    if can_draw() { tell(&READY.into()) } else { tell_news(&News::Lost) }
}

/// Starts in the page; what hears its messages.
pub fn start_here(page: Page) -> fn(&JsValue) {
    PAGE.set(Some(page));
    hear
}

fn can_draw() -> bool {
    let canvas = OffscreenCanvas::new(1, 1).ok();
    canvas.and_then(|canvas| canvas.get_context("webgl2").ok()?).is_some()
}

fn hear(message: &JsValue) {
    if message.is_object() {
        // The page's own canvas has all that is asked of one for workers.
        begin(message.unchecked_ref());
    } else if let Some((_, command)) = untie(&message.as_string().unwrap_or_default()) {
        LIVE.with_borrow_mut(|live| live.hear(command));
    }
    news();
    wake();
}

/// Tells the page what is new.
fn news() {
    if let Some(shown) = LIVE.with_borrow_mut(Live::news) {
        tell_news(&News::Shown(shown));
    }
}

/// Begins drawing on a canvas, and again whenever its context comes back.
fn begin(canvas: &OffscreenCanvas) {
    let start = |canvas: &OffscreenCanvas| {
        let begun = LIVE.with_borrow_mut(|live| live.begin(canvas));
        tell_news(if begun { &News::Found } else { &News::Lost });
    };
    start(canvas);
    let own = canvas.clone();
    let changed = Closure::<dyn FnMut(Event)>::new(move |event: Event| {
        if event.type_() == "webglcontextlost" {
            event.prevent_default();
            LIVE.with_borrow_mut(Live::end);
            tell_news(&News::Lost);
        } else {
            start(&own);
            wake();
        }
    });
    for event in ["webglcontextlost", "webglcontextrestored"] {
        // An event of that name is always taken.
        let _ = canvas.add_event_listener_with_callback(event, changed.as_ref().unchecked_ref());
    }
    changed.forget();
}

/// Asks for one picture.
fn wake() {
    if !LIVE.with_borrow_mut(Live::is_due) {
        return;
    }
    let frame = Closure::once_into_js(|now: f64| {
        let goes_on = LIVE.with_borrow_mut(|live| live.frame(now));
        news();
        if goes_on {
            wake();
        }
    });
    let rest = LIVE.with_borrow(Live::rest);
    let (scope, own) = (scope(), scope());
    let ask = move || {
        // Where no pictures are shown, none is drawn.
        let _ = own.request_animation_frame(frame.unchecked_ref());
    };
    if rest == 0 {
        return ask();
    }
    let later = Closure::once_into_js(ask);
    // A scope without timeouts draws nothing; none is known.
    let _ = scope.set_timeout_with_callback_and_timeout_and_arguments_0(later.unchecked_ref(), rest);
}

fn tell_news(news: &News) {
    tell(&tie(Number::default(), news).into());
}

fn tell(message: &JsValue) {
    if let Some(page) = PAGE.with_borrow(Clone::clone) {
        page(message);
    }
}

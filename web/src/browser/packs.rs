//! The worker that makes packs. It tells what there is again and again, while it looks for better nests.

use std::cell::RefCell;

use js_sys::Array;
use leptos::prelude::{Callable, Callback};
use slotwright_protocol::packs::{Answer, Question};
use slotwright_protocol::{Number, READY, tie, untie};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{MessageEvent, Worker};

use super::worker;
use crate::part::Part;

/// Gets what is told, with the files that come with it; nothing once nobody tells anything any more.
pub type Ear = Callback<Option<(Answer, Vec<JsValue>)>>;

struct Connection {
    worker: Worker,
    /// Whether it listens: what was asked before waits.
    listens: bool,
    waiting: Vec<Array>,
    last: Number,
    /// The last question that changed what is shown: what is told of an earlier one comes too late.
    changed: Number,
    ear: Ear,
}

thread_local! {
    static CONNECTION: RefCell<Option<Connection>> = const { RefCell::new(None) };
}

/// Opens it; the ear gets all that it tells.
pub fn open(ear: Ear) {
    let Ok(worker) = worker::start(Part::Packs) else { return ear.run(None) };
    let heard = Closure::<dyn FnMut(MessageEvent)>::new(|event: MessageEvent| hear(&event.data()));
    worker.set_onmessage(Some(heard.as_ref().unchecked_ref()));
    let broken = Closure::<dyn FnMut()>::new(move || {
        if let Some(Connection { worker, .. }) = CONNECTION.take() {
            worker.terminate();
        }
        ear.run(None);
    });
    worker.set_onerror(Some(broken.as_ref().unchecked_ref()));
    // Both live as long as the page.
    heard.forget();
    broken.forget();
    let (last, changed) = (Number::default(), Number::default());
    CONNECTION.set(Some(Connection { worker, listens: false, waiting: Vec::new(), last, changed, ear }));
}

/// Asks, with the files that go along.
pub fn ask(question: &Question, files: impl IntoIterator<Item = JsValue>) {
    CONNECTION.with_borrow_mut(|connection| {
        let Some(connection) = connection else { return };
        connection.last = connection.last.next();
        if question.changes() {
            connection.changed = connection.last;
        }
        let message = Array::of1(&tie(connection.last, question).into());
        for file in files {
            message.push(&file);
        }
        connection.waiting.push(message);
        connection.send();
    });
}

impl Connection {
    fn send(&mut self) {
        if self.listens {
            for message in self.waiting.drain(..) {
                // One that cannot be reached tells nothing.
                let _ = self.worker.post_message(&message);
            }
        }
    }
}

fn hear(message: &JsValue) {
    let heard = CONNECTION.with_borrow_mut(|connection| {
        let connection = connection.as_mut()?;
        if message.as_string().is_some_and(|text| text == READY) {
            connection.listens = true;
            connection.send();
            return None;
        }
        let said = Array::from(message);
        let (number, answer) = untie(&said.get(0).as_string().unwrap_or_default())?;
        // What can be set is that of the range, whatever came since.
        let is_late = !matches!(answer, Answer::Begun(..)) && number < connection.changed;
        (!is_late).then(|| (connection.ear, answer, said.iter().skip(1).collect()))
    });
    if let Some((ear, answer, files)) = heard {
        ear.run(Some((answer, files)));
    }
}

//! The order desk: a worker that writes and reads files, loaded when somebody needs it. Once it is there it stays.

use std::cell::RefCell;
use std::time::Duration;

use leptos::prelude::{Callable, Callback, set_timeout};
use slotwright_core::words::page::Label;
use slotwright_protocol::desk::{Answer, Question};
use slotwright_protocol::{Number, READY, tie, untie};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{MessageEvent, Worker};

use super::worker;
use crate::part::Part;

/// Longest wait for an answer: the desk has to be loaded over slow lines too.
const PATIENCE: Duration = Duration::from_secs(30);

/// Gets an answer, with what its file holds if it is one: a text or bytes.
pub type Ear = Callback<(Answer, JsValue)>;

/// What was asked and not answered yet.
struct Asked {
    number: Number,
    question: Question,
    ear: Ear,
}

#[derive(Default)]
struct Connection {
    worker: Option<Worker>,
    /// Whether it listens: what was asked before is sent then.
    listens: bool,
    last: Number,
    asked: Vec<Asked>,
}

thread_local! {
    static CONNECTION: RefCell<Connection> = RefCell::default();
}

/// Asks the desk. The ear gets its answer once, or never if another question takes this one's place before.
pub fn ask(question: Question, ear: Ear) {
    let there = CONNECTION.with_borrow_mut(|connection| {
        connection.worker = connection.worker.take().or_else(open);
        connection.worker.is_some()
    });
    if !there {
        return ear.run((refusal(Label::DeskNotLoaded), JsValue::UNDEFINED));
    }
    let number = CONNECTION.with_borrow_mut(|Connection { worker, listens, last, asked }| {
        *last = last.next();
        asked.retain(|earlier| !question.replaces(&earlier.question));
        if *listens {
            send(worker.as_ref(), *last, &question);
        }
        asked.push(Asked { number: *last, question, ear });
        *last
    });
    set_timeout(move || lose_patience(number), PATIENCE);
}

fn send(worker: Option<&Worker>, number: Number, question: &Question) {
    if let Some(worker) = worker {
        // A desk that cannot be reached answers nothing, and patience ends.
        let _ = worker.post_message(&JsValue::from_str(&tie(number, question)));
    }
}

fn refusal(why: Label) -> Answer {
    Answer::No(why.text().into())
}

fn open() -> Option<Worker> {
    let worker = worker::start(Part::Orders).ok()?;
    let heard = Closure::<dyn FnMut(MessageEvent)>::new(|event: MessageEvent| hear(&event.data()));
    worker.set_onmessage(Some(heard.as_ref().unchecked_ref()));
    let broken = Closure::<dyn FnMut()>::new(close);
    worker.set_onerror(Some(broken.as_ref().unchecked_ref()));
    // Both live as long as the page.
    heard.forget();
    broken.forget();
    Some(worker)
}

fn hear(message: &JsValue) {
    if message.as_string().is_some_and(|text| text == READY) {
        CONNECTION.with_borrow_mut(|Connection { worker, listens, asked, .. }| {
            *listens = true;
            for Asked { number, question, .. } in asked {
                send(worker.as_ref(), *number, question);
            }
        });
        return;
    }
    let said = js_sys::Array::from(message);
    let Some((number, answer)) = untie(&said.get(0).as_string().unwrap_or_default()) else { return };
    let asked = CONNECTION.with_borrow_mut(|Connection { asked, .. }| {
        let at = asked.iter().position(|asked| asked.number == number)?;
        Some(asked.remove(at))
    });
    if let Some(Asked { ear, .. }) = asked {
        ear.run((answer, said.get(1)));
    }
}

fn lose_patience(number: Number) {
    if CONNECTION.with_borrow(|connection| connection.asked.iter().any(|asked| asked.number == number)) {
        close();
    }
}

/// Closes a desk that does not answer, and says so to everybody who waits. Who asks next opens another one.
fn close() {
    let Connection { worker, listens, asked, .. } = CONNECTION.with_borrow_mut(|connection| {
        let last = connection.last;
        core::mem::replace(connection, Connection { last, ..Connection::default() })
    });
    if let Some(worker) = worker {
        worker.terminate();
    }
    // What was not sent yet never reached a desk.
    let why = if listens { Label::DeskSilent } else { Label::DeskNotLoaded };
    for Asked { ear, .. } in asked {
        ear.run((refusal(why), JsValue::UNDEFINED));
    }
}

//! The worker that makes packs: it keeps the orders that were brought and what was set, nests at once and looks on in slices,
//! and writes the files when they are taken. It is loaded by the workshop's page alone. What it is asked and what it says
//! is in [`slotwright_protocol::packs`].
//!
//! Nests borrow from the orders that were read. So all of it is made anew whenever something changes, and lives in one
//! loop ([`run`]) until the next change: reading fifty orders again costs less than the wait for a person's next step.

use std::cell::RefCell;
use std::collections::VecDeque;
use std::rc::Rc;

use slotwright_core::words::workshop::{Label, Message};
use slotwright_cutpack::pack::{EFFORT, Orders};
use slotwright_protocol::packs::{Answer, Question, What};
use slotwright_protocol::{Number, READY, tie, untie};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};

mod bench;
mod figures;
mod find;
mod html;
mod orders;
mod settings;
mod sheets;
mod work;
mod zipped;

use bench::Bench;
use work::{Files, Taken, Work};
use zipped::Zipping;

/// Better nests are shown no oftener than that, in milliseconds: pictures take time too.
const BETWEEN: f64 = 700.0;

/// How much of taking a pack is writing, in percent; the rest makes one file of it.
const WRITTEN: usize = 85;

/// While it writes it listens that often, in milliseconds.
const WRITES: f64 = 100.0;

/// A question with its number and the files that came with it.
type Asked = (Number, Question, Vec<Vec<u8>>);

/// Starts in the worker.
pub fn start() {
    let Ok(scope) = js_sys::global().dyn_into::<DedicatedWorkerGlobalScope>() else { return };
    let door = Door { scope: scope.clone(), inbox: Rc::default() };
    let inbox = Rc::clone(&door.inbox);
    let heard = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        let parts = js_sys::Array::from(&event.data());
        // Page and worker are one program: what it cannot read was not for it.
        let Some((number, question)) = untie(&parts.get(0).as_string().unwrap_or_default()) else { return };
        let files = parts.iter().skip(1).map(|bytes| js_sys::Uint8Array::new(&bytes).to_vec()).collect();
        let mut inbox = inbox.borrow_mut();
        inbox.asked.push_back((number, question, files));
        if let Some(waits) = inbox.waits.take() {
            // A function that only resolves never fails.
            let _ = waits.call0(&JsValue::NULL);
        }
    });
    scope.set_onmessage(Some(heard.as_ref().unchecked_ref()));
    // It listens for as long as its worker.
    heard.forget();
    spawn_local(run(door));
    let _ = scope.post_message(&READY.into());
}

#[derive(Default)]
struct Inbox {
    asked: VecDeque<Asked>,
    /// Wakes who waits for the next question.
    waits: Option<js_sys::Function>,
}

/// Where questions come in and answers go out.
struct Door {
    scope: DedicatedWorkerGlobalScope,
    inbox: Rc<RefCell<Inbox>>,
}

impl Door {
    fn say(&self, number: Number, answer: &Answer, files: &[(String, Vec<u8>)]) {
        let said = js_sys::Array::of1(&tie(number, answer).into());
        for (_, bytes) in files {
            said.push(&js_sys::Uint8Array::from(bytes.as_slice()));
        }
        // Where nobody listens any more, nothing is lost.
        let _ = self.scope.post_message(&said);
    }

    fn next(&self) -> Option<Asked> {
        self.inbox.borrow_mut().asked.pop_front()
    }

    /// The next question that does not wait until something is written.
    fn next_that_stops(&self) -> Option<Asked> {
        let asked = &mut self.inbox.borrow_mut().asked;
        let at = asked.iter().position(|(_, question, _)| question.changes() || *question == Question::Halt)?;
        asked.remove(at)
    }

    async fn wait(&self) -> Asked {
        loop {
            if let Some(asked) = self.next() {
                return asked;
            }
            let inbox = Rc::clone(&self.inbox);
            let woken = js_sys::Promise::new(&mut |resolve, _| inbox.borrow_mut().waits = Some(resolve));
            // It is never refused.
            let _ = JsFuture::from(woken).await;
        }
    }

    /// Lets questions in.
    async fn turn(&self) {
        let later = js_sys::Promise::new(&mut |resolve, _| {
            if self.scope.set_timeout_with_callback(&resolve).is_err() {
                let _ = resolve.call0(&JsValue::NULL);
            }
        });
        let _ = JsFuture::from(later).await;
    }
}

/// Works on what lies there until something changes, then on that.
async fn run(door: Door) {
    let mut bench = Bench::default();
    let (mut number, mut question, mut files) = door.wait().await;
    let mut goal = EFFORT;
    loop {
        let begins = matches!(question, Question::Begin(_));
        bench.change(question, files);
        let ready = bench.ready();
        let read = bench.orders(&ready);
        let orders = Orders::of(&read);
        let mut work = Work::begin(&bench, &ready, (&read, &orders), goal);
        if let Some((workshop, settings)) = work.begun().filter(|_| begins) {
            door.say(number, &Answer::Begun(workshop, settings), &[]);
        }
        door.say(number, &Answer::Shown(Box::new(work.shown())), &[]);
        (number, question, files) = until_change(&door, &mut work, number).await;
        // What is set, a day say, takes nothing back of how long it was looked: the same effort, the same nests.
        goal = if matches!(question, Question::Set(_)) { work.wanted().max(EFFORT) } else { EFFORT };
    }
}

/// Looks on and answers what changes nothing.
async fn until_change(door: &Door, work: &mut Work<'_>, number: Number) -> Asked {
    let (mut is_better, mut last) = (false, js_sys::Date::now());
    loop {
        let asked = if work.looks() {
            door.turn().await;
            door.next()
        } else {
            Some(door.wait().await)
        };
        match asked {
            None => {
                is_better |= work.look();
                let now = js_sys::Date::now();
                if now - last >= BETWEEN || !work.looks() {
                    // At the end the pack has its name.
                    let answer = if is_better || !work.looks() {
                        Answer::Shown(Box::new(work.shown()))
                    } else {
                        Answer::Done(work.done(), work.looks())
                    };
                    door.say(number, &answer, &[]);
                    (is_better, last) = (false, js_sys::Date::now());
                }
            }
            Some((_, Question::Look(on), _)) => {
                work.look_on(on);
                door.say(number, &Answer::Shown(Box::new(work.shown())), &[]);
            }
            Some((own, Question::Take(what), _)) => {
                let mut pause = Pause { door, own, last };
                match hand_over(&mut pause, work, &what).await {
                    Ok((answer, files)) => door.say(own, &answer, &files),
                    Err(Some(change)) => return change,
                    Err(None) => door.say(own, &Answer::Halted, &[]),
                }
                door.say(number, &Answer::Shown(Box::new(work.shown())), &[]);
            }
            Some((own, Question::Find(code), _)) => {
                // What is found has to be in sight.
                door.say(number, &Answer::Shown(Box::new(work.shown())), &[]);
                door.say(own, &work.find(&code).map_or_else(Answer::No, Answer::Found), &[]);
            }
            // Nothing is being written.
            Some((_, Question::Halt, _)) => {}
            Some(change) => return change,
        }
    }
}

/// Lets questions in while something is written.
struct Pause<'d> {
    door: &'d Door,
    own: Number,
    last: f64,
}

impl Pause<'_> {
    /// Once in a while: says how far it is, and hears who wants something else.
    ///
    /// # Errors
    ///
    /// What changes everything, or nothing where the writing was halted.
    async fn at(&mut self, percent: usize) -> Result<(), Option<Asked>> {
        if js_sys::Date::now() - self.last < WRITES {
            return Ok(());
        }
        self.door.say(self.own, &Answer::Writing(Message::Written(percent).text()), &[]);
        self.door.turn().await;
        self.last = js_sys::Date::now();
        match self.door.next_that_stops() {
            Some((_, Question::Halt, _)) => Err(None),
            Some(change) => Err(Some(change)),
            None => Ok(()),
        }
    }
}

/// Writes what is taken file by file.
async fn hand_over(pause: &mut Pause<'_>, work: &mut Work<'_>, what: &What) -> Result<(Answer, Files), Option<Asked>> {
    let pack = match work.settle() {
        Ok(pack) => pack,
        Err(why) => return Ok((Answer::No(why), Files::new())),
    };
    if !work.is_written() {
        let mut writing = pack.writing();
        while writing.step() {
            pause.at(writing.percent() * WRITTEN / 100).await?;
        }
        work.keep(writing.done());
    }
    Ok(match work.taken(what, &pack.full_name()) {
        Taken::Nothing => (Answer::No(Label::NotInPack.text().into()), Files::new()),
        Taken::File(file) => (Answer::Files(vec![file.0.clone()]), vec![file]),
        Taken::Documents(documents) => {
            (Answer::Documents(documents.iter().map(|(called, _)| called.clone()).collect()), documents)
        }
        Taken::Zip(name, files) => {
            let mut zip = Zipping::begin();
            for (at, file) in files.iter().enumerate() {
                if zip.add(file).is_none() {
                    return Ok((Answer::No(Label::NotSaved.text().into()), Files::new()));
                }
                pause.at(WRITTEN + at * (100 - WRITTEN) / files.len()).await?;
            }
            match zip.done() {
                Some(bytes) => (Answer::Files(vec![name.clone()]), vec![(name, bytes)]),
                None => (Answer::No(Label::NotSaved.text().into()), Files::new()),
            }
        }
    })
}

#[cfg(test)]
mod tests;

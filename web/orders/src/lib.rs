//! The order desk: writes and reads files in a worker of its own, order specs, solids and the sheet that is printed.
//!
//! Canonical JSON, digests, the reader of orders and the writer of solids are needed by those alone who
//! take a file away or bring one, so the page loads them when somebody does. The faults of a range file are told here
//! too, since few files have any, and so is what is said of links. What it is asked and what it says is in
//! [`slotwright_protocol::desk`].

use slotwright_core::audit::faults;
use slotwright_core::business::promise::Backlog;
use slotwright_core::input::fault::ReadError;
use slotwright_core::order::derive::{Derived, derive};
use slotwright_core::order::spec::{self, BadText, Customer, OrderSpec, SpecError};
use slotwright_core::range::Range;
use slotwright_core::rules::judge_stops;
use slotwright_core::words;
use slotwright_core::words::desk::{Entry, Message};
use slotwright_core::words::link::unmade;
use slotwright_cutpack::gltf;
use slotwright_protocol::desk::{Answer, Opened, Person, Question, Unit};
use slotwright_protocol::{READY, tie, untie};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};

mod code;
mod drafts;
mod html;
mod link;
mod sent;
mod sheet;

/// Starts in the worker.
pub fn start() {
    let Ok(scope) = js_sys::global().dyn_into::<DedicatedWorkerGlobalScope>() else { return };
    let desk = scope.clone();
    let heard = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        // Page and desk are one program: what it cannot read was not for it.
        let Some((number, question)) = untie(&event.data().as_string().unwrap_or_default()) else { return };
        let (said, content) = match answer(question) {
            Ok((said, content)) => (said, content.map(JsValue::from).unwrap_or_default()),
            Err(why) => (Answer::No(why), JsValue::UNDEFINED),
        };
        // Where nobody listens any more, nothing is lost.
        let _ = desk.post_message(&js_sys::Array::of2(&tie(number, &said).into(), &content));
    });
    scope.set_onmessage(Some(heard.as_ref().unchecked_ref()));
    // The desk stays for as long as its worker.
    heard.forget();
    let _ = scope.post_message(&READY.into());
}

/// What a file holds.
#[derive(Debug, PartialEq)]
enum Content {
    Text(String),
    Bytes(Vec<u8>),
}

impl From<Content> for JsValue {
    fn from(content: Content) -> Self {
        match content {
            Content::Text(text) => text.into(),
            Content::Bytes(bytes) => js_sys::Uint8Array::from(bytes.as_slice()).into(),
        }
    }
}

/// What is handed over, with what the file holds if it is one; or why not.
type Handed = Result<(Answer, Option<Content>), String>;

fn answer(question: Question) -> Handed {
    let only = |answer| Ok((answer, None));
    match question {
        Question::Write(unit, person) => write(&unit, person),
        Question::Solid(unit) => solid(&unit),
        Question::Read { range, file } => only(read(&range, &file)?),
        Question::Link { address, shared } => only(Answer::Shown(link::shown(&address, shared)?)),
        Question::Sheet { unit, address } => {
            only(Answer::Shown(with(&unit, |derived| Ok(sheet::html(derived, &address)))?))
        }
        Question::Came { range, link, today, before } => only(Answer::Said(link::told(range, &link, today, before)?)),
        Question::Drafts { range, today, picked, report, stored } => {
            only(Answer::Shown(drafts::shown(&range, today, &picked, &report, stored)?))
        }
        Question::Faults(range) => only(Answer::Said(unread(&range))),
    }
}

/// Why a range file cannot be read, as the workshop's tool says it.
fn unread(range: &str) -> String {
    Message::RangeFaults(&faults(range).0).text()
}

/// Derives a unit for one who makes something of it.
fn with<T>(unit: &Unit, make: impl FnOnce(&Derived<'_>) -> Result<T, String>) -> Result<T, String> {
    let range = Range::parse(&unit.range).map_err(|_| unread(&unit.range))?;
    make(&derive(&range, &unit.choice, unit.today, &Backlog::default()))
}

/// The order's file.
fn write(unit: &Unit, Person { name, contact, address, remark }: Person) -> Handed {
    let address = address.lines().map(str::trim).filter(|line| !line.is_empty()).map(String::from).collect();
    with(unit, |derived| {
        let reasons = || derived.stops().map(words::sentence).collect::<Vec<_>>().join(" ");
        let orderable = derived.orderable().ok_or_else(reasons)?;
        let order =
            OrderSpec::new(orderable, Customer { name, contact, address }, remark).map_err(|bad| entry(&bad))?;
        let name = order.file_name();
        let ways = sent::ways(derived.range.orders_to.as_ref(), &name);
        Ok((Answer::File(name, ways), Some(Content::Text(order.to_text()))))
    })
}

/// The unit as a binary glTF file: the same as the workshop's tool writes.
fn solid(unit: &Unit) -> Handed {
    with(unit, |derived| {
        let bytes = gltf::glb(derived).ok_or_else(|| Message::Unmade.text())?;
        Ok((Answer::File(gltf::file_name(derived.choice), String::new()), Some(Content::Bytes(bytes))))
    })
}

/// What is wrong with an entry of the form, by its label.
fn entry(bad: &BadText) -> String {
    let entry = |pointer: &str| match pointer {
        "/customer/name" => Entry::Name,
        "/customer/contact" => Entry::Contact,
        "/remark" => Entry::Remark,
        _ => Entry::AddressLine,
    };
    let message = match *bad {
        BadText::Empty { ref pointer } => Message::Empty(entry(pointer)),
        BadText::TooLong { ref pointer, found, most } => Message::TooLong { entry: entry(pointer), found, most },
        BadText::Control { ref pointer } => Message::Unprintable(entry(pointer)),
        BadText::Lines { found, most } => Message::AddressLines { found, most },
    };
    message.text()
}

/// Why a file is not opened, for the person who chose it; the workshop's tool names the place as well.
fn refusal(error: &SpecError) -> String {
    let message = match error {
        SpecError::TooLarge { .. }
        | SpecError::NotText { .. }
        | SpecError::Format { .. }
        | SpecError::Choice
        | SpecError::Read(ReadError::NotJson(_)) => Message::NoOrder,
        SpecError::Version { read_by: Some(_), .. } => Message::Older,
        SpecError::Version { read_by: None, .. } => Message::Newer,
        SpecError::Seal { .. } => Message::Changed,
        SpecError::Read(ReadError::Field { pointer, .. }) => Message::PartUnread(pointer),
        SpecError::Text(bad) => return Message::BadEntry(&entry(bad)).text(),
        SpecError::UnknownRange { .. } | SpecError::UnknownStage { .. } => Message::OtherRange,
    };
    message.text()
}

/// What an order holds, and what came of opening it.
fn read(range: &str, file: &str) -> Result<Answer, String> {
    let range = Range::parse(range).map_err(|_| unread(range))?;
    let order = spec::read(file.as_bytes()).map_err(|error| refusal(&error))?;
    let said = if range.digest() != order.range.digest {
        Message::OtherVersion
    } else if spec::check(&order, &range).holds() {
        Message::Holds(order.ordered_on)
    } else {
        Message::Differs(order.ordered_on)
    };
    let unmade = unmade(&judge_stops(&range, &order.choice).findings);
    let said = core::iter::once(said.text()).chain(unmade).collect::<Vec<_>>().join("\n");
    let Customer { name, contact, address } = order.customer;
    let person = Person { name, contact, address: address.join("\n"), remark: order.remark };
    Ok(Answer::Order(Box::new(Opened { said, choice: order.choice, person })))
}

#[cfg(test)]
mod tests;

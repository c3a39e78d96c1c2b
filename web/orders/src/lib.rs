//! The order desk: writes and reads files in a worker of its own, order specs, solids and the sheet that is printed.
//!
//! Canonical JSON, digests, the reader of orders and the writer of solids are needed by those alone who
//! take a file away or bring one, so the page loads them when somebody does. The faults of a range file are told here
//! too, since few files have any, and so is what is said of links. A message is a list of texts; the answer is a list
//! too: `ok`, a text and what was asked for (a text or bytes), or `bad` and a sentence.

use slotwright_core::audit::faults;
use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::input::bundle;
use slotwright_core::input::fault::ReadError;
use slotwright_core::order::derive::{Derived, derive};
use slotwright_core::order::spec::{self, BadText, Customer, OrderSpec, SpecError};
use slotwright_core::range::Range;
use slotwright_core::units::day::Day;
use slotwright_core::words;
use slotwright_core::words::desk::{Entry, Message};
use slotwright_cutpack::gltf;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};

mod code;
mod link;
mod sheet;

/// Starts in the worker.
pub fn start() {
    let Ok(scope) = js_sys::global().dyn_into::<DedicatedWorkerGlobalScope>() else { return };
    let desk = scope.clone();
    let heard = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        // Where nobody listens any more, nothing is lost.
        let _ = desk.post_message(&said(answer(&texts(&event.data()))));
    });
    scope.set_onmessage(Some(heard.as_ref().unchecked_ref()));
    // The desk stays for as long as its worker.
    heard.forget();
    let _ = scope.post_message(&js_sys::Array::of1(&JsValue::from_str("ready")));
}

fn texts(message: &JsValue) -> Vec<String> {
    js_sys::Array::from(message).iter().map(|text| text.as_string().unwrap_or_default()).collect()
}

/// What the desk hands over: a text or the bytes of a file.
#[derive(Debug, PartialEq)]
enum Paper {
    Text(String),
    Bytes(Vec<u8>),
}

/// What was asked for and what to call it, or why not.
type Answer = Result<(String, Paper), String>;

/// An answer as a message.
fn said(answer: Answer) -> js_sys::Array {
    match answer {
        Ok((first, Paper::Text(text))) => js_sys::Array::of3(&"ok".into(), &first.into(), &text.into()),
        Ok((first, Paper::Bytes(bytes))) => {
            js_sys::Array::of3(&"ok".into(), &first.into(), &js_sys::Uint8Array::from(bytes.as_slice()))
        }
        Err(sentence) => js_sys::Array::of2(&"bad".into(), &sentence.into()),
    }
}

fn answer(asked: &[String]) -> Answer {
    match asked {
        [what, range, compact, today, name, contact, address, remark] if what == "write" => {
            let customer = Customer {
                name: name.clone(),
                contact: contact.clone(),
                address: address.lines().map(str::trim).filter(|line| !line.is_empty()).map(String::from).collect(),
            };
            write(range, compact, today, customer, remark.clone())
        }
        [what, range, file] if what == "read" => read(range, file),
        [what, range, compact, today] if what == "solid" => solid(range, compact, today),
        [what, address, shared] if what == "link" => link::shown(address, !shared.is_empty()),
        [what, range, text, today, known] if what == "told" => link::told(range, text, today, known),
        [what, range, compact, today, address] if what == "sheet" => {
            with(range, compact, today, |derived| Ok((String::new(), Paper::Text(sheet::html(derived, address)))))
        }
        [what, range] if what == "range" => Ok((unread(range), Paper::Text(String::new()))),
        _ => Err(Message::NotUnderstood.text()),
    }
}

/// Why a range file cannot be read, as the workshop's tool says it.
fn unread(range: &str) -> String {
    Message::RangeFaults(&faults(range).0).text()
}

/// Derives a choice for one who makes something of it.
fn with<T>(
    range: &str,
    compact: &str,
    today: &str,
    make: impl FnOnce(&Derived<'_>) -> Result<T, String>,
) -> Result<T, String> {
    let range = Range::parse(range).map_err(|_| unread(range))?;
    let choice = Choice::of_compact(compact).ok_or_else(|| Message::ChoiceUnread.text())?;
    let today: Day = today.parse().map_err(|wrong| format!("{}.", words::no_day(&wrong)))?;
    make(&derive(&range, &choice, today, &Backlog::default()))
}

/// Name and text of the order file.
fn write(range: &str, compact: &str, today: &str, customer: Customer, remark: String) -> Answer {
    with(range, compact, today, |derived| {
        let reasons = || derived.stops().map(words::sentence).collect::<Vec<_>>().join(" ");
        let orderable = derived.orderable().ok_or_else(reasons)?;
        let order = OrderSpec::new(orderable, customer, remark).map_err(|bad| entry(&bad))?;
        Ok((order.file_name(), Paper::Text(order.to_text())))
    })
}

/// Name and bytes of the unit as a binary glTF file: the same as the workshop's tool writes.
fn solid(range: &str, compact: &str, today: &str) -> Answer {
    with(range, compact, today, |derived| {
        let bytes = gltf::glb(derived).ok_or_else(|| Message::Unmade.text())?;
        Ok((gltf::file_name(derived.choice), Paper::Bytes(bytes)))
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
        SpecError::Version { .. } => Message::Newer,
        SpecError::Seal { .. } => Message::Changed,
        SpecError::Read(ReadError::Field { pointer, .. }) => Message::PartUnread(pointer),
        SpecError::Text(bad) => return Message::BadEntry(&entry(bad)).text(),
        SpecError::UnknownRange { .. } | SpecError::UnknownStage { .. } => Message::OtherRange,
    };
    message.text()
}

/// What came of opening an order; tied together its choice as its compact text, and name, contact, address and remark.
fn read(range: &str, file: &str) -> Answer {
    let range = Range::parse(range).map_err(|_| unread(range))?;
    let order = spec::read(file.as_bytes()).map_err(|error| refusal(&error))?;
    let said = if range.digest() != order.range.digest {
        Message::OtherVersion
    } else if spec::check(&order, &range).holds() {
        Message::Holds(order.ordered_on)
    } else {
        Message::Differs(order.ordered_on)
    };
    let Customer { name, contact, address } = order.customer;
    let texts = [order.choice.to_compact(), name, contact, address.join("\n"), order.remark];
    Ok((said.text(), Paper::Text(bundle::tie(&texts))))
}

#[cfg(test)]
mod tests {
    use slotwright_core::units::quantity::Dim;

    use super::*;

    const RANGE: &str = include_str!("../../ranges/fenland.toml");

    fn asked(texts: &[&str]) -> Answer {
        answer(&texts.iter().map(ToString::to_string).collect::<Vec<_>>())
    }

    #[test]
    fn what_the_desk_writes_it_reads() {
        let range = Range::parse(RANGE).unwrap();
        let compact = Choice::first_of(&range).unwrap().to_compact();
        let written =
            asked(&["write", RANGE, &compact, "2026-11-25", "Ada Reed", "ada@example.org", "1 Dyke Lane\n\nFenby", ""]);
        let Ok((name, Paper::Text(file))) = &written else { panic!("{written:?}") };
        assert!(name.starts_with("fenland-2026-11-25-"), "{name}");
        let said = "The order of 2026-11-25 is open. Everything that it promised still holds.".into();
        let texts = [compact.as_str(), "Ada Reed", "ada@example.org", "1 Dyke Lane\nFenby", ""].map(String::from);
        assert_eq!(asked(&["read", RANGE, file]), Ok((said, Paper::Text(bundle::tie(&texts)))));
    }

    #[test]
    fn a_solid_is_a_named_file_of_bytes() {
        let range = Range::parse(RANGE).unwrap();
        let mut choice = Choice::first_of(&range).unwrap();
        let made = asked(&["solid", RANGE, &choice.to_compact(), "2026-11-25"]);
        let Ok((name, Paper::Bytes(bytes))) = made else { panic!("{made:?}") };
        assert_eq!((name.as_str(), bytes.get(..4)), ("sedge-1640x520x420.glb", Some(&b"glTF"[..])));
        choice.width_mm = Dim::mm(5000);
        let refused = asked(&["solid", RANGE, &choice.to_compact(), "2026-11-25"]);
        assert_eq!(refused, Err("Only a unit that can be made is written.".into()));
    }

    #[test]
    fn a_range_file_that_cannot_be_read_is_told_with_what_was_meant() {
        let said = |edits: &[(&str, &str)]| {
            let text = edits.iter().fold(String::from(RANGE), |text, (from, to)| {
                assert!(text.contains(from), "{from}");
                text.replacen(from, to, 1)
            });
            asked(&["range", &text]).unwrap().0
        };
        let meant = said(&[("rise_mm = 62", "raise_mm = 62")]);
        assert!(
            meant.starts_with("The range file has problems:\n") && meant.ends_with("did you mean \"rise_mm\"?\n"),
            "{meant}"
        );
        let comma = said(&[("clearance_mm = 0.15", "clearance_mm = 0,15")]);
        assert!(comma.ends_with("0,15 has a comma for its decimals: write 0.15\n"), "{comma}");
        let many = said(&[
            ("passes = 3 ", "passes = 0 "),
            ("ease_mm = 1 ", "ease_mm = 100 "),
            ("carpet_mm = 10.9", "carpet_mm = 1009"),
            ("tax_per_mille = 210", "tax_per_mille = 990000"),
            ("day_minutes = 480", "day_minutes = 4"),
        ]);
        assert!(many.ends_with("\nand 2 more\n") && many.matches("out of proportion").count() == 3, "{many}");
    }

    #[test]
    fn what_cannot_be_done_is_said() {
        for (texts, start) in [
            (&["read", RANGE, "{}"][..], "This file is no order."),
            (&["write", RANGE, "", "2026-11-25", "A", "b", "c", ""], "The choice cannot be read"),
            (&["sing"], "The order desk did not understand"),
        ] {
            let answer = asked(texts);
            assert!(answer.as_ref().is_err_and(|sentence| sentence.starts_with(start)), "{answer:?}");
        }
    }
}

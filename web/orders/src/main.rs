//! The order desk: writes and reads order specs in a worker of its own.
//!
//! Canonical JSON, digests and the reader of orders are needed by those alone who order or open an
//! order, so the page loads them when somebody does. A message is a list of texts, and so is the
//! answer: `ok` and what was asked for, or `bad` and a sentence.

use slotwright_core::choice::Choice;
use slotwright_core::day::Day;
use slotwright_core::derive::derive;
use slotwright_core::members::ReadError;
use slotwright_core::promise::Backlog;
use slotwright_core::range::Range;
use slotwright_core::spec::{self, BadText, Customer, OrderSpec, SpecError};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::{Closure, JsValue};
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};

fn main() {
    console_error_panic_hook::set_once();
    let Ok(scope) = js_sys::global().dyn_into::<DedicatedWorkerGlobalScope>() else { return };
    let desk = scope.clone();
    let heard = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        // Where nobody listens any more, nothing is lost.
        let _ = desk.post_message(&list(answer(&texts(&event.data()))));
    });
    scope.set_onmessage(Some(heard.as_ref().unchecked_ref()));
    // The desk stays for as long as its worker.
    heard.forget();
    let _ = scope.post_message(&list(vec!["ready".into()]));
}

fn texts(message: &JsValue) -> Vec<String> {
    js_sys::Array::from(message).iter().map(|text| text.as_string().unwrap_or_default()).collect()
}

fn list(texts: Vec<String>) -> JsValue {
    texts.into_iter().map(JsValue::from).collect::<js_sys::Array>().into()
}

/// `ok` with what was asked for, or `bad` with a sentence.
fn answer(asked: &[String]) -> Vec<String> {
    let answer = match asked {
        [what, range, note, today, name, contact, address, remark] if what == "write" => {
            let customer = Customer {
                name: name.clone(),
                contact: contact.clone(),
                address: address.lines().map(str::trim).filter(|line| !line.is_empty()).map(String::from).collect(),
            };
            write(range, note, today, customer, remark.clone())
        }
        [what, range, file] if what == "read" => read(range, file),
        _ => Err("The order desk did not understand the page; load it anew.".into()),
    };
    match answer {
        Ok((first, second)) => vec!["ok".into(), first, second],
        Err(sentence) => vec!["bad".into(), sentence],
    }
}

/// Name and text of the order file.
fn write(range: &str, note: &str, today: &str, customer: Customer, remark: String) -> Result<(String, String), String> {
    let range = Range::parse(range).map_err(|problems| problems.to_string())?;
    let choice = Choice::of_note(note).ok_or("The choice cannot be read; load the page anew.")?;
    let today: Day = today.parse().map_err(|wrong| format!("{wrong}."))?;
    let backlog = Backlog::default();
    let derived = derive(&range, &choice, today, &backlog);
    let orderable = derived.orderable().ok_or("Something stops this order.")?;
    let order = OrderSpec::new(orderable, customer, remark).map_err(|bad| entry(&bad))?;
    Ok((order.file_name(), order.to_text()))
}

/// What is wrong with an entry of the form, by its label.
fn entry(bad: &BadText) -> String {
    let label = |pointer: &str| match pointer {
        "/customer/name" => "The name",
        "/customer/contact" => "E-mail or telephone",
        "/remark" => "The remark",
        _ => "A line of the address",
    };
    match bad {
        BadText::Empty { pointer } => format!("{} is empty.", label(pointer)),
        BadText::TooLong { pointer, found, most } => {
            format!("{} has {found} characters; {most} are the most.", label(pointer))
        }
        BadText::Control { pointer } => format!("{} holds a character that cannot be printed.", label(pointer)),
        BadText::Lines { found, most } => format!("The address has {found} lines; 1 to {most} are possible."),
    }
}

/// Why a file is not opened, for the person who chose it; the workshop's tool names the place as well.
fn refusal(error: &SpecError) -> String {
    match error {
        SpecError::TooLarge { .. }
        | SpecError::NotText { .. }
        | SpecError::Format { .. }
        | SpecError::Read(ReadError::NotJson { .. }) => {
            "This file is no order. Choose the one that was saved with the order.".into()
        }
        SpecError::Version { .. } => "This order was saved by a newer page than this one. Load the page anew.".into(),
        SpecError::Seal { .. } => "This order was changed after it was saved. Ask for the original.".into(),
        SpecError::Read(ReadError::Field { pointer, .. }) => {
            format!("A part of this order cannot be read ({pointer}). Ask for it to be saved again.")
        }
        SpecError::Text(bad) => format!("{} Ask for the order to be saved again.", entry(bad)),
        SpecError::UnknownRange { .. } => "This order was made with another range.".into(),
    }
}

/// What came of opening an order, and its choice as a note.
fn read(range: &str, file: &str) -> Result<(String, String), String> {
    let range = Range::parse(range).map_err(|problems| problems.to_string())?;
    let order = spec::read(file.as_bytes()).map_err(|error| refusal(&error))?;
    let said = if range.digest() != order.range.digest {
        "The order was made with another version of this range; price, weight and date are those of today.".into()
    } else if spec::check(&order, &range).holds() {
        format!("The order of {} is open. Everything that it promised still holds.", order.ordered_on)
    } else {
        format!("The order of {} is open, but not all that it promised holds any more.", order.ordered_on)
    };
    Ok((said, order.choice.to_note()))
}

#[cfg(test)]
mod tests {
    use super::*;

    const RANGE: &str = include_str!("../../ranges/fenland.toml");

    fn asked(texts: &[&str]) -> Vec<String> {
        answer(&texts.iter().map(ToString::to_string).collect::<Vec<_>>())
    }

    #[test]
    fn what_the_desk_writes_it_reads() {
        let range = Range::parse(RANGE).unwrap();
        let note = Choice::first_of(&range).unwrap().to_note();
        let written =
            asked(&["write", RANGE, &note, "2026-11-25", "Ada Reed", "ada@example.org", "1 Dyke Lane\n\nFenby", ""]);
        let [ok, name, file] = &written[..] else { panic!("{written:?}") };
        assert_eq!((ok.as_str(), name.starts_with("fenland-2026-11-25-")), ("ok", true));
        let read = asked(&["read", RANGE, file]);
        assert_eq!(read, ["ok", "The order of 2026-11-25 is open. Everything that it promised still holds.", &note]);
    }

    #[test]
    fn what_cannot_be_done_is_said() {
        for (texts, start) in [
            (&["read", RANGE, "{}"][..], "This file is no order."),
            (&["write", RANGE, "", "2026-11-25", "A", "b", "c", ""], "The choice cannot be read"),
            (&["sing"], "The order desk did not understand"),
        ] {
            let answer = asked(texts);
            assert!(answer[0] == "bad" && answer[1].starts_with(start), "{answer:?}");
        }
    }
}

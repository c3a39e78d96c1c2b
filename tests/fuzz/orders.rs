//! Orders.

use proptest::prelude::*;
use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::input::members::parse;
use slotwright_core::input::seal::Digest;
use slotwright_core::order::derive::derive;
use slotwright_core::order::spec::{Customer, OrderSpec, SpecError, check, read};
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_tests::demo;

use crate::edits::edited;
use crate::runs;

/// Texts that a customer may write, and some that nobody would.
fn customers() -> impl Strategy<Value = (Customer, String)> {
    let text = || prop_oneof![4 => "[ a-zA-Z0-9,.é]{1,30}", 1 => "\\PC{0,120}", 1 => any::<String>()];
    let address = proptest::collection::vec(text(), 0..8);
    (text(), text(), address, text())
        .prop_map(|(name, contact, address, remark)| (Customer { name, contact, address }, remark))
}

fn order(seed: u64, customer: Customer, remark: String) -> Option<OrderSpec> {
    let range = demo().ok()?;
    let choice = choices(&range, seed, Wanted::Valid).next()?;
    let backlog = Backlog::default();
    let derived = derive(&range, &choice, "2026-11-25".parse().ok()?, &backlog);
    OrderSpec::new(derived.orderable()?, customer, remark).ok()
}

/// Saved orders, a member a line.
fn good() -> impl Strategy<Value = String> {
    let customer =
        Customer { name: "Ada Reed".into(), contact: "ada@example.org".into(), address: vec!["1 Dyke Lane".into()] };
    any::<u64>().prop_map(move |seed| {
        let spec = order(seed, customer.clone(), "Ring twice".into()).expect("a valid choice can be ordered");
        spec.to_text().replace(',', ",\n")
    })
}

/// The text with a seal that fits, if it is an object at all.
fn sealed(text: &str) -> Option<String> {
    let mut value = parse(text).ok()?;
    let members = value.as_object_mut()?;
    members.remove("digest");
    let digest = Digest::of_value(&members);
    members.insert("digest".into(), digest.to_string().into());
    Some(value.to_string())
}

#[test]
fn no_bytes_as_an_order_make_it_panic() {
    let bytes = proptest::collection::vec(any::<u8>(), 0..300);
    let texts = "[\\[\\]{}\":,a-z0-9.\\\\ue+-]{0,200}".prop_map(String::into_bytes);
    runs::check("orders of any bytes", 2000, &prop_oneof![bytes, texts], |bytes| {
        read(&bytes).map_err(|error| (error.to_string(), error.hint())).is_err()
    });
}

#[test]
fn no_order_with_a_seal_makes_it_panic() {
    let range = demo().unwrap();
    runs::check("edited orders", 150, &edited(good(), 3), |order| {
        if let Err(error) = read(order.text.as_bytes()) {
            assert!(!error.to_string().is_empty() && !error.hint().is_empty());
        }
        let Some(sealed) = sealed(&order.text) else { return false };
        match read(sealed.as_bytes()) {
            Ok(spec) => {
                let _ = check(&spec, &range);
                assert_eq!(read(spec.to_text().as_bytes()), Ok(spec));
                true
            }
            Err(error) => {
                assert!(!matches!(error, SpecError::Seal { .. }), "{error}");
                false
            }
        }
    });
}

#[test]
fn whatever_a_customer_writes_is_refused_or_read_again() {
    let range = demo().unwrap();
    let given = (any::<u64>(), customers());
    runs::check("orders of any customer", 60, &given, |(seed, (customer, remark))| {
        let spec = order(seed, customer, remark);
        if let Some(spec) = &spec {
            assert_eq!(read(spec.to_text().as_bytes()).as_ref(), Ok(spec));
            assert!(check(spec, &range).holds());
            assert!(Choice::of_compact(&spec.choice.to_compact()).is_some());
        }
        spec.is_some()
    });
}

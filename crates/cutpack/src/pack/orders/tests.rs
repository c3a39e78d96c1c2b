use serde_json::Value;
use slotwright_core::input::seal::Digest;
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_core::units::quantity::{Dim, Length};

use super::*;
use crate::pack::CutBy;
use crate::pack::testing::{demo, order, order_of, with_orders};

/// The order with another figure, sealed anew as who wrote it would.
fn resealed(text: &str, pointer: &str, change: impl Fn(&Value) -> Value) -> String {
    let mut order: Value = serde_json::from_str(text).unwrap();
    let figure = order.pointer_mut(pointer).unwrap();
    *figure = change(figure);
    order.as_object_mut().unwrap().remove("digest");
    order["digest"] = Value::from(Digest::of_value(&order).to_string());
    order.to_string()
}

#[test]
fn an_order_whose_figures_do_not_come_out_again_is_set_aside() {
    let range = demo();
    let good = order(&range, 0, 0);
    let one_more = |figure: &Value| Value::from(figure.as_i64().unwrap() + 1);
    for (pointer, other) in [
        ("/promised/price_minor", resealed(&good, "/promised/price_minor", one_more)),
        ("/promised/mass_g", resealed(&good, "/promised/mass_g", one_more)),
        ("/promised/arrives_on", resealed(&good, "/promised/arrives_on", |_| "2026-11-30".into())),
    ] {
        with_orders(core::slice::from_ref(&range), &[other, good.clone()], |orders| {
            // The other one goes on with its own number.
            assert_eq!(orders.taken.iter().map(|order| order.number).collect::<Vec<_>>(), [2]);
            let [SetAside { file: "1.json", reason: Reason::Differs(checked) }] = &orders.aside[..] else {
                panic!("{:?}", orders.aside)
            };
            assert_eq!(checked.differences.iter().map(|one| one.pointer).collect::<Vec<_>>(), [pointer]);
            assert!(orders.aside[0].reason.text().contains(pointer), "{}", orders.aside[0].reason.text());
        });
    }
}

#[test]
fn what_is_given_twice_is_cut_once_and_what_cannot_be_read_is_told() {
    let range = demo();
    let good = order(&range, 0, 0);
    let short = good.get(..100).unwrap().to_owned();
    with_orders(&[range], &[good.clone(), short, good], |orders| {
        assert_eq!(orders.taken.len(), 1);
        let [unreadable, again] = &orders.aside[..] else { panic!("{:?}", orders.aside) };
        assert!(unreadable.file == "2.json" && matches!(unreadable.reason, Reason::Unreadable(_)));
        assert!(again.file == "3.json" && matches!(again.reason, Reason::Again("1.json")));
    });
}

/// With a cutter that leaves too little beside the turned slots of a bow its parts would not hold: that is no fault of the order.
#[test]
fn what_only_the_cutter_stops_is_told_as_that() {
    let range = demo();
    let bowed = choices(&range, 5, Wanted::Valid).find(|choice| choice.bow_mm > Dim::mm(40)).unwrap();
    let text = order_of(&range, &bowed);
    let of = |cutter: f64| {
        let known = [CutBy { cutter: Some(Length::mm(cutter)), ..CutBy::default() }.known(range.clone())];
        let read = [OrderRead::of(1, "1.json".into(), text.as_bytes(), &known)];
        let orders = Orders::of(&read);
        (orders.taken.len(), orders.aside.first().map(|aside| aside.reason.text()))
    };
    assert_eq!(of(6.0), (1, None));
    let (taken, reason) = of(16.0);
    let reason = reason.unwrap();
    assert!(taken == 0 && reason.contains("thinner cutter") && !reason.contains("error of ours"), "{reason}");
}

use proptest::prelude::*;

use super::*;
use crate::order::derive::derive_unproven;
use crate::rules::finding::Severity;
use crate::testing::demo;

fn customer() -> Customer {
    Customer {
        name: "Ada Reed".into(),
        contact: "ada@example.org".into(),
        address: vec!["1 Dyke Lane".into(), "Fenby".into()],
    }
}

fn spec() -> OrderSpec {
    let range = demo();
    let choice = Choice::first_of(&range).unwrap();
    let backlog = Backlog::default();
    let derived = derive(&range, &choice, "2026-11-25".parse().unwrap(), &backlog);
    OrderSpec::new(derived.orderable().unwrap(), customer(), String::new()).unwrap()
}

fn error(text: &str) -> String {
    read(text.as_bytes()).unwrap_err().to_string()
}

/// The spec with one text in it exchanged, sealed anew.
fn resealed(from: &str, to: &str) -> String {
    let text = spec().to_text();
    assert!(text.contains(from), "{from} is not in {text}");
    let mut value: serde_json::Value = serde_json::from_str(&text.replacen(from, to, 1)).unwrap();
    value["digest"] = sealing::seal_of(&value).to_string().into();
    value.to_string()
}

/// What was only looked at has no proof of assembly, so it cannot be ordered; all else is the same.
#[test]
fn only_a_proven_unit_is_ordered() {
    let (range, backlog, today) = (demo(), Backlog::default(), "2026-11-25".parse().unwrap());
    let choice = Choice::first_of(&range).unwrap();
    let (seen, derived) = (derive_unproven(&range, &choice, today, &backlog), derive(&range, &choice, today, &backlog));
    assert!(seen.is_free() && seen.orderable().is_none() && derived.orderable().is_some());
    assert_eq!(seen.built, derived.built);
    let advice = derived.findings.iter().filter(|finding| finding.severity != Severity::Stops).count();
    assert!(seen.findings.is_empty() && advice > 0 && advice == derived.findings.len(), "advice comes with the proof");
}

#[test]
fn what_was_written_is_read_and_holds() {
    let spec = spec();
    assert_eq!(read(spec.to_text().as_bytes()), Ok(spec.clone()));
    assert!(check(&spec, &demo()).holds());
}

/// `2.0` is the same number to a seal; any other way to say the same would give one order a second seal.
#[test]
fn an_order_is_written_in_one_way() {
    let read_as = |from: &str, to: &str| read(resealed(from, to).as_bytes());
    let plain = read_as("\"version\":2", "\"version\":2.0").unwrap();
    assert_eq!(plain, spec());
    let left_out = "this says nothing, and an order leaves out what says nothing";
    for (from, to, told) in [
        ("\"place\":{}", "\"place\":{\"plug\":null}", format!("/choice/place/plug: {left_out}")),
        ("\"model\"", "\"bow_mm\":0,\"model\"", format!("/choice/bow_mm: {left_out}")),
        ("\"model\"", "\"bowed\":\"both\",\"model\"", format!("/choice/bowed: {left_out}")),
        ("\"share\":1", "\"device\":null,\"share\":1", format!("/choice/bays/0/device: {left_out}")),
        ("\"format\"", "\"remark\":\"\",\"format\"", format!("/remark: {left_out}")),
        ("{\"minutes\":{}}", "{}", "/backlog/minutes: an order says the same by {}".into()),
    ] {
        assert_eq!(read_as(from, to).unwrap_err().to_string(), told, "{to}");
    }
}

/// Scripts that need joiners, and letters beyond the first plane.
#[test]
fn names_of_the_world_are_read() {
    for name in [
        "\u{645}\u{6cc}\u{200c}\u{622}\u{6cc}\u{62f}",
        "\u{915}\u{94d}\u{200d}\u{937}",
        "\u{20bb7}\u{91ce}",
        "O\u{2019}Neill",
    ] {
        let customer = Customer { name: name.into(), ..customer() };
        assert_eq!(texts::check(&customer, ""), Ok(()), "{name}");
    }
}

#[test]
fn any_formatting_is_read() {
    let value: serde_json::Value = serde_json::from_str(&spec().to_text()).unwrap();
    let spaced = format!(" {} \n", value.to_string().replace(',', ",\n  "));
    assert_eq!(read(spaced.as_bytes()), Ok(spec()));
}

#[test]
fn bad_files_are_refused_with_their_place() {
    for (text, start) in [
        ("", "the file is empty"),
        (" \n\t", "the file is empty"),
        (
            "{\"format\":1,\n\"format\":1}",
            "not JSON: the member \"format\" stands twice in one object, again in line 2",
        ),
        ("{\"format\":", "not JSON: it ends in line 1 before it is complete"),
        ("{}\n{}", "there is more than one document in this file: the second begins in line 2"),
        ("{} {}", "there is more than one document in this file: the second begins in line 1"),
        ("{}\n }", "not JSON: something follows the end of the document, in line 2, column 2"),
        ("{\"a\":tru}", "not JSON: expected ident at line 1 column"),
        ("[]", "this is no order: it has no member \"format\" that says so"),
        (
            "{\"format\":\"slotwright-fit\"}",
            "this is no order: its format is \"slotwright-fit\", not \"slotwright-order\"",
        ),
        (&canonical(&spec().choice), "this is a choice, and no order yet"),
        ("{\"format\":\"slotwright-order\",\"version\":3}", "/version: this program reads version 2, found 3"),
        (
            &resealed("\"version\":2", "\"version\":1"),
            "/version: version 1 is read by Slotwright 0.1.0; this program reads version 2",
        ),
        (
            &resealed("\"width_mm\":1640", "\"width_mm\":\"wide\""),
            "/choice/width_mm: expected a number, found \"wide\"",
        ),
        (&resealed("\"width_mm\":1640", "\"width_mm\":0.05"), "/choice/width_mm: 0.05 is not a length"),
        (&resealed("\"share\":1", "\"stake\":1"), "/choice/bays/0: the member \"share\" is missing"),
        (
            &resealed("\"share\":1", "\"shrae\":1"),
            "/choice/bays/0/shrae: no member of this name is known; did you mean \"share\"?",
        ),
        (
            &resealed("\"place\":{}", "\"place\":{\"wal_mm\":900}"),
            "/choice/place/wal_mm: no member of this name is known; did you mean \"wall_mm\"?",
        ),
        (&resealed("\"share\":1", "\"share\":1,\"a/b\":1"), "/choice/bays/0/a~1b: no member of this name is known"),
        (
            &resealed("{\"leaf\":\"left\"}", "{\"leaf\":\"up\"}"),
            "/choice/bays/0/fill/leaf: expected \"left\" or \"right\", found \"up\"",
        ),
        (
            &resealed("\"share\":1", "\"share\":256"),
            "/choice/bays/0/share: expected a whole number from 0 to 255, found 256",
        ),
        (&resealed("\"finish\":\"clear\",", ""), "/choice: the member \"finish\" is missing"),
        (&resealed("\"name\":\"Ada Reed\"", "\"name\":\" \""), "/customer/name: nothing is written here"),
        (
            &resealed("\"name\":\"Ada Reed\"", "\"name\":\"\\u3164\\u200d\""),
            "/customer/name: nothing is written here that",
        ),
        (&resealed("Fenby", "Fen\\ue000by"), "/customer/address/1: a character that cannot be printed"),
        (&resealed("Fenby", "Fen\\udbff\\udffdby"), "/customer/address/1: a character that cannot be printed"),
        (&resealed("Fenby", "Fen\\ufffeby"), "/customer/address/1: a character that cannot be printed"),
        (&resealed("Fenby", "Fen\\u200bby"), "/customer/address/1: a character that cannot be printed"),
        ("\u{feff}{}", "not JSON: it begins with a byte order mark; save it as UTF-8 without one"),
        (&resealed("Fenby", "Fen\\u0007by"), "/customer/address/1: a character that cannot be printed"),
        (&resealed("Fenby", "Fen\\u202eby"), "/customer/address/1: a character that cannot be printed"),
        (&resealed("\"EUR\"", "\"Eur\""), "/promised/currency: expected three capital letters"),
        (
            &resealed("\"share\":1", "\"share\":1,\"\\u001b[2J\":1"),
            "/choice/bays/0/\\u{1b}[2J: no member of this name is known",
        ),
        (
            &spec().to_text().replacen("1640", "1650", 1),
            "the file was changed after it was written; it states the digest ",
        ),
    ] {
        assert!(error(text).starts_with(start), "{} does not start with {start}", error(text));
    }
    assert_eq!(read(b"\xff{}"), Err(SpecError::NotText { at: 0 }));
    assert_eq!(read(&vec![b' '; BYTES_MOST + 1]), Err(SpecError::TooLarge { bytes: BYTES_MOST + 1 }));
    assert!(error(&"[".repeat(5000)).starts_with("not JSON: recursion limit"));
}

/// No two members of one object have names so near that one is taken for the other that is missing.
#[test]
fn a_missing_member_is_told_by_its_own_name() {
    let value: serde_json::Value = serde_json::from_str(&spec().to_text()).unwrap();
    let mut told = 0;
    for object in ["", "/range", "/choice", "/choice/bays/0", "/promised", "/customer"] {
        let names: Vec<String> = value.pointer(object).unwrap().as_object().unwrap().keys().cloned().collect();
        for name in names.iter().filter(|name| !["format", "version", "hole", "remark"].contains(&name.as_str())) {
            let mut without = value.clone();
            without.pointer_mut(object).unwrap().as_object_mut().unwrap().remove(name);
            let place = if object.is_empty() { String::new() } else { format!("{object}: ") };
            assert_eq!(error(&without.to_string()), format!("{place}the member \"{name}\" is missing"));
            told += 1;
        }
    }
    assert!(told > 20, "{told}");
}

/// What was changed after the seal was made is told as far as it is certain.
#[test]
fn what_was_changed_is_told() {
    let (text, range) = (spec().to_text(), demo());
    let edited = |from: &str, to: &str| {
        assert!(text.contains(from), "{from} is not in {text}");
        let error = read(text.replacen(from, to, 1).as_bytes()).unwrap_err();
        error.with_change(|order| Some(check(order, &range))).to_string()
    };
    let price = spec().promised.price_minor.in_minor();
    for (from, to, said) in [
        (format!("\"price_minor\":{price}"), "\"price_minor\":100000".into(), "the price was \u{20ac}"),
        ("\"currency\":\"EUR\"".into(), "\"currency\":\"GBP\"".into(), "the currency was EUR and is GBP"),
        ("\"width_mm\":1640".into(), "\"width_mm\":1650".into(), "the unit in it is not the one that was promised"),
        ("Ada Reed".into(), "Eve Reed".into(), "the unit and what was promised agree, so it was the customer"),
        (
            "\"key\":\"fenland\"".into(),
            "\"key\":\"highland\"".into(),
            "the key of the range was fenland and is highland",
        ),
    ] as [(String, String, &str); 5]
    {
        let told = edited(&from, &to);
        let start = format!("the file was changed after it was written: {said}");
        assert!(told.starts_with(&start), "{told} does not start with {start}");
        assert!(told.contains("; it states the digest "), "{told}");
    }
    // Two changes at once are not put down to one of them.
    let both = text.replacen("Ada Reed", "Eve Reed", 1).replacen("\"currency\":\"EUR\"", "\"currency\":\"GBP\"", 1);
    let error = read(both.as_bytes()).unwrap_err().with_change(|order| Some(check(order, &range))).to_string();
    assert!(error.starts_with("the file was changed after it was written; "), "{error}");
}

#[test]
fn a_promise_that_does_not_come_out_again_is_a_difference() {
    for (from, to, pointer) in [
        ("\"key\":\"fenland\"", "\"key\":\"highland\"", "/range/key"),
        ("\"currency\":\"EUR\"", "\"currency\":\"GBP\"", "/promised/currency"),
        ("\"mass_g\":", "\"mass_g\":1", "/promised/mass_g"),
        ("\"price_minor\":", "\"price_minor\":1", "/promised/price_minor"),
        ("\"arrives_on\":\"2026", "\"arrives_on\":\"2025", "/promised/arrives_on"),
    ] {
        let spec = read(resealed(from, to).as_bytes()).unwrap();
        let checked = check(&spec, &demo());
        let pointers: Vec<&str> = checked.differences.iter().map(|difference| difference.pointer).collect();
        assert_eq!(pointers, [pointer]);
        assert!(!checked.holds());
    }
}

#[test]
fn an_order_that_cannot_be_made_does_not_hold() {
    let spec = read(resealed("\"width_mm\":1640", "\"width_mm\":164000").as_bytes());
    assert!(spec.is_err(), "beyond any length");
    let spec = read(resealed("\"width_mm\":1640", "\"width_mm\":5000").as_bytes()).unwrap();
    let checked = check(&spec, &demo());
    assert!(!checked.stops.is_empty() && !checked.differences.is_empty());
}

proptest! {
    #[test]
    fn no_bytes_make_the_reader_panic(bytes in proptest::collection::vec(any::<u8>(), 0..300)) {
        prop_assert!(read(&bytes).is_err());
    }

    /// One changed byte of a saved order is always found.
    #[test]
    fn no_changed_byte_passes(at in any::<prop::sample::Index>(), byte in any::<u8>()) {
        let spec = spec();
        let mut bytes = spec.to_text().into_bytes();
        let at = at.index(bytes.len());
        prop_assume!(bytes[at] != byte);
        bytes[at] = byte;
        prop_assert!(read(&bytes).is_err());
    }
}

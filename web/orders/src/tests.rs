//! What the desk hands over, question by question.

use slotwright_core::choice::Choice;
use slotwright_core::units::quantity::Dim;

use super::*;

pub(crate) const RANGE: &str = include_str!("../../ranges/fenland.toml");

fn unit() -> Unit {
    let choice = Choice::first_of(&Range::parse(RANGE).unwrap()).unwrap();
    Unit { range: RANGE.into(), choice, today: "2026-11-25".parse().unwrap() }
}

fn ada() -> Person {
    let [name, contact, address] = ["Ada Reed", "ada@example.org", "1 Dyke Lane\n\nFenby"].map(String::from);
    Person { name, contact, address, remark: String::new() }
}

#[test]
fn what_the_desk_writes_it_reads() {
    let Ok((Answer::File(name, _), Some(Content::Text(file)))) = answer(Question::Write(unit(), ada())) else {
        panic!()
    };
    assert!(name.starts_with("fenland-2026-11-25-"), "{name}");
    let said = "The order of 2026-11-25 is open. Everything that it promised still holds.".into();
    let person = Person { address: "1 Dyke Lane\nFenby".into(), ..ada() };
    let read = answer(Question::Read { range: RANGE.into(), file });
    assert_eq!(read, Ok((Answer::Order(Box::new(Opened { said, choice: unit().choice, person })), None)));
}

/// What the present range does not have is told with the order, and not beside its question alone.
#[test]
fn an_order_with_a_part_that_the_range_lacks_says_so() {
    let other = RANGE.replace("\"clear\"", "\"glaze\"").replace("look = \"glaze\"", "look = \"clear\"");
    let choice = Choice::first_of(&Range::parse(&other).unwrap()).unwrap();
    assert_eq!(choice.finish.as_str(), "glaze");
    let made = answer(Question::Write(Unit { range: other, choice: choice.clone(), ..unit() }, ada()));
    let Ok((_, Some(Content::Text(file)))) = made else { panic!("{made:?}") };
    let Ok((Answer::Order(opened), None)) = answer(Question::Read { range: RANGE.into(), file }) else { panic!() };
    assert_eq!(opened.choice, choice);
    assert!(
        opened.said.ends_with("those of today.\nIt cannot be made as it is. This finish is not in the range."),
        "{}",
        opened.said
    );
}

#[test]
fn a_solid_is_a_named_file_of_bytes() {
    let made = answer(Question::Solid(unit()));
    let Ok((Answer::File(name, _), Some(Content::Bytes(bytes)))) = made else { panic!("{made:?}") };
    assert_eq!((name.as_str(), bytes.get(..4)), ("sedge-1640x520x420.glb", Some(&b"glTF"[..])));
    let wide = Choice { width_mm: Dim::mm(5000), ..unit().choice };
    let refused = answer(Question::Solid(Unit { choice: wide, ..unit() }));
    assert_eq!(refused, Err("Only a unit that can be made is written.".into()));
}

#[test]
fn a_range_file_that_cannot_be_read_is_told_with_what_was_meant() {
    let said = |edits: &[(&str, &str)]| {
        let text = edits.iter().fold(String::from(RANGE), |text, (from, to)| {
            assert!(text.contains(from), "{from}");
            text.replacen(from, to, 1)
        });
        let Ok((Answer::Said(said), None)) = answer(Question::Faults(text)) else { panic!() };
        said
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
    let nobody = Person { name: String::new(), ..ada() };
    for (question, start) in [
        (Question::Read { range: RANGE.into(), file: "{}".into() }, "This file is no order."),
        (Question::Write(unit(), nobody), "The name is empty."),
        (Question::Write(Unit { range: "moon".into(), ..unit() }, ada()), "The range file has problems:"),
    ] {
        let answer = answer(question);
        assert!(answer.as_ref().is_err_and(|sentence| sentence.starts_with(start)), "{answer:?}");
    }
}

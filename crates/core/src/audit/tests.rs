use super::*;
use crate::testing::DEMO;

/// The demo range with some texts replaced.
fn edited(edits: &[(&str, &str)]) -> String {
    edits.iter().fold(String::from(DEMO), |text, (from, to)| {
        assert!(text.contains(from), "{from:?} is not in the demo range");
        text.replacen(from, to, 1)
    })
}

/// What an audit says, a line each; faults with a mark.
fn said(edits: &[(&str, &str)]) -> Vec<String> {
    let audit = audit(&edited(edits));
    let line = |(stops, problem): (bool, &Problem)| {
        format!("{}{}: {}", if stops { "! " } else { "" }, problem.path, crate::words::wrong(&problem.wrong))
    };
    audit.all().map(line).collect()
}

#[test]
fn the_demo_range_can_be_sold() {
    assert_eq!(said(&[]), Vec::<String>::new());
    assert!(audit(DEMO).is_right());
}

#[test]
fn a_model_that_cannot_be_made_as_it_begins_is_named_with_its_reason() {
    let bay = "share = 1, fill = { shelves = 1 }, ";
    assert_eq!(
        said(&[(bay, "share = 1, fill = { shelves = 1 }, device = \"games\", ")]),
        ["! model.sedge.start_bays.2.device: this model cannot be made as it begins: \
          For the device in bay 2 there are 297\u{a0}mm of depth; with plugs it needs 300\u{a0}mm."]
    );
    // Everything that stops it, each at its place.
    let narrow = ("most = 2400, step = 10, start = 1640", "most = 2400, step = 10, start = 900");
    let places: Vec<String> = said(&[narrow, (bay, "share = 1, fill = { shelves = 1 }, device = \"receiver\", ")]);
    assert_eq!(places.len(), 3, "{places:#?}");
    assert!(places.iter().all(|line| line.starts_with("! model.sedge.start_bays.2.device: this model cannot")));
}

#[test]
fn a_leaf_where_none_may_be_is_named_at_its_bay() {
    let said = said(&[("leaves_most = 6 ", "leaves_most = 0 ")]);
    assert_eq!(
        said,
        [
            "! model.sedge.start_bays.1.fill: this model cannot be made as it begins: Up to bay 1 there would be 1 door; the most is 0."
        ]
    );
}

#[test]
fn each_kind_of_work_has_one_stage() {
    let said = said(&[("work = \"pack\"", "work = \"cut\"")]);
    assert_eq!(
        said,
        [
            "! stage: no stage does the work \"pack\", so no promise would count it; add one",
            "! stage.pack.work: stage \"cut\" does the work \"cut\" already; it would be counted twice. Keep one of them",
        ]
    );
}

#[test]
fn what_no_unit_can_have_is_remarked() {
    let models = "finishes = [\"clear\", \"pale\", \"chalk\", \"soot\", \"sallow\", \"mere\", \"brick\"]";
    let without = "finishes = [\"clear\", \"pale\", \"chalk\", \"soot\", \"sallow\", \"mere\"]";
    let backs = "backs = [\"birch-18\", \"birch-12\"]";
    let only = "backs = [\"birch-18\"]";
    assert_eq!(
        said(&[(models, without), (models, without), (models, without), (backs, only), (backs, only), (backs, only)]),
        [
            "board.birch-12: no model is made of this board; name it in a model's `body` or `backs`, or take it out",
            "finish.brick: no model comes in this finish; name it in a model's `finishes`, or take it out",
        ]
    );
    assert_eq!(
        said(&[
            ("rise_mm = 80", "rise_mm = 1999"),
            ("least = 1000, most = 2200", "least = 1000, most = 1800"),
            ("slotted = { length_mm = 90, height_mm = 42 }", "slotted = { length_mm = 20, height_mm = 10 }"),
            ("width_mm = 50   ", "width_mm = 150   "),
            ("width_mm = 240\n", "width_mm = 2000\n"),
        ]),
        [
            "hole.slot-90.shape: none of the plugs passes this hole; make it larger",
            "hole.round-80: no bay of any model has room for this hole, whatever else is chosen",
            "plug.bs-1363: this plug passes none of the holes: the best has 10\u{a0}mm for it, it needs 50\u{a0}mm",
            "device.router: no bay of any model has room for this device, whatever else is chosen",
        ]
    );
}

#[test]
fn a_back_or_finish_with_which_nothing_can_be_made_is_remarked() {
    // A batch so uneven that no joint of it goes in.
    let said = said(&[(
        "[12.00, 11.98, 12.02, 12.01, 11.99, 12.03, 11.97, 12.00]",
        "[11.3, 12.7, 11.3, 12.7, 11.3, 12.7, 11.3, 12.7]",
    )]);
    let expected = "backs.2: no unit of this model can be made with it, whatever else is chosen";
    assert_eq!(said, ["sedge", "teasel", "bulrush"].map(|model| format!("model.{model}.{expected}")));
}

#[test]
fn a_misspelt_name_is_one_problem_and_says_what_was_meant() {
    assert_eq!(
        said(&[
            ("rise_mm = 62", "raise_mm = 62"),
            ("[handling]", "[handlung]"),
            ("round = true", "rund = true"),
            ("body = \"birch-18\"", "body = \"brich-18\""),
            ("passes = 3 ", "quite_another = 3 "),
        ]),
        [
            "! hole.slot-90.raise_mm: no section or key of this name is known; did you mean \"rise_mm\"?",
            "! plug.cee-7.rund: no section or key of this name is known; did you mean \"round\"?",
            "! model.sedge.body: no board \"brich-18\" for this use in the range; did you mean \"birch-18\"?",
            "! handlung: no section or key of this name is known; did you mean \"handling\"?",
            "! rates.passes: this is missing",
            "! rates.quite_another: no section or key of this name is known",
        ]
    );
}

#[test]
fn what_cannot_be_read_at_all_is_said_alone() {
    let audit = audit("= nothing");
    assert!(audit.range.is_none() && !audit.is_right() && !audit.faults.0.is_empty() && audit.remarks.0.is_empty());
}

proptest::proptest! {
    #![proptest_config(proptest::test_runner::Config::with_cases(48))]

    /// The tool says exactly that a range is wrong where nobody else can read it, and never less than they do.
    #[test]
    fn an_audit_reads_what_the_page_reads(at in 0..DEMO.len(), byte in b' '..b'~') {
        let mut bytes = DEMO.as_bytes().to_vec();
        bytes[at] = byte;
        if let Ok(text) = String::from_utf8(bytes) {
            let (parsed, audit) = (Range::parse(&text), audit(&text));
            proptest::prop_assert_eq!(audit.range.as_ref(), parsed.as_ref().ok());
            proptest::prop_assert!(parsed.is_ok() || !audit.faults.0.is_empty());
        }
    }
}

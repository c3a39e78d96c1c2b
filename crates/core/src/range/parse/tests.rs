use super::*;
use crate::testing::{DEMO, demo};

#[test]
fn what_was_judged_before_is_read_alike() {
    assert_eq!(Range::parse_judged(DEMO), Range::parse(DEMO).ok());
    assert_eq!(Range::parse_judged("format = 2"), None);
}

#[test]
fn the_demo_range_has_no_problem() {
    assert_eq!(Range::parse(DEMO).map(|range| range.models.len()), Ok(3));
}

fn problems(from: &str, to: &str) -> Vec<String> {
    assert!(DEMO.contains(from), "{from:?} is not in the demo range");
    let problems = Range::parse(&DEMO.replacen(from, to, 1)).unwrap_err().0;
    problems.iter().map(|problem| format!("{}: {}", problem.path, crate::words::wrong(&problem.wrong))).collect()
}

#[test]
fn problems_of_several_sections_come_together() {
    let text = DEMO
        .replacen("coats_before = 2", "coats_before = \"two\"", 1)
        .replacen("rise_mm = 62", "raise_mm = 62", 1)
        .replacen("[handling]", "[handlung]", 1)
        .replacen("passes = 3 ", "passes = 0 ", 1)
        .replacen("body = \"birch-18\"", "body = \"birch-19\"", 1)
        .replacen("key = \"slot-90\"", "key = \"Slot 90\"", 1);
    let problems = Range::parse(&text).unwrap_err().0;
    let paths: Vec<&str> = problems.iter().map(|problem| problem.path.as_str()).collect();
    assert_eq!(
        paths,
        [
            "handling",
            "finish.clear.coats_before",
            "hole.2.rise_mm",
            "hole.2.key",
            "hole.2.raise_mm",
            "model.sedge.body",
            "handlung",
            "rates.passes"
        ],
        "{problems:?}"
    );
    assert!(problems.iter().skip(1).all(|problem| problem.line > 50 && problem.column > 0), "{problems:?}");
}

#[test]
fn what_leads_nowhere_is_named_with_its_place() {
    assert_eq!(
        problems("body = \"birch-18\"", "body = \"birch-19\""),
        ["model.sedge.body: no board \"birch-19\" for this use in the range"]
    );
    assert_eq!(
        problems("start = 1640", "start = 1645"),
        ["model.sedge.width_mm.start: 1645 is not on a step of 10 above 900"]
    );
    assert_eq!(
        problems("weekdays = [1, 2, 3, 4, 5, 6]", "weekdays = [6, 7]"),
        ["carrier.parcel.weekdays: has no day in common with calendar.weekdays: nothing would ever be handed over"]
    );
    let text = DEMO.replacen("start = 1640", "start = 1645", 1);
    let problem = Range::parse(&text).unwrap_err().0.remove(0);
    let line = text.lines().position(|line| line.contains("start = 1645")).unwrap() + 1;
    assert_eq!(problem.line, line);
}

#[test]
fn a_key_that_stands_twice_is_found() {
    let found = problems("key = \"pale\"", "key = \"clear\"");
    assert_eq!(found.first().map(String::as_str), Some("finish.clear: the key \"clear\" stands here more than once"));
}

#[test]
fn figures_out_of_proportion_are_found() {
    for (from, to) in [
        ("format = 2 ", "format = 3 "),
        ("currency = \"EUR\"", "currency = \"euro\""),
        ("nominal_mm = 18", "nominal_mm = 0"),
        ("nominal_mm = 18", "nominal_mm = inf"),
        ("colour = \"#e3c792\"", "colour = \"wood\""),
        ("weekdays = [1, 2, 3, 4, 5]", "weekdays = [0]"),
        ("weekdays = [1, 2, 3, 4, 5]", "weekdays = []"),
        ("minutes_per_day = 240", "minutes_per_day = 0"),
        ("margin_per_mille = 240", "margin_per_mille = 1000"),
        ("step = 10", "step = 0"),
        ("bays = { least = 1, most = 6 }", "bays = { least = 1, most = 7 }"),
        ("clearance_mm = 0.15", "clearance_mm = 0.3"),
        ("to = \"2027-01-03\"", "to = \"2026-01-03\""),
    ] {
        assert_eq!(problems(from, to).len(), 1, "{from} -> {to}: {:?}", problems(from, to));
    }
}

/// A detent that leaves do not pass, hang on, or tear out is refused; without a rise there is none, whatever else is said of it.
#[test]
fn a_detent_that_does_not_work_is_found() {
    for (from, to) in [
        ("detent_play_mm = 0.9", "detent_play_mm = 0.8"),
        ("detent_travel_mm = 1.8", "detent_travel_mm = 1.5"),
        ("detent_root_mm = 89", "detent_root_mm = 97"),
        ("detent_root_mm = 89", "detent_root_mm = 56"),
        ("detent_tongue_mm = 6.5", "detent_tongue_mm = 2.5"),
        ("detent_tongue_mm = 6.5", "detent_tongue_mm = 9.5"),
    ] {
        assert_eq!(problems(from, to).len(), 1, "{from} -> {to}: {:?}", problems(from, to));
        let none = DEMO.replacen(from, to, 1).replacen("detent_rise_mm = 0.9", "detent_rise_mm = 0", 1);
        assert_eq!(Range::parse(&none).err(), None, "{to}");
    }
}

/// A board of another thickness in the rack is another board.
// Source of what real batches measure: a merchant's data sheet, birch plywood: 6.1 to 6.9 for 6.5 mm, 8.8 to 9.5 for
// 9 mm, 11.5 to 12.5 for 12 mm, 17.1 to 18.1 for 18 mm, 28.7 to 29.9 for 30 mm.
#[test]
fn a_measured_thickness_belongs_to_its_board() {
    let points = "measured_points_mm = [17.68, 17.72, 17.70, 17.66, 17.74, 17.70, 17.71, 17.69]";
    for (nominal, measured) in
        [(6.5, 6.1), (6.5, 6.9), (9.0, 8.8), (9.0, 9.5), (18.0, 17.1), (18.0, 18.1), (30.0, 28.7), (30.0, 29.9)]
    {
        let board = format!("nominal_mm = {nominal}\nmeasured_mm = {measured}");
        let text = DEMO.replacen("nominal_mm = 12\n", &format!("{board}\n"), 1).replacen(
            "measured_points_mm = [12.00, 11.98, 12.02, 12.01, 11.99, 12.03, 11.97, 12.00]\n",
            "",
            1,
        );
        assert!(!text.contains("12.00, 11.98") && text.contains(&board));
        assert_eq!(Range::parse(&text).err(), None, "{measured} for {nominal}");
    }
    for (measured, found) in [
        ("measured_mm = 12", "board.birch-18.measured_mm: 12 is out of proportion; 17.01 to 18.79 is possible"),
        ("measured_mm = 25", "board.birch-18.measured_mm: 25 is out of proportion; 17.01 to 18.79 is possible"),
        (
            "measured_points_mm = [12.68, 17.72, 17.70, 17.66, 17.74, 17.70, 17.71, 17.69]",
            "board.birch-18.measured_points_mm.1: 12.68 is out of proportion; 16.41 to 19.39 is possible",
        ),
        (
            "measured_points_mm = [16.9, 16.9, 16.9, 16.9, 16.9, 16.9, 16.9, 16.9]",
            "board.birch-18.measured_points_mm: 16.9 is out of proportion; 17.01 to 18.79 is possible",
        ),
        ("measured_points_mm = []", "board.birch-18.measured_points_mm: 0 entries; 8 to 8 are possible"),
        ("measured_points_mm = [17.7]", "board.birch-18.measured_points_mm: 1 entry; 8 to 8 are possible"),
    ] {
        assert_eq!(problems(points, measured), [found]);
    }
}

#[test]
fn one_cause_is_one_problem() {
    for (from, to, found) in [
        // What is bounded by a figure that cannot be read, or is wrong itself, is not named again.
        (
            "end_inset_mm = 24",
            "end_inset_mm = \"wide\"",
            "build.end_inset_mm: expected a number of at most 15 digits, without an exponent, found \"wide\"",
        ),
        (
            "clearance_most_mm = 0.2",
            "clearance_most_mm = 3",
            "build.clearance_most_mm: 3 is out of proportion; 0 to 2 is possible",
        ),
        (
            "clearance_mm = 0.15",
            "clearance_mm = 0.25",
            "build.clearance_mm: 0.25 is out of proportion; 0.1 to 0.2 is possible",
        ),
        (
            "most = 2400, step = 10",
            "most = 50, step = 10",
            "model.sedge.width_mm.most: 50 is out of proportion; 100 to 6000 is possible",
        ),
        (
            "most = 2400, step = 10",
            "most = 500, step = 10",
            "model.sedge.width_mm.most: 500 is out of proportion; the least is 900",
        ),
        // Half of a tab's end stays: that of a board of 17.7 mm.
        (
            "tab_chamfer_mm = 2\n",
            "tab_chamfer_mm = 4.5\n",
            "build.tab_chamfer_mm: 4.5 is out of proportion; 0 to 4.425 is possible",
        ),
        // Nobody can tell what else refers to it.
        (
            "key = \"birch-18\"\nname",
            "key = \"Birch\"\nname",
            "board.1.key: \"Birch\" is not a key: lower-case letters, digits and hyphens, a letter first, at most 32",
        ),
        (
            "finishes = [\"clear\", \"pale\"",
            "finishes = [\"clear\", \"clear\"",
            "model.sedge.finishes.2: \"clear\" stands here more than once",
        ),
        ("weekdays = [1, 2, 3, 4, 5]", "weekdays = [1, 2, 2]", "calendar.weekdays.3: \"2\" stands here more than once"),
        ("leaves_most = 6 ", "leaves_most = 7 ", "model.sedge.leaves_most: 7 is out of proportion; 0 to 6 is possible"),
        (
            "shape = { round = { diameter_mm = 60 } }",
            "shape = { round = { diameter_mm = 600 } }",
            "hole.round-60.shape.round.diameter_mm: 600 is out of proportion; 5 to 400 is possible",
        ),
    ] {
        assert_eq!(problems(from, to), [found], "{from}");
    }
}

proptest::proptest! {
    #[test]
    fn no_text_makes_it_panic(text in "\\PC{0,200}") {
        let _ = Range::parse(&text);
    }

    #[test]
    fn no_damage_to_the_demo_range_makes_it_panic(at in 0..DEMO.len(), byte in proptest::arbitrary::any::<u8>()) {
        let mut bytes = DEMO.as_bytes().to_vec();
        bytes[at] = byte;
        if let Ok(text) = String::from_utf8(bytes)
            && let Ok(range) = Range::parse(&text)
        {
            proptest::prop_assert_eq!(range.models.len(), demo().models.len());
        }
    }
}

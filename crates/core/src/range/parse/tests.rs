use super::*;
use crate::testing::{DEMO, demo};

#[test]
fn the_demo_range_has_no_problem() {
    assert_eq!(Range::parse(DEMO).map(|range| range.models.len()), Ok(3));
}

fn problems(from: &str, to: &str) -> Vec<String> {
    assert!(DEMO.contains(from), "{from:?} is not in the demo range");
    let problems = Range::parse(&DEMO.replacen(from, to, 1)).unwrap_err().0;
    problems.iter().map(|problem| format!("{}: {}", problem.path, problem.wrong)).collect()
}

#[test]
fn problems_of_several_sections_come_together() {
    let text = DEMO
        .replacen("coats_before = 2", "coats_before = \"two\"", 1)
        .replacen("rise_mm = 62", "raise_mm = 62", 1)
        .replacen("[handling]", "[handlung]", 1);
    let problems = Range::parse(&text).unwrap_err().0;
    let paths: Vec<&str> = problems.iter().map(|problem| problem.path.as_str()).collect();
    assert_eq!(
        paths,
        ["handling", "finish.clear.coats_before", "hole.slot-90.rise_mm", "hole.slot-90.raise_mm", "handlung"],
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
        ("format = 1 ", "format = 2 "),
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

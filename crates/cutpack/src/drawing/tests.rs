use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::order::derive::derive;
use slotwright_core::range::Range;
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_core::units::quantity::Dim;

use super::*;
use crate::describe::describe;
use crate::plain;

fn range() -> Range {
    Range::parse(include_str!("../../../../web/ranges/fenland.toml")).unwrap()
}

fn draw(range: &Range, choice: &Choice, view: View, lit: usize) -> String {
    draw_at(range, choice, view, lit, 2.5)
}

fn draw_at(range: &Range, choice: &Choice, view: View, lit: usize, mm_per_px: f64) -> String {
    let backlog = Backlog::default();
    let derived = derive(range, choice, "2026-11-25".parse().unwrap(), &backlog);
    let built = derived.built.as_ref().unwrap();
    svg_with_wood(Subject { range, choice, built }, view, lit, mm_per_px, &describe(range, choice))
}

/// Every number of an attribute's text.
fn numbers(text: &str) -> Vec<f64> {
    text.split(|letter: char| !"0123456789.-".contains(letter))
        .filter(|part| !part.is_empty())
        .map(|part| part.parse().unwrap())
        .collect()
}

/// An independent reader takes every drawing, and all of it lies on the sheet.
#[test]
fn drawings_are_well_formed_and_on_their_sheet() {
    let range = range();
    for choice in choices(&range, 9, Wanted::Valid).take(90) {
        for view in [View::Sheet, View::Front, View::Plan, View::Section] {
            let text = draw(&range, &choice, view, choice.bays.len() / 2);
            assert!(text.len() < 60_000, "{} bytes", text.len());
            let document = roxmltree::Document::parse(&text).unwrap();
            let sheet = numbers(document.root_element().attribute("viewBox").unwrap());
            let [left, top, width, height] = sheet[..] else { panic!("{sheet:?}") };
            for node in document.descendants().filter(roxmltree::Node::is_element) {
                assert!(node.attribute("style").is_none(), "no inline style");
                plain::check(node);
                let at = |name| node.attribute(name).map(|text| numbers(text)[0]);
                if let (Some(x), Some(y)) = (at("x"), at("y")) {
                    let (right, bottom) = (x + at("width").unwrap_or(0.0), y + at("height").unwrap_or(0.0));
                    assert!(left <= x && right <= left + width && top <= y && bottom <= top + height, "{node:?}");
                }
                if node.has_tag_name("text") {
                    let [from, over, to, under] = text_box(node);
                    let within = left <= from && to <= left + width && top <= over && under <= top + height;
                    assert!(within, "{:?} of {:?} on {sheet:?}", node.text(), text_box(node));
                }
            }
        }
    }
}

/// The figures on the drawing are the layout's.
#[test]
fn dimensions_are_those_of_the_unit() {
    let range = range();
    let choice = Choice::first_of(&range).unwrap();
    let text = draw(&range, &choice, View::Front, 0);
    let document = roxmltree::Document::parse(&text).unwrap();
    let figures: Vec<&str> =
        document.descendants().filter(|node| node.has_tag_name("text")).filter_map(|node| node.text()).collect();
    assert!(figures.contains(&"1\u{202f}640") && figures.contains(&"520"), "{figures:?}");
    // Three equal bays: inner width less four uprights of 17.7 mm and 0.096 mm of film on each face.
    let clear = (1640.0 - 2.0 * 24.0 - 4.0 * (17.7 + 2.0 * 0.096)) / 3.0;
    let clear = format!("{clear:.1}");
    assert_eq!(figures.iter().filter(|figure| **figure == clear).count(), 3, "{figures:?} {clear}");
}

/// The plinth's height stands on the elevation, and on a sheet once, beside the section.
#[test]
fn the_height_of_the_plinth_is_drawn_once() {
    let range = range();
    let begun = Choice::first_of(&range).unwrap();
    let raised = Choice { plinth_mm: Some(Dim::mm(80)), ..begun.clone() };
    let figures = |choice: &Choice, view: View| draw(&range, choice, view, 0).matches(">80<").count();
    for (view, drawn) in [(View::Front, 1), (View::Section, 1), (View::Sheet, 1), (View::Plan, 0)] {
        assert_eq!((figures(&begun, view), figures(&raised, view)), (0, drawn), "{view:?}");
    }
}

#[test]
fn a_unit_is_described_in_words() {
    let range = range();
    let mut choice = Choice::first_of(&range).unwrap();
    let text = describe(&range, &choice);
    choice.place.screen_tenth_inch = Some(655);
    assert_eq!(describe(&range, &choice), format!("{text} A screen of 65.5 inches is to stand on it."));
    assert_eq!(
        text,
        "Sedge, 1\u{202f}640\u{a0}mm wide, 520 high, 420 deep. From the left: door, hung left; one shelf, Round hole 60 (in the middle); open, Round hole 60 (in the middle). Finish Clear."
    );
}

/// A figure's box on the sheet: left, top, right, bottom.
fn text_box(node: roxmltree::Node<'_, '_>) -> [f64; 4] {
    let number = |name| numbers(node.attribute(name).unwrap())[0];
    let (x, y, size) = (number("x"), number("y"), number("font-size"));
    let long = size * 0.55 * node.text().unwrap().chars().map(|_| 1.0).sum::<f64>();
    if node.attribute("transform").is_some() {
        [x - size * 0.8, y - long / 2.0, x, y + long / 2.0]
    } else {
        [x - long / 2.0, y - size * 0.8, x + long / 2.0, y]
    }
}

/// At any scale, from a large screen to a telephone.
#[test]
fn figures_never_run_into_each_other() {
    let range = range();
    let mut pairs = 0;
    for (choice, mm_per_px) in
        choices(&range, 13, Wanted::Valid).zip([1.2, 2.5, 5.0, 9.0, 14.0].into_iter().cycle()).take(150)
    {
        for view in [View::Sheet, View::Front, View::Plan, View::Section] {
            let text = draw_at(&range, &choice, view, 0, mm_per_px);
            let document = roxmltree::Document::parse(&text).unwrap();
            let boxes: Vec<[f64; 4]> =
                document.descendants().filter(|node| node.has_tag_name("text")).map(text_box).collect();
            for (at, one) in boxes.iter().enumerate() {
                for other in &boxes[..at] {
                    pairs += 1;
                    let apart = one[0] >= other[2] || other[0] >= one[2] || one[1] >= other[3] || other[1] >= one[3];
                    assert!(apart, "{one:?} and {other:?} at {mm_per_px} of {choice:?}");
                }
            }
        }
    }
    assert!(pairs > 1000, "{pairs}");
}

/// Names of a range are text, not markup.
#[test]
fn names_are_escaped() {
    assert_eq!(escaped("<a b=\"&\">"), "&lt;a b=&quot;&amp;&quot;&gt;");
}

/// At any scale a dimension line is drawn with its figure or not at all: a line and two ticks to each figure.
#[test]
fn no_dimension_line_is_without_its_figure() {
    let range = range();
    let mut figures = [0; 2];
    for choice in choices(&range, 17, Wanted::Valid).take(40) {
        for view in [View::Sheet, View::Front, View::Plan, View::Section] {
            for (seen, mm_per_px) in figures.iter_mut().zip([2.0, 14.0]) {
                let text = draw_at(&range, &choice, view, 0, mm_per_px);
                let (lines, texts) =
                    (text.matches("class=\"dim\"").count(), text.matches("class=\"dim-text\"").count());
                assert_eq!(lines, texts * 3, "{view:?} at {mm_per_px} of {choice:?}");
                *seen += texts;
            }
        }
    }
    assert!(figures[0] > figures[1] && figures[1] > 100, "{figures:?}");
}

/// A drawing fills its room and no more, so that its texts have the size that they are to have on the screen.
#[test]
fn a_drawing_fits_its_room() {
    let (range, backlog) = (range(), Backlog::default());
    for choice in choices(&range, 19, Wanted::Valid).take(60) {
        let derived = derive(&range, &choice, "2026-11-25".parse().unwrap(), &backlog);
        let subject = Subject { range: &range, choice: &choice, built: derived.built.as_ref().unwrap() };
        for view in [View::Sheet, View::Front, View::Plan, View::Section] {
            for room in [(328.0, 260.0), (736.0, 328.0), (960.0, 610.0)] {
                let mm_per_px = scale(subject, view, room);
                let text = svg(subject, view, 0, mm_per_px, "");
                let document = roxmltree::Document::parse(&text).unwrap();
                let sheet = numbers(document.root_element().attribute("viewBox").unwrap());
                let [_, _, width, height] = sheet[..] else { panic!("{sheet:?}") };
                let filled = (width / mm_per_px / room.0, height / mm_per_px / room.1);
                assert!(filled.0 <= 1.001 && filled.1 <= 1.001, "{filled:?} of {room:?}: {view:?} of {choice:?}");
                assert!(filled.0 > 0.65 || filled.1 > 0.65, "{filled:?} of {room:?}: {view:?} of {choice:?}");
            }
        }
    }
}

/// For documents there is the same list: as many things, on paper of the same size, and none beyond its edge.
#[test]
fn a_drawing_for_documents_is_the_same_list() {
    use crate::vector::Mark;
    let range = range();
    let backlog = Backlog::default();
    for choice in choices(&range, 5, Wanted::Valid).take(12) {
        let derived = derive(&range, &choice, "2026-11-25".parse().unwrap(), &backlog);
        let subject = Subject { range: &range, choice: &choice, built: derived.built.as_ref().unwrap() };
        for view in [View::Sheet, View::Front, View::Plan, View::Section] {
            let (vector, text) = (to_scale(subject, view, 20), svg_to_scale(subject, view, 20, "x"));
            let document = roxmltree::Document::parse(&text).unwrap();
            let is_drawn = |node: &roxmltree::Node<'_, '_>| matches!(node.tag_name().name(), "rect" | "path" | "text");
            assert_eq!(vector.marks.len(), document.descendants().filter(is_drawn).count());
            let size = |name| numbers(document.root_element().attribute(name).unwrap())[0];
            assert!((vector.width.in_mm() - size("width")).abs() < 0.01, "{view:?}");
            assert!((vector.height.in_mm() - size("height")).abs() < 0.01, "{view:?}");
            for mark in &vector.marks {
                let Mark::Words(words) = mark else { continue };
                assert!(words.at.x.in_mm() > 0.0 && words.at.x < vector.width && words.at.y < vector.height);
            }
        }
    }
}

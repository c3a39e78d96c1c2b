//! Drafts side by side: what differs from the first is marked, and what is lost and gained against it is said. Their pictures
//! have one scale.

use core::fmt::Write;

use slotwright_core::choice::{Bay, Choice, Fill};
use slotwright_core::range::{Key, Range};
use slotwright_core::rules::place::breaches;
use slotwright_core::units::quantity::Dim;
use slotwright_core::words;
use slotwright_core::words::draft::{Deed, Feature, Message, Row};
use slotwright_core::words::page::Message as Page;

use super::{Shown, button, head};
use crate::html::escaped;

/// Stands where there is nothing.
const NOTHING: &str = "\u{2013}";

/// The comparison, as it stands in the dialog.
pub(super) fn table(range: &Range, all: &[&Shown]) -> String {
    // Writing to a String cannot fail.
    let mut html = head(Message::SideBySide, &button("", "list", &Message::BackToList.text(), ""));
    let title = Message::SideBySide.text();
    let _ = write!(
        html,
        "<p class=\"move\">{}</p><div class=\"sides of-{}\" tabindex=\"0\" role=\"region\" aria-label=\"{title}\">\
         <table><thead><tr><td></td>",
        Message::MoveToSee(u8::try_from(all.len()).unwrap_or(u8::MAX)).text(),
        all.len(),
    );
    let pictures: Vec<&str> = all.iter().map(|shown| shown.picture.as_str()).collect();
    for (Shown { name, .. }, picture) in all.iter().zip(to_one_scale(&pictures)) {
        let _ = write!(html, "<th scope=\"col\"><div class=\"thumb\">{picture}</div>{}</th>", escaped(name));
    }
    html += "</tr></thead><tbody>";
    for (row, values) in rows(range, all) {
        html += &line(&Message::Row(row).text(), &values);
    }
    html += "</tbody><tfoot><tr><td></td>";
    for shown in all {
        let named = Message::DoWith(Deed::GoOn, &shown.name).text();
        let go_on = button("", &["open ", &shown.id].concat(), &Message::Do(Deed::GoOn).text(), &named);
        let _ = write!(html, "<td>{go_on}</td>");
    }
    let _ = write!(html, "</tr></tfoot></table></div><p class=\"cautions\">{}</p>", Message::Marked.text());
    for sentence in lost(range, all) {
        let _ = write!(html, "<p class=\"lost\">{}</p>", escaped(&sentence));
    }
    html
}

fn line(name: &str, values: &[String]) -> String {
    let mut html = format!("<tr><th scope=\"row\">{}</th>", escaped(name));
    for value in values {
        let shown = escaped(value);
        let _ = if values.first() == Some(value) {
            write!(html, "<td>{shown}</td>")
        } else {
            let differs = Message::Differs.text();
            write!(html, "<td class=\"differs\"><span class=\"unseen\">{differs}</span>{shown}</td>")
        };
    }
    html + "</tr>"
}

fn rows(range: &Range, all: &[&Shown]) -> Vec<(Row, Vec<String>)> {
    let figure = |at: usize| {
        let of = |shown: &&Shown| shown.figures.as_ref().and_then(|figures| figures.get(at).cloned());
        all.iter().map(|shown| of(shown).unwrap_or_else(|| NOTHING.into())).collect()
    };
    let answer = |of: &dyn Fn(&Choice) -> String| all.iter().map(|shown| of(&shown.draft.link.choice)).collect();
    let mut rows: Vec<(Row, Vec<String>)> = vec![
        (Row::Model, answer(&|choice| named(range.model(&choice.model).map(|model| &model.name), &choice.model))),
        (Row::Price, figure(0)),
        (Row::Weight, figure(1)),
        (Row::Day, figure(2)),
        (Row::Width, answer(&|choice| words::size(choice.width_mm))),
        (Row::Height, answer(&|choice| words::size(choice.height_mm))),
        (Row::Depth, answer(&|choice| words::size(choice.depth_mm))),
        (Row::Finish, answer(&|choice| named(range.finish(&choice.finish).map(|finish| &finish.name), &choice.finish))),
        (Row::Back, answer(&|choice| named(range.board(&choice.back).map(|board| &board.name), &choice.back))),
        (Row::Corners, answer(&|choice| corners(choice.corner_radius_mm))),
        (Row::Plinth, answer(&|choice| choice.plinth_mm.map_or_else(|| Message::NoPlinth.text(), words::length))),
    ];
    // Where all ends are square there is nothing to compare.
    if all.iter().any(|shown| shown.draft.link.choice.bow_mm != Dim::mm(0)) {
        rows.push((Row::Ends, answer(&ends)));
    }
    let most = all.iter().map(|shown| shown.draft.link.choice.bays.len()).max().unwrap_or_default();
    for number in 0..most {
        let of = |choice: &Choice| choice.bays.get(number).map_or_else(|| NOTHING.into(), |one| bay(range, one));
        rows.push((Row::Bay(number + 1), answer(&of)));
    }
    rows
}

fn named(name: Option<&String>, key: &Key) -> String {
    name.map_or(key.as_str(), String::as_str).into()
}

fn corners(radius: Dim) -> String {
    if radius == Dim::mm(0) { Message::Square.text() } else { words::length(radius) }
}

fn ends(choice: &Choice) -> String {
    let bow = choice.bow_mm;
    if bow == Dim::mm(0) { Message::Square.text() } else { Page::BowedBy(bow, choice.bowed).text() }
}

fn bay(range: &Range, bay: &Bay) -> String {
    let hole = bay.hole.as_ref().map(|hole| range.hole(&hole.kind).map_or(hole.kind.as_str(), |kind| &kind.name));
    Message::Bay { fill: bay.fill, hole, device: bay.device.as_ref().map(|key| device(range, key)) }.text()
}

fn device<'a>(range: &'a Range, key: &'a Key) -> &'a str {
    range.device(key).map_or(key.as_str(), |device| &device.name)
}

/// A picture taken apart at its box: the box, what stands before it, and what follows.
struct Boxed {
    sides: [f64; 4],
    before: String,
    after: String,
}

impl Boxed {
    fn of(picture: &str) -> Option<Self> {
        let (before, rest) = picture.split_once("viewBox=\"")?;
        let (sides, after) = rest.split_once('"')?;
        let sides: Vec<f64> = sides.split(' ').map_while(|side| side.parse().ok()).collect();
        Some(Self { sides: sides.try_into().ok()?, before: before.into(), after: after.into() })
    }
}

/// Pictures in boxes as large as the largest: each in the middle of its floor.
fn to_one_scale(pictures: &[&str]) -> Vec<String> {
    let all: Vec<_> = pictures.iter().map(|picture| Boxed::of(picture)).collect();
    let largest = |of: fn([f64; 4]) -> f64| all.iter().flatten().map(|boxed| of(boxed.sides)).fold(0.0, f64::max);
    let (wide, high) = (largest(|[_, _, wide, _]| wide), largest(|[_, _, _, high]| high));
    let drawn = |(picture, boxed): (&&str, Option<Boxed>)| {
        let Some(Boxed { sides: [x, y, width, height], before, after }) = boxed else { return (*picture).to_owned() };
        let (x, y) = (x - (wide - width) / 2.0, y - (high - height));
        format!("{before}viewBox=\"{x} {y} {wide} {high}\"{after}")
    };
    pictures.iter().zip(all).map(drawn).collect()
}

/// What each of the others loses and gains against the first, and what it does not suit that the first does.
fn lost(range: &Range, all: &[&Shown]) -> Vec<String> {
    let Some((first, others)) = all.split_first() else { return Vec::new() };
    let suited: Vec<String> = breaches(&first.draft.link.choice).map(|finding| words::sentence(&finding)).collect();
    let mut told = Vec::new();
    for other in others {
        let (lost, gained) = (more(range, first, other), more(range, other, first));
        let (name, against) = (&other.name, &first.name);
        told.push(Message::Against { name, against, lost: &lost, gained: &gained }.text());
        let beyond = breaches(&other.draft.link.choice).map(|finding| words::sentence(&finding));
        told.extend(
            beyond.filter(|sentence| !suited.contains(sentence)).map(|told| Message::Unsuited(name, &told).text()),
        );
    }
    told
}

/// What the first has more than the other.
fn more<'a>(range: &'a Range, first: &'a Shown, other: &Shown) -> Vec<Feature<'a>> {
    let (before, now) = (&first.draft.link.choice.bays, &other.draft.link.choice.bays);
    let fewer = |count: fn(&Bay) -> usize| {
        let sum = |bays: &[Bay]| bays.iter().map(count).sum::<usize>();
        u8::try_from(sum(before).saturating_sub(sum(now))).unwrap_or(u8::MAX)
    };
    let mut features = Vec::new();
    if first.figures.is_some() && other.figures.is_none() {
        features.push(Feature::Made);
    }
    let shelves = |bay: &Bay| if let Fill::Shelves(count) = bay.fill { usize::from(count) } else { 0 };
    features.extend([
        Feature::Bays(fewer(|_| 1)),
        Feature::Doors(fewer(|bay| usize::from(matches!(bay.fill, Fill::Leaf(_))))),
        Feature::Shelves(fewer(shelves)),
        Feature::Holes(fewer(|bay| usize::from(bay.hole.is_some()))),
    ]);
    features.retain(|feature| match feature {
        Feature::Bays(count) | Feature::Doors(count) | Feature::Shelves(count) | Feature::Holes(count) => *count > 0,
        Feature::Made | Feature::Device(_) => true,
    });
    let mut there: Vec<&Key> = now.iter().filter_map(|bay| bay.device.as_ref()).collect();
    for key in before.iter().filter_map(|bay| bay.device.as_ref()) {
        match there.iter().position(|known| *known == key) {
            Some(at) => {
                there.remove(at);
            }
            None => features.push(Feature::Device(device(range, key))),
        }
    }
    features
}

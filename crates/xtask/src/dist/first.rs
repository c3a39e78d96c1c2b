//! The first view: what stands in the page before its program runs, in the geometry of the live page, so that something
//! true is painted at once and nothing moves when the program takes over. It holds no figure of the range.

use std::fs;

use anyhow::{Context, Result, ensure};
use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::order::derive::derive_unproven;
use slotwright_core::range::{Model, Range};
use slotwright_core::units::day::Day;
use slotwright_core::words::page::{Label, Message};
use slotwright_cutpack::drawing::{Subject, View, svg};

use super::shell::escaped;
use crate::root::Root;

/// Its place in the page, and that of what is told where the program does not start.
const PLACES: [&str; 2] = ["{{first}}", "{{trouble-part}}"];

/// What stands in the page's body.
const FIRST: &str = "web/page/first.html";

/// One size of the unit, without its figures.
const SIZE: &str = "web/page/first-size.html";

/// What is shown of the range where nothing runs, and why nothing does.
const TROUBLE: &str = "web/page/trouble.html";

/// The range that the page has built in.
const RANGE: &str = "web/ranges/fenland.toml";

/// Labels of the live page that stand in it; each has its name as its place.
const LABELS: [Label; 46] = [
    Label::Skip,
    Label::OpenOrder,
    Label::BeginAfresh,
    Label::Undo,
    Label::Redo,
    Label::Drafts,
    Label::Menu,
    Label::Print,
    Label::Apart,
    Label::More,
    Label::Solid,
    Label::Sheet,
    Label::Elevation,
    Label::Plan,
    Label::Section,
    Label::SaveSolid,
    Label::Link,
    Label::Corner,
    Label::Front,
    Label::FromAbove,
    Label::DoorsOpen,
    Label::Person,
    Label::BuildItUp,
    Label::PullApart,
    Label::WhereItStands,
    Label::FreeWall,
    Label::Ceiling,
    Label::ScreenOnTop,
    Label::PlugToPass,
    Label::Any,
    Label::Mm,
    Label::Inch,
    Label::HowBig,
    Label::Width,
    Label::Height,
    Label::Depth,
    Label::Keep,
    Label::BayCount,
    Label::WhatInEachBay,
    Label::HowItLooks,
    Label::Cautions,
    Label::PriceWithTax,
    Label::Weight,
    Label::WithYouBy,
    Label::OrderSpec,
    Label::TryAgain,
];

/// The page with its first view.
pub(super) fn into_page(html: &str, root: &Root) -> Result<String> {
    let read = |file: &str| fs::read_to_string(root.join(file)).with_context(|| file.to_owned());
    let faulty = |_| anyhow::anyhow!("{RANGE} cannot be read. To do: `slotwright range {RANGE}` says why");
    let range = Range::parse(&read(RANGE)?).map_err(faulty)?;
    let mut page = html.to_owned();
    for (place, part) in PLACES.into_iter().zip([read(FIRST)?, read(TROUBLE)?]) {
        ensure!(page.contains(place), "web/page/index.html has no place {place}");
        page = page.replace(place, &part);
    }
    filled(&page, &read(SIZE)?, &range)
}

fn filled(html: &str, size: &str, range: &Range) -> Result<String> {
    let sizes = [Label::Width, Label::Height, Label::Depth];
    let sizes = sizes.map(|label| size.replace("{{size}}", &escaped(label.text())));
    let first = range.models.first().context("a range without models")?;
    let mut filled = html.replace("{{sizes}}", &sizes.concat());
    for (place, text) in [
        ("workshop", escaped(&range.workshop)),
        ("range", escaped(&Message::RangeNamed(&range.name).text())),
        ("note", escaped(&range.note)),
        ("drawing", drawing(range, first)?),
        ("models", range.models.iter().map(|model| choice(model, model.key == first.key)).collect()),
        ("model-list", range.models.iter().map(|model| listed(range, model)).collect::<Result<_>>()?),
    ] {
        let place = format!("{{{{{place}}}}}");
        ensure!(filled.contains(&place), "web/page has no place {place}");
        filled = filled.replace(&place, &text);
    }
    for label in LABELS {
        filled = filled.replace(&format!("{{{{{}}}}}", place(label)), &escaped(label.text()));
    }
    Ok(filled)
}

/// The name of a label's place: `FreeWall` has `free-wall`.
fn place(label: Label) -> String {
    let mut place = String::new();
    for letter in format!("{label:?}").chars() {
        if letter.is_uppercase() && !place.is_empty() {
            place.push('-');
        }
        place.extend(letter.to_lowercase());
    }
    place
}

/// The answer that a model is.
fn choice(model: &Model, taken: bool) -> String {
    let named = escaped(&format!("{}, {}", model.name, model.about));
    format!(
        "<button class=\"choice\" type=\"button\" aria-pressed=\"{taken}\"><span class=\"label\">{named}</span></button>"
    )
}

/// A model where nothing can be chosen.
fn listed(range: &Range, model: &Model) -> Result<String> {
    let (name, about) = (escaped(&model.name), escaped(&model.about));
    // All stand on one floor, above their names.
    let drawing = drawing(range, model)?.replacen("<svg", "<svg preserveAspectRatio=\"xMinYMax\"", 1);
    Ok(format!("<li><div class=\"drawing\">{drawing}</div><b>{name}</b> {about}</li>"))
}

/// A model as it is offered first, from the front, without a figure.
fn drawing(range: &Range, model: &Model) -> Result<String> {
    let choice = Choice::starting(model).with_context(|| format!("{} has nothing to begin with", model.key))?;
    let backlog = Backlog::default();
    let derived = derive_unproven(range, &choice, Day::of_unix(0), &backlog);
    let built = derived.built.with_context(|| format!("{} cannot be built as it begins", model.key))?;
    // No bay is looked at: none has that number.
    let drawn = svg(Subject { range, choice: &choice, built: &built }, View::Front, usize::MAX, 1.0, "");
    let (_, body) = drawn.split_once('>').context("a drawing without an element")?;
    let colour = range.finish(&choice.finish).map_or("", |finish| finish.colour.as_str());
    let (wide, high) = (built.layout.width.in_mm(), built.layout.height.in_mm());
    // Room for the width of its lines.
    let (rim, around) = (10.0, 20.0);
    let sheet = format!("{:.0} {:.0} {:.0} {:.0}", -rim, -rim, wide + around, high + around);
    let open = format!("<svg viewBox=\"{sheet}\" color=\"{colour}\" aria-hidden=\"true\">");
    Ok([open, without_figures(body)].concat())
}

/// A drawing without its dimension lines and what stands at them, and without the bays' names, which are for presses.
fn without_figures(body: &str) -> String {
    let mut rest = body;
    let mut kept = String::new();
    while let Some((before, element)) = rest.split_once('<') {
        kept.push_str(before);
        let close = if element.starts_with("text") { "</text>" } else { ">" };
        let is_figure = element.starts_with("text") || element.starts_with("path class=\"dim\"");
        let (own, after) = element.split_once(close).unwrap_or((element, ""));
        if !is_figure {
            let named = own.split_once(" data-bay=").map_or(own, |(before, _)| before);
            kept.extend(["<", named, close]);
        }
        rest = after;
    }
    kept + rest
}

/// Every file that the page is made of.
#[cfg(test)]
pub(super) const FILES: [&str; 4] = ["web/page/index.html", FIRST, SIZE, TROUBLE];

/// The page with its first view.
#[cfg(test)]
pub(super) fn page(root: &Root) -> Result<String> {
    let [index, ..] = FILES;
    into_page(&fs::read_to_string(root.join(index))?, root)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What people read of it, and hear.
    fn texts(html: &str) -> Vec<&str> {
        html.split('<')
            .filter_map(|piece| Some(piece.split_once('>')?.1.trim()))
            .filter(|text| !text.is_empty())
            .collect()
    }

    #[test]
    fn it_shows_no_figure_of_the_range() -> Result<()> {
        let page = page(&Root::find()?)?;
        for text in texts(&page).into_iter().filter(|text| text.len() > 1) {
            // What a label says is said of every range.
            let is_label = LABELS.iter().any(|label| label.text() == text);
            let is_free = is_label || !text.bytes().any(|byte| byte.is_ascii_digit());
            assert!(is_free, "{text}");
        }
        Ok(())
    }

    #[test]
    fn figures_go_and_parts_stay() {
        let drawn = "<g class=\"bay\" data-bay=\"1\"><rect x=\"1\"/><path class=\"dim\" d=\"M0\"/><text x=\"2\">1 640</text></g></svg>";
        assert_eq!(without_figures(drawn), "<g class=\"bay\"><rect x=\"1\"/></g></svg>");
        assert_eq!(place(Label::FreeWall), "free-wall");
    }
}

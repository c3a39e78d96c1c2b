//! The unit on one sheet of A4 or Letter paper, as HTML: drawn to scale, told in words, with its link.

use core::fmt::Write;

use qrcodegen::QrCodeEcc;
use slotwright_core::order::derive::Derived;
use slotwright_core::rules::finding::Severity;
use slotwright_core::words;
use slotwright_core::words::page::{Label, Message as Page};
use slotwright_core::words::sheet::Message;
use slotwright_cutpack::describe;
use slotwright_cutpack::drawing::{Subject, View, extent, svg_to_scale, thumbnail};

use crate::code;
use crate::html::escaped;

/// How many times smaller drawings are. Source: ISO 5455, scales of reduction.
const SCALES: [u32; 6] = [2, 5, 10, 20, 50, 100];

/// Room for views and words in millimetres: Letter is the lower of the two papers, A4 the narrower one; beside them are
/// borders of 12 mm, the head, and what to mind.
const ROOM: (f64, f64) = (186.0, 152.0);
/// The least width of the words beside a view, and the height of one of their lines.
const WORDS: (f64, f64) = (66.0, 5.2);
/// Between them.
const GAP: f64 = 4.0;
/// What dimension lines and borders take beside and below the elevation, and the section.
const LINES: [(f64, f64); 2] = [(17.0, 22.0), (27.0, 14.0)];
/// More than these nobody reads on paper.
const HINTS_MOST: usize = 6;

/// The sheet of a unit, with the address that opens it.
pub(crate) fn html(derived: &Derived<'_>, address: &str) -> String {
    let Derived { range, choice, today, ref built, .. } = *derived;
    let model = range.model(&choice.model).map(|model| [model.name.as_str(), &model.about].join(", "));
    let sizes = Message::Sizes { width: choice.width_mm, height: choice.height_mm, depth: choice.depth_mm }.text();
    let rows = rows(derived);
    let mut html = format!(
        "<div class=\"sheet-head\"><p class=\"workshop\">{}</p><p>{}</p><p>{}</p></div>\
         <div class=\"sheet-title\"><div><h1>{}</h1><p>{sizes}</p></div>{}</div>",
        escaped(&range.workshop),
        escaped(&Page::RangeNamed(&range.name).text()),
        Message::DrawnOn(today).text(),
        escaped(&model.unwrap_or_else(|| choice.model.to_string())),
        built.as_ref().map(|built| thumbnail(Subject { range, choice, built })).unwrap_or_default(),
    );
    html.push_str("<div class=\"sheet-views\">");
    if let Some(built) = &derived.built {
        let subject = Subject { range, choice, built };
        let scale = scale(subject, rows.len());
        let title = Message::Scale(scale).text();
        for view in [View::Front, View::Section] {
            html.push_str(&svg_to_scale(subject, view, scale, &title));
        }
        rows_of(&mut html, &rows);
        let bar = Message::Bar.text();
        // Writing to a String cannot fail.
        let _ = write!(
            html,
            "</div><p class=\"sheet-bar\"><b>{title}</b><svg width=\"100mm\" height=\"3mm\" viewBox=\"0 0 100 3\" \
             aria-hidden=\"true\"><path d=\"M0 0V3M100 0V3M50 1V3M0 2H100\"/></svg>{bar}</p>"
        );
    } else {
        rows_of(&mut html, &rows);
        html.push_str("</div>");
    }
    html.push_str("<div class=\"sheet-foot\"><div>");
    for line in cautions(derived) {
        let _ = write!(html, "<p>{}</p>", escaped(&line));
    }
    let code = code::svg(address, QrCodeEcc::Medium);
    let said = if code.is_some() { Message::Code } else { Message::NoCode };
    let _ = write!(
        html,
        "<p class=\"sheet-link\">{} {}</p></div>{}</div>",
        said.text(),
        escaped(address),
        code.unwrap_or_default()
    );
    html
}

/// The largest scale at which views and words have room: beside each other, or the words and the section below.
fn scale(subject: Subject<'_>, rows: usize) -> u32 {
    // No unit has more answers than a byte counts.
    let words = f64::from(u8::try_from(rows).unwrap_or(u8::MAX)) * WORDS.1;
    let fits = |scale: &&u32| {
        let paper = |view, (beside, below): (f64, f64)| {
            let (wide, high) = extent(subject, view);
            let scale = f64::from(**scale);
            (wide / scale + beside, high / scale + below)
        };
        let [front, section] = LINES;
        let (front, section) = (paper(View::Front, front), paper(View::Section, section));
        let beside = section.1.max(words);
        let (wide, high) = ROOM;
        let is_one_row = front.0 + section.0 + WORDS.0 + 2.0 * GAP <= wide && front.1.max(beside) <= high;
        is_one_row || (front.0 <= wide && section.0 + WORDS.0 + GAP <= wide && front.1 + beside <= high)
    };
    SCALES.iter().find(fits).or(SCALES.last()).copied().unwrap_or(1)
}

/// What was chosen and what it comes to: a name and a text each.
fn rows(derived: &Derived<'_>) -> Vec<(String, String)> {
    let Derived { range, choice, today, .. } = *derived;
    let mut rows: Vec<(String, String)> = Vec::new();
    let mut row = |name: Label, text: String| rows.push((name.text().into(), text));
    let name_of = |found: Option<&String>, key: &str| found.map_or(key, String::as_str).to_owned();
    if let Some(built) = &derived.built {
        let currency = &built.price.currency;
        let tax = Page::TaxOfIt(built.price.amount(slotwright_core::business::price::Item::Tax), currency).text();
        row(Label::PriceWithTax, format!("{}, {tax}", words::money(built.price.total_minor, currency)));
        let heaviest = built.heaviest().map(|(part, mass)| format!(", {}", Page::Heaviest(part, mass).text()));
        row(Label::Weight, words::mass(built.whole.mass) + &heaviest.unwrap_or_default());
        if let Some(promise) = &built.promise {
            row(Label::WithYouBy, Message::ByIfOrdered(promise.arrives, today).text());
        }
    }
    let finish = range.finish(&choice.finish).map(|finish| &finish.name);
    row(Label::Finish, name_of(finish, choice.finish.as_str()));
    row(Label::Back, name_of(range.board(&choice.back).map(|board| &board.name), choice.back.as_str()));
    let square = choice.corner_radius_mm.in_tenths() == 0;
    let corners = if square { Label::Square.text().into() } else { Page::Radius(choice.corner_radius_mm).text() };
    row(Label::Corners, corners);
    if let Some(plinth) = choice.plinth_mm {
        row(Label::Plinth, words::length(plinth));
    }
    if choice.bow_mm.in_tenths() != 0 {
        row(Label::BowedEnds, Page::BowedBy(choice.bow_mm, choice.bowed).text());
    }
    if let Some(wall) = choice.place.wall_mm {
        row(Label::FreeWall, words::length(wall));
    }
    if let Some(ceiling) = choice.place.ceiling_mm {
        row(Label::Ceiling, words::length(ceiling));
    }
    if let Some(tenths) = choice.place.screen_tenth_inch {
        let inches = words::decimal(f64::from(tenths) / 10.0, 1);
        row(Label::ScreenOnTop, format!("{inches}\u{a0}{}", Label::Inch.text()));
    }
    if let Some(plug) = &choice.place.plug {
        row(Label::PlugToPass, name_of(range.plug(plug).map(|plug| &plug.name), plug.as_str()));
    }
    let bays = describe::bays(range, choice);
    rows.extend(bays.into_iter().enumerate().map(|(at, told)| (Message::Bay(at + 1).text(), told)));
    rows
}

fn rows_of(html: &mut String, rows: &[(String, String)]) {
    html.push_str("<table><tbody>");
    for (name, text) in rows {
        let _ = write!(html, "<tr><th scope=\"row\">{}</th><td>{}</td></tr>", escaped(name), escaped(text));
    }
    html.push_str("</tbody></table>");
}

/// Whether it can be made, what was found about it, and what holds for every unit.
fn cautions(derived: &Derived<'_>) -> Vec<String> {
    let verdict = if derived.is_free() { Label::CanBeMade } else { Label::VerdictUnmakeable };
    let said = |severity: Severity| derived.findings.iter().filter(move |finding| finding.severity == severity);
    let found = said(Severity::Stops).chain(said(Severity::Warns)).chain(said(Severity::Advises));
    let mut found: Vec<String> = found.map(words::sentence).collect();
    let more = found.len().saturating_sub(HINTS_MOST);
    found.truncate(HINTS_MOST);
    if more > 0 {
        found.push(Message::MoreHints(more).text());
    }
    let mut lines = vec![[&[format!("{}.", verdict.text())], found.as_slice()].concat().join(" ")];
    let always = words::CAUTIONS.map(String::from).into_iter();
    let always: Vec<String> = always.chain([Message::Electrics.text(), Label::Cautions.text().into()]).collect();
    lines.push(always.join(" "));
    lines
}

#[cfg(test)]
mod tests {
    use slotwright_core::business::promise::Backlog;
    use slotwright_core::choice::Choice;
    use slotwright_core::order::derive::derive;
    use slotwright_core::range::Range;
    use slotwright_core::units::quantity::Dim;

    use super::*;

    const RANGE: &str = include_str!("../../ranges/fenland.toml");

    fn of(edit: fn(&mut Choice)) -> String {
        let range = Range::parse(RANGE).unwrap();
        let mut choice = Choice::first_of(&range).unwrap();
        edit(&mut choice);
        html(&derive(&range, &choice, "2026-11-25".parse().unwrap(), &Backlog::default()), "https://a.example/#1/a&b")
    }

    #[test]
    fn a_sheet_says_all_that_was_chosen() {
        let sheet = of(|choice| choice.place.wall_mm = Some(Dim::mm(3000)));
        for said in [
            "Odd Lintel Workshop",
            "Drawn on Wed 25 November",
            "1\u{202f}640\u{a0}mm wide, 520 high, 420 deep",
            "Scale 1 : 10",
            "100 mm, if it is printed at 100 %",
            "3\u{202f}000\u{a0}mm",
            "<th scope=\"row\">Bay 2</th><td>one shelf, Round hole 60 (in the middle)</td>",
            "if ordered today",
            "of it tax",
            "fastened to the wall",
            "fixed wiring",
            "https://a.example/#1/a&amp;b",
            "<title>QR code",
            "color=\"#e3c792\"",
        ] {
            assert!(sheet.contains(said), "{said}: {sheet}");
        }
    }

    #[test]
    fn a_wide_unit_is_drawn_smaller_and_one_that_cannot_be_made_says_so() {
        assert!(of(|choice| choice.width_mm = Dim::mm(2400)).contains("Scale 1 : 20"));
        let sheet = of(|choice| choice.width_mm = Dim::mm(5000));
        assert!(sheet.contains("Cannot be made. "), "{sheet}");
    }
}

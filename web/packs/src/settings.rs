//! The fields of what a workshop sets for a pack.

use core::fmt::Write;

use slotwright_core::range::Range;
use slotwright_core::words;
use slotwright_core::words::paper;
use slotwright_core::words::workshop::{Label, Message};
use slotwright_cutpack::pack::papers::Papers;

use crate::html::escaped;
use crate::orders::sides;

/// All of them, for the boards of a range.
pub(crate) fn html(range: &Range) -> String {
    let mm = |length: slotwright_core::units::quantity::Length| {
        paper::Message::Millimetres(&words::decimal(length.in_mm(), 2)).text()
    };
    let by_range = |figure: &str| format!("{figure} {}", Label::ByRange.text());
    let (mut measured, mut stock) = (String::new(), String::new());
    for board in &range.boards {
        let hint = by_range(&mm(board.thickness()));
        measured.push_str(&field(&format!("measured/{}", board.key), &board.name, &hint));
        for sheet in &board.sheets {
            let name = Message::Format(&board.name, &sides(&[sheet.length_mm, sheet.width_mm])).text();
            stock.push_str(&field(&format!("sheets/{}/{}", board.key, sheet.key), &name, ""));
        }
    }
    let figure = |length: slotwright_core::units::quantity::Length| by_range(&words::decimal(length.in_mm(), 2));
    let cutting = [
        field("cutter", Label::Cutter.text(), &figure(range.build.cutter_mm)),
        field("allowance", Label::Allowance.text(), &figure(range.cutting.allowance_mm)),
        picked("paper", Label::PaperFormat, Papers::FORMATS.iter().map(|(name, _)| *name)),
        picked("labels", Label::LabelFormat, Papers::LABELS.iter().map(|(name, _)| *name)),
    ];
    let mut booked = field("day", Label::FromDay.text(), Label::FromDayHint.text());
    for stage in &range.stages {
        booked.push_str(&field(&format!("booked/{}", stage.key), &Message::BookedAt(&stage.name).text(), ""));
    }
    let again = field("part", Label::OnePart.text(), Label::OnePartHint.text());
    let mut html = String::new();
    for (title, how, fields) in [
        (Label::Measured, Some(Label::MeasuredHow), measured),
        (Label::InStock, Some(Label::InStockHow), stock),
        (Label::Rack, Some(Label::RackHow), String::new()),
        (Label::CutAndPaper, None, cutting.concat()),
        (Label::DayAndBooked, Some(Label::DayAndBookedHow), booked),
        (Label::OnePartAgain, Some(Label::OnePartHow), again),
    ] {
        let how = how.map(|how| format!("<p class=\"how\">{}</p>", how.text())).unwrap_or_default();
        let _ = write!(
            html,
            "<fieldset><legend>{}</legend>{how}<div class=\"setting-list\">{fields}</div></fieldset>",
            title.text()
        );
    }
    html
}

fn field(name: &str, label: &str, hint: &str) -> String {
    let (label, hint) = (escaped(label), escaped(hint));
    format!(
        "<div class=\"setting\"><label>{label}<input name=\"{name}\" data-setting placeholder=\"{hint}\" autocomplete=\"off\" \
         aria-describedby=\"told-{name}\"></label><span class=\"told-setting\" id=\"told-{name}\"></span></div>"
    )
}

fn picked(name: &str, label: Label, options: impl Iterator<Item = &'static str>) -> String {
    let option = |name| format!("<option value=\"{name}\">{}</option>", Message::FormatNamed(name).text());
    let options: String = options.map(option).collect();
    format!("<label class=\"setting\">{}<select name=\"{name}\" data-setting>{options}</select></label>", label.text())
}

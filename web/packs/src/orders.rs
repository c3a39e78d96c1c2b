//! The orders as the page lists them: what is taken, what is set aside and why, what else came.

use core::fmt::Write;

use slotwright_core::units::quantity::Length;
use slotwright_core::words;
use slotwright_core::words::paper;
use slotwright_core::words::workshop::{Label, Message};
use slotwright_cutpack::pack::{OrderRead, Orders, Reason, TakenOrder};

use crate::bench::{Bench, Ready};
use crate::html::escaped;

/// So many tints tell orders apart beside their numbers.
pub(crate) const TINTS: u32 = 8;

/// The class of an order's tint.
pub(crate) fn tint(order: u32) -> String {
    format!("tint-{}", order.saturating_sub(1) % TINTS + 1)
}

/// All that came, in its order.
pub(crate) fn html(bench: &Bench, ready: &Ready, read: &[OrderRead<'_>], orders: &Orders<'_>) -> String {
    let (mut taken, mut aside, mut others) = (String::new(), String::new(), String::new());
    for (at, order) in bench.places().zip(read) {
        let is_of = |file: &str| core::ptr::eq(file, order.file.as_str());
        if let Some(known) = orders.taken.iter().find(|taken| is_of(taken.file)) {
            taken.push_str(&row(at, known));
        } else if let Some(known) = orders.aside.iter().find(|aside| is_of(aside.file)) {
            // Whose it is stands before the name of the file, where that could be read.
            let whose = order.result.as_ref().ok().map(|(spec, _)| spec.customer.name.as_str());
            let name = whose.map_or_else(|| known.file.into(), |whose| Message::PaperOf(whose, known.file).text());
            let told = known.reason.text();
            let way = match known.reason {
                Reason::Differs(_) => Label::AskAgain.text(),
                Reason::NotAsCut(_) | Reason::Unreadable(_) | Reason::Again(_) => "",
            };
            aside.push_str(&line(at, &name, &[told.trim_end_matches('.'), way].concat(), true));
        }
    }
    for (at, told, good) in &ready.others {
        let file = bench.files.get(*at).map_or("", |came| came.name.as_str());
        let told = told.strip_prefix(file).and_then(|told| told.strip_prefix(": ")).unwrap_or(told);
        let list = if *good { &mut others } else { &mut aside };
        list.push_str(&line(*at, file, told, !*good));
    }
    let mut html = String::new();
    // What needs a hand comes first.
    for (title, rows) in [(Some(Label::SetAside), &aside), (None, &taken), (Some(Label::AlsoHere), &others)] {
        if !rows.is_empty() {
            if let Some(title) = title {
                let _ = write!(html, "<h3>{}</h3>", title.text());
            }
            let _ = write!(html, "<ul class=\"came\">{rows}</ul>");
        }
    }
    html
}

/// A button that takes a file out again.
fn out(at: usize, file: &str) -> String {
    let name = escaped(&Message::TakeOut(file).text());
    format!(
        "<button type=\"button\" class=\"out\" data-do=\"leave {at}\" aria-label=\"{name}\" title=\"{name}\">\u{d7}</button>"
    )
}

fn line(at: usize, file: &str, told: &str, is_aside: bool) -> String {
    let class = if is_aside { "aside" } else { "also" };
    format!(
        "<li class=\"{class}\"><p class=\"file\">{}</p><p class=\"why\">{}</p>{}</li>",
        escaped(file),
        escaped(told),
        out(at, file)
    )
}

fn row(at: usize, order: &TakenOrder<'_>) -> String {
    let (spec, range) = (order.spec, order.cut.range);
    let model = range.model(&spec.choice.model).map_or(spec.choice.model.as_str(), |model| model.name.as_str());
    let finish = range.finish(&spec.choice.finish).map_or(spec.choice.finish.as_str(), |finish| finish.name.as_str());
    let sides =
        order.cut.built.as_ref().map(|built| sides(&[built.layout.width, built.layout.height, built.layout.depth]));
    let unit = Message::Unit { model, sides: &sides.unwrap_or_default(), plinth: spec.choice.plinth_mm, finish }.text();
    let parts = order.cut.built.as_ref().map_or(0, |built| built.cut.weighed().count());
    let holds = Message::Holds { parts, day: &words::day(spec.promised.arrives_on, spec.ordered_on) }.text();
    let batch = if order.differs_as_cut.is_empty() {
        String::new()
    } else {
        format!("<p class=\"why\">{}</p>", Message::AsCut(order.differs_as_cut.len()).text())
    };
    format!(
        "<li class=\"{}\" data-order=\"{1}\"><b class=\"order-no\">{}</b><p class=\"person\">{}</p><p class=\"unit\">{}</p><p class=\"why\">{holds}</p>{batch}{}</li>",
        tint(order.number),
        order.number,
        escaped(&spec.customer.name),
        escaped(&unit),
        out(at, order.file)
    )
}

/// Sides in whole millimetres.
pub(crate) fn sides(sides: &[Length]) -> String {
    let sides: Vec<String> = sides.iter().map(|side| words::decimal(side.in_mm(), 0)).collect();
    paper::Message::Sides(&sides).text()
}

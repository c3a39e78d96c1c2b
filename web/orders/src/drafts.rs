//! Drafts as the page shows them: a list of all, and up to four side by side. What can be done with them stands on the
//! buttons as what they `data-do`.

mod sides;

use core::fmt::Write;

use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::draft::{Draft, NAME_MOST};
use slotwright_core::order::derive::derive_unproven;
use slotwright_core::range::Range;
use slotwright_core::rules::finding::Severity;
use slotwright_core::units::day::Day;
use slotwright_core::words;
use slotwright_core::words::draft::{Deed, Message};
use slotwright_cutpack::drawing::{Subject, thumbnail};

use slotwright_protocol::desk::{Report, Stored};

use crate::html::escaped;
use crate::unread;

/// Nobody reads more reasons at once; each stands beside its question once the draft is open.
const REASONS_MOST: usize = 2;

/// Names of units that were never given one begin with this, as in `web/src/state/drafts.rs`.
const UNIT: char = 't';

/// Where a draft is.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Place {
    /// It is the present unit.
    Bench,
    /// It has a name.
    List,
    /// It has none, and was left for another one.
    Left,
    /// It is the present unit of another tab.
    OtherTab,
}

/// A draft with all that is shown of it; of the present unit the name is that of the draft that it comes from.
struct Shown {
    id: String,
    draft: Draft,
    name: String,
    picture: String,
    /// Price, mass and day, if it can be made.
    figures: Option<[String; 3]>,
    /// What is to be known.
    tells: Vec<String>,
    /// Whether the range has its model.
    is_known: bool,
    /// Whether another tab goes on with it: that one alone may write it.
    elsewhere: bool,
}

/// The list of drafts, or those that are picked side by side.
pub(crate) fn shown(
    range: &str,
    today: Day,
    picked: &[String],
    report: &Report,
    stored: Vec<Stored>,
) -> Result<String, String> {
    let range = Range::parse(range).map_err(|_| unread(range))?;
    let all: Vec<Shown> = stored
        .into_iter()
        .enumerate()
        .filter_map(|(at, Stored { id, text, elsewhere })| {
            let place = match (at, id.starts_with(UNIT), elsewhere) {
                (0, ..) => Place::Bench,
                (_, _, true) => Place::OtherTab,
                (_, true, false) => Place::Left,
                (_, false, false) => Place::List,
            };
            Some(Shown::of(&range, today, &id, Draft::of_text(&text)?, place))
        })
        .collect();
    let chosen: Vec<&Shown> = all.iter().filter(|shown| picked.contains(&shown.id)).collect();
    Ok(if (2..=4).contains(&chosen.len()) { sides::table(&range, &chosen) } else { list(&all, report, picked) })
}

impl Shown {
    fn of(range: &Range, today: Day, id: &str, draft: Draft, place: Place) -> Self {
        let choice = &draft.link.choice;
        let model = range.model(&choice.model);
        let title = model.map_or(choice.model.as_str(), |model| &model.name);
        // What was left has at most the name of the draft that it comes from, and is another one.
        let is_called = matches!(place, Place::Bench | Place::List) && !draft.name.is_empty();
        let name = if is_called {
            draft.name.clone()
        } else {
            Message::Unnamed(title, choice.width_mm, choice.height_mm).text()
        };
        let mut tells = Vec::new();
        match place {
            Place::Bench | Place::List => {}
            Place::OtherTab => tells.push(Message::OtherTab.text()),
            Place::Left => tells.push(Message::Left.text()),
        }
        if model.is_none() {
            tells.push(Message::NoModel(choice.model.as_str()).text());
            let (id, picture, elsewhere) = (id.into(), String::new(), place == Place::OtherTab);
            return Self { id, name, picture, figures: None, tells, is_known: false, elsewhere, draft };
        }
        let backlog = Backlog::default();
        let derived = derive_unproven(range, choice, today, &backlog);
        let stops = derived.findings.iter().filter(|finding| finding.severity == Severity::Stops);
        let reasons = stops.take(REASONS_MOST).map(words::reason).collect::<Vec<_>>().join(" ");
        let made = draft.link.made.map(|made| made.price);
        let built = derived.built.as_ref();
        let price = built.map(|built| &built.price).filter(|_| reasons.is_empty());
        match (made, price) {
            (Some(_), None) => tells.push(Message::NoLonger(&reasons).text()),
            (None, None) => tells.push(Message::Unmade(&reasons).text()),
            (Some(then), Some(price)) if then != price.total_minor => {
                let (now, currency) = (price.total_minor, price.currency.as_str());
                tells.push(Message::OtherPrice { then, now, currency }.text());
            }
            (_, Some(_)) => {}
        }
        let figures = built.zip(price).map(|(built, price)| {
            let day = built.promise.as_ref().map(|promise| words::day(promise.arrives, today));
            [words::money(price.total_minor, &price.currency), words::mass(built.whole.mass), day.unwrap_or_default()]
        });
        let picture = built.map(|built| thumbnail(Subject { range, choice, built })).unwrap_or_default();
        let elsewhere = place == Place::OtherTab;
        Self { id: id.into(), name, picture, figures, tells, is_known: true, elsewhere, draft }
    }

    fn figures(&self) -> String {
        self.figures.as_ref().map(|[price, mass, day]| Message::Figures(price, mass, day).text()).unwrap_or_default()
    }
}

/// A button by what it does; `named` is what it is called by those who do not see what it stands beside.
fn button(class: &str, what: &str, text: &str, named: &str) -> String {
    let (text, named) = (escaped(text), escaped(named));
    let label = if named.is_empty() { String::new() } else { format!(" aria-label=\"{named}\"") };
    format!("<button type=\"button\" class=\"{class}\" data-do=\"{what}\"{label}>{text}</button>")
}

/// The head of the dialog.
fn head(title: Message<'_>, more: &str) -> String {
    let close = button("", "close", &Message::Close.text(), "");
    format!(
        "<div class=\"order-head\"><h2 id=\"drafts-title\">{}</h2><div class=\"views\">{more}{close}</div></div>",
        title.text()
    )
}

fn list(all: &[Shown], report: &Report, picked: &[String]) -> String {
    // Writing to a String cannot fail.
    let mut html = head(Message::Title, "");
    html += &said(report);
    let Some((own, others)) = all.split_first() else { return html };
    html += &bench(own, picked);
    let _ = write!(html, "<h3 class=\"kept-here\">{}</h3>", Message::KeptHere.text());
    if others.is_empty() {
        let _ = write!(html, "<p class=\"none-yet\">{}</p>", Message::NoneYet.text());
    } else {
        html += "<ul class=\"drafts\">";
        for other in others {
            html += &item(other, picked);
        }
        html += "</ul>";
        let compare = button("", "compare", &Message::Compare.text(), "");
        let _ = write!(html, "<div class=\"compare\">{compare}<p>{}</p></div>", Message::PickSome.text());
    }
    let visitor = button("", "visitor", &Message::NewVisitor.text(), "");
    let _ = write!(html, "<div class=\"visitor\">{visitor}<p>{}</p></div>", Message::NewVisitorMeans.text());
    html
}

/// What was done last, and the way back.
fn said(Report { done, name, back }: &Report) -> String {
    let sentence = done.map(|done| Message::Done(done, name).text()).unwrap_or_default();
    let back = if *back { button("remedy", "restore", &Message::BringBack.text(), "") } else { String::new() };
    format!("<div class=\"said\"><p role=\"status\">{}</p>{back}</div>", escaped(&sentence))
}

/// The present unit, and the field by which it becomes a draft.
fn bench(own: &Shown, picked: &[String]) -> String {
    let Shown { id, name, picture, .. } = own;
    let (title, label, keep) = (Message::ThisUnit.text(), Message::Name.text(), Message::Keep.text());
    let saved = Message::SavedAnyhow.text();
    let (name, keep) = (escaped(name), button("main", "keep", &keep, ""));
    format!(
        "<section class=\"draft bench-draft\"><div class=\"thumb\">{picture}</div><div><h3>{title} <small>{saved}</small></h3>{}{}\
         <div class=\"keeps\"><label class=\"field\"><span class=\"field-label\">{label}</span><input class=\"name\" \
         maxlength=\"{NAME_MOST}\" value=\"{name}\"></label>{keep}{}</div></div></section>",
        figures(own),
        tells(own),
        pick((id, &title), picked),
    )
}

fn item(shown: &Shown, picked: &[String]) -> String {
    let Shown { id, name, picture, is_known, elsewhere, .. } = shown;
    let deed = |deed: Deed| {
        let what = match deed {
            Deed::Open | Deed::GoOn => "open",
            Deed::Double => "double",
            Deed::Link => "link",
            Deed::Delete => "delete",
            Deed::Pick => "pick",
        };
        button("", &format!("{what} {id}"), &Message::Do(deed).text(), &Message::DoWith(deed, name).text())
    };
    let known = if *is_known { [Deed::Open, Deed::Double, Deed::Link].map(deed).concat() } else { String::new() };
    let pick = if *is_known { pick((id, name), picked) } else { String::new() };
    let (called, name) = (escaped(&Message::NameOf(name).text()), escaped(name));
    format!(
        "<li class=\"draft\"><div class=\"thumb\">{picture}</div><div><h3 class=\"unseen\">{name}</h3>\
         <input class=\"rename\" data-id=\"{id}\" maxlength=\"{NAME_MOST}\" aria-label=\"{called}\" value=\"{name}\">{}{}\
         <div class=\"views\">{known}{}{pick}</div></div></li>",
        figures(shown),
        tells(shown),
        if *elsewhere { String::new() } else { deed(Deed::Delete) },
    )
}

/// A box to tick for the comparison; it stays ticked where it was.
fn pick((id, name): (&str, &str), picked: &[String]) -> String {
    let ticked = if picked.iter().any(|picked| picked == id) { " checked" } else { "" };
    let (text, named) = (Message::Do(Deed::Pick).text(), escaped(&Message::DoWith(Deed::Pick, name).text()));
    format!(
        "<label class=\"pick\"><input type=\"checkbox\" value=\"{id}\"{ticked} aria-label=\"{named}\">{text}</label>"
    )
}

fn figures(shown: &Shown) -> String {
    let text = shown.figures();
    if text.is_empty() { text } else { format!("<p class=\"figures\">{}</p>", escaped(&text)) }
}

fn tells(shown: &Shown) -> String {
    let tells = shown.tells.iter().map(|tell| ["<p class=\"tell\">", &escaped(tell), "</p>"].concat());
    tells.collect::<Vec<_>>().concat()
}

#[cfg(test)]
mod tests {
    use slotwright_core::words::draft::Done;

    use super::*;
    use crate::tests::RANGE;

    fn kept(id: &str, name: &str, link: &str) -> Stored {
        let text = ["1764393600000", "fenland", name, link, "height"].join("\u{1f}");
        Stored { id: id.into(), text, elsewhere: false }
    }

    fn html(picked: &[&str], stored: &[Stored]) -> String {
        let report = Report { done: Some(Done::Deleted), name: "A <b>".into(), back: true };
        let picked: Vec<String> = picked.iter().map(ToString::to_string).collect();
        shown(RANGE, "2026-11-25".parse().unwrap(), &picked, &report, stored.to_vec()).unwrap()
    }

    #[test]
    fn a_list_tells_of_each_draft_and_believes_no_name() {
        let all = [
            kept("t2", "", "1/sedge/1640x520x420/0/birch-18/clear/1o,1o,1l"),
            kept("d1", "<b>\"A\"</b>", "1/sedge/1640x520x420/0/birch-18/clear/1o,1o,1l/@a1b2c3d4=100"),
            kept("d3", "Wide", "1/sedge/5000x520x420/0/birch-18/clear/1o,1o,1l/@a1b2c3d4=100"),
            kept("t1", "Wide", "1/sedge/1640x520x420/0/birch-18/soot/1o,1o,1o"),
            kept("d4", "Old", "1/reed/1640x520x420/0/birch-18/soot/1o,1o,1o"),
            kept("d5", "Unread", "9/sedge"),
        ];
        let html = html(&[], &all);
        assert!(!html.contains("<b>") && html.contains("&lt;b&gt;&quot;A&quot;&lt;/b&gt;"), "{html}");
        assert_eq!(html.matches("<li ").count(), 4, "what cannot be read is passed over");
        for told in [
            "\u{201c}A &lt;b&gt;\u{201d} is deleted.",
            "Prices of this draft changed: € 1.00 to €",
            "It could be ordered when it was kept, and cannot now. ",
            "Left for another unit; it stays here",
            "Name of Sedge 1\u{202f}640\u{202f}\u{d7}\u{202f}520",
            "does not have the model reed",
        ] {
            assert!(
                html.replace('\u{a0}', " ").contains(told) || html.replace('\u{202f}', " ").contains(told),
                "{told}: {html}"
            );
        }
        assert_eq!(html.matches("data-do=\"open ").count(), 3, "an unknown model cannot be opened");
    }

    #[test]
    fn side_by_side_what_differs_is_marked_and_what_is_lost_is_said() {
        let all = [
            kept("t2", "", "1/sedge/1640x520x420/0/birch-18/clear/1o:d=receiver,1s1:h=round-60@0,1l"),
            kept("d1", "Plain", "1/sedge/1640x520x420/0/birch-18/soot/1o,1o"),
        ];
        let html = html(&["t2", "d1"], &all).replace('\u{202f}', " ");
        let differs = |value: &str| {
            html.contains(&format!("<td class=\"differs\"><span class=\"unseen\">differs: </span>{value}</td>"))
        };
        assert!(differs("Soot") && differs("\u{2013}") && !differs("520"), "{html}");
        assert!(html.contains("loses one bay, one door, one shelf, one cable hole and the place of the "), "{html}");
        assert!(html.contains("; it gains that it can be made."), "{html}");
        let gains = super::tests::html(&["d1", "t2"], &[all[1].clone(), all[0].clone()]);
        assert!(
            gains.contains(
                "loses that it can be made; it gains one bay, one door, one shelf, one cable hole and the place"
            ),
            "{gains}"
        );
    }

    /// A picture of the same scale is as wide for its box as its unit among all.
    #[test]
    fn pictures_side_by_side_have_one_scale() {
        let all = [
            kept("t2", "", "1/sedge/900x520x420/0/birch-18/clear/1o"),
            kept("d1", "Wide", "1/sedge/2400x640x420/0/birch-18/clear/1o,1o,1o,1o"),
        ];
        let html = html(&["t2", "d1"], &all);
        let boxes: Vec<&str> = html.split("viewBox=\"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
        let sides: Vec<Vec<f64>> =
            boxes.iter().map(|sides| sides.split(' ').map(|side| side.parse().unwrap()).collect()).collect();
        let [one, other] = sides.as_slice() else { panic!("{boxes:?}") };
        assert_eq!(one[2..], other[2..], "the same room for both");
        assert!(one[0] < other[0] && one[1] < other[1], "the smaller one stands in the middle of its floor: {sides:?}");
        assert_eq!(html.matches("class=\"main\"").count(), 0, "none is set before the others");
    }
}

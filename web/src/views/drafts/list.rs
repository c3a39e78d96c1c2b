//! What is done in the dialog of the drafts. The order desk writes what is shown.

use std::cell::Cell;

use leptos::prelude::*;
use slotwright_core::words::draft::Done;
use slotwright_core::words::page::Message;
use slotwright_protocol::desk::{Answer, Question, Report, Stored};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::{Element, HtmlDialogElement, HtmlInputElement};

use super::{Act, DIALOG, say};
use crate::browser::{first_view, orders, page};
use crate::state::Desk;
use crate::views::link;

/// Where the focus is if what had it went.
const FIRST: &str = "[data-do]";

/// No draft has got another id.
const SAME: [String; 2] = [String::new(), String::new()];

thread_local! {
    /// Whether something is being done.
    static BUSY: Cell<bool> = const { Cell::new(false) };
}

/// Does it, once what came before is done: a press that comes while a draft gets its name is of that draft.
pub fn run(act: Act) {
    spawn_local(async {
        while BUSY.get() {
            first_view::turn().await;
        }
        BUSY.set(true);
        work(act).await;
        BUSY.set(false);
    });
}

async fn work(Act { desk, what, typed }: Act) {
    let Some(dialog) = page::dialog(DIALOG) else { return };
    let (deed, which) = what.split_once(' ').unwrap_or((&what, ""));
    match deed {
        "list" => show(desk, Report::default(), FIRST.into()),
        "compare" => compare(desk, &dialog),
        "open" => {
            dialog.close();
            desk.open_draft(which);
        }
        "link" => {
            if let Some(address) = desk.address_of_draft(which) {
                dialog.close();
                link::show(desk, address, RwSignal::new(String::new()));
            }
        }
        "visitor" => {
            dialog.close();
            desk.begin_visitor();
        }
        "opened" => {
            desk.read_drafts().await;
            show(desk, Report::default(), FIRST.into());
        }
        "rename" => {
            let (report, now) = desk.rename_draft(which, &typed).await;
            ask(desk, Vec::new(), report, String::new(), [which.into(), now]);
        }
        _ => change(desk, &dialog, deed, which).await,
    }
}

/// Does what a button of the list says.
async fn change(desk: Desk, dialog: &Element, deed: &str, which: &str) {
    let changed = match deed {
        "keep" => desk.keep_as_draft(&typed(dialog, ".name").unwrap_or_default()).await,
        "double" => {
            let name = typed(dialog, &["[data-id=\"", which, "\"]"].concat()).unwrap_or_default();
            desk.double_draft(which, Message::CopyOf(&name).text()).await
        }
        "delete" => desk.delete_draft(which).await,
        "restore" => desk.restore_draft().await,
        _ => return,
    };
    let focus = match deed {
        "delete" => "[data-do=restore]".into(),
        "restore" => FIRST.into(),
        _ => ["[data-do=\"", deed, if which.is_empty() { "" } else { " " }, which, "\"]"].concat(),
    };
    show(desk, changed, focus);
}

/// What stands in a field of the dialog.
fn typed(dialog: &Element, selector: &str) -> Option<String> {
    Some(dialog.query_selector(selector).ok()??.dyn_into::<HtmlInputElement>().ok()?.value())
}

/// Shows those that are ticked side by side, or says how many have to be.
fn compare(desk: Desk, dialog: &Element) {
    let ids = page::all_within(dialog, ":checked").iter().filter_map(|own| own.get_attribute("value")).collect();
    ask(desk, ids, Report { done: Some(Done::Unpicked), ..Report::default() }, FIRST.into(), SAME);
}

fn show(desk: Desk, report: Report, focus: String) {
    ask(desk, Vec::new(), report, focus, SAME);
}

/// Asks for what is shown, of drafts with these ids side by side. Then the focus goes to an element or, if that is empty,
/// stays where it is by then, though a draft has got another id: before, and now.
fn ask(desk: Desk, picked: Vec<String>, report: Report, focus: String, renamed: [String; 2]) {
    let own = Stored { id: desk.drafts().name(), text: desk.unit_text(), elsewhere: false };
    let other = |kept: Vec<String>| {
        let [id, text, tab] = <[String; 3]>::try_from(kept).ok()?;
        Some(Stored { id, text, elsewhere: !tab.is_empty() })
    };
    let others = desk.drafts().others.get_untracked().into_iter().filter_map(other);
    let on_answer = move |(answer, _)| {
        let Some(dialog) = page::dialog(DIALOG).filter(HtmlDialogElement::open) else { return };
        match answer {
            Answer::No(why) => say(&dialog, &why),
            Answer::Shown(html) => {
                let (focus, renamed) = (focus.clone(), renamed.clone());
                spawn_local(async move {
                    // What is being pressed stays until it is let go.
                    while is_there(&dialog, ":active") {
                        first_view::turn().await;
                    }
                    renew(&dialog, &html, focus, &renamed);
                });
            }
            Answer::File(..) | Answer::Order(_) | Answer::Said(_) => {}
        }
    };
    let question = Question::Drafts {
        range: desk.range_text(),
        today: desk.today(),
        picked,
        report: Report { back: desk.has_deleted(), ..report },
        stored: core::iter::once(own).chain(others).collect(),
    };
    orders::ask(question, Callback::new(on_answer));
}

fn is_there(dialog: &Element, selector: &str) -> bool {
    dialog.query_selector(selector).is_ok_and(|found| found.is_some())
}

/// How a control of the dialog is found again.
fn place(control: &Element) -> String {
    let place = |name: &str| Some(["[", name, "=\"", &control.get_attribute(name)?, "\"]"].concat());
    place("data-do").or_else(|| place("data-id")).or_else(|| place("value")).unwrap_or_default()
}

/// Shows something else.
fn renew(dialog: &Element, html: &str, focus: String, [before, now]: &[String; 2]) {
    let focused = || Some(place(&dialog.query_selector(":focus").ok()??).replace(before, now));
    let to = if focus.is_empty() { focused() } else { Some(focus) };
    dialog.set_inner_html(html);
    if let Some(to) = to {
        page::focus(dialog, FIRST);
        page::focus(dialog, &to);
    }
}

//! What is done in the dialog of the drafts. The order desk writes what is shown.

use leptos::prelude::*;
use slotwright_core::words::page::Message;
use slotwright_protocol::desk::{Answer, Deed, Kept, Question, Told};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::{Element, HtmlDialogElement, HtmlInputElement};

use super::{Act, DIALOG, say};
use crate::browser::{orders, page};
use crate::state::Desk;

/// Where the focus is if what had it went.
const FIRST: &str = "[data-do]";

/// Does it.
pub fn run(Act { desk, what, typed }: Act) {
    let Some(dialog) = page::dialog(DIALOG) else { return };
    let (deed, which) = what.split_once(' ').unwrap_or((&what, ""));
    let (deed, which) = (deed.to_string(), which.to_string());
    match deed.as_str() {
        "list" => show(desk, Told::default(), FIRST.into()),
        "compare" => compare(desk, &dialog),
        "open" => {
            dialog.close();
            desk.open_draft(&which);
        }
        "visitor" => {
            dialog.close();
            desk.begin_visitor();
        }
        "opened" => spawn_local(async move {
            desk.read_drafts().await;
            show(desk, Told::default(), FIRST.into());
        }),
        "rename" => spawn_local(async move {
            let changed = desk.rename_draft(&which, &typed).await;
            show(desk, changed, ["[data-id=\"", &which, "\"]"].concat());
        }),
        _ => spawn_local(async move { change(desk, &dialog, &deed, &which).await }),
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
    let Ok(ticked) = dialog.query_selector_all(":checked") else { return };
    let ids = (0..ticked.length()).filter_map(|at| ticked.item(at)?.dyn_into::<HtmlInputElement>().ok());
    let ids: Vec<String> = ids.map(|input| input.value()).collect();
    ask(desk, ids, Told { done: Deed::Compared, ..Told::default() }, FIRST.into());
}

fn show(desk: Desk, changed: Told, focus: String) {
    ask(desk, Vec::new(), changed, focus);
}

/// Asks for what is shown, of drafts with these ids side by side; then the focus goes to an element.
fn ask(desk: Desk, picked: Vec<String>, told: Told, focus: String) {
    let own = Kept { id: desk.drafts().name(), text: desk.unit_text(), elsewhere: false };
    let other = |kept: Vec<String>| {
        let [id, text, tab] = <[String; 3]>::try_from(kept).ok()?;
        Some(Kept { id, text, elsewhere: !tab.is_empty() })
    };
    let others = desk.drafts().others.get_untracked().into_iter().filter_map(other);
    let on_answer = move |(answer, _)| {
        let Some(dialog) = page::dialog(DIALOG).filter(HtmlDialogElement::open) else { return };
        match answer {
            Answer::No(why) => say(&dialog, &why),
            Answer::Shown(html) => {
                let had_focus = dialog.query_selector(":focus").is_ok_and(|focused| focused.is_some());
                dialog.set_inner_html(&html);
                if had_focus || !focus.is_empty() {
                    page::focus(&dialog, FIRST);
                    page::focus(&dialog, &focus);
                }
            }
            Answer::File(_) | Answer::Order(_) | Answer::Said(_) => {}
        }
    };
    let question = Question::Drafts {
        range: desk.range_text(),
        today: desk.today(),
        picked,
        told: Told { back: desk.has_deleted(), ..told },
        kept: core::iter::once(own).chain(others).collect(),
    };
    orders::ask(question, Callback::new(on_answer));
}

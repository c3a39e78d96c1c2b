//! What stands on the workshop's page.

use leptos::prelude::*;
use slotwright_core::words::workshop::Label;
use slotwright_protocol::packs::{Question, What};
use web_sys::{KeyboardEvent, MouseEvent};

use super::dialogs::{self, LargeDialog, PrintDialog, SettingsDialog};
use super::{Saw, drop, scan};
use crate::browser::{packs, page};

/// The papers that are taken one by one, by what is in the path of their files.
const PAPERS: [(Label, &str); 9] = [
    (Label::Labels, "labels.pdf"),
    (Label::CutList, "cut-list.pdf"),
    (Label::Finishing, "finishing.pdf"),
    (Label::Batch, "batch.pdf"),
    (Label::JobCards, "-job-card."),
    (Label::PackingLists, "-packing-list."),
    (Label::DeliveryNotes, "-delivery."),
    (Label::AssemblySheets, "-assembly."),
    (Label::Lists, ".csv"),
];

/// The page.
#[component]
pub(super) fn Workshop() -> impl IntoView {
    let saw = Saw::open();
    drop::listen(saw);
    scan::listen();
    view! {
        <div class="saw-page" on:click=move |event| press(saw, &event)>
            <a class="skip" href="#sheets">{Label::Skip.text()}</a>
            <Head saw/>
            <main class="saw">
                <Orders saw/>
                <Sheets saw/>
                <Figures saw/>
            </main>
            <Strip saw/>
            <SettingsDialog saw/>
            <LargeDialog saw/>
            <PrintDialog saw/>
        </div>
    }
}

/// Does what a button says.
fn press(saw: Saw, event: &MouseEvent) {
    let Some(what) = page::pressed(event) else { return };
    let (deed, which) = what.split_once(' ').unwrap_or((&what, ""));
    match deed {
        "leave" => saw.change(&Question::Leave(which.parse().unwrap_or(u32::MAX)), []),
        "lot" => saw.turn_to(which.parse().unwrap_or(0)),
        "large" => dialogs::enlarge(saw, which),
        "larger" => dialogs::zoom(saw, true),
        "smaller" => dialogs::zoom(saw, false),
        "close" => dialogs::close(),
        "settings" => dialogs::open("settings-dialog"),
        "look" => packs::ask(&Question::Look(!saw.looks.get_untracked()), []),
        "take" => saw.take(What::Some(which.into())),
        "print" => saw.take(What::Documents),
        "pack" => saw.take(What::Pack),
        "halt" => packs::ask(&Question::Halt, []),
        _ => {}
    }
}

/// A field that takes files, as a button.
#[component]
fn Picker(saw: Saw) -> impl IntoView {
    let input = NodeRef::<leptos::html::Input>::new();
    let picked = move |_| {
        if let Some(input) = input.get_untracked() {
            drop::picked(saw, &input);
            input.set_value("");
        }
    };
    view! {
        <label class="button">
            {Label::AddOrders.text()}
            <input class="unseen" node_ref=input type="file" multiple accept=".json,.csv,.toml,application/json" on:change=picked/>
        </label>
    }
}

#[component]
fn Head(saw: Saw) -> impl IntoView {
    view! {
        <header>
            <svg class="mark" viewBox="0 0 24 20" aria-hidden="true"><path d="M1 1H8V9H16V1H23V19H1Z"/></svg>
            <h1 class="workshop">{move || saw.workshop.get()}</h1>
            <p class="range">{Label::AtTheSaw.text()}</p>
            <div class="tools">
                <Picker saw/>
                <button type="button" data-do="settings">{Label::Settings.text()}</button>
                <a class="button" href="../">{Label::ToTheShop.text()}</a>
            </div>
        </header>
        <div class="banner" class:empty=move || saw.trouble.with(String::is_empty)><p>{move || saw.trouble.get()}</p></div>
    }
}

#[component]
fn Orders(saw: Saw) -> impl IntoView {
    view! {
        <section class="saw-orders" aria-labelledby="orders-title">
            <h2 id="orders-title">{Label::Orders.text()}</h2>
            <div class="came-list" inner_html=move || saw.orders.get()></div>
            <p class="saw-note" class:away=move || !saw.packed.get()>{Label::ScanHow.text()}</p>
            <p class="saw-note">{Label::Local.text()}</p>
            <p class="saw-note">{Label::Gone.text()}</p>
        </section>
    }
}

#[component]
fn Sheets(saw: Saw) -> impl IntoView {
    let is_empty = Memo::new(move |_| saw.orders.with(String::is_empty));
    let has_lots = Memo::new(move |_| saw.lots.with(|lots| !lots.is_empty()));
    view! {
        <section id="sheets" class="saw-sheets" tabindex="-1" aria-labelledby="sheets-title" aria-busy=move || saw.waits.get().to_string()>
            <h2 id="sheets-title" class:away=move || is_empty.get()>{Label::Sheets.text()}</h2>
            {move || is_empty.get().then(|| view! {
                <div class="drop-here">
                    <p class="drop-title">{move || if saw.waits.get() { Label::Reading } else { Label::DropHere }.text()}</p>
                    <p>{Label::NothingYet.text()}</p>
                </div>
            })}
            {move || (!is_empty.get() && !has_lots.get()).then(|| view! { <p class="no-sheets">{Label::NoSheets.text()}</p> })}
            <Tabs saw/>
            <div
                id="nest"
                class="nest-panel"
                role=move || has_lots.get().then_some("tabpanel")
                aria-labelledby=move || has_lots.get().then(|| ["lot-", &saw.lot.get().to_string()].concat())
                inner_html=move || saw.nest.get()
            ></div>
        </section>
    }
}

/// A tab for each lot: arrows lead from one to the next.
#[component]
fn Tabs(saw: Saw) -> impl IntoView {
    let key = move |event: KeyboardEvent| {
        let (count, now) = (saw.lots.with_untracked(Vec::len), saw.lot.get_untracked());
        let next = match event.key().as_str() {
            "ArrowRight" => now + 1,
            "ArrowLeft" => now + count.saturating_sub(1),
            "Home" => 0,
            "End" => count.saturating_sub(1),
            _ => return,
        };
        event.prevent_default();
        let next = next % count.max(1);
        saw.turn_to(next);
        page::focus_first(&["#lot-", &next.to_string()].concat());
    };
    let tab = move |(at, name): (usize, String)| {
        let is_shown = move || saw.lot.get() == at;
        view! {
            <button
                type="button"
                role="tab"
                id=["lot-", &at.to_string()].concat()
                data-do=["lot ", &at.to_string()].concat()
                aria-controls="nest"
                aria-selected=move || is_shown().to_string()
                tabindex=move || if is_shown() { "0" } else { "-1" }
            >
                {name}
            </button>
        }
    };
    view! {
        {move || {
            let lots = saw.lots.get();
            (!lots.is_empty()).then(|| view! {
                <div class="lot-tabs" role="tablist" aria-label=Label::Lots.text() on:keydown=key>
                    {lots.into_iter().enumerate().map(tab).collect_view()}
                </div>
            })
        }}
    }
}

#[component]
fn Figures(saw: Saw) -> impl IntoView {
    let paper = |(label, path): (Label, &str)| {
        view! { <button type="button" data-do=["take ", path].concat()>{label.text()}</button> }
    };
    view! {
        <section class="saw-figures" aria-label=Label::ToMake.text() class:away=move || saw.figures.with(String::is_empty)>
            <h2>{Label::ToMake.text()}</h2>
            <div class="make" inner_html=move || saw.figures.get()></div>
            <div class:away=move || !saw.packed.get()>
                <h2>{Label::Papers.text()}</h2>
                <div class="papers">{PAPERS.map(paper).collect_view()}</div>
                <p class="tell warn">{Label::Cautions.text()}</p>
                <p class="saw-note">{Label::Guidance.text()}</p>
            </div>
        </section>
    }
}

#[component]
fn Strip(saw: Saw) -> impl IntoView {
    let unpacked = move || (!saw.packed.get()).to_string();
    let look = move || if saw.looks.get() { Label::Stop } else { Label::LookLonger }.text();
    view! {
        <footer class="tally saw-strip">
            <div>
                <p class="done" class:looks=move || saw.looks.get()>{move || saw.done.get()}</p>
                <p class="saved">{move || saw.saved.get()}</p>
            </div>
            <div class="strip-buttons">
                <button type="button" data-do="look" aria-disabled=unpacked>{look}</button>
                <button type="button" data-do="print" aria-disabled=unpacked>{Label::PrintAll.text()}</button>
                <button
                    type="button"
                    class="main"
                    data-do=move || if saw.writes.get() { "halt" } else { "pack" }
                    aria-disabled=unpacked
                >
                    {move || if saw.writes.get() { Label::StopWriting } else { Label::TakePack }.text()}
                </button>
            </div>
        </footer>
    }
}

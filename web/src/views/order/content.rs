//! What the order's dialog shows: what it costs, when it is there, for whom, and the file to take away.

use std::time::Duration;

use leptos::prelude::*;
use slotwright_core::words;
use slotwright_core::words::page::{Label, Message};
use slotwright_cutpack::describe::describe;
use slotwright_protocol::desk::{Answer, Question};

use crate::browser::orders::{self, Ear};
use crate::browser::{files, page, share};
use crate::parts::inert;
use crate::state::Desk;
use crate::tally::price_lines;
use crate::views::ask::Minded;

/// What kind of file an order is.
const KIND: &str = "application/json";

/// How long after an answer the second press of two is still the same wish.
const SETTLING: Duration = Duration::from_millis(500);

/// What came of saving an order. It lives as long as the page: an answer finds it when the dialog was closed meanwhile.
#[derive(Clone, Copy, Debug)]
struct Saving {
    /// What was said last.
    told: RwSignal<String>,
    /// Whether that is why nothing was saved.
    bad: RwSignal<bool>,
    /// Whether the desk is at it.
    busy: RwSignal<bool>,
    /// What can be done with the file, in HTML.
    sent: RwSignal<String>,
    /// Gets the desk's answer.
    on_answer: Ear,
}

impl Saving {
    fn new(desk: Desk, open: RwSignal<bool>) -> Self {
        let (told, bad, busy) = (RwSignal::new(String::new()), RwSignal::new(false), RwSignal::new(false));
        let sent = RwSignal::new(String::new());
        let on_answer = Callback::new(move |(answer, content)| {
            if let Answer::File(name, ways) = &answer {
                // Only where another program can get the file, a button offers that.
                let shares = share::offer_file(name, KIND, &content);
                sent.set(ways.replace("data-shared", if shares { "data-do" } else { "hidden" }));
            }
            let (said, good) = match files::save(answer, KIND, &content) {
                Ok(file) => (Message::OrderSaved(&file).text(), true),
                Err(why) => (why, false),
            };
            bad.set(!good);
            if open.get_untracked() {
                told.set(said);
                set_timeout(|| page::see(".order form .main"), Duration::ZERO);
            } else {
                told.set(String::new());
                desk.show_banner(said, String::new());
            }
            set_timeout(move || busy.set(false), SETTLING);
        });
        Self { told, bad, busy, sent, on_answer }
    }

    /// What was said of an earlier order is not about this one.
    fn begin(self) {
        if !self.busy.get_untracked() {
            self.told.set(String::new());
            self.sent.set(String::new());
        }
    }
}

/// Begins the content for as long as the page is there: what makes it each time the dialog is opened.
pub fn begin(open: RwSignal<bool>) -> Callback<(), AnyView> {
    let saving = Saving::new(Desk::here(), open);
    Callback::new(move |()| view! { <Content saving/> }.into_any())
}

#[component]
fn Content(saving: Saving) -> impl IntoView {
    let desk = Desk::here();
    let share = move |event: web_sys::MouseEvent| {
        if page::pressed(&event).is_some() {
            wasm_bindgen_futures::spawn_local(async move {
                if !share::share_file().await {
                    saving.told.set(Label::FileNotShared.text().into());
                }
            });
        }
    };
    let ordered = desk.peek(|snapshot, range| describe(range, &snapshot.choice));
    view! {
        <div class="order-body">
            <p class="ordered">{ordered}</p><Minded/><div class="order-sheets"><Prices/><Days/></div><Form saving/>
        </div>
        // At the foot of the dialog, wherever that is scrolled to.
        <div class="order-foot">
            <p id="order-told" class="told" role="status" class:stop=move || saving.bad.get()>{move || saving.told.get()}</p>
            <div class="views" on:click=share inner_html=move || saving.sent.get()></div>
        </div>
    }
}

#[component]
fn Prices() -> impl IntoView {
    let desk = Desk::here();
    let lines =
        desk.peek(|snapshot, _| snapshot.built.as_ref().map(|built| price_lines(&built.price)).unwrap_or_default());
    let total = desk.peek(|snapshot, _| {
        snapshot.built.as_ref().map(|built| words::money(built.price.total_minor, &built.price.currency))
    });
    view! {
        <table>
            {inert("<caption>", Label::Price)}
            <tbody>
                {lines.into_iter().map(|(name, amount)| row(name.into(), amount)).collect_view()}
            </tbody>
            <tfoot>{row(Label::TotalWithTax.text().into(), total.unwrap_or_default())}</tfoot>
        </table>
    }
}

#[component]
fn Days() -> impl IntoView {
    let desk = Desk::here();
    let rows = desk.peek(|snapshot, range| {
        let promise = snapshot.built.as_ref().and_then(|built| built.promise.as_ref())?;
        let mut rows: Vec<(String, String)> = promise
            .stages
            .iter()
            .map(|days| {
                let stage = range.stages.iter().find(|stage| stage.key == days.stage);
                (stage.map(|stage| stage.name.clone()).unwrap_or_default(), words::day(days.free, desk.today()))
            })
            .collect();
        let carrier = range.carriers.iter().find(|carrier| carrier.key == promise.carrier);
        rows.push((
            carrier.map(|carrier| Message::BroughtBy(&carrier.name).text()).unwrap_or_default(),
            words::day(promise.arrives, desk.today()),
        ));
        Some(rows)
    });
    view! {
        <table>
            {inert("<caption>", Label::DoneBy)}
            <tbody>
                {rows.unwrap_or_default().into_iter().map(|(name, day)| row(name, day)).collect_view()}
            </tbody>
        </table>
    }
}

fn row(name: String, value: String) -> impl IntoView {
    view! { <tr><th scope="row">{name}</th><td>{value}</td></tr> }
}

#[component]
fn Form(saving: Saving) -> impl IntoView {
    let desk = Desk::here();
    saving.begin();
    let Saving { told, bad, busy, on_answer, .. } = saving;
    let [name, contact, address, remark] = desk.customer.0;
    let field = |label| inert("<span class=\"field-label\">", label);
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        if busy.get_untracked() {
            return;
        }
        bad.set(false);
        told.set(Label::WritingOrder.text().into());
        busy.set(true);
        orders::ask(Question::Write(desk.unit(), desk.customer.texts()), on_answer);
    };
    view! {
        // Enter goes on to what is still to be filled in, then saves.
        <form on:submit=submit on:keydown=|event| page::lead_to_missing(&event)>
            {inert("<p>", Label::ForTheDelivery)}
            <div class="fields">
                <label class="field">{field(Label::Name)}
                    <input name="name" autocomplete="name" required maxlength="100" bind:value=name/></label>
                <label class="field">{field(Label::Contact)}
                    <input name="contact" autocomplete="email" required maxlength="100" bind:value=contact/></label>
            </div>
            <label class="field">{field(Label::Address)}
                <textarea name="address" autocomplete="street-address" rows="3" required maxlength="600" bind:value=address></textarea></label>
            <label class="field">{field(Label::Remark)}
                <input name="remark" maxlength="500" bind:value=remark/></label>
            <button type="submit" class="main" aria-disabled=move || busy.get().to_string()>{Label::SaveOrder.text()}</button>
        </form>
    }
}

//! The order: what it costs, when it is there, for whom, and the file to take away.

use leptos::prelude::*;
use slotwright_core::words;
use slotwright_cutpack::describe::describe;

use crate::browser::orders::{self, Answer};
use crate::browser::{files, page};
use crate::state::Desk;
use crate::tally::price_lines;

/// The order as a dialog.
#[component]
pub fn Order(
    /// Whether it is open.
    open: RwSignal<bool>,
    /// Hears that it was closed.
    close: Callback<()>,
) -> impl IntoView {
    let dialog = NodeRef::<leptos::html::Dialog>::new();
    Effect::new(move |_| {
        if let Some(dialog) = dialog.get() {
            page::show(&dialog, open.get());
        }
    });
    let desk = Desk::here();
    let ordered = move || desk.peek(|known, range| describe(range, &known.choice));
    view! {
        <dialog node_ref=dialog class="order" aria-labelledby="order-title" on:close=move |_| close.run(())>
            <div class="order-head">
                <h2 id="order-title">"Order spec"</h2>
                <button type="button" on:click=move |_| close.run(())>"Close"</button>
            </div>
            {move || open.get().then(|| view! { <p class="ordered">{ordered()}</p><div class="order-sheets"><Prices/><Days/></div><Form/> })}
        </dialog>
    }
}

#[component]
fn Prices() -> impl IntoView {
    let desk = Desk::here();
    let lines = desk.peek(|known, _| known.built.as_ref().map(|built| price_lines(&built.price)).unwrap_or_default());
    let total = desk.peek(|known, _| {
        known.built.as_ref().map(|built| words::money(built.price.total_minor, &built.price.currency))
    });
    view! {
        <table>
            <caption>"Price"</caption>
            <tbody>
                {lines.into_iter().map(|(name, amount)| row(name.into(), amount)).collect_view()}
            </tbody>
            <tfoot><tr><th scope="row">"Total with tax"</th><td>{total}</td></tr></tfoot>
        </table>
    }
}

#[component]
fn Days() -> impl IntoView {
    let desk = Desk::here();
    let rows = desk.peek(|known, range| {
        let promise = known.built.as_ref().and_then(|built| built.promise.as_ref())?;
        let mut rows: Vec<(String, String)> = promise
            .stages
            .iter()
            .map(|days| {
                let stage = range.stages.iter().find(|stage| stage.key == days.stage);
                (stage.map(|stage| stage.name.clone()).unwrap_or_default(), words::day(days.free))
            })
            .collect();
        let carrier = range.carriers.iter().find(|carrier| carrier.key == promise.carrier);
        rows.push((carrier.map(|carrier| carrier.name.clone()).unwrap_or_default(), words::day(promise.arrives)));
        Some(rows)
    });
    view! {
        <table>
            <caption>"Done by"</caption>
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
fn Form() -> impl IntoView {
    let desk = Desk::here();
    let (told, bad) = (RwSignal::new(String::new()), RwSignal::new(false));
    let (name, contact) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let (address, remark) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let text = |signal: RwSignal<String>| signal.with_untracked(|text| text.trim().to_string());
        let note = desk.peek(|known, _| known.choice.to_note());
        let today = desk.today().to_string();
        let remark = text(remark).lines().collect::<Vec<_>>().join(" ");
        let customer = [text(name), text(contact), text(address)];
        let question = ["write".into(), desk.range_text(), note, today].into_iter().chain(customer).chain([remark]);
        let heard = move |answer| {
            let (good, said) = match answer {
                Answer::Bad(sentence) => (false, sentence),
                Answer::Good(file, text) => match files::download(&file, "application/json", &text) {
                    Some(()) => (true, format!("Saved as {file}. Send it to the workshop.")),
                    None => (false, "The browser did not let the file be saved.".into()),
                },
            };
            bad.set(!good);
            told.set(said);
            page::scroll_to("order-told");
        };
        told.set("Writing the order \u{2026}".into());
        orders::ask(question.collect(), Callback::new(heard));
    };
    view! {
        <form on:submit=submit>
            <p>"For the parcel only; it goes into the file and nowhere else. Nothing is sent or kept here."</p>
            <div class="fields">
                <label class="field"><span class="field-label">"Name"</span>
                    <input name="name" autocomplete="name" required maxlength="100" bind:value=name/></label>
                <label class="field"><span class="field-label">"E-mail or telephone"</span>
                    <input name="contact" autocomplete="email" required maxlength="100" bind:value=contact/></label>
            </div>
            <label class="field"><span class="field-label">"Address, up to six lines"</span>
                <textarea name="address" autocomplete="street-address" rows="3" required maxlength="600" bind:value=address></textarea></label>
            <label class="field"><span class="field-label">"Remark, if any"</span>
                <input name="remark" maxlength="500" bind:value=remark/></label>
            <button type="submit" class="main">"Save the order spec"</button>
            <p id="order-told" class="told" role="status" class:stop=move || bad.get()>{move || told.get()}</p>
        </form>
    }
}

//! The plinth: none, or how much of the height it is.

use leptos::prelude::*;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question;
use slotwright_core::range::Range;
use slotwright_core::solver::Answer;
use slotwright_core::words;
use slotwright_core::words::page::Label;

use super::ask::{AnswerRow, FindingNotices, Keep, Stop, shown};
use crate::parts::choices::AnswerView;
use crate::parts::inert;
use crate::state::Desk;

/// The plinth, where the model offers one.
#[component]
pub fn Plinth() -> impl IntoView {
    let desk = Desk::here();
    let offered = Memo::new(move |_| {
        desk.read(|snapshot, _| snapshot.options.as_ref().is_some_and(|options| !options.plinths.is_empty()))
    });
    view! {
        {move || offered.get().then(|| view! {
            <div class="asks">{inert("<h3>", Label::PlinthWithin)}<Keep question=|_| Question::Plinth/></div>
            <AnswerRow label=|_| Label::Plinth.text().into() pick=|options, _| &options.plinths show=plinth/>
        })}
        // A link may name a plinth all the same.
        <FindingNotices asked=|question| question == Question::Plinth/>
    }
}

fn plinth(_: &Range, answer: &Answer<Stop>) -> AnswerView {
    let Change::PlinthMm(plinth) = &answer.change else { return AnswerView::default() };
    shown(answer, plinth.map_or_else(|| Label::NoPlinth.text().into(), words::length))
}

//! The ends: square, or bowed, and which of them.

use leptos::prelude::*;
use slotwright_core::choice::Bowed;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question;
use slotwright_core::range::Range;
use slotwright_core::solver::{Answer, Size};
use slotwright_core::units::quantity::Dim;
use slotwright_core::words::page::Label;

use super::ask::{AnswerRow, FindingNotices, Keep, Stop, shown};
use super::size::SizeQuestion;
use crate::parts::choices::AnswerView;
use crate::parts::inert;
use crate::state::Desk;

/// How far the ends are bowed, where the model offers that; and which, once they are.
#[component]
pub fn Ends() -> impl IntoView {
    let desk = Desk::here();
    let offered = Memo::new(move |_| {
        desk.read(|snapshot, range| range.model(&snapshot.choice.model).is_some_and(|model| model.bow_mm.is_some()))
    });
    let bowed = Memo::new(move |_| desk.read(|snapshot, _| snapshot.choice.bow_mm != Dim::mm(0)));
    move || {
        if !offered.get() {
            // A link may name a bow all the same.
            return view! { <FindingNotices asked=|question| question == Question::Bow/> }.into_any();
        }
        view! {
            <SizeQuestion label=Label::Bow size=Size::Bow question=|_| Question::Bow asked=|question| question == Question::Bow/>
            {move || bowed.get().then(|| view! {
                <div class="asks">{inert("<h3>", Label::BowedEnds)}<Keep question=|_| Question::Bowed/></div>
                <AnswerRow label=|_| Label::BowedEnds.text().into() pick=|options, _| &options.bowed show=end/>
                <FindingNotices asked=|question| question == Question::Bowed/>
            })}
        }
        .into_any()
    }
}

fn end(_: &Range, answer: &Answer<Stop>) -> AnswerView {
    let Change::Bowed(bowed) = answer.change else { return AnswerView::default() };
    let label = match bowed {
        Bowed::Both => Label::BothEnds,
        Bowed::Left => Label::LeftEnd,
        Bowed::Right => Label::RightEnd,
    };
    shown(answer, label.text().into())
}

//! How it looks: finish, back, corners.

use leptos::prelude::*;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question;
use slotwright_core::range::{Look, Range};
use slotwright_core::solver::Answer;
use slotwright_core::units::quantity::Dim;
use slotwright_core::words::page::{Label, Message};

use super::ask::{AnswerRow, FindingNotices, Heading, Keep, Stop, shown};
use crate::parts::choices::AnswerView;
use crate::parts::inert;

/// Finish, back, corners.
#[component]
pub fn Looks() -> impl IntoView {
    view! {
        <section id="question-looks">
            <Heading number=4 title=Label::HowItLooks/>
            <div class="asks">{inert("<h3>", Label::Finish)}<Keep question=|_| Question::Finish/></div>
            <AnswerRow label=|_| Label::Finish.text().into() look="swatches" pick=|options, _| &options.finishes show=finish/>
            <FindingNotices asked=|question| question == Question::Finish/>
            <div class="asks">{inert("<h3>", Label::Back)}<Keep question=|_| Question::Back/></div>
            <AnswerRow label=|_| Label::Back.text().into() pick=|options, _| &options.backs show=back/>
            <FindingNotices asked=|question| question == Question::Back/>
            <div class="asks">{inert("<h3>", Label::Corners)}<Keep question=|_| Question::Corners/></div>
            <AnswerRow label=|_| Label::Corners.text().into() pick=|options, _| &options.corners show=corner/>
            <FindingNotices asked=|question| question == Question::Corners/>
        </section>
    }
}

fn finish(range: &Range, answer: &Answer<Stop>) -> AnswerView {
    let Change::Finish(key) = &answer.change else { return AnswerView::default() };
    let known = range.finish(key);
    let name = known.map_or_else(|| key.to_string(), |finish| finish.name.clone());
    AnswerView {
        swatch: known.map(|finish| finish.colour.clone()).unwrap_or_default(),
        clear: known.is_some_and(|finish| finish.look == Look::Clear),
        ..shown(answer, name)
    }
}

fn back(range: &Range, answer: &Answer<Stop>) -> AnswerView {
    let Change::Back(key) = &answer.change else { return AnswerView::default() };
    shown(answer, range.board(key).map_or_else(|| key.to_string(), |board| board.name.clone()))
}

fn corner(_: &Range, answer: &Answer<Stop>) -> AnswerView {
    let Change::CornerRadiusMm(radius) = &answer.change else { return AnswerView::default() };
    let square = *radius == Dim::mm(0);
    shown(answer, if square { Label::Square.text().into() } else { Message::Radius(*radius).text() })
}

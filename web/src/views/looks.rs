//! How it looks: finish, back, corners, ends.

use leptos::prelude::*;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question;
use slotwright_core::range::{Finish, Range};
use slotwright_core::solver::Answer;
use slotwright_core::units::decimal::Plain;
use slotwright_core::units::quantity::Dim;
use slotwright_core::words::page::{Label, Message};
use slotwright_cutpack::drawing::is_dark;

use super::ask::{AnswerRow, FindingNotices, Heading, Keep, Stop, shown};
use super::ends::Ends;
use crate::parts::choices::{AnswerView, Swatch};
use crate::parts::inert;

/// Finish, back, corners, ends.
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
            <Ends/>
        </section>
    }
}

fn finish(range: &Range, answer: &Answer<Stop>) -> AnswerView {
    let Change::Finish(key) = &answer.change else { return AnswerView::default() };
    let known = range.finish(key);
    let name = known.map_or_else(|| key.to_string(), |finish| finish.name.clone());
    AnswerView {
        swatch: known.map(|finish| Swatch {
            colour: finish.colour.clone(),
            grain: share(finish.shows(finish.dry_film()).sqrt()),
            bare: bare(finish),
            dark: is_dark(finish),
        }),
        ..shown(answer, name)
    }
}

/// How much bare wood is seen in the plies of an edge, as a style's share.
pub fn bare(finish: &Finish) -> String {
    share(finish.shows(finish.film_after()))
}

/// A share as a style says it.
fn share(share: f64) -> String {
    [Plain::of(share * 100.0, 0).to_string().as_str(), "%"].concat()
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

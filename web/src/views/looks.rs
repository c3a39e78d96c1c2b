//! How it looks: finish, back, corners.

use leptos::prelude::*;
use slotwright_core::change::Change;
use slotwright_core::options::Answer;
use slotwright_core::quantity::Dim;
use slotwright_core::question::Question;
use slotwright_core::range::{Look, Range};
use slotwright_core::words;

use super::ask::{Asked, Found, Heading, Keep, Stop, shown};
use crate::parts::choices::Shown;

/// Finish, back, corners.
#[component]
pub fn Looks() -> impl IntoView {
    view! {
        <section id="question-looks">
            <Heading number=4 title="How it looks"/>
            <div class="asks"><h3>"Finish"</h3><Keep question=|_| Question::Finish/></div>
            <Asked label=|_| "Finish".into() look="swatches" pick=|options, _| &options.finishes show=finish/>
            <Found asked=|question| question == Question::Finish/>
            <div class="asks"><h3>"Back"</h3><Keep question=|_| Question::Back/></div>
            <Asked label=|_| "Back".into() pick=|options, _| &options.backs show=back/>
            <Found asked=|question| question == Question::Back/>
            <div class="asks"><h3>"Corners of top and base"</h3><Keep question=|_| Question::Corners/></div>
            <Asked label=|_| "Corners of top and base".into() pick=|options, _| &options.corners show=corner/>
            <Found asked=|question| question == Question::Corners/>
        </section>
    }
}

fn finish(range: &Range, answer: &Answer<Stop>) -> Shown {
    let Change::Finish(key) = &answer.change else { return Shown::default() };
    let known = range.finish(key);
    let name = known.map_or_else(|| key.to_string(), |finish| finish.name.clone());
    Shown {
        swatch: known.map(|finish| finish.colour.clone()).unwrap_or_default(),
        clear: known.is_some_and(|finish| finish.look == Look::Clear),
        ..shown(answer, name)
    }
}

fn back(range: &Range, answer: &Answer<Stop>) -> Shown {
    let Change::Back(key) = &answer.change else { return Shown::default() };
    shown(answer, range.board(key).map_or_else(|| key.to_string(), |board| board.name.clone()))
}

fn corner(_: &Range, answer: &Answer<Stop>) -> Shown {
    let Change::CornerRadiusMm(radius) = &answer.change else { return Shown::default() };
    let label = if *radius == Dim::mm(0) { "Square".into() } else { format!("Radius {}", words::length(*radius)) };
    shown(answer, label)
}

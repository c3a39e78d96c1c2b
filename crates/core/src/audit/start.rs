//! The unit that each model begins with: it has to be one that can be made.

use super::{Remark, Said};
use crate::cabinet::assembly::Assembly;
use crate::cabinet::case::Case;
use crate::choice::Choice;
use crate::choice::question::Question;
use crate::range::{Model, Range};
use crate::rules::finding::Finding;
use crate::rules::{Proof, judge, prove};

pub(super) fn check(out: &mut Vec<Said>, range: &Range) {
    for model in &range.models {
        let Some(choice) = Choice::starting(model) else { continue };
        for finding in stops(range, &choice) {
            out.push((place(model, finding.about), Remark::StartStops(finding)));
        }
    }
}

/// What stops a choice, the proof of its assembly included.
fn stops(range: &Range, choice: &Choice) -> Vec<Finding> {
    let judged = judge(range, choice);
    let mut stops: Vec<Finding> = judged.stops().cloned().collect();
    if let Some((picked, layout)) = judged.picked.zip(judged.layout.as_ref()).filter(|_| stops.is_empty())
        && let Some(case) = Case::of(picked, choice, layout)
    {
        let assembly = Assembly::of(picked, &case);
        prove(&mut stops, Proof { assembly: &assembly, layout, build: &range.build });
    }
    stops
}

/// Where a range file says what a question is answered with to begin with.
fn place(model: &Model, about: Question) -> String {
    let of_model = |rest: &str| format!("model.{}.{rest}", model.key);
    match about {
        Question::Model | Question::Place | Question::Shares | Question::Bays => of_model("start_bays"),
        Question::Width => of_model("width_mm.start"),
        Question::Height => of_model("height_mm.start"),
        Question::Depth => of_model("depth_mm.start"),
        Question::Bay(bay) => of_model(&format!("start_bays.{bay}.fill")),
        Question::Hole(bay) => of_model(&format!("start_bays.{bay}.hole")),
        Question::Device(bay) => of_model(&format!("start_bays.{bay}.device")),
        Question::Back => of_model("backs.1"),
        Question::Finish => of_model("finishes.1"),
        Question::Corners => of_model("corner_radii_mm.1"),
        Question::Plinth => of_model("plinth_mm"),
        Question::Bow | Question::Bowed => of_model("bow_mm.start"),
    }
}

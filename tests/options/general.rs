//! The thinned range of a model as tables, for a general solver to find the same states: see `cpsat.py`.

use std::time::Instant;

use serde_json::{Value, json};
use slotwright_core::choice::Choice;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question;
use slotwright_core::solver::states::{State, states};

use crate::brute::{every, importance, thinned};

/// The tables have what a general solver needs; they are written to the file that `SLOTWRIGHT_PUZZLE` names.
#[test]
fn the_puzzle_is_whole() {
    let path = std::env::var("SLOTWRIGHT_PUZZLE").ok();
    let models: &[&str] = if path.is_some() { &["sedge", "teasel", "bulrush"] } else { &["bulrush"] };
    let puzzles: Vec<Value> = models.iter().map(|model| puzzle(model)).collect();
    for puzzle in &puzzles {
        let (cases, broken) = (puzzle["cases"].as_array().unwrap(), puzzle["broken"].as_array().unwrap());
        assert!(cases.len() >= 12 && broken.len() == 334_080, "{} of {}", cases.len(), broken.len());
        for case in cases {
            let now = usize::try_from(case["now"].as_u64().unwrap()).unwrap();
            assert_eq!(broken[now], 0, "it begins with what can be made");
            for answer in case["answers"].as_array().unwrap() {
                let from = usize::try_from(answer["from"].as_u64().unwrap()).unwrap();
                assert_eq!(answer["state"] == "open", broken[from] == 0, "{answer}");
            }
        }
    }
    if let Some(path) = path {
        std::fs::write(path, json!(puzzles).to_string()).unwrap();
    }
}

fn puzzle(model: &str) -> Value {
    let range = thinned(model);
    let every = every(&range);
    let place = |choice: &Choice| every.iter().position(|(known, _)| known == choice);
    let two: Vec<&Choice> =
        every.iter().filter(|(choice, broken)| *broken == 0 && choice.bays.len() == 2).map(|all| &all.0).collect();
    let cases = two.iter().step_by(two.len() / 12).map(|choice| {
        let began = Instant::now();
        let found = states(&range, choice, &[]).unwrap();
        let took = began.elapsed().as_secs_f64() * 1000.0;
        let answers = found.all().filter_map(|answer| {
            let from = place(&choice.with(&answer.change, &range))?;
            let shifts = |changes: &[Change]| {
                let mut own: Vec<u32> = changes.iter().filter_map(Change::question).map(importance).collect();
                own.sort_unstable();
                own.dedup();
                own
            };
            let (state, set) = match &answer.state {
                State::Open => ("open", Vec::new()),
                State::Shifts { changes, .. } => ("shifts", shifts(changes)),
                State::Shut { .. } => ("shut", Vec::new()),
                State::Unfound { .. } => ("unfound", Vec::new()),
            };
            let asked = answer.change.question().filter(|question| *question != Question::Model)?;
            Some(json!({ "asked": importance(asked), "from": from, "state": state, "set": set }))
        });
        json!({ "now": place(choice), "took_ms": took, "answers": answers.collect::<Vec<_>>() })
    });
    let broken: Vec<u64> = every.iter().map(|(_, broken)| *broken).collect();
    json!({ "model": model, "cases": cases.collect::<Vec<_>>(), "broken": broken })
}

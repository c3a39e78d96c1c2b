use super::*;
use crate::cabinet::blank::{Blanks, Coated};
use crate::rules::judge_stops;
use crate::rules::sample::{Wanted, choices};
use crate::testing::demo;

/// The rule at which the check of another one stands.
fn first(rule: Rule) -> Rule {
    match entry(rule).stage {
        Stage::Basics(With(first)) | Stage::Stops(With(first)) | Stage::Advice(With(first)) => first,
        Stage::Basics(By(_))
        | Stage::Stops(By(_))
        | Stage::StopsWhole(_)
        | Stage::Advice(By(_))
        | Stage::StopsAndAdvice(..)
        | Stage::Proof(_)
        | Stage::Order => rule,
    }
}

#[test]
fn a_check_finds_the_rules_that_stand_with_it_as_severe_as_they_say() {
    let range = demo();
    let mut met = Vec::new();
    for choice in choices(&range, 5, Wanted::Any).take(3000) {
        let judged = judge_stops(&range, &choice);
        let (picked, layout) = (judged.picked, judged.layout.as_ref());
        let basics = Basics { range: &range, choice: &choice, picked, layout };
        let mut check = |rule: &Rule, run: &dyn Fn(&mut Vec<Finding>)| {
            let mut out = Vec::new();
            run(&mut out);
            for found in out {
                assert_eq!(first(found.rule), *rule, "{found:?}");
                assert!(entry(found.rule).severities.iter().any(|(said, _)| *said == found.severity), "{found:?}");
                met.push(found.rule);
            }
        };
        for rule in Rule::ALL {
            if let Some(of_basics) = BASICS_OF.of(*rule) {
                check(rule, &|out| of_basics(out, basics));
            }
        }
        let Some((picked, layout)) = picked.zip(layout) else { continue };
        if judged.findings.iter().any(|found| found.rule.is_basic()) {
            continue;
        }
        let (blanks, coated) = (Blanks { picked, layout }.all(&choice), Coated::of(picked));
        let (cut, work) = (&core::cell::OnceCell::new(), &core::cell::OnceCell::new());
        let subject = Subject { picked, choice: &choice, layout, blanks: &blanks, coated, cut, work };
        for rule in Rule::ALL {
            for CheckLaidOut { check: of_subject, .. } in
                [STOPS_OF.of(*rule), ADVICE_OF.of(*rule)].into_iter().flatten()
            {
                check(rule, &|out| of_subject(out, subject));
            }
        }
    }
    met.sort_unstable();
    met.dedup();
    assert!(met.len() > 20, "{met:?}");
}

#[test]
fn the_basics_are_checked_first_and_the_proof_last() {
    let stage = |rule: &Rule| match entry(*rule).stage {
        Stage::Basics(_) => 0,
        Stage::Stops(_) | Stage::StopsWhole(_) | Stage::Advice(_) | Stage::StopsAndAdvice(..) => 1,
        Stage::Proof(_) => 2,
        Stage::Order => 3,
    };
    assert!(Rule::ALL.is_sorted_by_key(stage));
    // What can stop an order stands before what cannot, so that findings that stop come first.
    let advises = |rule: &Rule| matches!(entry(*rule).stage, Stage::Advice(_));
    assert!(Rule::ALL.iter().filter(|rule| stage(rule) == 1).is_sorted_by_key(advises));
}

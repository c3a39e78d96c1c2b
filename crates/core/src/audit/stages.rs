//! Stages: each kind of work in one of them.

use super::Said;
use crate::range::{Range, Work};

pub(super) fn check(out: &mut Vec<Said>, range: &Range) {
    for (word, work) in Work::ALL {
        let mut stages = range.stages.iter().filter(|stage| stage.work == work);
        let Some(first) = stages.next() else {
            let text = format!("no stage does the work \"{word}\", so no promise would count it; add one");
            out.push(("stage".into(), text));
            continue;
        };
        for other in stages {
            let text = format!(
                "stage \"{}\" does the work \"{word}\" already; it would be counted twice. Keep one of them",
                first.key
            );
            out.push((format!("stage.{}.work", other.key), text));
        }
    }
}

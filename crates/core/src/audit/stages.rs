//! Stages: each kind of work in one of them.

use super::{Remark, Said};
use crate::range::{Range, Work};

pub(super) fn check(out: &mut Vec<Said>, range: &Range) {
    for (word, work) in Work::ALL {
        let mut stages = range.stages.iter().filter(|stage| stage.work == work);
        let Some(first) = stages.next() else {
            out.push(("stage".into(), Remark::NoStage { work: word }));
            continue;
        };
        for other in stages {
            let remark = Remark::StageAgain { work: word, first: first.key.clone() };
            out.push((format!("stage.{}.work", other.key), remark));
        }
    }
}

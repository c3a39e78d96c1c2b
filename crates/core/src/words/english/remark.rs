//! What an audit says to a workshop of its range file. As beside every place of such a file, without a capital and a stop.

use super::LOCALE;
use crate::words::finding::reason;
use crate::words::remark::{Remark, Typo};

pub(in crate::words) fn remark(remark: &Remark) -> String {
    match remark {
        Remark::StartStops(finding) => {
            format!("this model cannot be made as it begins: {}", reason(LOCALE, finding))
        }
        Remark::NoStage { work } => format!("no stage does the work \"{work}\", so no promise would count it; add one"),
        Remark::StageAgain { work, first } => {
            format!("stage \"{first}\" does the work \"{work}\" already; it would be counted twice. Keep one of them")
        }
        Remark::BoardUnused => {
            "no model is made of this board; name it in a model's `body` or `backs`, or take it out".into()
        }
        Remark::FinishUnused => "no model comes in this finish; name it in a model's `finishes`, or take it out".into(),
        Remark::PlugPassesNone { gives, needs } => format!(
            "this plug passes none of the holes: the best has {} for it, it needs {}",
            LOCALE.distance(*gives),
            LOCALE.distance(*needs)
        ),
        Remark::HolePassesNone => "none of the plugs passes this hole; make it larger".into(),
        Remark::AnswerNeverMade => "no unit of this model can be made with it, whatever else is chosen".into(),
        Remark::HoleWithoutRoom => "no bay of any model has room for this hole, whatever else is chosen".into(),
        Remark::DeviceWithoutRoom => "no bay of any model has room for this device, whatever else is chosen".into(),
    }
}

pub(in crate::words) fn typo(typo: Typo<'_>) -> String {
    match typo {
        Typo::NoQuote(mark) => format!("{mark} is no quotation mark here: write \" before and after"),
        Typo::Comma(whole, rest) => format!("{whole},{rest} has a comma for its decimals: write {whole}.{rest}"),
        Typo::Bare(shown) => format!("a text stands in quotation marks: write {shown:?}"),
    }
}

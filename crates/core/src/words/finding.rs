//! Findings as sentences: what stops an order, and what is good to know.

use super::{LOCALE, part, question};
use crate::finding::{Finding, Limit, Severity, Unit};
use crate::question::Question;
use crate::rules::Rule;

/// The sentence of any finding.
pub fn sentence(finding: &Finding) -> String {
    match finding.severity {
        Severity::Stops => reason(finding),
        Severity::Warns | Severity::Advises => advice(finding).unwrap_or_else(|| figures(finding)),
    }
}

/// The sentence of a finding that stops the order.
pub fn reason(finding: &Finding) -> String {
    stop(finding).unwrap_or_else(|| figures(finding))
}

/// What is left to say where the table of rules and the sentences below differ: a test holds that they do not.
fn figures(finding: &Finding) -> String {
    let (found, allowed) = LOCALE.found_and_allowed(finding);
    format!("Of {} there is {found}; {} {allowed}.", question(finding.about), bound(finding.limit))
}

/// The sentence of a finding that warns or advises; `None` if its rule does not.
fn advice(finding: &Finding) -> Option<String> {
    let ((found, allowed), about) = (LOCALE.found_and_allowed(finding), question(finding.about));
    Some(match finding.rule {
        Rule::PartMass if finding.severity == Severity::Warns => {
            format!("The {} weighs {found}; two people lift {allowed}: it needs three, or a smaller unit.", parts(finding))
        }
        Rule::TopMoisture => format!("In dry or damp air the joints of the top could lack {found}; {allowed} is the limit."),
        Rule::PartMass => {
            format!("The {} weighs {found}, over {allowed}: lift it with two people.", parts(finding))
        }
        Rule::WallTether if finding.found.unit == Unit::N => format!(
            "A push of {found} at its top tips it; under {allowed} it has to be fastened to the wall: children climb."
        ),
        Rule::WallTether if finding.severity == Severity::Warns => format!(
            "It has to be fastened to the wall: a child who climbs it, or a usual test, would tip it, by {found}."
        ),
        Rule::WallTether if finding.found.unit == Unit::Mm => {
            format!(
                "It is {found} high, over {allowed}: fasten it to the wall; children climb, and furniture that tips over can kill."
            )
        }
        Rule::WallTether => {
            "Fasten it to the wall with the tether that comes with it: children climb, and furniture that tips over can kill."
                .into()
        }
        Rule::JointFit => {
            format!("Of the joints of its {} {found} may be tight or loose; {allowed} is usual.", parts(finding))
        }
        Rule::PartLength => {
            format!("The {} is {found} long, over {allowed}: lift it with two people.", parts(finding))
        }
        Rule::Package if finding.found.unit == Unit::Kg => {
            format!(
                "Packed, the {} weighs {found}; carriers lift {allowed}: take three people, or a smaller unit.",
                parts(finding)
            )
        }
        Rule::Package => {
            format!("A package of {found} is more than carriers take as usual: the workshop will ask you.")
        }
        Rule::LeafGap => format!("The gap round doors is {found}; usually {} {allowed}.", bound(finding.limit)),
        Rule::LeafGrip if finding.found.value <= 0.0 => {
            format!("The door of {about} has nothing to open it by: a finger hole of {allowed} or more is usual.")
        }
        Rule::LeafGrip => {
            format!("The finger hole in the door of {about} is {found} wide: {allowed} or more is usual.")
        }
        Rule::LeafSwing => {
            format!("Opened {found}, the door of {about} and the one left of it touch; {allowed} is usual.")
        }
        Rule::DeviceShut => format!("Leave the door open while the {about} is on: it wants air."),
        Rule::DeviceCable => format!("The {about} has no cable hole behind it."),
        Rule::CableBend => format!("Behind the back there are {found} for cables; this one wants {allowed} to turn."),
        Rule::FinishEdges => format!("This light finish has {found} coats; edges want {allowed}."),
        Rule::FinishSun => {
            format!(
                "This finish throws back {found} of the light, below {allowed}: keep it out of full sun, where it grows hot."
            )
        }
        Rule::ScreenFeet => {
            format!("Under the screen's feet the top would bend {found} over the years; {allowed} is the limit.")
        }
        // An answer that would break one of these is shut for it: the page says so too.
        Rule::ScreenWidth | Rule::WallWidth | Rule::ViewingHeight => return stop(finding),
        Rule::Known
        | Rule::SizeLimit
        | Rule::SizeStep
        | Rule::FitOutCount
        | Rule::BayShare
        | Rule::BayRoom
        | Rule::RowRoom
        | Rule::DepthRoom
        | Rule::SheetFit
        | Rule::ShelfSag
        | Rule::TopSag
        | Rule::BaseSag
        | Rule::ShelfSlot
        | Rule::LeafShape
        | Rule::LeafMass
        | Rule::HolePlug
        | Rule::HoleEdge
        | Rule::HoleStile
        | Rule::HoleShelf
        | Rule::DeviceWidth
        | Rule::DeviceHeight
        | Rule::DeviceDepth
        | Rule::ShelfEar
        | Rule::LeafPivot
        | Rule::UprightBuckling
        | Rule::TipOver
        | Rule::Interlock
        | Rule::OrderDay
        | Rule::PromiseDay
        | Rule::NoParts => return None,
    })
}

/// The sentence of a finding that stops the order; `None` if its rule never does. Apart from advice, whose sentences
/// the page does without.
fn stop(finding: &Finding) -> Option<String> {
    let ((found, allowed), about) = (LOCALE.found_and_allowed(finding), question(finding.about));
    let bound = bound(finding.limit);
    Some(match finding.rule {
        Rule::Known => format!("This {about} is not in the range."),
        Rule::SizeLimit => format!("The {about} is {found}; {bound} {allowed}."),
        Rule::SizeStep => format!("The {about} of {found} is between sizes; they go in steps of {allowed}."),
        Rule::FitOutCount => match finding.about {
            Question::Bays => format!("{found} bays are too {}; {bound} {allowed}.", much(finding.limit)),
            _ if finding.parts.is_empty() => format!("In {about} there would be {found} shelves; {bound} {allowed}."),
            _ => format!("Up to {about} there would be {found} doors; {bound} {allowed}."),
        },
        Rule::BayShare => format!("The share of {about} is {found}; {bound} {allowed}."),
        Rule::BayRoom => format!("Inside, {about} would be {found} wide; {bound} {allowed}."),
        Rule::RowRoom => match finding.about {
            Question::Height => format!("Inside it would be {found} high; {bound} {allowed}."),
            _ => format!("Rows in {about} would be {found} high; {bound} {allowed}."),
        },
        Rule::DepthRoom => format!("Inside it would be {found} deep; {bound} {allowed}."),
        Rule::SheetFit => format!("The {} would measure {found}; a sheet gives {allowed}.", parts(finding)),
        Rule::ShelfSag => format!("A shelf in {about} would bend {found} over the years; {allowed} is the limit."),
        Rule::BaseSag => format!("The base under {about} would bend {found} over the years; {allowed} is the limit."),
        Rule::TopSag => format!("The top over {about} would bend {found} over the years; {allowed} is the limit."),
        Rule::ShelfSlot => {
            format!("Shelf slots left and right of {about} would leave {found} of wood; {bound} {allowed}.")
        }
        Rule::LeafShape if finding.found.unit == Unit::Mm => {
            format!("The door of {about} would be {found} wide; {bound} {allowed}.")
        }
        Rule::LeafShape => format!("The door of {about} would be {found}, width to height; {bound} {allowed}."),
        Rule::LeafMass => format!("The door of {about} would weigh {found}; its pivots carry {allowed}."),
        Rule::HolePlug => format!("The {about} is {found} wide; the plug needs {allowed}."),
        Rule::HoleEdge if finding.found.value < 0.0 => format!("The {about} would run out of the bay."),
        Rule::HoleEdge => format!("The {about} would leave {found} of wood beside it; {bound} {allowed}."),
        Rule::HoleStile => format!("The {about} would stand behind a stile."),
        Rule::HoleShelf if finding.found.value < 0.0 => format!("A shelf would stand before the {about}."),
        Rule::HoleShelf => format!("A shelf would be {found} from the {about}; {bound} {allowed}."),
        Rule::DeviceWidth => format!("For the {about} there are {found} of width; it needs {allowed}."),
        Rule::DeviceHeight => format!("For the {about} there are {found} of height; with air it needs {allowed}."),
        Rule::DeviceDepth => format!("For the {about} there are {found} of depth; with plugs it needs {allowed}."),
        Rule::PartMass => format!("The {} would weigh {found}; three people carry {allowed}.", parts(finding)),
        Rule::Interlock => {
            format!("{found} parts do not hold together: this is an error of ours. Please tell the workshop.")
        }
        Rule::PromiseDay => {
            format!(
                "It takes {found} working days until it is there; the calendar has {allowed}. Please ask the workshop."
            )
        }
        Rule::NoParts => "No parts come of this: an error of ours. Please tell the workshop.".into(),
        Rule::JointFit => format!("In this finish {found} of its joints would not go in; {bound} {allowed}."),
        Rule::ShelfEar => format!("The ears of a shelf in {about} would bear {found}; {bound} {allowed}."),
        Rule::LeafPivot => format!("The pivots of the door of {about} would bear {found}; {bound} {allowed}."),
        Rule::UprightBuckling => {
            format!("The {} bears its load {found} before bending out; {bound} {allowed}.", parts(finding))
        }
        Rule::TipOver => format!("Empty, with its doors open, it could tip over: held {found}; {bound} {allowed}."),
        Rule::OrderDay => {
            let ago = if finding.found.value > 1.0 { format!("{found} days") } else { "a day".into() };
            format!(
                "This range takes orders no more: its last day was {ago} earlier. Ask the workshop for the present one."
            )
        }
        // These stop no order, but what would break them is not offered.
        Rule::ScreenWidth => format!("The screen is {found} wide and stands over: the top is {allowed}."),
        Rule::WallWidth => format!("The unit is {found} wide; the wall has {allowed}."),
        Rule::ViewingHeight => {
            format!("The middle of the screen would be {found} up; for seated eyes {bound} {allowed}.")
        }
        Rule::PartLength
        | Rule::TopMoisture
        | Rule::Package
        | Rule::LeafGap
        | Rule::LeafSwing
        | Rule::LeafGrip
        | Rule::DeviceShut
        | Rule::DeviceCable
        | Rule::CableBend
        | Rule::FinishEdges
        | Rule::FinishSun
        | Rule::ScreenFeet
        | Rule::WallTether => return None,
    })
}

fn bound(limit: Limit) -> &'static str {
    match limit {
        Limit::AtMost => "the most is",
        Limit::AtLeast => "the least is",
        Limit::OneOf => "there are",
    }
}

fn much(limit: Limit) -> &'static str {
    match limit {
        Limit::AtLeast => "few",
        Limit::AtMost | Limit::OneOf => "many",
    }
}

fn parts(finding: &Finding) -> String {
    match finding.parts.as_slice() {
        [] => "part".into(),
        [one] => part(*one),
        [first, ..] => format!("{} and others", part(*first)),
    }
}

#[cfg(test)]
mod tests;

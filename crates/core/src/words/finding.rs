//! Findings as sentences: what stops an order, and what is good to know.

use super::{figure, part, question};
use crate::finding::{Finding, Limit, Question, Severity, Unit};
use crate::rules::Rule;

/// The sentence of any finding.
pub fn sentence(finding: &Finding) -> String {
    let (found, allowed, about) = (figure(finding.found), figure(finding.allowed), question(finding.about));
    if finding.severity == Severity::Stops {
        return reason(finding);
    }
    match finding.rule {
        Rule::PartMass => format!("The {} weighs {found}: lift it with two people.", parts(finding)),
        Rule::WallTether if finding.severity == Severity::Warns => {
            format!("It has to be fastened to the wall with its tether: pushed as in a test it would tip, by {found}.")
        }
        Rule::WallTether => "Fasten it to the wall with the tether that comes with it: furniture can tip over.".into(),
        Rule::JointFit => {
            format!(
                "Of the joints of its {} {found} may be tighter or looser than wanted; {allowed} is usual.",
                parts(finding)
            )
        }
        Rule::PartLength => format!("The {} is {found} long: lift it with two people.", parts(finding)),
        Rule::Package => {
            format!("A package of {found} is more than carriers take as usual: the workshop will ask you.")
        }
        Rule::LeafGap => format!("The gap round doors is {found}; {} {allowed} is usual.", bound(finding.limit)),
        Rule::LeafGrip if finding.found.value <= 0.0 => {
            format!("The door of {about} has nothing to open it by: a finger hole of {allowed} or more is usual.")
        }
        Rule::LeafGrip => {
            format!("The finger hole in the door of {about} is {found} wide: {allowed} or more is usual.")
        }
        Rule::LeafSwing => format!("The door of {about} and the one left of it touch when both are open {found}."),
        Rule::DeviceShut => format!("Leave the door open while the {about} is on: it wants air."),
        Rule::DeviceCable => format!("The {about} has no cable hole behind it."),
        Rule::CableBend => format!("Behind the back there are {found} for cables; this one wants {allowed} to turn."),
        Rule::FinishEdges => format!("This light finish has {found} coats; edges want {allowed}."),
        Rule::FinishSun => "A dark finish grows hot in full sun: better keep it in the shade.".into(),
        Rule::ScreenFeet => {
            format!("Under the screen's feet the top would bend {found} over the years; {allowed} is the limit.")
        }
        _ => reason(finding),
    }
}

/// The sentence of a finding that stops the order.
pub fn reason(finding: &Finding) -> String {
    let (found, allowed) = (figure(finding.found), figure(finding.allowed));
    let about = question(finding.about);
    let bound = bound(finding.limit);
    match finding.rule {
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
        Rule::PartMass => format!("The {} would weigh {found}; two people carry {allowed}.", parts(finding)),
        Rule::Interlock => {
            format!("{found} parts do not hold together: this is an error of ours. Please tell the workshop.")
        }
        Rule::JointFit => format!("In this finish {found} of its joints would not go in; {bound} {allowed}."),
        Rule::ShelfEar => format!("The ears of a shelf in {about} would bear {found}; {bound} {allowed}."),
        Rule::LeafPivot => format!("The pivots of the door of {about} would bear {found}; {bound} {allowed}."),
        Rule::UprightBuckling => {
            format!("The {} would carry its load only {found} before it bends out; {bound} {allowed}.", parts(finding))
        }
        Rule::Lean => format!("Pushed at the top it would lean {found}; {bound} {allowed}."),
        Rule::TipOver => format!("Empty, with its doors open, it could tip over: held {found}; {bound} {allowed}."),
        // These stop no order, but what would break them is not offered.
        Rule::ScreenWidth => format!("The screen is {found} wide and stands over: the top is {allowed}."),
        Rule::WallWidth => format!("The unit is {found} wide; the wall has {allowed}."),
        Rule::ViewingHeight => {
            let way = if finding.limit == Limit::AtMost { "high" } else { "low" };
            format!("The middle of the screen would be {found} up, which is {way} for seated eyes.")
        }
        // The others never stop an order.
        _ => String::new(),
    }
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

//! Findings: what stops an order, and what is good to know. What, by how much, the limit; the customer's words, no blame.

use super::LOCALE;
use super::count::{counted, number_of_first};
use super::name::{all_parts, parts, question, the_parts};
use crate::cabinet::panel::PanelId;
use crate::choice::question::Question;
use crate::rules::Rule;
use crate::rules::finding::{Finding, Limit, Severity, Unit};

pub(in crate::words) fn figures(finding: &Finding) -> String {
    let ((found, allowed), about) = (LOCALE.found_and_allowed(finding), question(finding.about));
    match finding.limit {
        Limit::AtMost => format!("Of {about} there is {found}; the most is {allowed}."),
        Limit::AtLeast => format!("Of {about} there is {found}; the least is {allowed}."),
        Limit::OneOf => format!("Of {about} there is {found}; there are {allowed}."),
    }
}

pub(in crate::words) fn advice(finding: &Finding) -> Option<String> {
    let ((found, allowed), about) = (LOCALE.found_and_allowed(finding), question(finding.about));
    let is_least = finding.limit == Limit::AtLeast;
    Some(match finding.rule {
        Rule::PartMass if finding.severity == Severity::Warns => {
            format!(
                "{} weighs {found}; two people lift {allowed}: it needs three, or a smaller unit.",
                the_parts(&finding.parts)
            )
        }
        Rule::PartMoisture => {
            format!(
                "In dry or damp air the joints of the {} could lack {found}; {allowed} is the limit.",
                parts(&finding.parts)
            )
        }
        Rule::PartMass => {
            format!("{} weighs {found}, over {allowed}: lift it with two people.", the_parts(&finding.parts))
        }
        // An answer that would break one of these is shut for it: the page says so too.
        Rule::ScreenWidth | Rule::WallWidth | Rule::ViewingHeight => return stop(finding),
        Rule::WallTether => tether(finding, &found, &allowed),
        Rule::JointFit => {
            format!("Of the joints of its {} {found} may be tight or loose; {allowed} is usual.", parts(&finding.parts))
        }
        Rule::PartLength => long(finding, &found, &allowed),
        Rule::Package if finding.found.unit == Unit::Kg => package(finding, &found, &allowed),
        Rule::Package => {
            format!("A package of {found} is more than carriers take as usual: the workshop will ask you.")
        }
        Rule::LeafGap if is_least => format!("The gap round doors is {found}; usually the least is {allowed}."),
        Rule::LeafGap => format!("The gap round doors is {found}; usually the most is {allowed}."),
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
        Rule::SheetUse => {
            format!(
                "One of its sheets is used by {found} only, less than {allowed}: a little smaller, it may need none."
            )
        }
        Rule::FinishEdges => {
            format!("This light finish has {}; edges want {allowed}.", counted(&found, "coat", "coats"))
        }
        Rule::FinishSun => {
            format!(
                "This finish throws back {found} of the light, below {allowed}: keep it out of full sun, where it grows hot."
            )
        }
        Rule::ScreenFeet => {
            format!("Under the screen's feet the top would bend {found} over the years; {allowed} is the limit.")
        }
        Rule::Known
        | Rule::SizeLimit
        | Rule::SizeStep
        | Rule::FitOutCount
        | Rule::BayShare
        | Rule::BayRoom
        | Rule::RowRoom
        | Rule::DepthRoom
        | Rule::HookRoom
        | Rule::BowRoom
        | Rule::CeilingHeight
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
        | Rule::Knock
        | Rule::Slender
        | Rule::TipOver
        | Rule::Interlock
        | Rule::Headroom
        | Rule::AtOnce
        | Rule::OrderDay
        | Rule::PromiseDay
        | Rule::NoParts => return None,
    })
}

/// Why a package is too heavy, and what helps: a carrier takes no more whoever lifts it, and more people lift more.
/// Parts that are long, the longest first: several are counted, and the longest is named.
fn long(finding: &Finding, found: &str, allowed: &str) -> String {
    match finding.parts.as_slice() {
        [] | [_] => format!("{} is {found} long, over {allowed}: lift it with two people.", the_parts(&finding.parts)),
        [longest, ..] => format!(
            "{} are over {allowed} long, {} {found}: lift each with two people.",
            number_of_first(u8::try_from(finding.parts.len()).unwrap_or(u8::MAX), "part", "parts"),
            all_parts(&[*longest]),
        ),
    }
}

fn package(finding: &Finding, found: &str, allowed: &str) -> String {
    let weighs = if finding.parts.len() > 1 { "weigh" } else { "weighs" };
    let what = format!("{} {weighs} {found} packed", the_parts(&finding.parts));
    match finding.lifted_by {
        None => {
            format!("{what}; the carrier takes {allowed}: take a smaller unit, or ask.")
        }
        Some(0 | 1) => {
            format!("{what}; one person lifts {allowed}: take two, or a smaller unit.")
        }
        Some(2) => {
            format!("{what}; two people lift {allowed}: take three, or a smaller unit.")
        }
        Some(_) => format!("{what}; three people lift {allowed}: take a smaller unit."),
    }
}

/// Why a unit is fastened to the wall.
fn tether(finding: &Finding, found: &str, allowed: &str) -> String {
    if finding.found.unit == Unit::N {
        format!(
            "Pushed at its top with {found} it begins to tip; under {allowed} it must be fastened to the wall: children climb."
        )
    } else if finding.found.unit == Unit::Nm {
        // By how much, in newton metres, says nothing to a customer; the finding has it.
        "It has to be fastened to the wall: a child who climbs it, or the load of a usual test, would tip it.".into()
    } else if finding.found.unit == Unit::Mm {
        format!(
            "It is {found} high, over {allowed}: fasten it to the wall; children climb, and furniture that tips over can kill."
        )
    } else {
        "Fasten it to the wall with the tethers that come with it: children climb, and furniture that tips over can kill."
            .into()
    }
}

/// Too many or too few bays, shelves or doors.
fn fit_out(finding: &Finding, found: &str, allowed: &str) -> String {
    let (about, is_least) = (question(finding.about), finding.limit == Limit::AtLeast);
    let bays = counted(found, "bay is", "bays are");
    let shelves = counted(found, "shelf", "shelves");
    match (finding.about == Question::Bays, finding.parts.is_empty(), is_least) {
        (true, _, true) => format!("{bays} too few; the least is {allowed}."),
        (true, _, false) => format!("{bays} too many; the most is {allowed}."),
        // Its part is the door that is one too many.
        (false, false, _) => {
            format!("Up to {about} there would be {}; the most is {allowed}.", counted(found, "door", "doors"))
        }
        (false, true, true) => format!("In {about} there would be {shelves}; the least is {allowed}."),
        (false, true, false) => format!("In {about} there would be {shelves}; the most is {allowed}."),
    }
}

#[expect(clippy::too_many_lines, reason = "a sentence for each rule")]
pub(in crate::words) fn stop(finding: &Finding) -> Option<String> {
    let ((found, allowed), about) = (LOCALE.found_and_allowed(finding), question(finding.about));
    // Where a rule has a least and a most there are two sentences.
    let is_least = finding.limit == Limit::AtLeast;
    Some(match finding.rule {
        Rule::Known => format!("This {about} is not in the range."),
        Rule::SizeLimit if is_least => format!("The {about} is {found}; the least is {allowed}."),
        Rule::SizeLimit => format!("The {about} is {found}; the most is {allowed}."),
        Rule::SizeStep => format!("The {about} of {found} is between sizes; they go in steps of {allowed}."),
        Rule::FitOutCount => fit_out(finding, &found, &allowed),
        Rule::BayShare if is_least => format!("The share of {about} is {found}; the least is {allowed}."),
        Rule::BayShare => format!("The share of {about} is {found}; the most is {allowed}."),
        Rule::BayRoom => format!("Inside, {about} would be {found} wide; the least is {allowed}."),
        Rule::RowRoom if finding.about == Question::Height => {
            format!("Inside it would be {found} high; the least is {allowed}.")
        }
        Rule::RowRoom => format!("Rows in {about} would be {found} high; the least is {allowed}."),
        Rule::DepthRoom => format!("Inside it would be {found} deep; the least is {allowed}."),
        Rule::HookRoom => {
            format!("Each hook of the back would have {found} of the height; the least is {allowed}.")
        }
        Rule::BowRoom => format!("Along a bowed end {found} staves could stand; the least is {allowed}."),
        Rule::CeilingHeight => {
            format!("While it is put together a part is lifted to {found}; the ceiling is {allowed} up.")
        }
        Rule::SheetFit => format!("{} would measure {found}; a sheet gives {allowed}.", the_parts(&finding.parts)),
        Rule::ShelfSag => format!("A shelf in {about} would bend {found} over the years; {allowed} is the limit."),
        Rule::BaseSag => format!("The base under {about} would bend {found} over the years; {allowed} is the limit."),
        Rule::TopSag => format!("The top over {about} would bend {found} over the years; {allowed} is the limit."),
        Rule::ShelfSlot => {
            format!("Shelf slots left and right of {about} would leave {found} of wood; the least is {allowed}.")
        }
        Rule::LeafShape if finding.found.unit == Unit::Mm => {
            format!("The door of {about} would be {found} wide; the least is {allowed}.")
        }
        Rule::LeafShape if is_least => {
            format!("The door of {about} would be {found}, width to height; the least is {allowed}.")
        }
        Rule::LeafShape => format!("The door of {about} would be {found}, width to height; the most is {allowed}."),
        Rule::LeafMass => format!("The door of {about} would weigh {found}; its pivots carry {allowed}."),
        Rule::HolePlug => format!("The {about} is {found} wide; the plug needs {allowed}."),
        Rule::HoleEdge if finding.found.value < 0.0 => format!("The {about} would run out of the bay."),
        Rule::HoleEdge => format!("The {about} would leave {found} of wood beside it; the least is {allowed}."),
        Rule::HoleStile if matches!(finding.parts.as_slice(), [PanelId::Leaf(_)]) => {
            format!("The {about} would stand behind the open door or its stop.")
        }
        Rule::HoleStile => format!("The {about} would stand behind a stile."),
        Rule::HoleShelf if finding.found.value < 0.0 => format!("A shelf would stand before the {about}."),
        Rule::HoleShelf => format!("A shelf would be {found} from the {about}; the least is {allowed}."),
        Rule::DeviceWidth => format!("For the {about} there are {found} of width; it needs {allowed}."),
        Rule::DeviceHeight => format!("For the {about} there are {found} of height; with air it needs {allowed}."),
        Rule::DeviceDepth => format!("For the {about} there are {found} of depth; with plugs it needs {allowed}."),
        Rule::PartMass => format!("{} would weigh {found}; three people carry {allowed}.", the_parts(&finding.parts)),
        Rule::Interlock => {
            let parts = counted(&found, "part does", "parts do");
            format!("{parts} not hold together: this is an error of ours. Please tell the workshop.")
        }
        Rule::AtOnce => {
            format!(
                "As it goes in, the {} would meet {found} joints at once; the most is {allowed}.",
                parts(&finding.parts)
            )
        }
        Rule::Headroom => {
            format!(
                "While it is put together a part is lifted to {found}; the most is {allowed}. Please tell the workshop."
            )
        }
        Rule::PromiseDay if is_least => {
            "No day is left on which the workshop works and the carrier collects. Please ask the workshop.".into()
        }
        Rule::PromiseDay => {
            let days = counted(&found, "working day", "working days");
            format!("It takes {days} until it is there; the calendar has {allowed}. Please ask the workshop.")
        }
        Rule::NoParts => "No parts come of this: an error of ours. Please tell the workshop.".into(),
        Rule::JointFit => format!("In this finish {found} of its joints would not go in; the most is {allowed}."),
        Rule::ShelfEar => format!("The ears of a shelf in {about} would bear {found}; the most is {allowed}."),
        Rule::LeafPivot => format!("The pivots of the door of {about} would bear {found}; the most is {allowed}."),
        Rule::UprightBuckling => {
            format!("{} bears its load {found} before bending out; the least is {allowed}.", the_parts(&finding.parts))
        }
        Rule::Knock => {
            format!("A knock, or its load, would stress {} by {found}; the most is {allowed}.", parts(&finding.parts))
        }
        Rule::Slender => {
            format!("{} would bend {found} under a small push; {allowed} is the limit.", the_parts(&finding.parts))
        }
        // The parts are its doors.
        Rule::TipOver if finding.parts.is_empty() => {
            format!("Empty, it could tip over: held {found}; the least is {allowed}.")
        }
        Rule::TipOver => {
            format!("Empty, with its doors open, it could tip over: held {found}; the least is {allowed}.")
        }
        Rule::OrderDay => format!(
            "This range takes orders no more: its last day was {} earlier. Ask the workshop for the present one.",
            counted(&found, "day", "days")
        ),
        // These stop no order, but what would break them is not offered.
        Rule::ScreenWidth => format!("The screen is {found} wide; the top under it is only {allowed} wide."),
        Rule::WallWidth => format!("The unit is {found} wide; the wall has {allowed}."),
        Rule::ViewingHeight if is_least => {
            format!("The middle of the screen would be {found} up; for seated eyes the least is {allowed}.")
        }
        Rule::ViewingHeight => {
            format!("The middle of the screen would be {found} up; for seated eyes the most is {allowed}.")
        }
        Rule::PartLength
        | Rule::PartMoisture
        | Rule::Package
        | Rule::LeafGap
        | Rule::LeafSwing
        | Rule::LeafGrip
        | Rule::DeviceShut
        | Rule::DeviceCable
        | Rule::CableBend
        | Rule::SheetUse
        | Rule::FinishEdges
        | Rule::FinishSun
        | Rule::ScreenFeet
        | Rule::WallTether => return None,
    })
}

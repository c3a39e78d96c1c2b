//! A unit in a few sentences, for those who do not see the drawing and for documents.

use slotwright_core::choice::{Bay, Choice};
use slotwright_core::range::Range;
use slotwright_core::units::quantity::Dim;
use slotwright_core::words::picture::{BayTold, UnitTold};

/// The unit as it stands: model, size, bays with their fit-out, finish.
pub fn describe(range: &Range, choice: &Choice) -> String {
    let model = range.model(&choice.model).map_or(choice.model.as_str(), |model| &model.name);
    let finish = range.finish(&choice.finish).map_or(choice.finish.as_str(), |finish| &finish.name);
    let bays: Vec<BayTold<'_>> = choice.bays.iter().take(12).map(|bay| told(range, bay)).collect();
    let told = UnitTold {
        model,
        width: choice.width_mm,
        height: choice.height_mm,
        depth: choice.depth_mm,
        bays: &bays,
        finish,
        bow: (choice.bow_mm != Dim::mm(0)).then_some((choice.bow_mm, choice.bowed)),
        plinth: choice.plinth_mm,
        screen_tenth_inch: choice.place.screen_tenth_inch,
    };
    told.text()
}

/// What each bay holds, from the left.
pub fn bays(range: &Range, choice: &Choice) -> Vec<String> {
    choice.bays.iter().map(|bay| told(range, bay).text()).collect()
}

fn told<'a>(range: &'a Range, bay: &'a Bay) -> BayTold<'a> {
    let hole = bay.hole.as_ref().map(|hole| {
        let kind = range.hole(&hole.kind).map_or(hole.kind.as_str(), |kind| &kind.name);
        (kind, hole.offset_mm)
    });
    let device = bay.device.as_ref().map(|key| range.device(key).map_or(key.as_str(), |device| &device.name));
    BayTold { fill: bay.fill, hole, device }
}

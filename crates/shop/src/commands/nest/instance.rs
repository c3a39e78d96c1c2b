//! Published instances as they are kept: one JSON object, with figures and references beside what is read here.

use slotwright_core::input::fault::{ReadError, Wanted};
use slotwright_core::input::members::Place;
use slotwright_nest::problem::{Format, Gaps, Item, LONGEST, MOST_COPIES, Problem};
use slotwright_nest::strip;

/// An instance by its kind.
pub(super) enum Instance {
    /// Rectangles on equal sheets.
    RectBins(Problem),
    /// Polygons on a strip.
    StripPolygons(Drawn),
}

/// Polygons on a strip as they are drawn, in the unit of the instance.
pub(super) struct Drawn {
    /// The strip along y; it runs along x.
    pub(super) height: f64,
    /// What is to lie on it.
    pub(super) items: Vec<DrawnItem>,
}

/// A polygon as it is drawn.
pub(super) struct DrawnItem {
    /// How many copies there are.
    pub(super) count: u32,
    /// How it may be turned, counter-clockwise, in degrees.
    pub(super) turns: Vec<i64>,
    /// Its corners in order.
    pub(super) corners: Vec<[f64; 2]>,
}

/// Reads an instance.
///
/// # Errors
///
/// What is not as it should be, with its place.
pub(super) fn read(at: Place) -> Result<Instance, ReadError> {
    let mut members = at.members()?;
    let kind = members.take("kind")?;
    if kind.is("strip-polygons") {
        let height = members.take("strip_height")?.number()?;
        let items = members.take("items")?.list(drawn)?;
        return Ok(Instance::StripPolygons(Drawn { height, items }));
    }
    if !kind.is("rect-bins") {
        return kind.refuse(Wanted::Words(vec!["rect-bins", "strip-polygons"]));
    }
    let sheet = members.take("sheet")?;
    let [width, height] = pair(sheet)?;
    let turns = members.take("rotation_allowed")?.flag()?;
    let mut items = members.take("items")?.list(item)?;
    for item in &mut items {
        item.turns = turns;
    }
    // The fewest sheets are the cheapest.
    let formats = vec![Format { width, height, cost: 1, most: None }];
    Ok(Instance::RectBins(Problem { formats, items, gaps: Gaps::default() }))
}

fn side(at: Place) -> Result<i64, ReadError> {
    at.whole_between(1, LONGEST)
}

fn pair(at: Place) -> Result<[i64; 2], ReadError> {
    at.pair(side)
}

fn item(at: Place) -> Result<Item, ReadError> {
    let mut members = at.members()?;
    let width = side(members.take("w")?)?;
    let height = side(members.take("h")?)?;
    Ok(Item { width, height, turns: false, count: count(members.take("count")?, MOST_COPIES)? })
}

fn drawn(at: Place) -> Result<DrawnItem, ReadError> {
    let mut members = at.members()?;
    let count = count(members.take("count")?, strip::problem::MOST_COPIES)?;
    let turns = members.take("rotations")?.list(|turn| turn.whole_between(0, 359))?;
    let corners = members.take("polygon")?.list(|corner| corner.pair(Place::number))?;
    Ok(DrawnItem { count, turns, corners })
}

fn count(at: Place, most: u32) -> Result<u32, ReadError> {
    at.whole_between(1, i64::from(most)).map(|count| u32::try_from(count).unwrap_or(most))
}

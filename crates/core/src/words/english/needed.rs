//! What an assembly sheet says before its steps, in English.

use super::LOCALE;
use super::count::number_of;
use crate::cabinet::assembly::Space;
use crate::units::quantity::Length;
use crate::words::needed::{Needed, RoomNeeded};

pub(in crate::words) fn needed(of: Needed) -> String {
    match of {
        Needed::Level => "a spirit level, and wedges where the floor is not level".into(),
        Needed::Gloves => "gloves for everybody".into(),
        Needed::Stands(people) => format!(
            "something firm and wide to stand on that does not tip, for {}",
            number_of(people, "person", "people")
        ),
        Needed::Wall => {
            "what fastens tethers to your wall, a drill and bits for that, a screwdriver, a tape measure and a pencil"
                .into()
        }
    }
}

pub(in crate::words) fn room(RoomNeeded(space): RoomNeeded) -> String {
    let Space { wide, deep, behind, before, high, swings } = space;
    let up = |length: Length| LOCALE.distance(Length::mm(libm::ceil(length.in_mm() - 1e-6)));
    let front = if swings { "to work in and for open doors" } else { "to work in" };
    format!(
        "Floor: {} from side to side and {} from front to rear. That is the unit, {} behind it, from where the back comes, and {} in front \
         of it {front}. Height: the highest part is lifted to {} over the floor.",
        up(wide),
        up(deep),
        up(behind),
        up(before),
        up(high)
    )
}

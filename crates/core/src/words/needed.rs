//! What an assembly sheet says before its steps: what is needed beside the parts, and how much room.

use crate::cabinet::assembly::{Assembly, Space};
use crate::cabinet::panel::PanelId;

/// A thing that is needed and does not come with the parts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Needed {
    /// What the unit is levelled by.
    Level,
    /// Gloves.
    Gloves,
    /// Something to stand on, for so many people.
    Stands(u8),
    /// What fastens tethers to the wall.
    Wall,
}

impl Needed {
    /// What the steps of a unit ask for, fastened to the wall or not.
    pub fn of(assembly: &Assembly, tethered: bool) -> Vec<Self> {
        let overhead = |part| assembly.steps.iter().any(|step| step.part == part && step.is_overhead());
        let stands = match (overhead(PanelId::Top), overhead(PanelId::Back) && tethered) {
            (true, _) => Some(Self::Stands(2)),
            (false, true) => Some(Self::Stands(1)),
            (false, false) => None,
        };
        let wall = tethered.then_some(Self::Wall);
        [Self::Level, Self::Gloves].into_iter().chain(stands).chain(wall).collect()
    }
}

/// How much room is needed.
#[derive(Clone, Copy, Debug)]
pub struct RoomNeeded(pub Space);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cabinet::case::Case;
    use crate::cabinet::layout::{Layout, Picked};
    use crate::rules::sample::{Wanted, choices};
    use crate::testing::demo;
    use crate::units::quantity::Length;

    /// Something to stand on where a step tells people to stand on it, for as many; tools for a wall where tethers go to one; floor
    /// behind the unit always, and as much before it as its widest door sweeps.
    #[test]
    fn what_is_needed_is_what_the_steps_ask_for() {
        let (range, mut met) = (demo(), [0, 0, 0]);
        for choice in choices(&range, 31, Wanted::Valid).take(60) {
            let picked = Picked::of(&range, &choice).unwrap();
            let layout = Layout::of(picked, &choice).unwrap();
            let case = Case::of(picked, &choice, &layout).unwrap();
            let assembly = Assembly::of(picked, &case);
            for tethers in [None, crate::rules::tether::Tethers::of(&layout, &case)] {
                let said: Vec<String> = assembly.steps.iter().map(|step| crate::words::step(step, tethers)).collect();
                let stands = |text: &str| said.iter().filter(|said| said.contains(text)).count();
                let needed = Needed::of(&assembly, tethers.is_some());
                let each = stands("each on something firm and wide");
                let alone = stands("on something firm and wide") - each;
                let wanted = if each > 0 { Some(2) } else { (alone > 0).then_some(1) };
                let found = needed.iter().find_map(|needed| match needed {
                    Needed::Stands(people) => Some(*people),
                    Needed::Level | Needed::Gloves | Needed::Wall => None,
                });
                assert_eq!(found, wanted, "{said:?}");
                assert_eq!(needed.contains(&Needed::Wall), tethers.is_some());
                met[usize::from(found.unwrap_or_default())] += 1;
            }
            let Space { wide, deep, behind, before, high, .. } = Space::of(&layout, &case, &assembly);
            assert_eq!((wide, deep), (layout.width, behind + layout.depth + before));
            assert!(behind > Length::mm(700.0) && high >= layout.height);
            let widest = |panel: &&crate::cabinet::panel::Panel| matches!(panel.id, PanelId::Leaf(_));
            assert!(case.panels.iter().filter(widest).all(|leaf| leaf.width <= before));
            let told = RoomNeeded(Space::of(&layout, &case, &assembly)).text();
            assert!(told.contains(&crate::words::distance(deep)), "{told}");
        }
        assert!(met[0] > 5 && met[2] > 5, "{met:?}");
    }
}

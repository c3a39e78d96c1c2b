//! Constructions that are broken.

use crate::cabinet::assembly::Assembly;
use crate::cabinet::case::Case;
use crate::cabinet::joint::JointKind;
use crate::cabinet::layout::{Layout, Picked};
use crate::cabinet::panel::{Feature, Hook, PanelId};
use crate::choice::Choice;
use crate::geometry::outline::Point;
use crate::testing::demo;
use crate::units::quantity::Length;

/// The proof sees a construction that is broken: a hook left out or cut too short, a slot in the wrong place.
#[test]
fn a_back_that_does_not_hang_as_it_should_is_found() {
    let range = demo();
    for choice in range.models.iter().filter_map(Choice::starting) {
        let picked = Picked::of(&range, &choice).unwrap();
        let whole = Case::of(picked, &choice, &Layout::of(picked, &choice).unwrap()).unwrap();
        let broken = |change: &dyn Fn(&mut Case)| {
            let mut case = whole.clone();
            change(&mut case);
            let assembly = Assembly::of(picked, &case);
            assert!(!assembly.is_proven());
            assembly
        };
        let hooks = |case: &mut Case, change: &dyn Fn(&mut Hook)| {
            for feature in case.panels.iter_mut().flat_map(|panel| &mut panel.features) {
                if let Feature::Hook(hook) = feature {
                    change(hook);
                }
            }
        };
        let slots = |case: &mut Case, change: &dyn Fn(&mut Point, &mut Point)| {
            let back = case.panels.iter_mut().find(|panel| panel.id == PanelId::Back).unwrap();
            for feature in &mut back.features {
                if let Feature::Slot { from, to } = feature
                    && to.v - from.v > Length::mm(40.0)
                {
                    change(from, to);
                }
            }
        };
        let uprights: Vec<PanelId> =
            whole.panels.iter().map(|panel| panel.id).filter(|id| matches!(id, PanelId::Upright(_))).collect();
        let count = whole.joints.iter().filter(|joint| joint.kind == JointKind::Hook).count() / uprights.len();
        for left_out in 0..count {
            let without = |case: &mut Case| {
                let upright = case.panels.iter_mut().find(|panel| panel.id == PanelId::Upright(2)).unwrap();
                let mut at = 0;
                upright.features.retain(|feature| {
                    at += usize::from(matches!(feature, Feature::Hook(_)));
                    !matches!(feature, Feature::Hook(_)) || at - 1 != left_out
                });
            };
            assert_eq!(broken(&without).unheld, [PanelId::Upright(2)]);
            // Nor does it help if nobody says that there should be one.
            let unsaid = |case: &mut Case| {
                without(case);
                let number = u8::try_from(left_out + 1).unwrap();
                case.joints.retain(|joint| {
                    joint.kind != JointKind::Hook
                        || (joint.id.goes_in, joint.id.number) != (PanelId::Upright(2), number)
                });
            };
            assert_eq!(broken(&unsaid).unheld, [PanelId::Upright(2)]);
        }
        assert_eq!(broken(&|case| hooks(case, &|hook| hook.rise = Length::ZERO)).unheld, uprights);
        // The neck stands in the back's wood, or the slot lets no nose through.
        let low = broken(&|case| {
            slots(case, &|from, to| (from.v, to.v) = (from.v - Length::mm(9.0), to.v - Length::mm(9.0)));
        });
        assert!(low.stuck.contains(&PanelId::Back), "{:?}", low.stuck);
        let short = broken(&|case| slots(case, &|from, _| from.v += Length::mm(4.1)));
        assert!(short.stuck.contains(&PanelId::Back), "{:?}", short.stuck);
    }
}

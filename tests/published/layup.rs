//! The stiffness of the demo range's boards follows from their lay-up.

use slotwright_core::units::quantity::Stiffness;
use slotwright_tests::demo;

/// Modulus of elasticity of a birch veneer along its grain; across it is taken as nothing.
// Source: three parameters that reproduce Handbook of Finnish Plywood (2002), tables 3-1 and 3-2.
const VENEER: f64 = 17_500.0;
/// Thickness of the faces and of the veneers between, sanded.
const FACE: f64 = 1.1;
const CORE: f64 = 1.4;

/// Stiffness of a board of so many plies: in bending along and across the face grain, and in its plane across it.
fn stiffness(plies: u32) -> (f64, f64, f64) {
    let thick = |ply: u32| if ply == 0 || ply == plies - 1 { FACE } else { CORE };
    let total: f64 = (0..plies).map(thick).sum();
    let (mut along, mut crossed) = (0.0, 0.0);
    let mut low = -total / 2.0;
    for ply in 0..plies {
        let high = low + thick(ply);
        if ply % 2 == 0 {
            along += (high.powi(3) - low.powi(3)) / 3.0;
        } else {
            crossed += high - low;
        }
        low = high;
    }
    let share = along / (total.powi(3) / 12.0);
    (VENEER * share, VENEER * (1.0 - share), VENEER * crossed / total)
}

// Source: Handbook of Finnish Plywood (2002), tables 3-1 and 3-2; printed in whole N/mm².
#[test]
fn the_boards_are_as_stiff_as_their_lay_up() {
    let range = demo().unwrap();
    for (board, plies, handbook) in [("birch-18", 13, (10048.0, 7452.0)), ("birch-12", 9, (10719.0, 6781.0))] {
        let board = range.boards.iter().find(|known| known.key.as_str() == board).unwrap();
        let (along, across, plane) = stiffness(plies);
        assert!((along - handbook.0).abs() <= 1.0 && (across - handbook.1).abs() <= 1.0, "{along} {across}");
        let stated = (board.e_along_n_per_mm2, board.e_across_n_per_mm2);
        assert_eq!(stated, (Stiffness::n_per_mm2(handbook.0), Stiffness::n_per_mm2(handbook.1)));
        let stated = board.e_plane_across_n_per_mm2.in_n_per_mm2();
        assert!((stated - plane).abs() <= 1.0, "{plane} in the plane of {}", board.key.as_str());
    }
}

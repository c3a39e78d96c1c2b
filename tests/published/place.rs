//! Screens by their diagonal.

use slotwright_core::rules::place::{diagonal, screen};

// Source: geometry of 16 to 9: width 0.8716 and height 0.4903 of the diagonal; printed to 0.1 mm.
#[test]
fn screens_are_as_wide_as_their_diagonal_says() {
    for (inches, width, height) in [(55, 1217.6, 684.9), (65, 1439.0, 809.4), (75, 1660.4, 933.9)] {
        let (wide, high) = screen(diagonal(inches * 10));
        assert!((wide.in_mm() - width).abs() <= 0.06, "{inches} in: {wide:?}");
        assert!((high.in_mm() - height).abs() <= 0.06, "{inches} in: {high:?}");
    }
}

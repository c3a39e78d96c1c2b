//! Weights of whole sheets.

use slotwright_core::units::quantity::{Density, Length};

// Source: merchant's weight sheet for birch plywood with its densities by thickness: kilograms of a
// sheet with one decimal, so half a tenth of tolerance; area × nominal thickness × density.
#[test]
fn sheets_weigh_what_the_merchant_says() {
    for (length, width, thickness, density, kg) in [
        (2440.0, 1220.0, 12.0, 695.0, 24.8),
        (2440.0, 1220.0, 15.0, 690.0, 30.8),
        (2440.0, 1220.0, 18.0, 685.0, 36.7),
        (2440.0, 1220.0, 21.0, 680.0, 42.5),
        (2440.0, 1220.0, 24.0, 680.0, 48.6),
        (3050.0, 1525.0, 18.0, 685.0, 57.3),
    ] {
        let area = Length::mm(length) * Length::mm(width);
        let found = Density::kg_per_m3(density).mass_of(area, Length::mm(thickness)).in_kg();
        assert!((found - kg).abs() <= 0.055, "{thickness} mm, {length} × {width}: {found} kg is not {kg}");
    }
}

//! Sag of shelves and the spans that limits allow.

use slotwright_core::statics::sag::{Beam, lasting, sag, widest_span};
use slotwright_core::units::quantity::{AreaMass, Length, Stiffness};
use slotwright_tests::demo;

/// 17.6 mm: mean thickness of 18 mm birch plywood, Handbook of Finnish Plywood (2002), table 3-1.
const THICK: Length = Length::mm(17.6);
/// Bending along and across the face grain of the same board.
const ALONG: Stiffness = Stiffness::n_per_mm2(10048.0);
const ACROSS: Stiffness = Stiffness::n_per_mm2(7452.0);

/// Bending alone: the figures below leave shear out.
fn bent(bending: Stiffness) -> Beam {
    Beam { thickness: THICK, bending, planar: None }
}

fn close(found: Length, expected: f64, tolerance: f64) {
    assert!((found.in_mm() - expected).abs() <= tolerance, "{found:?} is not {expected} mm");
}

// Source: Wood Handbook, FPL-GTR-190 (2010), eq. 9-2 and table 9-1, without the shear term; worked:
// 40 kg over 800 × 300 mm. Tolerance: the figure's last place and the rounding of I (0.1 %).
#[test]
fn a_shelf_of_forty_kilograms_sags_as_the_handbook_says() {
    let load = AreaMass::kg_per_m2(40.0 / (0.8 * 0.3));
    close(sag(Length::mm(800.0), load, bent(ALONG)), 1.910, 0.002);
    close(sag(Length::mm(800.0), load, bent(ACROSS)), 2.576, 0.003);
}

// Source: Wood Handbook, FPL-GTR-190 (2010), eq. 9-2 with its shear term, k_s = 1/8 and A′ = 5 b h / 6; worked: the
// same shelf with 200 N/mm² between its plies, 392.4 × 800 / (8 × 200 × 4 400) = 0.0446 mm more. Tolerance as there.
#[test]
fn plies_that_slide_add_the_handbook_s_shear() {
    let load = AreaMass::kg_per_m2(40.0 / (0.8 * 0.3));
    let beam = Beam { planar: Some(Stiffness::n_per_mm2(200.0)), ..bent(ALONG) };
    close(sag(Length::mm(800.0), load, beam) - sag(Length::mm(800.0), load, bent(ALONG)), 0.0446, 0.0001);
    // With both terms as well, the widest span is where the sag reaches its limit.
    let found = widest_span(load, beam, 200.0);
    close(sag(found, load, beam), found.in_mm() / 200.0, 1e-9);
}

// Source: IASA-TC 05, 4.6.2: records weigh 54 kg a metre; Wood Handbook as above; creep of
// EN 1995-1-1:2004+A1, table 3.2 (k_def 0.80), all of the load taken as lasting: × 1.8.
#[test]
fn a_shelf_of_records_sags_and_creeps() {
    let load = AreaMass::kg_per_m2(54.0 / 0.33);
    close(sag(Length::mm(800.0), load, bent(ALONG)), 1.875, 0.002);
    let mut strength = demo().unwrap().strength;
    strength.lasting_share = 1.0;
    close(sag(Length::mm(800.0), lasting(AreaMass::ZERO, load, &strength), bent(ALONG)), 3.376, 0.003);
}

// Source: EN 1995-1-1:2004+A1, 2.2.3: 1.910 mm at once become 3.438 under a permanent load and
// 3.133 in storage (ψ₂ 0.8).
#[test]
fn creep_follows_the_kind_of_load() {
    let strength = demo().unwrap().strength;
    let load = AreaMass::kg_per_m2(40.0 / (0.8 * 0.3));
    let bend = |load| sag(Length::mm(800.0), load, bent(ALONG));
    close(bend(lasting(load, AreaMass::ZERO, &strength)), 3.438, 0.004);
    close(bend(lasting(AreaMass::ZERO, load, &strength)), 3.133, 0.004);
}

// Source: Architectural Woodwork Standards (2009), 1.2.21.2: 50 lb/ft² (244.1 kg/m²) on book
// shelves, sag at most span/144; worked for 17.6 mm by the formula above.
#[test]
fn the_widest_span_is_the_one_of_the_formula() {
    let load = AreaMass::kg_per_m2(244.1);
    for (stiffness, over, span) in
        [(ALONG, 144.0, 1005.6), (ACROSS, 144.0, 910.3), (ALONG, 200.0, 901.3), (ACROSS, 200.0, 815.9)]
    {
        let found = widest_span(load, bent(stiffness), over);
        close(found, span, 0.4);
        // And it is the span at which the sag reaches its limit.
        close(sag(found, load, bent(stiffness)), found.in_mm() / over, 1e-6);
    }
}

// Source: Architectural Woodwork Standards (2009), 4.4.14.10: spans in whole inches, rounded down,
// for 3/4 and 1 in of two stiffnesses at 40 and 50 lb/ft², sag at most span/144.
#[test]
fn spans_are_those_of_the_woodwork_standards() {
    const INCH: f64 = 25.4;
    const N_PER_MM2: f64 = 6894.757; // of a million lb/in²
    for (stiffness, thick, spans) in
        [(0.95, 0.75, [40, 37]), (0.95, 1.0, [53, 49]), (1.80, 0.75, [49, 46]), (1.80, 1.0, [66, 61])]
    {
        for (load, span) in [40.0, 50.0].into_iter().zip(spans) {
            let load = AreaMass::kg_per_m2(load * 4.882_428);
            let bending = Stiffness::n_per_mm2(stiffness * N_PER_MM2);
            let found = widest_span(load, Beam { thickness: Length::mm(thick * INCH), bending, planar: None }, 144.0);
            // One entry is 45.98 in by the formula and printed as 46: a tenth of an inch of tolerance.
            assert!((found.in_mm() / INCH + 0.1).floor() - f64::from(span) == 0.0, "{found:?} is not {span} in");
        }
    }
}

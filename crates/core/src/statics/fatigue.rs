//! What is left of a strength where a stress comes and goes.
//!
//! Source: EN 1995-2:2004, annex A.3, (A.5) and table A.1: `k_fat` = 1 − (1 − R) / (a (b − R)) lg(β N), here with R = 0; `γ_M,fat` is 1.0
//! (2.3.2). All from memory, and written for timber as it stands in bridges.

/// Counts a stress three times as often as it comes, as where what fails does much harm.
// Source: β of the same is 3, or 1 where it does little.
const HARM: f64 = 3.0;

/// What a panel keeps of its characteristic strength in bending under a stress that has come so often, from nothing to its most and
/// back.
///
/// ```
/// use slotwright_core::statics::fatigue::in_bending;
/// // 1 − lg(3 × 100 000) / (9.5 × 1.1).
/// assert!((in_bending(100_000.0) - 0.475_9).abs() < 1e-4);
/// assert_eq!((in_bending(0.1), in_bending(1e30)), (1.0, 0.0));
/// ```
// Source: a = 9.5, b = 1.1, for bending and tension.
pub fn in_bending(times: f64) -> f64 {
    kept(times, 9.5, 1.1)
}

/// The same in shear.
// Source: a = 6.7, b = 1.3.
pub fn in_shear(times: f64) -> f64 {
    kept(times, 6.7, 1.3)
}

fn kept(times: f64, a: f64, b: f64) -> f64 {
    (1.0 - libm::log10(HARM * times) / (a * b)).clamp(0.0, 1.0)
}

//! What is left of a strength where a stress comes and goes.

/// Counts a stress three times as often as it comes, as where what fails does much harm.
// Source: EN 1995-2:2004, annex A.3: β is 3, or 1 where it does little; from memory.
const HARM: f64 = 3.0;

/// What a panel keeps of its characteristic strength in bending under a stress that has come and gone so often, `k_fat`: from nothing
/// to its most and back.
///
/// ```
/// use slotwright_core::statics::fatigue::kept;
/// // 1 − lg(3 × 100 000) / (9.5 × 1.1).
/// assert!((kept(100_000.0) - 0.475_8).abs() < 1e-4);
/// assert_eq!((kept(0.1), kept(1e30)), (1.0, 0.0));
/// ```
// Source: EN 1995-2:2004, annex A.3, (A.5) and table A.1: k_fat = 1 − (1 − R) / (a (b − R)) lg(β N), bending and tension a = 9.5,
// b = 1.1, R = 0; γ_M,fat is 1.0 (2.3.2). All from memory, and written for solid wood as it stands in bridges.
pub fn kept(times: f64) -> f64 {
    let (a, b) = (9.5, 1.1);
    (1.0 - libm::log10(HARM * times) / (a * b)).clamp(0.0, 1.0)
}

//! The same for bowed ends, with one bay.

use slotwright_core::range::DimRange;
use slotwright_core::units::quantity::Dim;

use crate::brute::{check_in, every, thinned};

/// Bowed ends of both sides or of one, of two rises.
#[test]
fn states_of_bowed_ends_are_exact() {
    let mut range = thinned("teasel");
    let model = range.models.first_mut().unwrap();
    model.bow_mm = Some(DimRange { least: Dim::mm(0), most: Dim::mm(120), step: Dim::mm(60), start: Dim::mm(0) });
    model.bays.most = 1;
    let every = every(&range);
    assert!(every.len() > 20_000, "{}", every.len());
    let (seen, [reasons, ..]) = check_in(&range, &every);
    assert!(seen.len() >= 3 && reasons >= 5, "{reasons} {seen:?}");
}

//! Quantities: types that carry their unit; numbers in texts, money, days.

pub mod day;
pub mod decimal;
pub mod figure;
pub mod money;
pub mod quantity;
pub(crate) mod rounding;
pub mod short;

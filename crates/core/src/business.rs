//! Work, money and time: the bill, the sheets, carriage, price and promise.

pub mod bill;
pub mod built;
pub mod carriage;
pub mod job;
pub mod material;
pub mod nesting;
pub mod price;
pub mod promise;

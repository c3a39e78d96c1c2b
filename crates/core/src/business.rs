//! Work, money and time: the bill, carriage, price and promise.

pub mod bill;
pub mod built;
pub mod carriage;
pub mod price;
pub mod promise;

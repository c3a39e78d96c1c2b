//! The core of Slotwright: from a range and a choice to everything that is known about the unit.
//!
//! One pure function stands in the middle, `derive`. It reads no clock, file, network or locale;
//! the day and the backlog come in as values. The same bytes come out natively and in WebAssembly.
//!
//! Feature: `schema` (JSON Schemas from the types).
#![cfg_attr(not(test), warn(clippy::expect_used, clippy::panic, clippy::indexing_slicing))]

extern crate alloc;

pub mod audit;
pub mod business;
pub mod cabinet;
pub mod choice;
pub mod geometry;
pub mod input;
pub mod order;
pub mod range;
pub mod rules;
pub mod solver;
pub mod statics;
pub mod units;
pub mod words;

#[cfg(test)]
mod testing;

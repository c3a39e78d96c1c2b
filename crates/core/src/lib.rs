//! The core of Slotwright: from a range and a choice to everything that is known about the unit.
//!
//! One pure function stands in the middle, `derive`. It reads no clock, file, network or locale;
//! the day and the backlog come in as values. The same bytes come out natively and in WebAssembly.
//!
//! Feature: `schema` (JSON Schemas from the types).
#![cfg_attr(not(test), warn(clippy::expect_used, clippy::panic, clippy::indexing_slicing))]

extern crate alloc;

pub mod quantity;
pub mod money;
pub mod day;
pub mod seal;
mod strict;
pub mod members;
pub mod range;
pub mod choice;
pub mod outline;
pub mod space;
pub mod panel;
pub mod joint;
pub mod layout;
pub mod leaf;
pub mod case;
pub mod change;
pub mod finding;
pub mod rules;
mod remedy;
pub mod options;
pub mod bill;
pub mod carriage;
pub mod price;
pub mod promise;
pub mod derive;
pub mod document;
pub mod spec;
pub mod sample;
pub mod words;

#[cfg(test)]
mod testing;

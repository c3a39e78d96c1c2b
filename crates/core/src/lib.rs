//! The core of Slotwright: from a range and a choice to everything that is known about the unit.
//!
//! One pure function stands in the middle, `derive`. It reads no clock, file, network or locale;
//! the day and the backlog come in as values. The same bytes come out natively and in WebAssembly.
//!
//! Feature: `schema` (JSON Schemas from the types).
#![cfg_attr(not(test), warn(clippy::expect_used, clippy::panic, clippy::indexing_slicing))]

extern crate alloc;

pub mod assembly;
pub mod audit;
pub mod bill;
mod blank;
pub mod built;
pub mod bundle;
pub mod carriage;
pub mod case;
pub mod change;
pub mod choice;
pub mod day;
pub mod decimal;
pub mod derive;
pub mod document;
pub mod entry;
pub mod figure;
pub mod finding;
pub mod fit;
pub mod joint;
pub mod layout;
pub mod leaf;
pub mod members;
pub mod money;
pub mod options;
pub mod outline;
pub mod panel;
pub mod parts;
pub mod price;
pub mod promise;
pub mod quantity;
pub mod question;
pub mod range;
pub mod remedy;
mod rounding;
pub mod rule;
pub mod rules;
pub mod sample;
pub mod seal;
pub mod space;
pub mod spec;
pub mod stability;
pub mod statics;
mod strict;
pub mod turn;
pub mod words;

#[cfg(test)]
mod testing;

//! Rectangles on sheets, and polygons on a strip.

pub mod bound;
pub mod check;
pub mod packing;
pub mod problem;
pub mod quick;
pub mod search;
pub mod strip;

mod fill;
mod offcut;
mod order;
mod pieces;
mod plan;
mod random;
mod sort;
mod space;
mod table;

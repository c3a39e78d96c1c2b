//! Drawings of a unit, for the page and on paper.

pub mod describe;
pub mod drawing;
pub mod glyph;

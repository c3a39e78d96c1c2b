//! Drawings and solids of a unit, for the page, on paper and for other programs.

pub mod describe;
pub mod drawing;
pub mod gltf;
pub mod glyph;
pub mod pack;
pub mod paper;
pub mod picture;
#[cfg(test)]
mod plain;
pub mod vector;

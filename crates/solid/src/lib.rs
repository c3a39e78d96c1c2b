//! The panels of a unit as closed triangle meshes: for the stage, for export and for checking.

pub mod appearance;
pub mod axes;
pub mod colour;
pub mod mesh;
pub mod path;
pub mod plate;

mod leaf;

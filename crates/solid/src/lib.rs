//! The panels of a unit as closed triangle meshes: for the stage, for export and for checking.

pub mod mesh;

mod leaf;
mod path;
mod plate;

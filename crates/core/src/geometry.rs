//! Plane and space: outlines, their corners, points and boxes of the case.

pub mod corner;
pub mod outline;
pub mod quarters;
pub mod space;

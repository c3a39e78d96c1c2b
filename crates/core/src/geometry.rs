//! Plane and space: outlines, their corners, narrow wood, points and boxes of the case.

pub mod corner;
pub mod neck;
pub mod outline;
pub mod quarters;
pub mod space;

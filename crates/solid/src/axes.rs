//! From the axes of the case to those of pictures and files.

/// From x right, y to the rear, z up in millimetres to x right, y up, z to the front in metres.
#[expect(clippy::cast_possible_truncation, reason = "graphics cards and files take 32 bits")]
pub fn metres([x, y, z]: [f64; 3]) -> [f32; 3] {
    [x, z, -y].map(|mm| (mm / 1000.0) as f32)
}

/// A direction from x right, y to the rear, z up to x right, y up, z to the front.
#[expect(clippy::cast_possible_truncation, reason = "graphics cards and files take 32 bits")]
pub fn turned([x, y, z]: [f64; 3]) -> [f32; 3] {
    [x as f32, z as f32, -y as f32]
}

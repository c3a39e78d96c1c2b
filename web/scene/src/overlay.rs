//! Dimension lines over the picture, as SVG.

use core::fmt::Write;

use slotwright_core::layout::Layout;
use slotwright_core::words;
use slotwright_stage::Vec3;
use slotwright_stage::camera::Camera;
use slotwright_stage::dimension::{Measures, dimensions};

/// The lines over a picture of that extent in pixels.
pub(crate) fn svg(camera: Camera, size: Vec3, (across, down): (f32, f32), layout: &Layout) -> String {
    let matrix = camera.clip_from_stage(across / down.max(1.0));
    let mut drawn = format!("<svg viewBox=\"0 0 {across:.0} {down:.0}\">");
    for line in dimensions(matrix, camera.eye(), size) {
        let [from, to] = line.ends.map(|(x, y)| ((0.5 + x * 0.5) * across, (0.5 - y * 0.5) * down));
        let figure = match line.measures {
            Measures::Width => layout.width,
            Measures::Height => layout.height,
            Measures::Depth => layout.depth,
        };
        let figure = words::decimal(figure.in_mm(), 1);
        let (x, y) = (f32::midpoint(from.0, to.0), f32::midpoint(from.1, to.1) + 5.0);
        // Writing to a String cannot fail.
        let _ = write!(
            drawn,
            "<path d=\"M{:.1} {:.1}L{:.1} {:.1}\"/><text x=\"{x:.1}\" y=\"{y:.1}\">{figure}</text>",
            from.0, from.1, to.0, to.1
        );
    }
    drawn + "</svg>"
}

//! Dimension lines and names over the picture, as SVG.

use core::fmt::Write;

use slotwright_core::cabinet::layout::Layout;
use slotwright_core::words;
use slotwright_stage::bounds::Bounds;
use slotwright_stage::camera::{Camera, in_pixels};
use slotwright_stage::dimension::{Measures, dimensions, figure_place};
use slotwright_stage::label::labels;
use slotwright_stage::{Mat4, Vec3};

/// A line that is shorter says nothing; in pixels.
const SHORTEST: f32 = 14.0;
/// About half of a figure's height, and of a digit's width.
const HALF_HIGH: f32 = 6.0;
const HALF_DIGIT: f32 = 5.0;

/// What lies over a picture of that extent in pixels.
pub(crate) struct Overlay {
    extent: (f32, f32),
    matrix: Mat4,
    camera: Camera,
    drawn: String,
}

impl Overlay {
    pub(crate) fn of(camera: Camera, extent @ (across, down): (f32, f32)) -> Self {
        let drawn = format!("<svg viewBox=\"0 0 {across:.0} {down:.0}\">");
        Self { extent, matrix: camera.clip_from_stage(across / down.max(1.0)), camera, drawn }
    }

    pub(crate) fn into_svg(self) -> String {
        self.drawn + "</svg>"
    }

    /// Width, height and depth of the unit, clear of a box round all that is shown of it.
    pub(crate) fn dimensions(mut self, size: Vec3, bounds: Bounds, layout: &Layout) -> Self {
        for line in dimensions(self.matrix, self.camera.eye(), size, bounds) {
            let [from, to] = line.ends.map(|end| in_pixels(end, self.extent));
            let long = (from.0 - to.0).hypot(from.1 - to.1);
            if long < SHORTEST {
                continue;
            }
            let figure = match line.measures {
                Measures::Width => layout.width,
                Measures::Height => layout.height,
                Measures::Depth => layout.depth,
            };
            let text = words::decimal(figure.in_mm(), 1);
            let digits = f32::from(u8::try_from(text.chars().count()).unwrap_or(u8::MAX));
            let half = (digits * HALF_DIGIT, HALF_HIGH);
            let points = line.points.map(|point| in_pixels(point, self.extent));
            // Without room for its figure it would say nothing.
            let Some(place) = figure_place([from, to], points, half, self.extent) else { continue };
            self.line("", from, to);
            // From the unit to a little beyond the line, as on a drawing.
            for (point, end) in points.into_iter().zip([from, to]) {
                let (across, down) = (end.0 - point.0, end.1 - point.1);
                let beyond = 5.0 / across.hypot(down).max(1.0);
                self.line("out", point, (end.0 + across * beyond, end.1 + down * beyond));
            }
            self.text("", place, &text);
        }
        self
    }

    /// Names of parts with a point of each that is seen, beside a box round all of them.
    pub(crate) fn names(mut self, parts: impl Iterator<Item = (Vec3, String)>, bounds: Bounds) -> Self {
        for label in labels(parts, bounds, self.matrix, self.extent) {
            self.line("", label.part, label.at);
            let (class, aside) = if label.is_left { ("name left", -4.0) } else { ("name", 4.0) };
            self.text(class, (label.at.0 + aside, label.at.1), &label.text);
        }
        self
    }

    fn line(&mut self, class: &str, from: (f32, f32), to: (f32, f32)) {
        let [from_x, from_y, to_x, to_y] = [from.0, from.1, to.0, to.1];
        // Writing to a String cannot fail, here and below.
        let _ = write!(self.drawn, "<path class=\"{class}\" d=\"M{from_x:.1} {from_y:.1}L{to_x:.1} {to_y:.1}\"/>");
    }

    /// A text round its middle.
    fn text(&mut self, class: &str, (x, y): (f32, f32), text: &str) {
        let _ = write!(self.drawn, "<text class=\"{class}\" x=\"{x:.1}\" y=\"{:.1}\">{text}</text>", y + 5.0);
    }
}

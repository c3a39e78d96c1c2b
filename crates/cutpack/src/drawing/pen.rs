//! Writing SVG: shapes, dimension lines, and the bounds of all of it.

use core::fmt::Write;

use slotwright_core::units::decimal::Plain;
use slotwright_core::units::quantity::Length;
use slotwright_core::words;

/// Text height on the screen.
const TEXT_PX: f64 = 13.0;
/// A figure of the text face is at most this wide, in parts of its height.
const FIGURE: f64 = 0.65;
/// How far the slanted ticks of a dimension line reach, across and along.
const TICK_PX: f64 = 3.0;
/// Round the whole.
pub(super) const BORDER_PX: f64 = 12.0;

/// How a shape looks in a viewer without the page's style: attributes that any style replaces.
fn plain(class: &str) -> &'static str {
    match class {
        "edge" | "cut" => " fill=\"#e3cda4\"",
        "back" | "floor" => " fill=\"#ece8df\"",
        "hole" => " fill=\"#2a2e2b\"",
        "device" => " fill=\"none\" stroke-dasharray=\"12 9\"",
        "swing" => " fill=\"none\" stroke-dasharray=\"15 12\"",
        "dim" => " fill=\"none\" stroke=\"#0e5a5e\"",
        _ => "",
    }
}

/// Collects shapes; y runs downwards as in SVG.
#[derive(Debug)]
pub(super) struct Pen {
    body: String,
    mm_per_px: f64,
    origin: (f64, f64),
    low: (f64, f64),
    high: (f64, f64),
}

/// To a hundredth: short and exact enough.
fn n(value: f64) -> Plain {
    Plain::of(value, 2)
}

/// Text within SVG.
pub(crate) fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

impl Pen {
    pub(super) fn new(mm_per_px: f64) -> Self {
        let far = f64::MAX;
        Self { body: String::with_capacity(16_384), mm_per_px, origin: (0.0, 0.0), low: (far, far), high: (-far, -far) }
    }

    /// So many pixels of the screen in millimetres.
    pub(super) fn px(&self, pixels: f64) -> f64 {
        pixels * self.mm_per_px
    }

    /// Sets the origin of what follows.
    pub(super) fn shift(&mut self, x: f64, y: f64) {
        self.origin = (x, y);
    }

    fn at(&mut self, x: f64, y: f64) -> (Plain, Plain) {
        let (x, y) = (x + self.origin.0, y + self.origin.1);
        self.low = (self.low.0.min(x), self.low.1.min(y));
        self.high = (self.high.0.max(x), self.high.1.max(y));
        (n(x), n(y))
    }

    // Writing to a String cannot fail.
    fn put(&mut self, text: core::fmt::Arguments<'_>) {
        let _ = self.body.write_fmt(text);
    }

    /// Begins a group.
    pub(super) fn open(&mut self, class: &str, bay: Option<usize>) {
        match bay {
            Some(bay) => self.put(format_args!("<g class=\"{class}\" data-bay=\"{}\">", bay + 1)),
            None => self.put(format_args!("<g class=\"{class}\">")),
        }
    }

    /// Ends a group.
    pub(super) fn close(&mut self) {
        self.body.push_str("</g>");
    }

    /// A rectangle between two corners.
    pub(super) fn rect(&mut self, class: &str, from: (f64, f64), to: (f64, f64), radius: f64) {
        let ((left, right), (top, bottom)) =
            ((from.0.min(to.0), from.0.max(to.0)), (from.1.min(to.1), from.1.max(to.1)));
        let (x, y) = self.at(left, top);
        self.at(right, bottom);
        let (width, height) = (n(right - left), n(bottom - top));
        let plain = plain(class);
        self.put(format_args!(
            "<rect class=\"{class}\"{plain} x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\""
        ));
        if radius > 0.0 {
            self.put(format_args!(" rx=\"{}\"", n(radius)));
        }
        self.body.push_str("/>");
    }

    /// A straight line.
    pub(super) fn line(&mut self, class: &str, from: (f64, f64), to: (f64, f64)) {
        let ((x1, y1), (x2, y2)) = (self.at(from.0, from.1), self.at(to.0, to.1));
        let plain = plain(class);
        self.put(format_args!("<path class=\"{class}\"{plain} d=\"M{x1} {y1}L{x2} {y2}\"/>"));
    }

    /// A circular arc, bulging to the left of its way if `left`.
    pub(super) fn arc(&mut self, class: &str, from: (f64, f64), to: (f64, f64), radius: f64, left: bool) {
        let ((x1, y1), (x2, y2)) = (self.at(from.0, from.1), self.at(to.0, to.1));
        let sweep = u8::from(left);
        let (r, plain) = (n(radius), plain(class));
        self.put(format_args!("<path class=\"{class}\"{plain} d=\"M{x1} {y1}A{r} {r} 0 0 {sweep} {x2} {y2}\"/>"));
    }

    fn text(&mut self, at: (f64, f64), text: &str, upright: bool) {
        let (long, high) = (self.text_width(text) / 2.0, self.px(TEXT_PX));
        let (from, to) = if upright { ((-high, -long), (0.0, long)) } else { ((-long, -high), (long, 0.0)) };
        for (x, y) in [from, to] {
            self.at(at.0 + x, at.1 + y);
        }
        let (x, y) = self.at(at.0, at.1);
        let size = n(high);
        let turn = if upright { format!(" transform=\"rotate(-90 {x} {y})\"") } else { String::new() };
        self.put(format_args!(
            "<text class=\"dim-text\" fill=\"#0e5a5e\" stroke=\"none\" x=\"{x}\" y=\"{y}\" font-size=\"{size}\"{turn}>{}</text>",
            escaped(text)
        ));
    }

    fn text_width(&self, text: &str) -> f64 {
        // `f64: From<usize>` does not exist; no figure is longer than a byte counts.
        let letters = u8::try_from(text.chars().count()).unwrap_or(u8::MAX);
        self.px(TEXT_PX * FIGURE) * f64::from(letters)
    }

    /// A level dimension line at `y`; the figure stands over its middle.
    pub(super) fn dim_level(&mut self, from: f64, to: f64, y: f64) {
        let text = figure(to - from);
        self.ticked((from, y), (to, y));
        self.text((from.midpoint(to), y + self.px(-5.0)), &text, false);
    }

    /// Whether a level dimension line has room for its figure in a row of others.
    pub(super) fn has_room(&self, from: f64, to: f64) -> bool {
        to - from > self.text_width(&figure(to - from)) + self.px(4.0)
    }

    /// An upright dimension line at `x` in a column of others; the figure stands along it, or beside it where it is
    /// short. Where a line of text has no room, neither line nor figure is drawn.
    pub(super) fn dim_upright(&mut self, from: f64, to: f64, x: f64) {
        let long = (to - from).abs();
        let text = figure(long);
        if long > self.text_width(&text) + self.px(4.0) {
            self.ticked((x, from), (x, to));
            self.text((x - self.px(5.0), from.midpoint(to)), &text, true);
        } else if long > self.px(TEXT_PX) {
            self.dim_beside(from, to, x);
        }
    }

    /// An upright dimension line at `x` with nothing to its right but its figure; neither is drawn where its ticks
    /// would cross.
    pub(super) fn dim_beside(&mut self, from: f64, to: f64, x: f64) {
        let long = (to - from).abs();
        let text = figure(long);
        if long > self.px(TICK_PX * 2.0) {
            self.ticked((x, from), (x, to));
            let out = self.text_width(&text) / 2.0 + self.px(6.0);
            self.text((x + out, from.midpoint(to) + self.px(4.0)), &text, false);
        }
    }

    /// A line with slanted ticks at its ends.
    fn ticked(&mut self, from: (f64, f64), to: (f64, f64)) {
        self.line("dim", from, to);
        let tick = self.px(TICK_PX);
        for (x, y) in [from, to] {
            self.line("dim", (x - tick, y + tick), (x + tick, y - tick));
        }
    }

    /// The whole as one small SVG in that colour, which says nothing by itself; lines on a dark one are light.
    pub(super) fn small(self, colour: &str, is_dark: bool) -> String {
        let (x, y) = (n(self.low.0 - self.px(1.0)), n(self.low.1 - self.px(1.0)));
        let (width, height) = (n(self.high.0 - self.low.0 + self.px(2.0)), n(self.high.1 - self.low.1 + self.px(2.0)));
        let (colour, line) = (escaped(colour), n(self.px(1.0)));
        let (class, ink) = if is_dark { (" dark", "#8a9088") } else { ("", "#1d2320") };
        let mut svg = String::with_capacity(self.body.len() + 256);
        let _ = write!(
            svg,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"drawing{class}\" aria-hidden=\"true\" viewBox=\"{x} {y} {width} {height}\" color=\"{colour}\" fill=\"{colour}\" stroke=\"{ink}\" stroke-width=\"{line}\">"
        );
        svg.push_str(&self.body);
        svg.push_str("</svg>");
        svg
    }

    /// The whole as one SVG.
    pub(super) fn done(self, title: &str) -> String {
        let border = self.px(BORDER_PX);
        let (x, y) = (n(self.low.0 - border), n(self.low.1 - border));
        let (width, height) = (n(self.high.0 - self.low.0 + border * 2.0), n(self.high.1 - self.low.1 + border * 2.0));
        let (title, line) = (escaped(title), n(self.px(1.3)));
        let mut svg = String::with_capacity(self.body.len() + 256);
        let _ = write!(
            svg,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"drawing\" role=\"img\" aria-label=\"{title}\" viewBox=\"{x} {y} {width} {height}\" fill=\"#fff\" stroke=\"#1d2320\" stroke-width=\"{line}\" font-family=\"sans-serif\" text-anchor=\"middle\">"
        );
        svg.push_str(&self.body);
        svg.push_str("</svg>");
        svg
    }
}

/// A length of a drawing: whole millimetres, a tenth where there is one.
fn figure(mm: f64) -> String {
    words::decimal(Length::mm(mm).in_mm(), 1)
}

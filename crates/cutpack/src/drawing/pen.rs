//! What is drawn: shapes, dimension lines, and the bounds of all of it.

use slotwright_core::units::quantity::Length;
use slotwright_core::words;

/// Text height on the screen.
pub(super) const TEXT_PX: f64 = 13.0;
/// A figure of the text face is at most this wide, in parts of its height.
const FIGURE: f64 = 0.65;
/// How far the slanted ticks of a dimension line reach, across and along.
const TICK_PX: f64 = 3.0;
/// Between figures in a row at least: nearer ones read as one.
const BETWEEN_PX: f64 = 9.0;
/// Width of lines.
pub(super) const LINE_PX: f64 = 1.3;
/// Round the whole.
pub(super) const BORDER_PX: f64 = 12.0;

/// What was drawn.
#[derive(Debug)]
pub(super) enum Drawn {
    /// A group begins, perhaps of a bay.
    Open(&'static str, Option<usize>),
    /// A group ends.
    Close,
    /// A rectangle: corner at the top left, width, height, radius.
    Rect(&'static str, Dot, Dot, f64),
    /// A straight line.
    Line(&'static str, Dot, Dot),
    /// An arc: ends and radius, and whether it bulges to the left.
    Arc(&'static str, Dot, Dot, f64, bool),
    /// An area: its corners, each with the bulge of the way to the next one; y runs downwards.
    Area(&'static str, Vec<(Dot, f64)>),
    /// Straight lines that are one thing.
    Strokes(&'static str, Vec<[Dot; 2]>),
    /// A figure, its middle on a place; or upright along it.
    Text(Dot, String, bool),
}

/// A place in millimetres of the unit, to the right and down.
pub(super) type Dot = (f64, f64);

/// Collects shapes; y runs downwards as in SVG.
#[derive(Debug)]
pub(super) struct Pen {
    pub(super) drawn: Vec<Drawn>,
    mm_per_px: f64,
    /// How far ticks reach, in pixels.
    tick_px: f64,
    origin: (f64, f64),
    /// Whether plies and grain are drawn.
    pub(super) shows_wood: bool,
    pub(super) low: Dot,
    pub(super) high: Dot,
}

impl Pen {
    pub(super) fn new(mm_per_px: f64) -> Self {
        let far = f64::MAX;
        Self {
            drawn: Vec::new(),
            mm_per_px,
            tick_px: TICK_PX,
            origin: (0.0, 0.0),
            shows_wood: false,
            low: (far, far),
            high: (-far, -far),
        }
    }

    /// So many pixels of the screen in millimetres.
    pub(super) fn px(&self, pixels: f64) -> f64 {
        pixels * self.mm_per_px
    }

    /// Sets the origin of what follows.
    pub(super) fn shift(&mut self, x: f64, y: f64) {
        self.origin = (x, y);
    }

    pub(super) fn at(&mut self, x: f64, y: f64) -> Dot {
        let (x, y) = (x + self.origin.0, y + self.origin.1);
        self.low = (self.low.0.min(x), self.low.1.min(y));
        self.high = (self.high.0.max(x), self.high.1.max(y));
        (x, y)
    }

    /// Begins a group.
    pub(super) fn open(&mut self, class: &'static str, bay: Option<usize>) {
        self.drawn.push(Drawn::Open(class, bay));
    }

    /// Ends a group.
    pub(super) fn close(&mut self) {
        self.drawn.push(Drawn::Close);
    }

    /// A rectangle between two corners.
    pub(super) fn rect(&mut self, class: &'static str, from: Dot, to: Dot, radius: f64) {
        let ((left, right), (top, bottom)) =
            ((from.0.min(to.0), from.0.max(to.0)), (from.1.min(to.1), from.1.max(to.1)));
        let at = self.at(left, top);
        self.at(right, bottom);
        self.drawn.push(Drawn::Rect(class, at, (right - left, bottom - top), radius));
    }

    /// An area between corners; arcs of no more than half a circle.
    pub(super) fn area(&mut self, class: &'static str, corners: &[(Dot, f64)]) {
        let ends = corners.iter().cycle().skip(1);
        for (((x1, y1), bulge), ((x2, y2), _)) in corners.iter().zip(ends) {
            // The middle of the arc lies beside the middle of its chord.
            self.at(x1.midpoint(*x2) + (y2 - y1) * bulge / 2.0, y1.midpoint(*y2) - (x2 - x1) * bulge / 2.0);
        }
        let corners = corners.iter().map(|((x, y), bulge)| (self.at(*x, *y), *bulge)).collect();
        self.drawn.push(Drawn::Area(class, corners));
    }

    /// A straight line.
    pub(super) fn line(&mut self, class: &'static str, from: Dot, to: Dot) {
        let (from, to) = (self.at(from.0, from.1), self.at(to.0, to.1));
        self.drawn.push(Drawn::Line(class, from, to));
    }

    /// A circular arc, bulging to the left of its way if `left`.
    pub(super) fn arc(&mut self, class: &'static str, from: Dot, to: Dot, radius: f64, left: bool) {
        let (from, to) = (self.at(from.0, from.1), self.at(to.0, to.1));
        self.drawn.push(Drawn::Arc(class, from, to, radius, left));
    }

    fn text(&mut self, at: Dot, text: &str, upright: bool) {
        let (long, high) = (self.text_width(text) / 2.0, self.px(TEXT_PX));
        let (from, to) = if upright { ((-high, -long), (0.0, long)) } else { ((-long, -high), (long, 0.0)) };
        for (x, y) in [from, to] {
            self.at(at.0 + x, at.1 + y);
        }
        let at = self.at(at.0, at.1);
        self.drawn.push(Drawn::Text(at, text.to_owned(), upright));
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

    /// Level dimension lines in a row, their ticks so short that those beside each other stay apart.
    pub(super) fn dims_level(&mut self, spans: &[(f64, f64)], y: f64) {
        let gaps = spans.windows(2).filter_map(|pair| Some(pair.last()?.0 - pair.first()?.1));
        let least = gaps.fold(f64::MAX, f64::min) / self.mm_per_px;
        self.tick_px = (least * 0.3).clamp(TICK_PX * 0.4, TICK_PX);
        for (from, to) in spans {
            self.dim_level(*from, *to, y);
        }
        self.tick_px = TICK_PX;
    }

    /// Whether a level dimension line has room for its figure in a row of others.
    pub(super) fn has_room(&self, from: f64, to: f64) -> bool {
        to - from > self.text_width(&figure(to - from)) + self.px(BETWEEN_PX)
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
        let tick = self.px(self.tick_px);
        for (x, y) in [from, to] {
            self.line("dim", (x - tick, y + tick), (x + tick, y - tick));
        }
    }
}

/// A length of a drawing: whole millimetres, a tenth where there is one.
fn figure(mm: f64) -> String {
    words::decimal(Length::mm(mm).in_mm(), 1)
}

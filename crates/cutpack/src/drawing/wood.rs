//! Wood on drawings for the screen: plies along what is cut and along edges, grain on faces. Lines as on a joiner's drawing,
//! fewer where there is less room, so that none run together.

use slotwright_core::cabinet::panel::{GrainAxis, PanelId, Stock};
use slotwright_core::range::Board;

use super::Subject;
use super::pen::{Dot, Drawn, Pen};

/// A ply that is drawn is at least so wide, in pixels.
const PLY_PX: f64 = 1.7;
/// From one line of grain to the next, in pixels.
const GRAIN_PX: f64 = 9.0;
/// Most lines of grain on a face.
const GRAIN_MOST: u8 = 40;

/// How many plies a part's board has; none where the range does not know it.
pub(super) fn plies(subject: Subject<'_>, stock: Stock) -> u8 {
    let key = match stock {
        Stock::Body => subject.range.model(&subject.choice.model).map(|model| &model.body),
        Stock::Back => Some(&subject.choice.back),
    };
    key.and_then(|key| subject.range.board(key)).map_or(0, Board::plies)
}

/// Whether the grain of a part runs along its u.
pub(super) fn runs_along_u(subject: Subject<'_>, id: PanelId) -> bool {
    subject.built.cut.case.panel(id).is_some_and(|panel| panel.grain == GrainAxis::AlongU)
}

impl Pen {
    /// A rectangle between two corners with its plies.
    pub(super) fn layered(&mut self, class: &'static str, from: Dot, to: Dot, plies: u8) {
        self.rect(class, from, to, 0.0);
        self.plies(from, to, plies);
    }

    /// Plies between two corners, along the longer side: all of them where there is room, else fewer, each standing for several.
    fn plies(&mut self, from: Dot, to: Dot, plies: u8) {
        let ((left, top), (right, bottom)) = ordered(from, to);
        let is_level = right - left >= bottom - top;
        let thick = if is_level { bottom - top } else { right - left };
        let layers = self.layers(thick, plies);
        let line = |number: u8| {
            let at = thick * f64::from(number) / f64::from(layers);
            if is_level { ((left, top + at), (right, top + at)) } else { ((left + at, top), (left + at, bottom)) }
        };
        self.strokes("ply", (1..layers).map(line));
    }

    /// How many layers of so many plies are drawn on an edge: an odd number, so that both faces are alike.
    fn layers(&self, thick: f64, plies: u8) -> u8 {
        let room = thick / self.px(PLY_PX);
        let layers =
            (0..plies.saturating_add(1) / 2).map(|pair| 2 * pair + 1).take_while(|count| f64::from(*count) <= room);
        layers.last().unwrap_or(1)
    }

    /// A turned rectangle with its plies: its corners one after the other, the first two along them.
    pub(super) fn layered_turned(&mut self, class: &'static str, corners: [Dot; 4], plies: u8) {
        self.area(class, &corners.map(|corner| (corner, 0.0)));
        let [a, b, c, d] = corners;
        let layers = self.layers(libm::hypot(c.0 - b.0, c.1 - b.1), plies);
        let between = |from: Dot, to: Dot, number: u8| {
            let share = f64::from(number) / f64::from(layers);
            (from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share)
        };
        self.strokes("ply", (1..layers).map(|number| (between(a, d, number), between(b, c, number))));
    }

    /// Grain between two corners, level or upright.
    pub(super) fn grain(&mut self, from: Dot, to: Dot, is_level: bool) {
        let ((left, top), (right, bottom)) = ordered(from, to);
        let (long, wide) = if is_level { (right - left, bottom - top) } else { (bottom - top, right - left) };
        let step = self.px(GRAIN_PX).max(wide / f64::from(GRAIN_MOST));
        let strokes = (0..GRAIN_MOST).flat_map(|number| {
            // The golden section sets lines and their gaps apart without a pattern.
            let turn = |by: f64| (f64::from(number) * by).fract();
            let across = step * (f64::from(number) + 0.3 + 0.4 * turn(0.618_034));
            let (gap, pause) = (0.15 + 0.75 * turn(0.381_966), 0.03 + 0.06 * turn(0.754_878));
            let start = 0.08 * turn(0.569_84);
            [(start, gap), (gap + pause, 1.0 - 0.5 * start)].map(|(from, to)| (across, from, to))
        });
        let strokes = strokes.filter(|(across, from, to)| *across < wide && to - from > 0.12);
        let at = |across: f64, share: f64| {
            if is_level { (left + long * share, top + across) } else { (left + across, top + long * share) }
        };
        self.strokes("grain", strokes.map(|(across, from, to)| (at(across, from), at(across, to))));
    }

    /// Lines that are one thing, on a drawing that shows wood.
    fn strokes(&mut self, class: &'static str, lines: impl Iterator<Item = (Dot, Dot)>) {
        if !self.shows_wood {
            return;
        }
        let lines: Vec<[Dot; 2]> = lines.map(|(from, to)| [self.at(from.0, from.1), self.at(to.0, to.1)]).collect();
        if !lines.is_empty() {
            self.drawn.push(Drawn::Strokes(class, lines));
        }
    }
}

/// The corners at the top left and the bottom right.
fn ordered(from: Dot, to: Dot) -> (Dot, Dot) {
    ((from.0.min(to.0), from.1.min(to.1)), (from.0.max(to.0), from.1.max(to.1)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(mm_per_px: f64, plies: u8) -> Vec<[Dot; 2]> {
        let mut pen = Pen::new(mm_per_px);
        pen.shows_wood = true;
        pen.plies((0.0, 18.0), (600.0, 0.0), plies);
        match pen.drawn.pop() {
            Some(Drawn::Strokes(_, lines)) => lines,
            _ => Vec::new(),
        }
    }

    /// All plies where there is room; fewer, an odd number with the same on both sides, where there is not; none at all in the end.
    #[test]
    fn plies_are_as_many_as_there_is_room_for() {
        for (mm_per_px, plies, expected) in
            [(0.5, 13, 12), (0.5, 9, 8), (1.0, 13, 8), (2.3, 13, 2), (3.0, 13, 2), (4.0, 13, 0), (0.1, 0, 0)]
        {
            let lines = lines(mm_per_px, plies);
            assert_eq!(lines.len(), expected, "{plies} plies at {mm_per_px} mm in a pixel");
            let sum: f64 = lines.iter().map(|[(_, y), _]| y - 9.0).sum();
            assert!(sum.abs() < 1e-9 && lines.iter().all(|[from, to]| from.0 < 1.0 && to.0 > 599.0), "{lines:?}");
        }
    }

    #[test]
    fn grain_stays_on_its_face() {
        for is_level in [true, false] {
            let mut pen = Pen::new(2.0);
            pen.shows_wood = true;
            pen.grain((100.0, 50.0), (700.0, 350.0), is_level);
            let Some(Drawn::Strokes("grain", lines)) = pen.drawn.pop() else { panic!("no grain") };
            assert!(lines.len() > 20, "{}", lines.len());
            for [(x1, y1), (x2, y2)] in lines {
                assert!(if is_level {
                    y1.to_bits() == y2.to_bits() && x2 > x1
                } else {
                    x1.to_bits() == x2.to_bits() && y2 > y1
                });
                assert!(x1 >= 100.0 && x2 <= 700.0 && y1 >= 50.0 && y2 <= 350.0, "{x1} {y1} {x2} {y2}");
            }
        }
    }
}

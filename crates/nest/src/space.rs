//! What is free of one sheet, as all its maximal empty rectangles.
//!
//! Source: Jylänki, A thousand ways to pack the bin, 2010 (maximal rectangles).

/// A rectangle by its corners; the upper ones lie outside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Rect {
    pub(crate) left: i32,
    pub(crate) low: i32,
    pub(crate) right: i32,
    pub(crate) high: i32,
}

impl Rect {
    pub(crate) const fn width(&self) -> i32 {
        self.right - self.left
    }

    pub(crate) const fn height(&self) -> i32 {
        self.high - self.low
    }

    pub(crate) const fn area(&self) -> i64 {
        self.width() as i64 * self.height() as i64
    }

    const fn meets(&self, other: &Self) -> bool {
        self.left < other.right && other.left < self.right && self.low < other.high && other.low < self.high
    }

    /// Whether they have a side or a corner in common, or more.
    const fn touches(&self, other: &Self) -> bool {
        self.left <= other.right && other.left <= self.right && self.low <= other.high && other.low <= self.high
    }

    const fn holds(&self, other: &Self) -> bool {
        self.left <= other.left && other.right <= self.right && self.low <= other.low && other.high <= self.high
    }
}

/// By what the free rectangle for a part is chosen; the part lies in its lower left corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Rule {
    /// As little as possible is left beside it, at the shorter side.
    Short,
    /// The smallest free rectangle.
    Area,
    /// As low as possible, then as far left.
    Low,
    /// As far left as possible, then as low.
    Left,
    /// As far as possible from the upper right corner.
    // Source: Gonçalves, Resende, A biased random key genetic algorithm for 2D and 3D bin packing problems, 2013.
    Far,
}

/// All of them.
pub(crate) const RULES: [Rule; 5] = [Rule::Short, Rule::Area, Rule::Low, Rule::Left, Rule::Far];

/// What is free of a sheet.
#[derive(Clone, Debug, Default)]
pub(crate) struct Space {
    /// All maximal empty rectangles that are at least as large as `least`.
    pub(crate) free: Vec<Rect>,
    fresh: Vec<Rect>,
    beside: Vec<Rect>,
    width: i32,
    height: i32,
    least: (i32, i32),
    /// The widest and the highest that any free rectangle is.
    most: (i32, i32),
}

impl Space {
    /// An empty sheet; free rectangles narrower or lower than `least` are forgotten.
    pub(crate) fn clear(&mut self, width: i32, height: i32, least: (i32, i32)) {
        (self.width, self.height, self.least) = (width, height, least);
        self.free.clear();
        self.free.push(Rect { left: 0, low: 0, right: width, high: height });
        self.most = (width, height);
    }

    /// Where a part of that size lies best, with how well: less is better.
    pub(crate) fn best(&self, width: i32, height: i32, rule: Rule) -> Option<((i64, i64), Rect)> {
        if width > self.most.0 || height > self.most.1 {
            return None;
        }
        let mut best: Option<((i64, i64), Rect)> = None;
        for free in &self.free {
            let (beside, above) = (free.width() - width, free.height() - height);
            if beside < 0 || above < 0 {
                continue;
            }
            let (beside, above, left, low) =
                (i64::from(beside), i64::from(above), i64::from(free.left), i64::from(free.low));
            let score = match rule {
                Rule::Short => (beside.min(above), beside.max(above)),
                Rule::Area => (free.area(), beside.min(above)),
                Rule::Low => (low + i64::from(height), left),
                Rule::Left => (left + i64::from(width), low),
                Rule::Far => {
                    let across = i64::from(self.width - width) - left;
                    let up = i64::from(self.height - height) - low;
                    (-(across * across + up * up), left)
                }
            };
            if best.is_none_or(|(known, _)| score < known) {
                let right = free.left + width;
                best = Some((score, Rect { left: free.left, low: free.low, right, high: free.low + height }));
            }
        }
        best
    }

    /// Takes a rectangle out of what is free.
    pub(crate) fn take(&mut self, part: Rect) {
        self.fresh.clear();
        self.beside.clear();
        let (wide, high) = self.least;
        let mut at = 0;
        while let Some(&free) = self.free.get(at) {
            if !free.meets(&part) {
                if free.touches(&part) {
                    self.beside.push(free);
                }
                at += 1;
                continue;
            }
            self.free.swap_remove(at);
            if part.left - free.left >= wide {
                self.fresh.push(Rect { right: part.left, ..free });
            }
            if free.right - part.right >= wide {
                self.fresh.push(Rect { left: part.right, ..free });
            }
            if part.low - free.low >= high {
                self.fresh.push(Rect { high: part.low, ..free });
            }
            if free.high - part.high >= high {
                self.fresh.push(Rect { low: part.high, ..free });
            }
        }
        // A rectangle that was there lies in no other; so only fresh ones can lie in one. They have a side in common with the
        // part, so what holds one does as well.
        for (at, fresh) in self.fresh.iter().enumerate() {
            let in_old = self.beside.iter().any(|free| free.holds(fresh));
            let in_fresh = || {
                self.fresh
                    .iter()
                    .enumerate()
                    .any(|(other_at, other)| other_at != at && other.holds(fresh) && (other != fresh || other_at < at))
            };
            if !in_old && !in_fresh() {
                self.free.push(*fresh);
            }
        }
        self.most = self.free.iter().fold((0, 0), |most, free| (most.0.max(free.width()), most.1.max(free.height())));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::random::Random;

    /// As x, y, width, height.
    fn shown(space: &Space) -> Vec<(i32, i32, i32, i32)> {
        let mut all: Vec<_> =
            space.free.iter().map(|free| (free.left, free.low, free.width(), free.height())).collect();
        all.sort_unstable();
        all
    }

    /// Calculated by hand from the rule of Jylänki 2010.
    #[test]
    fn what_is_free_is_split_at_each_part() {
        let mut space = Space::default();
        space.clear(10, 10, (1, 1));
        space.take(Rect { left: 0, low: 0, right: 6, high: 6 });
        assert_eq!(shown(&space), [(0, 6, 10, 4), (6, 0, 4, 10)]);
        let (_, place) = space.best(6, 4, Rule::Short).unwrap();
        assert_eq!(place, Rect { left: 0, low: 6, right: 6, high: 10 });
        space.take(place);
        assert_eq!(shown(&space), [(6, 0, 4, 10)]);
    }

    /// All maximal empty rectangles of a small sheet, by looking at every rectangle.
    fn slow(side: i32, taken: &[Rect]) -> Vec<(i32, i32, i32, i32)> {
        let mut all = Vec::new();
        for left in 0..side {
            for low in 0..side {
                for right in left + 1..=side {
                    for high in low + 1..=side {
                        let rect = Rect { left, low, right, high };
                        let is_free = |rect: &Rect| {
                            let is_inside = rect.left >= 0 && rect.low >= 0 && rect.right <= side && rect.high <= side;
                            is_inside && !taken.iter().any(|part| part.meets(rect))
                        };
                        let wider = [
                            Rect { left: left - 1, ..rect },
                            Rect { low: low - 1, ..rect },
                            Rect { right: right + 1, ..rect },
                            Rect { high: high + 1, ..rect },
                        ];
                        if is_free(&rect) && !wider.iter().any(is_free) {
                            all.push((left, low, rect.width(), rect.height()));
                        }
                    }
                }
            }
        }
        all.sort_unstable();
        all
    }

    #[test]
    fn every_maximal_rectangle_is_known_and_no_other() {
        let mut random = Random::new(7);
        for _ in 0..300 {
            let mut space = Space::default();
            space.clear(9, 9, (1, 1));
            let mut taken = Vec::new();
            for _ in 0..6 {
                let [left, low] = [0; 2].map(|_: i32| i32::try_from(random.below(8)).unwrap());
                let [width, height] = [0; 2].map(|_: i32| 1 + i32::try_from(random.below(4)).unwrap());
                let part = Rect { left, low, right: (left + width).min(9), high: (low + height).min(9) };
                space.take(part);
                taken.push(part);
                assert_eq!(shown(&space), slow(9, &taken), "{taken:?}");
            }
        }
    }
}

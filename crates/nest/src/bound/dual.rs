//! Dual feasible functions: sizes are changed so that no sheet holds more, and areas are summed then.
//!
//! Sources: Fekete, Schepers, New classes of fast lower bounds for bin packing problems, Mathematical Programming 91,
//! 2001; Carlier, Clautiaux, Moukrim, New reduction procedures and lower bounds for the two-dimensional bin packing
//! problem with fixed orientation, Computers & Operations Research 34, 2007 (the names f0, f1, f2); from memory.

use super::{Part, ceiling};

/// So many limits are tried for each kind of function, spread evenly over those that there are.
const LIMITS: usize = 48;
/// With more sizes than this fewer limits are tried.
const MANY: usize = 200;
const FEW_LIMITS: usize = 16;

/// Each size as a function changes it, and the sheet.
struct Changed {
    sizes: Vec<i64>,
    sheet: i64,
}

/// The best of all pairs of functions.
pub(super) fn bound(parts: &[Part], width: i64, height: i64) -> i64 {
    let of = |side: fn(&Part) -> i64| parts.iter().map(|part| (side(part), part.2)).collect::<Vec<(i64, i64)>>();
    let widths = functions(&of(|part| part.0), width);
    let heights = functions(&of(|part| part.1), height);
    let mut best = 0;
    for across in &widths {
        for up in &heights {
            let sizes = across.sizes.iter().zip(&up.sizes).zip(parts);
            let area: i64 = sizes.map(|((across, up), part)| across * up * part.2).sum();
            best = best.max(ceiling(area, across.sheet * up.sheet));
        }
    }
    best
}

/// All functions of one direction; sizes come with their counts.
fn functions(sizes: &[(i64, i64)], sheet: i64) -> Vec<Changed> {
    let mut limits: Vec<i64> = sizes.iter().map(|(size, _)| *size).collect();
    limits.extend(sizes.iter().map(|(size, _)| sheet - size + 1));
    limits.extend((2..8).map(|part| sheet / part));
    limits.extend((2..8).map(|part| sheet / part + 1));
    limits.retain(|limit| *limit >= 1 && 2 * limit <= sheet);
    limits.sort_unstable();
    limits.dedup();
    let most = if sizes.len() > MANY { FEW_LIMITS } else { LIMITS };
    let step = limits.len().div_ceil(most).max(1);
    let mut all = vec![Changed { sizes: sizes.iter().map(|(size, _)| *size).collect(), sheet }];
    for limit in limits.into_iter().step_by(step) {
        let changed = |function: &dyn Fn(i64) -> i64| Changed {
            sizes: sizes.iter().map(|(size, _)| function(*size)).collect(),
            sheet: function(sheet),
        };
        all.push(changed(&|size| long_and_short(size, sheet, limit)));
        all.push(changed(&|size| steps(size, sheet, limit)));
        let counts = Counts::of(sizes, sheet, limit);
        all.push(changed(&|size| counts.of_size(size, sheet, limit)));
    }
    all
}

/// f0: what is almost as long as the sheet becomes as long, what is short becomes nothing.
const fn long_and_short(size: i64, sheet: i64, limit: i64) -> i64 {
    if size > sheet - limit {
        sheet
    } else if size < limit {
        0
    } else {
        size
    }
}

/// f2: rounded down to whole steps below the middle, and up above it.
const fn steps(size: i64, sheet: i64, limit: i64) -> i64 {
    let whole = sheet / limit;
    if 2 * size > sheet {
        2 * (whole - (sheet - size) / limit)
    } else if 2 * size == sheet {
        whole
    } else {
        2 * (size / limit)
    }
}

/// f1: how many of the parts from the limit to the half a length holds.
struct Counts {
    /// The least length that so many need, from one on.
    lengths: Vec<i64>,
}

impl Counts {
    fn of(sizes: &[(i64, i64)], sheet: i64, limit: i64) -> Self {
        let mut small: Vec<(i64, i64)> =
            sizes.iter().copied().filter(|(size, _)| *size >= limit && 2 * size <= sheet).collect();
        small.sort_unstable();
        let mut lengths = Vec::new();
        let mut sum = 0;
        for (size, count) in small {
            for _ in 0..count {
                sum += size;
                if sum > sheet {
                    return Self { lengths };
                }
                lengths.push(sum);
            }
        }
        Self { lengths }
    }

    fn held(&self, length: i64) -> i64 {
        i64::try_from(self.lengths.partition_point(|needed| *needed <= length)).unwrap_or(i64::MAX)
    }

    fn of_size(&self, size: i64, sheet: i64, limit: i64) -> i64 {
        if 2 * size > sheet { self.held(sheet) - self.held(sheet - size) } else { i64::from(size >= limit) }
    }
}

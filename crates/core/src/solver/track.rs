//! A line of steps, some of which can be taken.

/// Neighbouring steps that can be taken, or that cannot.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stretch {
    /// First step.
    pub from: i32,
    /// Last step.
    pub to: i32,
    /// Whether all of them can be taken as things are.
    pub open: bool,
}

/// Whether a step can be taken as things are.
pub fn is_open(stretches: &[Stretch], step: i32) -> bool {
    stretches.iter().any(|stretch| stretch.open && (stretch.from..=stretch.to).contains(&step))
}

/// The nearest step that can be taken; the given one if none can.
pub fn nearest_open(stretches: &[Stretch], step: i32) -> i32 {
    let open = stretches.iter().filter(|stretch| stretch.open && stretch.from <= stretch.to);
    let near = open.map(|stretch| step.clamp(stretch.from, stretch.to));
    near.min_by_key(|near| near.abs_diff(step)).unwrap_or(step)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_nearest_open_step_is_found() {
        let stretch = |(from, to, open)| Stretch { from, to, open };
        let whole = [(0, 3, false), (4, 10, true), (11, 20, false), (21, 30, true)].map(stretch);
        for (wanted, taken) in [(0, 4), (4, 4), (7, 7), (12, 10), (19, 21), (30, 30)] {
            assert_eq!(nearest_open(&whole, wanted), taken);
        }
        assert_eq!(nearest_open(&[stretch((0, 9, false))], 5), 5);
        assert!(!is_open(&whole, 12) && is_open(&whole, 5));
    }
}

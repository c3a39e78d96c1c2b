//! Parts in an order by chance: the large ones before the small ones, more or less.

use crate::pieces::Kind;
use crate::random::Random;
use crate::sort::sort;
use crate::space::{RULES, Rule};

/// How much of its size, in parts of 256, a part may seem larger than it is.
const SPREADS: [u32; 4] = [0, 64, 300, 3000];

/// Any rule.
pub(crate) fn any_rule(random: &mut Random) -> Rule {
    RULES.get(random.place(RULES.len())).copied().unwrap_or(Rule::Short)
}

/// Puts parts in an order by a measure of their size that is chosen by chance, as is how far it is kept to; whether it is kept to
/// wholly.
pub(crate) fn arrange(parts: &mut [u32], keys: &mut Vec<(i64, u32)>, kinds: &[Kind], random: &mut Random) -> bool {
    let by = random.below(5);
    let spread = SPREADS.get(random.place(SPREADS.len())).copied().unwrap_or(0);
    keys.clear();
    for number in parts.iter() {
        let Some(kind) = kinds.get(*number as usize) else { continue };
        let (width, height) = (i64::from(kind.width), i64::from(kind.height));
        let size = match by {
            0 => width * height,
            1 => width.max(height) * width.max(height),
            2 => width * width,
            3 => height * height,
            _ => (width + height) * (width + height) / 4,
        };
        keys.push((-size * (256 + i64::from(random.below(spread + 1))), *number));
    }
    sort(keys);
    for (slot, (_, number)) in parts.iter_mut().zip(keys.iter()) {
        *slot = *number;
    }
    spread == 0
}

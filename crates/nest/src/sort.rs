//! The one way in which anything is sorted here: each sort of the standard library would be some kilobytes of the page.

/// Distances between what is compared.
// Source: Ciura, Best increments for the average case of Shellsort, FCT 2001; the last three by its rule, times 2.25.
const GAPS: [usize; 11] = [8861, 3938, 1750, 701, 301, 132, 57, 23, 10, 4, 1];

/// Sorts keys with their numbers, the least first.
pub(crate) fn sort(keys: &mut [(i64, u32)]) {
    for gap in GAPS {
        for start in gap..keys.len() {
            let mut at = start;
            while at >= gap && keys.get(at) < keys.get(at - gap) {
                keys.swap(at, at - gap);
                at -= gap;
            }
        }
    }
}

/// The places of a list in the order of their keys; of equal ones the first one first.
pub(crate) fn sorted(count: usize, key: &dyn Fn(usize) -> i64) -> Vec<u32> {
    let mut keys: Vec<(i64, u32)> = Vec::with_capacity(count);
    for at in 0..count {
        keys.push((key(at), u32::try_from(at).unwrap_or(u32::MAX)));
    }
    sort(&mut keys);
    keys.into_iter().map(|(_, number)| number).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::random::Random;

    #[test]
    fn sorted_as_the_standard_library_does_it() {
        let mut random = Random::new(3);
        for count in [0, 1, 2, 5, 57, 300, 9000] {
            let mut keys: Vec<(i64, u32)> =
                (0..count).map(|_| (i64::from(random.below(500)) - 250, random.below(9))).collect();
            let mut expected = keys.clone();
            expected.sort_unstable();
            sort(&mut keys);
            assert_eq!(keys, expected);
        }
    }
}

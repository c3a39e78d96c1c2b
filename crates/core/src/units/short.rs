//! Sorting of short lists. The standard library's sort is 4 to 14 kB of the page's program for each type of element, and
//! none of these lists is longer than some dozen.

/// Sorts a short list by keys that may be compared in part; what is equal, or cannot be compared, keeps its order.
///
/// ```
/// let mut sizes = [3.0, 1.0, 2.0];
/// slotwright_core::units::short::sort(&mut sizes, |size| *size);
/// assert_eq!(sizes, [1.0, 2.0, 3.0]);
/// ```
pub fn sort<T, K: PartialOrd>(list: &mut [T], key: impl Fn(&T) -> K) {
    for end in 1..list.len() {
        for at in (1..=end).rev() {
            let Some([one, other]) = list.get_mut(at - 1..=at) else { break };
            if key(one) <= key(other) || key(other).partial_cmp(&key(one)).is_none() {
                break;
            }
            core::mem::swap(one, other);
        }
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #[test]
        fn it_is_the_standard_librarys_order(list in proptest::collection::vec((0_u8..6, any::<u8>()), 0..24)) {
            let (mut own, mut theirs) = (list.clone(), list);
            sort(&mut own, |(key, _)| *key);
            theirs.sort_by_key(|(key, _)| *key);
            prop_assert_eq!(own, theirs);
        }
    }
}

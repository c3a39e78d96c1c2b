//! Why some things cannot hold together, and which of them to let go: for anything of which can be said whether it
//! holds.

/// A smallest part of some things that are known not to hold together, none of which can be left out: the earlier ones
/// are rather named. `holds` says whether some of them, with what is always there, can; fewer can if more can.
///
/// What it calls holding because nobody found out is not ruled out: the part is right then, though perhaps not smallest.
// Source: Junker, "QuickXplain", AAAI 2004.
pub(super) fn conflict<T: Copy>(things: &[T], holds: &mut impl FnMut(&[T]) -> bool) -> Vec<T> {
    fn part<T: Copy>(base: &[T], added: bool, things: &[T], holds: &mut impl FnMut(&[T]) -> bool) -> Vec<T> {
        if added && !holds(base) {
            return Vec::new();
        }
        if things.len() <= 1 {
            return things.to_vec();
        }
        let (first, second) = things.split_at(things.len() / 2);
        let late = part(&[base, first].concat(), !first.is_empty(), second, holds);
        let early = part(&[base, &*late].concat(), !late.is_empty(), first, holds);
        [early, late].concat()
    }
    part(&[], true, things, holds)
}

/// Some of these things without which the others hold, none of which has to stay: the earlier ones are rather let go.
/// `None` if nothing holds without all of them either.
// Source: Felfernig, Schubert and Zehentner, "An efficient diagnosis algorithm for inconsistent constraint sets"
// (FastDiag), AI EDAM 26(1), 2012.
pub(super) fn diagnosis<T: Copy + PartialEq>(things: &[T], holds: &mut impl FnMut(&[T]) -> bool) -> Option<Vec<T>> {
    fn part<T: Copy + PartialEq>(gone: &[T], things: &[T], kept: &[T], holds: &mut impl FnMut(&[T]) -> bool) -> Vec<T> {
        if !gone.is_empty() && holds(kept) {
            return Vec::new();
        }
        if things.len() <= 1 {
            return things.to_vec();
        }
        let without = |gone: &[T]| kept.iter().copied().filter(|thing| !gone.contains(thing)).collect::<Vec<T>>();
        let (first, second) = things.split_at(things.len() / 2);
        let late = part(first, second, &without(first), holds);
        let early = part(&late, first, &without(&late), holds);
        [early, late].concat()
    }
    if holds(things) {
        return Some(Vec::new());
    }
    holds(&[]).then(|| part(&[], things, things, holds))
}

#[cfg(test)]
mod tests;

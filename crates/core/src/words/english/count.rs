//! Numbers of things: English has one form for one of them and another for all other numbers.

/// A number as it is written, and what there are so many of.
// Source: Unicode CLDR, plural rules of English: `one` is the 1 that is written without decimals, all else is `other`.
pub(super) fn counted(number: &str, one: &str, other: &str) -> String {
    format!("{number} {}", if number == "1" { one } else { other })
}

/// Numbers that are spelled where nothing is measured, from one: within a sentence and at its beginning.
const SPELLED: [[&str; 2]; 12] = [
    ["one", "One"],
    ["two", "Two"],
    ["three", "Three"],
    ["four", "Four"],
    ["five", "Five"],
    ["six", "Six"],
    ["seven", "Seven"],
    ["eight", "Eight"],
    ["nine", "Nine"],
    ["ten", "Ten"],
    ["eleven", "Eleven"],
    ["twelve", "Twelve"],
];

/// So many things within a sentence, as nobody measured them: `two bays`.
pub(super) fn number_of(number: u8, one: &str, other: &str) -> String {
    spelled(number, 0, one, other)
}

/// The same at the beginning of a sentence: `Two bays`.
pub(super) fn number_of_first(number: u8, one: &str, other: &str) -> String {
    spelled(number, 1, one, other)
}

fn spelled(number: u8, form: usize, one: &str, other: &str) -> String {
    let thing = if number == 1 { one } else { other };
    let forms = usize::from(number).checked_sub(1).and_then(|at| SPELLED.get(at));
    match forms.and_then(|forms| forms.get(form)) {
        Some(spelled) => format!("{spelled} {thing}"),
        None => format!("{number} {thing}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn small_numbers_are_spelled() {
        for (number, within, first) in [
            (0, "0 bays", "0 bays"),
            (1, "one bay", "One bay"),
            (2, "two bays", "Two bays"),
            (12, "twelve bays", "Twelve bays"),
            (13, "13 bays", "13 bays"),
        ] {
            assert_eq!(number_of(number, "bay", "bays"), within);
            assert_eq!(number_of_first(number, "bay", "bays"), first);
        }
    }

    #[test]
    fn one_thing_is_said_in_its_own_form() {
        for (number, said) in
            [("0", "0 doors"), ("1", "1 door"), ("2", "2 doors"), ("11", "11 doors"), ("1.5", "1.5 doors")]
        {
            assert_eq!(counted(number, "door", "doors"), said);
        }
    }
}

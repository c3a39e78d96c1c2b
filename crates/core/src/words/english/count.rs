//! Numbers of things: English has one form for one of them and another for all other numbers.

/// A number as it is written, and what there are so many of.
// Source: Unicode CLDR, plural rules of English: `one` is the 1 that is written without decimals, all else is `other`.
pub(super) fn counted(number: &str, one: &str, other: &str) -> String {
    format!("{number} {}", if number == "1" { one } else { other })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_thing_is_said_in_its_own_form() {
        for (number, said) in
            [("0", "0 doors"), ("1", "1 door"), ("2", "2 doors"), ("11", "11 doors"), ("1.5", "1.5 doors")]
        {
            assert_eq!(counted(number, "door", "doors"), said);
        }
    }
}

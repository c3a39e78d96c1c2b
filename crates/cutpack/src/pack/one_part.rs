//! One part that is cut again.

use core::fmt::{self, Display};
use core::str::FromStr;

use slotwright_core::words::pack::Message;

use super::lot::Part;
use super::{Orders, TakenOrder};

/// A part that was damaged and is cut again: of which order, and its id or its number there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OnePart {
    /// The number of its order, or the beginning of the order's digest, as on labels.
    pub order: String,
    /// Its id, as `shelf-2-1`, or its number, as `7`.
    pub part: String,
}

impl OnePart {
    /// Whether it is that part of one of these orders.
    pub fn is(&self, part: &Part<'_>, orders: &Orders<'_>) -> bool {
        let digest = |order: &&TakenOrder<'_>| order.number == part.order && order.spec.digest.short() == self.order;
        let its_order = self.order.parse() == Ok(part.order) || orders.taken.iter().any(|order| digest(&order));
        its_order && (self.part == part.panel.id.to_string() || self.part.parse() == Ok(part.number))
    }
}

impl Display for OnePart {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}/{}", self.order, self.part)
    }
}

impl FromStr for OnePart {
    type Err = String;

    /// Reads `2/shelf-1-1`, `2/7`, a mark as `2-07`, or what the code of a label says.
    ///
    /// # Errors
    ///
    /// What is wanted, in words.
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let text = text.trim();
        // In a mark both are numbers; in an id there is a slash before any dash.
        let mark = || text.split_once('-').filter(|(_, number)| number.parse::<u32>().is_ok());
        let read = text.split_once('/').or_else(mark).and_then(|(order, part)| {
            // A number, or the beginning of a digest as labels have it.
            let is_number = order.parse().is_ok_and(|number: u32| number > 0);
            let is_digest = order.len() == 8 && order.bytes().all(|digit| digit.is_ascii_hexdigit());
            ((is_number || is_digest) && !part.is_empty()).then(|| Self { order: order.into(), part: part.into() })
        });
        read.ok_or_else(|| Message::PartWanted(text).text())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_part_is_named_by_its_order_or_its_label() {
        let named = |text: &str| text.parse::<OnePart>().map(|one| (one.order, one.part)).ok();
        let of = |order: &str, part: &str| Some((order.to_owned(), part.to_owned()));
        assert_eq!(named("2/shelf-1-1"), of("2", "shelf-1-1"));
        assert_eq!(named(" 2/7\n"), of("2", "7"));
        assert_eq!(named("2-07"), of("2", "07"));
        assert_eq!(named("0a1b2c3d/top"), of("0a1b2c3d", "top"));
        for wrong in ["", "2", "2/", "/7", "0/7", "0a1b2c3/top", "0a1b2c3g/top", "top/2", "shelf-1", "0-07", "2-x"] {
            assert_eq!(named(wrong), None, "{wrong}");
        }
    }
}

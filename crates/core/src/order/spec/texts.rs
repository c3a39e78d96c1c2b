//! The texts of an order: bounded and printable, since they end up on labels.

use super::Customer;
use crate::input::members::{is_seen, may_stand};
use crate::words::reader::Message;

/// A text of an order that cannot stand there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BadText {
    /// Nothing but white space, or letters of which nothing is seen.
    Empty {
        /// Where.
        pointer: String,
    },
    /// Too long.
    TooLong {
        /// Where.
        pointer: String,
        /// Characters found.
        found: usize,
        /// Characters allowed.
        most: usize,
    },
    /// A control character, one that is not seen but reorders or breaks what is, or one of somebody's own making.
    Control {
        /// Where.
        pointer: String,
    },
    /// No address lines, or too many.
    Lines {
        /// Lines found.
        found: usize,
        /// Lines allowed.
        most: usize,
    },
}

impl BadText {
    /// What is said of it.
    pub fn message(&self) -> Message<'_> {
        match self {
            Self::Empty { pointer } => Message::Empty(pointer),
            Self::TooLong { pointer, found, most } => Message::TooLong { place: pointer, found: *found, most: *most },
            Self::Control { pointer } => Message::Unprintable(pointer),
            Self::Lines { found, most } => Message::AddressLines { found: *found, most: *most },
        }
    }
}

const LINE_MOST: usize = 100;
const LINES_MOST: usize = 6;
const REMARK_MOST: usize = 500;

pub(super) fn check(customer: &Customer, remark: &str) -> Result<(), BadText> {
    line("/customer/name".into(), &customer.name)?;
    line("/customer/contact".into(), &customer.contact)?;
    if customer.address.is_empty() || customer.address.len() > LINES_MOST {
        return Err(BadText::Lines { found: customer.address.len(), most: LINES_MOST });
    }
    for (at, text) in customer.address.iter().enumerate() {
        line(format!("/customer/address/{at}"), text)?;
    }
    printable("/remark".into(), remark, REMARK_MOST)
}

fn line(pointer: String, text: &str) -> Result<(), BadText> {
    if !text.chars().any(is_seen) {
        return Err(BadText::Empty { pointer });
    }
    printable(pointer, text, LINE_MOST)
}

fn printable(pointer: String, text: &str, most: usize) -> Result<(), BadText> {
    let found = text.chars().count();
    if found > most {
        Err(BadText::TooLong { pointer, found, most })
    } else if !text.chars().all(may_stand) {
        Err(BadText::Control { pointer })
    } else {
        Ok(())
    }
}

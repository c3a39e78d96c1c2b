//! What the order desk says to the page: what came of an order, or why nothing did, and what is wrong with a range file.

use crate::range::Problem;
use crate::units::day::Day;

/// An entry of the order's form.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Entry {
    /// Who orders.
    Name,
    /// How to reach them.
    Contact,
    /// What else they say.
    Remark,
    /// A line of where it goes.
    AddressLine,
}

/// What the desk says.
#[derive(Clone, Copy, Debug)]
pub enum Message<'a> {
    /// The range file has these problems.
    RangeFaults(&'a [Problem]),
    /// The unit cannot be made.
    Unmade,
    /// The title of what shows a link.
    LinkToUnit,
    /// The name of its field.
    Link,
    /// A button that copies it.
    Copy,
    /// A button that hands it to another program.
    Share,
    /// A button that closes what shows it.
    Close,
    /// What it holds, and how a phone opens it.
    LinkCautions,
    /// The name of the picture of a link.
    CodeTitle,
    /// No QR code holds the link.
    NoCode,
    /// A button that writes a mail to that address.
    MailTo(&'a str),
    /// A button that opens the page at that address.
    OrdersPage(&'a str),
    /// A button that gives the saved file to another program.
    ShareFile,
    /// The subject of a mail with the file of that name.
    Subject(&'a str),
    /// The file has to be attached to it by hand.
    Attach,
    /// An entry is empty.
    Empty(Entry),
    /// An entry has more characters than it may have.
    TooLong {
        /// Which.
        entry: Entry,
        /// How many it has.
        found: usize,
        /// How many it may have.
        most: usize,
    },
    /// An entry holds what cannot be printed.
    Unprintable(Entry),
    /// The address has no lines, or more than it may have.
    AddressLines {
        /// How many it has.
        found: usize,
        /// How many it may have.
        most: usize,
    },
    /// A file is no order.
    NoOrder,
    /// A later version wrote the order.
    Newer,
    /// An earlier version wrote the order.
    Older,
    /// The order was changed.
    Changed,
    /// A part of the order cannot be read, at that place.
    PartUnread(&'a str),
    /// The order holds a bad entry, told by that sentence.
    BadEntry(&'a str),
    /// The order is of another range.
    OtherRange,
    /// The order is of another version of the range.
    OtherVersion,
    /// The order of that day is open and holds.
    Holds(Day),
    /// The order of that day is open and does not hold.
    Differs(Day),
}

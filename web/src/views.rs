//! The page, question by question.

pub mod aloud;
pub mod ask;
pub mod bays;
pub mod drafts;
pub mod ends;
pub mod goals;
pub mod header;
pub mod link;
pub mod looks;
pub mod order;
pub mod place;
pub mod plinth;
pub mod room;
pub mod settled;
pub mod sheet;
pub mod size;
pub mod solid;
pub mod stage;
pub mod tally;

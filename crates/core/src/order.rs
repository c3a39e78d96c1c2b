//! From a choice to an order: everything derived, as a document, as an order spec, as a workshop
//! takes it in.

pub mod derive;
pub mod document;
pub mod intake;
pub mod parts;
pub mod spec;

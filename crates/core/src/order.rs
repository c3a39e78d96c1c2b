//! From a choice to an order: everything derived, as a document, as an order spec.

pub mod derive;
pub mod document;
pub mod parts;
pub mod spec;

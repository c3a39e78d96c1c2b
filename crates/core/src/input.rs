//! What comes in as text: entries of people, JSON member by member, canonical JSON and its digest.

pub mod bundle;
pub mod entry;
pub mod members;
pub mod seal;
pub(crate) mod strict;

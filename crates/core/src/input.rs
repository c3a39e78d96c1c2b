//! What comes in as text: entries of people, figures between page and workers, JSON member by member, canonical JSON and
//! its digest.

pub mod bundle;
pub mod entry;
pub mod fault;
pub mod members;
pub mod seal;
pub(crate) mod spelling;
pub(crate) mod strict;
pub mod wire;

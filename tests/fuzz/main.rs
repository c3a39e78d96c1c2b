//! Nothing from outside makes the core panic or go on without end: range files, notes and orders of
//! arbitrary bytes, and good ones with something wrong in them.
//!
//! `SLOTWRIGHT_FUZZ_SECONDS=600 cargo test -p slotwright-tests --test fuzz -- --nocapture` goes on for that
//! long with each property, and names the slowest case.

#[cfg(test)]
mod edits;
#[cfg(test)]
mod notes;
#[cfg(test)]
mod orders;
#[cfg(test)]
mod ranges;
#[cfg(test)]
mod runs;
#[cfg(test)]
mod unit;

//! Nothing from outside makes the core panic or go on without end: range files, compact texts and orders of
//! arbitrary bytes, and good ones with something wrong in them.
//!
//! `SLOTWRIGHT_FUZZ_SECONDS=600 cargo test -p slotwright-tests --test fuzz -- --nocapture` goes on for that
//! long with each property, and names the slowest case.

#[cfg(test)]
mod compact;
#[cfg(test)]
mod edits;
#[cfg(test)]
mod orders;
#[cfg(test)]
mod ranges;
#[cfg(test)]
mod runs;
#[cfg(test)]
mod unit;

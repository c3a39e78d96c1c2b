//! Published figures that the core has to reproduce, each with its source and tolerance.

mod layup;
mod place;
mod sag;
mod team;
mod weight;

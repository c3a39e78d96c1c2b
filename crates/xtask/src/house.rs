//! The house rules that a machine can hold, as tests.

mod arrows;
mod english;
mod files;
mod licence;
mod literals;

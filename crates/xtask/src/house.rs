//! The house rules that a machine can hold, as tests.

mod arrows;
mod circles;
mod english;
mod files;
mod imports;
mod licence;
mod literals;
mod texts;

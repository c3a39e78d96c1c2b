//! The house rules that a machine can hold, as tests.

mod arrows;
mod files;
mod licence;
mod literals;
mod texts;

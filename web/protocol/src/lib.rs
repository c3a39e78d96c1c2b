//! What passes between the page and its workers: questions with their numbers, and answers with the same.
//!
//! A message is one text, since what passes costs by the piece and not by the letter. How its parts stand in it only
//! [`parts`] knows. Page and workers are one program, so no message ever meets a reader of another version.

pub mod adviser;
pub mod desk;
pub mod packs;
mod parts;
#[cfg(test)]
mod passing;
pub mod stage;

pub use parts::{Parts, Writer};

/// What a worker says once it listens.
pub const READY: &str = "ready";

/// Which question it is: of two, the later one has the higher number.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Number(u32);

impl Number {
    /// The one after it.
    #[must_use]
    pub fn next(self) -> Self {
        Self(self.0.wrapping_add(1))
    }
}

/// A question or an answer.
pub trait Message: Sized {
    /// Writes all of its parts.
    fn write(&self, to: &mut Writer);

    /// Reads them in the same order; `None` of what was not written so.
    fn read(from: &mut Parts<'_>) -> Option<Self>;
}

/// A message with its number as one text.
pub fn tie(number: Number, message: &impl Message) -> String {
    let mut writer = Writer::default();
    writer.say(&number.0);
    message.write(&mut writer);
    writer.into_text()
}

/// What was tied together.
pub fn untie<M: Message>(text: &str) -> Option<(Number, M)> {
    let mut parts = Parts::of(text);
    Some((Number(parts.parse()?), M::read(&mut parts)?))
}

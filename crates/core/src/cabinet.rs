//! The unit as a thing: where everything stands, its parts, its joints, how it goes together.

pub mod assembly;
pub(crate) mod blank;
pub mod bow;
pub mod case;
pub mod hook;
pub mod joint;
pub mod layout;
pub mod leaf;
pub mod panel;
pub mod plinth;
pub mod swing;

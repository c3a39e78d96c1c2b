//! English: the only catalogue yet. Each file matches all that its area can say.

pub(super) mod adviser;
pub(super) mod desk;
pub(super) mod page;
pub(super) mod picture;
pub(super) mod stage;
pub(super) mod tool;

//! English (British): the one folder with texts that people read. Another language is another folder like it.

use super::locale::Locale;

pub(super) mod assembly;
pub(super) mod card;
pub(super) mod change;
pub(super) mod entry;
pub(super) mod finding;
pub(super) mod format;
pub(super) mod message;
pub(super) mod name;
pub(super) mod remark;

/// Whose figures these sentences have.
const LOCALE: Locale = Locale::English;

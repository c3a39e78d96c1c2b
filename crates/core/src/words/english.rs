//! English (British): the one folder with texts that people read. Another language is another folder like it.

use super::locale::Locale;

pub(super) mod adviser;
pub(super) mod assembly;
pub(super) mod card;
pub(super) mod change;
mod count;
pub(super) mod desk;
pub(super) mod did;
pub(super) mod draft;
pub(super) mod entry;
pub(super) mod file;
pub(super) mod finding;
pub(super) mod finishing;
pub(super) mod format;
pub(super) mod given;
pub(super) mod help;
pub(super) mod json;
pub(super) mod link;
pub(super) mod message;
pub(super) mod name;
pub(super) mod needed;
pub(super) mod pack;
pub(super) mod page;
pub(super) mod paper;
pub(super) mod picture;
pub(super) mod reader;
pub(super) mod remark;
pub(super) mod sheet;
pub(super) mod shell;
pub(super) mod stage;
pub(super) mod tool;
pub(super) mod workshop;
pub(super) mod wrong;

/// Whose figures these sentences have.
const LOCALE: Locale = Locale::English;

//! What reading a range file leaves behind beside the range.

use alloc::collections::BTreeMap;

use super::wrong::Wrong;

/// Problems found so far, and where everything stands.
#[derive(Debug, Default)]
pub(crate) struct ReadLog {
    /// Byte offset, path and what is wrong.
    pub(crate) problems: Vec<(usize, String, Wrong)>,
    /// Byte offset of every value by its path.
    pub(crate) places: BTreeMap<String, usize>,
    /// Paths of what may be there and is not.
    pub(crate) absent: Vec<String>,
}

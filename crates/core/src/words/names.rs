//! Names that the range gives, as it writes them; of what it lacks, the key.

use crate::range::{Key, Range};

/// Where a catalogue looks names up.
#[derive(Clone, Copy)]
pub(super) struct Names<'a>(pub(super) &'a Range);

impl<'a> Names<'a> {
    pub(super) fn model(self, key: &'a Key) -> &'a str {
        self.0.model(key).map_or(key.as_str(), |model| &model.name)
    }

    pub(super) fn board(self, key: &'a Key) -> &'a str {
        self.0.board(key).map_or(key.as_str(), |board| &board.name)
    }

    pub(super) fn finish(self, key: &'a Key) -> &'a str {
        self.0.finish(key).map_or(key.as_str(), |finish| &finish.name)
    }

    pub(super) fn hole(self, key: &'a Key) -> &'a str {
        self.0.hole(key).map_or(key.as_str(), |hole| &hole.name)
    }

    pub(super) fn device(self, key: &'a Key) -> &'a str {
        self.0.device(key).map_or(key.as_str(), |device| &device.name)
    }

    pub(super) fn plug(self, key: &'a Key) -> &'a str {
        self.0.plug(key).map_or(key.as_str(), |plug| &plug.name)
    }
}

//! Files as one file.

use std::io::{Cursor, Write};

use slotwright_cutpack::pack::PackFile;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, ZipWriter};

/// A ZIP into which files go one after another, each dated by the first day that a ZIP can say: the same files, the same
/// bytes.
// Source: PKWARE, APPNOTE.TXT, 4.4.6: dates begin in 1980.
pub(crate) struct Zipping {
    zip: ZipWriter<Cursor<Vec<u8>>>,
    options: SimpleFileOptions,
}

impl Zipping {
    pub(crate) fn begin() -> Self {
        let options = SimpleFileOptions::default()
            .compression_method(CompressionMethod::Deflated)
            .last_modified_time(DateTime::DEFAULT);
        Self { zip: ZipWriter::new(Cursor::new(Vec::new())), options }
    }

    /// Adds a file; nothing if that is beyond what a ZIP holds.
    pub(crate) fn add(&mut self, file: &PackFile) -> Option<()> {
        self.zip.start_file(file.path.as_str(), self.options).ok()?;
        self.zip.write_all(&file.bytes).ok()
    }

    pub(crate) fn done(self) -> Option<Vec<u8>> {
        Some(self.zip.finish().ok()?.into_inner())
    }
}

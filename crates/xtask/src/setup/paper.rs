//! Programs that read what is printed: poppler for PDF, zbar for QR codes.

use anyhow::Result;

use super::apt;
use crate::command::on_path;

/// What the tests of documents call, and the Debian package that has it.
const READERS: [(&str, &str); 5] = [
    ("pdfinfo", "poppler-utils"),
    ("pdffonts", "poppler-utils"),
    ("pdftotext", "poppler-utils"),
    ("pdftoppm", "poppler-utils"),
    ("zbarimg", "zbar-tools"),
];

/// Finds or installs all of them; to install both packages takes half a minute.
pub(crate) fn ready() -> Result<()> {
    let mut missing: Vec<&str> =
        READERS.iter().filter(|(program, _)| on_path(&[program]).is_none()).map(|(_, package)| *package).collect();
    missing.dedup();
    if missing.is_empty() { Ok(()) } else { apt::install(&missing, "readers of PDF and of QR codes") }
}

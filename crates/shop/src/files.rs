//! Reading and writing files: bounded, never waiting for what may not come, never over what is there.

use std::fs::{self, File, Metadata, OpenOptions};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};

use crate::error::{FileError, ReadFault, WriteFault};

mod pack;

pub(crate) use pack::{MANIFEST, new_folder, write_folder};

/// Largest file that is read at all.
const BYTES_MOST: u64 = 1024 * 1024;

/// So many files that broken-off runs have left beside one are passed over.
const LEFT_MOST: u32 = 100;

/// Whether standard input was read.
static TAKEN: AtomicBool = AtomicBool::new(false);

/// The bytes of a file, `-` for standard input, at most `most`.
///
/// # Errors
///
/// What is no regular file is not opened: a pipe without a writer, or a device, would never end.
pub(crate) fn bytes(path: &Path, most: u64) -> Result<Vec<u8>, ReadFault> {
    let beyond = |bytes: &[u8]| u64::try_from(bytes.len()).is_ok_and(|length| length > most);
    let mut bytes = Vec::new();
    if path.as_os_str() == "-" {
        if TAKEN.swap(true, Ordering::Relaxed) {
            return Err(ReadFault::Again);
        }
        io::stdin().lock().take(most + 1).read_to_end(&mut bytes).map_err(ReadFault::System)?;
        return if beyond(&bytes) { Err(ReadFault::TooMuch { most }) } else { of_bytes(bytes) };
    }
    let found = fs::metadata(path).map_err(ReadFault::System)?;
    if found.is_dir() {
        return Err(ReadFault::Folder);
    }
    if !found.is_file() {
        return Err(ReadFault::NoFile);
    }
    let file = File::open(path).map_err(ReadFault::System)?;
    file.take(most + 1).read_to_end(&mut bytes).map_err(ReadFault::System)?;
    if beyond(&bytes) { Err(ReadFault::TooLarge { bytes: found.len().max(most + 1), most }) } else { of_bytes(bytes) }
}

/// Everything that is read is text, and some editors save it in an encoding that nobody expects.
// Source: Unicode Standard, 23.8: the byte order mark as UTF-16 writes it.
fn of_bytes(bytes: Vec<u8>) -> Result<Vec<u8>, ReadFault> {
    if bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]) { Err(ReadFault::Utf16) } else { Ok(bytes) }
}

/// The text of a file.
pub(crate) fn text(path: &Path) -> Result<String, FileError> {
    let text = bytes(path, BYTES_MOST).and_then(|bytes| {
        String::from_utf8(bytes).map_err(|wrong| ReadFault::NotText { at: wrong.utf8_error().valid_up_to() })
    });
    text.map_err(|fault| FileError::Read { path: path.display().to_string(), fault })
}

fn refused(path: &Path, fault: WriteFault) -> FileError {
    FileError::Write { path: path.display().to_string(), fault }
}

/// Whether a file may be written: what is there already is only written over by `force`.
///
/// # Errors
///
/// Why not.
pub(crate) fn free(path: &Path, force: bool) -> Result<(), FileError> {
    match fs::metadata(path) {
        Ok(found) if found.is_dir() => Err(refused(path, WriteFault::Folder)),
        Ok(found) if found.is_file() && !force => Err(refused(path, WriteFault::Exists)),
        Ok(found) if !found.is_file() && !takes_all(&found) => Err(refused(path, WriteFault::NoFile)),
        _ => Ok(()),
    }
}

/// Whether it is a device such as a terminal, which keeps nothing that could be lost; a pipe may have no reader.
#[cfg(unix)]
fn takes_all(found: &Metadata) -> bool {
    use std::os::unix::fs::FileTypeExt;
    found.file_type().is_char_device()
}

#[cfg(not(unix))]
fn takes_all(_: &Metadata) -> bool {
    false
}

/// Writes a file: all of it or nothing. What could not be written to its end is taken away, and a file that is written
/// over stays as it is until all of the new one is on the disk: that is written beside it, so its folder has to be
/// writable too.
///
/// # Errors
///
/// See [`free`]; or what the system says.
pub(crate) fn write(path: &Path, text: impl AsRef<[u8]>, force: bool) -> Result<(), FileError> {
    free(path, force)?;
    let text = text.as_ref();
    let written = match fs::metadata(path) {
        Ok(found) if found.is_file() => replace(path, &found, text),
        // A device keeps nothing that could be lost.
        Ok(_) => {
            let begun = OpenOptions::new().write(true).open(path).and_then(|mut file| file.write_all(text));
            return begun.map_err(|error| refused(path, WriteFault::Begun(error)));
        }
        Err(_) if force && path.is_symlink() => write_through(path, text),
        Err(_) => create(path).and_then(|file| fill(path, file, text)),
    };
    written.map_err(|error| match error.kind() {
        io::ErrorKind::AlreadyExists if !force => refused(path, WriteFault::Exists),
        _ => refused(path, WriteFault::System(error)),
    })
}

/// A file where nothing is, not even a link that leads nowhere.
fn create(path: &Path) -> io::Result<File> {
    OpenOptions::new().write(true).create_new(true).open(path)
}

/// Writes a new file to its end, or takes it away.
fn fill(path: &Path, mut file: File, text: &[u8]) -> io::Result<()> {
    // Some disks say only at the end that they are full.
    let written = file.write_all(text).and_then(|()| file.sync_all());
    if written.is_err() {
        // That it could not be written is said; a rest that cannot be taken away says it as well.
        let _ = fs::remove_file(path);
    }
    written
}

/// Writes the file that a link leads to, where none is yet.
fn write_through(link: &Path, text: &[u8]) -> io::Result<()> {
    let file = OpenOptions::new().write(true).create(true).truncate(true).open(link)?;
    fill(&fs::canonicalize(link)?, file, text)
}

/// Writes a file beside another one and puts it in that one's place, with what may be done with it; links stay links.
fn replace(path: &Path, old: &Metadata, text: &[u8]) -> io::Result<()> {
    let path = fs::canonicalize(path)?;
    // Who may not write into it may not put another one in its place.
    drop(OpenOptions::new().write(true).open(&path)?);
    let (beside, file) = beside(&path)?;
    // Nobody may read the new one who may not read the old one, not even before it is whole.
    let permitted = file.set_permissions(old.permissions());
    let put = permitted.and_then(|()| fill(&beside, file, text)).and_then(|()| fs::rename(&beside, &path));
    if put.is_err() {
        let _ = fs::remove_file(&beside);
    }
    put
}

/// A new file in the folder of another one; names that a run which was broken off has left are passed over.
fn beside(path: &Path) -> io::Result<(PathBuf, File)> {
    let mut number = 0_u32;
    loop {
        let mut name = path.as_os_str().to_owned();
        name.push(format!(".{}-{number}.part", std::process::id()));
        let name = PathBuf::from(name);
        match create(&name) {
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists && number < LEFT_MOST => number += 1,
            made => return made.map(|file| (name, file)),
        }
    }
}

/// Makes a folder if there is none.
pub(crate) fn folder(path: &Path) -> Result<(), FileError> {
    if fs::metadata(path).is_ok_and(|found| !found.is_dir()) {
        return Err(refused(path, WriteFault::File));
    }
    fs::create_dir_all(path).map_err(|error| refused(path, WriteFault::System(error)))
}

/// Takes away a file that an earlier run may have left.
pub(crate) fn remove(path: &Path) -> Result<(), FileError> {
    match fs::remove_file(path) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(refused(path, WriteFault::System(error))),
        _ => Ok(()),
    }
}

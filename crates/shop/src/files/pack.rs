//! Folders that are written whole or not at all.

use std::fs;
use std::path::{Path, PathBuf};

use serde_json::Value;
use slotwright_cutpack::pack::manifest::FORMAT;

use super::{create, fill, refused};
use crate::error::{FileError, WriteFault};

/// The file by which a folder is told to be a pack.
pub(crate) const MANIFEST: &str = "manifest.json";

/// Whether a folder may be written: nothing is there, or a pack that may be replaced.
///
/// # Errors
///
/// Why not.
pub(crate) fn new_folder(path: &Path, force: bool) -> Result<(), FileError> {
    let Ok(found) = fs::metadata(path) else { return Ok(()) };
    if !found.is_dir() {
        return Err(refused(path, WriteFault::File));
    }
    if is_empty(path) {
        return Ok(());
    }
    if !is_pack(path) {
        return Err(FileError::NotAPack { path: path.display().to_string() });
    }
    if force { Ok(()) } else { Err(refused(path, WriteFault::Exists)) }
}

/// Whether a folder is a pack and nothing else: its manifest says so, and names every file in it.
fn is_pack(path: &Path) -> bool {
    let Ok(text) = fs::read_to_string(path.join(MANIFEST)) else { return false };
    let Ok(manifest) = serde_json::from_str::<Value>(&text) else { return false };
    let files = manifest["files"].as_array().into_iter().flatten();
    let named: Vec<PathBuf> = files.filter_map(|file| Some(path.join(file["path"].as_str()?))).collect();
    manifest["format"] == FORMAT
        && holds_only(path, &|file| file == path.join(MANIFEST) || named.iter().any(|known| known == file))
}

/// Whether all files within a folder are of some kind.
fn holds_only(folder: &Path, known: &dyn Fn(&Path) -> bool) -> bool {
    let Ok(entries) = fs::read_dir(folder) else { return false };
    entries
        .flatten()
        .map(|entry| entry.path())
        .all(|path| if path.is_dir() && !path.is_symlink() { holds_only(&path, known) } else { known(&path) })
}

fn is_empty(path: &Path) -> bool {
    fs::read_dir(path).is_ok_and(|mut entries| entries.next().is_none())
}

/// Writes a folder beside its place and puts it there once it is whole: what was there stays until then.
///
/// # Errors
///
/// See [`new_folder`]; or what the system says.
pub(crate) fn write_folder<'a>(
    path: &Path,
    files: impl Iterator<Item = (&'a str, &'a Vec<u8>)>,
    force: bool,
) -> Result<(), FileError> {
    new_folder(path, force)?;
    let (beside, before) = (named_beside(path, "part"), named_beside(path, "before"));
    let system = |error| refused(path, WriteFault::System(error));
    let written = fs::create_dir_all(&beside).and_then(|()| {
        for (name, bytes) in files {
            let file = beside.join(name);
            file.parent().map_or(Ok(()), fs::create_dir_all)?;
            create(&file).and_then(|open| fill(&file, open, bytes))?;
        }
        let replaced = path.is_dir();
        if replaced {
            fs::rename(path, &before)?;
        }
        let put = fs::rename(&beside, path);
        if put.is_err() && replaced {
            // What was there comes back; if it cannot, it stands beside its place.
            let _ = fs::rename(&before, path);
        }
        put
    });
    let done = written.map_err(system);
    // What is left of a pack that could not be written, and of the one that was replaced.
    for rest in [&beside, &before] {
        if rest.is_dir() && path.is_dir() || done.is_err() && rest == &beside {
            let _ = fs::remove_dir_all(rest);
        }
    }
    done
}

fn named_beside(path: &Path, end: &str) -> PathBuf {
    let mut name = path.components().as_path().as_os_str().to_owned();
    name.push(format!(".{}.{end}", std::process::id()));
    PathBuf::from(name)
}

//! `slotwright solid`: the assembled unit as a binary glTF file.

use slotwright_core::derive::derive;
use slotwright_core::words;
use slotwright_cutpack::gltf;

use crate::args::Solid;
use crate::files::{self, FileError};
use crate::output::GOOD;

/// Only a unit that can be made is written.
pub(super) fn run(asked: &Solid) -> Result<u8, FileError> {
    let (range, choice, backlog) = files::made(&asked.made)?;
    let range = files::measured(range, &asked.measured)?;
    let derived = derive(&range, &choice, super::today(), &backlog);
    let Some(bytes) = gltf::glb(&derived) else {
        return Err(FileError::NotOrderable(derived.stops().map(words::sentence).collect()));
    };
    files::write(&asked.out, bytes)?;
    Ok(GOOD)
}

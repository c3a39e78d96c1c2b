//! `slotwright solid`: the assembled unit as a binary glTF file.

use slotwright_core::order::derive::derive;
use slotwright_core::words;
use slotwright_cutpack::gltf;

use crate::args::Solid;
use crate::error::FileError;
use crate::files;
use crate::inputs::{self, Inputs};
use crate::output::GOOD;

/// Only a unit that can be made is written.
pub(super) fn run(asked: &Solid) -> Result<u8, FileError> {
    let Inputs { range, choice, backlog, .. } = inputs::made(&asked.made)?;
    let range = inputs::measured(range, &asked.measured)?;
    let derived = derive(&range, &choice, super::any_day(&range), &backlog);
    let Some(bytes) = gltf::glb(&derived) else {
        return Err(FileError::NotOrderable(derived.stops().map(words::sentence).collect()));
    };
    files::write(&asked.out, bytes, asked.over.force)?;
    Ok(GOOD)
}

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
    let derived = derive(&range, &choice, super::today(), &backlog);
    let reasons: Vec<String> = derived.stops().map(words::sentence).collect();
    let (Some(built), Some(finish), true) = (&derived.built, range.finish(&choice.finish), reasons.is_empty()) else {
        return Err(FileError::NotOrderable(reasons));
    };
    let name = range.model(&choice.model).map_or("unit", |model| model.name.as_str());
    files::write(&asked.out, gltf::glb(built, finish, name))?;
    Ok(GOOD)
}

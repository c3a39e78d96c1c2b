//! `slotwright schema`: the published JSON Schemas.

use crate::args::Schema;
use crate::error::FileError;
use crate::files;
use crate::nearest::meant;
use crate::output::{self, GOOD};
use crate::schemas;

pub(super) fn run(asked: &Schema) -> Result<u8, FileError> {
    if let Some(folder) = &asked.out {
        let force = asked.over.force;
        let all = schemas::all().into_iter().map(|(name, schema)| (folder.join(schemas::file_name(name)), schema));
        let all: Vec<_> = all.collect();
        files::folder(folder)?;
        all.iter().try_for_each(|(path, _)| files::free(path, force))?;
        all.iter().try_for_each(|(path, schema)| files::write(path, schema, force))?;
        return Ok(GOOD);
    }
    let Some(name) = &asked.document else {
        output::print(schemas::all().into_iter().map(|(name, _)| name))?;
        return Ok(GOOD);
    };
    let schema = schemas::all().into_iter().find(|(known, _)| known == name).map(|(_, schema)| schema);
    let unknown = || {
        let known = schemas::all();
        FileError::NoDocument { name: name.clone(), meant: meant(name, known.iter().map(|(known, _)| *known)) }
    };
    output::print([schema.ok_or_else(unknown)?.trim_end()])?;
    Ok(GOOD)
}

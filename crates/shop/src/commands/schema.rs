//! `slotwright schema`: the published JSON Schemas.

use crate::args::Schema;
use crate::files::{self, FileError};
use crate::output::{self, GOOD};
use crate::schemas;

pub(super) fn run(asked: &Schema) -> Result<u8, FileError> {
    if let Some(folder) = &asked.out {
        for (name, schema) in schemas::all() {
            files::write(&folder.join(schemas::file_name(name)), &schema)?;
        }
        return Ok(GOOD);
    }
    let Some(name) = &asked.document else {
        output::print(schemas::all().into_iter().map(|(name, _)| name))?;
        return Ok(GOOD);
    };
    let schema = schemas::all().into_iter().find(|(known, _)| known == name).map(|(_, schema)| schema);
    output::print([schema.ok_or_else(|| FileError::NoDocument(name.clone()))?.trim_end()])?;
    Ok(GOOD)
}

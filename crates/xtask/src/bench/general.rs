//! What a general packing library needs for the published instances: `rectpack`, for Python.

use std::collections::BTreeMap;
use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result};

use crate::command::read;
use crate::root::Root;
use crate::{say, setup};

/// The fewest sheets of all its ways, by class; none where its libraries are not to be had.
pub(super) fn sheets(root: &Root, instances: &Path) -> Result<Option<BTreeMap<String, u64>>> {
    let python = match setup::python::ready(root) {
        Ok(python) => python,
        Err(error) => {
            say::step(&format!("rectpack is not to be had ({error:#}): nothing is compared with it"));
            return Ok(None);
        }
    };
    say::step("The same instances by rectpack: 144 ways each, some minutes");
    let script = root.join("tests/outside/rectpack_sheets.py");
    let said = read(Command::new(python).arg("-B").arg(script).arg(instances))?;
    let mut classes: BTreeMap<String, u64> = BTreeMap::new();
    for line in said.lines() {
        let mut cells = line.split('\t');
        let (class, sheets) = cells.next().zip(cells.next()).with_context(|| format!("{line:?} is no result"))?;
        *classes.entry(class.to_owned()).or_default() += sheets.parse::<u64>().with_context(|| line.to_owned())?;
    }
    Ok(Some(classes))
}

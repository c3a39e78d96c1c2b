//! `cargo xtask schemas`: the JSON Schemas of all documents, written by the workshop's tool.

use anyhow::Result;

use crate::arguments::Arguments;
use crate::command::{self, cargo};
use crate::root::Root;

/// Writes them beside the tool that reads the documents.
pub(crate) fn run(root: &Root, _: &Arguments) -> Result<()> {
    command::run(
        cargo(root).args(["run", "--quiet", "--package", "slotwright-shop", "--"]).args([
            "schema",
            "--out",
            "crates/shop/schemas",
            "--force",
        ]),
        "read the tool's message above",
    )
}

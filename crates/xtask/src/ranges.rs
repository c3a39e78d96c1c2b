//! The range files as they are served: without the comments that document them for people in the repository.

use std::fs;

use anyhow::{Context, Result, ensure};
use toml::Table;

use crate::root::Root;

#[path = "../../../web/bare.rs"]
mod bare;

/// Takes the comments out of each range file in dist.
pub(crate) fn lighten(root: &Root) -> Result<()> {
    let folder = root.dist().join("ranges");
    for entry in fs::read_dir(&folder).with_context(|| folder.display().to_string())? {
        let file = entry.with_context(|| folder.display().to_string())?.path();
        let said = || file.display().to_string();
        let text = fs::read_to_string(&file).with_context(said)?;
        fs::write(&file, without_comments(&text).with_context(said)?).with_context(said)?;
    }
    Ok(())
}

/// The same file without its comments. Its lines keep their numbers, since problems are told with them.
fn without_comments(text: &str) -> Result<String> {
    let lines: Vec<&str> = text.lines().map(bare::bare).collect();
    let light = lines.join("\n") + "\n";
    let table = |text: &str| text.parse::<Table>().context("the range file is no TOML");
    ensure!(
        table(text)? == table(&light)?,
        "its comments cannot be told from its texts. To do: write texts with a # between double quotes, on one line"
    );
    Ok(light)
}

#[test]
fn comments_go_and_lines_keep_their_numbers() -> Result<()> {
    let light = without_comments("# What it is.\nkey = \"a # b\" # A remark.\n\n[build]\n  # Another.\n  gap = 3\n")?;
    assert_eq!(light, "\nkey = \"a # b\"\n\n[build]\n\ngap = 3\n");
    Ok(())
}

#[test]
fn a_file_that_would_say_something_else_is_refused() {
    for text in ["key = 'a # b'", "key = \"a \\\" # b\"", "key = \"\"\"\n  a # b\"\"\""] {
        assert!(without_comments(text).is_err(), "{text}");
    }
}

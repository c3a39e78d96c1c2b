//! Everything this program prints.

#![expect(clippy::print_stdout, clippy::print_stderr, reason = "the one output module of xtask")]

use std::time::Duration;

/// A line as it is.
pub(crate) fn line(text: &str) {
    println!("{text}");
}

/// One step of a task, before it is done.
pub(crate) fn step(text: &str) {
    println!("-- {text}");
}

/// The headline of a stage.
pub(crate) fn stage(text: &str) {
    println!("\n== {text}");
}

/// A stage that has passed, with the time it took.
pub(crate) fn passed(text: &str, took: Duration) {
    println!("== {text}: passed in {:.1} s", took.as_secs_f64());
}

/// A table: the first column left, the others right.
pub(crate) fn table(rows: &[Vec<String>]) {
    let columns = rows.iter().map(Vec::len).max().unwrap_or(0);
    let widths: Vec<usize> = (0..columns)
        .map(|column| rows.iter().filter_map(|row| row.get(column)).map(|cell| cell.chars().count()).max().unwrap_or(0))
        .collect();
    for row in rows {
        let cells: Vec<String> = row
            .iter()
            .zip(&widths)
            .enumerate()
            .map(
                |(column, (cell, width))| {
                    if column == 0 { format!("{cell:<width$}") } else { format!("{cell:>width$}") }
                },
            )
            .collect();
        println!("{}", cells.join("  "));
    }
}

/// The end of a task that failed.
pub(crate) fn failure(error: &anyhow::Error) {
    eprintln!("\nxtask failed: {error}");
    for cause in error.chain().skip(1) {
        eprintln!("  because {cause}");
    }
}

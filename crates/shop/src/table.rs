//! Tables as people read them in a terminal.

use core::ops::Range;

/// Lines of columns, each as wide as its widest cell; the last one is not filled up.
pub(crate) fn lines<const N: usize>(indent: &str, rows: &[[String; N]]) -> Vec<String> {
    with_figures(indent, rows, 0..0)
}

/// The same with some columns of figures: they stand at the right, so that their points stand under each other where
/// all of a column have as many decimals.
pub(crate) fn with_figures<const N: usize>(indent: &str, rows: &[[String; N]], figures: Range<usize>) -> Vec<String> {
    let width = |text: &str| text.chars().count();
    let widths: [usize; N] =
        core::array::from_fn(|at| rows.iter().filter_map(|row| row.get(at)).map(|cell| width(cell)).max().unwrap_or(0));
    let line = |row: &[String; N]| {
        let cells = row.iter().zip(widths).enumerate().map(|(at, (cell, wide))| {
            let blank = " ".repeat(wide - width(cell));
            if figures.contains(&at) { format!("{blank}{cell}") } else { format!("{cell}{blank}") }
        });
        format!("{indent}{}", cells.collect::<Vec<_>>().join("  ")).trim_end().to_owned()
    };
    rows.iter().map(line).collect()
}

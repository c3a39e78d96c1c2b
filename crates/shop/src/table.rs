//! Tables as people read them in a terminal.

/// Lines of columns, each as wide as its widest cell; the last one is not filled up.
pub(crate) fn lines<const N: usize>(indent: &str, rows: &[[String; N]]) -> Vec<String> {
    let width = |text: &str| text.chars().count();
    let widths: [usize; N] =
        core::array::from_fn(|at| rows.iter().filter_map(|row| row.get(at)).map(|cell| width(cell)).max().unwrap_or(0));
    let line = |row: &[String; N]| {
        let cells = row.iter().zip(widths).map(|(cell, wide)| format!("{cell}{}", " ".repeat(wide - width(cell))));
        format!("{indent}{}", cells.collect::<Vec<_>>().join("  ")).trim_end().to_owned()
    };
    rows.iter().map(line).collect()
}

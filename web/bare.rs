//! A line of a range file without its comment: for what is built into the page, and for what is served beside it.

/// The line up to its comment; a `#` within quotes begins none.
pub(crate) fn bare(line: &str) -> &str {
    let mut quoted = false;
    let end = line.find(|letter| {
        quoted ^= letter == '"';
        letter == '#' && !quoted
    });
    line[..end.unwrap_or(line.len())].trim()
}

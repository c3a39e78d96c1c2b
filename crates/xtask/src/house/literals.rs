//! Texts in quotation marks in a Rust file, outside comments, attributes and tests.

/// A text in quotation marks.
#[derive(Debug)]
pub(super) struct Literal<'a> {
    /// What stands between the marks, with its quotation marks and line breaks as they come out.
    pub(super) text: String,
    /// The line on which it begins, from 1.
    pub(super) line: usize,
    /// All code before it.
    pub(super) before: &'a str,
    /// All code after it.
    pub(super) after: &'a str,
}

/// All texts of a file in order; unit tests stand at its end.
pub(super) fn literals(file: &str) -> Vec<Literal<'_>> {
    let code = file.split("#[cfg(test)]\nmod tests").next().unwrap_or_default();
    let (mut found, mut at) = (Vec::new(), 0);
    while let Some(rest) = code.get(at..).filter(|rest| !rest.is_empty()) {
        at += if rest.starts_with("//") {
            rest.find('\n').unwrap_or(rest.len())
        } else if rest.starts_with("#[") || rest.starts_with("#![") {
            attribute(rest)
        } else if let Some(length) = character(rest) {
            length
        } else if let Some((open, close)) = opened(rest) {
            let inside = rest.get(open..).unwrap_or_default();
            let length = end(inside, &close);
            let before = code.get(..at).unwrap_or_default();
            let after = inside.get(length + close.len()..).unwrap_or_default();
            let text = plain(inside.get(..length).unwrap_or_default());
            found.push(Literal { text, line: before.matches('\n').count() + 1, before, after });
            open + length + close.len()
        } else {
            rest.chars().next().map_or(1, char::len_utf8)
        };
    }
    found
}

/// Length of an attribute; brackets within its texts do not count.
fn attribute(rest: &str) -> usize {
    let (mut depth, mut quoted, mut escaped) = (0_u32, false, false);
    for (at, letter) in rest.char_indices() {
        match letter {
            _ if escaped => escaped = false,
            '\\' if quoted => escaped = true,
            '"' => quoted = !quoted,
            '[' if !quoted => depth += 1,
            ']' if !quoted => {
                depth -= 1;
                if depth == 0 {
                    return at + 1;
                }
            }
            _ => {}
        }
    }
    rest.len()
}

/// Length of a character in single marks; a lifetime is none.
fn character(rest: &str) -> Option<usize> {
    let inside = rest.strip_prefix('\'')?;
    let length = match inside.strip_prefix('\\') {
        Some(escape) => 1 + escape.char_indices().skip(1).find(|(_, letter)| *letter == '\'')?.0,
        None => inside.chars().next()?.len_utf8(),
    };
    inside.get(length..)?.starts_with('\'').then_some(length + 2)
}

/// Length of what opens a text, and what closes it.
fn opened(rest: &str) -> Option<(usize, String)> {
    if rest.starts_with('"') {
        return Some((1, "\"".into()));
    }
    let marks = rest.strip_prefix('r')?;
    let hashes = marks.len() - marks.trim_start_matches('#').len();
    marks.get(hashes..)?.starts_with('"').then(|| (hashes + 2, format!("\"{}", "#".repeat(hashes))))
}

/// Where a text ends.
fn end(inside: &str, close: &str) -> usize {
    let mut escaped = false;
    for (at, letter) in inside.char_indices() {
        if !escaped && inside.get(at..).is_some_and(|rest| rest.starts_with(close)) {
            return at;
        }
        escaped = letter == '\\' && !escaped && close == "\"";
    }
    inside.len().saturating_sub(close.len())
}

/// A text with its escapes resolved as far as English needs it: marks, breaks, and lines that go on.
fn plain(text: &str) -> String {
    let (mut plain, mut rest) = (String::new(), text);
    while let Some((before, escape)) = rest.split_once('\\') {
        plain.push_str(before);
        rest = match escape.chars().next() {
            Some('"') => {
                plain.push('"');
                escape.get(1..).unwrap_or_default()
            }
            Some('u') => escape.split_once('}').map_or("", |(_, after)| after),
            Some('\n') => escape.trim_start(),
            Some(_) => {
                plain.push('\n');
                escape.get(1..).unwrap_or_default()
            }
            None => "",
        };
    }
    plain + rest
}

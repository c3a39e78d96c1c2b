//! HTML for the page: names are what people typed, and stand in it as text alone.

use core::fmt::Display;

/// Text within HTML and its attributes.
pub(crate) fn escaped(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '"' => escaped.push_str("&quot;"),
            other => escaped.push(other),
        }
    }
    escaped
}

/// An element without attributes around HTML.
pub(crate) fn element(name: &str, html: impl Display) -> String {
    format!("<{name}>{html}</{name}>")
}

/// A row of a list of figures: what it is, and how much.
pub(crate) fn pair(what: &str, figure: &str) -> String {
    format!("<div><dt>{}</dt><dd>{}</dd></div>", escaped(what), escaped(figure))
}

/// What is to be minded, or stops a pack.
pub(crate) fn told(kind: &str, told: &[impl AsRef<str>]) -> String {
    let all: String = told.iter().map(|text| element("p", escaped(text.as_ref()))).collect();
    if all.is_empty() { all } else { format!("<div class=\"tell {kind}\">{all}</div>") }
}

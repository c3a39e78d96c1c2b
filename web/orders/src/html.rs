//! Texts within HTML.

/// A text within HTML and its attributes: names are what people typed, links are what came.
pub(crate) fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

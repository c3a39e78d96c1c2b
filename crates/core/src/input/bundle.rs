//! Several texts as one: a draft as the browser keeps it.

/// Stands between texts: the unit separator of ASCII, which no text has that people see.
const BETWEEN: &str = "\u{1f}";

/// Ties texts together.
///
/// ```
/// use slotwright_core::input::bundle::{tie, untie};
/// let texts = ["width".to_string(), String::new(), "1 400 mm".to_string()];
/// assert_eq!(untie(&tie(&texts)), texts);
/// ```
pub fn tie(texts: &[String]) -> String {
    texts.join(BETWEEN)
}

/// The texts that were tied together; of nothing one empty text.
pub fn untie(bundle: &str) -> Vec<String> {
    bundle.split(BETWEEN).map(Into::into).collect()
}

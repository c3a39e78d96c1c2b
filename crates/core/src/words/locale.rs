//! The languages.

/// Whose language and way of writing figures. To add one: a variant here, and a folder beside `english`; the compiler
/// then asks for everything else.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Locale {
    /// British English, with thin spaces between thousands.
    #[default]
    English,
}

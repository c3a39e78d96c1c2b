//! What the page says before its program runs: `web/page/index.html` has a place for each of these, which the build fills.

/// A text of the page that is there before the program, and its place there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each says in the catalogue what it stands for")]
pub enum Label {
    /// The language's tag. Source: BCP 47.
    Language,
    Title,
    Description,
    Promise,
    Loading,
    NoScript,
}

impl Label {
    /// All of them.
    pub const ALL: [Self; 6] =
        [Self::Language, Self::Title, Self::Description, Self::Promise, Self::Loading, Self::NoScript];

    /// The word by which the page names its place.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Language => "language",
            Self::Title => "title",
            Self::Description => "description",
            Self::Promise => "promise",
            Self::Loading => "loading",
            Self::NoScript => "no-script",
        }
    }
}

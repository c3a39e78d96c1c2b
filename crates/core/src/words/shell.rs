//! What the page says before its program runs, and beside it: `web/page/index.html` has a place for each of these, which the
//! build fills.

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
    /// The page as a program among others.
    Name,
    NewVersion,
    NewRange,
    LoadNow,
    Later,
    /// The name of the place where a failed start is told.
    Trouble,
    TooOld,
    Missing,
    Stopped,
    Slow,
    WhatIsMade,
}

impl Label {
    /// All of them.
    pub const ALL: [Self; 17] = [
        Self::Language,
        Self::Title,
        Self::Description,
        Self::Promise,
        Self::Loading,
        Self::NoScript,
        Self::Name,
        Self::NewVersion,
        Self::NewRange,
        Self::LoadNow,
        Self::Later,
        Self::Trouble,
        Self::TooOld,
        Self::Missing,
        Self::Stopped,
        Self::Slow,
        Self::WhatIsMade,
    ];

    /// The word by which the page names its place.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Language => "language",
            Self::Title => "title",
            Self::Description => "description",
            Self::Promise => "promise",
            Self::Loading => "loading",
            Self::NoScript => "no-script",
            Self::Name => "name",
            Self::NewVersion => "new-version",
            Self::NewRange => "new-range",
            Self::LoadNow => "load-now",
            Self::Later => "later",
            Self::Trouble => "trouble",
            Self::TooOld => "too-old",
            Self::Missing => "missing",
            Self::Stopped => "stopped",
            Self::Slow => "slow",
            Self::WhatIsMade => "what-is-made",
        }
    }
}

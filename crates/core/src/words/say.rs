//! Where the messages of the areas meet the catalogue of the present locale.

use super::locale::Locale;
use super::{
    LOCALE, adviser, desk, draft, english, file, finishing, help, link, needed, pack, page, paper, picture, reader,
    sheet, shell, stage, tool, workshop,
};

impl adviser::Message<'_> {
    /// The text.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::adviser::message(self),
        }
    }
}

impl desk::Message<'_> {
    /// The sentence.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::desk::message(self),
        }
    }
}

impl draft::Message<'_> {
    /// The text.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::draft::message(self),
        }
    }
}

impl file::Label {
    /// The text.
    pub const fn text(self) -> &'static str {
        match LOCALE {
            Locale::English => english::file::label(self),
        }
    }
}

impl file::Message<'_> {
    /// The text.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::file::message(self),
        }
    }
}

impl finishing::Message<'_> {
    /// The text.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::finishing::message(self),
        }
    }
}

impl help::Label {
    /// The text.
    pub const fn text(self) -> &'static str {
        match LOCALE {
            Locale::English => english::help::label(self),
        }
    }
}

impl link::Message<'_> {
    /// The sentence.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::link::message(self),
        }
    }
}

impl pack::Label {
    /// The text.
    pub const fn text(self) -> &'static str {
        match LOCALE {
            Locale::English => english::pack::label(self),
        }
    }
}

impl pack::Message<'_> {
    /// The text.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::pack::message(self),
        }
    }
}

impl page::Label {
    /// The text.
    pub const fn text(self) -> &'static str {
        match LOCALE {
            Locale::English => english::page::label(self),
        }
    }
}

impl page::Message<'_> {
    /// The text.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::page::message(self),
        }
    }
}

impl paper::Label {
    /// The text.
    pub const fn text(self) -> &'static str {
        match LOCALE {
            Locale::English => english::paper::label(self),
        }
    }
}

impl paper::Message<'_> {
    /// The text.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::paper::message(self),
        }
    }
}

impl shell::Label {
    /// The text.
    pub const fn text(self) -> &'static str {
        match LOCALE {
            Locale::English => english::shell::label(self),
        }
    }
}

impl reader::Label {
    /// The text.
    pub const fn text(self) -> &'static str {
        match LOCALE {
            Locale::English => english::reader::label(self),
        }
    }
}

impl reader::Message<'_> {
    /// The text.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::reader::message(self),
        }
    }
}

impl stage::Message<'_> {
    /// The sentence.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::stage::message(self),
        }
    }
}

impl tool::Label {
    /// The text.
    pub const fn text(self) -> &'static str {
        match LOCALE {
            Locale::English => english::tool::label(self),
        }
    }
}

impl tool::Message<'_> {
    /// The text.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::tool::message(self),
        }
    }
}

impl picture::BayTold<'_> {
    /// What is in it.
    pub fn text(&self) -> String {
        match LOCALE {
            Locale::English => english::picture::bay(self),
        }
    }
}

impl sheet::Message {
    /// The text.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::sheet::message(self),
        }
    }
}

impl needed::Needed {
    /// What it is, within a list.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::needed::needed(self),
        }
    }
}

impl needed::RoomNeeded {
    /// How much room it is, and of what it is made.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::needed::room(self),
        }
    }
}

impl picture::UnitTold<'_> {
    /// The unit in a few sentences.
    pub fn text(&self) -> String {
        match LOCALE {
            Locale::English => english::picture::unit(self),
        }
    }
}

impl picture::StepTitle {
    /// The title.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::picture::step_title(self),
        }
    }
}

impl workshop::Label {
    /// The text.
    pub const fn text(self) -> &'static str {
        match LOCALE {
            Locale::English => english::workshop::label(self),
        }
    }
}

impl workshop::Message<'_> {
    /// The text.
    pub fn text(self) -> String {
        match LOCALE {
            Locale::English => english::workshop::message(self),
        }
    }
}

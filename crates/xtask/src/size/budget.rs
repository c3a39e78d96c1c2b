//! The size budget of the app.

use anyhow::{Context, Result, bail};
use toml::Table;

/// What the app weighs, in bytes.
#[derive(Debug, Clone, Copy)]
pub(super) struct Totals {
    pub(super) first_load: u64,
    pub(super) visit: u64,
    pub(super) room: u64,
    pub(super) workshop: u64,
    pub(super) fonts: u64,
}

/// What the app may weigh, in bytes.
#[derive(Debug, PartialEq)]
pub(super) struct Budget {
    first_load_brotli: u64,
    visit_brotli: u64,
    room_brotli: u64,
    workshop_brotli: u64,
    fonts: u64,
    later: Vec<String>,
}

impl Budget {
    pub(super) fn parse(text: &str) -> Result<Self> {
        let table: Table = text.parse().context("the budget is no TOML")?;
        let bytes = |key: &str| {
            let number = table.get(key).and_then(toml::Value::as_integer);
            number
                .and_then(|number| u64::try_from(number).ok())
                .with_context(|| format!("{key} wants a number of bytes"))
        };
        let paths = table.get("later").and_then(toml::Value::as_array).context("later wants a list of paths")?;
        let later = paths.iter().map(|path| path.as_str().map(str::to_owned)).collect::<Option<_>>();
        Ok(Self {
            first_load_brotli: bytes("first_load_brotli")?,
            visit_brotli: bytes("visit_brotli")?,
            room_brotli: bytes("room_brotli")?,
            workshop_brotli: bytes("workshop_brotli")?,
            fonts: bytes("fonts")?,
            later: later.context("later wants paths as texts")?,
        })
    }

    /// Whether a file is loaded only after the first visit's start.
    pub(super) fn is_later(&self, path: &str) -> bool {
        let name = path.rsplit('/').next().unwrap_or_default();
        self.later.iter().any(|beginning| path.starts_with(beginning) || name.starts_with(beginning))
    }

    /// Fails when a total is above its limit.
    pub(super) fn hold(&self, found: &Totals) -> Result<()> {
        let totals = [
            ("the first load (brotli)", found.first_load, self.first_load_brotli),
            ("programs and scripts of a whole visit (brotli)", found.visit, self.visit_brotli),
            ("the component for the room (brotli)", found.room, self.room_brotli),
            ("what the workshop's page loads besides (brotli)", found.workshop, self.workshop_brotli),
            ("the fonts", found.fonts, self.fonts),
        ];
        for (what, found, allowed) in totals {
            if found > allowed {
                bail!(
                    "{what}: {found} bytes, {} above the budget of {allowed}. To do: make it \
                     lighter; the budget grows only for a reason",
                    found - allowed
                );
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "first_load_brotli = 220_000\nvisit_brotli = 400_000\nroom_brotli = 90_000\nworkshop_brotli = 800_000\nfonts = 60_000\nlater = [\"worker-\"]\n";
    const MOST: Totals = Totals { first_load: 220_000, visit: 400_000, room: 90_000, workshop: 800_000, fonts: 60_000 };

    #[test]
    fn a_total_at_the_limit_passes_and_a_byte_more_does_not() -> Result<()> {
        let budget = Budget::parse(TEXT)?;
        assert!(budget.hold(&MOST).is_ok());
        for (totals, part) in [
            (Totals { first_load: 220_001, ..MOST }, "first load"),
            (Totals { visit: 400_001, ..MOST }, "whole visit"),
            (Totals { room: 90_001, ..MOST }, "the room"),
            (Totals { workshop: 800_001, ..MOST }, "workshop"),
            (Totals { fonts: 60_001, ..MOST }, "fonts"),
        ] {
            let said = budget.hold(&totals).map_err(|error| error.to_string());
            assert!(matches!(&said, Err(text) if text.contains(part)), "{said:?}");
        }
        Ok(())
    }

    #[test]
    fn what_comes_later_is_known_by_the_beginning_of_its_path() -> Result<()> {
        let budget = Budget::parse(TEXT)?;
        assert!(budget.is_later("worker-1234567890abcdef_bg.wasm") && budget.is_later("app-1/worker-2.wasm"));
        assert!(!budget.is_later("app-worker.js"));
        Ok(())
    }

    #[test]
    fn a_wrong_budget_names_the_key() {
        for (text, key) in [
            ("fonts = 1\nlater = []", "first_load_brotli"),
            ("first_load_brotli = -1\nfonts = 1\nlater = []", "first_load_brotli"),
            ("first_load_brotli = 1\nroom_brotli = 1\nfonts = 1\nlater = []", "visit_brotli"),
            ("first_load_brotli = 1\nvisit_brotli = 1\nfonts = 1\nlater = []", "room_brotli"),
            (
                "first_load_brotli = 1\nvisit_brotli = 1\nroom_brotli = 1\nworkshop_brotli = 1\nfonts = 'much'\nlater = []",
                "fonts",
            ),
            ("first_load_brotli = 1\nvisit_brotli = 1\nroom_brotli = 1\nfonts = 1\nlater = []", "workshop_brotli"),
            ("first_load_brotli = 1\nvisit_brotli = 1\nroom_brotli = 1\nworkshop_brotli = 1\nfonts = 1", "later"),
        ] {
            let said = Budget::parse(text).map_err(|error| error.to_string());
            assert!(matches!(&said, Err(text) if text.contains(key)), "{said:?}");
        }
    }
}

//! The workshop's page: in a folder of its own beside the customers' page, with the same program.

use std::fs;

use anyhow::{Context, Result, ensure};
use slotwright_core::words::{shell, workshop};

use super::program;
use super::shell::escaped;
use crate::http::policy;
use crate::root::Root;

/// What it is made of.
const SOURCE: &str = "web/page/workshop.html";

/// Where it is served.
const FOLDER: &str = "workshop";

/// What it says itself, each text by the name of its place.
const OWN: [(&str, workshop::Label); 10] = [
    ("title", workshop::Label::Title),
    ("description", workshop::Label::Description),
    ("at-the-saw", workshop::Label::AtTheSaw),
    ("loading", workshop::Label::Loading),
    ("trouble", workshop::Label::Trouble),
    ("no-script", workshop::Label::NoScript),
    ("too-old", workshop::Label::TooOld),
    ("missing", workshop::Label::Missing),
    ("stopped", workshop::Label::Stopped),
    ("try-again", workshop::Label::TryAgain),
];

/// What it says as the customers' page does.
const SHARED: [shell::Label; 5] = [
    shell::Label::Language,
    shell::Label::NewVersion,
    shell::Label::NewRange,
    shell::Label::LoadNow,
    shell::Label::Later,
];

/// Writes it into dist, with the folder of the program by its real name.
pub(super) fn write(root: &Root, program: &str) -> Result<()> {
    let html = filled(&fs::read_to_string(root.join(SOURCE)).context(SOURCE)?)?;
    let html = policy::into_page(&program::in_folder_beside(&html, program))?;
    let folder = root.dist().join(FOLDER);
    fs::create_dir_all(&folder).with_context(|| folder.display().to_string())?;
    fs::write(folder.join("index.html"), html).with_context(|| folder.display().to_string())
}

fn filled(html: &str) -> Result<String> {
    let own = OWN.iter().map(|(place, label)| (*place, label.text()));
    let shared = SHARED.iter().map(|label| (label.word(), label.text()));
    let mut filled = html.to_owned();
    for (place, text) in own.chain(shared) {
        let place = format!("{{{{{place}}}}}");
        ensure!(filled.contains(&place), "{SOURCE} has no place {place}");
        filled = filled.replace(&place, &escaped(text));
    }
    ensure!(!filled.contains("{{"), "{SOURCE} has a place that nothing fills");
    Ok(filled)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_place_is_filled_and_no_address_leads_out() -> Result<()> {
        let page = filled(&fs::read_to_string(Root::find()?.join(SOURCE))?)?;
        let page = program::in_folder_beside(&page, "app-1/");
        for piece in page.split([' ', '\n']).filter(|piece| piece.starts_with("src=") || piece.starts_with("href=")) {
            let address = piece.split('"').nth(1).context("no address")?;
            let is_known = ["../app-1/", "../icons/", "../fonts/"].iter().any(|known| address.starts_with(known));
            assert!(is_known || address.is_empty(), "{address}");
        }
        assert!(page.contains("<p class=\"when-old\">This browser cannot run the page"), "{page}");
        Ok(())
    }

    #[test]
    fn a_place_that_is_lost_or_unknown_is_told() {
        assert!(filled("<title>{{title}}</title>").is_err());
    }
}

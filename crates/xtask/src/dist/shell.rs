//! What the page says before its program runs: texts of the core's catalogue in the places that `web/page/index.html` has for
//! them.

use anyhow::{Result, ensure};
use slotwright_core::words::shell::Label;

/// The page with these texts, each in all of its places.
pub(super) fn filled(html: &str, labels: &[Label]) -> Result<String> {
    let mut filled = html.to_owned();
    for label in labels {
        let place = place(*label);
        ensure!(filled.contains(&place), "web/page has no place {place}");
        filled = filled.replace(&place, &escaped(label.text()));
    }
    Ok(filled)
}

fn place(label: Label) -> String {
    format!("{{{{{}}}}}", label.word())
}

pub(super) fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('"', "&quot;")
}

#[cfg(test)]
mod tests {
    use std::fs;

    use super::super::first;
    use super::*;
    use crate::root::Root;

    /// Attributes that people read, or hear: the language is what they hear it in.
    const READ: [&str; 6] = ["alt", "aria-label", "content", "lang", "placeholder", "title"];
    /// What only browsers read of these.
    const SETTINGS: [&str; 4] = ["width=device-width, initial-scale=1", "light dark", "#f4efe6", "#141816"];

    /// What people read in a page: texts between tags, and attributes.
    fn read_by_people(html: &str) -> Vec<String> {
        let mut found = Vec::new();
        for piece in html.split('<') {
            let (tag, text) = piece.split_once('>').unwrap_or(("", piece));
            found.push(text.trim());
            for attribute in tag.split('"').collect::<Vec<_>>().chunks(2) {
                if let [name, value] = attribute
                    && name.trim_end_matches('=').rsplit(' ').next().is_some_and(|name| READ.contains(&name))
                    && !SETTINGS.contains(value)
                {
                    found.push(value);
                }
            }
        }
        found.into_iter().filter(|text| !text.is_empty()).map(String::from).collect()
    }

    #[test]
    fn the_page_has_no_text_of_its_own() -> Result<()> {
        const SIGNS: [&str; 10] = ["&uarr;", "&darr;", "+", "&minus;", "&ndash;", "&nbsp;", "1", "2", "3", "4"];
        let root = Root::find()?;
        for file in first::FILES {
            for text in read_by_people(&fs::read_to_string(root.join(file))?) {
                let is_place = text.split("}}").all(|place| place.is_empty() || place.trim_start().starts_with("{{"));
                assert!(is_place || SIGNS.contains(&text.as_str()), "{file}: {text}");
            }
        }
        let filled = filled(&first::page(&root)?, &Label::ALL)?;
        assert!(!filled.contains("{{"), "{filled}");
        for label in Label::ALL {
            assert!(read_by_people(&filled).contains(&label.text().to_owned()), "{label:?} in {filled}");
        }
        Ok(())
    }

    #[test]
    fn a_text_and_a_lost_place_are_found() {
        let html = "<html lang=\"{{language}}\"><meta name=\"viewport\" content=\"light dark\"><p class=\"a b\" title=\"Go\">Go on</p>";
        assert_eq!(read_by_people(html), ["{{language}}", "Go on", "Go"]);
        assert_eq!(filled(html, &Label::ALL).unwrap_err().to_string(), "web/page has no place {{title}}");
        assert_eq!(escaped("<\"&\">"), "&lt;&quot;&amp;&quot;>");
    }
}

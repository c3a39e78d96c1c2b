//! What the page and the names of files say about their contents: Trunk writes both, and both are wrong once a file is
//! changed.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use anyhow::{Context, Result};
use sha2::{Digest, Sha256, Sha384};

use crate::base64::base64;
use crate::http::cache::is_hash;
use crate::root::Root;

/// The files of dist by their names, without those in its folders.
type Files = BTreeMap<String, Vec<u8>>;

/// How the page knew the files before they were changed.
#[derive(Debug)]
pub(super) struct Seals(BTreeMap<String, String>);

impl Seals {
    pub(super) fn of(root: &Root) -> Result<Self> {
        Ok(Self::of_files(&files(&root.dist())?))
    }

    fn of_files(files: &Files) -> Self {
        Self(files.iter().map(|(name, file)| (name.clone(), integrity(file))).collect())
    }

    /// Gives the files that have a hash in their names one of what they hold now, and tells the page.
    pub(super) fn renew(&self, root: &Root) -> Result<()> {
        let dist = root.dist();
        let page = dist.join("index.html");
        let html = fs::read_to_string(&page).context("dist/index.html")?;
        let files = files(&dist)?;
        let html = self.with_integrity(&files, &html);
        let (names, html) = with_hashes(&files, &html);
        for (old, new) in names {
            fs::rename(dist.join(&old), dist.join(new)).with_context(|| format!("dist/{old}"))?;
        }
        fs::write(page, html).context("dist/index.html")
    }

    /// The page with what a browser holds each file against.
    fn with_integrity(&self, files: &Files, html: &str) -> String {
        self.0.iter().fold(html.to_owned(), |html, (name, old)| match files.get(name) {
            Some(file) => html.replace(old, &integrity(file)),
            None => html,
        })
    }
}

/// What each file with a hash is called from now on, and the page that calls it so. Such a file is kept for good, so it
/// must not change under its name. Files that share a hash go on doing so.
fn with_hashes(files: &Files, html: &str) -> (Vec<(String, String)>, String) {
    let (mut names, mut html) = (Vec::new(), html.to_owned());
    let hashes: BTreeSet<&str> = files.keys().filter_map(|name| hash_in(name)).collect();
    for old in hashes {
        let together = || files.iter().filter(|(name, _)| hash_in(name) == Some(old));
        let all = together().fold(Sha256::new(), |all, (_, file)| all.chain_update(file)).finalize();
        let new = all.iter().take(8).map(|byte| format!("{byte:02x}")).collect::<Vec<_>>().concat();
        names.extend(together().map(|(name, _)| (name.clone(), name.replace(old, &new))));
        html = html.replace(old, &new);
    }
    (names, html)
}

fn hash_in(name: &str) -> Option<&str> {
    name.split(['-', '_', '.']).find(|part| is_hash(part))
}

/// As a page says what a file has to be. Source: Subresource Integrity, section 3.1.
fn integrity(file: &[u8]) -> String {
    format!("sha384-{}", base64(&Sha384::digest(file)))
}

fn files(dist: &Path) -> Result<Files> {
    let mut files = Files::new();
    for entry in fs::read_dir(dist).context("dist")? {
        let file = entry.context("dist")?.path();
        if let Some(name) = file.is_file().then(|| file.file_name()).flatten() {
            let bytes = fs::read(&file).with_context(|| file.display().to_string())?;
            files.insert(name.to_string_lossy().into_owned(), bytes);
        }
    }
    Ok(files)
}

#[cfg(test)]
mod tests {
    use super::*;

    const OLD: &str = "0123456789abcdef";

    fn files(script: &str) -> Files {
        let name = |end: &str| format!("page-{OLD}{end}");
        [(name(".js"), script), (name("_bg.wasm"), "w"), ("worker.js".to_owned(), "x")]
            .map(|(name, file)| (name, file.as_bytes().to_vec()))
            .into()
    }

    #[test]
    fn integrity_is_what_its_standard_says() {
        // Source: Subresource Integrity, section 3.1, the example of `alert('Hello, world.');`.
        let expected = "sha384-H8BRh8j48O9oYatfu5AZzq6A9RINhZO5H16dQZngK7T62em8MUt1FLm52t+eX6xO";
        assert_eq!(integrity(b"alert('Hello, world.');"), expected);
    }

    #[test]
    fn the_page_is_told_what_a_file_has_become() {
        let (before, after) = (files("long"), files("short"));
        let html = |files: &Files| files.values().map(|file| integrity(file)).collect::<Vec<_>>().join(" ");
        assert_ne!(html(&before), html(&after));
        assert_eq!(Seals::of_files(&before).with_integrity(&after, &html(&before)), html(&after));
    }

    #[test]
    fn a_hash_follows_the_contents_of_all_that_share_it() {
        let html = format!("import '/page-{OLD}.js'; fetch('/page-{OLD}_bg.wasm')");
        let (names, page) = with_hashes(&files("long"), &html);
        assert_eq!(names.len(), 2, "a name without a hash stays: {names:?}");
        for (old, new) in &names {
            assert!(html.contains(old) && page.contains(new), "{old} is {new}");
        }
        assert!(!page.contains(OLD));
        assert_eq!(with_hashes(&files("long"), &html), (names, page.clone()));
        assert_ne!(with_hashes(&files("short"), &html).1, page);
    }
}

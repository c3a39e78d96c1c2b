//! The service worker: its script with the list of the files that it keeps, each with the beginning of its hash. So
//! the script changes if and only if one of them does, and browsers take it for another version.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, ensure};
use sha2::{Digest, Sha256};

use super::is_of_the_workshop;
use super::program::esbuild;
use crate::command;
use crate::root::Root;

/// Its script, with names in place of the lists.
const SCRIPT: &str = "web/page/sw.js";

/// Where it lies: its address is the same in all builds, and it can keep what lies beside it and below.
const NAME: &str = "sw.js";

/// A path of dist to the beginning of the file's SHA-256.
type Hashes = BTreeMap<String, String>;

/// What is kept.
#[derive(Debug, Default, PartialEq, Eq)]
struct List {
    /// At the first visit.
    files: Hashes,
    /// Once somebody has loaded it.
    later: Hashes,
    /// What changes without a build: asked for anew each time.
    fresh: Vec<String>,
}

/// Writes it beside the page, whose files are as they are served by now.
pub(super) fn write(root: &Root) -> Result<()> {
    let list = List::of(&root.dist())?;
    let mut script = esbuild(root);
    for (name, value) in list.definitions()? {
        script.arg(format!("--define:{name}={value}"));
    }
    script.arg(root.join(SCRIPT)).arg(format!("--outfile={}", root.dist().join(NAME).display()));
    command::run(&mut script, "read the message above")
}

impl List {
    /// All that lies in a folder and that a visit can need.
    fn of(dist: &Path) -> Result<Self> {
        let mut list = Self::default();
        let mut folders = vec![dist.to_owned()];
        while let Some(folder) = folders.pop() {
            let said = || folder.display().to_string();
            for entry in fs::read_dir(&folder).with_context(said)? {
                let file = entry.with_context(said)?.path();
                if file.is_dir() {
                    folders.push(file);
                } else {
                    let path = file.strip_prefix(dist).with_context(said)?.to_string_lossy().replace('\\', "/");
                    list.take(path, &file)?;
                }
            }
        }
        ensure!(list.files.contains_key("./"), "{} has no index.html", dist.display());
        list.fresh.sort();
        Ok(list)
    }

    fn take(&mut self, path: String, file: &Path) -> Result<()> {
        let hash = || Ok::<_, anyhow::Error>(beginning(&fs::read(file).with_context(|| path.clone())?));
        match place(&path) {
            Place::Page => drop(self.files.insert("./".into(), hash()?)),
            Place::Visit => drop(self.files.insert(path.clone(), hash()?)),
            Place::Later => drop(self.later.insert(path.clone(), hash()?)),
            Place::Fresh => self.fresh.push(path),
            Place::Nowhere => {}
        }
        Ok(())
    }

    /// What the script calls them; the list's own name is made of all that is in it.
    fn definitions(&self) -> Result<[(&'static str, String); 4]> {
        let files = serde_json::to_string(&self.files).context("the list")?;
        let later = serde_json::to_string(&self.later).context("the list")?;
        let fresh = serde_json::to_string(&self.fresh).context("the list")?;
        let build = beginning([&*files, &*later, &*fresh].join("\n").as_bytes());
        Ok([("FILES", files), ("LATER", later), ("FRESH", fresh), ("BUILD", format!("\"{build}\""))])
    }
}

/// When a file is kept.
#[derive(Debug, PartialEq, Eq)]
enum Place {
    Page,
    Visit,
    Later,
    Fresh,
    Nowhere,
}

fn place(path: &str) -> Place {
    let end = path.rsplit_once('.').map_or("", |(_, end)| end);
    match path {
        "index.html" => Place::Page,
        NAME => Place::Nowhere,
        // Licences are there to be read by who looks for them; packed twins come by their files' names.
        _ if matches!(end, "txt" | "br") => Place::Nowhere,
        _ if path.starts_with("ranges/") => Place::Fresh,
        _ if path.starts_with("room/") || is_of_the_workshop(path) => Place::Later,
        _ => Place::Visit,
    }
}

/// 16 hexadecimal digits.
fn beginning(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().take(8).map(|byte| format!("{byte:02x}")).collect::<Vec<_>>().concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A small built app in a folder of its own.
    struct App(std::path::PathBuf);

    impl App {
        fn new(name: &str) -> Result<Self> {
            let app = Self(std::env::temp_dir().join(format!("slotwright-offline-{name}-{}", std::process::id())));
            for (path, text) in [
                ("index.html", "page"),
                ("sw.js", "worker"),
                ("app-1/page.js", "script"),
                ("app-1/page.js.br", "packed"),
                ("fonts/a.woff2", "font"),
                ("fonts/a-OFL.txt", "licence"),
                ("ranges/fenland.toml", "range"),
                ("room/viewer.js", "room"),
                ("app-1/split_packs.wasm", "packs"),
                ("app-1/workshop_chunk_9.wasm", "chunk"),
                ("workshop/index.html", "at the saw"),
            ] {
                app.put(path, text)?;
            }
            Ok(app)
        }

        fn put(&self, path: &str, text: &str) -> Result<()> {
            let file = self.0.join(path);
            fs::create_dir_all(file.parent().context("no folder")?)?;
            Ok(fs::write(file, text)?)
        }

        fn build(&self) -> Result<String> {
            Ok(List::of(&self.0)?.definitions()?.map(|(name, value)| format!("{name}={value}")).join("\n"))
        }
    }

    impl Drop for App {
        fn drop(&mut self) {
            fs::remove_dir_all(&self.0).ok();
        }
    }

    #[test]
    fn all_that_a_visit_can_need_is_in_the_list() -> Result<()> {
        let app = App::new("list")?;
        let list = List::of(&app.0)?;
        assert_eq!(list.files.keys().collect::<Vec<_>>(), ["./", "app-1/page.js", "fonts/a.woff2"]);
        let later = ["app-1/split_packs.wasm", "app-1/workshop_chunk_9.wasm", "room/viewer.js", "workshop/index.html"];
        assert_eq!(list.later.keys().collect::<Vec<_>>(), later);
        assert_eq!(list.fresh, ["ranges/fenland.toml"]);
        // Source: FIPS 180-4 by another program, `printf page | sha256sum`.
        assert_eq!(list.files["./"], "3660315a9af3df25");
        fs::remove_file(app.0.join("index.html"))?;
        assert!(List::of(&app.0).is_err(), "without a page there is nothing to keep");
        Ok(())
    }

    #[test]
    fn it_is_another_build_if_and_only_if_a_kept_file_is_another() -> Result<()> {
        let app = App::new("build")?;
        let first = app.build()?;
        assert_eq!(app.build()?, first);
        // A range changes without a build, what nobody loads changes nothing.
        for path in ["ranges/fenland.toml", "fonts/a-OFL.txt", "app-1/page.js.br", "sw.js"] {
            app.put(path, "other")?;
            assert_eq!(app.build()?, first, "{path}");
        }
        let mut known = vec![first];
        for path in ["index.html", "app-1/page.js", "fonts/a.woff2", "room/viewer.js", "app-1/more.wasm"] {
            app.put(path, "other")?;
            let build = app.build()?;
            let name = |build: &str| build.lines().last().map(String::from);
            assert!(!known.iter().any(|known| name(known) == name(&build)), "{path}");
            known.push(build);
        }
        Ok(())
    }
}

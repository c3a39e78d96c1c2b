//! The page's program: compiled, cut into the parts that are loaded one by one, and bound to its script.
//!
//! Trunk has no step between compiler and `wasm-bindgen`, where a program has to be cut, so all of it is done here;
//! Trunk then finds the page without a program, and this one's files are put beside it.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};
use sha2::{Digest, Sha256};

use super::{Make, names};
use crate::command::{self, lock_switch};
use crate::root::Root;
use crate::say;
use crate::setup::Web;
use crate::setup::wasm::TARGET;

const CRATE: &str = "slotwright-web";

/// The stem of its script and of the part that everybody loads.
const NAME: &str = "page";

/// As `index.html` names the folder of its files.
const FOLDER: &str = "app/";

/// The page's own scripts: what starts it, what watches over that, what it keeps in the browser by, and what is loaded once
/// there is a first answer.
const SCRIPTS: [&str; 4] = ["start.js", "watch.js", "drawer.js", "offline.js"];
const PAGE: &str = "web/page";

/// What the compiler uses of WebAssembly; only the part that everybody loads says so itself.
// Source: The rustc book, "wasm32-unknown-unknown", "Enabled WebAssembly features" (from memory).
const FEATURES: [&str; 6] =
    ["bulk-memory", "multivalue", "mutable-globals", "nontrapping-float-to-int", "reference-types", "sign-ext"];

/// How a part is made small. Once more for size makes 0.9 kB less of what everybody waits for, and 0.2 kB of the scene
/// (brotli); the others become no smaller by it.
const ONCE: [&str; 1] = ["-O2"];
const TWICE: [&str; 2] = ["-O2", "-Os"];

/// All styles, of the customers' page and what the workshop's has beside them: the first file imports its others.
const STYLES: [&str; 2] = ["web/styles/page.css", "web/styles/workshop.css"];

/// The parts that the workshop's page loads alone.
const WORKSHOP: [&str; 2] = ["packs", "workshop"];

/// What loads the parts.
const LOADER: &str = "__wasm_split.js";

const REMEDY: &str = "read the message above";

/// The built program, in a folder of its own.
#[derive(Debug)]
pub(super) struct Program(PathBuf);

impl Program {
    /// Builds it.
    pub(super) fn build(root: &Root, web: &Web, make: Make) -> Result<Self> {
        let program = Self(root.target().join("program"));
        let cut = root.target().join("program-cut");
        for folder in [&program.0, &cut] {
            renew(folder)?;
        }
        compile(root, web, make)?;
        cut_apart(root, web, make, &cut)?;
        program.bind(root, web, &cut)?;
        program.gather(root, web, make, &cut)?;
        for script in SCRIPTS {
            copy(&root.join(PAGE).join(script), &program.0.join(script))?;
        }
        program.minify(root)?;
        names::shorten(&program.0, NAME)?;
        program.style(root)?;
        Ok(program)
    }

    /// Puts it beside the page, in a folder that is named by what all of its files hold: they fit each other, and may
    /// be kept for good. Returns the folder's name.
    pub(super) fn deliver(&self, root: &Root) -> Result<String> {
        let name = format!("app-{}/", self.hash()?);
        let to = root.dist().join(&name);
        fs::create_dir_all(&to).with_context(|| to.display().to_string())?;
        for file in self.files()? {
            copy(&self.0.join(&file), &to.join(&file))?;
        }
        Ok(name)
    }

    /// The script that calls the program, and the program that has the browser's functions by it.
    fn bind(&self, root: &Root, web: &Web, cut: &Path) -> Result<()> {
        let mut bindgen = web.command(root, "wasm-bindgen");
        bindgen.args(["--target", "web", "--no-typescript", "--keep-lld-exports", "--remove-producers-section"]);
        bindgen.args(["--out-name", NAME, "--out-dir"]).arg(&self.0).arg(cut.join(NAME).with_extension("wasm"));
        command::run(&mut bindgen, REMEDY)
    }

    /// All parts, made small unless there is no time for that.
    fn gather(&self, root: &Root, web: &Web, make: Make, cut: &Path) -> Result<()> {
        let optimise = |from: &Path, to: &Path, levels: &[&str]| {
            let mut optimiser = web.command(root, "wasm-opt");
            optimiser.args(levels).args(["--low-memory-unused", "--strip-debug", "--quiet"]);
            optimiser.args(FEATURES.map(|feature| format!("--enable-{feature}")));
            command::run(optimiser.arg(from).arg("-o").arg(to), REMEDY)
        };
        // wasm-bindgen has been over the part that everybody loads.
        let main = self.0.join(format!("{NAME}_bg.wasm"));
        if make == Make::Small {
            optimise(&main, &main, &TWICE)?;
        }
        let loader = fs::read_to_string(cut.join(LOADER)).context(LOADER)?;
        let chunks = chunks_of_the_workshop(&loader);
        for part in later_parts(cut)? {
            let name = part.file_name().context("a part without a name")?.to_string_lossy();
            let name = if chunks.iter().any(|chunk| *chunk == name) { of_the_workshop(&name) } else { name.into() };
            let to = self.0.join(name);
            match make {
                Make::Small => optimise(&part, &to, if part.ends_with("split_scene.wasm") { &TWICE } else { &ONCE })?,
                Make::Quick => copy(&part, &to)?,
            }
        }
        let renamed = chunks.iter().fold(loader.clone(), |text, chunk| {
            text.replace(&format!("\"./{chunk}\""), &format!("\"./{}\"", of_the_workshop(chunk)))
        });
        fs::write(self.0.join(LOADER), renamed).context(LOADER)
    }

    /// Takes out of its scripts what only people read.
    fn minify(&self, root: &Root) -> Result<()> {
        let mut esbuild = esbuild(root);
        esbuild.arg("--allow-overwrite");
        // The parts' loaders are one module, which wasm-bindgen names once for each.
        esbuild.arg("--log-override:duplicate-object-key=silent");
        esbuild.arg(format!("--outdir={}", self.0.display()));
        let files = self.files()?.into_iter().map(|name| self.0.join(name));
        esbuild.args(files.filter(|file| file.extension().is_some_and(|end| end == "js")));
        command::run(&mut esbuild, REMEDY)
    }

    /// The styles of each page in one file. Fonts stay in a folder of their own: they outlast many builds.
    fn style(&self, root: &Root) -> Result<()> {
        let mut esbuild = esbuild(root);
        esbuild.args(["--bundle", "--external:*.woff2"]).args(STYLES.map(|styles| root.join(styles)));
        esbuild.arg(format!("--outdir={}", self.0.display()));
        command::run(&mut esbuild, REMEDY)
    }

    /// The names of its files, in their order.
    fn files(&self) -> Result<Vec<String>> {
        let entries = fs::read_dir(&self.0).with_context(|| self.0.display().to_string())?;
        let names = entries.map(|entry| Ok(entry?.file_name().to_string_lossy().into_owned()));
        let mut names = names.collect::<Result<Vec<_>>>()?;
        names.sort();
        Ok(names)
    }

    /// Of all that its files hold, and of their names.
    fn hash(&self) -> Result<String> {
        let mut all = Sha256::new();
        for name in self.files()? {
            let file = fs::read(self.0.join(&name)).with_context(|| name.clone())?;
            all.update(Sha256::digest(name));
            all.update(Sha256::digest(file));
        }
        Ok(all.finalize().iter().take(8).map(|byte| format!("{byte:02x}")).collect::<Vec<_>>().concat())
    }
}

/// What takes out of scripts and styles what only people read.
pub(super) fn esbuild(root: &Root) -> Command {
    let mut esbuild = Command::new(root.node_programs().join("esbuild"));
    esbuild.args(["--minify", "--log-level=warning"]);
    esbuild
}

/// Compiles the program with all that says where its parts are.
fn compile(root: &Root, web: &Web, make: Make) -> Result<()> {
    say::step(&format!("Compiling the page ({})", make.profile()));
    let mut cargo = match make {
        Make::Small => web.cargo_with_library(root, "rustc"),
        // What a panic says is worth its bytes to who works on the page.
        Make::Quick => {
            let mut cargo = web.command(root, "cargo");
            cargo.args(["rustc", "--quiet", "--target", TARGET, "--features", "panics"]);
            cargo
        }
    };
    cargo.args(["--profile", make.profile(), "--offline"]).args(lock_switch());
    cargo.args(["--package", CRATE, "--bin", CRATE, "--", "-Clink-args=--emit-relocs", "-Cstrip=none"]);
    command::run(&mut cargo, "read the compiler's message above")
}

/// Cuts off what only workers call.
fn cut_apart(root: &Root, web: &Web, make: Make, cut: &Path) -> Result<()> {
    say::step("Cutting it into parts, binding and optimising them");
    let whole = root.target().join(TARGET).join(make.profile()).join(CRATE).with_extension("wasm");
    let mut split = web.command(root, "wasm-split-cli");
    split.arg(whole).arg(cut).args(["--out-name", NAME]);
    command::run(&mut split, REMEDY)
}

/// What was cut off.
fn later_parts(cut: &Path) -> Result<Vec<PathBuf>> {
    let entries = fs::read_dir(cut).with_context(|| cut.display().to_string())?;
    let mut files = entries.map(|entry| Ok(entry?.path())).collect::<Result<Vec<_>>>()?;
    let main = cut.join(NAME).with_extension("wasm");
    files.retain(|file| *file != main && file.extension().is_some_and(|end| end == "wasm"));
    Ok(files)
}

/// What a chunk is called that the workshop's parts share among themselves alone.
fn of_the_workshop(chunk: &str) -> String {
    format!("workshop_{chunk}")
}

/// Files of what only the workshop's parts share: the loader says before each chunk, in a comment, who loads it.
fn chunks_of_the_workshop(loader: &str) -> Vec<&str> {
    let comments = loader.split("/* ").skip(1).filter_map(|piece| piece.split_once(" */"));
    let own = comments.filter(|(parts, _)| parts.split(", ").all(|part| WORKSHOP.contains(&part)));
    let file = |(_, after): (&str, &'_ str)| -> Option<(usize, usize)> {
        let from = after.find("\"./")? + 3;
        Some((from, from + after.get(from..)?.find('"')?))
    };
    own.filter_map(|piece| {
        let (from, to) = file(piece)?;
        piece.1.get(from..to).filter(|name| name.starts_with("chunk_"))
    })
    .collect()
}

fn copy(from: &Path, to: &Path) -> Result<()> {
    fs::copy(from, to).with_context(|| from.display().to_string())?;
    Ok(())
}

/// An empty folder.
fn renew(folder: &Path) -> Result<()> {
    let said = || folder.display().to_string();
    if folder.exists() {
        fs::remove_dir_all(folder).with_context(said)?;
    }
    fs::create_dir_all(folder).with_context(said)
}

/// The page with the program's folder by its real name.
pub(super) fn in_folder(html: &str, name: &str) -> String {
    html.replace(&format!("\"{FOLDER}"), &format!("\"{name}"))
}

/// The same in a page that stands in a folder of its own.
pub(super) fn in_folder_beside(html: &str, name: &str) -> String {
    html.replace(&format!("\"../{FOLDER}"), &format!("\"../{name}"))
}

#[test]
fn chunks_that_only_the_workshop_loads_are_known() {
    let chunk = |parts: &str, number: u32| {
        format!(
            "/* {parts} */\nconst __chunk_{number} = makeLoad(() => fetch(new URL(\"./chunk_{number}.wasm\", here)));\n"
        )
    };
    let loader =
        [chunk("orders, packs", 1), chunk("packs, workshop", 2), chunk("packs", 3), chunk("scene", 4)].concat();
    assert_eq!(chunks_of_the_workshop(&loader), ["chunk_2.wasm", "chunk_3.wasm"]);
}

#[test]
fn the_page_finds_its_program_where_it_is() {
    let html = "<script src=\"app/start.js\"></script><link href=\"app/page.js\"><p>app/</p>";
    let page = "<script src=\"app-1/start.js\"></script><link href=\"app-1/page.js\"><p>app/</p>";
    assert_eq!(in_folder(html, "app-1/"), page);
}

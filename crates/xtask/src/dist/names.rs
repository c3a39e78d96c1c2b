//! The names under which a wasm file asks its script for functions, made short. wasm-bindgen writes them in full and
//! with 16 digits of a hash, which no compression makes smaller: 3 kB (brotli) of the page.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, ensure};

use super::wasm::Wasm;

/// A wasm file and its script.
#[derive(Debug, PartialEq, Eq)]
struct Pair {
    wasm: Vec<u8>,
    script: String,
}

/// Makes the names short in a wasm file that wasm-bindgen wrote, and in its script.
pub(super) fn shorten(folder: &Path, name: &str) -> Result<()> {
    let (wasm, script) = (folder.join(format!("{name}_bg.wasm")), folder.join(format!("{name}.js")));
    let said = || wasm.display().to_string();
    let long = Pair {
        wasm: fs::read(&wasm).with_context(said)?,
        script: fs::read_to_string(&script).with_context(|| script.display().to_string())?,
    };
    let short = long.with_short_names(&format!("./{name}_bg.js")).with_context(said)?;
    fs::write(&wasm, short.wasm).with_context(said)?;
    fs::write(&script, short.script).with_context(|| script.display().to_string())
}

impl Pair {
    /// The same with names of one or two letters for all that comes from one module.
    fn with_short_names(&self, module: &str) -> Result<Self> {
        let mut wasm = Wasm::read(&self.wasm)?;
        let mut short = BTreeMap::new();
        for import in wasm.imports.iter_mut().filter(|import| import.module == module) {
            for long in [&mut import.module, &mut import.name] {
                let next = letters(short.len());
                long.clone_from(short.entry(long.clone()).or_insert(next));
            }
        }
        Ok(Self { wasm: wasm.write(), script: replaced(&self.script, &short)? })
    }
}

/// The text with a short name for each long one, each of which has to be there once.
fn replaced(script: &str, short: &BTreeMap<String, String>) -> Result<String> {
    let (mut text, mut rest, mut count) = (String::new(), script, 0);
    while let Some(first) = rest.chars().next() {
        let end = rest.find(|letter| !is_part_of_name(letter)).unwrap_or(rest.len()).max(first.len_utf8());
        let (token, after) = rest.split_at(end);
        let name = short.get(token);
        count += usize::from(name.is_some());
        text.push_str(name.map_or(token, String::as_str));
        rest = after;
    }
    ensure!(
        count == short.len(),
        "{} names are imported, {count} are in the script. To do: see what this wasm-bindgen writes",
        short.len()
    );
    Ok(text)
}

/// Whether a letter belongs to a name of JavaScript or of a module.
fn is_part_of_name(letter: char) -> bool {
    letter.is_ascii_alphanumeric() || "_$./-".contains(letter)
}

/// `a` to `z`, `aa` to `zz`, and so on.
fn letters(place: usize) -> String {
    let last = char::from(b'a' + u8::try_from(place % 26).unwrap_or_default());
    match place / 26 {
        0 => last.to_string(),
        more => format!("{}{last}", letters(more - 1)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const FILE: &[u8] =
        b"\0asm\x01\0\0\0\x01\x04\x01\x60\0\0\x02\x1f\x02\x06./w.js\x05__a_1\0\0\x06./w.js\x05__b_2\0\0\x0a\x01\0";

    #[test]
    fn a_wasm_file_and_its_script_have_the_same_short_names() -> Result<()> {
        let script = "const imports={__proto__:null,__b_2(a){f(a)},__a_1:function(){}};use({\"./w.js\":imports})";
        let old = Pair { wasm: FILE.to_vec(), script: script.to_owned() };
        let new = old.with_short_names("./w.js")?;
        let names: Vec<String> =
            Wasm::read(&new.wasm)?.imports.into_iter().map(|import| import.module + " " + &import.name).collect();
        assert_eq!(names, ["a b", "a c"]);
        assert_eq!(new.script, "const imports={__proto__:null,c(a){f(a)},b:function(){}};use({\"a\":imports})");
        Ok(())
    }

    #[test]
    fn a_script_that_does_not_name_all_of_it_is_refused() {
        for script in ["use({__a_1:f,__b_2:g})", "use({__a_1:f,\"./w.js\":g})", "__a_1,__a_1,__b_2,\"./w.js\""] {
            let pair = Pair { wasm: FILE.to_vec(), script: script.to_owned() };
            assert!(pair.with_short_names("./w.js").is_err(), "{script}");
        }
    }

    #[test]
    fn short_names_differ() {
        let names: Vec<String> = (0..800).map(letters).collect();
        let different: std::collections::BTreeSet<&String> = names.iter().collect();
        assert_eq!(different.len(), names.len());
        let some: Vec<&str> = [0, 25, 26, 701, 702].map(|place| names[place].as_str()).to_vec();
        assert_eq!(some, ["a", "z", "aa", "zz", "aaa"]);
    }
}

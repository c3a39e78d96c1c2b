//! The tool as it is typed: arguments, exit code, standard output and standard error together.
#![expect(clippy::needless_raw_string_hashes, reason = "expect-test writes its strings so")]

use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use expect_test::Expect;

mod answers;
mod batches;
mod check;
mod files;
mod links;
mod make;
mod nest;
mod pack;
mod range;
mod unread;
mod usage;

type Result<T> = std::result::Result<T, Box<dyn std::error::Error>>;

/// A folder of its own for each test, empty.
fn folder(name: &str) -> Result<PathBuf> {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("tool").join(name);
    if folder.exists() {
        std::fs::remove_dir_all(&folder)?;
    }
    std::fs::create_dir_all(&folder)?;
    Ok(folder)
}

/// Runs the tool in a folder and shows all that a person sees.
fn seen(folder: &PathBuf, arguments: &[&str], input: &str) -> Result<String> {
    let mut child = Command::new(env!("CARGO_BIN_EXE_slotwright"))
        .args(arguments)
        .current_dir(folder)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()?;
    if let Some(mut stdin) = child.stdin.take() {
        // A tool that refuses its arguments does not read.
        let _ = stdin.write_all(input.as_bytes());
    }
    let output = child.wait_with_output()?;
    let code = output.status.code().unwrap_or(-1);
    let (out, err) = (String::from_utf8(output.stdout)?, String::from_utf8(output.stderr)?);
    let errors = if err.is_empty() { String::new() } else { format!("--- errors\n{err}") };
    Ok(masked(&format!("exit {code}\n{out}{errors}")))
}

/// Digests as dots: they change with every figure of the demo range.
fn masked(text: &str) -> String {
    let (mut all, mut run) = (String::new(), String::new());
    for character in text.chars().chain([' ']) {
        if character.is_ascii_hexdigit() {
            run.push(character);
            continue;
        }
        let is_digest = run.len() == 64 || (run.len() == 8 && (all.ends_with("fenland ") || all.ends_with("/@")));
        all.push_str(if is_digest { ".." } else { &run });
        all.push(character);
        run.clear();
    }
    all.pop();
    all
}

/// A file in a folder.
fn put(folder: &Path, name: &str, text: impl AsRef<[u8]>) -> Result<()> {
    Ok(std::fs::write(folder.join(name), text)?)
}

/// The demo range with some of its text exchanged.
fn other(changes: &[(&str, &str)]) -> String {
    changes.iter().fold(DEMO.to_owned(), |text, (from, to)| {
        assert!(text.contains(from), "{from} is not in the demo range");
        text.replacen(from, to, 1)
    })
}

fn check(folder: &PathBuf, arguments: &[&str], input: &str, expected: &Expect) -> Result<()> {
    expected.assert_eq(&seen(folder, arguments, input)?);
    Ok(())
}

/// The day of all orders.
const DAY: &str = "2026-11-25";
/// The demo range.
const DEMO: &str = include_str!("../../../../web/ranges/fenland.toml");

//! `cargo xtask size`: what the app weighs, file kind by file kind, against the budget.

mod budget;

use std::process::Command;

use anyhow::{Context, Result, ensure};

use crate::arguments::Arguments;
use crate::command::{self, read};
use crate::dist::is_of_the_workshop;
use crate::root::Root;
use crate::say;
use budget::{Budget, Totals};

const COMPRESS: &str = "crates/xtask/src/size/compress.mjs";
const BUDGET: &str = "crates/xtask/size-budget.toml";

/// Weighs what is in dist.
pub(crate) fn run(root: &Root, _: &Arguments) -> Result<()> {
    ensure!(root.dist().is_dir(), "there is no built app to weigh. To do: `cargo xtask build`");
    let text = std::fs::read_to_string(root.join(BUDGET)).context(BUDGET)?;
    let budget = Budget::parse(&text).context(BUDGET)?;
    let figures = read(Command::new("node").arg(root.join(COMPRESS)).arg(root.dist()))?;
    let files = figures.lines().map(File::parse).collect::<Result<Vec<_>>>()?;

    let mut rows = vec![Weight::headings()];
    for kind in Kind::ALL {
        let weight = Weight::sum(files.iter().filter(|file| file.kind() == kind));
        if weight.raw > 0 {
            rows.push(weight.row(kind.name()));
        }
    }
    let first = Weight::sum(files.iter().filter(|file| file.kind() != Kind::Font && !budget.is_later(&file.path)));
    let fonts = Weight::sum(files.iter().filter(|file| file.kind() == Kind::Font));
    rows.push(first.row("first load"));
    let room = Weight::sum(files.iter().filter(|file| file.path.starts_with("room/")));
    let workshop = Weight::sum(files.iter().filter(|file| is_of_the_workshop(&file.path)));
    let is_visited = |file: &&File| {
        let is_for_few = file.path.starts_with("room/") || is_of_the_workshop(&file.path);
        matches!(file.kind(), Kind::Wasm | Kind::Script) && !is_for_few
    };
    let visit = Weight::sum(files.iter().filter(is_visited));
    rows.push(visit.row("whole visit"));
    rows.push(room.row("room"));
    rows.push(workshop.row("workshop"));
    say::table(&rows);
    budget.hold(&Totals {
        first_load: first.brotli,
        visit: visit.brotli,
        room: room.brotli,
        workshop: workshop.brotli,
        fonts: fonts.raw,
    })
}

/// Writes a compressed twin beside each file of dist.
pub(crate) fn compress(root: &Root) -> Result<()> {
    say::step("Compressing its files with brotli");
    let mut node = Command::new("node");
    node.arg(root.join(COMPRESS)).arg(root.dist()).arg("--write").stdout(std::process::Stdio::null());
    command::run(&mut node, "read Node's message above")
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Wasm,
    Script,
    Style,
    Page,
    Font,
    Other,
}

impl Kind {
    const ALL: [Self; 6] = [Self::Wasm, Self::Script, Self::Style, Self::Page, Self::Font, Self::Other];

    fn name(self) -> &'static str {
        match self {
            Self::Wasm => "wasm",
            Self::Script => "JavaScript",
            Self::Style => "CSS",
            Self::Page => "HTML",
            Self::Font => "fonts",
            Self::Other => "other",
        }
    }
}

/// One file of dist; sizes in bytes.
#[derive(Debug, PartialEq)]
struct File {
    path: String,
    weight: Weight,
}

impl File {
    /// Reads a line of the compressing script.
    fn parse(line: &str) -> Result<Self> {
        let said = || format!("the compressing script said {line:?}");
        let mut cells = line.split('\t');
        let path = cells.next().with_context(said)?.to_owned();
        let mut number = || cells.next().with_context(said)?.parse().with_context(said);
        let weight = Weight { raw: number()?, gzip: number()?, brotli: number()? };
        Ok(Self { path, weight })
    }

    fn kind(&self) -> Kind {
        match self.path.rsplit_once('.').map_or("", |(_, end)| end) {
            "wasm" => Kind::Wasm,
            "js" | "mjs" => Kind::Script,
            "css" => Kind::Style,
            "html" => Kind::Page,
            "woff2" | "woff" | "ttf" | "otf" => Kind::Font,
            _ => Kind::Other,
        }
    }
}

#[derive(Debug, Clone, Copy, Default, PartialEq)]
struct Weight {
    raw: u64,
    gzip: u64,
    brotli: u64,
}

impl Weight {
    fn sum<'a>(files: impl Iterator<Item = &'a File>) -> Self {
        files.fold(Self::default(), |sum, File { weight, .. }| Self {
            raw: sum.raw + weight.raw,
            gzip: sum.gzip + weight.gzip,
            brotli: sum.brotli + weight.brotli,
        })
    }

    fn headings() -> Vec<String> {
        ["bytes", "raw", "gzip -9", "brotli 11"].map(str::to_owned).to_vec()
    }

    fn row(self, name: &str) -> Vec<String> {
        vec![name.to_owned(), self.raw.to_string(), self.gzip.to_string(), self.brotli.to_string()]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_of_the_script_is_a_file_with_its_weights() -> Result<()> {
        let file = File::parse("fonts/body.woff2\t100\t99\t98")?;
        assert_eq!(file.weight, Weight { raw: 100, gzip: 99, brotli: 98 });
        assert_eq!(file.kind(), Kind::Font);
        assert!(File::parse("page.css\t100\t99").is_err());
        Ok(())
    }
}

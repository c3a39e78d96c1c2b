//! Published instances nested by the tool, by class, where they lie beside the repository; beside them what a general
//! library needs.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Instant;

use anyhow::{Context, Result, ensure};
use serde_json::Value;

use super::general;
use crate::command::read;
use crate::root::Root;
use crate::say;

/// Where the instances lie, with a description of their format.
const INSTANCES: &str = "../shared/data/nesting/rect";

/// How long each is searched, on two threads.
const SECONDS: &str = "2";

/// The sheets of a class of instances.
#[derive(Default)]
struct Class {
    instances: u32,
    lower_bounds: u64,
    best_known: u64,
    found: u64,
    seconds: f64,
}

impl Class {
    fn add(&mut self, other: &Self) {
        self.instances += other.instances;
        self.lower_bounds += other.lower_bounds;
        self.best_known += other.best_known;
        self.found += other.found;
        self.seconds += other.seconds;
    }

    fn row(&self, name: &str) -> Vec<String> {
        let counts = [u64::from(self.instances), self.lower_bounds, self.best_known, self.found];
        let cells = counts.iter().map(ToString::to_string);
        core::iter::once(name.to_owned()).chain(cells).chain([format!("{:.1}", self.seconds)]).collect()
    }
}

/// All instances of a folder beside the repository, by name; none where it is not there.
pub(super) fn instances(root: &Root, folder: &str) -> Result<Vec<PathBuf>> {
    let folder = root.join(folder);
    let mut files = Vec::new();
    if folder.is_dir() {
        for entry in fs::read_dir(&folder).with_context(|| folder.display().to_string())? {
            files.push(entry?.path());
        }
    }
    files.retain(|file| file.extension().is_some_and(|end| end == "json"));
    files.sort();
    Ok(files)
}

/// A table of all classes. A packing below a lower bound cannot be right, and is an error.
pub(super) fn run_all(root: &Root, tool: &Path, rows: &mut Vec<Vec<String>>) -> Result<()> {
    let files = instances(root, INSTANCES)?;
    if files.is_empty() {
        say::step(&format!("no published instances in {INSTANCES}: none is nested"));
        return Ok(());
    }
    say::stage("Published instances, nested by the tool");
    let placement = root.join("target/placement.json");
    let mut classes: BTreeMap<String, Class> = BTreeMap::new();
    for file in &files {
        let (name, class) = one(tool, file, &placement).with_context(|| file.display().to_string())?;
        classes.entry(name).or_default().add(&class);
    }
    let general = general::sheets(root, &root.join(INSTANCES))?;
    let of_general = |name: &str| general.as_ref().map(|classes| classes.get(name).map_or("-".into(), u64::to_string));
    let head = ["class", "instances", "lower bounds", "best known", "sheets", "seconds"].map(str::to_owned).to_vec();
    let mut table = vec![[head, general.iter().map(|_| "rectpack".into()).collect()].concat()];
    let mut all = Class::default();
    for (name, class) in &classes {
        table.push([class.row(name), of_general(name).into_iter().collect()].concat());
        all.add(class);
    }
    let by_general: Option<u64> = general.as_ref().map(|classes| classes.values().sum());
    table.push([all.row("all"), by_general.iter().map(u64::to_string).collect()].concat());
    say::table(&table);
    let by_general = by_general.map_or(String::new(), |sheets| format!(", rectpack {sheets}"));
    let figure =
        format!("{} sheets, best known {}, lower bounds {}{by_general}", all.found, all.best_known, all.lower_bounds);
    rows.push(vec![format!("{} published nests, {SECONDS} s each", all.instances), figure]);
    Ok(())
}

/// Nests an instance and counts its sheets.
fn one(tool: &Path, file: &Path, placement: &Path) -> Result<(String, Class)> {
    let instance: Value = serde_json::from_str(&fs::read_to_string(file)?)?;
    let number = |key: &str| instance.get(key).and_then(Value::as_u64).with_context(|| format!("no number {key}"));
    let began = Instant::now();
    read(Command::new(tool).arg("nest").arg(file).args(["--force", "--seconds", SECONDS, "--out"]).arg(placement))?;
    let seconds = began.elapsed().as_secs_f64();
    let parts: Vec<Value> = serde_json::from_str(&fs::read_to_string(placement)?)?;
    let sheets = parts.iter().filter_map(|part| part.get("sheet")?.as_u64()).max().map_or(0, |last| last + 1);
    let (lower_bound, best_known) = (number("lower_bound")?, number("best_known_bins")?);
    ensure!(sheets >= lower_bound, "{sheets} sheets, below the lower bound {lower_bound}: a wrong packing");
    let count = u64::try_from(parts.len()).ok();
    ensure!(count == Some(number("item_count")?), "not every part is placed once");
    let class = instance.get("class").and_then(Value::as_str).context("no class")?.to_owned();
    Ok((class, Class { instances: 1, lower_bounds: lower_bound, best_known, found: sheets, seconds }))
}

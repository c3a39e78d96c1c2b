//! Published polygons on strips nested by the tool, where they lie beside the repository.

use std::fs;
use std::path::Path;
use std::process::Command;
use std::time::Instant;

use anyhow::{Context, Result, ensure};
use serde_json::Value;

use super::nests::instances;
use crate::command::read;
use crate::root::Root;
use crate::say;

/// Where the instances lie.
const INSTANCES: &str = "../shared/data/nesting/strip";

/// How long each is searched, on two threads.
const SECONDS: &str = "60";

/// A strip, and what was found: lengths in its own unit, areas as shares of the strip.
struct Found {
    name: String,
    length: f64,
    density: f64,
    published: f64,
    seconds: f64,
}

impl Found {
    fn row(&self) -> Vec<String> {
        let figures = [
            format!("{:.3}", self.length),
            format!("{:.2} %", self.density),
            format!("{:.2} %", self.published),
            format!("{:.1} %", 100.0 * self.density / self.published),
            format!("{:.1}", self.seconds),
        ];
        core::iter::once(self.name.clone()).chain(figures).collect()
    }
}

/// A table of all strips, and the least share of a published density as a measurement.
pub(super) fn run_all(root: &Root, tool: &Path, rows: &mut Vec<Vec<String>>) -> Result<()> {
    let files = instances(root, INSTANCES)?;
    if files.is_empty() {
        say::step(&format!("no published strips in {INSTANCES}: none is filled"));
        return Ok(());
    }
    say::stage(&format!("Published strips, {SECONDS} s each"));
    let placement = root.join("target/placement.json");
    let mut table = vec![["strip", "length", "density", "published", "of that", "seconds"].map(str::to_owned).to_vec()];
    let mut least = f64::MAX;
    for file in &files {
        let found = one(tool, file, &placement).with_context(|| file.display().to_string())?;
        least = least.min(100.0 * found.density / found.published);
        table.push(found.row());
    }
    say::table(&table);
    let figure = format!("{least:.1} % of the published density at least");
    rows.push(vec![format!("{} published strips, {SECONDS} s each", files.len()), figure]);
    Ok(())
}

/// Fills a strip and measures its length by the corners of what was placed.
fn one(tool: &Path, file: &Path, placement: &Path) -> Result<Found> {
    let instance: Value = serde_json::from_str(&fs::read_to_string(file)?)?;
    let number =
        |of: &Value, key: &str| of.get(key).and_then(Value::as_f64).with_context(|| format!("no number {key}"));
    let began = Instant::now();
    read(Command::new(tool).arg("nest").arg(file).args(["--force", "--seconds", SECONDS, "--out"]).arg(placement))?;
    let seconds = began.elapsed().as_secs_f64();
    let parts: Vec<Value> = serde_json::from_str(&fs::read_to_string(placement)?)?;
    let items = instance.get("items").and_then(Value::as_array).context("no items")?;
    let mut length = 0.0_f64;
    for part in &parts {
        let at = part.get("item").and_then(Value::as_u64).and_then(|at| usize::try_from(at).ok());
        let corners = at.and_then(|at| items.get(at)?.get("polygon")?.as_array()).context("a part of no item")?;
        for corner in corners {
            let [x, y] = [0, 1].map(|at| corner.get(at).and_then(Value::as_f64).unwrap_or_default());
            let turned = match part.get("rotation").and_then(Value::as_u64) {
                Some(0) => x,
                Some(90) => -y,
                Some(180) => -x,
                Some(270) => y,
                _ => anyhow::bail!("a part with no turn"),
            };
            length = length.max(number(part, "x")? + turned);
        }
    }
    let count = u64::try_from(parts.len()).ok();
    ensure!(count == instance.get("item_count").and_then(Value::as_u64), "not every part is placed once");
    let density = 100.0 * number(&instance, "item_area")? / (number(&instance, "strip_height")? * length);
    let name = instance.get("name").and_then(Value::as_str).context("no name")?.to_owned();
    Ok(Found { name, length, density, published: number(&instance, "best_known_density_percent")?, seconds })
}

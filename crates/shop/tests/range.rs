//! `slotwright range`: what it says of range files that are wrong, or cannot be sold.
#![expect(clippy::needless_raw_string_hashes, reason = "expect-test writes its strings so")]

use std::path::Path;
use std::process::Command;

use expect_test::{Expect, expect};

type Result<T> = std::result::Result<T, Box<dyn std::error::Error>>;

const DEMO: &str = include_str!("../../../web/ranges/fenland.toml");

/// What the tool says of the demo range with some texts replaced.
fn seen(name: &str, edits: &[(&str, &str)], more: &[&str]) -> Result<String> {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("range").join(name);
    std::fs::create_dir_all(&folder)?;
    let text = edits.iter().try_fold(String::from(DEMO), |text, (from, to)| {
        if text.contains(from) {
            Ok(text.replacen(from, to, 1))
        } else {
            Err(format!("{from:?} is not in the demo range"))
        }
    })?;
    std::fs::write(folder.join("range.toml"), text)?;
    let output = Command::new(env!("CARGO_BIN_EXE_slotwright"))
        .args(["range", "range.toml"])
        .args(more)
        .current_dir(&folder)
        .output()?;
    let (out, err) = (String::from_utf8(output.stdout)?, String::from_utf8(output.stderr)?);
    let errors = if err.is_empty() { String::new() } else { format!("--- errors\n{err}") };
    Ok(format!("exit {}\n{out}{errors}", output.status.code().unwrap_or(-1)))
}

fn check(name: &str, edits: &[(&str, &str)], expected: &Expect) -> Result<()> {
    expected.assert_eq(&seen(name, edits, &[])?);
    Ok(())
}

#[test]
fn everything_that_is_wrong_comes_at_once() -> Result<()> {
    check(
        "wrong",
        &[
            ("measured_points_mm = [17.68, 17.72, 17.70, 17.66, 17.74, 17.70, 17.71, 17.69]", "measured_mm = 12"),
            ("grain = \"length\"\nprice_minor = 9800", "grain = \"up\"\nprice_minor = 9800"),
            ("rise_mm = 62", "raise_mm = 62"),
            ("body = \"birch-18\"", "body = \"brich-18\""),
            ("passes = 3 ", "passes = 0 "),
        ],
        &expect![[r#"
            exit 1
            --- errors
            error: range.toml:29:15: board.birch-18.measured_mm: 12 is out of proportion; 17.01 to 18.79 is possible
                   range.toml:49:9: board.birch-18.sheet.small.grain: "up" is not one of "length" or "width"
                   range.toml:220:1: hole.slot-90.raise_mm: no section or key of this name is known; did you mean "rise_mm"?
                   range.toml:320:8: model.sedge.body: no board "brich-18" for this use in the range; did you mean "birch-18"?
                   range.toml:558:10: rates.passes: 0 is out of proportion; 1 to 50 is possible
            hint: the demo range web/ranges/fenland.toml documents every key
        "#]],
    )
}

#[test]
fn a_range_that_cannot_be_sold_is_not_right() -> Result<()> {
    check(
        "unsold",
        &[
            ("leaves_most = 1 ", "leaves_most = 0 "),
            ("{ share = 1, fill = { shelves = 4 } }", "{ share = 1, fill = { leaf = \"left\" } }"),
            ("work = \"pack\"", "work = \"cut\""),
            ("most = 1300, step = 10, start = 860", "most = 1300, step = 10, start = 400"),
            ("rise_mm = 80", "rise_mm = 2000"),
        ],
        &expect![[r#"
            exit 1
            --- errors
            error: range.toml:393:23: model.bulrush.start_bays.1.fill: this model cannot be made as it begins: Up to bay 1 there would be 1 door; the most is 0.
                   range.toml:393:23: model.bulrush.start_bays.1.fill: this model cannot be made as it begins: Inside, bay 1 would be 149 mm wide; the least is 160 mm.
                   range.toml:394:23: model.bulrush.start_bays.2.fill: this model cannot be made as it begins: Inside, bay 2 would be 149 mm wide; the least is 160 mm.
                   range.toml:590:1: stage: no stage does the work "pack", so no promise would count it; add one
                   range.toml:616:8: stage.pack.work: stage "cut" does the work "cut" already; it would be counted twice. Keep one of them
            hint: the demo range web/ranges/fenland.toml documents every key
        "#]],
    )
}

#[test]
fn what_nothing_can_use_is_a_warning() -> Result<()> {
    check(
        "warned",
        &[("width_mm = 50   ", "width_mm = 150   ")],
        &expect![[r#"
            exit 0
            Fenland of Odd Lintel Workshop: right, with 1 warning
            warning: range.toml:245:1: plug.bs-1363: this plug passes none of the holes: the best has 42 mm for it, it needs 50 mm
              models    Sedge, Teasel, Bulrush
              boards    18 mm birch plywood, 12 mm birch plywood
              finishes  Clear, Pale, Chalk, Soot, Sallow, Mere, Brick
              digest    5bfb6e7c57a01dc9923a74787b00568322e2a7a62c6526f6b007059a22b8ef70
        "#]],
    )
}

#[test]
fn a_report_tells_errors_and_warnings_apart() -> Result<()> {
    let edits = [("width_mm = 50   ", "width_mm = 150   "), ("leaves_most = 6 ", "leaves_most = 0 ")];
    let seen = seen("report", &edits, &["--json"])?;
    let (code, report) = seen.split_once('\n').unwrap_or_default();
    let report: serde_json::Value = serde_json::from_str(report)?;
    let problems = report["problems"].as_array().map(Vec::as_slice).unwrap_or_default();
    let severities: Vec<_> = problems.iter().map(|problem| [&problem["severity"], &problem["path"]]).collect();
    assert_eq!(severities, [["error", "model.sedge.start_bays.1.fill"], ["warning", "plug.bs-1363"]]);
    assert_eq!((code, &report["digest"]), ("exit 1", &serde_json::Value::Null));
    Ok(())
}

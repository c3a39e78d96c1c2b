//! The tool as it is typed: arguments, exit code, standard output and standard error together.
#![expect(clippy::needless_raw_string_hashes, reason = "expect-test writes its strings so")]

use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use expect_test::{Expect, expect};

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
    Ok(format!("exit {code}\n{out}{errors}"))
}

fn check(folder: &PathBuf, arguments: &[&str], input: &str, expected: &Expect) -> Result<()> {
    expected.assert_eq(&seen(folder, arguments, input)?);
    Ok(())
}

const DAY: &str = "2026-11-25";

#[test]
fn an_order_is_written_and_holds() -> Result<()> {
    let folder = folder("holds")?;
    check(
        &folder,
        &["order", "--today", DAY, "--out", "order.json"],
        "",
        &expect![[r#"
        exit 0
    "#]],
    )?;
    check(
        &folder,
        &["check", "order.json"],
        "",
        &expect![[r#"
        exit 0
        order.json: holds
    "#]],
    )?;
    let text = std::fs::read_to_string(folder.join("order.json"))?;
    check(
        &folder,
        &["check", "-"],
        &text,
        &expect![[r#"
        exit 0
        -: holds
    "#]],
    )
}

#[test]
fn the_worst_file_gives_the_exit_code() -> Result<()> {
    let folder = folder("worst")?;
    seen(&folder, &["order", "--today", DAY, "--out", "good.json"], "")?;
    let text = std::fs::read_to_string(folder.join("good.json"))?;
    std::fs::write(folder.join("later.json"), text.replace("\"version\":1", "\"version\":2"))?;
    std::fs::write(folder.join("huge.json"), " ".repeat(70_000))?;
    check(
        &folder,
        &["check", "good.json", "later.json", "huge.json", "absent.json"],
        "",
        &expect![[r#"
        exit 2
        good.json: holds
        later.json: unreadable: /version: this program reads version 1, found 2
          hint: a newer version of this program may read it
        huge.json: unreadable: the file has 65537 bytes; 65536 are the most that is read
          hint: is this the file that was saved with the order?
        absent.json: unreadable: No such file or directory (os error 2)
          hint: is the name right, and may this file be read?
    "#]],
    )
}

/// An order under another range is only checked with that range at hand.
/// An order that was promised is held against the batch that it will be cut from.
#[test]
fn a_batch_decides_whether_an_order_can_be_cut() -> Result<()> {
    let folder = folder("batch")?;
    seen(&folder, &["order", "--today", DAY, "--out", "order.json"], "")?;
    let measured = |points: &str| seen(&folder, &["check", "order.json", "--measured", points], "");
    expect![[r#"
        exit 0
        order.json: holds
    "#]]
    .assert_eq(&measured("birch-18=17.61 17.68 17.72 17.66 17.70 17.64 17.69 17.70")?);
    expect![[r#"
        exit 1
        order.json: does not hold
          In this finish 48.6 % of its joints would not go in; the most is 1 %.
    "#]]
    .assert_eq(&measured("birch-18=17.6 17.9 17.4 17.8 17.7 17.5 17.9 17.7")?);
    let few = measured("birch-18=17.6")?;
    assert!(few.contains("1 points were given; measure eight"), "{few}");
    let strange = seen(&folder, &["fit", "--measured", "oak=18 18 18 18 18 18 18 18"], "")?;
    assert!(strange.contains("the range has no board \"oak\""), "{strange}");
    // What is cut follows the batch.
    let derived = seen(&folder, &["derive", "--today", DAY, "--measured", "birch-18=18 18 18 18 18 18 18 18"], "")?;
    assert!(derived.contains("\"thickness_mm\": 18.19"), "18 mm and two films of 96 µm");
    Ok(())
}

#[test]
fn an_order_of_another_range_asks_for_it() -> Result<()> {
    let folder = folder("other")?;
    let demo = include_str!("../../../web/ranges/fenland.toml");
    std::fs::write(folder.join("other.toml"), demo.replace("machine_hour_minor = 6200", "machine_hour_minor = 6300"))?;
    seen(&folder, &["order", "--range", "other.toml", "--today", DAY, "--out", "order.json"], "")?;
    let alone = seen(&folder, &["check", "order.json"], "")?;
    assert!(alone.starts_with("exit 2\norder.json: unreadable: /range/digest: the range "), "{alone}");
    check(
        &folder,
        &["check", "--range", "other.toml", "order.json"],
        "",
        &expect![[r#"
        exit 0
        order.json: holds
    "#]],
    )
}

#[test]
fn a_range_shows_all_its_problems() -> Result<()> {
    let folder = folder("range")?;
    let demo = include_str!("../../../web/ranges/fenland.toml");
    let broken = demo
        .replace("passes = 3 ", "passes = 0 ")
        .replace("grain = \"length\"\nprice_minor = 9800", "grain = \"up\"\nprice_minor = 9800");
    std::fs::write(folder.join("range.toml"), demo)?;
    std::fs::write(folder.join("broken.toml"), &broken)?;
    std::fs::write(folder.join("later.toml"), demo.replace("passes = 3 ", "passes = 0 "))?;
    let good = seen(&folder, &["range", "range.toml"], "")?;
    assert!(good.starts_with("exit 0\nFenland of Odd Lintel Workshop: right\n"), "{good}");
    check(
        &folder,
        &["range", "broken.toml"],
        "",
        &expect![[r#"
            exit 1
            --- errors
            error: broken.toml:42:9: board.birch-18.sheet.small.grain: "up" is not one of "length" or "width"
            hint: the demo range web/ranges/fenland.toml documents every key
        "#]],
    )?;
    check(
        &folder,
        &["range", "later.toml"],
        "",
        &expect![[r#"
            exit 1
            --- errors
            error: later.toml:458:10: rates.passes: 0 is out of proportion; 1 to 50 is possible
            hint: the demo range web/ranges/fenland.toml documents every key
        "#]],
    )
}

#[test]
fn what_cannot_be_made_is_not_ordered() -> Result<()> {
    let folder = folder("refused")?;
    let choice = seen(&folder, &["sample", "--count", "1", "--seed", "4"], "")?;
    let wide = choice.trim_start_matches("exit 0\n").replacen("\"width_mm\":", "\"width_mm\":9", 1);
    let refused = seen(&folder, &["order", "--today", DAY, "--choice", "-"], &wide)?;
    assert!(
        refused.starts_with("exit 1\n--- errors\nerror: this unit cannot be ordered:\n  The width is 9"),
        "{refused}"
    );
    check(
        &folder,
        &["derive", "--choice", "-"],
        "{\"model\":3}",
        &expect![[r#"
        exit 2
        --- errors
        error: -: no choice: /model: expected a text, found 3
        hint: `slotwright sample` prints choices, `slotwright schema` says what stands where
    "#]],
    )
}

#[test]
fn samples_are_the_same_for_the_same_seed() -> Result<()> {
    let folder = folder("sample")?;
    let sample = |seed| seen(&folder, &["sample", "--any", "--count", "20", "--seed", seed], "");
    assert_eq!(sample("1")?, sample("1")?);
    assert_ne!(sample("1")?, sample("2")?);
    assert_eq!(sample("1")?.lines().count(), 21);
    Ok(())
}

#[test]
fn rules_are_explained() -> Result<()> {
    let folder = folder("explain")?;
    check(
        &folder,
        &["explain", "hole-plug"],
        "",
        &expect![[r#"
        exit 0
        hole-plug
          what    The plug that the customer named passes every cable hole.
          why     A cable whose plug does not pass has to be cut or stays outside.
          source  the range file, with the plugs' standards beside the figures; geometry
    "#]],
    )?;
    check(
        &folder,
        &["explain", "gravity"],
        "",
        &expect![[r#"
        exit 2
        --- errors
        error: no rule has the code "gravity"
        hint: `slotwright explain` lists them
    "#]],
    )
}

/// One picture for each part, and the document that holds them all.
#[test]
fn an_assembly_sheet_is_written() -> Result<()> {
    let folder = folder("assembly")?;
    // What an earlier unit of more parts left goes, what is not of a sheet stays.
    std::fs::create_dir(folder.join("sheet"))?;
    for name in ["step-14.svg", "step-90.svg", "step-by-step.svg"] {
        std::fs::write(folder.join("sheet").join(name), "")?;
    }
    check(
        &folder,
        &["assembly", "--out", "sheet"],
        "",
        &expect![[r#"
        exit 0
    "#]],
    )?;
    let mut names = Vec::new();
    for entry in std::fs::read_dir(folder.join("sheet"))? {
        names.push(entry?.file_name().to_string_lossy().into_owned());
    }
    names.sort();
    expect![[r#"
        assembly.json
        step-01.svg
        step-02.svg
        step-03.svg
        step-04.svg
        step-05.svg
        step-06.svg
        step-07.svg
        step-08.svg
        step-09.svg
        step-10.svg
        step-11.svg
        step-12.svg
        step-13.svg
        step-by-step.svg"#]]
    .assert_eq(&names.join("\n"));
    let text = std::fs::read_to_string(folder.join("sheet/assembly.json"))?;
    assert_eq!(seen(&folder, &["assembly"], "")?, format!("exit 0\n{text}"));
    let sheet: serde_json::Value = serde_json::from_str(&text)?;
    let mut steps = Vec::new();
    for step in sheet["steps"].as_array().into_iter().flatten() {
        let name = format!("sheet/step-{:02}.svg", step["number"].as_u64().unwrap_or(0));
        assert_eq!(step["svg"].as_str(), Some(std::fs::read_to_string(folder.join(name))?.as_str()));
        steps.push(format!("{} of {}: {} {}", step["number"], step["of"], step["mass_g"], step["sentence"]));
    }
    expect![[r#"
        1 of 13: 8154 "Lay the lower base plate where the unit is to stand, level."
        2 of 13: 8376 "Lay the upper base plate on it, slots over slots."
        3 of 13: 2191 "Stand upright 1 up, tabs down through both base plates."
        4 of 13: 2161 "Stand upright 2 up, tabs down through both base plates."
        5 of 13: 2161 "Stand upright 3 up, tabs down through both base plates."
        6 of 13: 2191 "Stand upright 4 up, tabs down through both base plates."
        7 of 13: 9026 "Lower the back into its laps with the uprights."
        8 of 13: 1920 "Slide shelf 1 of bay 2 in from the front until its tabs are in the back."
        9 of 13: 274 "Lower stile 1 before its upright into the base."
        10 of 13: 274 "Lower stile 2 before its upright into the base."
        11 of 13: 274 "Lower stile 3 before its upright into the base."
        12 of 13: 2606 "Stand the door of bay 1 on its lower pivot."
        13 of 13: 8376 "Lower the top over all tabs and pivots: its weight holds the unit.""#]]
    .assert_eq(&steps.join("\n"));
    Ok(())
}

#[test]
fn no_sheet_is_written_of_what_cannot_be_made_or_where_none_can_be() -> Result<()> {
    let folder = folder("no-sheet")?;
    let choice = seen(&folder, &["sample", "--count", "1", "--seed", "4"], "")?;
    let wide = choice.trim_start_matches("exit 0\n").replacen("\"width_mm\":", "\"width_mm\":9", 1);
    let refused = seen(&folder, &["assembly", "--choice", "-", "--out", "sheet"], &wide)?;
    assert!(
        refused.starts_with("exit 1\n--- errors\nerror: this unit cannot be ordered:\n  The width is 9"),
        "{refused}"
    );
    assert!(!folder.join("sheet").exists());
    std::fs::write(folder.join("taken"), "")?;
    check(
        &folder,
        &["assembly", "--out", "taken"],
        "",
        &expect![[r#"
        exit 2
        --- errors
        error: taken: File exists (os error 17)
        hint: does the folder exist, is this no folder itself, and may you write there?
    "#]],
    )
}

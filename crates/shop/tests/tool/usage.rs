//! Help, and what exit codes say.

use crate::{DAY, Result, folder, other, put, seen};

const COMMANDS: [&str; 14] = [
    "check", "derive", "range", "sample", "order", "explain", "fit", "options", "solid", "assembly", "link", "nest",
    "pack", "schema",
];

/// What every command gives back is said in its help: no script has to guess.
#[test]
fn every_command_says_its_exit_codes() -> Result<()> {
    let folder = folder("help")?;
    let all = seen(&folder, &["--help"], "")?;
    for command in COMMANDS {
        assert!(all.lines().any(|line| line.trim_start().starts_with(&format!("{command} "))), "{command}: {all}");
        for help in ["-h", "--help"] {
            let said = seen(&folder, &[command, help], "")?;
            let codes = said.split("\nExit codes:\n").nth(1).unwrap_or_default();
            let codes: Vec<&str> = codes.lines().filter_map(|line| line.get(..5)).collect();
            let judges = !["sample", "explain", "schema"].contains(&command);
            let expected: &[&str] = if judges { &["  0  ", "  1  ", "  2  "] } else { &["  0  ", "  2  "] };
            assert_eq!(codes, expected, "{command} {help}");
            assert!(said.contains(&format!("\nExamples:\n  slotwright {command}")), "{said}");
        }
    }
    // No command stands in the list of the tool that this test does not ask.
    let listed = all.split("Commands:\n").nth(1).and_then(|rest| rest.split("\n\n").next()).unwrap_or_default();
    assert_eq!(listed.lines().count(), COMMANDS.len() + 1, "with `help` itself: {listed}");
    Ok(())
}

/// A range file with faults is of no use to any command; only `range`, which judges it, tells that by the code of what
/// does not hold.
#[test]
fn a_faulty_range_file_is_one_that_cannot_be_used() -> Result<()> {
    let folder = folder("faulty")?;
    put(&folder, "range.toml", other(&[("passes = 3 ", "passes = 0 ")]))?;
    seen(&folder, &["order", "--today", DAY, "--out", "order.json"], "")?;
    let said = "--- errors\nerror: range.toml:558:10: rates.passes: 0 is out of proportion; 1 to 50 is possible\n";
    for command in [
        &["check", "order.json"][..],
        &["derive", "--today", DAY],
        &["sample"],
        &["order", "--today", DAY],
        &["explain", "shelf-sag"],
        &["explain"],
        &["fit"],
        &["options"],
        &["solid", "--out", "unit.glb"],
        &["assembly"],
        &["link"],
        &["pack", "order.json", "--out", "pack"],
    ] {
        let seen = seen(&folder, &[command, &["--range", "range.toml"]].concat(), "")?;
        assert!(seen.starts_with(&format!("exit 2\n{said}")), "{command:?}: {seen}");
    }
    assert!(seen(&folder, &["range", "range.toml"], "")?.starts_with(&format!("exit 1\n{said}")));
    assert!(seen(&folder, &["range", "--json", "range.toml"], "")?.starts_with("exit 1\n{"));
    assert!(seen(&folder, &["range", "absent.toml"], "")?.starts_with("exit 2\n"));
    Ok(())
}

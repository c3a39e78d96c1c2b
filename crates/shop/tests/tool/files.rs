//! Files that are none, or not what was meant: the tool never waits for what does not come, and says what it is.

use std::path::Path;
use std::process::{Command, Stdio};

use expect_test::expect;

use crate::{DAY, Result, check, folder, put, seen};

/// Runs the tool by way of a program of the system that ends it if it hangs, which shows as exit 124.
#[cfg(target_os = "linux")]
fn guarded(folder: &Path, arguments: &str) -> Result<String> {
    let tool = env!("CARGO_BIN_EXE_slotwright");
    let output = Command::new("sh")
        .args(["-c", &format!("timeout 60 '{tool}' {arguments}")])
        .current_dir(folder)
        .stdin(Stdio::null())
        .output()?;
    let code = output.status.code().unwrap_or(-1);
    Ok(format!("exit {code}\n{}{}", String::from_utf8(output.stdout)?, String::from_utf8(output.stderr)?))
}

#[cfg(target_os = "linux")]
#[test]
fn a_pipe_or_a_device_is_not_waited_for() -> Result<()> {
    let folder = folder("pipes")?;
    assert!(Command::new("mkfifo").arg(folder.join("pipe")).status()?.success());
    expect![[r#"
        exit 2
        pipe: unreadable: this is a pipe or a device, not a file
          hint: to read what another program prints, name it - and send it to standard input
    "#]]
    .assert_eq(&guarded(&folder, "check pipe")?);
    expect![[r#"
        exit 2
        error: pipe: this is a pipe or a device, not a file
        hint: to read what another program prints, name it - and send it to standard input
    "#]]
    .assert_eq(&guarded(&folder, "range pipe")?);
    expect![[r#"
        exit 2
        error: /dev/zero: this is a pipe or a device, not a file
        hint: to read what another program prints, name it - and send it to standard input
    "#]]
    .assert_eq(&guarded(&folder, "derive --choice /dev/zero")?);
    expect![[r#"
        exit 2
        error: /dev/tty: this is a pipe or a device, not a file
        hint: to read what another program prints, name it - and send it to standard input
    "#]]
    .assert_eq(&guarded(&folder, "derive --backlog /dev/tty")?);
    expect![[r#"
        exit 2
        error: pipe: this is a pipe or a device, not a file
        hint: name a file
    "#]]
    .assert_eq(&guarded(&folder, &format!("order --today {DAY} --out pipe"))?);
    Ok(())
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_is_said() -> Result<()> {
    let folder = folder("full")?;
    expect![[r#"
        exit 2
        error: standard output: the disk is full: not all of it could be written
        hint: make room, then try again; what came out is not all of it
    "#]]
    .assert_eq(&guarded(&folder, "explain > /dev/full")?);
    expect![[r#"
        exit 2
        error: /dev/full: the disk is full: not all of it could be written
        hint: make room, then try again; what came out is not all of it
    "#]]
    .assert_eq(&guarded(&folder, &format!("order --today {DAY} --out /dev/full"))?);
    Ok(())
}

/// A disk that is full after two blocks: what was there before is there still, and nothing else is left.
#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_leaves_what_was_there() -> Result<()> {
    let folder = folder("full-force")?;
    let read = || std::fs::read_to_string(folder.join("unit.glb"));
    put(&folder, "unit.glb", "what was there")?;
    let tool = env!("CARGO_BIN_EXE_slotwright");
    for name in ["unit.glb", "new.glb"] {
        let limited = format!("trap '' XFSZ; ulimit -f 2; '{tool}' solid --out {name} --force");
        let output = Command::new("sh").args(["-c", &limited]).current_dir(&folder).stdin(Stdio::null()).output()?;
        let said = String::from_utf8(output.stderr)?;
        assert_eq!(output.status.code(), Some(2), "{said}");
        // The system has a limit of this file in place of a full disk, and says it in its own words.
        assert!(said.starts_with(&format!("error: {name}: ")) && !said.contains("came out"), "{said}");
    }
    assert_eq!(read()?, "what was there");
    let left: Vec<_> = std::fs::read_dir(&folder)?.map(|entry| entry.map(|entry| entry.file_name())).collect();
    assert_eq!(left.len(), 1, "{left:?}");
    // With room it is written over, through a link too.
    std::os::unix::fs::symlink("unit.glb", folder.join("link.glb"))?;
    assert!(guarded(&folder, "solid --out link.glb --force")?.starts_with("exit 0\n"));
    assert!(std::fs::symlink_metadata(folder.join("link.glb"))?.is_symlink());
    assert!(std::fs::read(folder.join("unit.glb"))?.starts_with(b"glTF"));
    Ok(())
}

/// Nothing is there at the end of a link: without `--force` it stays so, with it the file is written there.
#[cfg(unix)]
#[test]
fn a_link_that_leads_nowhere_is_written_through() -> Result<()> {
    let folder = folder("dangling")?;
    std::fs::create_dir(folder.join("further"))?;
    std::os::unix::fs::symlink("further/link.json", folder.join("order.json"))?;
    std::os::unix::fs::symlink("whole.json", folder.join("further/link.json"))?;
    let order = ["order", "--today", DAY, "--out", "order.json"];
    check(
        &folder,
        &order,
        "",
        &expect![[r#"
            exit 2
            --- errors
            error: order.json: there is a file of this name already; nothing was written
            hint: --force writes over it
        "#]],
    )?;
    assert!(!folder.join("further/whole.json").exists());
    assert!(seen(&folder, &[&order[..], &["--force"]].concat(), "")?.starts_with("exit 0"));
    assert!(std::fs::symlink_metadata(folder.join("order.json"))?.is_symlink());
    assert!(std::fs::read_to_string(folder.join("further/whole.json"))?.starts_with('{'));
    // A link to itself leads nowhere at all, and `--force` is no way out.
    std::os::unix::fs::symlink("round.json", folder.join("round.json"))?;
    let said = seen(&folder, &["order", "--today", DAY, "--out", "round.json", "--force"], "")?;
    assert!(said.starts_with("exit 2") && !said.contains("already") && !said.contains("--force"), "{said}");
    Ok(())
}

/// What a run that was broken off has left beside a file is in nobody's way, and stays.
#[cfg(unix)]
#[test]
fn what_is_written_over_keeps_who_may_read_it_whatever_is_left_beside_it() -> Result<()> {
    use std::os::unix::fs::PermissionsExt;
    let folder = folder("left")?;
    put(&folder, "order.json", "what was there")?;
    let path = folder.join("order.json");
    std::fs::set_permissions(&path, std::fs::Permissions::from_mode(0o600))?;
    let tool = env!("CARGO_BIN_EXE_slotwright");
    // `exec` keeps the number of the process.
    let run = format!("touch order.json.$$-0.part; exec '{tool}' order --today {DAY} --out order.json --force");
    let output = Command::new("sh").args(["-c", &run]).current_dir(&folder).stdin(Stdio::null()).output()?;
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    assert!(std::fs::read_to_string(&path)?.starts_with('{'));
    assert_eq!(std::fs::metadata(&path)?.permissions().mode() & 0o777, 0o600);
    let names = std::fs::read_dir(&folder)?.map(|entry| entry.map(|entry| entry.file_name()));
    let names = names.collect::<std::result::Result<Vec<_>, _>>()?;
    assert_eq!(names.len(), 2, "{names:?}");
    Ok(())
}

#[test]
fn what_is_no_such_file_is_said() -> Result<()> {
    let folder = folder("none")?;
    std::fs::create_dir(folder.join("orders"))?;
    put(&folder, "mark.json", "\u{feff}{}")?;
    put(&folder, "wide.json", b"\xff\xfe{\0}\0")?;
    put(&folder, "bytes.json", b"{\xff}")?;
    // As long as 50 MB, though nothing of it is on the disk.
    std::fs::File::create(folder.join("huge.toml"))?.set_len(50_000_000)?;
    check(
        &folder,
        &["check", "orders", "mark.json", "wide.json", "bytes.json", "huge.toml", "absent.json"],
        "",
        &expect![[r#"
            exit 2
            orders: unreadable: this is a folder, not a file
              hint: name a file in it
            mark.json: unreadable: not JSON: it begins with a byte order mark; save it as UTF-8 without one
              hint: is this the file that was saved with the order?
            wide.json: unreadable: this is text in UTF-16; it has to be in UTF-8
              hint: save it again as UTF-8, without a byte order mark
            bytes.json: unreadable: not text in UTF-8, from byte 1 on
              hint: is this the file that was saved with the order?
            huge.toml: unreadable: the file has 50000000 bytes; 65536 are the most that is read
              hint: is this the file that was meant?
            absent.json: unreadable: there is nothing of this name
              hint: is the name right, and may this file be read?
        "#]],
    )
}

#[test]
fn what_cannot_be_read_or_written_is_said() -> Result<()> {
    let folder = folder("no-file")?;
    std::fs::create_dir(folder.join("orders"))?;
    put(&folder, "mark.json", "\u{feff}{}")?;
    put(&folder, "wide.json", b"\xff\xfe{\0}\0")?;
    std::fs::File::create(folder.join("huge.toml"))?.set_len(50_000_000)?;
    check(
        &folder,
        &["range", "orders"],
        "",
        &expect![[r#"
        exit 2
        --- errors
        error: orders: this is a folder, not a file
        hint: name a file in it
    "#]],
    )?;
    check(
        &folder,
        &["range", "huge.toml"],
        "",
        &expect![[r#"
        exit 2
        --- errors
        error: huge.toml: the file has 50000000 bytes; 1048576 are the most that is read
        hint: is this the file that was meant?
    "#]],
    )?;
    check(
        &folder,
        &["range", "wide.json"],
        "",
        &expect![[r#"
        exit 2
        --- errors
        error: wide.json: this is text in UTF-16; it has to be in UTF-8
        hint: save it again as UTF-8, without a byte order mark
    "#]],
    )?;
    check(
        &folder,
        &["derive", "--choice", "mark.json"],
        "",
        &expect![[r#"
        exit 2
        --- errors
        error: mark.json: no choice: not JSON: it begins with a byte order mark; save it as UTF-8 without one
        hint: `slotwright sample` prints choices, `slotwright schema` says what stands where
    "#]],
    )?;
    check(
        &folder,
        &["derive", "--choice", "absent.json"],
        "",
        &expect![[r#"
        exit 2
        --- errors
        error: absent.json: there is nothing of this name
        hint: is the name right, and may this file be read?
    "#]],
    )?;
    check(
        &folder,
        &["order", "--today", DAY, "--out", "orders"],
        "",
        &expect![[r#"
        exit 2
        --- errors
        error: orders: this is a folder, not a file
        hint: name a file in it
    "#]],
    )?;
    check(
        &folder,
        &["order", "--today", DAY, "--out", "none/order.json"],
        "",
        &expect![[r#"
        exit 2
        --- errors
        error: none/order.json: there is nothing of this name
        hint: does the folder exist, and may you write there?
    "#]],
    )
}

#[test]
fn standard_input_is_bounded_and_read_once() -> Result<()> {
    let folder = folder("input")?;
    check(
        &folder,
        &["derive", "--choice", "-"],
        &" ".repeat(1_100_000),
        &expect![[r#"
        exit 2
        --- errors
        error: -: more than 1048576 bytes came in, the most that is read
        hint: is this the file that was meant?
    "#]],
    )?;
    let choice = seen(&folder, &["sample", "--count", "1"], "")?;
    let choice = choice.trim_start_matches("exit 0\n");
    check(
        &folder,
        &["derive", "--choice", "-", "--backlog", "-"],
        choice,
        &expect![[r#"
        exit 2
        --- errors
        error: -: standard input was read already, and can be read once only
        hint: name - for one document, and files for the others
    "#]],
    )
}

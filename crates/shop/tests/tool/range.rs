//! Range files, and what a pen slips in them.

use expect_test::expect;

use crate::{DEMO, Result, check, folder, other, put, seen};

#[test]
fn a_range_shows_all_its_problems() -> Result<()> {
    let folder = folder("range")?;
    let broken = DEMO
        .replace("passes = 3 ", "passes = 0 ")
        .replace("grain = \"length\"\nprice_minor = 9800", "grain = \"up\"\nprice_minor = 9800");
    std::fs::write(folder.join("range.toml"), DEMO)?;
    std::fs::write(folder.join("broken.toml"), &broken)?;
    std::fs::write(folder.join("later.toml"), DEMO.replace("passes = 3 ", "passes = 0 "))?;
    let good = seen(&folder, &["range", "range.toml"], "")?;
    assert!(good.starts_with("exit 0\nFenland of Odd Lintel Workshop: right\n"), "{good}");
    assert!(!good.contains("orders until"), "{good}");
    put(&folder, "until.toml", other(&[("# orders_until = ", "orders_until = ")]))?;
    let until = seen(&folder, &["range", "until.toml"], "")?;
    assert!(
        until.lines().any(|line| line.trim().starts_with("orders until") && line.ends_with(" 2027-12-31")),
        "{until}"
    );
    check(
        &folder,
        &["range", "broken.toml"],
        "",
        &expect![[r#"
            exit 1
            --- errors
            error: broken.toml:49:9: board.birch-18.sheet.small.grain: "up" is not one of "length" or "width"
                   broken.toml:558:10: rates.passes: 0 is out of proportion; 1 to 50 is possible
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
            error: later.toml:558:10: rates.passes: 0 is out of proportion; 1 to 50 is possible
            hint: the demo range web/ranges/fenland.toml documents every key
        "#]],
    )
}

/// What people write by hand, named as what it is.
#[test]
fn slips_of_the_pen_are_named() -> Result<()> {
    let folder = folder("slips")?;
    for (name, from, to, expected) in [
        (
            "bare",
            "key = \"fenland\"",
            "key = fenland",
            expect![[r#"
            exit 1
            --- errors
            error: bare.toml:11:7: a text stands in quotation marks: write "fenland"
            hint: the demo range web/ranges/fenland.toml documents every key
        "#]],
        ),
        (
            "comma",
            "clearance_mm = 0.15",
            "clearance_mm = 0,15",
            expect![[r#"
                exit 1
                --- errors
                error: comma.toml:400:16: 0,15 has a comma for its decimals: write 0.15
                hint: the demo range web/ranges/fenland.toml documents every key
            "#]],
        ),
        (
            "inner",
            "least = 900, ",
            "least = 900,5, ",
            expect![[r#"
                exit 1
                --- errors
                error: inner.toml:324:22: 900,5 has a comma for its decimals: write 900.5
                hint: the demo range web/ranges/fenland.toml documents every key
            "#]],
        ),
        (
            "curly",
            "name = \"Fenland\"",
            "name = \u{201c}Fenland\u{201d}",
            expect![[r#"
            exit 1
            --- errors
            error: curly.toml:12:8: “ is no quotation mark here: write " before and after
            hint: the demo range web/ranges/fenland.toml documents every key
        "#]],
        ),
        (
            "open",
            "[build]",
            "[build",
            expect![[r#"
                exit 1
                --- errors
                error: open.toml:399:7: unclosed table, expected `]`
                hint: the demo range web/ranges/fenland.toml documents every key
            "#]],
        ),
    ] {
        let file = format!("{name}.toml");
        put(&folder, &file, other(&[(from, to)]))?;
        check(&folder, &["range", &file], "", &expected)?;
    }
    // Names that other scripts write are none, names that nobody can read are.
    for (name, code) in [("\u{645}\u{6cc}\u{200c}\u{622}", 0), ("\u{e000}", 1), ("\u{3164}", 1)] {
        put(&folder, "name.toml", other(&[("name = \"Fenland\"", &format!("name = \"{name}\""))]))?;
        assert!(seen(&folder, &["range", "name.toml"], "")?.starts_with(&format!("exit {code}\n")), "{name:?}");
    }
    // A byte order mark before TOML is no fault.
    put(&folder, "mark.toml", format!("\u{feff}{DEMO}"))?;
    assert!(seen(&folder, &["range", "mark.toml"], "")?.starts_with("exit 0\n"));
    Ok(())
}

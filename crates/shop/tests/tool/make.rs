//! What is made of a choice: orders, sheets, solids.

use expect_test::expect;

use crate::{DAY, Result, check, folder, other, put, seen};

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
        exit 2
        --- errors
        error: sheet/step-14.svg: there is a file of this name already; nothing was written
        hint: --force writes over it
    "#]],
    )?;
    check(
        &folder,
        &["assembly", "--out", "sheet", "--force"],
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
        step-14.svg
        step-15.svg
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
        1 of 15: 8154 "Lay the lower base plate down a step away from the wall, since the back goes in from behind."
        2 of 15: 8320 "Lay the upper base plate on it, slots over slots."
        3 of 15: 1818 "Stand upright 1 up, tabs down through both base plates, and let one more person hold it until the back is on."
        4 of 15: 1788 "Stand upright 2 up, tabs down through both base plates, and let the same person hold it too."
        5 of 15: 1788 "Stand upright 3 up, tabs down through both base plates, and let the same person hold it too."
        6 of 15: 1818 "Stand upright 4 up, tabs down through both base plates, and let the same person hold it too."
        7 of 15: 9299 "Screw a tether to the rear face of the back near each end, 75 mm from the end and 105 mm below the upper edge, by screws of 15 mm at most, or they come through. Fix what takes them to the wall, 398 mm over the floor and 1 484 mm apart. Then bring the back forward over the hooks of the uprights, which one more person steadies, and let it down onto them. Push all to its place by the base, never by the uprights, and level it, by wedges where the floor is not. Fasten both tethers from above, across 66 mm or more where a skirting board keeps it off, and pull at the back: they have to hold."
        8 of 15: 1914 "Slide shelf 1 of bay 2 in from the front until its tabs are in the back."
        9 of 15: 271 "Lower stile 1 in front of its upright into the base."
        10 of 15: 271 "Lower stile 2 in front of its upright into the base."
        11 of 15: 271 "Lower stile 3 in front of its upright into the base."
        12 of 15: 2603 "Stand the door of bay 1 on its lower pivot, its notched corner up and away from the pivots, with a strip of card 2.5 mm thick under its free lower corner until the top is on. Hold it there until its stop stands, which one more person sets next."
        13 of 15: 679 "Lower the door stop of bay 1 into the base behind its door, tongue up and to the front: the tongue ends in front of the door's notched corner, and who holds the door may let go."
        14 of 15: 8329 "Lower the top over all tabs and pivots, while one more person guides the heads of the five parts that stand free into it, one after the other, those at the rear first: its weight holds the unit. Then draw the card out from under the door.""#]]
    .assert_eq(&steps.join("\n"));
    // The page shows as many: the wall has its step and its picture in both.
    let last = &sheet["last_step"];
    assert_eq!([&last["number"], &last["of"], &sheet["steps"][0]["of"]], [15; 3]);
    assert_eq!(last["tethered"], true);
    assert!(last["sentence"].as_str().is_some_and(|sentence| sentence.contains("to the wall")), "{last}");
    assert_eq!(last["svg"].as_str(), Some(std::fs::read_to_string(folder.join("sheet/step-15.svg"))?.as_str()));
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
            error: taken: this is a file, not a folder
            hint: name a folder; it is made if there is none
        "#]],
    )
}

/// Nothing that is there is lost unless somebody says so.
#[test]
fn what_is_there_is_not_written_over() -> Result<()> {
    let folder = folder("there")?;
    put(&folder, "order.json", "kept")?;
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
    put(&folder, "unit.glb", "kept")?;
    check(
        &folder,
        &["solid", "--out", "unit.glb"],
        "",
        &expect![[r#"
        exit 2
        --- errors
        error: unit.glb: there is a file of this name already; nothing was written
        hint: --force writes over it
    "#]],
    )?;
    std::fs::create_dir(folder.join("schemas"))?;
    put(&folder, "schemas/fit.schema.json", "kept")?;
    check(
        &folder,
        &["schema", "--out", "schemas"],
        "",
        &expect![[r#"
        exit 2
        --- errors
        error: schemas/fit.schema.json: there is a file of this name already; nothing was written
        hint: --force writes over it
    "#]],
    )?;
    for name in ["order.json", "unit.glb", "schemas/fit.schema.json"] {
        assert_eq!(std::fs::read_to_string(folder.join(name))?, "kept");
    }
    assert_eq!(std::fs::read_dir(folder.join("schemas"))?.count(), 1, "nothing or all");
    check(
        &folder,
        &[&order[..], &["--force"]].concat(),
        "",
        &expect![[r#"
        exit 0
    "#]],
    )?;
    assert!(seen(&folder, &["check", "order.json"], "")?.starts_with("exit 0"));
    assert!(seen(&folder, &["solid", "--out", "unit.glb", "--force"], "")?.starts_with("exit 0"));
    assert!(seen(&folder, &["schema", "--out", "schemas", "--force"], "")?.starts_with("exit 0"));
    assert!(std::fs::read(folder.join("unit.glb"))?.starts_with(b"glTF"));
    Ok(())
}

/// Whatever takes a choice takes an order; of another range it would be another unit.
#[test]
fn an_order_is_a_choice_too() -> Result<()> {
    let folder = folder("order-as-choice")?;
    let choice = seen(&folder, &["sample", "--count", "1", "--seed", "10"], "")?;
    put(&folder, "choice.json", choice.trim_start_matches("exit 0\n"))?;
    put(&folder, "booked.json", r#"{"minutes": {"cut": 3000}}"#)?;
    let made = ["--choice", "choice.json", "--backlog", "booked.json"];
    seen(&folder, &[&["order", "--today", DAY, "--out", "order.json"][..], &made].concat(), "")?;
    let derived = seen(&folder, &[&["derive", "--today", DAY][..], &made].concat(), "")?;
    assert!(derived.starts_with("exit 0\n"), "{derived}");
    assert_eq!(seen(&folder, &["derive", "--choice", "order.json"], "")?, derived, "with its own day and backlog");
    for command in ["options", "assembly"] {
        let of = |file| seen(&folder, &[command, "--choice", file], "");
        assert_eq!(of("order.json")?, of("choice.json")?);
    }
    let text = std::fs::read_to_string(folder.join("order.json"))?;
    put(&folder, "changed.json", text.replacen("\"share\":1", "\"share\":2", 1))?;
    put(&folder, "other.toml", other(&[("machine_hour_minor = 6200", "machine_hour_minor = 6300")]))?;
    let changed = seen(&folder, &["derive", "--choice", "changed.json"], "")?;
    assert!(
        changed.starts_with(
            "exit 2\n--- errors\nerror: changed.json: no order: the file was changed after it was written: the unit "
        ),
        "{changed}"
    );
    check(
        &folder,
        &["derive", "--choice", "order.json", "--range", "other.toml"],
        "",
        &expect![[r#"
            exit 2
            --- errors
            error: order.json: this order was made with the range fenland .., not with this one
            hint: name the range file of that time with --range, or take the choice out of it
        "#]],
    )
}

/// What is booked at a stage that nobody knows would hold up nothing.
#[test]
fn a_backlog_names_stages_of_the_range() -> Result<()> {
    let folder = folder("backlog")?;
    put(&folder, "booked.json", r#"{"minutes": {"cut": 600, "edge": 100}}"#)?;
    check(
        &folder,
        &["derive", "--today", DAY, "--backlog", "booked.json"],
        "",
        &expect![[r#"
            exit 2
            --- errors
            error: booked.json: /minutes/edge: the range has no stage "edge"
            hint: did you mean edges? its stages are coat-sheets, cut, edges, pack
        "#]],
    )
}

/// Letters that cannot be seen, or that mean something to nobody else, are no name.
#[test]
fn a_name_can_be_read_by_others() -> Result<()> {
    let folder = folder("names")?;
    let named =
        |name: &str| seen(&folder, &["order", "--today", DAY, "--name", name, "--out", "order.json", "--force"], "");
    let hint = "hint: --name, --contact, --address and --remark say what stands on the label";
    for (names, said) in [
        (&["\u{3164}", "\u{200d}\u{200c}", "\u{2800} \u{115f}"][..], "nothing is written here that can be seen"),
        (
            &["Ada \u{e000}", "\u{10fffd}", "Ada\u{200b}", "Ada\u{ffff}"],
            "a character that cannot be printed stands in the text",
        ),
    ] {
        for name in names {
            let refused = format!("exit 2\n--- errors\nerror: /customer/name: {said}\n{hint}\n");
            assert_eq!(named(name)?, refused, "{name:?}");
        }
    }
    for name in ["\u{645}\u{6cc}\u{200c}\u{622}\u{6cc}\u{62f}", "\u{915}\u{94d}\u{200d}\u{937}"] {
        assert_eq!(named(name)?, "exit 0\n");
        assert!(std::fs::read_to_string(folder.join("order.json"))?.contains(name));
    }
    Ok(())
}

/// After its last day a range sells nothing; what was ordered before is made all the same.
#[test]
fn a_range_takes_orders_until_its_last_day() -> Result<()> {
    let folder = folder("until")?;
    let until = |day| other(&[("currency = \"EUR\" ", &format!("orders_until = \"{day}\"\ncurrency = \"EUR\" "))]);
    put(&folder, "range.toml", until(DAY))?;
    put(&folder, "wrong.toml", until("2026-13-01"))?;
    check(
        &folder,
        &["range", "wrong.toml"],
        "",
        &expect![[r#"
            exit 1
            --- errors
            error: wrong.toml:16:16: orders_until: "2026-13-01" is not a day written YYYY-MM-DD
            hint: the demo range web/ranges/fenland.toml documents every key
        "#]],
    )?;
    let order = |today| {
        seen(&folder, &["order", "--range", "range.toml", "--today", today, "--out", "order.json", "--force"], "")
    };
    assert_eq!(order(DAY)?, "exit 0\n");
    expect![[r#"
        exit 1
        --- errors
        error: this unit cannot be ordered:
          This range takes orders no more: its last day was 2 days earlier. Ask the workshop for the present one.
        hint: `slotwright derive` shows the findings with their remedies
    "#]]
    .assert_eq(&order("2026-11-27")?);
    for make in ["assembly", "solid"] {
        let made = seen(&folder, &[make, "--range", "range.toml", "--choice", "order.json", "--out", make], "")?;
        assert_eq!(made, "exit 0\n");
    }
    Ok(())
}

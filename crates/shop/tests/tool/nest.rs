//! Published instances on sheets.

use expect_test::expect;

use crate::{Result, check, folder, put, seen};

/// Calculated by hand: without turning each sheet takes one 6 × 6 and one 6 × 4, and the fourth 6 × 4 one of its own; if
/// they are turned, three sheets take all, which their area needs.
const INSTANCE: &str = r#"{
 "name": "by-hand", "kind": "rect-bins", "sheet": [10, 10], "rotation_allowed": false,
 "items": [{"w": 6, "h": 6, "count": 3}, {"w": 6, "h": 4, "count": 4}]
}"#;

#[test]
fn an_instance_is_placed() -> Result<()> {
    let folder = folder("nest")?;
    put(&folder, "by-hand.json", INSTANCE)?;
    check(
        &folder,
        &["nest", "by-hand.json", "--out", "placement.json"],
        "",
        &expect![[r#"
            exit 0
            4 sheets, 51.0 % of them parts; fewer are not possible
        "#]],
    )?;
    check(
        &folder,
        &["nest", "by-hand.json", "--out", "placement.json"],
        "",
        &expect![[r#"
        exit 2
        --- errors
        error: placement.json: there is a file of this name already; nothing was written
        hint: --force writes over it
    "#]],
    )?;
    let turned = INSTANCE.replace("false", "true");
    check(
        &folder,
        &["nest", "-", "--seconds", "20", "--out", "placement.json", "--force"],
        &turned,
        &expect![[r#"
        exit 0
        3 sheets, 68.0 % of them parts; fewer are not possible
    "#]],
    )?;
    let document: Vec<serde_json::Value> =
        serde_json::from_str(&std::fs::read_to_string(folder.join("placement.json"))?)?;
    assert_eq!(document.len(), 7);
    assert!(document.iter().any(|part| part["rotated"] == true), "{document:?}");
    Ok(())
}

/// Whatever does not take all of the time is the same each time.
#[test]
fn a_placement_has_one_line_for_each_part() -> Result<()> {
    let folder = folder("nest-lines")?;
    let one = INSTANCE.replace("\"count\": 3", "\"count\": 1").replace("\"count\": 4", "\"count\": 1");
    check(
        &folder,
        &["nest", "-", "--seconds", "0"],
        &one,
        &expect![[r#"
        exit 0
        [
        {"item":0,"sheet":0,"x":0,"y":0,"rotated":false},
        {"item":1,"sheet":0,"x":0,"y":6,"rotated":false}
        ]
    "#]],
    )
}

#[test]
fn what_is_no_instance_is_refused() -> Result<()> {
    let folder = folder("nest-refused")?;
    let changed = |from: &str, to: &str| INSTANCE.replacen(from, to, 1);
    for (instance, said) in [
        (changed("\"w\": 6", "\"w\": 11"), "exit 1\n--- errors\nerror: -: /items/0: this part fits on no sheet\n"),
        (
            changed("\"w\": 6", "\"w\": 0"),
            "exit 2\n--- errors\nerror: -: no instance: /items/0/w: expected a whole number from 1 to 20000000, found 0\n",
        ),
        (
            changed("[10, 10]", "[10]"),
            "exit 2\n--- errors\nerror: -: no instance: /sheet: expected a list of two, found [10]\n",
        ),
        (
            changed("false", "0"),
            "exit 2\n--- errors\nerror: -: no instance: /rotation_allowed: expected true or false, found 0\n",
        ),
        (
            changed("rect-bins", "boxes"),
            "exit 2\n--- errors\nerror: -: no instance: /kind: expected \"rect-bins\" or \"strip-polygons\", found \"boxes\"\n",
        ),
        (
            changed("\"count\": 3", "\"count\": 20000"),
            "exit 2\n--- errors\nerror: -: no instance: a size or the number of parts is out of proportion\n",
        ),
    ] {
        let seen = seen(&folder, &["nest", "-", "--seconds", "0"], &instance)?;
        assert!(seen.starts_with(said), "{seen}");
        assert!(seen.contains("\nhint: "), "{seen}");
    }
    for seconds in ["-1", "soon", "3601", "NaN"] {
        let seen = seen(&folder, &["nest", "-", &format!("--seconds={seconds}")], INSTANCE)?;
        assert!(seen.contains("0 to 3600 seconds are possible"), "{seen}");
    }
    Ok(())
}

/// Invented, and worked by hand: the strip has to be as long as the U, and the square fits exactly into it.
const STRIP: &str = r#"{
 "name": "by-hand", "kind": "strip-polygons", "strip_height": 4.5, "items": [
  {"count": 1, "rotations": [0, 180], "polygon": [[0, 0], [6.5, 0], [6.5, 4], [4.5, 4], [4.5, 1], [2, 1], [2, 4], [0, 4]]},
  {"count": 1, "rotations": [0], "polygon": [[-1, 0], [1.5, 0], [1.5, 2.5], [-1, 2.5]]}
 ]
}"#;

#[test]
fn polygons_are_placed_on_a_strip() -> Result<()> {
    let folder = folder("nest-strip")?;
    put(&folder, "strip.json", STRIP)?;
    check(
        &folder,
        &["nest", "strip.json", "--seconds", "20", "--out", "placement.json"],
        "",
        &expect![[r#"
        exit 0
        6.500 of the strip, 84.6 % of it parts
    "#]],
    )?;
    let document: Vec<serde_json::Value> =
        serde_json::from_str(&std::fs::read_to_string(folder.join("placement.json"))?)?;
    let numbers = |part: &serde_json::Value| ["x", "y"].map(|key| part[key].as_f64().unwrap_or(f64::NAN));
    let [[u_x, _], [square_x, _]] = [numbers(&document[0]), numbers(&document[1])];
    // The U lies at the beginning, its inside from 2 to 4.5 of its own; the square begins one to the left of its origin.
    let inside = if document[0]["rotation"] == 180 { u_x - 4.5 } else { u_x + 2.0 };
    assert!((square_x - 1.0 - inside).abs() < 1e-9, "{document:?}");
    assert_eq!(document.len(), 2);
    Ok(())
}

/// The one layout by rule, which is the same each time.
#[test]
fn a_strip_is_filled_at_once() -> Result<()> {
    let folder = folder("nest-at-once")?;
    let square = STRIP.replacen("\"count\": 1, \"rotations\": [0, 180]", "\"count\": 2, \"rotations\": [0]", 1);
    let seen = seen(&folder, &["nest", "-", "--seconds", "0"], &square)?;
    assert!(seen.starts_with("exit 0\n[\n{\"item\":0,\"x\":0.0,\"y\":0.0,\"rotation\":0},\n"), "{seen}");
    assert_eq!(seen.lines().count(), 6, "{seen}");
    Ok(())
}

#[test]
fn what_fits_no_strip_is_refused() -> Result<()> {
    let folder = folder("nest-strip-refused")?;
    let changed = |from: &str, to: &str| {
        assert!(STRIP.contains(from), "{from}");
        STRIP.replacen(from, to, 1)
    };
    for (instance, said) in [
        (changed("4.5", "3.9"), "exit 1\n--- errors\nerror: -: /items/0: this part is higher than the strip\n"),
        (
            changed("[2, 1]", "[2, -1]"),
            "exit 2\n--- errors\nerror: -: /items/0/polygon: these are not the corners of a simple polygon\n",
        ),
        (
            changed("[0, 180]", "[0, 45]"),
            "exit 2\n--- errors\nerror: -: /items/0/rotations: turns are by quarters, and there is one at least\n",
        ),
        (
            changed("[0, 180]", "[]"),
            "exit 2\n--- errors\nerror: -: /items/0/rotations: turns are by quarters, and there is one at least\n",
        ),
        (
            changed("4.5", "-1"),
            "exit 2\n--- errors\nerror: -: no instance: a size or the number of parts is out of proportion\n",
        ),
        (
            changed("4.5", "1e11"),
            "exit 2\n--- errors\nerror: -: no instance: a size or the number of parts is out of proportion\n",
        ),
        (
            changed("[6.5, 0]", "[\"a\", 0]"),
            "exit 2\n--- errors\nerror: -: no instance: /items/0/polygon/1/0: expected a number, found \"a\"\n",
        ),
    ] {
        let seen = seen(&folder, &["nest", "-", "--seconds", "0"], &instance)?;
        assert!(seen.starts_with(said), "{seen}");
        assert!(seen.contains("\nhint: "), "{seen}");
    }
    Ok(())
}

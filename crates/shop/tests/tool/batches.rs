//! Batches that were measured after the range file was written.

use expect_test::expect;

use crate::{DAY, Result, check, folder, put, seen};

/// An order that was promised is held against the batch that it will be cut from.
#[test]
fn a_batch_decides_whether_an_order_can_be_cut() -> Result<()> {
    let folder = folder("batch")?;
    seen(&folder, &["order", "--today", DAY, "--out", "order.json"], "")?;
    let measured = |points: &str| seen(&folder, &["check", "order.json", "--measured", points], "");
    expect![[r#"
        exit 0
        order.json: holds
          range     Fenland (fenland ..), for orders without a last day, from the demo range
          unit      Sedge, 1 640 × 520 × 420 mm, Clear, ordered on 2026-11-25
          birch-18  body and back: 17.7 mm measured at eight points, 17.89 mm with its film, slots 18.04 mm; under 0.1 % of joints too tight, 50.9 % outside the wanted clearance, 25 % is usual
          mass      47.323 kg
          price     € 1 182.81
          arrives   by 2026-12-11
          mind      Of the joints of its top 50.9 % may be tight or loose; 25 % is usual.
          mind      It has to be fastened to the wall: a child who climbs it, or the load of a usual test, would tip it.
    "#]]
    .assert_eq(&measured("birch-18=17.61 17.68 17.72 17.66 17.70 17.64 17.69 17.70")?);
    expect![[r#"
        exit 1
        order.json: does not hold
          In this finish 48.6 % of its joints would not go in; the most is 1 %.
          range     Fenland (fenland ..), for orders without a last day, from the demo range
          unit      Sedge, 1 640 × 520 × 420 mm, Clear, ordered on 2026-11-25
          birch-18  body and back: 17.7 mm measured at eight points, 17.89 mm with its film, slots 18.04 mm; 48.6 % of joints too tight, 85 % outside the wanted clearance, 25 % is usual
          mass      47.323 kg
          price     € 1 182.81
          arrives   by 2026-12-11
          mind      Of the joints of its top 85 % may be tight or loose; 25 % is usual.
          mind      It has to be fastened to the wall: a child who climbs it, or the load of a usual test, would tip it.
    "#]]
    .assert_eq(&measured("birch-18=17.6 17.9 17.4 17.8 17.7 17.5 17.9 17.7")?);
    let few = measured("birch-18=17.6")?;
    assert!(few.contains("1 point was given; measure eight"), "{few}");
    let strange = seen(&folder, &["fit", "--measured", "oak=18 18 18 18 18 18 18 18"], "")?;
    assert!(strange.contains("the range has no board \"oak\""), "{strange}");
    // What is cut follows the batch.
    let derived = seen(&folder, &["derive", "--today", DAY, "--measured", "birch-18=18 18 18 18 18 18 18 18"], "")?;
    assert!(derived.contains("\"thickness_mm\": 18.19"), "18 mm and two films of 96 µm");
    Ok(())
}

/// A batch that is none of any board at hand is refused before any order is read.
#[test]
fn a_batch_is_of_a_board_of_the_range() -> Result<()> {
    let folder = folder("strange-batch")?;
    seen(&folder, &["order", "--today", DAY, "--out", "order.json"], "")?;
    let good = "birch-18=17.61 17.68 17.72 17.66 17.70 17.64 17.69 17.70";
    for (batches, expected) in [
        (
            &["brich-18=17.7 17.7 17.7 17.7 17.7 17.7 17.7 17.7"][..],
            expect![[r#"
            exit 2
            --- errors
            error: the range has no board "brich-18"
            hint: did you mean birch-18?
        "#]],
        ),
        (
            &[good, good],
            expect![[r#"
            exit 2
            --- errors
            error: the board "birch-18" is measured twice
            hint: give the eight points of the batch that is to be cut, once
        "#]],
        ),
        (
            &["birch-18=25 25 25 25 25 25 25 25"],
            expect![[r#"
            exit 2
            --- errors
            error: birch-18: 25 mm was measured for a board of 18 mm; 17.06 to 18.74 mm is possible (EN 315)
            hint: is it the right board, and was it measured in millimetres?
        "#]],
        ),
    ] {
        let batches = batches.iter().flat_map(|batch| ["--measured", batch]);
        check(&folder, &["check", "order.json"].into_iter().chain(batches).collect::<Vec<_>>(), "", &expected)?;
    }
    Ok(())
}

/// What is promised stays; what the batch changes of mass and parts is said.
#[test]
fn a_report_says_what_is_cut() -> Result<()> {
    let folder = folder("report")?;
    let choice = seen(&folder, &["derive", "--today", DAY], "")?;
    let choice: serde_json::Value = serde_json::from_str(choice.trim_start_matches("exit 0\n"))?;
    let mut choice = choice["choice"].clone();
    choice["back"] = "birch-12".into();
    put(&folder, "choice.json", choice.to_string())?;
    seen(&folder, &["order", "--today", DAY, "--choice", "choice.json", "--out", "order.json"], "")?;
    let batch = ["--measured", "birch-18=17.40 17.42 17.41 17.39 17.40 17.38 17.41 17.39"];
    check(
        &folder,
        &[&["check", "order.json"][..], &batch].concat(),
        "",
        &expect![[r#"
            exit 0
            order.json: holds
              range     Fenland (fenland ..), for orders without a last day, from the demo range
              unit      Sedge, 1 640 × 520 × 420 mm, Clear, ordered on 2026-11-25
              birch-18  body: 17.4 mm measured at eight points, 17.59 mm with its film, slots 17.74 mm; 0 % of joints too tight, 6.6 % outside the wanted clearance, 25 % is usual
              birch-12  back: 12 mm measured at eight points, 12.19 mm with its film, slots 12.34 mm; under 0.1 % of joints too tight, 15.3 % outside the wanted clearance, 25 % is usual
              mass      44.054 kg, promised 44.644 kg
              price     € 1 264.89, promised € 1 264.80
              arrives   by 2026-12-11
              parts     cut to the measured batches, not to the thickness of the range
              mind      It has to be fastened to the wall: a child who climbs it, or the load of a usual test, would tip it.
        "#]],
    )?;
    let report = seen(&folder, &[&["check", "--json", "order.json"][..], &batch].concat(), "")?;
    let report: serde_json::Value = serde_json::from_str(report.trim_start_matches("exit 0\n"))?;
    let order = &report["files"][0]["order"];
    assert_eq!(order["boards"][0]["measured"], "points");
    assert_eq!(order["boards"][1]["measured"], "points");
    let changed: Vec<&str> =
        order["by_batch"].as_array().into_iter().flatten().filter_map(|d| d["pointer"].as_str()).collect();
    assert_eq!(changed, ["/promised/price_minor", "/promised/mass_g", "/promised/parts_digest"]);
    Ok(())
}

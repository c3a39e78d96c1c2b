//! Orders are derived again.

use expect_test::expect;

use crate::{DAY, DEMO, Result, check, folder, other, put, seen};

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
              range     Fenland (fenland ..), for orders without a last day, from the demo range
              unit      Sedge, 1 640 × 520 × 420 mm, Clear, ordered on 2026-11-25
              birch-18  body and back: 17.7 mm measured at eight points, 17.89 mm with its film, slots 18.04 mm; under 0.1 % of joints too tight, 21.8 % outside the wanted clearance, 25 % is usual
              mass      47.323 kg
              price     € 1 182.81
              arrives   by 2026-12-11
              mind      It has to be fastened to the wall: a child who climbs it, or the load of a usual test, would tip it.
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
              range     Fenland (fenland ..), for orders without a last day, from the demo range
              unit      Sedge, 1 640 × 520 × 420 mm, Clear, ordered on 2026-11-25
              birch-18  body and back: 17.7 mm measured at eight points, 17.89 mm with its film, slots 18.04 mm; under 0.1 % of joints too tight, 21.8 % outside the wanted clearance, 25 % is usual
              mass      47.323 kg
              price     € 1 182.81
              arrives   by 2026-12-11
              mind      It has to be fastened to the wall: a child who climbs it, or the load of a usual test, would tip it.
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
              range     Fenland (fenland ..), for orders without a last day, from the demo range
              unit      Sedge, 1 640 × 520 × 420 mm, Clear, ordered on 2026-11-25
              birch-18  body and back: 17.7 mm measured at eight points, 17.89 mm with its film, slots 18.04 mm; under 0.1 % of joints too tight, 21.8 % outside the wanted clearance, 25 % is usual
              mass      47.323 kg
              price     € 1 182.81
              arrives   by 2026-12-11
              mind      It has to be fastened to the wall: a child who climbs it, or the load of a usual test, would tip it.
            later.json: holds
              again     the same order as good.json: it is made once
              range     Fenland (fenland ..), for orders without a last day, from the demo range
              unit      Sedge, 1 640 × 520 × 420 mm, Clear, ordered on 2026-11-25
              birch-18  body and back: 17.7 mm measured at eight points, 17.89 mm with its film, slots 18.04 mm; under 0.1 % of joints too tight, 21.8 % outside the wanted clearance, 25 % is usual
              mass      47.323 kg
              price     € 1 182.81
              arrives   by 2026-12-11
              mind      It has to be fastened to the wall: a child who climbs it, or the load of a usual test, would tip it.
            huge.json: unreadable: the file has 70000 bytes; 65536 are the most that is read
              hint: is this the file that was meant?
            absent.json: unreadable: there is nothing of this name
              hint: is the name right, and may this file be read?
        "#]],
    )
}

/// An order under another range is only checked with that range at hand.
#[test]
fn an_order_of_another_range_asks_for_it() -> Result<()> {
    let folder = folder("other")?;
    std::fs::write(folder.join("other.toml"), DEMO.replace("machine_hour_minor = 6200", "machine_hour_minor = 6300"))?;
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
              range     Fenland (fenland ..), for orders without a last day, from other.toml
              unit      Sedge, 1 640 × 520 × 420 mm, Clear, ordered on 2026-11-25
              birch-18  body and back: 17.7 mm measured at eight points, 17.89 mm with its film, slots 18.04 mm; under 0.1 % of joints too tight, 21.8 % outside the wanted clearance, 25 % is usual
              mass      47.323 kg
              price     € 1 185.18
              arrives   by 2026-12-11
              mind      It has to be fastened to the wall: a child who climbs it, or the load of a usual test, would tip it.
        "#]],
    )
}

/// Once ranges are named, the demo range is as unknown as any other.
#[test]
fn only_the_named_ranges_are_known() -> Result<()> {
    let folder = folder("named")?;
    put(&folder, "other.toml", other(&[("machine_hour_minor = 6200", "machine_hour_minor = 6300")]))?;
    put(&folder, "demo.toml", DEMO)?;
    seen(&folder, &["order", "--today", DAY, "--out", "order.json"], "")?;
    let with = |ranges: &[&str]| seen(&folder, &[&["check", "order.json"][..], ranges].concat(), "");
    let alone = with(&["--range", "other.toml"])?;
    assert!(alone.starts_with("exit 2\norder.json: unreadable: /range/digest: the range "), "{alone}");
    let both = with(&["--range", "other.toml", "--range", "demo.toml"])?;
    assert!(both.contains("exit 0\n") && both.contains(", for orders without a last day, from demo.toml\n"), "{both}");
    Ok(())
}

/// The seal of an order whose text was exchanged, as its writer would have made it.
fn resealed(text: &str, from: &str, to: &str) -> Result<String> {
    assert!(text.contains(from), "{from} is not in {text}");
    let mut order: serde_json::Value = serde_json::from_str(&text.replacen(from, to, 1))?;
    let digest = order.as_object_mut().and_then(|members| members.remove("digest"));
    assert!(digest.is_some());
    order["digest"] = slotwright_core::input::seal::Digest::of_value(&order).to_string().into();
    Ok(order.to_string())
}

/// The key of the range, its stages and its days are held against the range itself.
#[test]
fn an_order_agrees_with_its_range() -> Result<()> {
    let folder = folder("agrees")?;
    put(&folder, "booked.json", r#"{"minutes": {"cut": 600}}"#)?;
    seen(&folder, &["order", "--today", DAY, "--backlog", "booked.json", "--out", "order.json"], "")?;
    let text = std::fs::read_to_string(folder.join("order.json"))?;
    put(&folder, "key.json", resealed(&text, "\"key\":\"fenland\"", "\"key\":\"highland\"")?)?;
    put(&folder, "stage.json", resealed(&text, "\"cut\":600", "\"glue\":600")?)?;
    check(
        &folder,
        &["check", "key.json", "stage.json"],
        "",
        &expect![[r#"
            exit 2
            key.json: does not hold
              /range/key: promised highland, derived fenland
              range     Fenland (fenland ..), for orders without a last day, from the demo range
              unit      Sedge, 1 640 × 520 × 420 mm, Clear, ordered on 2026-11-25
              birch-18  body and back: 17.7 mm measured at eight points, 17.89 mm with its film, slots 18.04 mm; under 0.1 % of joints too tight, 21.8 % outside the wanted clearance, 25 % is usual
              mass      47.323 kg
              price     € 1 182.81
              arrives   by 2026-12-11
              mind      It has to be fastened to the wall: a child who climbs it, or the load of a usual test, would tip it.
            stage.json: unreadable: /backlog/minutes/glue: the range of this order has no such stage
              hint: ask those who wrote this order; the page writes none of these
        "#]],
    )?;
    // An order of a day after the last one of its range.
    let until = other(&[("currency = \"EUR\" ", "orders_until = \"2026-11-25\"\ncurrency = \"EUR\" ")]);
    put(&folder, "until.toml", until)?;
    seen(&folder, &["order", "--range", "until.toml", "--today", DAY, "--out", "last.json"], "")?;
    let text = std::fs::read_to_string(folder.join("last.json"))?;
    put(&folder, "late.json", resealed(&text, "\"ordered_on\":\"2026-11-25\"", "\"ordered_on\":\"2026-11-26\"")?)?;
    check(
        &folder,
        &["check", "--range", "until.toml", "last.json", "late.json"],
        "",
        &expect![[r#"
            exit 1
            last.json: holds
              range     Fenland (fenland ..), for orders until 2026-11-25, from until.toml
              unit      Sedge, 1 640 × 520 × 420 mm, Clear, ordered on 2026-11-25
              birch-18  body and back: 17.7 mm measured at eight points, 17.89 mm with its film, slots 18.04 mm; under 0.1 % of joints too tight, 21.8 % outside the wanted clearance, 25 % is usual
              mass      47.323 kg
              price     € 1 182.81
              arrives   by 2026-12-11
              mind      It has to be fastened to the wall: a child who climbs it, or the load of a usual test, would tip it.
            late.json: does not hold
              This range takes orders no more: its last day was 1 day earlier. Ask the workshop for the present one.
              /promised/arrives_on: promised 2026-12-11, derived 2026-12-14
              range     Fenland (fenland ..), for orders until 2026-11-25, from until.toml
              unit      Sedge, 1 640 × 520 × 420 mm, Clear, ordered on 2026-11-26
              birch-18  body and back: 17.7 mm measured at eight points, 17.89 mm with its film, slots 18.04 mm; under 0.1 % of joints too tight, 21.8 % outside the wanted clearance, 25 % is usual
              mass      47.323 kg
              price     € 1 182.81
              arrives   by 2026-12-14
              mind      It has to be fastened to the wall: a child who climbs it, or the load of a usual test, would tip it.
        "#]],
    )
}

/// The same order, by another name and in another formatting.
#[test]
fn the_same_order_is_said() -> Result<()> {
    let folder = folder("same")?;
    seen(&folder, &["order", "--today", DAY, "--out", "order.json"], "")?;
    let text = std::fs::read_to_string(folder.join("order.json"))?;
    put(&folder, "copy.json", text.replace(",\"", ",\n\""))?;
    seen(&folder, &["order", "--today", "2026-11-26", "--out", "next.json"], "")?;
    check(
        &folder,
        &["check", "order.json", "next.json", "copy.json"],
        "",
        &expect![[r#"
            exit 0
            order.json: holds
              range     Fenland (fenland ..), for orders without a last day, from the demo range
              unit      Sedge, 1 640 × 520 × 420 mm, Clear, ordered on 2026-11-25
              birch-18  body and back: 17.7 mm measured at eight points, 17.89 mm with its film, slots 18.04 mm; under 0.1 % of joints too tight, 21.8 % outside the wanted clearance, 25 % is usual
              mass      47.323 kg
              price     € 1 182.81
              arrives   by 2026-12-11
              mind      It has to be fastened to the wall: a child who climbs it, or the load of a usual test, would tip it.
            next.json: holds
              range     Fenland (fenland ..), for orders without a last day, from the demo range
              unit      Sedge, 1 640 × 520 × 420 mm, Clear, ordered on 2026-11-26
              birch-18  body and back: 17.7 mm measured at eight points, 17.89 mm with its film, slots 18.04 mm; under 0.1 % of joints too tight, 21.8 % outside the wanted clearance, 25 % is usual
              mass      47.323 kg
              price     € 1 182.81
              arrives   by 2026-12-14
              mind      It has to be fastened to the wall: a child who climbs it, or the load of a usual test, would tip it.
            copy.json: holds
              again     the same order as order.json: it is made once
              range     Fenland (fenland ..), for orders without a last day, from the demo range
              unit      Sedge, 1 640 × 520 × 420 mm, Clear, ordered on 2026-11-25
              birch-18  body and back: 17.7 mm measured at eight points, 17.89 mm with its film, slots 18.04 mm; under 0.1 % of joints too tight, 21.8 % outside the wanted clearance, 25 % is usual
              mass      47.323 kg
              price     € 1 182.81
              arrives   by 2026-12-11
              mind      It has to be fastened to the wall: a child who climbs it, or the load of a usual test, would tip it.
        "#]],
    )
}

/// The same for machines.
#[test]
fn a_report_for_machines() -> Result<()> {
    let folder = folder("machines")?;
    seen(&folder, &["order", "--today", DAY, "--out", "order.json"], "")?;
    check(
        &folder,
        &["check", "order.json", "--json"],
        "",
        &expect![[r#"
            exit 0
            {
              "format": "slotwright-check",
              "version": 1,
              "files": [
                {
                  "file": "order.json",
                  "result": "holds",
                  "order": {
                    "digest": "..",
                    "same_as": null,
                    "range": {
                      "key": "fenland",
                      "name": "Fenland",
                      "digest": "..",
                      "orders_until": null,
                      "file": "the demo range"
                    },
                    "ordered_on": "2026-11-25",
                    "model": "Sedge",
                    "size_mm": [
                      1640.0,
                      520.0,
                      420.0
                    ],
                    "finish": "Clear",
                    "boards": [
                      {
                        "board": "birch-18",
                        "parts": [
                          "body",
                          "back"
                        ],
                        "nominal_mm": 18.0,
                        "measured": "points",
                        "thickness_mm": 17.7,
                        "coated_mm": 17.89,
                        "finish": "clear",
                        "slot_mm": 18.04,
                        "worst_mm": 0.15,
                        "likely_mm": 0.1,
                        "tight": 0.000023,
                        "outside": 0.218425,
                        "any_of_twelve_tight": 0.000029,
                        "dry_mm": 0.3,
                        "damp_mm": -0.01,
                        "stops": false,
                        "outside_most": 0.25
                      }
                    ],
                    "mass_g": 47323,
                    "price_minor": 118281,
                    "arrives_on": "2026-12-11",
                    "currency": "EUR",
                    "warnings": [
                      {
                        "rule": "wall-tether",
                        "severity": "warns",
                        "about": "height",
                        "parts": [],
                        "found": {
                          "value": 68.6,
                          "unit": "nm"
                        },
                        "allowed": {
                          "value": 0.0,
                          "unit": "nm"
                        },
                        "limit": "at-most",
                        "remedies": []
                      }
                    ],
                    "by_batch": []
                  }
                }
              ]
            }
        "#]],
    )
}

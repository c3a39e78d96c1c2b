//! What is asked about a range: samples, rules, fits, answers.

use expect_test::expect;

use crate::{Result, check, folder, other, put, seen};

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
              limit   hole.round-60.shape = round diameter_mm 60
                      hole.slot-90.shape = slotted height_mm 42, length_mm 90
                      hole.round-80.shape = round diameter_mm 80
                      plug.hdmi.width_mm = 21
                      plug.cee-7.width_mm = 40
                      plug.bs-1363.width_mm = 50
                      plug.nema-5-15.width_mm = 35
                      plug.hdmi.height_mm = 12
                      plug.cee-7.height_mm = 40
                      plug.bs-1363.height_mm = 50
                      plug.nema-5-15.height_mm = 25
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

/// The figures of the range at hand, by the names that they have in it.
#[test]
fn a_rule_is_explained_with_the_limits_of_the_range() -> Result<()> {
    let folder = folder("limits")?;
    put(&folder, "range.toml", other(&[("sag_span_over = 200", "sag_span_over = 250")]))?;
    check(
        &folder,
        &["explain", "top-sag", "--range", "range.toml"],
        "",
        &expect![[r#"
            exit 0
            top-sag
              what    Under the load that the range lays the top out for, its sag between two uprights over the years stays under that span divided by the range's figure.
              why     The top has to stay straight over doors and tabs.
              source  Wood Handbook, FPL-GTR-190 (2010), eq. 9-2 with its shear term and table 9-1 (simple ends, uniform load); creep by EN 1995-1-1:2004+A1, 2.2.3 and table 3.2; the limit is common practice
              limit   strength.sag_span_over = 250
                      strength.creep_factor = 0.8
                      strength.lasting_share = 0.8
                      model.sedge.top_load_kg_per_m2 = 120
                      model.teasel.top_load_kg_per_m2 = 120
                      model.bulrush.top_load_kg_per_m2 = 80
                      board.birch-18.planar_shear_modulus_n_per_mm2 = 170
                      board.birch-12.planar_shear_modulus_n_per_mm2 = 170
        "#]],
    )?;
    check(
        &folder,
        &["explain", "leaf-swing"],
        "",
        &expect![[r#"
        exit 0
        leaf-swing
          what    Two leaves hung side by side do not touch when both stand 95° open.
          why     They knock each other's film off.
          source  geometry: both lean over by width × sin of what is beyond a right angle
          limit   no key of the range: it is the same in all of them
    "#]],
    )?;
    check(
        &folder,
        &["explain", "shelf-sga"],
        "",
        &expect![[r#"
        exit 2
        --- errors
        error: no rule has the code "shelf-sga"
        hint: did you mean shelf-sag?
    "#]],
    )
}

#[test]
fn a_sample_has_a_most() -> Result<()> {
    let folder = folder("most")?;
    check(
        &folder,
        &["sample", "--count", "100001"],
        "",
        &expect![[r#"
        exit 2
        --- errors
        error: invalid value '100001' for '--count <COUNT>': 100001 is not in 0..=100000

        For more information, try '--help'.
    "#]],
    )?;
    assert!(seen(&folder, &["sample", "--any", "--count", "0"], "")?.starts_with("exit 0\n"));
    Ok(())
}

#[test]
fn only_what_is_there_is_kept() -> Result<()> {
    let folder = folder("pins")?;
    check(
        &folder,
        &["options", "--pin", "width", "--pin", "device-4"],
        "",
        &expect![[r#"
        exit 2
        --- errors
        error: --pin device-4: this unit has no such bay; it has 3
        hint: bays are counted from the left, from 1
    "#]],
    )
}

/// A table for people, with the same figures as the document.
#[test]
fn fits_are_shown() -> Result<()> {
    let folder = folder("fits")?;
    let points = "birch-18=17.6 17.9 17.4 17.8 17.7 17.5 17.9 17.7";
    check(
        &folder,
        &["fit", "--measured", points],
        "",
        &expect![[r#"
            exit 1
            Fenland: a slot is 0.15 mm wider than what goes in; 0.1 mm to 0.2 mm are wanted.

            birch-18, 18 mm birch plywood: 17.7 mm measured at eight points, deviation 0.18 mm
              finish      slot  likely ±  at worst ±  too tight  outside  a top that sticks      dry     damp
              clear   18.04 mm   0.58 mm     0.62 mm     48.6 %   85.0 %             87.8 %  0.31 mm  0.01 mm  not to be cut
              pale    18.03 mm   0.58 mm     0.62 mm     48.6 %   85.1 %             87.8 %  0.31 mm  0.01 mm  not to be cut
              chalk   18.17 mm   0.58 mm     0.64 mm     48.9 %   85.0 %             88.1 %  0.31 mm  0.01 mm  not to be cut
              soot    18.07 mm   0.58 mm     0.63 mm     48.8 %   85.0 %             88.0 %  0.31 mm  0.01 mm  not to be cut
              sallow  18.14 mm   0.58 mm     0.64 mm     48.8 %   85.0 %             88.0 %  0.31 mm  0.01 mm  not to be cut
              mere    18.14 mm   0.58 mm     0.64 mm     48.8 %   85.0 %             88.0 %  0.31 mm  0.01 mm  not to be cut
              brick   18.14 mm   0.58 mm     0.64 mm     48.8 %   85.0 %             88.0 %  0.31 mm  0.01 mm  not to be cut
              More than 1 % of the joints would not go in: take another batch or finish, or more clearance.

            birch-12, 12 mm birch plywood: 12 mm measured at eight points, deviation 0.02 mm
              finish      slot  likely ±  at worst ±    too tight  outside  a top that sticks      dry     damp
              clear   12.34 mm   0.08 mm     0.14 mm  under 0.1 %   15.3 %        under 0.1 %  0.25 mm  0.04 mm
              pale    12.33 mm   0.08 mm     0.14 mm  under 0.1 %   14.9 %        under 0.1 %  0.25 mm  0.04 mm
              chalk   12.47 mm   0.09 mm     0.16 mm  under 0.1 %   17.9 %        under 0.1 %  0.25 mm  0.04 mm
              soot    12.37 mm   0.08 mm     0.15 mm  under 0.1 %   16.3 %        under 0.1 %  0.25 mm  0.04 mm
              sallow  12.44 mm   0.09 mm     0.16 mm  under 0.1 %   17.0 %        under 0.1 %  0.25 mm  0.04 mm
              mere    12.44 mm   0.09 mm     0.16 mm  under 0.1 %   17.0 %        under 0.1 %  0.25 mm  0.04 mm
              brick   12.44 mm   0.09 mm     0.16 mm  under 0.1 %   17.0 %        under 0.1 %  0.25 mm  0.04 mm

            Too tight, outside: shares of joints at the worse end of 95 % of all batches. A top has twelve of them.
            Dry, damp: the clearance to be expected when all the wood has 6 % and 12 % of moisture; it is cut at 9 %.
        "#]],
    )?;
    let document: serde_json::Value = serde_json::from_str(
        seen(&folder, &["fit", "--json", "--measured", points], "")?.trim_start_matches("exit 1\n"),
    )?;
    assert_eq!(
        (&document["format"], &document["boards"][0]["finishes"][0]["stops"]),
        (&"slotwright-fit".into(), &true.into())
    );
    for (points, expected) in [
        (
            "birch-18=25 25 25 25 25 25 25 25",
            expect![[r#"
            exit 2
            --- errors
            error: birch-18: 25 mm was measured for a board of 18 mm; 17.06 to 18.74 mm is possible (EN 315)
            hint: is it the right board, and was it measured in millimetres?
        "#]],
        ),
        (
            "birch-18=12 12 12 12 12 12 12 12",
            expect![[r#"
            exit 2
            --- errors
            error: birch-18: 12 mm was measured for a board of 18 mm; 17.06 to 18.74 mm is possible (EN 315)
            hint: is it the right board, and was it measured in millimetres?
        "#]],
        ),
    ] {
        check(&folder, &["fit", "--measured", points], "", &expected)?;
    }
    Ok(())
}

/// A unit as the first model begins, with some of its answers exchanged.
fn choice(changes: &[(&str, &str)]) -> Result<String> {
    let folder = folder("choice")?;
    let derived = seen(&folder, &["derive", "--today", "2026-11-25"], "")?;
    let derived: serde_json::Value = serde_json::from_str(derived.trim_start_matches("exit 0\n"))?;
    let text = derived["choice"].to_string();
    Ok(changes.iter().fold(text, |text, (from, to)| {
        assert!(text.contains(from), "{from} is not in {text}");
        text.replacen(from, to, 1)
    }))
}

/// Every answer has its state, every state that is not open its sentence and what else has to change.
#[test]
fn answers_are_shown_with_their_reasons() -> Result<()> {
    let folder = folder("options")?;
    let pins = ["width", "height", "depth", "bays", "shares", "back"].map(|pin| ["--pin", pin]).concat();
    let shown = seen(&folder, &[&["options"], &pins[..]].concat(), "")?;
    let some = |of: &str| shown.lines().filter(|line| line.contains(of)).map(str::trim).collect::<Vec<_>>().join("\n");
    expect![[r#"
        exit 0
        Sedge of Fenland, 1 640 × 520 × 420 mm, Clear
        It can be made.

        width, kept
          *  900 to 2 400 mm  open

        height, kept
          *  360 to 640 mm  open

        depth, kept
          *  360 to 520 mm  open

        bow of the ends
          *  0 to 120 mm  open

        number of bays, kept
             Make it one bay     shut  The top over bay 1 would bend 36 mm over the years; 7.8 mm is the limit. You keep the width, so no other change makes up for it. Let the width go: take this, leave bay 1 open and make it 1 010 mm wide.
             Make it two bays    open
          *  Make it three bays  open
             Make it four bays   open
             Make it five bays   open
             Make it six bays    open"#]].assert_eq(&shown.lines().take(23).collect::<Vec<_>>().join("\n"));
    expect![[r#"
        Make it one bay     shut  The top over bay 1 would bend 36 mm over the years; 7.8 mm is the limit. You keep the width, so no other change makes up for it. Let the width go: take this, leave bay 1 open and make it 1 010 mm wide.
        Put the Record player in bay 1  shut          For the device in bay 1 there are 297 mm of depth; with plugs it needs 390 mm. You keep the depth, so no other change makes up for it. Let the depth go: take this, leave bay 1 open and make it 520 mm deep.
        Put the Receiver in bay 1       shut          For the device in bay 1 there are 297 mm of depth; with plugs it needs 370 mm. You keep the depth and the shares of the width, so no other change makes up for it. Let the shares of the width and the depth go: take this, give bay 1 a share of 2 and make it 500 mm deep.
        Put the Games console in bay 1  shut          For the device in bay 1 there are 297 mm of depth; with plugs it needs 300 mm. You keep the depth and the back, so no other change makes up for it. Let the back go: take this and make the back of 12 mm birch plywood.
        Put the Record player in bay 2  shut          For the device in bay 2 there are 297 mm of depth; with plugs it needs 390 mm. You keep the depth, so no other change makes up for it. Let the depth go: take this, leave bay 2 open and make it 520 mm deep.
        Put the Receiver in bay 2       shut          For the device in bay 2 there are 297 mm of depth; with plugs it needs 370 mm. You keep the depth and the shares of the width, so no other change makes up for it. Let the shares of the width and the depth go: take this, leave bay 2 open, give bay 2 a share of 2 and make it 500 mm deep.
        Put the Games console in bay 2  shut          For the device in bay 2 there are 297 mm of depth; with plugs it needs 300 mm. You keep the depth and the back, so no other change makes up for it. Let the back go: take this and make the back of 12 mm birch plywood.
        Put the Record player in bay 3  shut  For the device in bay 3 there are 297 mm of depth; with plugs it needs 390 mm. You keep the depth, so no other change makes up for it. Let the depth go: take this and make it 520 mm deep.
        Put the Receiver in bay 3       shut  For the device in bay 3 there are 297 mm of depth; with plugs it needs 370 mm. You keep the depth and the shares of the width, so no other change makes up for it. Let the shares of the width and the depth go: take this, give bay 3 a share of 2 and make it 500 mm deep.
        Put the Games console in bay 3  shut  For the device in bay 3 there are 297 mm of depth; with plugs it needs 300 mm. You keep the depth and the back, so no other change makes up for it. Let the back go: take this and make the back of 12 mm birch plywood."#]].assert_eq(&some("  shut  "));
    expect![[r#"
        Put the Disc player in bay 1    with changes  For the device in bay 1 there are 413 mm of width; it needs 432 mm. Leave bay 1 open as well.
        Put three shelves in bay 2          with changes  A shelf would be 3.1 mm from the hole in bay 2; the least is 20 mm. Cut a Slot 90 by 42 in bay 2, in the middle as well.
        Put the Router in bay 2         with changes  For the device in bay 2 there are 224 mm of height; with air it needs 230 mm. Leave bay 2 open as well.
        Put three shelves in bay 3          with changes  A shelf would be 3.1 mm from the hole in bay 3; the least is 20 mm. Cut a Slot 90 by 42 in bay 3, in the middle as well."#]].assert_eq(&some("  with changes  "));
    Ok(())
}

/// Sizes say what else has to change, as all other answers do; so does a unit that cannot be made.
#[test]
fn sizes_are_shown_with_what_else_they_need() -> Result<()> {
    let folder = folder("sizes")?;
    let receiver = choice(&[("\"fill\":\"open\"", "\"device\":\"receiver\",\"fill\":\"open\"")])?;
    put(&folder, "choice.json", receiver)?;
    let options = |more: &[&str]| seen(&folder, &[&["options", "--choice", "choice.json"][..], more].concat(), "");
    let shown = options(&["--pin", "shares"])?;
    expect![[r#"
        exit 1
        Sedge of Fenland, 1 640 × 520 × 420 mm, Clear
        It cannot be made as it is.
          For the device in bay 3 there are 507 mm of width; it needs 532 mm.
          For the device in bay 3 there are 297 mm of depth; with plugs it needs 370 mm.
        It can be with these changes: put no device in bay 3.

        width
          *  900 to 1 710 mm    with changes  For the device in bay 3 there are 260 mm of width; it needs 532 mm. Put no device in bay 3 as well.
             1 720 to 2 400 mm  with changes  For the device in bay 3 there are 297 mm of depth; with plugs it needs 370 mm. Make it 500 mm deep as well.

        height
          *  360 to 640 mm  with changes  For the device in bay 3 there are 507 mm of width; it needs 532 mm. Put no device in bay 3 as well.

        depth
          *  360 to 520 mm  with changes  For the device in bay 3 there are 507 mm of width; it needs 532 mm. Put no device in bay 3 as well.

        bow of the ends
          *  0 to 120 mm  with changes  For the device in bay 3 there are 507 mm of width; it needs 532 mm. Put no device in bay 3 as well.
    "#]]
        .assert_eq(&shown.lines().take_while(|line| !line.starts_with("number")).collect::<Vec<_>>().join("\n"));
    let document = options(&["--json", "--pin", "shares"])?;
    let document: serde_json::Value = serde_json::from_str(document.trim_start_matches("exit 1\n"))?;
    for run in ["width", "height", "depth"].iter().flat_map(|size| document[size].as_array().into_iter().flatten()) {
        let shifts = run["state"]["reach"] == "shifts";
        assert_eq!(shifts, run["changes"].as_array().is_some_and(|changes| !changes.is_empty()), "{run}");
    }
    Ok(())
}

//! Orders become a cut pack: whole or not at all, the same bytes each time.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use serde_json::Value;
use slotwright_core::input::seal::Digest;

use crate::{DAY, Result, folder, put, seen};

/// Writes orders of seeded units, and what somebody would type after `pack` for them.
fn orders(folder: &std::path::PathBuf, count: usize) -> Result<Vec<String>> {
    let sample = seen(folder, &["sample", "--count", &count.to_string(), "--seed", "5"], "")?;
    let mut names = Vec::new();
    for (number, choice) in (1..).zip(sample.lines().filter(|line| line.starts_with('{'))) {
        let name = format!("o{number}.json");
        let written = seen(folder, &["order", "--today", DAY, "--choice", "-", "--out", &name], choice)?;
        assert_eq!(written.trim(), "exit 0");
        names.push(name);
    }
    assert_eq!(names.len(), count);
    Ok(names)
}

fn pack(folder: &std::path::PathBuf, files: &[String], more: &[&str]) -> Result<String> {
    let files = files.iter().map(String::as_str);
    let arguments: Vec<&str> = ["pack"].into_iter().chain(files).chain(more.iter().copied()).collect();
    seen(folder, &arguments, "")
}

/// The beginning of an order's digest.
fn short_digest(order: &Path) -> Result<String> {
    let order: Value = serde_json::from_slice(&fs::read(order)?)?;
    Ok(order["digest"].as_str().and_then(|digest| digest.get(..8)).ok_or("no digest")?.into())
}

/// All files of a folder by their paths within it.
fn all(folder: &Path) -> Result<BTreeMap<String, Vec<u8>>> {
    let mut found = BTreeMap::new();
    let mut folders = vec![folder.to_owned()];
    while let Some(next) = folders.pop() {
        for entry in fs::read_dir(next)? {
            let path = entry?.path();
            if path.is_dir() {
                folders.push(path);
            } else {
                let name = path.strip_prefix(folder)?.components().map(|part| part.as_os_str().to_string_lossy());
                found.insert(name.collect::<Vec<_>>().join("/"), fs::read(&path)?);
            }
        }
    }
    Ok(found)
}

fn manifest(files: &BTreeMap<String, Vec<u8>>) -> Result<Value> {
    Ok(serde_json::from_slice(files.get("manifest.json").ok_or("no manifest")?)?)
}

#[test]
fn the_same_orders_give_the_same_bytes_and_the_manifest_names_them() -> Result<()> {
    let folder = folder("pack-same")?;
    let files = orders(&folder, 2)?;
    let told = pack(&folder, &files, &["--out", "one", "--effort", "500"])?;
    assert!(told.starts_with("exit 0\n") && told.contains(" 2 orders with "), "{told}");
    pack(&folder, &files, &["--out", "two", "--effort", "500"])?;
    let (one, two) = (all(&folder.join("one"))?, all(&folder.join("two"))?);
    assert_eq!(one, two);
    let manifest = manifest(&one)?;
    let named = manifest["files"].as_array().ok_or("no files")?;
    assert_eq!(named.len() + 1, one.len());
    for file in named {
        let bytes = one.get(file["path"].as_str().ok_or("no path")?).ok_or("a file that is not there")?;
        assert_eq!(file["sha256"], Digest::of(bytes).to_string());
        assert_eq!(file["bytes"], bytes.len());
    }
    for wanted in ["parts.csv", "sheets.csv", "offcuts.csv", "labels.pdf", "cut-list.pdf", "finishing.pdf", "batch.pdf"]
    {
        assert!(one.contains_key(wanted), "{wanted}");
    }
    for number in ["01", "02"] {
        for paper in ["job-card", "packing-list", "delivery", "assembly"] {
            assert!(one.contains_key(&format!("orders/{number}-{paper}.pdf")), "{number} {paper}");
        }
    }
    // Nothing is left beside it.
    let beside: Vec<_> = fs::read_dir(&folder)?.collect::<std::io::Result<_>>()?;
    assert_eq!(beside.len(), files.len() + 2);
    Ok(())
}

#[test]
fn what_does_not_hold_is_set_aside_and_the_others_go_on() -> Result<()> {
    let folder = folder("pack-aside")?;
    let mut files = orders(&folder, 2)?;
    let text = fs::read_to_string(folder.join("o1.json"))?;
    put(&folder, "cut-short.json", text.get(..200).unwrap_or_default())?;
    put(&folder, "dearer.json", text.replacen("\"price_minor\":", "\"price_minor\":1", 1))?;
    put(&folder, "again.json", &text)?;
    files.extend(["cut-short.json", "dearer.json", "again.json"].map(String::from));
    let told = pack(&folder, &files, &["--out", "out", "--effort", "0"])?;
    assert!(told.starts_with("exit 1\n") && told.contains(" 2 orders with "), "{told}");
    for aside in ["cut-short.json: ", "dearer.json: the file was changed", "again.json: the same order as o1.json"] {
        assert!(told.contains(&format!("set aside  {aside}")), "{aside} in {told}");
    }
    let manifest = manifest(&all(&folder.join("out"))?)?;
    let reasons: Vec<&str> =
        manifest["aside"].as_array().ok_or("no list")?.iter().filter_map(|one| one["reason"].as_str()).collect();
    assert_eq!(reasons, ["unreadable", "unreadable", "again"]);
    assert_eq!(manifest["orders"].as_array().map(Vec::len), Some(2));
    // Nothing to cut is no pack, and says why.
    let told = seen(&folder, &["pack", "cut-short.json", "--out", "none"], "")?;
    assert!(told.starts_with("exit 2\nset aside  cut-short.json: ") && told.contains("no order is left"), "{told}");
    assert!(!folder.join("none").exists());
    Ok(())
}

#[test]
fn no_folder_is_lost() -> Result<()> {
    let folder = folder("pack-folders")?;
    let files = orders(&folder, 1)?;
    fs::create_dir(folder.join("papers"))?;
    put(&folder, "papers/mine.txt", "mine")?;
    for force in [&["--out", "papers"][..], &["--out", "papers", "--force"]] {
        let told = pack(&folder, &files, force)?;
        assert!(told.starts_with("exit 2\n") && told.contains("that is no pack"), "{told}");
    }
    assert_eq!(fs::read_to_string(folder.join("papers/mine.txt"))?, "mine");
    pack(&folder, &files, &["--out", "out", "--effort", "0"])?;
    put(&folder, "out/note.txt", "of the pack before")?;
    let told = pack(&folder, &files, &["--out", "out", "--effort", "0"])?;
    assert!(told.starts_with("exit 2\n"), "{told}");
    // A note that somebody has put there is not lost either.
    let told = pack(&folder, &files, &["--out", "out", "--effort", "0", "--force"])?;
    assert!(told.starts_with("exit 2\n") && folder.join("out/note.txt").exists(), "{told}");
    fs::remove_file(folder.join("out/note.txt"))?;
    let told = pack(&folder, &files, &["--out", "out", "--effort", "0", "--force"])?;
    assert!(told.starts_with("exit 0\n"), "{told}");
    Ok(())
}

#[test]
fn one_part_is_cut_again() -> Result<()> {
    let folder = folder("pack-part")?;
    let files = orders(&folder, 1)?;
    let told = pack(&folder, &files, &["--part", "1/top", "--out", "top"])?;
    assert!(told.contains("1 order with 1 part\n"), "{told}");
    let made = all(&folder.join("top"))?;
    assert_eq!(made.keys().filter(|name| name.starts_with("parts/")).count(), 1);
    assert!(!made.keys().any(|name| name.starts_with("orders/")), "{:?}", made.keys());
    // The code of its label names it as well, and orders that are set aside do not shift the others.
    let digest = short_digest(&folder.join("o1.json"))?;
    put(&folder, "broken.json", "{")?;
    let shifted = [vec!["broken.json".to_owned()], files.clone()].concat();
    for (part, out) in [(format!("{digest}/top"), "coded"), ("2/top".into(), "second")] {
        let told = pack(&folder, &shifted, &["--part", &part, "--out", out])?;
        assert!(told.contains("1 order with 1 part\n"), "{told}");
        assert!(all(&folder.join(out))?.contains_key("parts/2-12-top.dxf"), "{part}");
    }
    assert!(pack(&folder, &shifted, &["--part", "1/top", "--out", "none"])?.contains("no order has the part 1/top"));
    for (part, code) in [("1/lid", "exit 2"), ("2/top", "exit 2"), ("top", "exit 2"), ("0/top", "exit 2")] {
        let told = pack(&folder, &files, &["--part", part, "--out", "none"])?;
        assert!(told.starts_with(code), "{part}: {told}");
    }
    Ok(())
}

#[test]
fn offcuts_go_in_and_come_out() -> Result<()> {
    let folder = folder("pack-offcuts")?;
    let files = orders(&folder, 1)?;
    pack(&folder, &files, &["--out", "before", "--effort", "0"])?;
    let list = fs::read_to_string(folder.join("before/offcuts.csv"))?;
    let names: Vec<&str> = list.lines().skip(1).filter_map(|line| line.split(',').next()).collect();
    assert!(!names.is_empty(), "{list}");
    // A part that goes on an offcut is cut from it: it costs less than a sheet.
    let told = pack(&folder, &files, &["--part", "1/stile-1", "--offcuts", "before/offcuts.csv", "--out", "after"])?;
    assert!(told.starts_with("exit 0"), "{told}");
    let sheets = fs::read_to_string(folder.join("after/sheets.csv"))?;
    let after = fs::read_to_string(folder.join("after/offcuts.csv"))?;
    let used: Vec<&&str> = names.iter().filter(|name| sheets.contains(**name)).collect();
    assert_eq!(used.len(), 1, "{sheets}");
    assert!(used.iter().all(|name| !after.contains(&format!("{name},"))), "{after}");
    for (text, line) in [
        ("name,board,finish,along_mm,across_mm\r\na,birch-18,clear,ten,300\r\n", "line 2 is no offcut: along_mm"),
        ("name,board,finish,along_mm,across_mm\r\na,Birch,clear,900,300\r\n", "line 2 is no offcut: board"),
        ("name,board,finish,along_mm,across_mm\r\na,b,c,900,300\r\na,b,c,900,300\r\n", "line 3 is no offcut: name"),
        ("name,board\r\na,b\r\n", "line 1 is no offcut: finish"),
    ] {
        put(&folder, "bad.csv", text)?;
        let told = pack(&folder, &files, &["--offcuts", "bad.csv", "--out", "none"])?;
        assert!(told.starts_with("exit 2") && told.contains(line), "{told}");
    }
    Ok(())
}

#[test]
fn sheets_are_counted_and_batches_measured() -> Result<()> {
    let folder = folder("pack-stock")?;
    let files = orders(&folder, 1)?;
    let none = ["--sheets", "birch-18/small=0", "--sheets", "birch-18/large=0", "--out", "none"];
    let told = pack(&folder, &files, &none)?;
    assert!(told.starts_with("exit 2") && told.contains("birch-18"), "{told}");
    let told = pack(&folder, &files, &["--sheets", "birch-18/smal=3", "--out", "none"])?;
    assert!(told.starts_with("exit 2") && told.contains("birch-18/small"), "{told}");
    let told = pack(&folder, &files, &["--cutter", "26", "--out", "none"])?;
    assert!(told.starts_with("exit 2") && told.contains("1 to 25 mm"), "{told}");
    // The thicker the cutter, the deeper its reliefs cut into the roots of tabs: from 9 mm on a knock
    // would break those of stiles.
    for (cutter, code) in [("8", "exit 0"), ("6,35", "exit 0"), ("9", "exit 2"), ("25", "exit 2")] {
        let told = pack(&folder, &files, &["--cutter", cutter, "--out", &format!("cut-{cutter}"), "--effort", "0"])?;
        assert!(told.starts_with(code), "{cutter}: {told}");
        assert!(code == "exit 0" || told.contains("thinner cutter"), "{told}");
    }
    let points = "birch-18=17.31 17.38 17.42 17.36 17.40 17.34 17.39 17.40";
    let told = pack(&folder, &files, &["--measured", points, "--out", "thin", "--effort", "0"])?;
    assert!(told.starts_with("exit 0"), "{told}");
    let manifest = manifest(&all(&folder.join("thin"))?)?;
    assert_eq!((&manifest["paper"], &manifest["labels"]), (&Value::from("a4"), &Value::from("a4-3x8")));
    let lot = &manifest["lots"][0];
    assert_eq!((&lot["board_mm"], lot["measured_mm"].as_array().map(Vec::len)), (&Value::from(17.4), Some(8)));
    let different = manifest["orders"][0]["different"].as_array().ok_or("no list")?;
    assert!(different.iter().any(|pointer| pointer == "/promised/parts_digest"), "{different:?}");
    Ok(())
}

#[test]
fn late_is_told_from_a_stated_day_with_what_is_booked() -> Result<()> {
    let folder = folder("pack-late")?;
    let files = orders(&folder, 1)?;
    let told = pack(&folder, &files, &["--out", "plain", "--effort", "0"])?;
    assert!(told.starts_with("exit 0") && !told.contains("late"), "{told}");
    let told = pack(&folder, &files, &["--out", "later", "--effort", "0", "--today", "2027-03-01"])?;
    assert!(told.contains("late     1, if all are made in turn from the day after Mon 1 March; batch.pdf"), "{told}");
    put(&folder, "booked.json", r#"{"minutes": {"cut": 60000}}"#)?;
    let told = pack(&folder, &files, &["--out", "booked", "--effort", "0", "--backlog", "booked.json"])?;
    assert!(told.contains("late "), "{told}");
    let manifest = manifest(&all(&folder.join("booked"))?)?;
    assert_eq!((&manifest["backlog"]["minutes"]["cut"], manifest.get("today")), (&Value::from(60000), None));
    put(&folder, "strange.json", r#"{"minutes": {"cud": 600}}"#)?;
    let stages = "did you mean cut? its stages are coat-sheets, cut, edges, pack";
    for (booked, at) in
        [(["--backlog", "strange.json"], "strange.json: /minutes/cud: "), (["--booked", "cud=1 h"], "--booked cud: ")]
    {
        let told = pack(&folder, &files, &[&["--out", "none"][..], &booked].concat())?;
        assert!(told.starts_with("exit 2") && told.contains(&format!("{at}the range has no stage \"cud\"")), "{told}");
        assert!(told.contains(stages), "{told}");
    }
    let told = pack(&folder, &files, &["--out", "none", "--booked", "paint=1 h"])?;
    assert!(told.contains("hint: its stages are coat-sheets, cut, edges, pack"), "{told}");
    Ok(())
}

#[test]
fn booked_time_is_read_as_people_write_it() -> Result<()> {
    let folder = folder("pack-booked")?;
    let files = orders(&folder, 1)?;
    put(&folder, "booked.json", r#"{"minutes": {"pack": 30}}"#)?;
    let booked =
        ["--backlog", "booked.json", "--booked", "cut=1 200", "--booked", "edges=10 h", "--booked", "pack=1.5 h"];
    let told = pack(&folder, &files, &[&["--out", "out", "--effort", "0"][..], &booked].concat())?;
    assert!(
        told.contains(
            "cut 1\u{202f}200\u{a0}min (20\u{a0}h\u{a0}00), edges 600\u{a0}min (10\u{a0}h\u{a0}00), pack 120\u{a0}min"
        ),
        "{told}"
    );
    let manifest = manifest(&all(&folder.join("out"))?)?;
    assert_eq!(manifest["backlog"]["minutes"], serde_json::json!({ "cut": 1200, "edges": 600, "pack": 120 }));
    for (booked, wrong) in [
        ("cut=much", "no time: write minutes or hours, as 600, 1 200 or 10 h 30 min"),
        ("cut=200 000 h", "10\u{202f}000\u{202f}000 minutes are the most"),
        ("600", "write the key of a stage and a time"),
    ] {
        let told = pack(&folder, &files, &["--out", "none", "--booked", booked])?;
        assert!(told.starts_with("exit 2") && told.contains(wrong), "{booked}: {told}");
    }
    Ok(())
}

#[test]
fn a_day_before_the_orders_does_not_count_and_that_is_told() -> Result<()> {
    let folder = folder("pack-before")?;
    let files = orders(&folder, 1)?;
    let told = pack(&folder, &files, &["--out", "early", "--effort", "0", "--today", "2026-01-31"])?;
    let said = "begins   after Wed 25 November, the day of the last order, and not after Sat 31 January as was set";
    assert!(told.starts_with("exit 0") && told.contains(said), "{told}");
    let told = pack(&folder, &files, &["--out", "same", "--effort", "0", "--today", DAY])?;
    assert!(!told.contains("begins"), "{told}");
    Ok(())
}

/// Which of two papers belong together is seen from what stands on them.
#[test]
fn another_plan_has_another_name_and_the_same_cut_the_same_beginning() -> Result<()> {
    let folder = folder("pack-names")?;
    let files = orders(&folder, 2)?;
    let mut known: Vec<(String, String)> = Vec::new();
    let variants: [&[&str]; 7] = [
        &[],
        &["--paper", "letter"],
        &["--today", "2027-03-01"],
        &["--booked", "cut=10 h"],
        &["--cutter", "5"],
        &["--allowance", "3"],
        &["--sheets", "birch-18/large=40"],
    ];
    for (number, more) in (1..).zip(variants) {
        let out = format!("p{number}");
        let told = pack(&folder, &files, &[&["--out", &out, "--effort", "0"], more].concat())?;
        let files = all(&folder.join(&out))?;
        let manifest = manifest(&files)?;
        let text = |member: &str| manifest[member].as_str().unwrap_or_default().to_owned();
        let (name, plan) = (text("name"), text("plan"));
        assert!(
            name.len() == 8 && plan.len() == 4 && told.contains(&format!("name     {name}-{plan}, by version ")),
            "{told}"
        );
        let drawing = files.iter().find(|(path, _)| path.starts_with("parts/")).ok_or("no drawing")?;
        assert!(String::from_utf8_lossy(drawing.1).contains(&format!("{name}-{plan}/")), "{more:?}");
        known.push((name, plan));
    }
    // Paper, day and booked work change nothing of what is cut.
    let (first, others) = known.split_first().ok_or("none")?;
    let same_cut: Vec<bool> = others.iter().map(|(name, _)| *name == first.0).collect();
    assert_eq!(same_cut, [true, true, true, false, false, false], "{known:?}");
    let mut all: Vec<String> = known.iter().map(|(name, plan)| format!("{name}-{plan}")).collect();
    all.sort();
    all.dedup();
    assert_eq!(all.len(), variants.len(), "{known:?}");
    Ok(())
}

#[test]
fn a_part_is_cut_again_as_the_pack_before() -> Result<()> {
    let folder = folder("pack-again")?;
    let files = orders(&folder, 3)?;
    let points = "birch-18=17.41 17.48 17.52 17.46 17.50 17.44 17.49 17.50";
    let set = ["--measured", points, "--cutter", "5", "--allowance", "3", "--paper", "letter", "--labels", "62x29"];
    pack(&folder, &files, &[&["--out", "before", "--effort", "0"][..], &set].concat())?;
    let before = all(&folder.join("before"))?;
    // One order alone has the number that it had, and its part every cut that it had.
    let own = [files.get(1).cloned().ok_or("no order")?];
    let told = pack(&folder, &own, &["--part", "2/top", "--from", "before", "--out", "again"])?;
    let name = manifest(&before)?["name"].as_str().unwrap_or_default().to_owned();
    assert!(
        told.contains(&format!("as before  pack {name}, with all that was set for it\n")) && !told.contains("mind"),
        "{told}"
    );
    let again = all(&folder.join("again"))?;
    let manifest_of = manifest(&again)?;
    let lot = |manifest: &Value, member: &str| manifest["lots"][0][member].clone();
    for member in ["measured_mm", "cutter_mm", "allowance_mm"] {
        assert_eq!(lot(&manifest_of, member), lot(&manifest(&before)?, member), "{member}");
    }
    assert_eq!((&manifest_of["paper"], &manifest_of["labels"]), (&"letter".into(), &"62x29".into()));
    let (path, drawing) = again.iter().find(|(path, _)| path.starts_with("parts/2-")).ok_or("no drawing")?;
    let without_names = |bytes: &[u8]| {
        let text = String::from_utf8_lossy(bytes).into_owned();
        text.lines()
            .filter(|line| !line.contains(&format!("/{}", path[6..].split("-top").next().unwrap_or(""))))
            .map(String::from)
            .collect::<Vec<_>>()
    };
    assert_eq!(without_names(drawing), without_names(before.get(path).ok_or("not there before")?));
    // What is given counts, and that it is another is told.
    let other = ["--part", "2/top", "--from", "before", "--cutter", "6", "--out", "other"];
    let told = pack(&folder, &own, &other)?;
    assert!(told.contains("but otherwise: cutter 6\u{a0}mm instead of 5\u{a0}mm\n"), "{told}");
    assert!(told.contains("the parts of order 2 come out otherwise than they were cut"), "{told}");
    // An order that was not in it is behind those that were.
    put(&folder, "one.json", &fs::read_to_string(folder.join("o1.json"))?)?;
    pack(&folder, &own, &["--out", "small", "--effort", "0"])?;
    let told = pack(&folder, &["one.json".into()], &["--part", "2/top", "--from", "small", "--out", "none"])?;
    assert!(told.contains("order 2 was not in that pack"), "{told}");
    Ok(())
}

#[test]
fn a_bad_manifest_is_told() -> Result<()> {
    let folder = folder("pack-manifest")?;
    let files = orders(&folder, 1)?;
    fs::create_dir(folder.join("empty"))?;
    fs::create_dir(folder.join("other"))?;
    put(&folder, "other/manifest.json", r#"{"format": "slotwright-order"}"#)?;
    fs::create_dir(folder.join("torn"))?;
    put(&folder, "torn/manifest.json", r#"{"format": "slotwright-pack", "version": 1, "#)?;
    for (from, wrong) in [
        ("empty", "empty/manifest.json: there is nothing of this name"),
        ("other", "other/manifest.json: no manifest of a pack: /format: "),
        ("torn", "torn/manifest.json: no manifest of a pack: "),
    ] {
        let told = pack(&folder, &files, &["--part", "1/top", "--from", from, "--out", "none"])?;
        assert!(told.starts_with("exit 2") && told.contains(wrong), "{from}: {told}");
    }
    let told = pack(&folder, &files, &["--from", "empty", "--out", "none"])?;
    assert!(told.starts_with("exit 2") && told.contains("--part"), "{told}");
    Ok(())
}

use super::*;
use crate::pack::Settings;
use crate::pack::testing::{demo, holding, with_pack};

/// A polyline of a drawing: its layer, whether it is closed, its corners.
type Line = (String, bool, Vec<(f64, f64)>);

/// The polylines of a drawing.
fn polylines(dxf: &str) -> Vec<Line> {
    let lines: Vec<&str> = dxf.split("\r\n").collect();
    let mut found: Vec<Line> = Vec::new();
    let mut is_one = false;
    for group in lines.chunks_exact(2) {
        match (group[0], group[1]) {
            ("0", kind) => {
                is_one = kind == "LWPOLYLINE";
                if is_one {
                    found.push(Line::default());
                }
            }
            (code, value) if is_one => {
                let (layer, closed, corners) = found.last_mut().unwrap();
                match code {
                    "8" => *layer = value.into(),
                    "70" => *closed = value == "1",
                    "10" => corners.push((value.parse().unwrap(), 0.0)),
                    "20" => corners.last_mut().unwrap().1 = value.parse().unwrap(),
                    _ => {}
                }
            }
            _ => {}
        }
    }
    found
}

/// How many lines of each operation there are.
fn count(lines: &[Line], operation: &str) -> usize {
    lines.iter().filter(|(layer, ..)| layer.starts_with(operation)).count()
}

#[test]
fn a_part_alone_is_drawn_from_its_corner_with_all_its_holes() {
    with_pack(&demo(), &Settings::default(), |pack| {
        for (lot, sheet, _) in pack.sheets() {
            for Placed { part, .. } in &sheet.placed {
                assert!(sheet.has(part));
                let lines = polylines(&part_dxf(lot, sheet, part, "0-0"));
                let closed: Vec<&Line> = lines.iter().filter(|(_, closed, _)| *closed).collect();
                assert_eq!(count(&lines, "INSIDE-"), part.panel.holes().count(), "{}", part.panel.id);
                assert_eq!(count(&lines, "OUTSIDE-"), 1);
                assert_eq!(closed.len(), part.panel.holes().count() + 1);
                // Its grain runs along the first axis, as its blank is long.
                let (along, across) = part.along_and_across();
                let (_, _, corners) = closed.iter().find(|(layer, ..)| layer.starts_with("OUTSIDE-")).unwrap();
                let most = corners.iter().fold((0.0, 0.0), |most: (f64, f64), at| (most.0.max(at.0), most.1.max(at.1)));
                let least = corners.iter().fold(most, |least: (f64, f64), at| (least.0.min(at.0), least.1.min(at.1)));
                let near = |found: f64, wanted: Length| (found - wanted.in_mm()).abs() < 1e-3;
                assert!(near(most.0, along) && near(most.1, across), "{most:?}");
                assert!(near(least.0, Length::ZERO) && near(least.1, Length::ZERO), "{least:?}");
            }
        }
    });
}

#[test]
fn layers_say_operation_and_depth() {
    // Board 17.7 mm, two coats of 32 µm on both faces, 0.3 mm below.
    for (range, outside, bridged) in [
        (demo(), "OUTSIDE-14.83", true),
        (holding("\"vacuum\""), "OUTSIDE-18.13", false),
        (holding("{ skin = { thickness_mm = 0.4 } }"), "OUTSIDE-17.43", false),
    ] {
        with_pack(&range, &Settings::default(), |pack| {
            let (lot, sheet, program) = pack.sheets().find(|(lot, ..)| lot.key() == "birch-18-clear").unwrap();
            let lines = polylines(&sheet_dxf(lot, sheet, program, "0-0"));
            assert_eq!(count(&lines, outside), sheet.placed.len(), "{outside}");
            assert!(count(&lines, "INSIDE-18.13") > 0);
            let bridges: usize = program.cuts.iter().map(|cut| cut.bridges.len()).sum();
            let between: usize = program.cuts.iter().map(|cut| cut.between.len()).sum();
            assert_eq!((count(&lines, "BRIDGE"), count(&lines, "BETWEEN-18.13")), (bridges, between));
            assert!(between >= bridges);
            assert_eq!(bridges > 0, bridged);
            assert_eq!((count(&lines, "SHEET"), count(&lines, "OFFCUT")), (1, sheet.kept.len()));
        });
    }
}

#[test]
fn cuts_stand_in_their_order() {
    with_pack(&demo(), &Settings::default(), |pack| {
        for (lot, sheet, program) in pack.sheets() {
            let lines = polylines(&sheet_dxf(lot, sheet, program, "0-0"));
            let cuts = lines.iter().filter(|(layer, ..)| layer.starts_with("INSIDE") || layer.starts_with("OUTSIDE"));
            let begins: Vec<(f64, f64)> = cuts.map(|(_, _, corners)| corners[0]).collect();
            let wanted = program.cuts.iter().map(|cut| cut.outline.corners()[0].at);
            for ((u, v), at) in begins.iter().zip(wanted) {
                assert!((u - at.u.in_mm()).abs() < 1e-4 && (v - at.v.in_mm()).abs() < 1e-4);
            }
            assert_eq!(begins.len(), program.cuts.len());
        }
    });
}

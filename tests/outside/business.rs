//! What units weigh, cost and take, and how they fit: figures of the core for a twin that reads the range file itself.

use serde_json::{Value, json};
use slotwright_core::business::carriage::{Outer, carriage};
use slotwright_core::business::job::Job;
use slotwright_core::business::promise::Backlog;
use slotwright_core::cabinet::layout::Picked;
use slotwright_core::cabinet::panel::{Ease, Feature, Panel, PanelId, Stock};
use slotwright_core::choice::Choice;
use slotwright_core::geometry::outline::Point;
use slotwright_core::order::derive::derive;
use slotwright_core::range::{Board, Range};
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_core::statics::fit::Clearance;
use slotwright_core::statics::fit::moisture::over_joints;
use slotwright_core::units::quantity::Length;
use slotwright_core::words;
use slotwright_core::words::file::Message;

type Fault = Box<dyn std::error::Error>;

/// Seeded orders on a few days with some work booked, and how the boards of the range fit.
pub(crate) fn all(range: &Range) -> Result<Value, Fault> {
    let units = (0..).zip(choices(range, 1616, Wanted::Valid).take(60));
    let orders = units.map(|(number, choice)| order(range, &choice, number)).collect::<Result<Vec<_>, _>>()?;
    Ok(json!({ "orders": orders, "batches": batches(range)? }))
}

fn order(range: &Range, choice: &Choice, number: u32) -> Result<Value, Fault> {
    let today = ["2026-11-25", "2026-12-11", "2026-12-23", "2027-03-20"][number as usize % 4];
    // More in one stage than in the others, by turns.
    let minutes = (0..).zip(&range.stages).map(|(at, stage)| (stage.key.clone(), (number + at) * 977 % 2000));
    let backlog = Backlog { minutes: minutes.collect() };
    let derived = derive(range, choice, today.parse().map_err(|wrong| words::no_day(&wrong))?, &backlog);
    let built = derived.built.as_ref().ok_or("a valid choice has no parts")?;
    let promise = built.promise.as_ref().ok_or("a valid choice has no day")?;
    let picked = Picked::of(range, choice).ok_or("a valid choice names what there is")?;
    let layout = &built.layout;
    let job = Job::of(&built.cut, picked);
    let bill = &job.bill;
    let carriage = carriage(range, bill).ok_or("a range has a carrier")?;
    let parts = bill.flat.iter().map(|part| {
        json!({
            "id": part.id.to_string(), "kg": part.mass.in_kg(), "m2": part.face.in_m2(), "long": part.long.in_mm(),
            "wide": part.wide.in_mm(), "thick": part.thick.in_mm(),
        })
    });
    let packages = carriage.packages.iter().map(|package| {
        let parts: Vec<String> = package.parts.iter().map(|part| part.id.to_string()).collect();
        let places = package.parts.iter().map(|part| json!([part.layer, part.along.in_mm(), part.across.in_mm()]));
        let Outer { mass, long, wide, high } = package.outer;
        let sides = [long, wide, high].map(Length::in_mm);
        json!({ "parts": parts, "places": places.collect::<Vec<_>>(), "sides": sides, "kg": mass.in_kg() })
    });
    let materials = job.materials.iter().map(|material| {
        json!({ "board": material.board, "sheets": material.sheets, "m2": material.counted.in_m2(), "cost": material.cost })
    });
    let middles = built.cut.case.panels.iter().filter(|panel| matches!(panel.id, PanelId::Upright(_)));
    let middles = middles.map(|panel| (panel.case_from_panel.origin.x + panel.thickness / 2.0).in_mm());
    let staves = built.cut.case.panels.iter().filter(|panel| matches!(panel.id, PanelId::Stave { .. }));
    // The middle of a stave in plan, and the way across it.
    let staves = staves.map(|panel| {
        let at = |deep| panel.case_from_panel.spot(Point::new(panel.width / 2.0, Length::ZERO), deep);
        let (middle, face) = (at(panel.thickness / 2.0), at(Length::ZERO));
        let half = panel.thickness / 2.0;
        [middle.x.in_mm(), middle.y.in_mm(), (middle.x - face.x) / half, (middle.y - face.y) / half]
    });
    // What a hand does, from the parts themselves: outer edges, the corners of those that are chamfered, and holes, each by its sides.
    let panels = &built.cut.case.panels;
    let edges: Length = panels.iter().map(Panel::outer_length).sum();
    let chamfered = panels.iter().flat_map(|panel| panel.eased().map(move |(edge, ease)| (panel, edge, ease)));
    let chamfered = chamfered.filter(|(_, _, ease)| !matches!(ease, Ease::Rounding(_)));
    let chamfers: Length = chamfered.map(|(panel, edge, ease)| panel.eased_length(edge, ease) * 2.0).sum();
    let holes = panels.iter().flat_map(|panel| &panel.features).filter_map(|feature| match *feature {
        Feature::Hole { length, height, .. } => Some([length.in_mm(), height.in_mm()]),
        _ => None,
    });
    Ok(json!({
        "finish": choice.finish, "today": today, "backlog": backlog.minutes,
        "materials": materials.collect::<Vec<_>>(), "outlines": bill.outlines, "blanks": blanks(&job), "cut_m": bill.cut.in_m(), "faces_m2": bill.faces.in_m2(), "edges_m": edges.in_m(),
        "chamfers_m": chamfers.in_m(), "holes": holes.collect::<Vec<_>>(), "roundings_m": bill.roundings.in_m(), "pivots": bill.pivots,
        "joints": bill.joints, "parts": parts.collect::<Vec<_>>(),
        "carrier": carriage.carrier.key, "packages": packages.collect::<Vec<_>>(),
        "lines": built.price.lines, "stages": promise.stages, "leaves": promise.leaves, "arrives": promise.arrives,
        "top": {
            "uprights": middles.collect::<Vec<_>>(), "staves": staves.collect::<Vec<_>>(),
            "depth": choice.depth_mm.length().in_mm(), "coated": layout.body.in_mm(),
            "wood": picked.body.thickness().in_mm(), "lacks": over_joints(picked, layout).map(|(_, lacks)| lacks.in_mm()),
        },
    }))
}

/// Area of the blanks of each board.
fn blanks(job: &Job<'_>) -> Value {
    let [body, back] = [Stock::Body, Stock::Back].map(|stock| -> f64 {
        let parts = job.bill.flat.iter().filter(|part| part.stock == stock);
        parts.map(|part| (part.blank.along * part.blank.across).in_m2()).sum()
    });
    match job.materials.as_slice() {
        [one] => json!({ one.board.to_string(): body + back }),
        [first, second] => json!({ first.board.to_string(): body, second.board.to_string(): back }),
        _ => Value::Null,
    }
}

/// Every board and finish, as the range has them, by the mean alone, and as nobody measured them.
fn batches(range: &Range) -> Result<Vec<Value>, Fault> {
    let mut all = Vec::new();
    // Eight points whose mean is not on a step of 0.05 mm.
    let off: Board = {
        let mut board = range.boards.first().ok_or("a range has boards")?.clone();
        board.measure(
            "17.61 17.68 17.79 17.66 17.70 17.64 17.69 17.75".parse().map_err(|wrong| Message::Batch(&wrong).text())?,
        );
        board
    };
    for board in range.boards.iter().chain([&off]) {
        let mean = Board { measured_mm: Some(board.thickness()), measured_points_mm: None, ..board.clone() };
        let bare = Board { measured_mm: None, ..mean.clone() };
        for board in [board, &mean, &bare] {
            for finish in &range.finishes {
                let fit = Clearance::of(range, board, finish);
                let (least, most) = (range.build.clearance_least_mm, range.build.clearance_most_mm);
                all.push(json!({
                    "finish": finish.key, "nominal": board.nominal_mm, "mean_alone": board.measured_mm.is_some(),
                    "points": board.measured_points_mm,
                    "mean": fit.mean.in_mm(), "shared": fit.shared.in_mm(), "own": fit.own.in_mm(),
                    "tight": fit.in_most_batches(Clearance::tight),
                    "outside": fit.in_most_batches(|fit| fit.outside(least, most)),
                }));
            }
        }
    }
    Ok(all)
}

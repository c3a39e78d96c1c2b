//! Cut packs of seeded orders for readers and kernels that are not ours: sheets with their parts and cuts, drawings, lists.

use serde_json::{Value, json};
use slotwright_core::business::nesting::Grained;
use slotwright_core::business::promise::Backlog;
use slotwright_core::cabinet::panel::GrainAxis;
use slotwright_core::choice::Choice;
use slotwright_core::geometry::outline::{Outline, Point};
use slotwright_core::order::derive::derive;
use slotwright_core::order::intake::KnownRange;
use slotwright_core::order::spec::{Customer, OrderSpec};
use slotwright_core::range::{Grain, Hold, Key, Range};
use slotwright_core::rules::sample::{Wanted, choices};
use slotwright_core::units::quantity::Length;
use slotwright_core::words;
use slotwright_cutpack::pack::draw::{part_dxf, sheet_dxf, sheet_svg};
use slotwright_cutpack::pack::lot::Lot;
use slotwright_cutpack::pack::nest::{SheetsInStock, StoredOffcut};
use slotwright_cutpack::pack::path::{Program, Side};
use slotwright_cutpack::pack::sheet::Sheet;
use slotwright_cutpack::pack::{CutBy, Nesting, NoPack, OrderRead, Orders, Pack, Settings, list};

type Fault = Box<dyn std::error::Error>;

/// How many batches are made; of the first ones drawings and lists are given too.
const BATCHES: usize = 220;
const DRAWN: usize = 12;

/// Batches of one to three orders, some with sheets across the grain, some held by a skin or by vacuum alone, some with another
/// cutter or allowance, with offcuts in the rack or with sheets that are short, some looked at longer.
pub(crate) fn all(range: &Range) -> Result<Value, Fault> {
    let mut units = choices(range, 1818, Wanted::Valid);
    let (mut across, mut skin, mut vacuum) = (range.clone(), range.clone(), range.clone());
    for sheet in across.boards.iter_mut().flat_map(|board| &mut board.sheets) {
        sheet.grain = Grain::Width;
    }
    skin.cutting.hold = Hold::Skin { thickness_mm: Length::mm(0.4) };
    vacuum.cutting.hold = Hold::Vacuum;
    let mut batches = Vec::new();
    for number in 0..BATCHES {
        let batch: Vec<Choice> = units.by_ref().take(1 + number % 3).collect();
        let range = match number % 10 {
            // Not everything has room across the grain.
            4 | 9 => &across,
            2 => &skin,
            6 => &vacuum,
            _ => range,
        };
        if let Some(made) = one(range, &batch, number)? {
            batches.push(made);
        }
    }
    Ok(json!(batches))
}

fn one(range: &Range, batch: &[Choice], number: usize) -> Result<Option<Value>, Fault> {
    let by = |cutter: Option<f64>, allowance: f64| CutBy {
        cutter: cutter.map(Length::mm),
        allowance: Some(Length::mm(allowance)),
        ..CutBy::default()
    };
    let known = [match number % 10 {
        // Nothing but the cutter between parts; one that leaves more between them than itself.
        1 => by(Some(4.0), 0.0).known(range.clone()),
        8 => by(None, 9.0).known(range.clone()),
        _ => KnownRange::of(range.clone(), range.clone()),
    }];
    let backlog = Backlog::default();
    let today = "2026-11-25".parse().map_err(|wrong| words::no_day(&wrong))?;
    let mut read = Vec::new();
    for (at, choice) in (1..).zip(batch) {
        let derived = derive(range, choice, today, &backlog);
        let Some(orderable) = derived.orderable() else { continue };
        let customer = Customer { name: format!("Customer {at}"), contact: "-".into(), address: vec!["-".into()] };
        let spec = OrderSpec::new(orderable, customer, String::new()).map_err(|bad| bad.message().text())?;
        read.push(OrderRead::of(at, format!("{at}.json"), spec.to_text().as_bytes(), &known));
    }
    let orders = Orders::of(&read);
    if orders.taken.is_empty() {
        return Ok(None);
    }
    let settings = settings(range, batch, number);
    let mut nesting = match Nesting::begin(&orders, &settings, None) {
        // Of sheets that are short there may be too few.
        Err(NoPack::TooFewSheets { .. }) if !settings.bounds.is_empty() => return Ok(None),
        nesting => nesting.map_err(|none| format!("{none:?}"))?,
    };
    while nesting.spend(if number.is_multiple_of(4) { 2000 } else { 0 }, 1000) {}
    let pack = nesting.pack();
    let Some(cut_by) = pack.lots.first().map(|lot| lot.lot.range) else { return Ok(None) };
    let lists =
        |list: Vec<u8>| String::from_utf8(list).map(|text| if number < DRAWN { json!(text) } else { Value::Null });
    Ok(Some(json!({
        "parts": expected(&orders), "gap": cut_by.spacing().in_mm(),
        "cutter": cut_by.build.cutter_mm.in_mm(), "rack": settings.rack.len(), "bounds": settings.bounds.len(), "trim": range.build.sheet_trim_mm.in_mm(),
        "least": [range.offcuts.least_along_mm.in_mm(), range.offcuts.least_across_mm.in_mm()],
        "hold": match range.cutting.hold {
            Hold::Bridges { thickness_mm, .. } => json!({ "bridges": thickness_mm.in_mm() }),
            Hold::Skin { thickness_mm } => json!({ "skin": thickness_mm.in_mm() }),
            Hold::Vacuum => json!({}),
        },
        "name": pack.full_name(), "alone": if number < DRAWN { json!(alone(&pack)) } else { json!([]) },
        "sheets": pack.sheets().map(|(lot, sheet, program)| one_sheet((lot, sheet, program), &pack.full_name(), number)).collect::<Vec<_>>(),
        "minutes": lots(&pack), "parts_csv": lists(list::parts(&pack))?, "sheets_csv": lists(list::sheets(&pack))?,
    })))
}

/// Offcuts of the first order's finish in the rack, or few sheets of one format.
fn settings(range: &Range, batch: &[Choice], number: usize) -> Settings {
    let mut settings = Settings::default();
    let (Some(board), Some(choice)) = (range.boards.first(), batch.first()) else { return settings };
    match number % 10 {
        3 => {
            let finish = &choice.finish;
            let offcut = |name: &str, along: f64, across: f64| StoredOffcut {
                name: name.into(),
                board: board.key.clone(),
                finish: finish.clone(),
                size: Grained { along: Length::mm(along), across: Length::mm(across) },
                measured: None,
            };
            settings.rack = vec![offcut("r1", 1400.0, 640.0), offcut("r2", 620.0, 1210.0)];
        }
        7 => {
            let short = |key: &Key, count| SheetsInStock { board: board.key.clone(), sheet: key.clone(), count };
            settings.bounds =
                board.sheets.iter().map(|sheet| &sheet.key).zip([1, 3]).map(|(key, count)| short(key, count)).collect();
        }
        _ => {}
    }
    settings
}

/// Which parts have to be cut: order and id.
fn expected(orders: &Orders<'_>) -> Vec<String> {
    let parts = orders.taken.iter().flat_map(|order| {
        let panels = order.cut.built.iter().flat_map(|built| &built.cut.case.panels);
        panels.map(|panel| format!("{}/{}", order.number, panel.id))
    });
    parts.collect()
}

/// Metres, outlines and minutes of each sheet's program.
fn lots(pack: &Pack<'_>) -> Vec<[f64; 3]> {
    #[expect(clippy::cast_precision_loss, reason = "some hundred")]
    let figures = |program: &Program| [program.length.in_mm(), program.cuts.len() as f64, program.minutes];
    pack.sheets().map(|(_, _, program)| figures(program)).collect()
}

/// Each part's drawing by itself, with the area that it should have.
fn alone(pack: &Pack<'_>) -> Vec<Value> {
    let parts =
        pack.sheets().flat_map(|(lot, sheet, _)| sheet.placed.iter().map(move |placed| (lot, sheet, placed.part)));
    let drawn = parts.map(|(lot, sheet, part)| {
        json!({ "mark": part.mark(), "dxf": part_dxf(lot, sheet, &part, &pack.full_name()), "used": part.panel.area().in_mm2() })
    });
    drawn.collect()
}

fn point(at: Point) -> [f64; 2] {
    [at.u.in_mm(), at.v.in_mm()]
}

fn corners(outline: &Outline) -> Vec<[f64; 3]> {
    outline.corners().iter().map(|corner| [corner.at.u.in_mm(), corner.at.v.in_mm(), corner.bulge]).collect()
}

fn one_sheet((lot, sheet, program): (&Lot<'_>, &Sheet<'_>, &Program), name: &str, number: usize) -> Value {
    let parts = sheet.placed.iter().map(|placed| {
        let (panel, plain) = (placed.part.panel, placed.rectangle_without_tabs());
        json!({
            "id": format!("{}/{}", placed.part.order, panel.id), "mark": placed.part.mark(),
            "grain": if panel.grain == GrainAxis::AlongU { "u" } else { "v" }, "quarters": placed.turn.count(),
            "own": corners(&panel.outline()), "outline": corners(&placed.outline()), "holes": placed.holes().map(|hole| corners(&hole)).collect::<Vec<_>>(),
            "area": panel.area().in_mm2(), "plain": [point(plain.from), point(plain.to)],
        })
    });
    let cuts = program.cuts.iter().map(|cut| {
        json!({
            "inside": cut.side == Side::Inside, "part": cut.part, "outline": corners(&cut.outline),
            "lead_in": cut.lead_in.map(point), "bridges": cut.bridges.iter().map(|bridge| bridge.map(point)).collect::<Vec<_>>(),
            "between": cut.between.iter().map(|way| way.iter().map(|corner| [corner.at.u.in_mm(), corner.at.v.in_mm(), corner.bulge]).collect()).collect::<Vec<Vec<[f64; 3]>>>(),
        })
    });
    let drawn = |text: String| if number < DRAWN { json!(text) } else { Value::Null };
    json!({
        "lot": lot.key(), "stock": sheet.stock.name(), "length": sheet.length.in_mm(), "width": sheet.width.in_mm(),
        "grain": if sheet.grain == Grain::Length { "u" } else { "v" },
        "parts": parts.collect::<Vec<_>>(), "cuts": cuts.collect::<Vec<_>>(),
        "kept": sheet.kept.iter().map(|kept| [point(kept.from), point(kept.to)]).collect::<Vec<_>>(),
        "used": sheet.used().in_mm2(), "depths": [program.depths.through.in_mm(), program.depths.outside.in_mm()], "thickness": sheet.coated(lot).in_mm(), "dxf": drawn(sheet_dxf(lot, sheet, program, name)), "svg": drawn(sheet_svg(lot, sheet, name)),
    })
}

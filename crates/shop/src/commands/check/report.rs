//! The report of `slotwright check --json`.

use std::path::Path;

use serde::Serialize;
use slotwright_core::cabinet::layout::Picked;
use slotwright_core::input::seal::Digest;
use slotwright_core::order::derive::Derived;
use slotwright_core::order::spec::{Checked, Difference, OrderSpec};
use slotwright_core::range::{Board, Key, Range, Use};
use slotwright_core::rules::finding::{Finding, Severity};
use slotwright_core::units::day::Day;
use slotwright_core::units::money::Money;
use slotwright_core::units::quantity::{Dim, Length};

use crate::commands::fit::FinishFit;

/// The report of `slotwright check --json`.
#[derive(Debug, Serialize, schemars::JsonSchema)]
pub(crate) struct Report {
    /// Always `slotwright-check`.
    format: &'static str,
    /// Version of this format.
    version: u32,
    /// The files in the order in which they were named.
    files: Vec<FileReport>,
}

impl Report {
    pub(super) const fn of(files: Vec<FileReport>) -> Self {
        Self { format: "slotwright-check", version: 1, files }
    }
}

/// What came of one file.
#[derive(Debug, Serialize, schemars::JsonSchema)]
pub(super) struct FileReport {
    /// Its name.
    pub(super) file: String,
    /// What came of it.
    #[serde(flatten)]
    pub(super) result: Outcome,
}

/// What came of one file.
#[derive(Debug, Serialize, schemars::JsonSchema)]
#[serde(tag = "result", rename_all = "kebab-case")]
pub(super) enum Outcome {
    /// Everything that was promised comes out again.
    Holds {
        /// What is cut.
        order: Box<OrderReport>,
    },
    /// Something does not.
    Differs {
        /// What.
        #[serde(flatten)]
        checked: Checked,
        /// What would be cut.
        order: Box<OrderReport>,
    },
    /// It is no order spec that this tool can check.
    Unreadable {
        /// Why not.
        reason: String,
        /// What to do.
        hint: String,
    },
}

impl Outcome {
    pub(super) fn of(checked: Checked, order: OrderReport) -> Self {
        let order = Box::new(order);
        if checked.holds() { Self::Holds { order } } else { Self::Differs { checked, order } }
    }
}

/// A range that orders may refer to.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub(super) struct RangeAtHand {
    /// Its key.
    pub(super) key: Key,
    /// Its name.
    pub(super) name: String,
    /// SHA-256 over its canonical JSON.
    pub(super) digest: Digest,
    /// The last day on which it takes orders, if it has one.
    pub(super) orders_until: Option<Day>,
    /// The file that it was read from.
    pub(super) file: String,
}

impl RangeAtHand {
    pub(super) fn of(range: &Range, file: &Path) -> Self {
        Self {
            key: range.key.clone(),
            name: range.name.clone(),
            digest: range.digest(),
            orders_until: range.orders_until,
            file: file.display().to_string(),
        }
    }
}

/// An order as it is cut: from the measured batches where there are any.
#[derive(Debug, Serialize, schemars::JsonSchema)]
pub(super) struct OrderReport {
    /// Its digest.
    pub(super) digest: Digest,
    /// The file named before that holds the same order.
    pub(super) same_as: Option<String>,
    /// Its range.
    pub(super) range: RangeAtHand,
    /// The day of the order.
    pub(super) ordered_on: Day,
    /// The model's name.
    pub(super) model: Option<String>,
    /// Width, height and depth.
    pub(super) size_mm: [Dim; 3],
    /// The finish's name.
    pub(super) finish: Option<String>,
    /// Its boards.
    pub(super) boards: Vec<BoardReport>,
    /// Mass of the whole; nothing if it cannot be made, as with the next two.
    pub(super) mass_g: Option<i64>,
    /// Price with tax.
    pub(super) price_minor: Option<Money>,
    /// The latest day on which it arrives.
    pub(super) arrives_on: Option<Day>,
    /// Currency of the range, ISO 4217.
    pub(super) currency: String,
    /// What to mind of it; no fault.
    pub(super) warnings: Vec<Finding>,
    /// What the measured batches change of what was promised; no fault.
    pub(super) by_batch: Vec<Difference>,
}

/// A board as it is cut.
#[derive(Debug, Serialize, schemars::JsonSchema)]
pub(super) struct BoardReport {
    /// Its key.
    pub(super) board: Key,
    /// Which parts of the order are cut from it.
    pub(super) parts: Vec<Use>,
    /// Thickness by which it is sold.
    pub(super) nominal_mm: Length,
    /// How its thickness is known.
    pub(super) measured: Measure,
    /// Thickness that is cut for, sanded and uncoated.
    pub(super) thickness_mm: Length,
    /// The same with its film on both faces: what a slot takes in, with the clearance.
    pub(super) coated_mm: Length,
    /// Width of a slot for one thickness, and how its joints fit.
    #[serde(flatten)]
    pub(super) fit: FinishFit,
    /// Share of joints outside the wanted clearance that the range takes without a word.
    pub(super) outside_most: f64,
}

/// How a thickness is known.
#[derive(Clone, Copy, Debug, Serialize, schemars::JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub(super) enum Measure {
    /// By eight points.
    Points,
    /// By its mean alone.
    Mean,
    /// Not at all: the nominal one is taken.
    Not,
}

impl OrderReport {
    pub(super) fn of(spec: &OrderSpec, cut: &Derived<'_>, by_batch: Vec<Difference>, shown: RangeAtHand) -> Self {
        let (range, choice, built) = (cut.range, &spec.choice, cut.built.as_ref());
        let picked = Picked::of(range, choice);
        Self {
            digest: spec.digest,
            same_as: None,
            range: shown,
            ordered_on: spec.ordered_on,
            model: range.model(&choice.model).map(|model| model.name.clone()),
            size_mm: [choice.width_mm, choice.height_mm, choice.depth_mm],
            finish: range.finish(&choice.finish).map(|finish| finish.name.clone()),
            boards: picked.map(boards).unwrap_or_default(),
            mass_g: built.map(|built| built.whole.mass.to_gram()),
            price_minor: built.map(|built| built.price.total_minor),
            arrives_on: built.and_then(|built| built.promise.as_ref()).map(|promise| promise.arrives),
            currency: range.currency.clone(),
            warnings: cut.findings.iter().filter(|found| found.severity == Severity::Warns).cloned().collect(),
            by_batch,
        }
    }
}

fn boards(picked: Picked<'_>) -> Vec<BoardReport> {
    let report = |board: &Board, parts| BoardReport {
        board: board.key.clone(),
        parts,
        nominal_mm: board.nominal_mm,
        measured: match (&board.measured_points_mm, board.measured_mm) {
            (Some(_), _) => Measure::Points,
            (None, Some(_)) => Measure::Mean,
            (None, None) => Measure::Not,
        },
        thickness_mm: board.thickness(),
        coated_mm: Length::mm((board.thickness() + picked.finish.dry_film() * 2.0).to_hundredth_mm()),
        fit: FinishFit::of(picked.range, board, picked.finish),
        outside_most: f64::from(picked.range.fit.outside_most_per_mille) / 1000.0,
    };
    if picked.body.key == picked.back.key {
        vec![report(picked.body, vec![Use::Body, Use::Back])]
    } else {
        vec![report(picked.body, vec![Use::Body]), report(picked.back, vec![Use::Back])]
    }
}

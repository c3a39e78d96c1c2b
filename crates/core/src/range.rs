//! A workshop's range: what it makes, from what, how, at which rates and when.
//!
//! One human-editable TOML file holds it (`web/ranges/fenland.toml` is the documented example). The
//! types below are its vocabulary; [`Range::parse`] reads and judges the file as a whole.

use alloc::collections::BTreeSet;

use serde::Serialize;

use crate::input::seal::Digest;
use crate::units::day::Day;
use crate::units::quantity::Length;
pub(crate) use fields::Fields;
pub use fields::TEXT_MOST;
pub(crate) use read_log::ReadLog;

pub(crate) mod batch;
mod bay;
mod board;
mod bow;
mod build;
mod calendar;
mod check;
mod cutting;
mod detent;
mod device;
mod fields;
mod finish;
mod hole;
mod key;
mod model;
mod moisture;
mod orders_to;
pub(crate) mod parse;
mod rates;
mod read_log;
mod wrong;

pub use batch::{Batch, NotABatch};
pub use bay::{BAYS_MOST, Bay, Fill, Hole, Hung};
pub(crate) use bay::{read_bay, word};
pub use board::{Board, Grain, Sheet, Use};
pub use bow::BowBuild;
pub(crate) use build::STILE_TAB;
pub use build::{Build, FitLimits, Handling, Screen, Strength, relief_radius};
pub use calendar::{Calendar, Carrier, Crew, Shutdown, Stage, Work};
#[cfg(any(test, feature = "schema"))]
pub use check::{Bound, Limits};
pub use cutting::{Cutting, Hold, OffcutRules};
pub use detent::{Detent, leans};
pub use device::Device;
pub use finish::{Finish, Look};
pub use hole::{HoleKind, HoleShape, Plug};
pub use key::{Key, NotAKey};
pub use model::{BackGrain, BayCount, DimRange, Model};
pub use moisture::Moisture;
pub use orders_to::{NotAnAddress, OrdersTo};
pub use parse::{Problem, RangeProblems};
pub use rates::{MaterialBy, Rates};
pub use wrong::{Found, Wanted, Wrong};

/// The format version that this program reads and writes.
pub const FORMAT: u32 = 2;

/// The version of this program that reads an older format, if one does.
pub(crate) const fn read_by(format: u32) -> Option<&'static str> {
    match format {
        1 => Some("0.1.0"),
        _ => None,
    }
}

/// One workshop's range file.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Range {
    /// Version of the file format.
    #[cfg_attr(feature = "schema", schemars(extend("const" = FORMAT)))]
    pub format: u32,
    /// Short name that orders refer to, together with the digest.
    pub key: Key,
    /// The range's name as customers see it.
    pub name: String,
    /// The workshop's name.
    pub workshop: String,
    /// A remark shown with the range, for instance that it is invented.
    #[serde(default)]
    pub note: String,
    /// ISO 4217 code of the currency; amounts are in its minor unit, a hundredth.
    #[cfg_attr(feature = "schema", schemars(extend("pattern" = "^[A-Z]{3}$")))]
    pub currency: String,
    /// The last day on which it takes orders, if it has one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub orders_until: Option<Day>,
    /// Where customers send their orders, if it says that: an address of mail, or of a page.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub orders_to: Option<OrdersTo>,
    /// The boards that parts are cut from.
    #[serde(rename = "board")]
    pub boards: Vec<Board>,
    /// The finishes on offer, the usual one first.
    #[serde(rename = "finish")]
    pub finishes: Vec<Finish>,
    /// The cable holes on offer, the usual one first.
    #[serde(rename = "hole", default)]
    pub holes: Vec<HoleKind>,
    /// The plugs that a customer may name.
    #[serde(rename = "plug", default)]
    pub plugs: Vec<Plug>,
    /// The devices that a customer may name.
    #[serde(rename = "device", default)]
    pub devices: Vec<Device>,
    /// The models, in the order in which they are shown.
    #[serde(rename = "model")]
    pub models: Vec<Model>,
    /// How every unit of the range is built.
    pub build: Build,
    /// How its bowed ends are built.
    pub bow: BowBuild,
    /// How parts are cut from sheets.
    pub cutting: Cutting,
    /// What is left of sheets, and what it is worth.
    #[serde(rename = "offcut")]
    pub offcuts: OffcutRules,
    /// Loads, creep and limits of deflection.
    pub strength: Strength,
    /// How slots vary, and what share of them may.
    pub fit: FitLimits,
    /// How boards move with the moisture of the air.
    pub moisture: Moisture,
    /// A screen on the top.
    pub screen: Screen,
    /// What one and two people may carry.
    pub handling: Handling,
    /// What work and material cost.
    pub rates: Rates,
    /// People who share their day among stages.
    #[serde(rename = "crew", default)]
    pub crews: Vec<Crew>,
    /// The stages of an order, in their order.
    #[serde(rename = "stage")]
    pub stages: Vec<Stage>,
    /// The days on which the workshop works.
    pub calendar: Calendar,
    /// The carriers, the preferred one first.
    #[serde(rename = "carrier")]
    pub carriers: Vec<Carrier>,
}

impl Range {
    /// The digest that orders refer to: SHA-256 over the canonical JSON of the whole range.
    pub fn digest(&self) -> Digest {
        Digest::of_value(self)
    }

    /// What stays free between two parts: the cutter's diameter and the allowance.
    pub fn spacing(&self) -> Length {
        self.build.cutter_mm + self.cutting.allowance_mm
    }

    /// Minutes that the machine cuts: along all outlines in all passes, and what it takes to come to each of them.
    pub fn machine_minutes(&self, cut: Length, outlines: u32) -> f64 {
        cut.in_mm() * f64::from(self.rates.passes) / self.rates.feed_mm_per_min
            + f64::from(outlines) * self.cutting.outline_minutes
    }

    /// What its figures and lists may be, each by itself: for the published schema.
    #[cfg(any(test, feature = "schema"))]
    pub fn bounds(&self) -> Vec<Bound> {
        check::bounds(self)
    }

    /// The model of that key.
    pub fn model(&self, key: &Key) -> Option<&Model> {
        self.models.iter().find(|model| model.key == *key)
    }

    /// The board of that key.
    pub fn board(&self, key: &Key) -> Option<&Board> {
        self.boards.iter().find(|board| board.key == *key)
    }

    /// The finish of that key.
    pub fn finish(&self, key: &Key) -> Option<&Finish> {
        self.finishes.iter().find(|finish| finish.key == *key)
    }

    /// The cable hole of that key.
    pub fn hole(&self, key: &Key) -> Option<&HoleKind> {
        self.holes.iter().find(|hole| hole.key == *key)
    }

    /// The plug of that key.
    pub fn plug(&self, key: &Key) -> Option<&Plug> {
        self.plugs.iter().find(|plug| plug.key == *key)
    }

    /// The crew of that key.
    pub fn crew(&self, key: &Key) -> Option<&Crew> {
        self.crews.iter().find(|crew| crew.key == *key)
    }

    /// The device of that key.
    pub fn device(&self, key: &Key) -> Option<&Device> {
        self.devices.iter().find(|device| device.key == *key)
    }
}

/// The keys that occur more than once.
pub(crate) fn repeated<'a>(keys: impl Iterator<Item = &'a Key>) -> Vec<&'a Key> {
    let mut seen = BTreeSet::new();
    keys.filter(|key| !seen.insert(*key)).collect()
}

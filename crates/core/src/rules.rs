//! The rules that a unit has to keep. One file, one rule or one family of them: what is checked,
//! why, the formula with its source, and the tests.

use serde::Serialize;

use crate::blank::{Blank, Blanks, Coated};
use crate::case::Case;
use crate::choice::Choice;
use crate::finding::{Finding, Severity};
use crate::layout::{Layout, Picked};
use crate::panel::PanelId;
use crate::quantity::Mass;
use crate::range::Range;

pub mod bearing;
pub mod carrying;
pub mod device;
pub mod fit;
pub mod frame;
pub mod hole;
pub mod interlock;
pub mod known;
pub mod leaf;
pub mod looks;
pub mod place;
pub mod promised;
pub(crate) mod reads;
pub mod room;
pub mod sag;
pub mod screen;
pub mod sheet;
pub mod shelf_slot;
pub mod size;
pub mod tether;
pub mod tip;

/// What a rule is for, shown one step deeper than its sentence.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct RuleCard {
    /// The code by which findings name it.
    pub code: &'static str,
    /// What is checked.
    pub what: &'static str,
    /// Why it matters.
    pub why: &'static str,
    /// Where formula and limit come from.
    pub source: &'static str,
}

macro_rules! rules {
    ($($(#[$doc:meta])* $name:ident = $card:expr;)*) => {
        /// All rules.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Rule {
            $($(#[$doc])* $name,)*
        }

        impl Rule {
            /// Every rule, in the order of checking.
            pub const ALL: &[Self] = &[$(Self::$name),*];

            /// A bit of a set of rules.
            pub(crate) const fn bit(self) -> u64 {
                1 << self as u64
            }

            /// Its card.
            pub const fn card(self) -> &'static RuleCard {
                match self {
                    $(Self::$name => &$card,)*
                }
            }
        }
    };
}

rules! {
    /// The range has what the choice names.
    Known = known::KNOWN;
    /// Sizes within the model's limits.
    SizeLimit = size::SIZE_LIMIT;
    /// Sizes on the model's steps.
    SizeStep = size::SIZE_STEP;
    /// Number of bays, shelves and leaves.
    FitOutCount = size::FIT_OUT_COUNT;
    /// Weights of the bays' widths.
    BayShare = size::BAY_SHARE;
    /// Bays wide enough.
    BayRoom = room::BAY_ROOM;
    /// Rows high enough.
    RowRoom = room::ROW_ROOM;
    /// Deep enough for shelves and chase.
    DepthRoom = room::DEPTH_ROOM;
    /// Every panel on a sheet.
    SheetFit = sheet::SHEET_FIT;
    /// Shelves do not bend too far.
    ShelfSag = sag::SHELF_SAG;
    /// Nor does the top.
    TopSag = sag::TOP_SAG;
    /// Nor does the base.
    BaseSag = sag::BASE_SAG;
    /// Shelf slots in a shared divider.
    ShelfSlot = shelf_slot::SHELF_SLOT;
    /// A leaf's shape.
    LeafShape = leaf::LEAF_SHAPE;
    /// A leaf's mass on its pivots.
    LeafMass = leaf::LEAF_MASS;
    /// The plug passes.
    HolePlug = hole::HOLE_PLUG;
    /// Material round a hole.
    HoleEdge = hole::HOLE_EDGE;
    /// No stile before a hole.
    HoleStile = hole::HOLE_STILE;
    /// No shelf before a hole.
    HoleShelf = hole::HOLE_SHELF;
    /// A device goes in.
    DeviceWidth = device::DEVICE_WIDTH;
    /// A device has air over it.
    DeviceHeight = device::DEVICE_HEIGHT;
    /// A device does not stand out.
    DeviceDepth = device::DEVICE_DEPTH;
    /// Joints that go in.
    JointFit = fit::JOINT_FIT;
    /// Ears that carry their shelf.
    ShelfEar = bearing::SHELF_EAR;
    /// Pivots that carry their leaf.
    LeafPivot = bearing::LEAF_PIVOT;
    /// Uprights that stay straight.
    UprightBuckling = frame::UPRIGHT_BUCKLING;
    /// A unit that does not sway.
    Lean = frame::LEAN;
    /// Parts that people can carry.
    PartMass = carrying::PART_MASS;
    /// A unit that stands by itself.
    TipOver = tip::TIP_OVER;
    /// Parts that are long.
    PartLength = carrying::PART_LENGTH;
    /// Packages that a carrier takes.
    Package = carrying::PACKAGE;
    /// Gaps round leaves.
    LeafGap = leaf::LEAF_GAP;
    /// Leaves that touch.
    LeafSwing = leaf::LEAF_SWING;
    /// Something to open leaves by.
    LeafGrip = leaf::LEAF_GRIP;
    /// A device behind a leaf.
    DeviceShut = device::DEVICE_SHUT;
    /// A device without a cable hole.
    DeviceCable = device::DEVICE_CABLE;
    /// Cables behind the back.
    CableBend = hole::CABLE_BEND;
    /// Coats on edges.
    FinishEdges = looks::FINISH_EDGES;
    /// Dark films in the sun.
    FinishSun = looks::FINISH_SUN;
    /// The screen on the top.
    ScreenWidth = place::SCREEN_WIDTH;
    /// The wall.
    WallWidth = place::WALL_WIDTH;
    /// Feet of the screen.
    ScreenFeet = screen::SCREEN_FEET;
    /// Eyes before it.
    ViewingHeight = screen::VIEWING_HEIGHT;
    /// Fastening to the wall.
    WallTether = tether::WALL_TETHER;
    /// It goes together and holds.
    Interlock = interlock::INTERLOCK;
    /// The top while moisture changes.
    TopMoisture = fit::TOP_MOISTURE;
    /// A day of arrival.
    PromiseDay = promised::PROMISE_DAY;
    /// Parts at all.
    NoParts = promised::NO_PARTS;
}

impl Rule {
    /// Whether it is of the basics: known names, limits, room. While they are broken nothing else is checked.
    pub const fn is_basic(self) -> bool {
        (self as u64) <= (Self::DepthRoom as u64)
    }

    /// The rule of that code.
    pub fn of_code(code: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|rule| rule.card().code == code)
    }
}

impl Serialize for Rule {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.card().code)
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Rule {
    fn schema_name() -> alloc::borrow::Cow<'static, str> {
        "Rule".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        let codes: Vec<&str> = Self::ALL.iter().map(|rule| rule.card().code).collect();
        schemars::json_schema!({ "type": "string", "enum": codes })
    }
}

/// What a choice comes to: where everything stands, if it can stand at all, and what the rules say.
#[derive(Clone, Debug)]
pub struct Judged<'a> {
    /// What the choice names; `None` if the range lacks it.
    pub picked: Option<Picked<'a>>,
    /// Where everything stands; `None` if that leaves no room for the parts.
    pub layout: Option<Layout>,
    /// Findings in the order of checking, without remedies.
    pub findings: Vec<Finding>,
}

impl Judged<'_> {
    /// Whether nothing stops the order.
    pub fn holds(&self) -> bool {
        self.layout.is_some() && self.stops().next().is_none()
    }

    /// The findings that stop the order.
    pub fn stops(&self) -> impl Iterator<Item = &Finding> {
        self.findings.iter().filter(|finding| finding.severity == Severity::Stops)
    }
}

/// A choice with all that the rules look at.
///
/// Rules judge the layout and the parts' blanks: nothing is cut for a judgement, so that every answer of
/// every question can be judged while somebody drags a size.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Unit<'a> {
    pub(crate) picked: Picked<'a>,
    pub(crate) choice: &'a Choice,
    pub(crate) layout: &'a Layout,
    pub(crate) blanks: &'a [Blank],
    pub(crate) coated: Coated,
}

impl Unit<'_> {
    /// The heaviest of some parts and its mass, if that is over `most`. Parts are cut only where their
    /// blanks are over it.
    pub(crate) fn heaviest_over(self, most: Mass, parts: &[Blank]) -> Option<(PanelId, Mass)> {
        let heavy = |blank: &&Blank| blank.most_mass(self.coated) > most;
        parts.iter().find(heavy)?;
        let case = Case::of(self.picked, self.choice, self.layout)?;
        let panels = parts.iter().filter(heavy).filter_map(|blank| case.panel(blank.id));
        let weighed = panels.map(|panel| (panel.id, Case::weigh(panel, self.picked).mass));
        weighed.max_by(|a, b| a.1.total_cmp(&b.1)).filter(|(_, mass)| *mass > most)
    }
}

/// One file's check.
type Check = fn(&mut Vec<Finding>, Unit<'_>);

/// What can stop an order.
const STOPS: &[Check] = &[
    sheet::check,
    sag::check,
    shelf_slot::check,
    leaf::check,
    hole::check,
    device::check,
    fit::check,
    bearing::check,
    frame::check,
    carrying::check,
    tip::check,
];

/// What cannot.
const ADVICE: &[Check] = &[
    fit::advise,
    carrying::advise,
    carrying::ways,
    leaf::advise,
    device::advise,
    hole::advise,
    looks::check,
    place::check,
    screen::check,
    tether::check,
];

/// Lays a choice out and checks every rule.
pub fn judge<'a>(range: &'a Range, choice: &Choice) -> Judged<'a> {
    check(range, choice, &[STOPS, ADVICE], usize::MAX)
}

/// The same for what can stop an order alone.
pub fn judge_stops<'a>(range: &'a Range, choice: &Choice) -> Judged<'a> {
    check(range, choice, &[STOPS], usize::MAX)
}

/// What stops an order first, if anything does: no rule is checked after one that does.
pub fn first_stop(range: &Range, choice: &Choice) -> Option<Finding> {
    check(range, choice, &[STOPS], 1).findings.into_iter().next()
}

/// Whether nothing stops the order of a choice.
pub fn can_be_made(range: &Range, choice: &Choice) -> bool {
    first_stop(range, choice).is_none()
}

/// Checks until there are `enough` findings.
fn check<'a>(range: &'a Range, choice: &Choice, rules: &[&[Check]], enough: usize) -> Judged<'a> {
    let mut findings = Vec::new();
    let out = &mut findings;
    known::check(out, range, choice);
    let picked = Picked::of(range, choice);
    let mut layout = picked.and_then(|picked| {
        size::check(out, picked.model, choice);
        Layout::of(picked, choice)
    });
    if let Some((picked, laid)) = picked.zip(layout.as_ref()) {
        room::check(out, picked, choice, laid);
        if !laid.has_room() {
            layout = None;
        } else if !out.iter().any(|finding| finding.severity == Severity::Stops) {
            // While the basics are wrong, everything that follows from them would only be noise.
            let (blanks, coated) = (Blanks { picked, layout: laid }.all(choice), Coated::of(picked));
            for rule in rules.iter().copied().flatten() {
                if out.len() >= enough {
                    break;
                }
                rule(out, Unit { picked, choice, layout: laid, blanks: &blanks, coated });
            }
        }
    }
    Judged { picked, layout, findings }
}

/// Numbers things from 1, as people do.
pub(crate) fn numbered<T>(things: impl IntoIterator<Item = T>) -> impl Iterator<Item = (u8, T)> {
    (1..=u8::MAX).zip(things)
}

#[cfg(test)]
mod tests;

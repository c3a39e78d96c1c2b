//! How the units of a range are built, how far they may bend, and what people may carry.

use serde::Serialize;

use super::Fields;
use crate::units::quantity::{AreaMass, Force, Length, Mass};

/// Construction figures that every unit of the range shares.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Build {
    /// Slot width beyond the coated thickness of what goes in.
    pub clearance_mm: Length,
    /// The same of slots that hold nothing in its place: those of the top, but for its middle.
    pub clearance_loose_mm: Length,
    /// The clearance wanted at least.
    pub clearance_least_mm: Length,
    /// The clearance wanted at most.
    pub clearance_most_mm: Length,
    /// Diameter of the cutter.
    pub cutter_mm: Length,
    /// Chamfer of the edges that people touch, made by hand.
    pub ease_mm: Length,
    /// From the end of the top to the outer face of an end.
    pub end_inset_mm: Length,
    /// From the front edge of the top to the front face of stiles and leaves.
    pub front_inset_mm: Length,
    /// Cable chase: from the back to the rear edge of base and top.
    pub chase_mm: Length,
    /// How far the back passes the outer face of an end: the wood beside its outermost slots.
    pub back_ear_mm: Length,
    /// From one hook of an upright to the next at most; each has two at least.
    pub hook_apart_mm: Length,
    /// Height of a hook's neck, which goes through the back.
    pub hook_neck_mm: Length,
    /// Length of its nose, behind the back.
    pub hook_nose_mm: Length,
    /// How far the nose rises over the neck.
    pub hook_rise_mm: Length,
    /// Free height over and under a nose while the back goes over it.
    pub hook_play_mm: Length,
    /// Most height that a step of the assembly takes beyond that of the unit.
    pub headroom_mm: Length,
    /// Most joints that a part meets at the same moment while it goes in.
    pub joints_at_once_most: u8,
    /// How far the lower base plate stands back at the front.
    pub foot_recess_mm: Length,
    /// Free depth under the front edge of the top, before a plinth.
    pub plinth_toe_mm: Length,
    /// Free depth behind a plinth, for skirting and cables.
    pub plinth_rear_mm: Length,
    /// Length of a tab along its edge.
    pub tab_mm: Length,
    /// From the end of an edge to its first tab.
    pub tab_inset_mm: Length,
    /// How much a through tab stays below the far face.
    pub tab_short_mm: Length,
    /// By how much each rank of tabs in the top is shorter than the one behind it, so that it meets them one after another.
    pub tab_stagger_mm: Length,
    /// How far the corners at the end of a tab are cut off along its end: where a slot goes through, this is seen beside the tab.
    pub taper_across_mm: Length,
    /// How far they are cut off along its flanks.
    pub taper_along_mm: Length,
    /// Chamfer by hand on both faces of the ends of tabs in the top, and round the tips of the upper pivots; nothing for none.
    pub tab_chamfer_mm: Length,
    /// Depth of the front-open shelf slots, per mille of the way from upright front to back.
    pub shelf_slot_per_mille: u32,
    /// From the hinge-side edge of a leaf to its pivot.
    pub pivot_inset_mm: Length,
    /// Diameter of a pivot hole beyond the pivot.
    pub pivot_clearance_mm: Length,
    /// Gap wanted round a leaf.
    pub leaf_gap_mm: Length,
    /// Rounding of the leaf's upright edges.
    pub leaf_rounding_mm: Length,
    /// Diameter of the hole in a leaf by which a finger opens it; nothing for none.
    pub finger_hole_mm: Length,
    /// Depth of a leaf's stop, from front to rear.
    pub stop_depth_mm: Length,
    /// From the rear face of a leaf that is shut to its stop.
    pub stop_gap_mm: Length,
    /// How far a stop overlaps the flat of its leaf at least.
    pub stop_overlap_mm: Length,
    /// How far the nose that keeps a leaf shut overlaps it, as the leaf hangs; nothing for none.
    pub detent_rise_mm: Length,
    /// From the tongue that bears the nose to the leaf under it, as the leaf hangs.
    pub detent_play_mm: Length,
    /// From that tongue to the top, which stops it.
    pub detent_travel_mm: Length,
    /// Height of the tongue.
    pub detent_tongue_mm: Length,
    /// How far the slit under the tongue goes into the stop.
    pub detent_root_mm: Length,
    /// Rise over run of the nose's flanks, per mille.
    pub detent_slope_per_mille: u32,
    /// Least material between a hole and an edge, a joint or another hole.
    pub ligament_mm: Length,
    /// Border of a sheet that is not used.
    pub sheet_trim_mm: Length,
}

/// By how much reliefs are rounder than the cutter that makes them, in radius.
// Common practice: 0.05 to 0.1 mm. At exactly its radius an offset by that radius is a point, which some controllers refuse.
const RELIEF_ROUNDER: Length = Length::mm(0.1);

/// Length of a stile's tabs, as a share of its width.
pub(crate) const STILE_TAB: f64 = 0.4;

/// Radius of the reliefs and fillets for a cutter of that diameter.
pub fn relief_radius(cutter: Length) -> Length {
    cutter / 2.0 + RELIEF_ROUNDER
}

/// Creep and limits of deflection.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Strength {
    /// Sag may be at most the span divided by this.
    pub sag_span_over: f64,
    /// Creep factor `k_def` of the board, service class 1.
    // Source: EN 1995-1-1:2004+A1, table 3.2: plywood 0.80.
    pub creep_factor: f64,
    /// Share ψ₂ of the imposed load that stays for good.
    // From memory: EN 1990:2002, table A1.1: storage 0.8.
    pub lasting_share: f64,
    /// Widest leaf for its height: width over height.
    pub leaf_widest: f64,
    /// Narrowest leaf for its height: width over height.
    pub leaf_narrowest: f64,
    /// Narrowest leaf.
    pub leaf_least_mm: Length,
    /// Heaviest leaf that its pivots carry.
    pub leaf_most_kg: Mass,
    /// Narrowest clear bay.
    pub bay_least_mm: Length,
    /// Lowest clear height between shelves.
    pub row_least_mm: Length,
    /// Share of its strength that the board keeps under a load that stays, `k_mod`.
    // Source: EN 1995-1-1:2004+A1, table 3.1: plywood, service class 1, permanent 0.60.
    pub lasting_strength: f64,
    /// Divides a characteristic strength, `γ_M`.
    // Source: EN 1995-1-1:2004+A1, table 2.3: plywood 1.2.
    pub material_factor: f64,
    /// An upright carries at least so many times its load before it buckles.
    pub buckling_factor: f64,
    /// What holds the unit down is at least so many times what tips it, leaves open and nobody near.
    pub tip_factor: f64,
    /// How much a carpet lifts the rear of the foot.
    pub carpet_mm: Length,
    /// A unit that a smaller push at its top tips over has to be fastened to the wall.
    pub tether_push_n: Force,
    /// What stands out of a part takes this at its tip, from any side.
    pub knock_n: Force,
    /// A push in the middle of a slender part, or at the free corner of a leaf.
    pub push_n: Force,
    /// Under it the part may bend by at most its length divided by this; the corner of a leaf may move by twice that.
    pub push_span_over: f64,
    /// Share of its strength that the board has against a knock, `k_mod`.
    // Source: EN 1995-1-1:2004+A1, table 3.1: plywood, service class 1, short-term 0.90.
    pub knock_strength: f64,
    /// So often a leaf may be opened and shut before the tongue of its detent tires.
    pub detent_openings: u32,
}

/// How slots vary, and what share of them may.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct FitLimits {
    /// A slot is cut to plus or minus this: three standard deviations.
    pub cut_mm: Length,
    /// Within a batch whose mean alone is known thickness varies by plus or minus this: three standard deviations.
    pub within_batch_mm: Length,
    /// A film is as thick as its coats say to plus or minus this share, per mille: three standard deviations.
    pub film_per_mille: u32,
    /// Share of the coats after cutting that reaches the walls of slots, per mille.
    pub slot_coat_per_mille: u32,
    /// Most joints that may turn out too tight to go in, per mille: beyond it the order stops.
    pub tight_most_per_mille: u32,
    /// Most joints outside the wanted clearance, per mille: beyond it somebody is told.
    pub outside_most_per_mille: u32,
}

/// A screen as it stands on the top, by its area.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Screen {
    /// Mass for each unit of area.
    pub kg_per_m2: AreaMass,
    /// How far its two feet stand apart, per mille of its width.
    pub feet_apart_per_mille: u32,
    /// From the front to the rear of a foot.
    pub foot_mm: Length,
}

/// What people may carry.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Handling {
    /// Heaviest part for one person.
    pub one_person_kg: Mass,
    /// Longest part for one person.
    pub one_person_longest_mm: Length,
    /// Heaviest part for two people: at most two thirds of what both may carry alone.
    pub two_people_kg: Mass,
}

impl Handling {
    /// What so many people carry together: three carry half of what each of them may carry alone, and as many as four
    /// are not counted on.
    // Source: HSE L23, guidance to the Manual Handling Operations Regulations 1992, team handling.
    pub fn together(&self, people: u8) -> Mass {
        match people {
            0 | 1 => self.one_person_kg,
            2 => self.two_people_kg,
            _ => Mass::kg(self.one_person_kg.in_kg() * 3.0 / 2.0),
        }
    }

    /// How many people it takes for a part of that mass and length.
    pub fn people(&self, mass: Mass, longest: Length) -> u8 {
        let long = if longest > self.one_person_longest_mm { 2 } else { 1 };
        let heavy = (1..Self::PEOPLE_MOST).find(|people| mass <= self.together(*people)).unwrap_or(Self::PEOPLE_MOST);
        heavy.max(long)
    }

    /// Whether it is its length alone for which it takes as many.
    pub fn is_for_length(&self, mass: Mass, longest: Length) -> bool {
        self.people(mass, longest) > self.people(mass, Length::ZERO)
    }

    /// The most people who carry one thing.
    pub const PEOPLE_MOST: u8 = 3;
}

impl Build {
    /// Height of a slot of the back: a neck and the rise of its nose, with play over and under it.
    pub fn hook_slot(&self) -> Length {
        self.hook_neck_mm + self.hook_rise_mm + self.hook_play_mm * 2.0
    }

    /// Least distance from hook to hook: there is wood over each slot, with its reliefs, and a nose stays under the top.
    pub fn hook_least(&self) -> Length {
        self.hook_slot() + (self.ligament_mm + relief_radius(self.cutter_mm)).max(self.hook_rise_mm) * 2.0
    }

    /// From the front edge of a stop to its tabs at least: there is wood between their slots, with reliefs, those of stiles and the
    /// holes of pivots.
    pub(super) fn stop_tab_behind(&self) -> Length {
        let beside = self.clearance_loose_mm.max(self.pivot_clearance_mm) + relief_radius(self.cutter_mm);
        self.ligament_mm + beside - self.stop_gap_mm
    }

    /// From the front edge of a stop to its lower tab, and how long that is: as much is left behind it.
    pub fn stop_tab(&self) -> (Length, Length) {
        let from = self.stop_tab_behind().max(self.stop_depth_mm / 6.0);
        (from, self.stop_depth_mm - from * 2.0)
    }

    /// The same of its upper tab: it stands over the lower one, and the stop goes in either way round, unless a detent lies there.
    /// Then it stands behind that, up to the rear edge.
    pub fn stop_upper_tab(&self) -> (Length, Length) {
        if self.detent_rise_mm > Length::ZERO {
            let from = self.detent_root_mm + relief_radius(self.cutter_mm) * 2.0;
            return (from, self.stop_depth_mm - from);
        }
        self.stop_tab()
    }

    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            clearance_mm: fields.length("clearance_mm"),
            clearance_loose_mm: fields.length("clearance_loose_mm"),
            clearance_least_mm: fields.length("clearance_least_mm"),
            clearance_most_mm: fields.length("clearance_most_mm"),
            cutter_mm: fields.length("cutter_mm"),
            ease_mm: fields.length("ease_mm"),
            end_inset_mm: fields.length("end_inset_mm"),
            front_inset_mm: fields.length("front_inset_mm"),
            chase_mm: fields.length("chase_mm"),
            back_ear_mm: fields.length("back_ear_mm"),
            hook_apart_mm: fields.length("hook_apart_mm"),
            hook_neck_mm: fields.length("hook_neck_mm"),
            hook_nose_mm: fields.length("hook_nose_mm"),
            hook_rise_mm: fields.length("hook_rise_mm"),
            hook_play_mm: fields.length("hook_play_mm"),
            headroom_mm: fields.length("headroom_mm"),
            joints_at_once_most: fields.small("joints_at_once_most"),
            foot_recess_mm: fields.length("foot_recess_mm"),
            plinth_toe_mm: fields.length("plinth_toe_mm"),
            plinth_rear_mm: fields.length("plinth_rear_mm"),
            tab_mm: fields.length("tab_mm"),
            tab_inset_mm: fields.length("tab_inset_mm"),
            tab_short_mm: fields.length("tab_short_mm"),
            tab_stagger_mm: fields.length("tab_stagger_mm"),
            taper_across_mm: fields.length("taper_across_mm"),
            taper_along_mm: fields.length("taper_along_mm"),
            tab_chamfer_mm: fields.length("tab_chamfer_mm"),
            shelf_slot_per_mille: fields.whole("shelf_slot_per_mille", 1_000_000),
            pivot_inset_mm: fields.length("pivot_inset_mm"),
            pivot_clearance_mm: fields.length("pivot_clearance_mm"),
            leaf_gap_mm: fields.length("leaf_gap_mm"),
            leaf_rounding_mm: fields.length("leaf_rounding_mm"),
            finger_hole_mm: fields.length("finger_hole_mm"),
            stop_depth_mm: fields.length("stop_depth_mm"),
            stop_gap_mm: fields.length("stop_gap_mm"),
            stop_overlap_mm: fields.length("stop_overlap_mm"),
            detent_rise_mm: fields.length("detent_rise_mm"),
            detent_play_mm: fields.length("detent_play_mm"),
            detent_travel_mm: fields.length("detent_travel_mm"),
            detent_tongue_mm: fields.length("detent_tongue_mm"),
            detent_root_mm: fields.length("detent_root_mm"),
            detent_slope_per_mille: fields.whole("detent_slope_per_mille", 1_000_000),
            ligament_mm: fields.length("ligament_mm"),
            sheet_trim_mm: fields.length("sheet_trim_mm"),
        }
    }
}

impl Strength {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            sag_span_over: fields.number("sag_span_over"),
            creep_factor: fields.number("creep_factor"),
            lasting_share: fields.number("lasting_share"),
            leaf_widest: fields.number("leaf_widest"),
            leaf_narrowest: fields.number("leaf_narrowest"),
            leaf_least_mm: fields.length("leaf_least_mm"),
            leaf_most_kg: Mass::kg(fields.number("leaf_most_kg")),
            bay_least_mm: fields.length("bay_least_mm"),
            row_least_mm: fields.length("row_least_mm"),
            lasting_strength: fields.number("lasting_strength"),
            material_factor: fields.number("material_factor"),
            buckling_factor: fields.number("buckling_factor"),
            tip_factor: fields.number("tip_factor"),
            carpet_mm: fields.length("carpet_mm"),
            tether_push_n: Force::newton(fields.number("tether_push_n")),
            knock_n: Force::newton(fields.number("knock_n")),
            push_n: Force::newton(fields.number("push_n")),
            push_span_over: fields.number("push_span_over"),
            knock_strength: fields.number("knock_strength"),
            detent_openings: fields.whole("detent_openings", u32::MAX),
        }
    }
}

impl FitLimits {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            cut_mm: fields.length("cut_mm"),
            within_batch_mm: fields.length("within_batch_mm"),
            film_per_mille: fields.whole("film_per_mille", 1000),
            slot_coat_per_mille: fields.whole("slot_coat_per_mille", 1000),
            tight_most_per_mille: fields.whole("tight_most_per_mille", 1000),
            outside_most_per_mille: fields.whole("outside_most_per_mille", 1000),
        }
    }
}

impl Screen {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            kg_per_m2: AreaMass::kg_per_m2(fields.number("kg_per_m2")),
            feet_apart_per_mille: fields.whole("feet_apart_per_mille", 1000),
            foot_mm: fields.length("foot_mm"),
        }
    }
}

impl Handling {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            one_person_kg: Mass::kg(fields.number("one_person_kg")),
            one_person_longest_mm: fields.length("one_person_longest_mm"),
            two_people_kg: Mass::kg(fields.number("two_people_kg")),
        }
    }
}

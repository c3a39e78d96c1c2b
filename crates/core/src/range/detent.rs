//! What keeps a leaf shut: a tongue at the head of its stop, cut free by a slit, that reaches forwards over the leaf's upper free
//! corner, where that is cut away, and ends in a nose before the leaf.
//!
//! The leaf hangs clear of it. Opened, it lifts the nose by what the two overlap, and the tongue bends up towards the top, which
//! stops it before it breaks. A leaf leans by what its pivots have play, always the same way: its corner is cut so much less deep.

use super::{Build, relief_radius};
use crate::units::quantity::Length;

/// The tongue of a stop. Heights go down from the stop's upper edge, depths from its front edge: inwards, or out to the front.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Detent {
    /// From the stop's upper edge, where the top lies, to the tongue.
    pub travel: Length,
    /// Height of the tongue.
    pub tongue: Length,
    /// Height of the slit under it: what the cutter needs.
    pub slit: Length,
    /// How far the slit goes in.
    pub root: Length,
    /// How far out the front face of the leaf is.
    pub before: Length,
    /// How far out the nose begins: nothing of it lies nearer to the leaf.
    pub nose: Length,
    /// How far the nose goes down from the tongue.
    pub rise: Length,
    /// How much of that overlaps the leaf as it hangs.
    pub overlap: Length,
    /// Rise over run of the nose's flanks.
    pub slope: f64,
    /// Sine and cosine of the angle that they make with the level.
    angle: (f64, f64),
}

/// Sine and cosine of the angle that a slope makes with the level.
fn angle(slope: f64) -> (f64, f64) {
    let long = libm::hypot(1.0, slope);
    (slope / long, 1.0 / long)
}

impl Detent {
    /// That of a stop behind a leaf so thick; `None` if the range has none.
    pub fn of(build: &Build, body: Length) -> Option<Self> {
        let before = build.stop_gap_mm + body;
        let slope = f64::from(build.detent_slope_per_mille) / 1000.0;
        (build.detent_rise_mm > Length::ZERO).then(|| Self {
            travel: build.detent_travel_mm,
            tongue: build.detent_tongue_mm,
            slit: relief_radius(build.cutter_mm) * 2.0,
            root: build.detent_root_mm,
            before,
            nose: before + build.pivot_clearance_mm,
            rise: build.detent_rise_mm + build.detent_play_mm,
            overlap: build.detent_rise_mm,
            slope,
            angle: angle(slope),
        })
    }

    /// Radius of the ends of the slit and of the gap over the tongue: those of the cutter.
    pub fn relief(self) -> Length {
        self.slit / 2.0
    }

    /// How far in the tongue is as high as it is: from there it bends.
    pub fn free(self) -> Length {
        self.root - self.relief()
    }

    /// Radius of the nose's tip.
    pub fn round(self) -> Length {
        self.tongue / 3.0
    }

    /// From the stop's upper edge to the slit.
    pub fn under(self) -> Length {
        self.travel + self.tongue
    }

    /// From there to the tip of the nose.
    pub fn deep(self) -> Length {
        self.under() + self.rise
    }

    /// From there to the wood under the slit.
    pub fn wood(self) -> Length {
        self.under() + self.slit
    }

    /// How far out the rear flank of the nose begins, behind its fillet, how far out and down it ends, and how far out the tip is.
    pub(crate) fn rear_flank(self) -> (Length, (Length, Length), Length) {
        let (sine, cosine) = self.angle;
        // A fillet takes r tan(α/2) of both walls, and tan(α/2) is (1 − cos α) / sin α.
        let foot = self.nose + self.fillet();
        let low = self.rise - self.round() * (1.0 - cosine);
        let end = foot + low / self.slope;
        (foot, (end, self.under() + low), end + self.round() * sine)
    }

    /// What the fillet before the nose takes of the tongue's underside and of the flank.
    pub(crate) fn fillet(self) -> Length {
        let (sine, cosine) = self.angle;
        self.relief() * ((1.0 - cosine) / sine)
    }

    /// The least rise that has room for the fillet and the rounded tip.
    pub(crate) fn rise_least(self) -> Length {
        (self.relief() + self.round()) * (1.0 - self.angle.1)
    }

    /// How far out and down the front flank of the nose ends, where the round end of the tongue begins, and how far out the middle
    /// of that is.
    pub(crate) fn front_flank(self) -> ((Length, Length), Length) {
        let ((sine, cosine), half) = (self.angle, self.tongue / 2.0);
        let (_, (_, low), tip) = self.rear_flank();
        let up = self.travel + half * (1.0 + cosine);
        let out = tip + self.round() * sine + (low - up) / self.slope;
        ((out, up), out - half * sine)
    }

    /// How far the tongue reaches out.
    pub fn out(self) -> Length {
        self.front_flank().1 + self.tongue / 2.0
    }

    /// From where it bends to the tip of its nose.
    pub fn lever(self) -> Length {
        self.free() + self.rear_flank().2
    }

    /// How high a tongue is whose lever is so many times its height, where all else stays: the nose's tip is rounded by a third of
    /// the height, which moves it out by as much of that for any height.
    pub(crate) fn tongue_for(self, times: f64) -> Length {
        let (sine, cosine) = self.angle;
        let per_height = (sine - (1.0 - cosine) / self.slope) / 3.0;
        (self.lever() - self.tongue * per_height) / (times - per_height)
    }

    /// From the tip of the nose to where the round end of the tongue begins, which meets the top first.
    pub fn beyond(self) -> Length {
        self.front_flank().1 - self.rear_flank().2
    }

    /// What of the travel is left at the nose, since the tongue meets the top beyond it first: a straight line on from the
    /// nose, with the slope that a rod has under a force there, 3 / 2 of what it gives over its length.
    pub fn lifts_by(self) -> Length {
        self.travel / (1.0 + 1.5 * (self.beyond() / self.lever()))
    }
}

/// By how much the free edge of a leaf hangs lower than it is drawn: its upper pivot lies at one side of its hole, its lower one at
/// the other.
///
/// ```
/// use slotwright_core::range::leans;
/// use slotwright_core::units::quantity::Length;
/// // 0.4 mm of play over 500 mm of height lets what is 400 mm beside the pivots hang 0.32 mm lower.
/// let [play, beside, height] = [0.4, 400.0, 500.0].map(Length::mm);
/// assert!((leans(play, beside, height) - Length::mm(0.32)).abs() < Length::mm(1e-9));
/// ```
pub fn leans(play: Length, beside: Length, height: Length) -> Length {
    play * (beside / height)
}

#[cfg(test)]
mod tests;

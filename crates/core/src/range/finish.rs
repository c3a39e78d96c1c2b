//! Finishes: coats, films and colour.

use serde::Serialize;

use super::{Fields, Key};
use crate::units::money::Money;
use crate::units::quantity::{Density, Length};

/// A dry pigmented film of that thickness lets half the light through.
// Common practice: water-based colour on birch, in three or four coats, lets the grain show. The figure is chosen for the eye.
const HALF: Length = Length::mm(0.06);

/// A finish of the range.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Finish {
    /// Short name.
    pub key: Key,
    /// Name as shown.
    pub name: String,
    /// Clear or opaque.
    pub look: Look,
    /// Colour of the dry film for the screen, `#rrggbb`; for a clear film the colour that the wood takes.
    #[cfg_attr(feature = "schema", schemars(extend("pattern" = "^#[0-9A-Fa-f]{6}$")))]
    pub colour: String,
    /// Coats on the faces before the sheet is cut.
    pub coats_before: u8,
    /// Coats after cutting, on faces and edges.
    pub coats_after: u8,
    /// Wet film of one coat.
    pub wet_film_um: f64,
    /// Volume solids, parts of a hundred.
    pub volume_solids_percent: f64,
    /// From a coat on one face to the moment when it can be turned and coated on the other one.
    pub turn_after_minutes: u32,
    /// From a coat on the other face to the next coat.
    pub recoat_after_minutes: u32,
    /// Density of the dry film.
    pub film_kg_per_m3: Density,
    /// Share of the sprayed material that misses the work, per mille.
    pub loss_per_mille: u32,
    /// Price of one litre, without tax.
    pub litre_minor: Money,
    /// Whether it, or its hardener, has 0.1 % or more of diisocyanates by weight, if that is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub diisocyanates: Option<bool>,
}

impl Finish {
    /// Dry film on one face after all coats: coats × wet film × volume solids.
    // Source: coating practice; film thickness as in ISO 2808.
    pub fn dry_film(&self) -> Length {
        let wet = Length::mm(self.wet_film_um / 1000.0);
        wet * (f64::from(self.coats()) * self.volume_solids_percent / 100.0)
    }

    /// Dry film of the coats before cutting alone: what a sheet has on each face when it is cut.
    pub fn film_before(&self) -> Length {
        self.dry_film() - self.film_after()
    }

    /// Dry film of the coats after cutting alone.
    pub fn film_after(&self) -> Length {
        Length::mm(self.wet_film_um / 1000.0) * (f64::from(self.coats_after) * self.volume_solids_percent / 100.0)
    }

    /// Minutes that so many coats on both faces have to dry before the last of them is on: face, other face, next coat.
    pub fn drying_minutes(&self, coats: u8) -> u32 {
        let each = self.turn_after_minutes.saturating_add(self.recoat_after_minutes);
        u32::from(coats).saturating_mul(each).saturating_sub(self.recoat_after_minutes)
    }

    /// How much of the wood's own light and dark is seen through such a film of it, from 0 to 1: all through a clear one.
    /// For pictures alone: no measured hiding power.
    // Source: Kubelka, Munk, Ein Beitrag zur Optik der Farbanstriche, 1931: a film that scatters and absorbs nothing lets
    // 1/(1 + S·X) through, here twice.
    pub fn shows(&self, film: Length) -> f64 {
        let through = HALF / (HALF + film);
        match self.look {
            Look::Clear => 1.0,
            Look::Opaque => through * through,
        }
    }

    /// How light it looks, from 0, black, to 1, white.
    // Source: relative luminance as in WCAG 2.2, from sRGB by IEC 61966-2-1.
    pub fn luminance(&self) -> f64 {
        let digits = self.colour.get(1..).and_then(|digits| u32::from_str_radix(digits, 16).ok()).unwrap_or_default();
        let part = |shift: u32| {
            let value = f64::from((digits >> shift) & 0xff) / 255.0;
            if value <= 0.040_45 { value / 12.92 } else { libm::pow((value + 0.055) / 1.055, 2.4) }
        };
        0.2126 * part(16) + 0.7152 * part(8) + 0.0722 * part(0)
    }

    /// All coats on a face.
    pub fn coats(&self) -> u16 {
        u16::from(self.coats_before) + u16::from(self.coats_after)
    }
}

/// Whether the grain shows through.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Look {
    /// The wood shows.
    Clear,
    /// The wood is covered.
    Opaque,
}

impl Finish {
    pub(super) fn read(fields: &mut Fields<'_>) -> Self {
        Self {
            key: fields.key("key"),
            name: fields.text("name"),
            look: fields.word("look", &[("clear", Look::Clear), ("opaque", Look::Opaque)], Look::Clear),
            colour: fields.text("colour"),
            coats_before: fields.small("coats_before"),
            coats_after: fields.small("coats_after"),
            wet_film_um: fields.number("wet_film_um"),
            volume_solids_percent: fields.number("volume_solids_percent"),
            turn_after_minutes: fields.whole("turn_after_minutes", 100_000),
            recoat_after_minutes: fields.whole("recoat_after_minutes", 100_000),
            film_kg_per_m3: Density::kg_per_m3(fields.number("film_kg_per_m3")),
            loss_per_mille: fields.whole("loss_per_mille", 1000),
            litre_minor: fields.money("litre_minor"),
            diisocyanates: fields.has("diisocyanates").then(|| fields.truth("diisocyanates")),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::range::Range;

    /// Under each coat more is hidden, and most on the faces: edges have the coats after cutting alone.
    #[test]
    fn a_pigmented_film_hides_the_wood_coat_by_coat() {
        let range = Range::parse(include_str!("../../../../web/ranges/fenland.toml")).unwrap();
        for finish in &range.finishes {
            let (faces, edges) = (finish.shows(finish.dry_film()), finish.shows(finish.film_after()));
            match finish.look {
                Look::Clear => assert!(faces >= 1.0 && edges >= 1.0, "{}", finish.key),
                Look::Opaque => assert!(0.05 < faces && faces < edges / 2.0 && edges < 0.5, "{faces} {edges}"),
            }
        }
    }
}

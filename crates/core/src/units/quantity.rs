//! Quantities: the type is the quantity, the constructor names the unit.
//!
//! Every value is finite; there is no NaN behind these types. A computation that would leave the numbers (0/0,
//! overflow) gives the largest number, never zero, so that limits stop it:
//!
//! ```
//! use slotwright_core::units::quantity::Length;
//! assert_eq!((Length::mm(1.0) / 0.0).in_mm(), f64::MAX);
//! assert_eq!(Length::mm(f64::NEG_INFINITY).in_mm(), f64::MIN);
//! ```

use core::fmt;
use core::iter::Sum;
use core::ops::{Add, AddAssign, Div, Mul, Neg, Sub};

use serde::{Serialize, Serializer};

use crate::units::rounding::round_half_away;

/// Finite values only; see [`largest`] for anything else.
///
/// No range that parsed leads beyond the numbers, whatever is chosen: the tests of this crate stop here if one does.
pub(crate) const fn finite(value: f64) -> f64 {
    #[cfg(test)]
    assert!(value.is_finite(), "a figure is no number");
    if value.is_finite() { value } else { largest(value) }
}

/// What stands for a value beyond the numbers: the largest of its sign, which no limit lets pass. Zero would pass
/// for nothing.
#[cold]
#[inline(never)]
const fn largest(value: f64) -> f64 {
    if value < 0.0 { f64::MIN } else { f64::MAX }
}

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $from:ident, $to:ident, $unit:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            /// Nothing.
            pub const ZERO: Self = Self(0.0);

            #[doc = concat!("A value in ", $unit, "; what is not finite becomes the largest number.")]
            pub const fn $from(value: f64) -> Self {
                Self(finite(value))
            }

            #[doc = concat!("The value in ", $unit, ".")]
            pub const fn $to(self) -> f64 {
                self.0
            }

            /// The size without its sign.
            #[must_use]
            pub fn abs(self) -> Self {
                Self(self.0.abs())
            }

            /// The smaller of the two.
            #[must_use]
            pub fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }

            /// The larger of the two.
            #[must_use]
            pub fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }

            /// Order over all values, for sorting.
            pub fn total_cmp(&self, other: &Self) -> core::cmp::Ordering {
                self.0.total_cmp(&other.0)
            }
        }

        impl fmt::Debug for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, concat!("{} ", $unit), self.0)
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(finite(self.0 + other.0))
            }
        }

        impl AddAssign for $name {
            fn add_assign(&mut self, other: Self) {
                *self = *self + other;
            }
        }

        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(finite(self.0 - other.0))
            }
        }

        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }

        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(finite(self.0 * factor))
            }
        }

        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(finite(self.0 / divisor))
            }
        }

        impl Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                finite(self.0 / other.0)
            }
        }

        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_f64(self.0)
            }
        }

        #[cfg(feature = "schema")]
        impl schemars::JsonSchema for $name {
            fn inline_schema() -> bool {
                true
            }

            fn schema_name() -> alloc::borrow::Cow<'static, str> {
                stringify!($name).into()
            }

            fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                schemars::json_schema!({ "type": "number", "description": concat!("in ", $unit) })
            }
        }

        impl Sum for $name {
            fn sum<I: Iterator<Item = Self>>(values: I) -> Self {
                values.fold(Self::ZERO, Add::add)
            }
        }
    };
}

quantity!(
    /// A computed length.
    ///
    /// ```
    /// use slotwright_core::units::quantity::Length;
    /// assert_eq!((Length::mm(1220.0) * Length::mm(2440.0)).in_m2(), 2.9768);
    /// ```
    Length, mm, in_mm, "mm"
);
quantity!(
    /// A computed area.
    Area, mm2, in_mm2, "mm²"
);
quantity!(
    /// A mass.
    Mass, kg, in_kg, "kg"
);
quantity!(
    /// A force.
    Force, newton, in_newton, "N"
);

impl Length {
    /// The length in metres.
    pub const fn in_m(self) -> f64 {
        self.0 / 1000.0
    }

    /// The length rounded to a whole 0.01 mm, half away from zero: what documents show.
    pub fn to_hundredth_mm(self) -> f64 {
        round_half_away(self.0 * 100.0) / 100.0
    }
}

impl Area {
    /// The area in square metres.
    pub const fn in_m2(self) -> f64 {
        self.0 / 1_000_000.0
    }
}

impl Mass {
    /// The mass rounded to whole grams, half away from zero: what documents state.
    #[expect(clippy::cast_possible_truncation, reason = "a rounded finite value; `as` saturates")]
    pub fn to_gram(self) -> i64 {
        round_half_away(self.0 * 1000.0) as i64
    }

    /// The weight of this mass under standard gravity, 9.80665 m/s² (ISO 80000-3:2006, 3-9.1).
    pub fn weight(self) -> Force {
        Force::newton(self.in_kg() * 9.806_65)
    }
}

impl Mul for Length {
    type Output = Area;
    fn mul(self, other: Self) -> Area {
        Area::mm2(self.0 * other.0)
    }
}

impl Div<Length> for Area {
    type Output = Length;
    fn div(self, other: Length) -> Length {
        Length::mm(self.0 / other.0)
    }
}

quantity!(
    /// Mass per volume.
    Density, kg_per_m3, in_kg_per_m3, "kg/m³"
);
quantity!(
    /// Mass spread over an area: what a shelf is laid out for.
    AreaMass, kg_per_m2, in_kg_per_m2, "kg/m²"
);
quantity!(
    /// A modulus of elasticity.
    Stiffness, n_per_mm2, in_n_per_mm2, "N/mm²"
);

quantity!(
    /// A stress, or what a material bears of it.
    Stress, n_per_mm2, in_n_per_mm2, "N/mm²"
);

impl Force {
    /// This force spread over an area.
    pub fn over(self, area: Area) -> Stress {
        Stress::n_per_mm2(self.0 / area.0)
    }
}

impl Density {
    /// The mass of a flat part of this density.
    pub fn mass_of(self, area: Area, thickness: Length) -> Mass {
        Mass::kg(self.0 * area.in_m2() * thickness.in_m())
    }
}

/// What a person picks: a whole number of tenths of a millimetre.
///
/// Written as millimetres with at most one decimal.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(into = "f64")]
pub struct Dim(i32);

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Dim {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> alloc::borrow::Cow<'static, str> {
        "Dim".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "type": "number", "minimum": -100_000, "maximum": 100_000, "description": "in mm, at most one decimal",
        })
    }
}

impl Dim {
    /// Larger than any sheet by far; larger input is refused where it is read.
    pub const LARGEST: Self = Self(1_000_000);

    /// Whole millimetres.
    pub const fn mm(value: i32) -> Self {
        Self(value.saturating_mul(10))
    }

    /// Whole tenths of a millimetre.
    pub const fn tenths(value: i32) -> Self {
        Self(value)
    }

    /// The value in tenths of a millimetre.
    pub const fn in_tenths(self) -> i32 {
        self.0
    }

    /// The most whole tenths that a length holds.
    #[expect(clippy::cast_possible_truncation, reason = "`as` saturates")]
    pub(crate) fn within(length: Length) -> Self {
        Self(libm::floor(length.in_mm() * 10.0) as i32)
    }

    /// Whether it is none.
    #[expect(clippy::trivially_copy_pass_by_ref, reason = "as serde asks")]
    pub(crate) const fn is_zero(&self) -> bool {
        self.0 == 0
    }

    /// As a computed length: the one place where picked becomes computed.
    pub const fn length(self) -> Length {
        Length::mm(self.0 as f64 / 10.0)
    }
}

/// Millimetres with at most one decimal, as files write them.
impl fmt::Display for Dim {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (whole, tenth) = (self.0.unsigned_abs() / 10, self.0.unsigned_abs() % 10);
        let sign = if self.0 < 0 { "-" } else { "" };
        if tenth == 0 { write!(f, "{sign}{whole}") } else { write!(f, "{sign}{whole}.{tenth}") }
    }
}

/// A number that is no whole count of tenths of a millimetre, or is out of all proportion.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NotADim(pub f64);

impl TryFrom<f64> for Dim {
    type Error = NotADim;

    #[expect(clippy::cast_possible_truncation, reason = "a whole number within ±1e6")]
    fn try_from(mm: f64) -> Result<Self, NotADim> {
        let tenths = round_half_away(mm * 10.0);
        // To the bit: what was written is what is kept. Zero may have a sign; NaN is equal to nothing.
        let kept = tenths / 10.0;
        let whole = kept <= mm && mm <= kept;
        let within = tenths.abs() <= f64::from(Self::LARGEST.0);
        if whole && within { Ok(Self(tenths as i32)) } else { Err(NotADim(mm)) }
    }
}

impl From<Dim> for f64 {
    fn from(dim: Dim) -> Self {
        Self::from(dim.0) / 10.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_not_finite_is_never_zero() {
        for (beyond, expected) in
            [(f64::NAN, f64::MAX), (f64::INFINITY, f64::MAX), (f64::NEG_INFINITY, f64::MIN), (1e308 * 10.0, f64::MAX)]
        {
            assert_eq!(largest(beyond).to_bits(), expected.to_bits());
        }
        assert_eq!(Area::ZERO, Length::mm(1.0) * Length::mm(0.0));
    }

    #[test]
    #[should_panic(expected = "a figure is no number")]
    fn these_tests_stop_where_a_figure_leaves_the_numbers() {
        let _ = Length::mm(1.0) / Length::ZERO;
    }

    #[test]
    fn a_dim_takes_whole_tenths_only() {
        assert_eq!(Dim::try_from(1640.5), Ok(Dim::tenths(16_405)));
        // A hundred-thousandth of a millimetre is not nothing.
        for bad in [0.05, 1e-14, 30.000_000_001, f64::NAN, f64::INFINITY, 1e9, -1e9] {
            assert!(Dim::try_from(bad).is_err(), "{bad}");
        }
        assert_eq!(f64::from(Dim::tenths(16_403)).to_string(), "1640.3");
        assert!(
            (-1_000_000..=1_000_000)
                .all(|tenths| Dim::try_from(f64::from(Dim::tenths(tenths))) == Ok(Dim::tenths(tenths)))
        );
    }

    /// The wood trade weighs sheets by area, nominal thickness and density.
    // Source: merchant's weight sheet for birch plywood, see tests/published for the whole table.
    #[test]
    fn a_sheet_of_18_mm_weighs_36_7_kg() {
        let area = Length::mm(1220.0) * Length::mm(2440.0);
        let mass = Density::kg_per_m3(685.0).mass_of(area, Length::mm(18.0));
        assert!((mass.in_kg() - 36.7).abs() < 0.05, "{mass:?}");
    }
}

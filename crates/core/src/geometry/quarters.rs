//! Turns by quarters.

use crate::units::quantity::Length;

/// A turn about the origin by so many quarters, counter-clockwise.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Quarters {
    /// Not turned.
    #[default]
    None,
    /// To the left.
    One,
    /// Upside down.
    Two,
    /// To the right.
    Three,
}

impl Quarters {
    /// Both turns, one after the other.
    ///
    /// ```
    /// # use slotwright_core::geometry::quarters::Quarters;
    /// assert_eq!(Quarters::Two.and(Quarters::Three), Quarters::One);
    /// ```
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        match (self.count() + other.count()) % 4 {
            0 => Self::None,
            1 => Self::One,
            2 => Self::Two,
            _ => Self::Three,
        }
    }

    /// How many, 0 to 3.
    pub const fn count(self) -> u16 {
        match self {
            Self::None => 0,
            Self::One => 1,
            Self::Two => 2,
            Self::Three => 3,
        }
    }

    /// Whether what lay along now lies across.
    pub const fn is_across(self) -> bool {
        matches!(self, Self::One | Self::Three)
    }

    /// Where a place goes that is so far to the right and up.
    pub fn turn(self, (u, v): (Length, Length)) -> (Length, Length) {
        match self {
            Self::None => (u, v),
            Self::One => (-v, u),
            Self::Two => (-u, -v),
            Self::Three => (v, -u),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn four_quarters_are_none() {
        let at = (Length::mm(3.0), Length::mm(7.0));
        let mut turned = at;
        let mut quarters = Quarters::None;
        for count in 1..=4 {
            quarters = quarters.and(Quarters::One);
            turned = Quarters::One.turn(turned);
            assert_eq!((quarters.count(), quarters.turn(at)), (count % 4, turned));
        }
        assert_eq!(turned, at);
    }
}

//! What the revised NIOSH lifting equation recommends for one person who lifts with both hands. It is information for
//! who packs and carries, not a limit: the range says what people may carry, and local rules do.
//!
//! RWL = LC · HM · VM · DM · AM · FM · CM, and LI = mass / RWL: over 1 the risk rises, over 3 it is high.
// Source: Applications Manual for the Revised NIOSH Lifting Equation, DHHS (NIOSH) 94-110 (1994, revised 2021), 1.1 and
// tables 1 to 7.

use crate::units::quantity::{Length, Mass};

/// The load constant.
const LOAD: f64 = 23.0;

/// Above that lifting index the risk is high for many workers.
// Source: Waters, Putz-Anderson and Garg, Applications Manual for the Revised NIOSH Lifting Equation, DHHS (NIOSH) publication
// 94-110, 1994, section on the lifting index; from memory.
pub const HIGH: f64 = 3.0;

/// How hands hold what they lift.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Coupling {
    /// Handles, or a small box with hand-holds.
    Good,
    /// Fingers bent under a small box.
    Fair,
    /// A box over 40 cm long or over 30 cm high, or what has no good grip.
    Poor,
}

/// A lift from where it begins to where it ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lift {
    /// From the middle between the ankles to the hands, forwards.
    pub forward: Length,
    /// Height of the hands over the floor where it begins.
    pub height: Length,
    /// How far it goes up or down.
    pub travel: Length,
    /// By how many degrees the trunk is turned.
    pub turned_degrees: f64,
    /// The multiplier for how often it is done; 1 for up to one lift in five minutes, for up to an hour.
    pub frequency: f64,
    /// How hands hold it.
    pub coupling: Coupling,
}

impl Lift {
    /// A package that somebody picks up now and then and straight ahead, from the floor to the height of the knuckles: it is held
    /// at the ends of its shorter side, and boxes of parts are long.
    // Source: the same manual, 1.3: H = 25 + W / 2 cm where hands begin below 25 cm, W is the depth of the box before the
    // body; coupling by its decision tree; the height of the knuckles is about 75 cm.
    pub fn of_package(wide: Length, high: Length) -> Self {
        let (knuckles, height) = (Length::mm(750.0), high / 2.0);
        Self {
            forward: Length::mm(250.0) + wide / 2.0,
            height,
            travel: knuckles - height,
            turned_degrees: 0.0,
            frequency: 1.0,
            coupling: Coupling::Poor,
        }
    }

    /// The recommended weight limit; nothing beyond the equation's bounds, where nobody should lift at all.
    pub fn recommended(&self) -> Mass {
        let cm = |length: Length| length.in_mm() / 10.0;
        let (forward, height, travel) = (cm(self.forward), cm(self.height), cm(self.travel).abs());
        let within = |value: f64, most: f64, multiplier: f64| if value > most { 0.0 } else { multiplier };
        let horizontal = within(forward, 63.0, 25.0 / forward.max(25.0));
        let vertical = within(height, 175.0, 1.0 - 0.003 * (height - 75.0).abs());
        let distance = within(travel, 175.0, 0.82 + 4.5 / travel.max(25.0));
        let asymmetry = within(self.turned_degrees, 135.0, 1.0 - 0.0032 * self.turned_degrees);
        let coupling = match (self.coupling, height < 75.0) {
            (Coupling::Good, _) | (Coupling::Fair, false) => 1.0,
            (Coupling::Fair, true) => 0.95,
            (Coupling::Poor, _) => 0.90,
        };
        Mass::kg(LOAD * horizontal * vertical * distance * asymmetry * self.frequency * coupling)
    }

    /// The lifting index of a mass; infinite where nothing is recommended.
    pub fn index(&self, mass: Mass) -> f64 {
        mass.in_kg() / self.recommended().in_kg()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const INCH: f64 = 25.4;

    fn close(found: f64, expected: f64, share: f64) {
        assert!((found - expected).abs() <= expected * share, "{found} is not {expected}");
    }

    /// Examples of the manual, in inches and pounds. Its metric form has 25 cm for 10 in and 23 kg for 51 lb, which is 2.2 % less,
    /// and its tables round each of six multipliers to two decimals, in these examples up by as much as 3.5 % in all.
    // Source: the same manual, examples 1 to 4: 4 read in another text, 1 to 3 from memory with the arithmetic checked.
    #[test]
    fn examples_of_the_manual() {
        let inches = |forward, height, travel, turned_degrees, frequency, coupling| Lift {
            forward: Length::mm(forward * INCH),
            height: Length::mm(height * INCH),
            travel: Length::mm(travel * INCH),
            turned_degrees,
            frequency,
            coupling,
        };
        for (lift, pounds) in [
            (inches(23.0, 15.0, 49.0, 0.0, 1.0, Coupling::Fair), 16.3),
            (inches(23.0, 64.0, 49.0, 0.0, 1.0, Coupling::Fair), 14.5),
            (inches(15.0, 27.0, 17.0, 0.0, 1.0, Coupling::Poor), 28.0),
            (inches(20.0, 10.0, 17.0, 0.0, 1.0, Coupling::Poor), 18.1),
            (inches(18.0, 15.0, 21.0, 45.0, 1.0, Coupling::Fair), 18.9),
            (inches(10.0, 22.0, 37.0, 0.0, 0.88, Coupling::Fair), 34.9),
            (inches(20.0, 59.0, 37.0, 0.0, 0.88, Coupling::Fair), 15.2),
        ] {
            let found = lift.recommended().in_kg() / 0.453_592_37;
            assert!((pounds * (1.0 - 0.057)..pounds).contains(&found), "{found} is not {pounds}");
        }
    }

    // Worked from the metric formula: H 40, V 10, D 65 cm, fair: 23 × 0.625 × 0.805 × 0.8892 × 0.95 = 9.775 kg.
    #[test]
    fn a_box_from_near_the_floor() {
        let [forward, height, travel] = [400.0, 100.0, 650.0].map(Length::mm);
        let lift = Lift { forward, height, travel, turned_degrees: 0.0, frequency: 1.0, coupling: Coupling::Fair };
        close(lift.recommended().in_kg(), 9.775, 1e-3);
        close(lift.index(Mass::kg(9.775)), 1.0, 1e-3);
    }

    #[test]
    fn beyond_its_bounds_nothing_is_recommended() {
        let lift = Lift::of_package(Length::mm(300.0), Length::mm(100.0));
        assert!(lift.recommended() > Mass::ZERO);
        for beyond in [
            Lift { forward: Length::mm(640.0), ..lift },
            Lift { height: Length::mm(1760.0), ..lift },
            Lift { travel: Length::mm(1760.0), ..lift },
            Lift { turned_degrees: 136.0, ..lift },
        ] {
            assert!(beyond.recommended() <= Mass::ZERO && beyond.index(Mass::kg(1.0)).is_infinite());
        }
    }
}

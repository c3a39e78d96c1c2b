//! How a finish looks on birch plywood: its colours as light, and how much of the grain is seen through it.

use slotwright_core::range::{Finish, Look};

use crate::colour::linear;

/// Birch under a clear film, under which the others lie.
// Chosen for the eye.
const BIRCH: &str = "#e3c792";
/// What plies throw back of a face's red, green and blue: one that lies along the edge, and one whose end grain is cut,
/// which drinks more of the finish.
// Chosen for the eye.
const PLIES: [[f64; 3]; 2] = [[0.97, 0.92, 0.86], [0.52, 0.4, 0.3]];

/// The colours of a finish on a part, red, green and blue from 0 to 1, linear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Appearance {
    /// A face.
    pub face: [f64; 3],
    /// Plies in an edge: one that lies along it, and one whose end grain is cut.
    pub plies: [[f64; 3]; 2],
    /// How much of the grain's light and dark is seen on a face, from 0 to 1.
    pub grain: f64,
}

impl Appearance {
    /// The colours of a finish. Edges have the coats after cutting alone, so their plies are seen through less film.
    pub fn of(finish: &Finish) -> Self {
        let face = linear(&finish.colour);
        let wood = match finish.look {
            Look::Clear => face,
            Look::Opaque => linear(BIRCH),
        };
        let shows = finish.shows(finish.film_after());
        let plies = PLIES.map(|tones| {
            let bare = product(wood, tones);
            let mut seen = face;
            // In even steps of light, as a glaze does it: a trace of wood does not turn black to brown.
            for (film, bare) in seen.iter_mut().zip(bare) {
                *film = libm::pow(*film, 1.0 - shows) * libm::pow(bare, shows);
            }
            seen
        });
        Self { face, plies, grain: finish.shows(finish.dry_film()) }
    }

    /// An edge from so far that plies are not told apart.
    pub fn edge(&self) -> [f64; 3] {
        let [along, across] = self.plies;
        let mut mean = along;
        mean.iter_mut().zip(across).for_each(|(mean, across)| *mean = mean.midpoint(across));
        mean
    }
}

fn product(mut colour: [f64; 3], shares: [f64; 3]) -> [f64; 3] {
    colour.iter_mut().zip(shares).for_each(|(colour, share)| *colour *= share);
    colour
}

#[cfg(test)]
mod tests {
    use slotwright_core::range::Range;

    use super::*;

    /// How far two colours are from each other in light or in hue: the largest contrast of their reds, greens and blues, each as
    /// WCAG 2.2 has it for light.
    fn contrast(one: [f64; 3], other: [f64; 3]) -> f64 {
        let pairs = one.into_iter().zip(other).map(|(one, other)| (one + 0.05, other + 0.05));
        pairs.map(|(one, other)| one.max(other) / one.min(other)).fold(1.0, f64::max)
    }

    /// Under every finish edges are told from faces and plies from each other; the grain is seen, and all of it where it is clear.
    #[test]
    fn edges_plies_and_grain_are_seen_under_every_finish() {
        let range = Range::parse(include_str!("../../../web/ranges/fenland.toml")).unwrap();
        for finish in &range.finishes {
            let appearance = Appearance::of(finish);
            let [along, across] = appearance.plies;
            assert!(contrast(appearance.face, appearance.edge()) > 1.25, "{}: {appearance:?}", finish.key);
            assert!(contrast(along, across) > 1.2, "{}: {appearance:?}", finish.key);
            let clear = finish.look == Look::Clear;
            assert!(
                if clear { appearance.grain >= 1.0 } else { (0.05..0.3).contains(&appearance.grain) },
                "{appearance:?}"
            );
        }
    }
}

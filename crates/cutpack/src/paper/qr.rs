//! QR codes as pictures.

use std::collections::BTreeMap;

use qrcodegen::{QrCode, QrCodeEcc};
use slotwright_core::units::quantity::Length;

use crate::vector::{Colour, Fill, Spot, Step, Vector, rectangle};

/// Light modules on each side of a code, without which readers do not find it. Source: ISO/IEC 18004, quiet zone.
const QUIET: i32 = 4;

/// The code of a text, so wide with the white around it; none if no code holds that much. A quarter of it may be
/// torn or stained (level Q), or less if the text is long.
///
/// Common practice: modules of at least 0.33 mm are read from a label by any phone; see [`module`].
pub fn code(text: &str, side: Length) -> Option<Vector> {
    let code = encoded(text)?;
    let module = side / f64::from(code.size() + 2 * QUIET);
    let place = |(x, y): Dot| Spot::new(module * f64::from(x + QUIET), module * f64::from(y + QUIET));
    let mut steps = Vec::new();
    for round in rounds(&code) {
        let (first, others) = round.split_first()?;
        steps.push(Step::Move(place(*first)));
        steps.extend(others.iter().map(|corner| Step::Line(place(*corner))));
        steps.push(Step::Close);
    }
    let mut vector = Vector::new(side, side);
    vector.shape(rectangle(Spot::default(), side, side), Some(Fill::of(Colour::WHITE)), None);
    vector.shape(steps, Some(Fill::of(Colour::BLACK)), None);
    Some(vector)
}

/// How wide the modules of a text's code are, so that a caller can see whether they are read.
pub fn module(text: &str, side: Length) -> Option<Length> {
    Some(side / f64::from(encoded(text)?.size() + 2 * QUIET))
}

fn encoded(text: &str) -> Option<QrCode> {
    let mends = [QrCodeEcc::Quartile, QrCodeEcc::Medium, QrCodeEcc::Low];
    mends.into_iter().find_map(|mends| QrCode::encode_text(text, mends).ok())
}

/// A corner of modules, counted to the right and down.
type Dot = (i32, i32);

/// The outlines of all dark areas, dark to the right of each: as one area each and not as rows of modules, between which
/// hairlines would show.
fn rounds(code: &QrCode) -> Vec<Vec<Dot>> {
    let mut sides: BTreeMap<Dot, Vec<Dot>> = BTreeMap::new();
    for (x, y) in (0..code.size()).flat_map(|y| (0..code.size()).map(move |x| (x, y))) {
        if !code.get_module(x, y) {
            continue;
        }
        // Outside the code all is light.
        for ((column, row), from, to) in [
            ((x, y - 1), (x, y), (x + 1, y)),
            ((x + 1, y), (x + 1, y), (x + 1, y + 1)),
            ((x, y + 1), (x + 1, y + 1), (x, y + 1)),
            ((x - 1, y), (x, y + 1), (x, y)),
        ] {
            if !code.get_module(column, row) {
                sides.entry(from).or_default().push(to);
            }
        }
    }
    let mut rounds = Vec::new();
    while let Some((start, _)) = sides.first_key_value() {
        let (start, mut round) = (*start, Vec::new());
        let (mut at, mut way) = (start, (0, 0));
        while let Some(to) = sides.get_mut(&at).and_then(Vec::pop) {
            if sides.get(&at).is_some_and(Vec::is_empty) {
                sides.remove(&at);
            }
            let next = (to.0 - at.0, to.1 - at.1);
            if next != way {
                round.push(at);
            }
            (at, way) = (to, next);
        }
        rounds.push(round);
    }
    rounds
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Even-odd filling of the outlines gives the code back, module by module.
    #[test]
    fn outlines_enclose_what_is_dark() {
        let code = QrCode::encode_text("https://workshop.example/part#2611-0042/01", QrCodeEcc::Quartile).unwrap();
        let rounds = rounds(&code);
        for (x, y) in (0..code.size()).flat_map(|y| (0..code.size()).map(move |x| (x, y))) {
            // Upright sides to the left of the module's middle, that pass its height.
            let sides = rounds.iter().flat_map(|round| round.iter().zip(round.iter().cycle().skip(1)));
            let left = sides
                .filter(|(from, to)| from.0 == to.0 && from.0 <= x && from.1.min(to.1) <= y && y < from.1.max(to.1));
            assert_eq!(left.count() % 2 == 1, code.get_module(x, y), "{x} {y}");
        }
    }

    #[test]
    fn a_code_is_as_wide_as_was_asked_and_has_its_white() {
        let vector = code("A", Length::mm(29.0)).unwrap();
        assert_eq!((vector.width, vector.height), (Length::mm(29.0), Length::mm(29.0)));
        // Version 1: 21 modules and 4 on each side.
        assert_eq!(module("A", Length::mm(29.0)), Some(Length::mm(1.0)));
        assert_eq!(code(&"x".repeat(3000), Length::mm(29.0)), None);
    }
}

//! Finishes against their use.

use super::{Rule, Subject};
use crate::choice::question::Question;
use crate::range::Look;
use crate::rules::finding::{Figure, Finding, Limit, Severity};

/// From this luminance on a film is light.
// Source: relative luminance as in WCAG 2.2; the bounds here and of what is dark are common practice.
const LIGHT: f64 = 0.5;
/// Below this one it is dark.
const DARK: f64 = 0.05;
/// Coats of a light opaque film.
// Common practice: two coats before cutting and one after, white one more.
const COATS: u16 = 4;

/// What is as light as that is not dark yet: a limit that is reached is kept.
fn is_dark(luminance: f64) -> bool {
    luminance < DARK
}

pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let finish = unit.picked.finish;
    let light = finish.luminance();
    let find = |rule, found, allowed| Finding::stops(rule, Question::Finish, found, Limit::AtLeast, allowed);
    if finish.look == Look::Opaque && light >= LIGHT && finish.coats() < COATS {
        let (found, least) = (Figure::count(finish.coats()), Figure::count(COATS));
        out.push(find(Rule::FinishEdges, found, least).but(Severity::Warns));
    }
    if is_dark(light) {
        let (found, least) = (Figure::share(light), Figure::share(DARK));
        out.push(find(Rule::FinishSun, found, least).but(Severity::Advises));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_film_at_the_limit_is_not_dark() {
        assert_eq!([DARK, DARK - 1e-9, 0.0].map(is_dark), [false, true, true]);
    }
}

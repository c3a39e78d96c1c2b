//! Finishes against their use.

use super::{Rule, RuleCard, Subject};
use crate::finding::{Figure, Finding, Limit, Severity};
use crate::question::Question;
use crate::range::Look;

/// Edges.
pub const FINISH_EDGES: RuleCard = RuleCard {
    code: "finish-edges",
    what: "A light opaque finish has a coat more than others: four in all.",
    why: "Dark plies show through a thin light film on the edges.",
    source: "two coats before cutting and one after, white one more: common practice",
};

/// Sun.
pub const FINISH_SUN: RuleCard = RuleCard {
    code: "finish-sun",
    what: "A dark finish is better kept out of full sun.",
    why: "Dark faces grow hot in the sun; wood dries, and films fade and open at the edges.",
    source: "common practice; darkness is relative luminance as in WCAG 2.2, 5 % and less",
};

/// From this luminance on a film is light.
const LIGHT: f64 = 0.5;
/// Up to this one it is dark.
const DARK: f64 = 0.05;
/// Coats of a light opaque film.
const COATS: u16 = 4;

pub(crate) fn check(out: &mut Vec<Finding>, unit: Subject<'_>) {
    let finish = unit.picked.finish;
    let light = finish.luminance();
    let find = |rule, found, allowed| Finding::stops(rule, Question::Finish, found, Limit::AtLeast, allowed);
    if finish.look == Look::Opaque && light >= LIGHT && finish.coats() < COATS {
        let (found, least) = (Figure::count(finish.coats()), Figure::count(COATS));
        out.push(find(Rule::FinishEdges, found, least).but(Severity::Warns));
    }
    if light <= DARK {
        let (found, least) = (Figure::share(light), Figure::share(DARK));
        out.push(find(Rule::FinishSun, found, least).but(Severity::Advises));
    }
}

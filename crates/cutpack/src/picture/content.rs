//! What the picture of a step shows.

use super::beside::Beside;
use super::hidden::{Drawn, hide};
use super::shape::Shape;
use super::sheet::Content;
use super::{Part, arrow, lines, tone};

/// Less than this share of the rim of the part that goes in is in sight: the rest of it is drawn as hidden.
// Chosen by eye: of a part of which half can be seen one knows what it is.
pub(super) const SEEN_LEAST: f64 = 0.5;

/// What the picture shows of a part that goes in, with what stands and what lies beside.
pub(super) fn of(part: &Part<'_>, before: &[Part<'_>], standing: &[Drawn], beside: &Beside, scale: f64) -> Content {
    let Part { runs, placed, lifted, .. } = part;
    let mut before: Vec<&Shape> = before.iter().map(|other| &other.placed).collect();
    let mut stands = standing.to_vec();
    hide(&mut stands, lifted);
    let own = lines(lifted, core::iter::once(lifted));
    let mut goes_in = own.clone();
    for other in &before {
        hide(&mut goes_in, other);
    }
    let is_hidden = seen_share(&own, &goes_in) < SEEN_LEAST;
    let mut hidden = if is_hidden { hidden_rim(&own, &goes_in) } else { Vec::new() };
    for thing in &beside.lie {
        hide(&mut stands, thing);
        stands.extend(lines(thing, before.iter().copied().chain([lifted])));
    }
    for thing in &beside.goes_in {
        hide(&mut stands, thing);
        goes_in.extend(lines(thing, before.iter().copied().chain([lifted])));
    }
    let foot = if is_hidden { arrow::foot(lifted, runs) } else { None };
    let shows_place = foot.is_some();
    let ways = match foot {
        Some((foot, ways)) => {
            hidden.push(Drawn::whole(foot));
            ways
        }
        None => arrow::guides(lifted, runs),
    };
    let floor = placed.lines.iter().filter(|line| before.is_empty() && line.rim);
    // On the bare floor the place itself is shown.
    let mut guides: Vec<Drawn> = ways.into_iter().chain(floor.copied()).map(Drawn::whole).collect();
    if !shows_place {
        before.iter().copied().chain([lifted]).for_each(|other| hide(&mut guides, other));
    }
    let ink: Vec<Drawn> = stands.iter().chain(&goes_in).chain(&hidden).cloned().collect();
    let arrows = arrow::arrows(lifted, runs, scale, &ink);
    for cover in arrows.iter().map(|arrow| &arrow.cover) {
        for lines in [&mut stands, &mut goes_in, &mut hidden, &mut guides] {
            hide(lines, cover);
        }
        before.push(cover);
    }
    let tone = tone::seen(lifted, &before);
    let arrows = arrows.iter().map(|arrow| arrow.corners).collect();
    Content { stands, goes_in, hidden, tone, guides, arrows }
}

/// Which share of a part's rim is in sight: of what it does not hide itself.
pub(super) fn seen_share(own: &[Drawn], in_sight: &[Drawn]) -> f64 {
    let long = |lines: &[Drawn]| lines.iter().filter(|drawn| drawn.line.rim).map(Drawn::length).sum::<f64>();
    let all = long(own);
    if all > 0.0 { long(in_sight) / all } else { 1.0 }
}

/// What others hide of a part's rim.
fn hidden_rim(own: &[Drawn], in_sight: &[Drawn]) -> Vec<Drawn> {
    let rims = own.iter().zip(in_sight).filter(|(own, _)| own.line.rim);
    rims.map(|(own, in_sight)| own.without(in_sight)).collect()
}

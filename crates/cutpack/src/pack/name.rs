//! By what a pack is known: every drawing and every paper of it says this, so that two of them can be told to belong
//! together.
//!
//! [`cut`] names what is cut, and with it offcuts and labels. [`plan`] is of what else the papers follow from: who plans
//! other days for the same sheets has the same parts, on papers that say other days.

use slotwright_core::geometry::outline::{Corner, Point};
use slotwright_core::input::seal::{Digest, canonical};
use slotwright_core::units::quantity::Length;

use super::manifest::RackEntry;
use super::path::Cut;
use super::{LotSheets, OnePart, Orders, PROGRAM, Settings};

/// So many digits tell plans of one cut apart.
const PLAN_DIGITS: usize = 4;

/// Of what is cut: the orders, all that parts are cut by and from, and every cut as the machine is told to make it. So another
/// build of this program, one that would cut anything otherwise, names it otherwise.
pub(super) fn cut(
    orders: &Orders<'_>,
    settings: &Settings,
    one: Option<&OnePart>,
    lots: &[LotSheets<'_>],
    effort: u32,
) -> String {
    let mut all = vec![PROGRAM.to_owned(), effort.to_string()];
    all.extend(orders.taken.iter().map(|order| format!("{} {}", order.number, order.spec.digest)));
    all.extend(one.map(OnePart::to_string));
    all.extend(settings.rack.iter().map(|offcut| canonical(&RackEntry::of(offcut))));
    all.extend(settings.bounds.iter().map(|bound| format!("{}/{}={}", bound.board, bound.sheet, bound.count)));
    for LotSheets { lot, sheets, .. } in lots {
        let (build, cutting) = (&lot.range.build, &lot.range.cutting);
        let by = [lot.board.thickness(), build.cutter_mm, cutting.allowance_mm, lot.film()];
        all.push(format!("{} {by:?} {:?}", lot.key(), lot.measured()));
        for (sheet, program) in sheets {
            let mut cuts = Bytes::default();
            cuts.all([sheet.length, sheet.width, sheet.uncoated, program.depths.through, program.depths.outside]);
            program.cuts.iter().for_each(|cut| cuts.cut(cut));
            sheet.kept.iter().for_each(|kept| [kept.from, kept.to].into_iter().for_each(|corner| cuts.point(corner)));
            let marks: Vec<String> = sheet.placed.iter().map(|placed| placed.part.mark()).collect();
            all.push(format!("{} {} {} {}", sheet.number, sheet.stock.name(), marks.join(" "), Digest::of(&cuts.0)));
        }
    }
    Digest::of(all.join("\n").as_bytes()).short()
}

/// Of days, booked work and paper.
pub(super) fn plan(name: &str, settings: &Settings) -> String {
    let (papers, today) = (settings.papers, settings.today.map(|today| today.to_string()).unwrap_or_default());
    let all = [name, papers.format_name(), papers.labels_name(), &today, &canonical(&settings.backlog)];
    Digest::of(all.join("\n").as_bytes()).short().chars().take(PLAN_DIGITS).collect()
}

/// Figures as they are, bit by bit: they are the same natively and in WebAssembly.
#[derive(Default)]
struct Bytes(Vec<u8>);

impl Bytes {
    fn all(&mut self, lengths: impl IntoIterator<Item = Length>) {
        lengths.into_iter().for_each(|length| self.figure(length.in_mm()));
    }

    fn figure(&mut self, figure: f64) {
        self.0.extend(figure.to_bits().to_le_bytes());
    }

    fn point(&mut self, point: Point) {
        self.all([point.u, point.v]);
    }

    fn corners(&mut self, corners: &[Corner]) {
        for corner in corners {
            self.point(corner.at);
            self.figure(corner.bulge);
        }
    }

    fn cut(&mut self, cut: &Cut) {
        cut.lead_in.into_iter().chain(cut.bridges.iter().copied().flatten()).for_each(|point| self.point(point));
        self.corners(cut.outline.corners());
        cut.between.iter().for_each(|way| self.corners(way));
    }
}

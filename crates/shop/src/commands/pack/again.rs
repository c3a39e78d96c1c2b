//! A damaged part that is cut again as the pack before was cut.

use std::path::Path;

use slotwright_core::input::fault::ReadError;
use slotwright_core::order::parts::Parts;
use slotwright_core::units::quantity::Length;
use slotwright_core::words;
use slotwright_core::words::file;
use slotwright_core::words::pack::{Label, Message};
use slotwright_cutpack::pack::papers::Papers;
use slotwright_cutpack::pack::{CutBy, Earlier, OrderRead, PROGRAM, Pack};

use crate::args;
use crate::error::FileError;
use crate::files;

/// The largest manifest that is read: one of a pack of some thousand orders.
const BYTES_MOST: u64 = 64 * 1024 * 1024;

/// The pack in a folder, by its manifest.
pub(super) fn read(folder: &Path) -> Result<Earlier, FileError> {
    let path = folder.join(files::MANIFEST);
    let shown = || path.display().to_string();
    let bytes = files::bytes(&path, BYTES_MOST).map_err(|fault| FileError::Read { path: shown(), fault })?;
    let bad = |error: ReadError| FileError::Json { path: shown(), what: file::Label::NoManifest, error };
    Earlier::read(&String::from_utf8_lossy(&bytes)).map_err(bad)
}

/// By what is cut: as it is given now, else as the earlier pack was.
pub(super) fn cut_by(asked: &args::Pack, earlier: Option<&Earlier>) -> CutBy {
    let before = earlier.map(Earlier::cut_by).unwrap_or_default();
    let given = asked.measured.batches.iter().map(|measured| (measured.board.clone(), measured.batch.clone()));
    let mut batches: Vec<_> = given.collect();
    for (board, batch) in before.batches {
        if !batches.iter().any(|(known, _)| *known == board) {
            batches.push((board, batch));
        }
    }
    CutBy { batches, cutter: asked.cutter.or(before.cutter), allowance: asked.allowance.or(before.allowance) }
}

/// The paper, likewise.
pub(super) fn papers(asked: &args::Pack, earlier: Option<&Earlier>) -> Papers {
    let before = earlier.map(|earlier| earlier.papers).unwrap_or_default();
    Papers { format: asked.paper.unwrap_or(before.format), labels: asked.labels.unwrap_or(before.labels) }
}

/// Gives orders the numbers that they had, so that marks on labels stay; all others come behind those.
pub(super) fn number(read: &mut [OrderRead<'_>], earlier: &Earlier) {
    let mut next = earlier.orders.iter().map(|order| order.number).max().unwrap_or(0);
    for order in read {
        let digest = order.result.as_ref().ok().map(|(spec, _)| spec.digest);
        order.number = digest.and_then(|digest| earlier.number(digest)).unwrap_or_else(|| {
            next = next.saturating_add(1);
            next
        });
    }
}

/// What is said of the pack before: that all is set as it was, or what is not; and whether parts come out as they did.
pub(super) fn told(earlier: &Earlier, pack: &Pack<'_>, cut_by: &CutBy) -> Vec<[String; 2]> {
    let mut otherwise = settings(&earlier.cut_by(), cut_by);
    if earlier.program != PROGRAM {
        otherwise.push(Message::OtherProgram(&earlier.program).text());
    }
    let named = Message::AsBefore { pack: &earlier.name, otherwise: &otherwise }.text();
    let mut rows = vec![[Label::AsBefore.text().into(), named]];
    let cut: Vec<u32> = pack.lots.iter().flat_map(|lot| &lot.lot.parts).map(|part| part.order).collect();
    for order in pack.orders.taken.iter().filter(|order| cut.contains(&order.number)) {
        let before = earlier.orders.iter().find(|before| before.digest == order.spec.digest);
        let now = order.cut.built.as_ref().map(|built| Parts::of(built).digest());
        let told = match before {
            None => Message::NotBefore(order.number),
            Some(before) if now != Some(before.cut_digest) => Message::OtherParts(order.number),
            Some(_) => continue,
        };
        rows.push([Label::Mind.text().into(), told.text()]);
    }
    rows
}

/// What is set otherwise than before.
fn settings(before: &CutBy, now: &CutBy) -> Vec<String> {
    let mm = |length: Length| words::paper::Message::Millimetres(&words::decimal(length.in_mm(), 2)).text();
    let instead =
        |what: &str, now: Length, then: Length| Message::Instead { what, now: &mm(now), then: &mm(then) }.text();
    let mut otherwise = Vec::new();
    for (board, batch) in &now.batches {
        let then = before.batches.iter().find(|(known, _)| known == board).map(|(_, batch)| batch);
        match then {
            Some(then) if then != batch => otherwise.push(instead(board.as_str(), batch.mean(), then.mean())),
            Some(_) => {}
            None => otherwise.push(Message::MeasuredSince(board.as_str(), &mm(batch.mean())).text()),
        }
    }
    let lengths = [(Label::Cutter, now.cutter, before.cutter), (Label::Allowance, now.allowance, before.allowance)];
    for (label, now, then) in lengths {
        if let (Some(now), Some(then)) = (now, then)
            && now != then
        {
            otherwise.push(instead(label.text(), now, then));
        }
    }
    otherwise
}

//! The job card of an order: what goes with it from stage to stage.

use slotwright_core::business::promise::Promise;
use slotwright_core::range::Range;
use slotwright_core::rules::finding::Severity;
use slotwright_core::units::day::Day;
use slotwright_core::words;
use slotwright_core::words::paper::{Label, Message};

use super::super::work::{Arrival, Schedule, order_job};
use super::super::{Kind, TakenOrder};
use super::{Desk, time};
use crate::describe::describe;
use crate::paper::{Cell, Column, Row, Table};

pub(super) fn write(desk: &mut Desk<'_, '_>, order: &TakenOrder<'_>) {
    let Some((job, built)) = order_job(order).zip(order.cut.built.as_ref()) else { return };
    let (range, spec) = (order.cut.range, order.spec);
    let plan = desk.schedule.as_ref().and_then(|schedule| {
        let arrival = schedule.arrivals.iter().find(|arrival| arrival.order == order.number)?;
        Some((schedule, arrival))
    });
    let right = desk.of_order(order);
    let mut paper = desk.paper(Label::JobCard, Some(range), &right, Label::GuidanceFoot.text());
    paper.heading(&Message::Order(order.number).text());
    paper.paragraph(&describe(range, &spec.choice));
    paper.pairs(
        3,
        &[
            (Label::Digest.text().to_owned(), spec.digest.short()),
            (Label::Ordered.text().into(), words::dated(spec.ordered_on)),
            (Label::Promised.text().into(), words::dated(spec.promised.arrives_on)),
            (Label::Planned.text().into(), planned_day(plan)),
            (Label::Parts.text().into(), job.bill.parts.to_string()),
            (Label::Mass.text().into(), super::mass(built.whole.mass)),
        ],
    );
    if let Some((schedule, arrival)) = plan {
        paper.minor(Label::ByStage.text());
        paper.table(&stages(range, arrival, built.promise.as_ref()));
        super::in_turn(&mut paper, schedule);
        paper.text(Label::ForTheFirst.text(), &crate::paper::Style::SMALL);
    }
    if !order.differs_as_cut.is_empty() {
        paper.minor(Label::CutOtherwise.text());
        let other: Vec<String> = order
            .differs_as_cut
            .iter()
            .filter_map(|differs| {
                // Digests are long and say nothing to people.
                let derived = differs.derived.as_deref().filter(|_| !differs.pointer.ends_with("digest"))?;
                Some(Message::Other { place: differs.pointer, promised: &differs.promised, derived }.text())
            })
            .collect();
        paper.list(&other);
    }
    let mind: Vec<String> =
        order.cut.findings.iter().filter(|finding| finding.severity != Severity::Stops).map(words::sentence).collect();
    paper.minor(Label::Mind.text());
    if mind.is_empty() {
        paper.paragraph(Label::NothingToMind.text());
    } else {
        paper.list(&mind);
    }
    if !spec.remark.is_empty() {
        paper.minor(Label::Remark.text());
        paper.paragraph(&spec.remark);
    }
    desk.put(Kind::JobCard, Some(order.number), paper);
}

/// The day on which an order would arrive in its batch, and whether that is late.
fn planned_day(plan: Option<(&Schedule<'_>, &Arrival)>) -> String {
    let Some((_, arrival)) = plan else { return String::new() };
    let Some(planned) = &arrival.planned else { return Label::NoDay.text().into() };
    let day = words::dated(planned.arrives);
    let verdict = if arrival.is_late() { Label::Late } else { Label::InTime };
    format!("{day}, {}", verdict.text())
}

/// The stages in their order, each to be ticked: what it takes in this batch, when, and by when it would be done as it was
/// promised.
fn stages(range: &Range, arrival: &Arrival, promised: Option<&Promise>) -> Table {
    let mut table = Table::new([
        Column::fit(""),
        Column::share(Label::Stage.text(), 1.0),
        Column::fit(Label::Minutes.text()).end(),
        Column::fit(Label::Begins.text()),
        Column::fit(Label::Ends.text()),
        Column::fit(Label::PromisedEnd.text()),
    ]);
    table.rows.extend(range.stages.iter().map(|stage| {
        let days = |promise: Option<&Promise>| {
            promise.and_then(|promise| promise.stages.iter().find(|days| days.stage == stage.key).cloned())
        };
        let cell = |day: Option<Day>| Cell::from(day.map(words::dated).unwrap_or_default());
        let (planned, promised) = (days(arrival.planned.as_ref()), days(promised));
        let planned = planned.as_ref();
        Row::Cells(vec![
            Cell::Tick,
            stage.name.clone().into(),
            time(arrival.minutes.of(stage.work)).into(),
            cell(planned.map(|days| days.starts)),
            cell(planned.map(|days| days.ends)),
            cell(promised.map(|days| days.ends)),
        ])
    }));
    table
}

#[cfg(test)]
mod tests {
    use super::super::super::Settings;
    use super::super::super::testing::{demo, with_pack};
    use super::super::super::work::schedule;
    use super::*;

    /// Paper is filed: no day on it is without its year, not even of the year in which it is written.
    #[test]
    fn days_on_paper_have_their_year() {
        let range = demo();
        with_pack(&range, &Settings::default(), |pack| {
            let schedule = schedule(pack).unwrap();
            let arrival = &schedule.arrivals[0];
            let table = stages(&range, arrival, arrival.planned.as_ref());
            let mut days = vec![planned_day(Some((&schedule, arrival)))];
            for row in &table.rows {
                let Row::Cells(cells) = row else { panic!("rows of stages are cells") };
                days.extend(cells.iter().skip(3).map(|cell| match cell {
                    Cell::Text(text) => text.clone(),
                    other => panic!("{other:?}"),
                }));
            }
            assert_eq!(days.len(), 1 + range.stages.len() * 3);
            assert!(days.iter().all(|day| day.contains(" 2026") || day.contains(" 2027")), "{days:?}");
            assert!(days.iter().any(|day| day.contains(&format!(" {}", schedule.from.parts().0))), "{days:?}");
        });
    }
}

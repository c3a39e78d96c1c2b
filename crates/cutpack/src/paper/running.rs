//! Head and foot of all pages, once it is known how many there are.

use slotwright_core::units::quantity::Length;

use super::flow::HAIR;
use super::sheet::{Ink, Is, Piece};
use super::text::Style;
use super::{Paper, Running};
use crate::vector::{Align, Colour, Shape, Spot, Stroke, line};

/// From the paper's edge to the head, and from the foot's end to it.
const EDGE: Length = Length::mm(11.0);

pub(super) fn set(paper: &mut Paper) {
    let Some(running) = paper.setting.running.clone() else { return };
    let count = u32::try_from(paper.sheets.pages.len()).unwrap_or(u32::MAX);
    for number in 0..paper.sheets.pages.len() {
        let (head, foot) = inks(paper, &running, number, count);
        if let Some(page) = paper.sheets.pages.get_mut(number) {
            page.pieces.push(Piece { is: Is::Header, inks: head });
            page.pieces.push(Piece { is: Is::Footer, inks: foot });
        }
    }
}

fn inks(paper: &Paper, running: &Running, number: usize, count: u32) -> (Vec<Ink>, Vec<Ink>) {
    let Some(page) = paper.sheets.pages.get(number) else { return (Vec::new(), Vec::new()) };
    let left = paper.margins.left;
    let width = page.format.width - left - paper.margins.right;
    let style = Style::SMALL.level();
    let at =
        |y: Length, text: &str, align: Align| paper.inks(&[text.to_owned()], &style, Spot::new(left, y), width, align);
    let rule = |y: Length| {
        let steps = line(Spot::new(left, y), Spot::new(left + width, y));
        Ink::Shape(Shape { steps, fill: None, stroke: Some(Stroke::mm(HAIR, Colour::LINE)) })
    };
    let mut head = at(EDGE, &running.left, Align::Start);
    head.extend(at(EDGE, &running.right, Align::End));
    head.push(rule(EDGE + style.leading() + Length::mm(1.2)));
    let y = page.format.height - EDGE - style.leading();
    let this = u32::try_from(number).unwrap_or(u32::MAX).saturating_add(1);
    let mut foot = at(y, &running.foot, Align::Start);
    foot.extend(at(y, &(running.page_of)(this, count), Align::End));
    (head, foot)
}

//! A small line drawing of a bay, for its card.

use core::fmt::Write;

use slotwright_core::choice::{Bay, Fill, Hung};
use slotwright_core::units::decimal::Plain;

/// A bay as it will be: 64 by 44, lines only.
pub fn bay(bay: &Bay) -> String {
    let mut svg = String::from(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"glyph\" viewBox=\"0 0 64 44\" fill=\"none\" stroke=\"currentColor\" aria-hidden=\"true\"><path d=\"M2 2H62V42H2Z\"/>",
    );
    match bay.fill {
        Fill::Open => {}
        Fill::Shelves(count) => {
            let count = count.min(8);
            for row in 1..=count {
                let y = 2.0 + 40.0 * f64::from(row) / f64::from(count + 1);
                // Writing to a String cannot fail.
                let _ = write!(svg, "<path d=\"M2 {}H62\"/>", Plain::of(y, 1));
            }
        }
        Fill::Leaf(hung) => {
            svg.push_str("<path d=\"M7 6H57V38H7Z\"/>");
            svg.push_str(match hung {
                Hung::Left => "<path class=\"swing\" d=\"M57 6L7 22L57 38\"/>",
                Hung::Right => "<path class=\"swing\" d=\"M7 6L57 22L7 38\"/>",
            });
        }
    }
    if let Some(hole) = &bay.hole {
        let x = (32.0 + f64::from(hole.offset_mm) / 12.0).clamp(10.0, 54.0);
        let _ = write!(svg, "<circle cx=\"{}\" cy=\"33\" r=\"4\"/>", Plain::of(x, 1));
    }
    svg.push_str("</svg>");
    svg
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn any_viewer_shows_a_card() {
        for fill in [Fill::Open, Fill::Shelves(3), Fill::Leaf(Hung::Left)] {
            let svg = super::bay(&Bay { share: 1, fill, hole: None, device: None });
            let document = roxmltree::Document::parse(&svg).unwrap();
            document.descendants().filter(roxmltree::Node::is_element).for_each(crate::plain::check);
        }
    }
}

//! The unit on a sheet of paper. The order desk writes it when somebody prints by the page's own button or keys; who
//! prints in another way gets the page without its controls, a drawing, and the link in letters.

use leptos::prelude::*;
use slotwright_cutpack::drawing::{Subject, View, scale, svg};
use slotwright_protocol::desk::{Answer, Question};

use crate::browser::{fragment, orders, page, paper};
use crate::link;
use crate::state::Desk;

/// Room for a drawing on the plain page, in pixels by the style's measures.
const ROOM: (f64, f64) = (690.0, 400.0);

/// What a sheet is of: another unit, or another day, is another sheet.
fn subject(desk: Desk) -> [String; 2] {
    [desk.peek(|snapshot, _| snapshot.choice.to_compact()), desk.today().to_string()]
}

fn address(desk: Desk) -> String {
    fragment::address(&link::of(desk).to_link())
}

/// Where the sheet stands: it is seen on paper alone.
#[component]
pub fn Sheet() -> impl IntoView {
    let desk = Desk::here();
    paper::listen(Callback::new(move |()| print(desk)));
    let plain = move |()| {
        let drawn = desk.peek(|snapshot, range| {
            let built = snapshot.built.as_ref()?;
            let subject = Subject { range, choice: &snapshot.choice, built };
            Some(svg(subject, View::Sheet, usize::MAX, scale(subject, View::Sheet, ROOM), ""))
        });
        [subject(desk).join(" "), drawn.unwrap_or_default(), address(desk)]
    };
    paper::before(Callback::new(plain));
    view! { <div id="sheet" class="sheet"></div> }
}

/// Has the sheet written, then prints it.
pub fn print(desk: Desk) {
    let asked = subject(desk);
    let on_answer = move |(answer, _)| match answer {
        Answer::No(why) => desk.show_banner(why, String::new()),
        // Who has gone on to another unit, or to a dialog, no longer waits for this one.
        Answer::Shown(html) if subject(desk) == asked && page::open_dialog().is_none() => {
            paper::print(asked.join(" "), &html);
        }
        Answer::Shown(_) | Answer::File(..) | Answer::Order(_) | Answer::Said(_) => {}
    };
    orders::ask(Question::Sheet { unit: desk.unit(), address: address(desk) }, Callback::new(on_answer));
}

//! The window: its size, scrolling, dialogs.

use std::time::Duration;

use leptos::prelude::{Callable, Callback, request_animation_frame, set_timeout};
use slotwright_core::units::decimal::read_decimal;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;
use web_sys::HtmlDialogElement;

/// The class of what was picked.
const PICKED: &str = "found";

/// The page's element.
fn root() -> Option<web_sys::Element> {
    web_sys::window()?.document()?.document_element()
}

/// Whether this is the workshop's page.
pub fn is_workshop() -> bool {
    root().is_some_and(|root| root.has_attribute("data-workshop"))
}

/// Tells that a part of the page did not arrive, as `watch.js` does.
pub fn tell_missing() {
    if let Some(root) = root() {
        // An attribute of that name is always taken.
        let _ = root.set_attribute("data-trouble", "missing");
    }
}

/// Inner width and height of the window in pixels.
pub fn window_size() -> (f64, f64) {
    let size = web_sys::window()
        .and_then(|window| Some((window.inner_width().ok()?.as_f64()?, window.inner_height().ok()?.as_f64()?)));
    size.unwrap_or((1024.0, 768.0))
}

/// Pixels of the screen for one of the page.
pub fn pixel_ratio() -> f64 {
    web_sys::window().map_or(1.0, |window| window.device_pixel_ratio())
}

/// Whether the person prefers what a media query asks for.
pub fn prefers(query: &str) -> bool {
    let matched = web_sys::window().and_then(|window| window.match_media(query).ok()?);
    matched.is_some_and(|list| list.matches())
}

/// Hears it whenever the person comes to prefer, or no longer, what a media query asks for.
pub fn listen_to_preference(query: &str, on_event: Callback<web_sys::Event>) {
    if let Some(list) = web_sys::window().and_then(|window| window.match_media(query).ok()?) {
        listen(&list, &["change"], on_event);
    }
}

/// Hears all these events of a target for as long as the page lives.
pub fn listen(target: &web_sys::EventTarget, events: &[&str], on_event: Callback<web_sys::Event>) {
    let on_event = Closure::<dyn FnMut(web_sys::Event)>::new(move |event| on_event.run(event));
    for event in events {
        // An event of that name is always taken.
        let _ = target.add_event_listener_with_callback(event, on_event.as_ref().unchecked_ref());
    }
    on_event.forget();
}

/// Lets all further moves of this hand come to the element that it touched.
pub fn hold_pointer(event: &web_sys::PointerEvent) {
    let element = event.target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
    if let Some(element) = element {
        // A hand that is gone already is not held.
        let _ = element.set_pointer_capture(event.pointer_id());
    }
}

/// Whether something happens within an element.
pub fn is_within(event: &web_sys::Event, element: &web_sys::Node) -> bool {
    let target = event.target().and_then(|target| target.dyn_into::<web_sys::Node>().ok());
    target.is_some_and(|target| element.contains(Some(&target)))
}

/// How long a page that has moved by itself takes no press on what came under the finger.
const SETTLING: Duration = Duration::from_millis(500);

/// Moves the page, once what was pressed has been answered, as little as it takes to see its whole question. Where it
/// moves, the question is `settling` for a moment: the second press of two is not meant for what came there.
pub fn see_whole(event: &web_sys::MouseEvent) {
    let pressed = event.target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
    let Some(asked) = pressed.and_then(|pressed| pressed.closest(".asked").ok()?) else { return };
    set_timeout(
        move || {
            let top = || asked.get_bounding_client_rect().top();
            let before = top();
            nearest(&asked);
            if (top() - before).abs() >= 1.0 {
                // A name like that is always taken.
                let _ = asked.class_list().add_1("settling");
                // The moment begins with the frame that shows the move, however busy the page is.
                let settled = move || drop(asked.class_list().remove_1("settling"));
                request_animation_frame(move || set_timeout(settled, SETTLING));
            }
        },
        Duration::from_millis(100),
    );
}

/// All elements of a kind.
pub fn all(selector: &str) -> Vec<web_sys::HtmlElement> {
    let body = web_sys::window().and_then(|window| window.document()?.body());
    body.map(|body| all_within(&body, selector)).unwrap_or_default()
}

/// The same within another one.
pub fn all_within(within: &web_sys::Element, selector: &str) -> Vec<web_sys::HtmlElement> {
    let found = within.query_selector_all(selector).ok();
    let found = found.iter().flat_map(|list| (0..list.length()).filter_map(|at| list.item(at)));
    found.filter_map(|node| node.dyn_into().ok()).collect()
}

/// Whether an element has room on the page: what is gone has none.
pub fn is_seen(element: &web_sys::HtmlElement) -> bool {
    element.offset_width() > 0
}

/// What has the focus.
pub fn active() -> Option<web_sys::Element> {
    web_sys::window()?.document()?.active_element()
}

/// Moves the focus to the first element of a kind.
pub fn focus_first(selector: &str) {
    if let Some(found) = all(selector).first() {
        // Where the focus cannot go, it stays.
        let _ = found.focus();
    }
}

/// Moves the focus to the first element of a kind within another one.
pub fn focus(within: &web_sys::Element, selector: &str) {
    let found = within.query_selector(selector).ok().flatten();
    if let Some(found) = found.and_then(|found| found.dyn_into::<web_sys::HtmlElement>().ok()) {
        // Where the focus cannot go, it stays.
        let _ = found.focus();
    }
}

/// Brings an element into sight.
pub fn scroll_to(id: &str) {
    let document = web_sys::window().and_then(|window| window.document());
    if let Some(element) = document.and_then(|document| document.get_element_by_id(id)) {
        element.scroll_into_view();
    }
}

/// Brings the first element of a kind into sight, as little as that takes.
pub fn see(selector: &str) {
    if let Some(found) = all(selector).first() {
        nearest(found);
    }
}

fn nearest(element: &web_sys::Element) {
    let nearest = web_sys::ScrollIntoViewOptions::new();
    nearest.set_block(web_sys::ScrollLogicalPosition::Nearest);
    element.scroll_into_view_with_scroll_into_view_options(&nearest);
}

/// Leads to what is said of the unit: first to what stops it, else to anything; asked again, to the next. Whether
/// there is anything.
pub fn lead_to_notice() -> bool {
    let stops = all("#questions .notice.stop");
    let notices = if stops.is_empty() { all("#questions .notice") } else { stops };
    let active = active();
    let now = notices.iter().position(|notice| active.as_ref().is_some_and(|active| notice.contains(Some(active))));
    let next = now.map_or(0, |now| now + 1) % notices.len().max(1);
    let Some(notice) = notices.get(next) else { return false };
    // Where the focus cannot go, it is brought into sight all the same.
    let _ = notice.focus();
    let middle = web_sys::ScrollIntoViewOptions::new();
    middle.set_block(web_sys::ScrollLogicalPosition::Center);
    notice.scroll_into_view_with_scroll_into_view_options(&middle);
    true
}

/// Leads to an entry that could not be read, if there is one.
pub fn lead_to_unread() -> bool {
    let document = web_sys::window().and_then(|window| window.document());
    let wrong = document.and_then(|document| document.query_selector(".field:has(> .wrong:not(:empty)) input").ok()?);
    let Some(input) = wrong.and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok()) else { return false };
    // Where the focus cannot go, the entry is marked all the same.
    let _ = input.focus();
    true
}

/// Enter leads from a field that is filled in to the first one that has to be and is not; where none is left, it is the
/// browser's own, which sends the form.
pub fn lead_to_missing(event: &web_sys::KeyboardEvent) {
    let field = event.target().and_then(|target| target.dyn_into::<web_sys::HtmlInputElement>().ok());
    let Some(field) = field.filter(|field| event.key() == "Enter" && field.check_validity()) else { return };
    let form = field.closest("form").ok().flatten();
    if let Some(form) = form.filter(|form| form.query_selector(":invalid").is_ok_and(|missing| missing.is_some())) {
        event.prevent_default();
        focus(&form, ":invalid");
    }
}

/// Closes the header's menu where that is open: on a wide page its entries always stand there.
pub fn close_menu() {
    let menu = web_sys::window().and_then(|window| window.document()?.get_element_by_id("menu"));
    if let Some(menu) = menu.and_then(|menu| menu.dyn_into::<web_sys::HtmlElement>().ok()) {
        // A menu that is not open stays as it is.
        let _ = menu.hide_popover();
    }
}

/// Pixels of the page for one of those that styles are written in: more where the person has asked for larger letters.
pub fn letter_scale() -> f64 {
    let root = web_sys::window().and_then(|window| {
        let root = window.document()?.document_element()?;
        window.get_computed_style(&root).ok()??.get_property_value("font-size").ok()
    });
    let pixels = root.and_then(|size| read_decimal(size.trim_end_matches("px")));
    pixels.map_or(1.0, |pixels| pixels / 16.0)
}

/// The dialog of that id.
pub fn dialog(id: &str) -> Option<HtmlDialogElement> {
    web_sys::window()?.document()?.get_element_by_id(id)?.dyn_into().ok()
}

/// Opens or closes a dialog.
pub fn show(dialog: &HtmlDialogElement, open: bool) {
    if open && !dialog.open() {
        // Only fails if it is open already.
        let _ = dialog.show_modal();
    } else if !open && dialog.open() {
        dialog.close();
    }
}

/// The dialog that stands before the page.
pub fn open_dialog() -> Option<HtmlDialogElement> {
    let open = web_sys::window()?.document()?.query_selector("dialog[open]").ok()??;
    open.dyn_into().ok()
}

/// What the button does that was pressed, where that stands on it.
pub fn pressed(event: &web_sys::MouseEvent) -> Option<String> {
    let element: web_sys::Element = event.target()?.dyn_into().ok()?;
    element.closest("[data-do]").ok()??.get_attribute("data-do")
}

/// Writes a text into the first element of a kind within another one.
pub fn write(within: &web_sys::Element, selector: &str, text: &str) {
    if let Some(found) = within.query_selector(selector).ok().flatten() {
        found.set_text_content(Some(text));
    }
}

/// The bay (from 0) that was touched on a drawing.
pub fn touched_bay(event: &web_sys::MouseEvent) -> Option<usize> {
    let element: web_sys::Element = event.target()?.dyn_into().ok()?;
    let group = element.closest("[data-bay]").ok()??;
    group.get_attribute("data-bay")?.parse::<usize>().ok()?.checked_sub(1)
}

/// What a person has opened within the element of that id, by its place there.
fn opened(within: &str) -> Vec<usize> {
    let all = all(&["#", within, " details"].concat());
    all.iter().enumerate().filter(|(_, details)| details.has_attribute("open")).map(|(at, _)| at).collect()
}

/// Keeps what a person has opened within the element of that id, and the focus on its button, when all of it is made anew.
pub fn keep_place(within: &'static str) {
    let (opened, deed) = (opened(within), active().and_then(|active| active.get_attribute("data-do")));
    let mend = move || {
        let all = all(&["#", within, " details"].concat());
        for details in opened.iter().filter_map(|at| all.get(*at)) {
            // An attribute of that name is always taken.
            let _ = details.set_attribute("open", "");
        }
        let is_lost = active().is_none_or(|active| active.tag_name() == "BODY");
        if let Some(deed) = deed.as_ref().filter(|_| is_lost) {
            focus_first(&["[data-do=\"", deed, "\"]"].concat());
        }
    };
    set_timeout(mend, Duration::ZERO);
}

fn by_id(id: &str) -> Option<web_sys::Element> {
    web_sys::window()?.document()?.get_element_by_id(id)
}

/// Writes a text into the element of that id.
pub fn write_to(id: &str, text: &str) {
    if let Some(element) = by_id(id) {
        element.set_text_content(Some(text));
    }
}

/// Fields of a kind, each with its name.
pub fn named_inputs(selector: &str) -> Vec<(String, web_sys::HtmlElement)> {
    all(selector).into_iter().filter_map(|input| Some((input.get_attribute("name")?, input))).collect()
}

/// What stands in fields of a kind, whatever kind of field it is, each with its name.
pub fn values(selector: &str) -> Vec<(String, String)> {
    let value = |input: &web_sys::HtmlElement| super::member::member(input, "value")?.as_string();
    named_inputs(selector).into_iter().filter_map(|(name, input)| Some((name, value(&input)?))).collect()
}

/// Marks a field as wrong, or no longer.
pub fn mark(input: &web_sys::HtmlElement, wrong: bool) {
    // An attribute of that name is always taken.
    let _ = if wrong { input.set_attribute("aria-invalid", "true") } else { input.remove_attribute("aria-invalid") };
}

/// Picks one of the elements of a kind: it alone has that class, and is brought into sight.
pub fn pick(all_of_them: &str, one: Option<String>) {
    for other in all(all_of_them) {
        // A class of that name is always taken.
        let _ = other.class_list().remove_1(PICKED);
    }
    let found = one.and_then(|one| web_sys::window()?.document()?.query_selector(&one).ok()?);
    if let Some(found) = found {
        let _ = found.class_list().add_1(PICKED);
        nearest(&found);
    }
}

/// Copies the picture of a button into the element of that id, and its name into another one; whether there is one.
pub fn copy_picture(button: &str, to: &str, title: &str) -> bool {
    let picture = all(button).first().and_then(|button| button.query_selector("svg").ok().flatten());
    let (Some(picture), Some(place)) = (picture, by_id(to)) else { return false };
    place.set_inner_html(&picture.outer_html());
    write_to(title, &picture.get_attribute("aria-label").unwrap_or_default());
    true
}

/// Makes the picture in the element of that id so wide, in percent.
pub fn size_picture(within: &str, percent: u32) {
    let picture = by_id(within).and_then(|place| place.query_selector("svg").ok().flatten());
    if let Some(picture) = picture {
        // An attribute of that name is always taken.
        let _ = picture.set_attribute("width", &[&percent.to_string(), "%"].concat());
    }
}

//! Where it stands.

use leptos::prelude::*;
use slotwright_core::choice::Place;
use slotwright_core::choice::change::Change;
use slotwright_core::choice::question::Question;
use slotwright_core::words;
use slotwright_core::words::entry;
use slotwright_core::words::page::Label;

use super::ask::{FindingNotices, Heading, ToOrder};
use crate::parts::optional::Optional;
use crate::parts::{Entry, inert};
use crate::state::Desk;
use crate::unread::Field;

/// Wall, ceiling, screen, plug.
#[component]
pub fn PlaceQuestions() -> impl IntoView {
    let desk = Desk::here();
    let plugs =
        desk.peek(|_, range| range.plugs.iter().map(|plug| (plug.key.clone(), plug.name.clone())).collect::<Vec<_>>());
    let keys: Vec<_> = plugs.iter().map(|(key, _)| key.clone()).collect();
    let take_plug = move |event| {
        let taken = event_target_value(&event);
        desk.apply(&Change::Plug(keys.iter().find(|key| key.as_str() == taken).cloned()));
    };
    let plug = Memo::new(move |_| {
        desk.read(|snapshot, _| snapshot.choice.place.plug.as_ref().map(ToString::to_string)).unwrap_or_default()
    });
    let none = std::iter::once((String::new(), Label::Any.text().to_string()));
    let named = none.chain(plugs.into_iter().map(|(key, name)| (key.to_string(), name)));
    let shown = named
        .map(|(key, name)| {
            let own = key.clone();
            view! { <option value=key prop:selected=move || plug.with(|plug| *plug == own)>{name}</option> }
        })
        .collect_view();
    let shows = |field, show: fn(&Place) -> Option<String>| {
        Callback::new(move |()| {
            let typed = desk.unread.entry(field);
            let text = typed.or_else(|| desk.read(|snapshot, _| show(&snapshot.choice.place))).unwrap_or_default();
            Entry { text, wrong: desk.wrong(field), ..Entry::default() }
        })
    };
    let takes = |field, read: fn(&str) -> Option<Change>| {
        Callback::new(move |text: String| {
            let change = read(&text);
            desk.enter(field, text, change);
        })
    };
    view! {
        <section id="question-place">
            <Heading number=1 title=Label::WhereItStands/>
            <div class="fields">
                <Optional label=Label::FreeWall.text() unit=Label::Mm.text()
                    show=shows(Field::Wall, wall) take=takes(Field::Wall, read_wall)/>
                <Optional label=Label::Ceiling.text() unit=Label::Mm.text()
                    show=shows(Field::Ceiling, ceiling) take=takes(Field::Ceiling, read_ceiling)/>
                <Optional label=Label::ScreenOnTop.text() unit=Label::Inch.text()
                    show=shows(Field::Screen, screen) take=takes(Field::Screen, read_screen)/>
                <label class="field">
                    {inert("<span class=\"field-label\">", Label::PlugToPass)}
                    <select on:change=take_plug>{shown}</select>
                </label>
            </div>
            <FindingNotices asked=|question| question == Question::Place/>
            <ToOrder/>
        </section>
    }
}

fn wall(place: &Place) -> Option<String> {
    place.wall_mm.map(words::size)
}

fn read_wall(text: &str) -> Option<Change> {
    if text.is_empty() {
        return Some(Change::WallMm(None));
    }
    entry::size(text).ok().map(|size| Change::WallMm(Some(size)))
}

fn ceiling(place: &Place) -> Option<String> {
    place.ceiling_mm.map(words::size)
}

fn read_ceiling(text: &str) -> Option<Change> {
    if text.is_empty() {
        return Some(Change::CeilingMm(None));
    }
    entry::size(text).ok().map(|size| Change::CeilingMm(Some(size)))
}

fn screen(place: &Place) -> Option<String> {
    place.screen_tenth_inch.map(|tenths| words::decimal(f64::from(tenths) / 10.0, 1))
}

fn read_screen(text: &str) -> Option<Change> {
    if text.is_empty() {
        return Some(Change::ScreenTenthInch(None));
    }
    entry::diagonal(text).ok().map(|tenths| Change::ScreenTenthInch(Some(tenths)))
}

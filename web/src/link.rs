//! The link of the present unit: the address of the page holds it, and another one that comes there is opened. What is
//! said of it the order desk knows: few links have anything about them.

use leptos::prelude::*;
use slotwright_core::choice::Choice;
use slotwright_core::choice::link::{Link, Made};
use slotwright_core::range::Range;
use slotwright_core::units::money::Money;
use slotwright_protocol::desk::{Answer, Before, Question};

use crate::browser::{fragment, orders, page, steps};
use crate::state::{Desk, PAUSE};

/// What came by the address.
#[derive(Clone, Debug)]
pub struct Arrived {
    text: String,
    /// Its link, if it is one and the range has the model that it is of.
    link: Option<Link>,
    /// The unit that was there already.
    there: Choice,
}

impl Arrived {
    /// What the address brings when the page begins, and which would begin with `there` otherwise. Where it brings
    /// nothing, that is the link that came, so that people are told what became different since it was kept.
    pub fn first(range: &Range, there: &Link) -> Option<Self> {
        let came = fragment::read().filter(|text| !fragment::take_outdated(text));
        let text = came.or_else(|| there.made.map(|_| there.to_link()))?;
        Some(Self::of(text, range, there.choice.clone()))
    }

    fn of(text: String, range: &Range, there: Choice) -> Self {
        let link = Link::of_good(&text).filter(|link| range.model(&link.choice.model).is_some());
        Self { text, link, there }
    }

    /// Whether it is the link of the unit that was there already.
    fn is_own(&self) -> bool {
        self.link.as_ref().is_some_and(|link| link.choice == self.there)
    }

    /// The unit to show instead of the one that was there.
    pub fn other(&self) -> Option<&Choice> {
        self.link.as_ref().filter(|_| !self.is_own()).map(|link| &link.choice)
    }
}

/// The address of the page. A link that came stays there as it came until something is answered, so that a reload tells
/// the same of it.
#[derive(Clone, Copy, Debug)]
pub struct Address {
    desk: Desk,
    /// The unit that was shown when it came.
    came: StoredValue<Option<Choice>>,
}

impl Address {
    /// Begins with what came, and opens what somebody puts there later.
    pub fn new(desk: Desk, first: Option<Arrived>) -> Self {
        let address = Self { desk, came: StoredValue::new(None) };
        if let Some(arrived) = first {
            address.take(arrived);
        }
        let later = move |_| {
            if fragment::is_afresh() {
                return desk.begin_afresh();
            }
            let Some(text) = fragment::read().filter(|_| fragment::is_new()) else { return };
            let arrived = desk.peek(|snapshot, range| Arrived::of(text, range, snapshot.choice.clone()));
            desk.show_banner(String::new(), String::new());
            if let Some(choice) = arrived.other() {
                desk.open_link(choice.clone());
                // It is not kept before something is answered.
                desk.only_show();
            }
            address.take(arrived);
        };
        if let Some(window) = web_sys::window() {
            page::listen(&window, &["hashchange"], Callback::new(later));
            // An entry of an earlier load has another unit's link.
            let arrived = move |_| {
                if !fragment::is_new() {
                    address.keep(false);
                }
            };
            page::listen(&window, &["popstate"], Callback::new(arrived));
        }
        address
    }

    /// Puts the present link there, once things have rested. When the page is being left it is too late for that: then
    /// it is noted that what stands there is old.
    pub fn keep(self, leaving: bool) {
        let now = self.desk.peek(|snapshot, _| snapshot.choice.clone());
        if self.came.with_value(|came| came.as_ref() == Some(&now)) {
            return;
        }
        // A link of this unit is not old, and until it is known what links call the range it says more than a new one.
        let there = || fragment::read().and_then(|text| Link::of_good(&text));
        let is_enough = leaving || self.desk.advised.mark.get_untracked().is_none();
        if is_enough && there().is_some_and(|link| link.choice == now) {
            return;
        }
        self.came.set_value(None);
        if leaving {
            fragment::outdate();
        } else if steps::is_on_the_way() {
            // Each entry has its own link.
            set_timeout(move || self.keep(false), PAUSE);
        } else {
            let link = of(self.desk);
            // Before it is known what links call the range it says less than the one before.
            if self.desk.advised.mark.get_untracked().is_some() && !self.desk.is_built_in() {
                self.desk.keep_price(link.made);
            }
            fragment::write(&link.to_link());
        }
    }

    fn take(self, arrived: Arrived) {
        let now = self.desk.peek(|snapshot, _| snapshot.choice.clone());
        self.came.set_value(Some(now).filter(|_| !arrived.is_own()));
        tell(self.desk, arrived);
    }
}

/// The link of what is chosen now.
pub fn of(desk: Desk) -> Link {
    // Prices of the range that came with the page may be old.
    let range = desk.advised.mark.get_untracked().filter(|_| !desk.is_built_in());
    let made = range.and_then(|range| Some(Made { range, price: price(desk)? }));
    Link { choice: desk.peek(|snapshot, _| snapshot.choice.clone()), made }
}

/// What the unit costs, if it can be ordered.
fn price(desk: Desk) -> Option<Money> {
    desk.peek(|snapshot, _| snapshot.built.as_ref().filter(|_| snapshot.orderable).map(|built| built.price.total_minor))
}

/// Tells what came of a link.
fn tell(desk: Desk, arrived: Arrived) {
    let own = arrived.is_own();
    let Arrived { text, link, there } = arrived;
    // Who comes back to a unit that costs what it did, or never had a price, is told nothing; nor is anybody whom the
    // range did not reach.
    let made = link.as_ref().and_then(|link| link.made).map(|made| made.price);
    if own && (made.is_none() || made == price(desk) || desk.is_built_in()) {
        return;
    }
    let about = desk.peek(|snapshot, _| snapshot.choice.to_compact());
    let on_answer = move |(answer, _)| {
        // It is about the unit that was shown then.
        if desk.peek(|snapshot, _| snapshot.choice.to_compact()) != about {
            return;
        }
        if let Answer::Said(sentence) | Answer::No(sentence) = answer {
            desk.show_banner(sentence, about.clone());
        }
    };
    let before = match own {
        true => Before::Same,
        false if desk.is_among_drafts(&there) => Before::Other,
        false => Before::Nothing,
    };
    let question = Question::Came { range: desk.range_text(), link: text, today: desk.today(), before };
    orders::ask(question, Callback::new(on_answer));
}

//! For whom the order is, as it was typed: it outlives the dialog, and nothing of it is stored.

use leptos::prelude::*;
use slotwright_protocol::desk::Person;

/// Name, contact, address with its lines, remark.
#[derive(Clone, Copy, Debug)]
pub struct Customer(pub [RwSignal<String>; 4]);

impl Customer {
    /// Nobody yet.
    pub fn new() -> Self {
        Self([const { String::new() }; 4].map(RwSignal::new))
    }

    /// What was typed, without the spaces around it.
    pub fn texts(self) -> Person {
        let [name, contact, address, remark] = self.0.map(|text| text.with_untracked(|text| text.trim().to_string()));
        Person { name, contact, address, remark }
    }

    /// Somebody else's texts.
    pub fn set(self, Person { name, contact, address, remark }: Person) {
        for (text, other) in self.0.into_iter().zip([name, contact, address, remark]) {
            text.set(other);
        }
    }
}

//! For whom the order is, as it was typed: it outlives the dialog, and nothing of it is stored.

use leptos::prelude::*;

/// Name, contact, address with its lines, remark.
#[derive(Clone, Copy, Debug)]
pub struct Customer(pub [RwSignal<String>; 4]);

impl Customer {
    /// Nobody yet.
    pub fn new() -> Self {
        Self([const { String::new() }; 4].map(RwSignal::new))
    }

    /// What was typed, without the spaces around it.
    pub fn texts(self) -> [String; 4] {
        self.0.map(|text| text.with_untracked(|text| text.trim().to_string()))
    }

    /// Takes other texts; those that are not there are empty.
    pub fn set(self, texts: &[String]) {
        for (at, text) in self.0.into_iter().enumerate() {
            text.set(texts.get(at).cloned().unwrap_or_default());
        }
    }
}

//! The workshop's page: orders come in, sheets and papers go out. It decides nothing: the worker makes all that is shown.

use leptos::prelude::*;
use slotwright_core::words::workshop::{Label, Message};
use slotwright_protocol::packs::{Answer, Question, Shown, What};
use wasm_bindgen::JsValue;

use crate::browser::{files, first_view, offline, packs, page, range_file, speech};

mod dialogs;
mod drop;
mod scan;
mod view;

use view::Workshop;

/// Opens the worker, mounts the page, and begins with the range file.
pub fn start() {
    wasm_bindgen_futures::spawn_local(async {
        let fetched = range_file::fetch().await;
        let Some(place) = first_view::workshop() else { return };
        let live = place.clone();
        leptos::mount::mount_to(place, move || view! { <Workshop/> }).forget();
        first_view::give_way(&live);
        first_view::shown();
        offline::begin(fetched.as_deref().ok());
        match fetched {
            Ok(range) => packs::ask(&Question::Begin(range), []),
            Err(_) => {
                if let Some(saw) = SAW.get() {
                    saw.trouble.set(Label::RangeGone.text().into());
                }
            }
        }
    });
}

thread_local! {
    static SAW: std::cell::Cell<Option<Saw>> = const { std::cell::Cell::new(None) };
}

/// What the page shows; all of it comes from the worker but what a person looks at.
#[derive(Clone, Copy, Debug)]
pub struct Saw {
    /// The name of the workshop.
    workshop: RwSignal<String>,
    /// The fields of the settings.
    settings: RwSignal<String>,
    orders: RwSignal<String>,
    /// The names of the lots.
    lots: RwSignal<Vec<String>>,
    /// The sheets of each.
    sheets: StoredValue<Vec<String>>,
    /// Those that are looked at.
    nest: RwSignal<String>,
    /// Which lot is looked at.
    lot: RwSignal<usize>,
    figures: RwSignal<String>,
    /// What was done.
    done: RwSignal<String>,
    /// What was saved.
    saved: RwSignal<String>,
    /// What goes wrong.
    trouble: RwSignal<String>,
    looks: RwSignal<bool>,
    /// Whether files are being written.
    writes: RwSignal<bool>,
    packed: RwSignal<bool>,
    /// Whether a change is still to be answered.
    waits: RwSignal<bool>,
    /// Documents to print: their names and their addresses in the browser.
    documents: RwSignal<Vec<[String; 2]>>,
    /// How large the large sheet is, in percent of its window.
    zoom: RwSignal<u32>,
}

/// Sets a text only where it is another one, so that nothing is made anew for nothing.
fn put(signal: RwSignal<String>, text: String) {
    if signal.with_untracked(|known| *known != text) {
        signal.set(text);
    }
}

impl Saw {
    /// Nothing yet; opens the worker.
    fn open() -> Self {
        let text = || RwSignal::new(String::new());
        let saw = Self {
            workshop: text(),
            settings: text(),
            orders: text(),
            lots: RwSignal::new(Vec::new()),
            sheets: StoredValue::new(Vec::new()),
            nest: text(),
            lot: RwSignal::new(0),
            figures: text(),
            done: text(),
            saved: text(),
            trouble: text(),
            looks: RwSignal::new(false),
            writes: RwSignal::new(false),
            packed: RwSignal::new(false),
            waits: RwSignal::new(false),
            documents: RwSignal::new(Vec::new()),
            zoom: RwSignal::new(100),
        };
        SAW.set(Some(saw));
        packs::open(Callback::new(move |told| saw.hear(told)));
        saw
    }

    /// Asks for a change and waits for what comes of it.
    fn change(self, question: &Question, files: impl IntoIterator<Item = JsValue>) {
        self.waits.set(true);
        self.writes.set(false);
        put(self.trouble, String::new());
        put(self.saved, String::new());
        packs::ask(question, files);
    }

    /// Takes something away: papers of fifty orders take a while, and that is told.
    fn take(self, what: What) {
        if self.writes.get_untracked() || self.waits.get_untracked() {
            // One after another.
            speech::say(if self.waits.get_untracked() { Label::Reading } else { Label::Writing }.text());
        } else if self.packed.get_untracked() {
            put(self.trouble, String::new());
            self.writes.set(true);
            self.saved.set(Label::Writing.text().into());
            speech::say(Label::Writing.text());
            packs::ask(&Question::Take(what), []);
        } else {
            // What keeps the pack back stands in the strip.
            speech::say(&self.done.get_untracked());
        }
    }

    fn hear(self, told: Option<(Answer, Vec<JsValue>)>) {
        let Some((answer, contents)) = told else {
            self.writes.set(false);
            self.waits.set(false);
            speech::say(Label::WorkerGone.text());
            return self.trouble.set(Label::WorkerGone.text().into());
        };
        if matches!(answer, Answer::Halted | Answer::Files(_) | Answer::Documents(_) | Answer::No(_)) {
            self.writes.set(false);
        }
        match answer {
            Answer::Begun(workshop, settings) => {
                put(self.workshop, workshop);
                put(self.settings, settings);
            }
            Answer::Shown(shown) => self.show(*shown),
            Answer::Writing(told) => put(self.saved, told),
            Answer::Halted => {
                speech::say(Label::Halted.text());
                put(self.saved, Label::Halted.text().into());
            }
            Answer::Done(done, looks) => {
                put(self.done, done);
                self.looks.set(looks);
            }
            Answer::Documents(names) => self.print(names, &contents),
            Answer::Files(names) => self.save(&names, &contents),
            Answer::Found(found) => scan::show(self, found),
            Answer::No(why) => {
                speech::say(&why);
                put(self.saved, String::new());
                self.trouble.set(why);
            }
        }
    }

    fn show(self, shown: Shown) {
        page::keep_place("nest");
        let looked = self.looks.get_untracked();
        dialogs::tell(&shown.told);
        put(self.orders, shown.orders);
        put(self.figures, shown.figures);
        let names: Vec<String> = shown.lots.iter().map(|lot| lot.name.clone()).collect();
        if self.lot.get_untracked() >= names.len() {
            self.lot.set(0);
        }
        if self.lots.with_untracked(|known| *known != names) {
            self.lots.set(names);
        }
        self.sheets.set_value(shown.lots.into_iter().map(|lot| lot.html).collect());
        self.turn_to(self.lot.get_untracked());
        put(self.done, shown.done.clone());
        self.packed.set(shown.packed);
        self.looks.set(shown.looks);
        // What was asked for is said at once, and once more when nothing better comes.
        if self.waits.get_untracked() || looked && !shown.looks {
            speech::say(&shown.done);
        }
        self.waits.set(false);
    }

    /// Looks at another lot.
    fn turn_to(self, lot: usize) {
        self.lot.set(lot);
        put(self.nest, self.sheets.with_value(|sheets| sheets.get(lot).cloned().unwrap_or_default()));
    }

    fn save(self, names: &[String], contents: &[JsValue]) {
        let (Some(name), Some(content)) = (names.first(), contents.first()) else { return };
        let told = match files::download(name, kind(name), content) {
            Some(()) => Message::Saved(name).text(),
            None => Label::NotSaved.text().into(),
        };
        speech::say(&told);
        self.saved.set(told);
    }

    /// Offers documents to open beside the page, where browsers print them.
    fn print(self, names: Vec<String>, contents: &[JsValue]) {
        for [_, address] in self.documents.get_untracked() {
            files::give_back(&address);
        }
        let address = |(name, content): (String, &JsValue)| Some([name, files::address("application/pdf", content)?]);
        put(self.saved, String::new());
        self.documents.set(names.into_iter().zip(contents).filter_map(address).collect());
        dialogs::open("print-dialog");
    }
}

/// What a file is, for the browser.
fn kind(name: &str) -> &'static str {
    match name.rsplit_once('.').map_or("", |(_, end)| end) {
        "pdf" => "application/pdf",
        "zip" => "application/zip",
        "csv" => "text/csv",
        _ => "application/octet-stream",
    }
}

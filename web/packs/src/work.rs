//! The work on what lies on the bench: nested at once, then looked on with in slices, until something changes.

use slotwright_core::units::money::Money;
use slotwright_core::words;
use slotwright_core::words::workshop::{Label, Message};
use slotwright_cutpack::pack::papers::Remark;
use slotwright_cutpack::pack::work::schedule;
use slotwright_cutpack::pack::{
    EFFORT_MOST, EFFORT_SLICE, Nesting, NoPack, OrderRead, Orders, Pack, PackFile, TakenOrder,
};
use slotwright_protocol::packs::{Found, Lot, Shown, Told, What};

use crate::bench::{Bench, Ready};
use crate::{figures, find, html, orders, settings, sheets};

/// Files with their names.
pub(crate) type Files = Vec<(String, Vec<u8>)>;

/// How much further is looked once what was asked for is spent, for as long as somebody waits.
const FURTHER: u32 = 1_000_000;

/// Everything that is shown, and what goes on.
pub(crate) struct Work<'a> {
    bench: &'a Bench,
    ready: &'a Ready,
    read: &'a [OrderRead<'a>],
    orders: &'a Orders<'a>,
    nesting: Result<Nesting<'a>, NoPack>,
    /// What the first nest costs.
    at_once: i64,
    /// As much effort is to be spent.
    goal: u32,
    /// Whether it goes on beyond the goal.
    further: bool,
    /// The files of the pack as it is, once somebody has asked for one.
    files: Option<Vec<PackFile>>,
    /// What on its paper is not as it was given.
    remarks: Vec<String>,
}

impl<'a> Work<'a> {
    /// Nests at once, to look on with so much effort.
    pub(crate) fn begin(
        bench: &'a Bench,
        ready: &'a Ready,
        (read, orders): (&'a [OrderRead<'a>], &'a Orders<'a>),
        goal: u32,
    ) -> Self {
        let nesting = Nesting::begin(orders, &ready.settings, ready.one.clone());
        let at_once = nesting.as_ref().map_or(0, Nesting::net);
        Self { bench, ready, read, orders, nesting, at_once, goal, further: false, files: None, remarks: Vec::new() }
    }

    /// How long it was looked for by now, or is to be looked for unless somebody waits for more than that: what is made of the
    /// same orders anew gets as much.
    pub(crate) fn wanted(&self) -> u32 {
        let spent = self.nesting.as_ref().map_or(0, Nesting::effort);
        if self.further { spent } else { spent.max(self.goal) }
    }

    /// Whether it goes on.
    pub(crate) fn looks(&self) -> bool {
        let Ok(nesting) = &self.nesting else { return false };
        !nesting.is_done() && (nesting.effort() < self.goal || self.further && self.goal < EFFORT_MOST)
    }

    /// Looks on for a moment; whether that found a better nest.
    pub(crate) fn look(&mut self) -> bool {
        let Ok(nesting) = &mut self.nesting else { return false };
        if nesting.effort() >= self.goal {
            self.goal = self.goal.saturating_add(FURTHER).min(EFFORT_MOST);
        }
        let before = nesting.net();
        nesting.spend(self.goal, EFFORT_SLICE);
        self.files = None;
        self.remarks.clear();
        nesting.net() < before
    }

    /// Goes on until somebody says otherwise, or stops here.
    pub(crate) fn look_on(&mut self, on: bool) {
        self.further = on;
        if let (false, Ok(nesting)) = (on, &self.nesting) {
            self.goal = nesting.effort();
        }
    }

    pub(crate) fn pack(&self) -> Option<Pack<'a>> {
        self.nesting.as_ref().ok().map(Nesting::pack)
    }

    /// What lies here by the code of its label.
    ///
    /// # Errors
    ///
    /// Nothing here has it.
    pub(crate) fn find(&self, code: &str) -> Result<Found, String> {
        let pack = self.pack();
        find::part(self.orders, pack.as_ref(), code)
            .or_else(|| find::offcut(pack.as_ref()?, code))
            .ok_or_else(|| Message::NotHere(code).text())
    }

    /// What was done, in a sentence.
    pub(crate) fn done(&self) -> String {
        if let Some(wrong) = self.ready.wrong() {
            return wrong;
        }
        let (taken, aside) = (self.orders.taken.len(), self.aside());
        let nesting = match &self.nesting {
            Ok(nesting) => nesting,
            Err(NoPack::NoOrder) if aside == 0 => return String::new(),
            Err(NoPack::NoOrder) => return Message::AllAside(aside).text(),
            Err(none) => return [none.text(), none.hint().into()].join("; "),
        };
        let less = self.at_once.saturating_sub(nesting.net());
        // Sums of several currencies say nothing.
        let mut currencies = self.orders.taken.iter().map(|order| order.cut.range.currency.as_str());
        let currency = currencies.next().filter(|first| currencies.all(|other| other == *first));
        let less = currency.filter(|_| less > 0).map(|currency| words::money(Money::minor(less), currency));
        let parts = nesting.count_of_parts();
        let searched = nesting.effort() > 0;
        Message::Done { taken, aside, parts, less: less.as_deref(), searched, looks: self.looks() }.text()
    }

    fn aside(&self) -> usize {
        self.orders.aside.len() + self.ready.others.iter().filter(|(_, _, good)| !good).count()
    }

    /// What is there before any order: the workshop's name, and the fields of what can be set.
    pub(crate) fn begun(&self) -> Option<(String, String)> {
        let range = self.ready.known.first()?.range();
        Some((range.workshop.clone(), settings::html(range)))
    }

    /// All that is shown.
    pub(crate) fn shown(&self) -> Shown {
        let pack = self.pack();
        let lots = pack.iter().flat_map(|pack| &pack.lots);
        Shown {
            told: self.told(pack.as_ref()),
            orders: orders::html(self.bench, self.ready, self.read, self.orders),
            lots: lots.map(|lot| Lot { name: sheets::tab(lot), html: sheets::html(lot) }).collect(),
            figures: self.ready.wrong().map(|wrong| html::told("stop", &[&wrong])).unwrap_or_default()
                + &html::told("warn", &self.remarks)
                + &match (&pack, &self.nesting) {
                    (Some(pack), _) => figures::html(pack, self.ready.wrong().is_none(), self.looks()),
                    (None, Err(NoPack::NoOrder) | Ok(_)) => String::new(),
                    (None, Err(none)) => html::told("stop", &[none.text().as_str(), none.hint()]),
                },
            done: self.done(),
            looks: self.looks(),
            packed: pack.is_some() && self.ready.wrong().is_none(),
        }
    }

    /// What is said of settings; a day before the last of the orders does not count, and that is said as well.
    fn told(&self, pack: Option<&Pack<'_>>) -> Vec<Told> {
        let mut told = self.ready.told.clone();
        let dated = pack.filter(|pack| pack.settings.today.is_some());
        let before = dated.and_then(schedule).and_then(|schedule| schedule.told_before());
        told.extend(before.map(|text| Told { name: "day".into(), text, wrong: false }));
        told
    }

    /// The pack that is to be written: the nest stays as it is from then on, so that all papers are of one pack.
    ///
    /// # Errors
    ///
    /// Why there is none.
    pub(crate) fn settle(&mut self) -> Result<Pack<'a>, String> {
        self.look_on(false);
        if let Some(wrong) = self.ready.wrong() {
            return Err(wrong);
        }
        self.pack().ok_or_else(|| Label::NoPackYet.text().into())
    }

    /// Whether the files of the pack as it is were written before.
    pub(crate) const fn is_written(&self) -> bool {
        self.files.is_some()
    }

    /// Keeps what was written for whoever takes more of it.
    pub(crate) fn keep(&mut self, (files, remarks): (Vec<PackFile>, Vec<Remark>)) {
        self.files = Some(files);
        self.remarks = remarks.iter().map(Remark::text).collect();
    }

    /// What of the files is taken away.
    pub(crate) fn taken(&self, what: &What, pack: &str) -> Taken<'_> {
        let files = self.files.as_deref().unwrap_or_default();
        let of = |wanted: &dyn Fn(&str) -> bool| files.iter().filter(|file| wanted(&file.path)).collect::<Vec<_>>();
        let zip = |name: &[&str], files| Taken::Zip([name.concat().as_str(), ".zip"].concat(), files);
        match what {
            What::Pack => zip(&["pack-", pack], of(&|_| true)),
            What::Documents => {
                let documents = of(&|path| path.rsplit_once('.').is_some_and(|(_, end)| end == "pdf"));
                let called = |file: &PackFile| (self.called(file), file.bytes.clone());
                Taken::Documents(documents.into_iter().map(called).collect())
            }
            What::Some(part) => match of(&|path| path.contains(part.as_str())).as_slice() {
                [] => Taken::Nothing,
                [one] => Taken::File(named(one)),
                many => zip(&[part.trim_matches(['-', '.']), "-", pack], many.to_vec()),
            },
        }
    }

    /// What people call a document: whose it is, and its name.
    fn called(&self, file: &PackFile) -> String {
        let name = file.path.rsplit('/').next().unwrap_or_default();
        let is_its = |order: &&TakenOrder<'_>| file.of.as_deref() == Some(order.number.to_string().as_str());
        match self.orders.taken.iter().find(is_its) {
            Some(order) => Message::PaperOf(&order.spec.customer.name, name).text(),
            None => name.into(),
        }
    }
}

/// What is taken away.
pub(crate) enum Taken<'w> {
    /// The pack has none of it: one part alone has no delivery note.
    Nothing,
    /// One file with its name.
    File((String, Vec<u8>)),
    /// Documents to be printed, each with what people call it.
    Documents(Files),
    /// Several files in one, which has this name.
    Zip(String, Vec<&'w PackFile>),
}

/// A file by itself needs no folder.
fn named(file: &PackFile) -> (String, Vec<u8>) {
    let name = file.path.rsplit('/').next().unwrap_or_default();
    (name.into(), file.bytes.clone())
}

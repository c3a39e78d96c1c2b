//! What lies on the bench: the files that came, and what was set. All that nests borrow from is made of it anew.

use std::collections::BTreeMap;

use slotwright_core::input::seal::Digest;
use slotwright_core::order::intake::KnownRange;
use slotwright_core::range::{Batch, Key, Range};
use slotwright_core::units::quantity::Length;
use slotwright_core::words;
use slotwright_core::words::workshop::{Label, Message};
use slotwright_core::words::{file, pack, paper};
use slotwright_cutpack::pack::list::read_offcuts;
use slotwright_cutpack::pack::nest::SheetsInStock;
use slotwright_cutpack::pack::papers::Papers;
use slotwright_cutpack::pack::work::read_time;
use slotwright_cutpack::pack::{CutBy, OnePart, OrderRead, Settings};
use slotwright_protocol::packs::{Field, Question, Told};

/// A file that came.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Came {
    /// The number of its order: nothing that comes or goes later changes it.
    pub(crate) number: u32,
    pub(crate) name: String,
    pub(crate) bytes: Vec<u8>,
}

/// What a file is, by the end of its name: lists of offcuts and ranges are no orders.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    Order,
    Rack,
    Range,
}

impl Came {
    pub(crate) fn kind(&self) -> Kind {
        match self.name.rsplit_once('.').map_or("", |(_, end)| end) {
            "csv" => Kind::Rack,
            "toml" => Kind::Range,
            _ => Kind::Order,
        }
    }
}

/// All that was brought and set.
#[derive(Clone, Debug, Default)]
pub(crate) struct Bench {
    /// The range file's text.
    pub(crate) range: String,
    /// The files, in the order in which they came.
    pub(crate) files: Vec<Came>,
    fields: Vec<Field>,
    /// The number that each order had, by its digest: one that comes again has its own again.
    numbers: BTreeMap<String, u32>,
    /// How many numbers were given.
    given: u32,
}

/// The same as it was read, for nests to borrow from.
#[derive(Debug)]
pub(crate) struct Ready {
    /// The ranges that orders may be of; the page's own first.
    pub(crate) known: Vec<KnownRange>,
    /// What is set for the pack.
    pub(crate) settings: Settings,
    /// What is told of files that are no orders, by their places, and whether they can be used.
    pub(crate) others: Vec<(usize, String, bool)>,
    /// What is told of settings.
    pub(crate) told: Vec<Told>,
    /// The part that is cut again, if only that is.
    pub(crate) one: Option<OnePart>,
    /// The names of settings that cannot be taken as they stand, as people know them.
    wrong: Vec<String>,
}

impl Bench {
    /// Takes what changed; files come with what they hold.
    pub(crate) fn change(&mut self, question: Question, contents: Vec<Vec<u8>>) {
        match question {
            Question::Begin(range) => self.range = range,
            Question::Files(names) => {
                for (name, bytes) in names.into_iter().zip(contents) {
                    let mut came = Came { number: 0, name, bytes };
                    if came.kind() == Kind::Order {
                        came.number = self.number(&came.bytes);
                    }
                    self.files.push(came);
                }
            }
            Question::Leave(at) => {
                if let Some(at) = usize::try_from(at).ok().filter(|at| *at < self.files.len()) {
                    self.files.remove(at);
                }
            }
            Question::Set(fields) => self.fields = fields,
            Question::Look(_) | Question::Take(_) | Question::Halt | Question::Find(_) => {}
        }
    }

    /// The number of an order: its own where it was here before and is not now, else the next one.
    fn number(&mut self, bytes: &[u8]) -> u32 {
        let digest = Digest::of(bytes).to_string();
        let known = self.numbers.get(&digest).copied();
        if let Some(number) = known.filter(|known| self.files.iter().all(|came| came.number != *known)) {
            return number;
        }
        self.given += 1;
        self.numbers.insert(digest, self.given);
        self.given
    }

    /// Reads everything but the orders.
    pub(crate) fn ready(&self) -> Ready {
        let mut ready = Ready {
            known: Vec::new(),
            settings: Settings::default(),
            others: Vec::new(),
            told: Vec::new(),
            one: None,
            wrong: Vec::new(),
        };
        let mut ranges: Vec<Range> = Range::parse(&self.range).into_iter().collect();
        for (at, came) in self.files.iter().enumerate() {
            let name = came.name.as_str();
            let other = match came.kind() {
                Kind::Order => continue,
                Kind::Rack => ready.rack(name, &came.bytes),
                Kind::Range => match Range::parse(&String::from_utf8_lossy(&came.bytes)) {
                    Ok(range) => {
                        let told = Message::RangeOf(name, &range.name).text();
                        ranges.push(range);
                        Ok(told)
                    }
                    Err(problems) => {
                        let first = problems.0.first().map(words::problem).unwrap_or_default();
                        Err(Message::NotRead(name, &first).text())
                    }
                },
            };
            let good = other.is_ok();
            ready.others.push((at, other.unwrap_or_else(|wrong| wrong), good));
        }
        let mut cut_by = CutBy::default();
        for Field { name, text } in self.fields.iter().filter(|field| !field.text.trim().is_empty()) {
            let text = text.trim();
            let told = match name.split('/').collect::<Vec<_>>().as_slice() {
                ["cutter"] => CutBy::read_cutter(text).map(|cutter| cut_by.cutter = Some(cutter)).err(),
                ["allowance"] => CutBy::read_allowance(text).map(|allowance| cut_by.allowance = Some(allowance)).err(),
                ["measured", board] => match measured(&mut cut_by, &ranges, board, text) {
                    Ok(text) => {
                        ready.told.push(Told { name: name.clone(), text, wrong: false });
                        None
                    }
                    Err(wrong) => Some(wrong),
                },
                ["sheets", board, sheet] => ready.bound(board, sheet, text).err(),
                ["day"] => text
                    .parse()
                    .map(|day| ready.settings.today = Some(day))
                    .map_err(|wrong| words::no_day(&wrong))
                    .err(),
                ["booked", stage] => match ready.booked(stage, text) {
                    Ok(text) => {
                        ready.told.push(Told { name: name.clone(), text, wrong: false });
                        None
                    }
                    Err(wrong) => Some(wrong),
                },
                ["part"] => text.parse().map(|one| ready.one = Some(one)).err(),
                ["paper"] => named(text, &Papers::FORMATS).map(|format| ready.settings.papers.format = format).err(),
                ["labels"] => named(text, &Papers::LABELS).map(|labels| ready.settings.papers.labels = labels).err(),
                _ => None,
            };
            if let Some(text) = told {
                ready.wrong.push(label(name, &ranges));
                ready.told.push(Told { name: name.clone(), text, wrong: true });
            }
        }
        ready.known = ranges.into_iter().map(|range| cut_by.known(range)).collect();
        ready
    }

    /// Reads the orders, of the ranges that are known.
    pub(crate) fn orders<'a>(&self, ready: &'a Ready) -> Vec<OrderRead<'a>> {
        let orders = self.files.iter().filter(|came| came.kind() == Kind::Order);
        orders.map(|came| OrderRead::of(came.number, came.name.clone(), &came.bytes, &ready.known)).collect()
    }

    /// Where the orders are among the files.
    pub(crate) fn places(&self) -> impl Iterator<Item = usize> {
        self.files.iter().enumerate().filter(|(_, came)| came.kind() == Kind::Order).map(|(at, _)| at)
    }
}

impl Ready {
    /// What keeps a pack from being taken: nobody cuts by a setting that was meant otherwise.
    pub(crate) fn wrong(&self) -> Option<String> {
        (!self.wrong.is_empty()).then(|| Message::SettingsWrong(&self.wrong).text())
    }

    /// A list of offcuts: the last one counts.
    fn rack(&mut self, name: &str, bytes: &[u8]) -> Result<String, String> {
        let rack = read_offcuts(bytes).map_err(|wrong| {
            Message::NotRead(name, &pack::Message::Offcut { line: wrong.line, what: &wrong.what }.text()).text()
        })?;
        let told = Message::RackOf(name, rack.len()).text();
        self.settings.rack = rack;
        Ok(told)
    }

    /// How many sheets there are.
    fn bound(&mut self, board: &str, sheet: &str, count: &str) -> Result<(), String> {
        let bound = || {
            let count = count.parse().ok()?;
            Some(SheetsInStock { board: board.parse().ok()?, sheet: sheet.parse().ok()?, count })
        };
        self.settings.bounds.push(bound().ok_or_else(|| Label::WantsCount.text().to_owned())?);
        Ok(())
    }

    /// How long work is booked at a stage; what was understood.
    fn booked(&mut self, stage: &str, time: &str) -> Result<String, String> {
        let stage = stage.parse().map_err(|wrong| file::Message::Key(&wrong).text())?;
        let minutes = read_time(time)?;
        self.settings.backlog.minutes.insert(stage, minutes);
        Ok(Message::Booked(minutes).text())
    }
}

/// Takes a measured batch, unless it cannot be that board; what is told of it.
fn measured(cut_by: &mut CutBy, ranges: &[Range], board: &str, text: &str) -> Result<String, String> {
    let key: Key = board.parse().map_err(|wrong| file::Message::Key(&wrong).text())?;
    let batch: Batch = text.parse().map_err(|wrong| file::Message::Batch(&wrong).text())?;
    let nominal = ranges.iter().find_map(|range| range.board(&key)).map(|board| board.nominal_mm);
    if let Some((nominal, (mean, least, most))) = nominal.and_then(|nominal| Some((nominal, batch.strays(nominal)?))) {
        return Err(file::Message::Strays { mean, nominal, least, most }.text());
    }
    let mm = |length: Length| paper::Message::Millimetres(&words::decimal(length.in_mm(), 2)).text();
    let told = Message::Mean(&mm(batch.mean()), &mm(batch.deviation())).text();
    cut_by.batches.push((key, batch));
    Ok(told)
}

/// What people know a setting by.
fn label(name: &str, ranges: &[Range]) -> String {
    let board = |board: &str| {
        let key: Key = board.parse().ok()?;
        ranges.iter().find_map(|range| range.board(&key)).map(|board| board.name.clone())
    };
    match name.split('/').collect::<Vec<_>>().as_slice() {
        ["measured", key] => board(key).map(|board| Message::ThicknessOf(&board).text()),
        ["sheets", key, _] => board(key).map(|board| Message::StockOf(&board).text()),
        ["cutter"] => Some(Label::Cutter.text().into()),
        ["allowance"] => Some(Label::Allowance.text().into()),
        ["day"] => Some(Label::FromDay.text().into()),
        ["booked", key] => {
            let mut stages = ranges.iter().flat_map(|range| &range.stages);
            stages.find(|stage| stage.key.as_str() == *key).map(|stage| Message::BookedAt(&stage.name).text())
        }
        ["part"] => Some(Label::OnePart.text().into()),
        _ => None,
    }
    .unwrap_or_else(|| name.into())
}

/// Finds something by its name.
fn named<T: Copy>(text: &str, known: &[(&str, T)]) -> Result<T, String> {
    let found = known.iter().find(|(name, _)| *name == text).map(|(_, thing)| *thing);
    found.ok_or_else(|| pack::Message::OneOf(&known.iter().map(|(name, _)| *name).collect::<Vec<_>>()).text())
}

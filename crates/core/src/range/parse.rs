//! Reading a range file: every problem with its place, not just the first.

use core::fmt;
use core::ops;

use alloc::collections::BTreeMap;

use serde::Deserialize;
use serde::de::DeserializeOwned;
use toml::Spanned;
use toml::de::{DeTable, DeValue, ValueDeserializer};

use super::check::{Wrong, check};
use super::{Board, Build, Calendar, Carrier, Finish, Handling, HoleKind, Key, Model, Plug, Range, Rates, Stage, Strength};

/// Largest range file that is read.
const BYTES_MOST: usize = 256 * 1024;

/// One thing wrong with a range file.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    /// Line, counted from 1.
    pub line: usize,
    /// Column in characters, counted from 1.
    pub column: usize,
    /// The place in the file's own names: `model.sedge.width_mm.step`.
    pub path: String,
    /// What is wrong.
    pub wrong: Wrong,
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}: ", self.line, self.column)?;
        if !self.path.is_empty() {
            write!(f, "{}: ", self.path)?;
        }
        write!(f, "{}", self.wrong)
    }
}

/// Everything wrong with a range file, in the order of the file.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub struct RangeProblems(pub Vec<Problem>);

impl fmt::Display for RangeProblems {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, problem) in self.0.iter().enumerate() {
            write!(f, "{}{problem}", if at > 0 { "\n" } else { "" })?;
        }
        Ok(())
    }
}

/// The keys outside of all sections.
const HEAD: [&str; 6] = ["format", "key", "name", "workshop", "note", "currency"];

/// What stands before the first section.
#[derive(Deserialize)]
struct Head {
    format: u32,
    key: Key,
    name: String,
    workshop: String,
    #[serde(default)]
    note: String,
    currency: String,
}

impl Range {
    /// Reads a range file and judges it as a whole.
    ///
    /// # Errors
    ///
    /// Every problem of the file. While any part of it cannot be read, how the parts refer to each
    /// other is not judged.
    pub fn parse(text: &str) -> Result<Self, RangeProblems> {
        if text.len() > BYTES_MOST {
            let wrong = Wrong::TooLarge { bytes: text.len(), most: BYTES_MOST };
            return Err(RangeProblems(vec![Problem { line: 1, column: 1, path: String::new(), wrong }]));
        }
        let mut file = File { text, problems: Vec::new(), places: BTreeMap::new() };
        let (root, errors) = DeTable::parse_recoverable(text);
        for error in errors {
            file.fault(error.span(), String::new(), Wrong::Unreadable(error.message().into()));
        }
        let range = if file.problems.is_empty() { file.sections(root.into_inner()) } else { None };
        match range {
            Some(range) if file.problems.is_empty() => {
                for (path, wrong) in check(&range) {
                    let at = file.place(&path);
                    file.problem(at, path, wrong);
                }
                if file.problems.is_empty() { Ok(range) } else { Err(file.done()) }
            }
            _ => Err(file.done()),
        }
    }
}

/// A range file while it is read.
struct File<'a> {
    text: &'a str,
    problems: Vec<Problem>,
    /// Byte offset of every value by its path.
    places: BTreeMap<String, usize>,
}

type Table<'a> = DeTable<'a>;

impl File<'_> {
    fn sections(&mut self, mut root: Table<'_>) -> Option<Range> {
        for (key, value) in &root {
            self.note_places(key.get_ref(), value);
        }
        let boards = self.list::<Board>(&mut root, "board", true);
        let finishes = self.list::<Finish>(&mut root, "finish", true);
        let holes = self.list::<HoleKind>(&mut root, "hole", false);
        let plugs = self.list::<Plug>(&mut root, "plug", false);
        let models = self.list::<Model>(&mut root, "model", true);
        let build = self.one::<Build>(&mut root, "build");
        let strength = self.one::<Strength>(&mut root, "strength");
        let handling = self.one::<Handling>(&mut root, "handling");
        let rates = self.one::<Rates>(&mut root, "rates");
        let stages = self.list::<Stage>(&mut root, "stage", true);
        let calendar = self.one::<Calendar>(&mut root, "calendar");
        let carriers = self.list::<Carrier>(&mut root, "carrier", true);
        let head = self.head(root)?;
        Some(Range {
            format: head.format,
            key: head.key,
            name: head.name,
            workshop: head.workshop,
            note: head.note,
            currency: head.currency,
            boards: boards?,
            finishes: finishes?,
            holes: holes?,
            plugs: plugs?,
            models: models?,
            build: build?,
            strength: strength?,
            handling: handling?,
            rates: rates?,
            stages: stages?,
            calendar: calendar?,
            carriers: carriers?,
        })
    }

    /// Reads what stands outside of all sections; any section left by now has no meaning.
    fn head(&mut self, root: Table<'_>) -> Option<Head> {
        let (head, strange): (Table<'_>, Table<'_>) =
            root.into_iter().partition(|(key, _)| HEAD.contains(&key.get_ref().as_ref()));
        for key in strange.keys() {
            self.fault(Some(key.span()), key.get_ref().to_string(), Wrong::Strange);
        }
        self.read::<Head>(String::new(), Spanned::new(0..0, DeValue::Table(head)))
    }

    /// Reads each element on its own, so that one bad element does not hide another.
    fn list<T: DeserializeOwned>(&mut self, root: &mut Table<'_>, name: &str, needed: bool) -> Option<Vec<T>> {
        let Some(value) = root.remove(name) else {
            if needed {
                self.problem(0, name.into(), Wrong::Missing);
                return None;
            }
            return Some(Vec::new());
        };
        let span = value.span();
        let DeValue::Array(elements) = value.into_inner() else {
            self.fault(Some(span), name.into(), Wrong::NotAList);
            return None;
        };
        let mut list = Some(Vec::new());
        for (at, element) in elements.into_iter().enumerate() {
            let path = format!("{name}.{}", element_name(at, &element));
            match (self.read::<T>(path, element), &mut list) {
                (Some(read), Some(list)) => list.push(read),
                _ => list = None,
            }
        }
        list
    }

    fn one<T: DeserializeOwned>(&mut self, root: &mut Table<'_>, name: &str) -> Option<T> {
        if let Some(value) = root.remove(name) {
            return self.read(name.into(), value);
        }
        self.problem(0, name.into(), Wrong::Missing);
        None
    }

    fn read<T: DeserializeOwned>(&mut self, path: String, value: Spanned<DeValue<'_>>) -> Option<T> {
        let whole = value.span();
        match T::deserialize(ValueDeserializer::from(value)) {
            Ok(read) => Some(read),
            Err(error) => {
                let span = error.span().filter(|span| span.end > 0).unwrap_or(whole);
                self.fault(Some(span), path, Wrong::Unreadable(error.message().into()));
                None
            }
        }
    }

    fn fault(&mut self, span: Option<ops::Range<usize>>, path: String, wrong: Wrong) {
        self.problem(span.map_or(0, |span| span.start), path, wrong);
    }

    fn problem(&mut self, offset: usize, path: String, wrong: Wrong) {
        let before = self.text.get(..offset).unwrap_or(self.text);
        let line = before.matches('\n').count() + 1;
        let column = before.rsplit('\n').next().unwrap_or_default().chars().count() + 1;
        self.problems.push(Problem { line, column, path, wrong });
    }

    /// Where a path stands; the nearest part of it that is in the file.
    fn place(&self, path: &str) -> usize {
        let mut path = path;
        loop {
            if let Some(offset) = self.places.get(path) {
                return *offset;
            }
            let Some((shorter, _)) = path.rsplit_once('.') else { return 0 };
            path = shorter;
        }
    }

    fn note_places(&mut self, path: &str, value: &Spanned<DeValue<'_>>) {
        self.places.insert(path.into(), value.span().start);
        match value.get_ref() {
            DeValue::Table(table) => {
                for (key, value) in table {
                    self.note_places(&format!("{path}.{}", key.get_ref()), value);
                }
            }
            DeValue::Array(elements) => {
                for (at, element) in elements.iter().enumerate() {
                    self.note_places(&format!("{path}.{}", element_name(at, element)), element);
                }
            }
            _ => {}
        }
    }

    fn done(mut self) -> RangeProblems {
        self.problems.sort_by_key(|problem| (problem.line, problem.column));
        RangeProblems(self.problems)
    }
}

/// An element by its own key, or by its number.
fn element_name(at: usize, element: &Spanned<DeValue<'_>>) -> String {
    let table = element.get_ref().as_table();
    let key = table.and_then(|table| table.get("key")).and_then(|key| key.get_ref().as_str());
    key.map_or_else(|| (at + 1).to_string(), String::from)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{DEMO, demo};

    #[test]
    fn the_demo_range_has_no_problem() {
        assert_eq!(Range::parse(DEMO).map(|range| range.models.len()), Ok(3));
    }

    fn problems(from: &str, to: &str) -> Vec<String> {
        assert!(DEMO.contains(from), "{from:?} is not in the demo range");
        let problems = Range::parse(&DEMO.replacen(from, to, 1)).unwrap_err().0;
        problems.iter().map(|problem| format!("{}: {}", problem.path, problem.wrong)).collect()
    }

    #[test]
    fn problems_of_several_sections_come_together() {
        let text = DEMO
            .replacen("coats_before = 2", "coats_before = \"two\"", 1)
            .replacen("rise_mm = 62", "raise_mm = 62", 1)
            .replacen("[handling]", "[handlung]", 1);
        let problems = Range::parse(&text).unwrap_err().0;
        let paths: Vec<&str> = problems.iter().map(|problem| problem.path.as_str()).collect();
        assert_eq!(paths, ["handling", "finish.clear", "hole.slot-90", "handlung"], "{problems:?}");
        assert!(problems.iter().skip(1).all(|problem| problem.line > 50 && problem.column > 0), "{problems:?}");
    }

    #[test]
    fn what_leads_nowhere_is_named_with_its_place() {
        assert_eq!(
            problems("body = \"birch-18\"", "body = \"birch-19\""),
            ["model.sedge.body: no board \"birch-19\" for this use in the range"]
        );
        assert_eq!(
            problems("start = 1640", "start = 1645"),
            ["model.sedge.width_mm.start: 1645 is not on a step of 10 above 900"]
        );
        let text = DEMO.replacen("start = 1640", "start = 1645", 1);
        let problem = Range::parse(&text).unwrap_err().0.remove(0);
        let line = text.lines().position(|line| line.contains("start = 1645")).unwrap() + 1;
        assert_eq!(problem.line, line);
    }

    #[test]
    fn a_key_that_stands_twice_is_found() {
        let found = problems("key = \"pale\"", "key = \"clear\"");
        assert_eq!(found.first().map(String::as_str), Some("finish.clear: the key \"clear\" stands here more than once"));
    }

    #[test]
    fn figures_out_of_proportion_are_found() {
        for (from, to) in [
            ("format = 1 ", "format = 2 "),
            ("currency = \"EUR\"", "currency = \"euro\""),
            ("nominal_mm = 18", "nominal_mm = 0"),
            ("nominal_mm = 18", "nominal_mm = inf"),
            ("colour = \"#e3c792\"", "colour = \"wood\""),
            ("weekdays = [1, 2, 3, 4, 5]", "weekdays = [0]"),
            ("weekdays = [1, 2, 3, 4, 5]", "weekdays = []"),
            ("minutes_per_day = 240", "minutes_per_day = 0"),
            ("margin_per_mille = 240", "margin_per_mille = 1000"),
            ("step = 10", "step = 0"),
            ("bays = { least = 1, most = 4 }", "bays = { least = 1, most = 7 }"),
            ("clearance_mm = 0.15", "clearance_mm = 0.3"),
            ("to = \"2027-01-03\"", "to = \"2026-01-03\""),
        ] {
            assert_eq!(problems(from, to).len(), 1, "{from} -> {to}: {:?}", problems(from, to));
        }
    }

    proptest::proptest! {
        #[test]
        fn no_text_makes_it_panic(text in "\\PC{0,200}") {
            let _ = Range::parse(&text);
        }

        #[test]
        fn no_damage_to_the_demo_range_makes_it_panic(at in 0..DEMO.len(), byte in proptest::arbitrary::any::<u8>()) {
            let mut bytes = DEMO.as_bytes().to_vec();
            bytes[at] = byte;
            if let Ok(text) = String::from_utf8(bytes)
                && let Ok(range) = Range::parse(&text)
            {
                proptest::prop_assert_eq!(range.models.len(), demo().models.len());
            }
        }
    }
}

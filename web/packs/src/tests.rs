//! What the worker shows and hands over, for orders that the core itself writes.

use slotwright_core::business::promise::Backlog;
use slotwright_core::choice::Choice;
use slotwright_core::order::derive::derive;
use slotwright_core::order::spec::{Customer, OrderSpec};
use slotwright_core::range::Range;
use slotwright_cutpack::pack::{EFFORT, EFFORT_SLICE, Nesting, Orders, PackFile};
use slotwright_protocol::packs::{Field, Question, Shown, What};

use crate::bench::Bench;
use crate::work::{Files, Taken, Work};
use crate::zipped::Zipping;

const RANGE: &str = include_str!("../../ranges/fenland.toml");

/// An order of the first unit of a model of the range.
fn order(model: usize, name: &str) -> Option<Vec<u8>> {
    let range = Range::parse(RANGE).ok()?;
    let choice = Choice::starting(range.models.get(model)?)?;
    let (today, backlog) = ("2026-11-25".parse().ok()?, Backlog::default());
    let derived = derive(&range, &choice, today, &backlog);
    let customer = Customer { name: name.into(), contact: "a@example.org".into(), address: vec!["1 Dyke Lane".into()] };
    Some(OrderSpec::new(derived.orderable()?, customer, String::new()).ok()?.to_text().into_bytes())
}

fn bench(files: &[(&str, Vec<u8>)]) -> Bench {
    let mut bench = Bench::default();
    bench.change(Question::Begin(RANGE.into()), Vec::new());
    let (names, contents) = files.iter().map(|(name, bytes)| ((*name).to_string(), bytes.clone())).unzip();
    bench.change(Question::Files(names), contents);
    bench
}

fn two() -> Bench {
    bench(&[("one.json", order(0, "Ada <Reed>").unwrap()), ("two.json", order(1, "Ben Carr").unwrap())])
}

fn set(bench: &mut Bench, fields: &[(&str, &str)]) {
    let field = |(name, text): &(&str, &str)| Field { name: (*name).into(), text: (*text).into() };
    bench.change(Question::Set(fields.iter().map(field).collect()), Vec::new());
}

/// Does something with the work on a bench.
fn with<T>(bench: &Bench, what: impl FnOnce(&mut Work<'_>) -> T) -> T {
    let ready = bench.ready();
    let read = bench.orders(&ready);
    let orders = Orders::of(&read);
    what(&mut Work::begin(bench, &ready, (&read, &orders), EFFORT))
}

fn zipped<'a>(files: impl IntoIterator<Item = &'a PackFile>) -> Vec<u8> {
    let mut zip = Zipping::begin();
    files.into_iter().for_each(|file| zip.add(file).unwrap());
    zip.done().unwrap()
}

/// What is taken away, written at once.
fn take(work: &mut Work<'_>, what: &What) -> Result<Files, String> {
    let pack = work.settle()?;
    if !work.is_written() {
        let mut writing = pack.writing();
        while writing.step() {
            assert!(writing.percent() < 100);
        }
        assert_eq!(writing.percent(), 100);
        work.keep(writing.done());
    }
    Ok(match work.taken(what, &pack.full_name()) {
        Taken::Nothing => Vec::new(),
        Taken::File(file) => vec![file],
        Taken::Documents(documents) => documents,
        Taken::Zip(name, files) => vec![(name, zipped(files))],
    })
}

fn shown(bench: &Bench) -> Shown {
    with(bench, |work| work.shown())
}

#[test]
fn orders_are_taken_or_set_aside_with_their_reasons() {
    let whole = order(0, "Ada <Reed>").unwrap();
    let mut short = whole.clone();
    short.truncate(200);
    let bench = bench(&[
        ("one.json", whole.clone()),
        ("short.json", short),
        ("again.json", whole),
        ("large.json", vec![b' '; 70_000]),
        ("picture.json", vec![0xff, 0xd8]),
    ]);
    let Shown { orders, done, packed, .. } = shown(&bench);
    assert!(packed);
    let (workshop, settings) = with(&bench, |work| work.begun()).unwrap();
    assert!(workshop == "Odd Lintel Workshop" && settings.contains("name=\"measured/birch-18\""), "{settings}");
    assert!(orders.contains("<p class=\"person\">Ada &lt;Reed&gt;</p><p class=\"unit\">Sedge "), "{orders}");
    for reason in
        ["part of the file is missing", "the same order as one.json", "65536 are the most that is read", "not text"]
    {
        assert!(orders.contains(reason), "{reason}: {orders}");
    }
    assert!(done.starts_with("1 order, ") && done.contains(", 4 set aside"), "{done}");
}

#[test]
fn a_file_that_goes_out_again_is_no_longer_cut() {
    let mut bench = two();
    assert!(shown(&bench).done.starts_with("2 orders"));
    bench.change(Question::Leave(0), Vec::new());
    let Shown { orders, done, .. } = shown(&bench);
    assert!(done.starts_with("1 order") && !orders.contains("Ada"), "{done} {orders}");
    bench.change(Question::Leave(7), Vec::new());
    bench.change(Question::Leave(0), Vec::new());
    let Shown { orders, done, packed, lots, .. } = shown(&bench);
    assert_eq!((orders, done, packed, lots.len()), (String::new(), String::new(), false, 0));
}

#[test]
fn a_measured_batch_is_cut_from_and_a_wrong_one_is_told() {
    let mut bench = two();
    let usual = shown(&bench).lots.first().map(|lot| lot.html.clone()).unwrap();
    set(&mut bench, &[("measured/birch-18", "17.5 17.5 17.6 17.5 17.5 17.6 17.5 17.5"), ("cutter", "8")]);
    let Shown { told, lots, orders, .. } = shown(&bench);
    let thin = lots.first().map(|lot| lot.html.as_str()).unwrap();
    let beginning = |html: &str| html.chars().take(200).collect::<String>();
    let (usual, thin) = (beginning(&usual), beginning(thin));
    assert!(usual.contains("slots for 17.7\u{a0}mm") && usual.contains("cutter 6\u{a0}mm"), "{usual}");
    assert!(thin.contains("slots for 17.55\u{a0}mm") && thin.contains("cutter 8\u{a0}mm"), "{thin}");
    assert!(orders.contains("cut by another batch or cutter than promised"), "{orders}");
    assert!(told.iter().all(|told| !told.wrong && told.text.starts_with("Mean 17.55")), "{told:?}");
    for (name, text, said) in [
        ("measured/birch-18", "17.5 17.6", "2 points were given; measure eight"),
        ("measured/birch-18", "12 12 12 12 12 12 12 12", "12 mm was measured for a board of 18 mm"),
        ("cutter", "thick", "is no length from 1 to 25 mm"),
        ("sheets/birch-18/large", "many", "Write how many there are"),
        ("labels", "a5", "write one of a4-3x8"),
        ("day", "tomorrow", "is not a day written YYYY-MM-DD"),
        ("booked/cut", "much", "write minutes or hours"),
        ("booked/cut", "200 000 h", "10\u{202f}000\u{202f}000 minutes are the most"),
    ] {
        set(&mut bench, &[(name, text)]);
        let Shown { told, packed, figures, .. } = shown(&bench);
        assert!(told.len() == 1 && told[0].wrong && told[0].text.contains(said), "{name}: {told:?}");
        // Nobody cuts by what stands there instead.
        assert!(!packed && figures.contains("There is no pack until this can be read"), "{name}: {figures}");
        let refused = with(&bench, |work| take(work, &What::Pack)).unwrap_err();
        assert!(refused.contains("There is no pack until this can be read"), "{refused}");
    }
}

#[test]
fn promises_are_checked_from_a_stated_day_behind_what_is_booked() {
    let mut bench = two();
    let settings = |bench: &Bench| bench.ready().settings;
    assert_eq!((settings(&bench).today, settings(&bench).backlog), (None, Backlog::default()));
    let fields = with(&bench, |work| work.begun()).unwrap().1;
    assert!(fields.contains("name=\"day\"") && fields.contains("name=\"booked/cut\""), "{fields}");
    set(&mut bench, &[("day", " 2027-03-01 "), ("booked/cut", "600")]);
    let mut backlog = Backlog::default();
    backlog.minutes.insert("cut".parse().unwrap(), 600);
    assert_eq!((settings(&bench).today, settings(&bench).backlog), ("2027-03-01".parse().ok(), backlog));
    for (text, read, said) in [
        ("1 200", 1200, "1\u{202f}200\u{a0}min (20\u{a0}h\u{a0}00)"),
        ("10 h", 600, "600\u{a0}min (10\u{a0}h\u{a0}00)"),
    ] {
        set(&mut bench, &[("day", "2027-03-01"), ("booked/cut", text)]);
        assert_eq!(settings(&bench).backlog.minutes.values().copied().collect::<Vec<u32>>(), [read]);
        assert!(shown(&bench).told.iter().any(|told| !told.wrong && told.text == said), "{:?}", shown(&bench).told);
    }
    let figures = shown(&bench).figures;
    assert!(figures.contains("once what is booked is done, these would be late:"), "{figures}");
}

#[test]
fn a_day_before_the_orders_is_told_not_to_count() {
    let mut bench = two();
    let figures = shown(&bench).figures;
    set(&mut bench, &[("day", "2026-11-20")]);
    let Shown { told, figures: earlier, packed, .. } = shown(&bench);
    assert!(packed && told.len() == 1 && !told[0].wrong && told[0].name == "day", "{told:?}");
    let said = "Work was set to begin after Fri 20 November 2026, but the last of these orders was made on Wed 25 November 2026";
    assert!(told[0].text.starts_with(said), "{told:?}");
    assert!(earlier.contains(said) && !figures.contains("was set to begin"), "{earlier}");
}

#[test]
fn a_pack_has_its_name_once_it_is_nested() {
    let mut bench = two();
    let name = |bench: &Bench| {
        with(bench, |work| {
            assert!(!work.shown().figures.contains("<dt>Pack</dt>"));
            while work.looks() {
                work.look();
            }
            let figures = work.shown().figures;
            let at = figures.find("<dt>Pack</dt><dd>").unwrap() + "<dt>Pack</dt><dd>".len();
            let name: String = figures[at..].chars().take_while(|letter| *letter != '<').collect();
            let zip = take(work, &What::Pack).unwrap().remove(0).0;
            assert_eq!(zip, format!("pack-{name}.zip"));
            name
        })
    };
    let first = name(&bench);
    set(&mut bench, &[("day", "2027-03-01")]);
    let later = name(&bench);
    let cut = |name: &str| name.split('-').next().unwrap_or_default().to_owned();
    assert!(first != later && cut(&first) == cut(&later), "{first}, {later}: the same sheets on other days");
    set(&mut bench, &[("allowance", "3")]);
    assert_ne!(cut(&name(&bench)), cut(&first));
}

#[test]
fn an_order_keeps_its_number_for_the_visit() {
    let mut bench = two();
    let numbers = |bench: &Bench| -> Vec<u32> {
        let ready = bench.ready();
        let read = bench.orders(&ready);
        Orders::of(&read).taken.iter().map(|order| order.number).collect()
    };
    let third = order(2, "Cid Moss").unwrap();
    bench.change(Question::Files(vec!["three.json".into()]), vec![third]);
    assert_eq!(numbers(&bench), [1, 2, 3]);
    bench.change(Question::Leave(0), Vec::new());
    assert_eq!(numbers(&bench), [2, 3], "labels that were printed still fit");
    bench.change(Question::Files(vec!["one.json".into()]), vec![order(0, "Ada <Reed>").unwrap()]);
    assert_eq!(numbers(&bench), [2, 3, 1], "it has its own again");
    bench.change(Question::Files(vec!["copy.json".into()]), vec![order(0, "Ada <Reed>").unwrap()]);
    bench.change(Question::Files(vec!["four.json".into()]), vec![order(0, "Dot Fell").unwrap()]);
    assert_eq!(numbers(&bench), [2, 3, 1, 5], "a copy is counted as the tool counts it");
}

#[test]
fn what_paper_lacks_is_told() {
    let bench = bench(&[("one.json", order(0, "Ada \u{8acf}").unwrap())]);
    with(&bench, |work| {
        assert!(!work.shown().figures.contains("has no letter"));
        take(work, &What::Some("labels.pdf".into())).unwrap();
        assert!(work.shown().figures.contains("has no letter '\u{8acf}'"), "{}", work.shown().figures);
    });
}

#[test]
fn one_part_is_cut_again() {
    let mut bench = two();
    set(&mut bench, &[("part", "2/top")]);
    let Shown { done, lots, packed, .. } = shown(&bench);
    assert!(packed && lots.len() == 1 && lots[0].html.contains("2-"), "{done}");
    let files = with(&bench, |work| take(work, &What::Documents)).unwrap();
    assert_eq!(files.len(), 3, "a part is no order");
    assert!(with(&bench, |work| take(work, &What::Some("-delivery.".into()))).unwrap().is_empty());
    let Shown { done, figures, .. } = shown(&bench);
    assert!(done.starts_with("2 orders, 1 part") && !figures.contains("Promises"), "{done} {figures}");
    set(&mut bench, &[("part", "9/top")]);
    let Shown { packed, figures, .. } = shown(&bench);
    assert!(!packed && figures.contains("no order has the part 9/top"), "{figures}");
}

#[test]
fn the_code_of_a_label_leads_to_its_sheet_and_its_order() {
    let mut bench = two();
    with(&bench, |work| {
        let lots = work.shown().lots;
        let digest = work.pack().unwrap().orders.taken[1].spec.digest.short();
        for code in [format!("{digest}/top"), "2/top".into()] {
            let found = work.find(&code).unwrap();
            let (lot, sheet) = found.sheet.unwrap();
            assert!(found.order == Some(2) && found.mark.starts_with("2-"), "{found:?}");
            assert!(
                found.told.starts_with(&format!("{}, top, for Ben Carr: sheet {sheet}, step ", found.mark)),
                "{found:?}"
            );
            // Its part is on the picture of that sheet, and on no other.
            let html = &lots[usize::try_from(lot).unwrap()].html;
            let of_part = format!("data-part=\"{}\"", found.mark);
            let (before, _) = html.split_once(&of_part).unwrap();
            assert!(before.rfind(&format!("data-do=\"large {sheet}\"")) == before.rfind("data-do=\"large "), "{sheet}");
            assert_eq!(lots.iter().map(|lot| lot.html.matches(&of_part).count()).sum::<usize>(), 1);
        }
        let kept = work.pack().unwrap().rack_after().remove(0).name;
        let found = work.find(&kept).unwrap();
        assert!(found.sheet.is_some() && found.order.is_none() && found.told.contains(&kept), "{found:?}");
        for code in ["00000000/top", "9/top", "1/lid", "3f2a81c0-01a", "top"] {
            assert!(work.find(code).unwrap_err().starts_with(&format!("Nothing here has the code {code:?}")), "{code}");
        }
    });
    set(&mut bench, &[("part", "2/top")]);
    let found = with(&bench, |work| work.find("1/top")).unwrap();
    assert!(found.sheet.is_none() && found.order == Some(1), "{found:?}");
}

#[test]
fn lists_of_offcuts_and_ranges_come_as_files_too() {
    let list = "name,board,finish,along_mm,across_mm\r\nr1,birch-18,clear,2000,900\r\n";
    let mut bench = two();
    let files = [("rack.csv", list), ("old.toml", RANGE), ("bad.csv", "name\r\n1\r\n"), ("bad.toml", "a = ")];
    let (names, contents) = files.iter().map(|(name, text)| ((*name).to_string(), text.as_bytes().to_vec())).unzip();
    bench.change(Question::Files(names), contents);
    let ready = bench.ready();
    assert_eq!((ready.settings.rack.len(), ready.known.len()), (1, 2));
    assert_eq!(ready.others.iter().map(|(_, _, good)| *good).collect::<Vec<_>>(), [true, true, false, false]);
    let Shown { orders, done, .. } = shown(&bench);
    assert!(orders.contains("1 offcut of the rack") && orders.contains("the range Fenland"), "{orders}");
    assert!(done.contains("2 orders") && done.contains("2 set aside"), "{done}");
}

#[test]
fn the_pack_is_that_of_the_same_effort_however_it_was_sliced() {
    let bench = two();
    let (name, zip) = with(&bench, |work| {
        while work.looks() {
            work.look();
        }
        take(work, &What::Pack).unwrap().remove(0)
    });
    let ready = bench.ready();
    let read = bench.orders(&ready);
    let orders = Orders::of(&read);
    let mut nesting = Nesting::begin(&orders, &ready.settings, None).unwrap();
    // All at once, as little as two slices would.
    while nesting.spend(EFFORT, EFFORT_SLICE * 7) {}
    let pack = nesting.pack();
    let files = pack.files().0;
    assert_eq!(name, format!("pack-{}.zip", pack.full_name()));
    assert!(zip == zipped(&files), "another pack");
    assert!(zip.starts_with(b"PK\x03\x04"));
}

#[test]
fn what_is_set_takes_nothing_back_of_how_long_it_was_looked() {
    let bench = two();
    let ready = bench.ready();
    let read = bench.orders(&ready);
    let orders = Orders::of(&read);
    let begin = |goal| Work::begin(&bench, &ready, (&read, &orders), goal);
    let mut work = begin(EFFORT);
    work.look_on(true);
    for _ in 0..3 {
        work.look();
    }
    assert_eq!(work.wanted(), EFFORT_SLICE * 3, "what was asked for without an end is not asked for again");
    work.look_on(false);
    assert_eq!(work.wanted(), EFFORT_SLICE * 3);
    // Something else is set before as much was spent again.
    let mut work = begin(EFFORT * 3);
    work.look();
    assert_eq!(work.wanted(), EFFORT * 3);
}

#[test]
fn papers_are_taken_by_themselves_and_stop_the_search() {
    let bench = two();
    with(&bench, |work| {
        work.look();
        assert!(work.looks());
        let labels = take(work, &What::Some("labels.pdf".into())).unwrap();
        assert!(!work.looks(), "papers are of one pack");
        assert_eq!(labels.len(), 1);
        assert!(labels[0].0 == "labels.pdf" && labels[0].1.starts_with(b"%PDF"));
        let cards = take(work, &What::Some("-job-card.".into())).unwrap();
        assert!(
            cards.len() == 1 && cards[0].0.starts_with("job-card-") && cards[0].1.starts_with(b"PK"),
            "{}",
            cards[0].0
        );
        let documents = take(work, &What::Documents).unwrap();
        assert_eq!(documents.len(), 4 + 2 * 4);
        assert!(documents.iter().any(|(called, _)| called == "02-delivery.pdf, for Ben Carr"), "{:?}", documents[7].0);
        work.look_on(true);
        assert!(work.looks());
    });
    let nothing = with(&Bench::default(), |work| take(work, &What::Pack));
    assert_eq!(nothing, Err("There is no pack yet: no order is taken.".into()));
}

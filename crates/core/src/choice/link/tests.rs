use proptest::prelude::*;

use super::*;
use crate::business::promise::Backlog;
use crate::choice::{Bay, Bowed, Fill, Hole, Hung, Place};
use crate::order::derive::derive_unproven;
use crate::range::Key;
use crate::rules::sample::{Wanted, choices};
use crate::testing::demo;
use crate::units::quantity::Dim;
use crate::words::link::{Message, Since, difference};

/// The link in the page of this module.
const FULL: &str =
    "1/teasel/1640x420x340/25/birch-9/chalk/2o,1s2:h=grommet@-30:d=receiver,4l/w3000/s550/p=hdmi/@a1b2c3d4=113194";

fn made(minor: i64) -> Made {
    Made { range: "a1b2c3d4".parse().unwrap(), price: Money::minor(minor) }
}

fn key<T: FromStr<Err: fmt::Debug>>(text: &str) -> T {
    text.parse().unwrap()
}

fn full() -> Link {
    let bay = |share, fill| Bay { share, fill, hole: None, device: None };
    let middle = Bay {
        hole: Some(Hole { kind: key("grommet"), offset_mm: Dim::mm(-30) }),
        device: Some(key("receiver")),
        ..bay(1, Fill::Shelves(2))
    };
    let choice = Choice {
        model: key("teasel"),
        width_mm: Dim::mm(1640),
        height_mm: Dim::mm(420),
        depth_mm: Dim::mm(340),
        bays: vec![bay(2, Fill::Open), middle, bay(4, Fill::Leaf(Hung::Left))],
        back: key("birch-9"),
        finish: key("chalk"),
        corner_radius_mm: Dim::mm(25),
        plinth_mm: None,
        bow_mm: Dim::mm(0),
        bowed: Bowed::Both,
        place: Place {
            wall_mm: Some(Dim::mm(3000)),
            ceiling_mm: None,
            screen_tenth_inch: Some(550),
            plug: Some(key("hdmi")),
        },
    };
    Link { choice, made: Some(made(113_194)) }
}

/// Links that were written once stay readable: this list only grows.
#[test]
fn links_of_version_1_stay_readable() {
    assert_eq!(Link::of_link(FULL), Ok(full()));
    assert_eq!(full().to_link(), FULL);
    for golden in [
        "1/sedge/1640x520x420/25/birch-9/chalk/1o,1s1,1o",
        "1/sedge/1640.5x520x419.9/0/birch-6/clear/1r/w2400.5",
        "1/reed/-0.5x0x100000/12.5/a/b//s0",
        "1/teasel/2400x900x500/25/birch-9/soot/9s255:h=round-60@12.5,1l,1r,1o:d=console,2s3,1o/p=schuko/@00000000=0",
        "1/teasel/2400x900x500/25/birch-9/soot/1o/@ffffffff=9007199254740991",
    ] {
        assert_eq!(Link::of_link(golden).map(|link| link.to_link()).as_deref(), Ok(golden));
    }
}

/// What a link of version 1 cannot say is one of version 2; all others stay what they were.
#[test]
fn links_of_version_2_have_plinth_bows_and_ceiling() {
    for golden in [
        "2/bulrush/860x1800x360/0/birch-18/clear/1s4,1s4/c2400",
        "2/teasel/1640x760x400/12/birch-18/clear/1s1,1l/b80",
        "2/teasel/1640x760x400/12/birch-18/clear/1s1,1l/b87.5/w3000/c2400/@a1b2c3d4=113194",
        "2/teasel/1640x420x340/25/birch-9/chalk/2o/w3000/c2345.5/s550/p=hdmi/@a1b2c3d4=113194",
        "2/sedge/1640x520x420/0/birch-18/clear/1o/e80",
        "2/sedge/1640x520x420/0/birch-18/clear/1o/e40.5l/w3000/c2345.5",
        "2/sedge/1640x520x420/0/birch-18/clear/1o/e0r/@a1b2c3d4=113194",
    ] {
        assert_eq!(Link::of_link(golden).map(|link| link.to_link()).as_deref(), Ok(golden));
    }
    let first = Link::of_link(&FULL.replacen("1/", "2/", 1)).unwrap();
    assert_eq!((first.to_link().as_str(), first), (FULL, full()));
    let unexpected = LinkError::Unexpected("c2400".into());
    assert_eq!(Link::of_link("1/bulrush/860x1800x360/0/birch-18/clear/1o/c2400"), Err(unexpected.clone()));
    assert_eq!(Link::of_link("2/bulrush/860x1800x360/0/birch-18/clear/1o/c2400/c2400"), Err(unexpected));
    for twice in ["1/sedge/1640x520x420/0/birch-18/clear/1o/b80", "2/sedge/1640x520x420/0/birch-18/clear/1o/b80/b80"] {
        assert_eq!(Link::of_link(twice), Err(LinkError::Unexpected("b80".into())));
    }
    let unread = LinkError::Unread(Part::Plinth, "bl".into());
    assert_eq!(Link::of_link("2/sedge/1640x520x420/0/birch-18/clear/1o/bl"), Err(unread));
    for (bow, error) in
        [("e80/e80", LinkError::Unexpected("e80".into())), ("e8,", LinkError::Unread(Part::Bow, "e8,".into()))]
    {
        assert_eq!(Link::of_link(&format!("2/sedge/1640x520x420/0/birch-18/clear/1o/{bow}")), Err(error));
    }
    let unread = LinkError::Unread(Part::Ceiling, "c2,4".into());
    assert_eq!(Link::of_link("2/bulrush/860x1800x360/0/birch-18/clear/1o/c2,4"), Err(unread));
}

#[test]
fn an_address_a_sign_and_escapes_are_undone() {
    let escaped = FULL.bytes().fold(String::new(), |escaped, byte| format!("{escaped}%{byte:02x}"));
    for text in [
        format!("#{FULL}"),
        format!("https://example.org/desk/?a=b#{FULL}"),
        format!("  {FULL}/\n"),
        FULL.replace('@', "%40").replace(',', "%2C").replace(':', "%3a"),
        format!("http://127.0.0.1:8080/#{escaped}"),
    ] {
        assert_eq!(Link::of_link(&text), Ok(full()), "{text}");
        assert!(is_meant(&text), "{text}");
    }
    for other in ["-", "choice.json", "1", "2027/choice", "order-1/a.json", "{\"format\": 1}", ""] {
        assert_eq!(is_meant(other), other == "2027/choice", "{other}");
    }
}

#[test]
fn what_is_no_link_names_its_part() {
    let with = |from: &str, to: &str| {
        assert!(FULL.contains(from), "{from}");
        Link::of_link(&FULL.replacen(from, to, 1)).unwrap_err()
    };
    let unread = |part, text: &str| LinkError::Unread(part, text.into());
    for (from, to, error) in [
        ("1/", "7/", LinkError::OtherVersion(7)),
        ("1/", "0/", LinkError::OtherVersion(0)),
        ("1/", "+1/", LinkError::NoLink),
        ("1/", "99999999999/", LinkError::NoLink),
        ("teasel", "Teasel", unread(Part::Model, "Teasel")),
        ("1640x", "", unread(Part::Sizes, "420x340")),
        ("1640x", "1640x1x", unread(Part::Sizes, "1640x1x420x340")),
        ("1640", "1e3", unread(Part::Sizes, "1e3x420x340")),
        ("1640", "1640.55", unread(Part::Sizes, "1640.55x420x340")),
        ("1640", "100000.1", unread(Part::Sizes, "100000.1x420x340")),
        ("/25/", "/round/", unread(Part::Corners, "round")),
        ("birch-9", "9-birch", unread(Part::Back, "9-birch")),
        ("chalk", "<script>", unread(Part::Finish, "<script>")),
        ("2o", "o", unread(Part::Bay(1), "o")),
        ("2o", "256o", unread(Part::Bay(1), "256o")),
        ("1s2", "1s", unread(Part::Bay(2), "1s:h=grommet@-30:d=receiver")),
        (":d=receiver", ":h=grommet@1", unread(Part::Bay(2), "1s2:h=grommet@-30:h=grommet@1")),
        ("4l", "4x", unread(Part::Bay(3), "4x")),
        ("4l", "4l,1o,1o,1o,1o", LinkError::TooManyBays(7)),
        ("w3000", "wide", unread(Part::Wall, "wide")),
        ("s550", "s70000", unread(Part::Screen, "s70000")),
        ("p=hdmi", "p=", unread(Part::Plug, "")),
        ("a1b2c3d4", "A1B2C3D4", unread(Part::Made, "@A1B2C3D4=113194")),
        ("=113194", "=-1", unread(Part::Made, "@a1b2c3d4=-1")),
        ("=113194", "=9007199254740992", unread(Part::Made, "@a1b2c3d4=9007199254740992")),
        ("s550", "w2000", LinkError::Unexpected("w2000".into())),
        ("s550", "name=Ada", LinkError::Unexpected("name=Ada".into())),
        ("chalk", "a\u{202e}b%00%ff", unread(Part::Finish, "a\u{fffd}b\u{fffd}\u{fffd}")),
    ] {
        assert_eq!(with(from, to), error, "{to}");
    }
    for (text, error) in [
        ("", LinkError::NoLink),
        ("#questions", LinkError::NoLink),
        ("2027", LinkError::NoLink),
        ("https://example.org/1/teasel", LinkError::NoLink),
        ("1/teasel", LinkError::Missing(Part::Sizes)),
        ("1/teasel/1640x420x340/25/birch-9/chalk", LinkError::Missing(Part::Bays)),
        (&"1/".repeat(500_000), LinkError::TooLong),
    ] {
        assert_eq!(Link::of_link(text), Err(error));
    }
    let long = FULL.replacen("chalk", &"C".repeat(500), 1);
    assert_eq!(Link::of_link(&long), Err(unread(Part::Finish, &"C".repeat(40))));
}

#[test]
fn a_link_is_short() {
    let range = demo();
    let lengths = choices(&range, 11, Wanted::Valid)
        .take(200)
        .map(|choice| Link { choice, made: Some(made(1_131_940)) }.to_link().len());
    let most = lengths.max().unwrap();
    assert!((100..=250).contains(&most), "{most}");
    // Not even one that nobody could make, with the longest of everything in every bay, is long.
    let longest = |keys: &mut dyn Iterator<Item = &Key>| keys.max_by_key(|key| key.as_str().len()).cloned();
    let hole =
        longest(&mut range.holes.iter().map(|hole| &hole.key)).map(|kind| Hole { kind, offset_mm: Dim::mm(-120) });
    let device = longest(&mut range.devices.iter().map(|device| &device.key));
    for model in &range.models {
        let mut choice = Choice::starting(model).unwrap();
        choice.width_mm = Dim::tenths(model.width_mm.most.in_tenths() - 5);
        choice.finish = longest(&mut model.finishes.iter()).unwrap();
        choice.back = longest(&mut model.backs.iter()).unwrap();
        let plug = longest(&mut range.plugs.iter().map(|plug| &plug.key));
        let [wall_mm, ceiling_mm] = [Some(Dim::tenths(65_535)); 2];
        choice.place = Place { wall_mm, ceiling_mm, screen_tenth_inch: Some(1000), plug };
        let bay = Bay { share: 9, fill: Fill::Shelves(4), hole: hole.clone(), device: device.clone() };
        choice.bays = vec![bay; model.bays.most.into()];
        let link = Link { choice, made: Some(made(1_131_940)) }.to_link();
        assert!(link.len() <= 320, "{}: {link}", link.len());
    }
}

/// What is said of a link is a sentence with what to do; what is new since it was made is told once.
#[test]
fn what_is_said_of_a_link_is_a_sentence() {
    let refused = |text: &str| Message::Refused(&Link::of_link(text).unwrap_err()).text();
    for (text, said) in [
        ("7/teasel/1x1x1", "This link is of version 7; here versions 1 to 2 are read. Load the page anew,"),
        (
            "1/teasel/1640x420",
            "In this link width, height and depth cannot be read: \u{201c}1640x420\u{201d}. Copy all of it,",
        ),
        ("1/teasel", "This link ends before width, height and depth. Copy"),
        ("nothing", "This is no link of a unit. Copy"),
    ] {
        assert!(refused(text).starts_with(said), "{}", refused(text));
    }
    let range = demo();
    let mut choice = Choice::first_of(&range).unwrap();
    let day = "2026-11-25".parse().unwrap();
    let told_since = |since, choice: &Choice, made: Option<Made>| {
        let backlog = Backlog::default();
        let derived = derive_unproven(&range, choice, day, &backlog);
        let link = Link { choice: choice.clone(), made };
        difference(&link, since, Mark::of(&range), &derived.findings, derived.built.as_ref().map(|built| &built.price))
    };
    let told = |choice: &Choice, made| told_since(Since::Link, choice, made);
    let price = {
        let backlog = Backlog::default();
        derive_unproven(&range, &choice, day, &backlog).built.unwrap().price.total_minor
    };
    assert_eq!(told(&choice, None), None);
    let here = |price| Made { range: Mark::of(&range), price };
    assert_eq!(range.digest().to_string().get(..8), Some(Mark::of(&range).to_string().as_str()));
    assert_eq!(told(&choice, Some(here(price))), None);
    let same = "The range has changed since its link was made; the price is the same.";
    assert_eq!(told(&choice, Some(made(price.in_minor()))).as_deref(), Some(same));
    let begins = |made, start: &str| {
        let said = told(&choice, made).unwrap();
        assert!(said.starts_with(start), "{said}");
    };
    let changed = "The range has changed since its link was made: it";
    let one = "cost \u{20ac}\u{202f}1.00 with tax";
    begins(Some(made(100)), &format!("{changed} {one}, and costs \u{20ac}"));
    let dearer = told_since(Since::Visit, &choice, Some(made(100))).unwrap();
    assert!(dearer.starts_with("The range has changed since you last saw this unit: it cost"), "{dearer}");
    begins(Some(here(Money::minor(100))), &format!("When its link was made it {one}; it costs \u{20ac}"));
    choice.finish = key("gold");
    let gone = "This finish is not in the range.";
    for (made, start) in [
        (made(100), [changed, " could be ordered, and cannot be now."].concat()),
        (here(price), "When its link was made it could be ordered; it cannot be now.".into()),
    ] {
        let said = told(&choice, Some(made)).unwrap();
        assert!(said.starts_with(&[&start, " ", gone].concat()), "{said}");
    }
    assert!(told(&choice, None).unwrap().starts_with("It cannot be made as it is. This finish"));
}

proptest! {
    /// What was written is what is read, absurd choices too, unless they have more bays than a choice can name.
    #[test]
    fn a_link_keeps_the_choice(seed in any::<u64>(), minor in 0..=9_007_199_254_740_991_i64) {
        let range = demo();
        for choice in choices(&range, seed, Wanted::Any).take(4) {
            let link = Link { made: (minor % 2 == 0).then(|| made(minor)), choice };
            let text = link.to_link();
            prop_assert!(text.bytes().all(|byte| byte.is_ascii_alphanumeric() || b"/-.,:@=".contains(&byte)), "{}", text);
            if can_be_read(&link.choice) {
                prop_assert_eq!(Link::of_link(&text), Ok(link));
            } else {
                prop_assert!(Link::of_link(&text).is_err());
            }
        }
    }

    #[test]
    fn no_text_makes_it_panic(text in "\\PC{0,200}", at in 0..=FULL.len(), letter in any::<char>()) {
        let mut spoilt = String::from(FULL);
        spoilt.insert(at, letter);
        for text in [text.as_str(), &spoilt, &["1/", &text].concat()] {
            prop_assert_eq!(Link::of_good(text), Link::of_link(text).ok());
        }
    }

    /// What is read is written as a text that gives the same again, however it was written before.
    #[test]
    fn what_is_read_is_written_alike(at in 0..FULL.len(), with in "[0-9a-z/x,:@=.%-]") {
        let mut other = String::from(FULL);
        other.replace_range(at..=at, &with);
        if let Ok(link) = Link::of_link(&other) {
            prop_assert_eq!(Link::of_link(&link.to_link()), Ok(link));
        }
    }
}

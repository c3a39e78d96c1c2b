use super::*;
use crate::pack::testing::{demo, order};
use crate::pack::{Nesting, Settings};

const POINTS: &str = "17.61 17.68 17.72 17.66 17.7 17.64 17.69 17.7";

/// The manifest of a pack that is cut by something, as text, with the digest of its order.
fn manifest(cut_by: &CutBy) -> (String, Digest) {
    let known = [cut_by.known(demo())];
    let read = [crate::pack::OrderRead::of(7, "a.json".into(), order(&demo(), 0, 0).as_bytes(), &known)];
    let orders = crate::pack::Orders::of(&read);
    let papers = Papers { format: crate::paper::Format::LETTER, ..Papers::default() };
    let settings = Settings { papers, ..Settings::default() };
    let pack = Nesting::begin(&orders, &settings, None).unwrap().pack();
    let (mut files, _) = pack.files();
    (String::from_utf8(files.pop().unwrap().bytes).unwrap(), orders.taken[0].spec.digest)
}

#[test]
fn what_was_set_comes_back() {
    let batches = vec![("birch-18".parse().unwrap(), POINTS.parse().unwrap())];
    let cut_by = CutBy { batches, cutter: Some(Length::mm(6.35)), allowance: Some(Length::mm(2.5)) };
    let (text, digest) = manifest(&cut_by);
    let earlier = Earlier::read(&text).unwrap();
    assert_eq!(earlier.cut_by(), cut_by);
    assert_eq!((earlier.number(digest), earlier.number(Digest::of(b"another"))), (Some(7), None));
    assert_eq!(earlier.papers.format_name(), "letter");
    assert!(text.contains(&earlier.name) && text.contains(&earlier.program));
}

#[test]
fn what_the_range_says_is_cut_by_the_range() {
    let (text, _) = manifest(&CutBy::default());
    let cut_by = Earlier::read(&text).unwrap().cut_by();
    assert_eq!(*cut_by.known(demo()).cut_by(), demo());
}

#[test]
fn what_is_no_manifest_is_refused_where_it_is_wrong() {
    let (text, _) = manifest(&CutBy::default());
    let changed = |from: &str, to: &str| {
        assert!(text.contains(from), "{from}");
        match Earlier::read(&text.replacen(from, to, 1)) {
            Err(ReadError::Field { pointer, .. }) => pointer,
            other => panic!("{other:?}"),
        }
    };
    assert_eq!(changed("\"slotwright-pack\"", "\"slotwright-order\""), "/format");
    assert_eq!(changed("\"version\":1", "\"version\":2"), "/version");
    assert_eq!(changed("\"letter\"", "\"a5\""), "/paper");
    assert_eq!(changed("\"number\":7", "\"number\":-7"), "/orders/0/number");
    assert_eq!(changed("\"cutter_mm\":6", "\"cutter_mm\":\"6\""), "/lots/0/cutter_mm");
    assert!(matches!(Earlier::read("{"), Err(ReadError::NotJson(_))));
}

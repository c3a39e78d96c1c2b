use super::*;

fn stored(name: &str, measured: Option<f64>) -> StoredOffcut {
    StoredOffcut {
        name: name.into(),
        board: "birch-18".parse().unwrap(),
        finish: "clear".parse().unwrap(),
        size: Grained { along: Length::mm(2420.0), across: Length::mm(692.5) },
        measured: measured.map(Length::mm),
    }
}

#[test]
fn a_list_of_offcuts_is_read_back_with_what_was_measured() {
    let rack = vec![stored("a", Some(17.65)), stored("b, left", None)];
    let list = offcuts(&rack);
    assert_eq!(
        String::from_utf8(list.clone()).unwrap(),
        "name,board,finish,along_mm,across_mm,board_mm\r\na,birch-18,clear,2420.00,692.50,17.65\r\n\"b, left\",birch-18,clear,2420.00,692.50,\r\n"
    );
    assert_eq!(read_offcuts(&list), Ok(rack));
}

#[test]
fn lists_without_a_thickness_and_with_commas_are_read() {
    let old = "name,board,finish,along_mm,across_mm\na,birch-18,clear,2420,692.5\n";
    assert_eq!(read_offcuts(old.as_bytes()), Ok(vec![stored("a", None)]));
    let commas = "board_mm,name,board,finish,along_mm,across_mm\n\"17,65\",a,birch-18,clear,2420,\"692,5\"\n";
    assert_eq!(read_offcuts(commas.as_bytes()), Ok(vec![stored("a", Some(17.65))]));
    let semicolons = "board_mm;name;board;finish;along_mm;across_mm\n17,65;a;birch-18;clear;2420;692,5\n";
    assert_eq!(read_offcuts(semicolons.as_bytes()), Ok(vec![stored("a", Some(17.65))]));
}

#[test]
fn a_line_that_is_none_is_told_by_what_is_wrong() {
    let head = "name,board,finish,along_mm,across_mm,board_mm\n";
    for (line, what) in [
        (",birch-18,clear,900,300,", "name"),
        ("a,Birch,clear,900,300,", "board"),
        ("a,birch-18,clear,49,300,", "along_mm"),
        ("a,birch-18,clear,900,6001,", "across_mm"),
        ("a,birch-18,clear,900,300,thin", "board_mm"),
        ("a,birch-18,clear,900,300,2.9", "board_mm"),
    ] {
        let wrong = read_offcuts([head, line, "\n"].concat().as_bytes());
        assert_eq!(wrong, Err(NotAnOffcut { line: 2, what: what.into() }), "{line}");
    }
    let lacking = read_offcuts(b"name,board,along_mm,across_mm\na,birch-18,900,300\n");
    assert_eq!(lacking, Err(NotAnOffcut { line: 1, what: "finish".into() }));
    let later = read_offcuts([head, "\n\na,birch-18,clear,9,300,\n"].concat().as_bytes());
    assert_eq!(later, Err(NotAnOffcut { line: 4, what: "along_mm".into() }), "empty lines are counted");
    let short = read_offcuts([head, "a,birch-18\n"].concat().as_bytes());
    assert_eq!(short, Err(NotAnOffcut { line: 2, what: COLUMNS.join(", ") }));
}

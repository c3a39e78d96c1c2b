use super::sheet::{Ink, Is};
use super::*;
use crate::vector::{Align, Spot};

fn setting(format: Format) -> Setting {
    let running = Running {
        left: "left".to_owned(),
        right: "right".to_owned(),
        foot: "foot".to_owned(),
        page_of: |page, of| format!("{page}/{of}"),
    };
    Setting { format, title: "Title".to_owned(), language: "en".to_owned(), running: Some(running) }
}

/// The texts of each page that are read, in their order.
fn texts(paper: &Paper) -> Vec<Vec<String>> {
    let lines = |ink: &Ink| match ink {
        Ink::Line(line) => Some(line.text.trim_end().to_owned()),
        Ink::Shape(_) => None,
    };
    let page = |page: &sheet::Page| {
        let read = page.pieces.iter().filter(|piece| piece.is == Is::Content);
        read.flat_map(|piece| piece.inks.iter().filter_map(lines)).collect()
    };
    paper.sheets.pages.iter().map(page).collect()
}

/// How far down anything of a page reaches, in parts of its height; head and foot are not there before it is written.
fn lowest(paper: &Paper) -> f64 {
    let lines = paper.sheets.pages.iter().flat_map(|page| {
        let inks = page.pieces.iter().flat_map(|piece| &piece.inks);
        inks.filter_map(|ink| match ink {
            Ink::Line(line) => Some(line.at.y / page.format.height),
            Ink::Shape(_) => None,
        })
    });
    lines.fold(0.0, f64::max)
}

const BOTH: [Format; 2] = [Format::A4, Format::LETTER];

#[test]
fn nothing_is_set_below_the_page() {
    for format in BOTH {
        let mut paper = Paper::new(setting(format));
        let long = "A paragraph that goes on for a while, so that it takes several lines. ".repeat(40);
        for number in 0..9 {
            paper.heading(&format!("Part {number}"));
            paper.paragraph(&long);
            paper.pairs(3, &[("Name", long.get(..70).unwrap()), ("Other", "value"), ("Third", "x"), ("Fourth", "y")]);
            paper.ticks(&["one", "two", &long]);
            paper.caution(long.get(..700).unwrap());
        }
        assert!(paper.sheets.pages.len() > 3);
        let margin = 1.0 - paper.margins.bottom / format.height;
        assert!(lowest(&paper) <= margin, "{} of {margin}", lowest(&paper));
        let words: String = texts(&paper).concat().join(" ");
        assert_eq!(words.matches("goes on for a while").count(), 9 * (40 + 40 + 1 + 10), "every word is there");
    }
}

#[test]
fn a_heading_stands_with_what_follows() {
    for lines in 0..80 {
        let mut paper = Paper::new(setting(Format::A4));
        (0..lines).for_each(|_| paper.paragraph("Line"));
        paper.heading("Heading");
        paper.paragraph("What follows");
        let pages = texts(&paper);
        let page = pages.iter().find(|page| page.iter().any(|text| text == "Heading")).unwrap();
        assert!(page.iter().any(|text| text == "What follows"), "{lines} lines before");
    }
}

#[test]
fn a_row_that_no_page_takes_is_broken_and_loses_no_line() {
    let mut paper = Paper::new(setting(Format::A4));
    let mut table = Table::new([Column::fit("No"), Column::share("Text", 1.0)]);
    let long: Vec<String> = (0..150).map(|line| format!("line {line}")).collect();
    table.rows.push(Row::of(["1", "short"]));
    table.rows.push(Row::of(["2".to_owned(), long.join("\n")]));
    table.rows.push(Row::of(["3", "short"]));
    paper.table(&table);
    let all = texts(&paper).concat();
    for line in &long {
        assert_eq!(all.iter().filter(|text| *text == line).count(), 1, "{line}");
    }
    assert!(paper.sheets.pages.len() == 3 && lowest(&paper) < 1.0);
}

/// A page without room for a row must not make pages for ever.
#[test]
fn even_the_smallest_paper_comes_to_an_end() {
    let mut paper = Paper::new(setting(Format::mm(40.0, 30.0)));
    let mut table = Table::new([Column::fit("No"), Column::share("Text", 1.0)]);
    table.rows.push(Row::of(["1", "some words that need several lines"]));
    paper.heading("Heading");
    paper.paragraph("Words and words and words");
    paper.table(&table);
    assert!(paper.write().is_ok());
}

#[test]
fn group_rows_stand_with_the_row_that_follows() {
    for rows in 20..40 {
        let mut paper = Paper::new(setting(Format::LETTER));
        let mut table = Table::new([Column::fit("No")]);
        table.rows.extend((0..rows).map(|row| Row::of([row.to_string()])));
        table.rows.push(Row::group("Group"));
        table.rows.push(Row::of(["follows"]));
        paper.table(&table);
        let pages = texts(&paper);
        let page = pages.iter().find(|page| page.iter().any(|text| text == "Group")).unwrap();
        assert!(page.iter().any(|text| text == "follows"), "{rows}");
    }
}

#[test]
fn columns_take_the_width_and_no_text_leaves_its_column() {
    let mut paper = Paper::new(setting(Format::A4));
    let words = "a text with several words in it that is longer than its column can ever be on paper";
    let mut table = Table::new([
        Column::fit("First"),
        Column::share("Second", 2.0),
        Column::share("Third", 1.0),
        Column::fixed("Fourth", Length::mm(20.0)).end(),
    ]);
    table.rows.push(Row::of([words, words, words, "12"]));
    paper.table(&table);
    let right = paper.margins.left + paper.width();
    for piece in paper.sheets.pages.iter().flat_map(|page| &page.pieces) {
        for ink in &piece.inks {
            let Ink::Line(line) = ink else { continue };
            let end = line.at.x + paper.length(line.text.trim_end(), &line.style);
            assert!(line.at.x >= paper.margins.left && end.in_mm() <= right.in_mm() + 0.01, "{line:?}");
        }
    }
}

#[test]
fn a_line_without_room_is_told() {
    let mut paper = Paper::of_labels(setting(Format::A4), Labels::ROLL_62_BY_29, 0);
    let mut block = paper.label();
    let width = Length::mm(20.0);
    block.line(Spot::default(), width, "short", &Style::BODY, Align::Start);
    block.line(Spot::default(), width, "somewhat longer", &Style::BODY, Align::Start);
    block.line(Spot::default(), width, "far too long for any label", &Style::BODY, Align::Start);
    let written = paper.write().unwrap();
    assert_eq!(written.cut, ["far too long for any label"]);
}

#[test]
fn labels_go_on_to_the_next_sheet() {
    let mut paper = Paper::of_labels(setting(Format::A4), Labels::A4_3_BY_8, 23);
    for number in 0..26 {
        let mut block = paper.label();
        let width = block.width;
        block.line(Spot::default(), width, &number.to_string(), &Style::BODY, Align::Start);
    }
    let counts: Vec<usize> = texts(&paper).iter().map(Vec::len).collect();
    assert_eq!(counts, [1, 24, 1]);
}

#[test]
fn a_picture_in_its_scale_says_so() {
    let mut paper = Paper::new(setting(Format::A4));
    let vector = crate::vector::Vector::new(Length::mm(100.0), Length::mm(50.0));
    assert!((paper.figure(&vector, "it", "") - 1.0).abs() < 1e-12);
    let factor = paper.figure(&vector.scaled(4.0), "it", "caption");
    assert!((factor - paper.width().in_mm() / 400.0).abs() < 1e-12, "{factor}");
}

#[test]
fn the_same_calls_give_the_same_bytes() {
    let bytes = || {
        let mut paper = Paper::new(setting(Format::A4));
        paper.title("Title");
        paper.paragraph("Text with 李.");
        paper.table(&Table { columns: vec![Column::fit("No")], rows: vec![Row::of(["1"])] });
        paper.write().unwrap()
    };
    let (one, other) = (bytes(), bytes());
    assert!(one == other && one.lacking.len() == 1);
}

/// Whatever people are called and whatever was pasted, there is a file.
#[test]
fn any_letter_can_be_written() {
    let mut paper = Paper::new(setting(Format::A4));
    let rare = ['\u{e000}', '\u{f8ff}', '\u{fdd0}', '\u{feff}', '\u{fffd}', '\u{fffe}', '\u{ffff}', '🙂', '\u{10ffff}'];
    let letters: Vec<char> = ('\0'..='\u{2fff}').chain(rare).collect();
    for some in letters.chunks(60) {
        paper.paragraph(&String::from_iter(some));
        paper.heading(&some.iter().take(3).collect::<String>());
    }
    paper.heading("");
    paper.paragraph("");
    paper.figure(&crate::vector::Vector::new(Length::mm(10.0), Length::mm(10.0)), "", "");
    let mut label = paper.block(Length::mm(10.0));
    label.heading(Spot::default(), Length::mm(20.0), " ", &Style::BODY, 1);
    let written = paper.write().unwrap();
    let lacking: Vec<char> = written.lacking.iter().map(|lacking| lacking.letter).collect();
    // A letter that is private to somebody is none of our figures.
    assert!(['\u{e000}', '🙂', 'א'].iter().all(|letter| lacking.contains(letter)));
    assert!(!lacking.contains(&'é') && !lacking.contains(&'\u{ad}'));
}

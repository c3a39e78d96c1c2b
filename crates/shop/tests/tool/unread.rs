//! What is said of files that are not what was asked for, and the way out.

use crate::{DAY, Result, folder, put, seen};

/// The tool's words for each file that `check` is given in place of a good one.
#[test]
fn what_a_file_is_instead_is_said_in_plain_words() -> Result<()> {
    let folder = folder("unread")?;
    seen(&folder, &["order", "--today", DAY, "--out", "order.json"], "")?;
    let order = std::fs::read_to_string(folder.join("order.json"))?;
    let samples = seen(&folder, &["sample", "--count", "2"], "")?;
    let samples = samples.trim_start_matches("exit 0\n");
    let choice = samples.lines().next().unwrap_or_default();
    let changed = |from: &str, to: &str| {
        assert!(order.contains(from), "{from} is not in {order}");
        order.replacen(from, to, 1)
    };
    for (name, text, said, hint) in [
        (
            "wide",
            changed("\"width_mm\":1640", "\"width_mm\":1650"),
            "the file was changed after it was written: the unit in it is not the one that was promised; it states the digest ",
            "ask for the original; ",
        ),
        (
            "cheap",
            changed("\"price_minor\":118281", "\"price_minor\":100000"),
            "the file was changed after it was written: the price was \u{20ac}\u{202f}1\u{202f}182.81 and is \u{20ac}\u{202f}1\u{202f}000.00; it states ",
            "ask for the original; ",
        ),
        (
            "light",
            changed("\"mass_g\":47323", "\"mass_g\":40000"),
            "the file was changed after it was written: the mass was 47.323 kg and is 40 kg; it states ",
            "ask for the original; ",
        ),
        (
            "renamed",
            changed("Sample order", "Another"),
            "the file was changed after it was written: the unit and what was promised agree, so it was the customer",
            "ask for the original; ",
        ),
        ("empty", String::new(), "the file is empty\n", "save the order again"),
        (
            "choice",
            choice.into(),
            "this is a choice, and no order yet",
            "`slotwright order --today YYYY-MM-DD --choice FILE --out order.json` makes",
        ),
        (
            "two",
            format!("{order}\n{order}\n"),
            "there is more than one document in this file: the second begins in line 2\n",
            "put each order into a file of its own and give `slotwright check` all of them",
        ),
        (
            "half",
            order.chars().take(100).collect(),
            "not JSON: it ends in line 1 before it is complete",
            "is this the file that was saved",
        ),
        (
            "other",
            "{\"format\": \"slotwright-fit\"}".into(),
            "this is no order: its format is \"slotwright-fit\"",
            "is this the file that was saved",
        ),
    ] as [(&str, String, &str, &str); 9]
    {
        let file = format!("{name}.json");
        put(&folder, &file, text)?;
        let seen = seen(&folder, &["check", &file], "")?;
        assert!(seen.starts_with(&format!("exit 2\n{file}: unreadable: {said}")), "{seen}");
        assert!(seen.contains(&format!("\n  hint: {hint}")), "{seen}");
    }
    Ok(())
}

/// The same of a choice.
#[test]
fn what_a_choice_lacks_is_named() -> Result<()> {
    let folder = folder("unread-choice")?;
    let samples = seen(&folder, &["sample", "--count", "2"], "")?;
    let samples = samples.trim_start_matches("exit 0\n");
    let choice = samples.lines().next().unwrap_or_default();
    for (name, text, said, hint) in [
        ("empty", String::new(), "the file is empty\n", "`slotwright sample` prints choices"),
        (
            "misspelt",
            choice.replacen("width_mm", "widht_mm", 1),
            "/widht_mm: no member of this name is known; did you mean \"width_mm\"?\n",
            "`slotwright sample`",
        ),
        (
            "missing",
            choice.replacen("\"place\":{},", "", 1).replacen("\"place\":", "\"room\":", 1),
            "the member \"place\" is missing\n",
            "`slotwright sample`",
        ),
        (
            "strange",
            choice.replacen('{', "{\"colour\":1,", 1),
            "/colour: no member of this name is known\n",
            "`slotwright sample`",
        ),
        (
            "several",
            samples.into(),
            "there is more than one document in this file: the second begins in line 2\n",
            "give one choice at a time: `head -n 1 choices.jsonl | slotwright derive --choice -`",
        ),
    ] as [(&str, String, &str, &str); 5]
    {
        let file = format!("{name}.json");
        put(&folder, &file, text)?;
        let seen = seen(&folder, &["derive", "--today", DAY, "--choice", &file], "")?;
        assert!(seen.starts_with(&format!("exit 2\n--- errors\nerror: {file}: no choice: {said}")), "{seen}");
        assert!(seen.contains(&format!("\nhint: {hint}")), "{seen}");
    }
    put(&folder, "empty.toml", " \n")?;
    let empty = seen(&folder, &["range", "empty.toml"], "")?;
    assert!(empty.starts_with("exit 1\n--- errors\nerror: empty.toml:1:1: the file is empty\n"), "{empty}");
    Ok(())
}

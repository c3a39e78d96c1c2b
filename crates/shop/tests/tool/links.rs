//! Links: written by `slotwright link`, read wherever a choice is.

use expect_test::expect;

use crate::{DAY, Result, check, folder, other, put, seen};

/// A link that was written once.
const LINK: &str = "#1/teasel/1640x920x400/30/birch-18/chalk/2o,1s2:h=round-60@-30,1l/w3000/p=hdmi";

/// Prices as dots: they change with the demo range.
fn without_price(text: &str) -> String {
    let lines = text.lines().map(|line| match line.rsplit_once("/@..=") {
        Some((link, price)) if price.bytes().all(|byte| byte.is_ascii_digit()) => format!("{link}/@..=.."),
        _ => line.into(),
    });
    lines.collect::<Vec<_>>().join("\n")
}

#[test]
fn a_link_is_written_and_read_again() -> Result<()> {
    let folder = folder("link")?;
    let link = seen(&folder, &["link", "--today", DAY], "")?;
    expect![["exit 0\n#1/sedge/"]].assert_eq(link.get(..16).unwrap_or_default());
    let page = seen(&folder, &["link", "--today", DAY, "--page", "https://example.org/desk/#old"], "")?;
    assert_eq!(page, link.replacen('#', "https://example.org/desk/#", 1));
    let again = seen(&folder, &["link", "--today", DAY, "--choice", LINK], "")?;
    assert_eq!(without_price(&again), format!("exit 0\n{LINK}/@..=.."));

    // As an argument, without its sign, as an address, in a file, and on standard input: the same unit.
    let derived = seen(&folder, &["derive", "--today", DAY, "--choice", LINK], "")?;
    assert!(derived.starts_with("exit 0\n") && derived.contains("\"width_mm\": 1640"), "{derived}");
    let address = format!("https://example.org/{}", LINK.replace('@', "%40"));
    put(&folder, "link.txt", format!("{address}\n"))?;
    for given in [LINK.trim_start_matches('#'), &address, "link.txt", "-"] {
        assert_eq!(seen(&folder, &["derive", "--today", DAY, "--choice", given], LINK)?, derived, "{given}");
    }
    // What is linked is ordered like any other choice, and the link of an order is that of its choice.
    let order = ["order", "--today", DAY, "--choice", LINK, "--out", "order.json"];
    assert_eq!(seen(&folder, &order, "")?, "exit 0\n");
    assert_eq!(seen(&folder, &["link", "--choice", "order.json"], "")?, again);
    Ok(())
}

#[test]
fn a_price_of_another_range_is_another_one() -> Result<()> {
    let folder = folder("link-range")?;
    put(&folder, "dearer.toml", other(&[("price_minor = ", "price_minor = 1")]))?;
    let price = |text: &str| text.rsplit_once('=').and_then(|(_, price)| price.trim().parse::<u64>().ok());
    let usual = seen(&folder, &["link", "--today", DAY, "--choice", LINK], "")?;
    let dearer = seen(&folder, &["link", "--today", DAY, "--choice", LINK, "--range", "dearer.toml"], "")?;
    assert!(price(&usual) > Some(0) && price(&dearer) > price(&usual), "{usual} {dearer}");
    Ok(())
}

#[test]
fn what_cannot_be_ordered_has_a_link_without_a_price() -> Result<()> {
    let folder = folder("link-unmade")?;
    let wide = LINK.replace("1640x", "5000x");
    check(
        &folder,
        &["link", "--today", DAY, "--choice", &wide],
        "",
        &expect![[r##"
            exit 1
            #1/teasel/5000x920x400/30/birch-18/chalk/2o,1s2:h=round-60@-30,1l/w3000/p=hdmi
        "##]],
    )
}

#[test]
fn a_bad_link_names_what_is_wrong() -> Result<()> {
    let folder = folder("link-bad")?;
    check(
        &folder,
        &["derive", "--choice", "#7/teasel/1640"],
        "",
        &expect![[r#"
            exit 2
            --- errors
            error: --choice: This link is of version 7; here versions 1 to 2 are read.
            hint: a link looks like '#1/teasel/1640x920x400/30/birch-18/chalk/2o,1s2,1l'; `slotwright link` prints one
        "#]],
    )?;
    check(
        &folder,
        &["derive", "--choice", "-"],
        "1/teasel/1640x420",
        &expect![[r##"
            exit 2
            --- errors
            error: -: In this link width, height and depth cannot be read: “1640x420”.
            hint: a link looks like '#1/teasel/1640x920x400/30/birch-18/chalk/2o,1s2,1l'; `slotwright link` prints one
        "##]],
    )?;
    check(
        &folder,
        &["derive", "--choice", "https://example.org/"],
        "",
        &expect![[r##"
            exit 2
            --- errors
            error: --choice: This is no link of a unit.
            hint: a link looks like '#1/teasel/1640x920x400/30/birch-18/chalk/2o,1s2,1l'; `slotwright link` prints one
        "##]],
    )?;
    check(
        &folder,
        &["link", "--page", "example.org"],
        "",
        &expect![[r##"
            exit 2
            --- errors
            error: invalid value 'example.org' for '--page <URL>': write it as https://example.org/

            For more information, try '--help'.
        "##]],
    )
}

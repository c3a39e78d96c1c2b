//! Links: what the page shows of its own, and what is said of one that came.

use qrcodegen::QrCodeEcc;
use slotwright_core::choice::link::{Link, Mark};
use slotwright_core::words::desk::Message;
use slotwright_core::words::link::{Message as Came, Since, difference};

use slotwright_core::units::day::Day;
use slotwright_protocol::desk::{Before, Unit};

use crate::html::escaped;
use crate::{code, with};

/// A link to take away, as HTML: a field with it, buttons by what they `data-do`, and its QR code.
pub(crate) fn shown(address: &str, shared: bool) -> Result<String, String> {
    let picture = code::svg(address, QrCodeEcc::Low).ok_or_else(|| Message::NoCode.text())?;
    let button = |class: &str, what: &str, name: Message<'_>| {
        format!("<button type=\"button\" class=\"{class}\" data-do=\"{what}\">{}</button>", name.text())
    };
    let close = button("", "close", Message::Close);
    let copy = button("main", "copy", Message::Copy);
    let share = if shared { button("", "share", Message::Share) } else { String::new() };
    let [title, name, cautions] = [Message::LinkToUnit, Message::Link, Message::LinkCautions].map(Message::text);
    let address = escaped(address);
    Ok(format!(
        "<div class=\"order-head\"><h2 id=\"link-title\">{title}</h2>{close}</div>\
         <textarea readonly rows=\"4\" aria-label=\"{name}\">{address}</textarea>\
         <div class=\"views\">{copy}{share}</div><p class=\"told\" role=\"status\"></p>\
         <div class=\"code\">{picture}</div><p class=\"cautions\">{cautions}</p>"
    ))
}

/// What came of a link.
pub(crate) fn told(range: String, text: &str, today: Day, before: Before) -> Result<String, String> {
    let link = Link::of_link(text).map_err(|error| Came::Refused(&error).text())?;
    let different = with(&Unit { range, choice: link.choice.clone(), today }, |derived| {
        let Link { choice, .. } = &link;
        if derived.range.model(&choice.model).is_none() {
            return Err(Came::NoModel(choice.model.as_str()).text());
        }
        let price = derived.built.as_ref().map(|built| &built.price);
        let since = match before {
            Before::Same => Since::Visit,
            Before::Nothing | Before::Other => Since::Link,
        };
        Ok(difference(&link, since, Mark::of(derived.range), &derived.findings, price))
    })?;
    let opened = match before {
        Before::Same => None,
        Before::Nothing | Before::Other => Some(Came::Opened { saved: before == Before::Other }.text()),
    };
    let texts: Vec<String> = opened.into_iter().chain(different).collect();
    Ok(texts.join("\n"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tests::RANGE;

    const LINK: &str = "1/teasel/1640x920x400/30/birch-18/chalk/2o,1s2,1l";

    /// A reader of its own reads the code in the browser's tests.
    #[test]
    fn a_link_is_shown_with_its_code() {
        let address = ["https://example.org/?a=1&copy=2#", LINK].concat();
        let html = shown(&address, true).unwrap();
        assert!(html.contains(&address.replace('&', "&amp;")), "{html}");
        assert!(html.contains("<title>QR code of the link to this unit</title>"), "{html}");
        // Source: ISO/IEC 18004:2015, table 7 (from memory): at level L version 4 holds 78 bytes, version 5, with 37
        // modules a side, 106.
        assert_eq!(address.len(), 81);
        assert!(html.contains("viewBox=\"0 0 45 45\"") && html.contains("M4 4h7v1h-7z"), "{html}");
        assert!(html.contains("data-do=\"share\""));
        assert_eq!(shown(&"#".repeat(3000), false), Err("This link is too long for a QR code.".into()));
    }

    #[test]
    fn what_came_of_a_link_is_told() {
        let say = |text: &str, before| match told(RANGE.into(), text, "2026-11-25".parse().unwrap(), before) {
            Ok(said) | Err(said) => said,
        };
        assert_eq!(say(LINK, Before::Nothing), "This unit was opened from a link.");
        assert!(say(LINK, Before::Other).contains("What you chose before is among the drafts"));
        assert_eq!(say(LINK, Before::Same), "");
        let dearer = say(&[LINK, "/@a1b2c3d4=100"].concat(), Before::Same);
        assert!(dearer.starts_with("The range has changed since you last saw this unit: it cost"), "{dearer}");
        let dearer = say(&[LINK, "/@a1b2c3d4=100"].concat(), Before::Other);
        assert!(dearer.contains("\nThe range has changed since its link was made: it cost"), "{dearer}");
        let wide = say(&LINK.replace("1640x", "5000x"), Before::Nothing);
        assert!(wide.contains("\nIt cannot be made as it is. The width is"), "{wide}");
        assert!(say(&LINK.replace("teasel", "reed"), Before::Nothing).starts_with("This link is of the model reed"));
        assert!(say("7/teasel/1x1x1", Before::Nothing).starts_with("This link is of version 7"));
    }
}

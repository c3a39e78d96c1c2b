//! What can be done with an order that was saved.

use slotwright_core::range::OrdersTo;
use slotwright_core::words::desk::Message;

use crate::html::escaped;

/// Where it goes, and a button that gives it to another program, as HTML. Nothing of a person is in the address.
pub(crate) fn ways(to: Option<&OrdersTo>, file: &str) -> String {
    let share = Message::ShareFile.text();
    let share = format!("<button type=\"button\" data-shared=\"share\">{share}</button>");
    let Some(to) = to else { return share };
    let address = escaped(to.as_str());
    if to.is_mail() {
        // Source: RFC 6068, 2: a subject is percent-encoded; names of orders hold nothing that asks for it but spaces.
        let subject = escaped(&Message::Subject(file).text().replace(' ', "%20"));
        let mail = Message::MailTo(to.as_str()).text();
        let mail = format!("<a class=\"button\" href=\"mailto:{address}?subject={subject}\">{}</a>", escaped(&mail));
        [&mail, &share, "<p>", &Message::Attach.text(), "</p>"].concat()
    } else {
        let page = escaped(&Message::OrdersPage(to.as_str()).text());
        let page = format!("<a class=\"button\" href=\"{address}\" target=\"_blank\" rel=\"noopener\">{page}</a>");
        [page, share].concat()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const FILE: &str = "fenland-2026-11-25-a1b2c3d4.order.json";

    #[test]
    fn an_order_goes_where_the_range_says() {
        let of = |to: &str| ways(to.parse().ok().as_ref(), FILE);
        let mail = of("orders@odd.example");
        let address = ["href=\"mailto:orders@odd.example?subject=Order%20", FILE, "\""].concat();
        assert!(mail.contains(&address) && mail.contains("data-shared=\"share\""), "{mail}");
        let page = of("https://odd.example/in?a=1&b=2");
        assert!(page.contains("href=\"https://odd.example/in?a=1&amp;b=2\""), "{page}");
        assert!(!of("").contains("href") && of("").contains("data-shared"));
    }
}

//! Where orders go: an address of mail, or of a page.

use core::str::FromStr;

use serde::Serialize;

/// An address of mail, or of a page that is fetched over a safe line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(with = "String", extend("pattern" = "^(https://[^\\s@]+|[^\\s@/:?&#%]+@[^\\s@/:?&#%]+\\.[^\\s@/:?&#%]+)$")))]
#[serde(transparent)]
pub struct OrdersTo(String);

/// A text that is neither.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotAnAddress(pub String);

// Source: RFC 5321, 4.5.3.1.3: a path has at most 256 octets, its brackets included.
const LONGEST: usize = 254;

impl OrdersTo {
    /// The address as it is read.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// Whether it is one of mail.
    pub fn is_mail(&self) -> bool {
        !self.0.starts_with(PAGE)
    }
}

const PAGE: &str = "https://";

/// What separates parts of an address, or would begin something else in a link.
const SEPARATORS: &str = "@/:?&#%\"<>\\,;()[]";

impl FromStr for OrdersTo {
    type Err = NotAnAddress;

    fn from_str(text: &str) -> Result<Self, NotAnAddress> {
        let is_plain = |part: &str| !part.is_empty() && !part.contains(|letter| SEPARATORS.contains(letter));
        let is_domain =
            |part: &str| is_plain(part) && part.contains('.') && part.split('.').all(|name| !name.is_empty());
        let is_address = match text.strip_prefix(PAGE) {
            // A name before an `@` would hide whose page it is.
            Some(page) => !page.starts_with(['/', '?', '#', ':']) && !page.is_empty() && !page.contains('@'),
            None => text.split_once('@').is_some_and(|(name, domain)| is_plain(name) && is_domain(domain)),
        };
        let is_written = text.len() <= LONGEST && text.bytes().all(|byte| byte.is_ascii_graphic());
        if is_address && is_written {
            Ok(Self(text.into()))
        } else {
            Err(NotAnAddress(text.chars().take(60).collect()))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_is_one_of_mail_or_of_a_page() {
        for (text, is_mail) in [
            ("orders@odd-lintel.example", true),
            ("a.b+c@d.example", true),
            ("https://odd-lintel.example/orders?from=page", false),
        ] {
            assert_eq!(text.parse::<OrdersTo>().map(|to| to.is_mail()), Ok(is_mail), "{text}");
        }
        for text in [
            "",
            "orders",
            "@odd.example",
            "orders@",
            "orders@example",
            "orders@odd..example",
            "a@b@c.example",
            "a b@c.example",
            "a@b.example?cc=d@e.example",
            "a@b.example&body=x",
            "mailto:a@b.example",
            "http://odd.example",
            "https://",
            "https:///x",
            "https://odd.example@other.example",
            "javascript:alert(1)",
            "a%0a@b.example",
            "\u{e9}@b.example",
        ] {
            assert!(text.parse::<OrdersTo>().is_err(), "{text}");
        }
        assert!([&"a".repeat(250), "@b.example"].concat().parse::<OrdersTo>().is_err());
    }
}

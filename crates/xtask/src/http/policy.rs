//! The content security policy, with the hashes of the page's inline scripts: a header here, and an element of the
//! page itself for hosts that send no headers of their own.

use anyhow::{Context, Result};
use sha2::{Digest, Sha256};

use crate::base64::base64;

/// The one style element that the component for the room brings along in its shadow tree, model-viewer 4.4.0.
/// A browser that meets another one names its hash in its console, and a browser test fails.
const ROOM_STYLE: &str = "'sha256-PXtZZkJMMyc18o/DN1ZEFOJ2qEGq95IQbVaJFMOXOb0='";

/// What begins a page that Trunk wrote; the element has to come before all that it is about.
const CHARSET: &str = "<meta charset=\"utf-8\">";

/// The policy as a header of a page and of all files beside it: a worker obeys the header of its own script.
pub(super) fn for_page(html: &str) -> String {
    format!("{}; frame-ancestors 'none'", within_page(html))
}

/// The page with the policy in it.
pub(crate) fn into_page(html: &str) -> Result<String> {
    let (before, after) = html.split_once(CHARSET).with_context(|| format!("the page has no {CHARSET}"))?;
    // It holds single quotes alone.
    let policy = within_page(html);
    let element = format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">");
    Ok([before, CHARSET, "\n", &element, after].concat())
}

/// What an element of the page can say: all but who may frame it.
// Source: Content Security Policy Level 3, section 3.3: `frame-ancestors` in a `meta` element is ignored.
fn within_page(html: &str) -> String {
    let scripts: Vec<String> =
        inline_scripts(html).map(|script| format!(" 'sha256-{}'", base64(&Sha256::digest(script)))).collect();
    let scripts = scripts.concat();
    format!(
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'{scripts}; style-src 'self' {ROOM_STYLE}; \
         img-src 'self' blob: data:; font-src 'self'; connect-src 'self' blob:; worker-src 'self'; \
         manifest-src 'self'; base-uri 'none'; form-action 'none'"
    )
}

/// The content of each script element without a source, as it stands. It reads pages that Trunk
/// wrote, not any page.
fn inline_scripts(html: &str) -> impl Iterator<Item = &str> {
    html.split("<script").skip(1).filter_map(|part| {
        let (attributes, rest) = part.split_once('>')?;
        let (body, _) = rest.split_once("</script>")?;
        (!attributes.contains(" src=")).then_some(body)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_inline_script_is_named_by_its_hash() {
        // Source: Content Security Policy Level 2, section 4.2.5, the example of `alert('Hello, world.');`.
        let html = "<script>alert('Hello, world.');</script><script src=\"a.js\"></script>";
        let policy = for_page(html);
        assert!(policy.contains("'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='"), "{policy}");
        assert_eq!(policy.replace(ROOM_STYLE, "").matches("sha256").count(), 1);
    }

    #[test]
    fn a_page_carries_all_of_its_header_but_who_may_frame_it() {
        let html = "<head>\n  <meta charset=\"utf-8\">\n<script>start()</script></head>";
        let page = into_page(html).unwrap();
        let (before, after) = page.split_once(" content=\"").unwrap();
        let (policy, after) = after.split_once("\">").unwrap();
        assert_eq!(before, "<head>\n  <meta charset=\"utf-8\">\n<meta http-equiv=\"Content-Security-Policy\"");
        assert_eq!(after, "\n<script>start()</script></head>");
        assert_eq!(for_page(&page), format!("{policy}; frame-ancestors 'none'"));
        assert_eq!(for_page(html), for_page(&page), "the element is no script");
        assert!(into_page("<p>no charset</p>").is_err());
    }

    #[test]
    fn a_page_without_inline_script_allows_none() {
        assert!(for_page("<p>no script</p>").contains("script-src 'self' 'wasm-unsafe-eval'; style-src"));
    }
}

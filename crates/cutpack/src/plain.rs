//! Reads an SVG as a plain viewer does: it knows the attributes, and no style and no custom property.

use roxmltree::Node;

/// What an attribute is for a node: its own or that of the nearest element around it.
fn taken<'a>(node: Node<'a, '_>, name: &str) -> Option<&'a str> {
    node.ancestors().find_map(|node| node.attribute(name))
}

fn is_colour(text: &str) -> bool {
    let digits = text.strip_prefix('#').filter(|digits| matches!(digits.len(), 3 | 6));
    text == "none"
        || text == "currentColor"
        || digits.is_some_and(|digits| digits.bytes().all(|b| b.is_ascii_hexdigit()))
}

/// What is drawn has plain colours, is seen, and is no black area where a style was meant.
pub(crate) fn check(node: Node<'_, '_>) {
    for attribute in node.attributes() {
        assert!(!attribute.value().contains("var("), "{attribute:?}");
    }
    if !matches!(node.tag_name().name(), "rect" | "path" | "circle" | "text") {
        return;
    }
    let [Some(fill), Some(stroke)] = ["fill", "stroke"].map(|name| taken(node, name)) else {
        panic!("{node:?} is filled with black, or has no line, by default")
    };
    assert!(is_colour(fill) && is_colour(stroke), "{fill} {stroke}");
    assert!(fill != "none" || stroke != "none", "{node:?} is not seen");
    if node.has_tag_name("text") {
        assert!(fill != "none" && fill != taken(node.parent().unwrap(), "fill").unwrap(), "paper on paper");
    }
}

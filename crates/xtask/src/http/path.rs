//! From the target of a request to a path inside the served folder.

use std::path::PathBuf;

/// The relative path that a target asks for, or none if it asks for anything outside, hidden or
/// odd. `/` asks for `index.html`.
pub(super) fn relative(target: &str) -> Option<PathBuf> {
    let path = target.split(['?', '#']).next()?.strip_prefix('/')?;
    let path = decode(path)?;
    let path = if path.is_empty() { "index.html" } else { &path };
    let plain = |part: &str| !part.is_empty() && !part.starts_with('.') && !part.contains(['\\', '\0', ':']);
    path.split('/').all(plain).then(|| path.split('/').collect())
}

fn decode(path: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(path.len());
    let mut rest = path.bytes();
    while let Some(byte) = rest.next() {
        if byte == b'%' {
            let (high, low) = (hex(rest.next()?)?, hex(rest.next()?)?);
            bytes.push(high * 16 + low);
        } else {
            bytes.push(byte);
        }
    }
    String::from_utf8(bytes).ok()
}

fn hex(digit: u8) -> Option<u8> {
    char::from(digit).to_digit(16).and_then(|digit| u8::try_from(digit).ok())
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::*;

    #[test]
    fn a_target_names_a_file_inside_or_nothing() {
        for (target, expected) in [
            ("/", Some("index.html")),
            ("/?from=mail", Some("index.html")),
            ("/ranges/fenland.toml", Some("ranges/fenland.toml")),
            ("/odd%20name.svg?v=2#part", Some("odd name.svg")),
            ("/../Cargo.toml", None),
            ("/%2e%2e/Cargo.toml", None),
            ("/a/%2e%2e%2fCargo.toml", None),
            ("/..%5cCargo.toml", None),
            ("//etc/passwd", None),
            ("/a//b", None),
            ("/.git/config", None),
            ("/c:/boot.ini", None),
            ("/a%00.html", None),
            ("/%zz", None),
            ("/%4", None),
            ("/%ff", None),
            ("index.html", None),
            ("http://elsewhere/", None),
        ] {
            assert_eq!(relative(target).as_deref(), expected.map(Path::new), "{target}");
        }
    }
}

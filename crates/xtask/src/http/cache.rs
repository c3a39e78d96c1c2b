//! How long a file may be kept, by its name.

/// The `Cache-Control` by name: a hash of the content is in some names of files and folders, and what
/// is called so never changes. All others are asked for anew.
pub(super) fn cache_control(path: &str) -> &'static str {
    if path.split(['/', '-', '_', '.']).any(is_hash) { "public, max-age=31536000, immutable" } else { "no-cache" }
}

/// Trunk's hashes have 16 hexadecimal digits and leave out leading noughts.
pub(crate) fn is_hash(part: &str) -> bool {
    (14..=16).contains(&part.len())
        && part.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'))
        && part.bytes().any(|byte| byte.is_ascii_digit())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_hashed_name_is_kept_for_good() {
        for (name, kept) in [
            ("app-1f2e3d4c5b6a7988/page_bg.wasm", true),
            ("app-1f2e3d4c5b6a7988.css", true),
            ("index.html", false),
            ("sw.js", false),
            ("defaced-facade.css", false),
            ("ranges/fenland.toml", false),
        ] {
            assert_eq!(cache_control(name).contains("immutable"), kept, "{name}");
        }
    }
}

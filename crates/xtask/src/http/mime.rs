//! What kind of file a name stands for, and how long it may be kept.

use std::path::Path;

/// The media type by the end of the name.
pub(super) fn of(path: &Path) -> &'static str {
    match path.extension().and_then(|end| end.to_str()).unwrap_or_default() {
        "html" => "text/html; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "js" | "mjs" => "text/javascript; charset=utf-8",
        // Browsers compile while loading only under exactly this name.
        "wasm" => "application/wasm",
        "json" | "map" => "application/json",
        "webmanifest" => "application/manifest+json",
        "toml" => "application/toml; charset=utf-8",
        "txt" | "md" => "text/plain; charset=utf-8",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "ico" => "image/x-icon",
        "woff2" => "font/woff2",
        "pdf" => "application/pdf",
        _ => "application/octet-stream",
    }
}

/// The `Cache-Control` by name: Trunk puts a hash of the content into some names, and such a file
/// never changes. All others are asked for anew.
pub(super) fn cache_control(path: &Path) -> &'static str {
    let name = path.file_name().and_then(|name| name.to_str()).unwrap_or_default();
    if name.split(['-', '_', '.']).any(is_hash) { "public, max-age=31536000, immutable" } else { "no-cache" }
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
    fn names_have_their_media_type() {
        for (name, expected) in [
            ("index.html", "text/html; charset=utf-8"),
            ("slotwright-web-1f2e3d4c5b6a7988_bg.wasm", "application/wasm"),
            ("start.mjs", "text/javascript; charset=utf-8"),
            ("fonts/body.woff2", "font/woff2"),
            ("mark.svg", "image/svg+xml"),
            ("ranges/fenland.toml", "application/toml; charset=utf-8"),
            ("order.schema.json", "application/json"),
            ("LICENSE", "application/octet-stream"),
        ] {
            assert_eq!(of(Path::new(name)), expected, "{name}");
        }
    }

    #[test]
    fn only_a_hashed_name_is_kept_for_good() {
        for (name, kept) in [
            ("slotwright-web-1f2e3d4c5b6a7988_bg.wasm", true),
            ("app-1f2e3d4c5b6a7988.css", true),
            ("index.html", false),
            ("sw.js", false),
            ("defaced-facade.css", false),
            ("ranges/fenland.toml", false),
        ] {
            assert_eq!(cache_control(Path::new(name)).contains("immutable"), kept, "{name}");
        }
    }
}

//! The server as a client meets it.

use std::fs;
use std::io::{Read, Write};
use std::net::TcpStream;
use std::path::PathBuf;

use anyhow::{Context, Result};

use super::{Server, spawn};

/// A small built app in a folder of its own.
struct App(PathBuf);

impl App {
    fn new(name: &str) -> Result<Self> {
        let outer = std::env::temp_dir().join(format!("slotwright-http-{name}-{}", std::process::id()));
        let folder = outer.join("dist");
        fs::create_dir_all(&folder)?;
        fs::write(outer.join("secret.txt"), "outside")?;
        fs::write(folder.join("index.html"), "<script>start()</script>")?;
        fs::write(folder.join("app-1f2e3d4c5b6a7988.css"), "main{}")?;
        fs::write(folder.join("app-1f2e3d4c5b6a7988.css.br"), "packed")?;
        Ok(Self(folder))
    }
}

impl Drop for App {
    fn drop(&mut self) {
        if let Some(outer) = self.0.parent() {
            fs::remove_dir_all(outer).ok();
        }
    }
}

fn ask(url: &str, request: &str) -> Result<String> {
    let address = url.strip_prefix("http://").and_then(|rest| rest.strip_suffix('/')).context("odd address")?;
    let mut stream = TcpStream::connect(address)?;
    let request = request.replacen("\r\n\r\n", "\r\nHost: localhost\r\nConnection: close\r\n\r\n", 1);
    stream.write_all(request.as_bytes())?;
    let mut reply = String::new();
    stream.read_to_string(&mut reply)?;
    Ok(reply)
}

#[test]
fn the_page_comes_with_its_policy_and_is_asked_for_anew() -> Result<()> {
    let app = App::new("page")?;
    let reply = ask(&spawn(&app.0)?, "GET / HTTP/1.1\r\n\r\n")?;
    for part in [
        "HTTP/1.1 200 OK\r\n",
        "content-type: text/html\r\n",
        "cache-control: no-cache\r\n",
        "last-modified: ",
        "x-content-type-options: nosniff\r\n",
        "referrer-policy: no-referrer\r\n",
        "cross-origin-opener-policy: same-origin\r\n",
        "cross-origin-resource-policy: same-origin\r\n",
        "script-src 'self' 'wasm-unsafe-eval' 'sha256-",
        "\r\n\r\n<script>start()</script>",
    ] {
        assert!(reply.contains(part), "{part:?} is missing in {reply}");
    }
    Ok(())
}

#[test]
fn a_packed_twin_is_sent_only_to_who_takes_it() -> Result<()> {
    let app = App::new("packed")?;
    let url = spawn(&app.0)?;
    let packed = ask(&url, "GET /app-1f2e3d4c5b6a7988.css HTTP/1.1\r\nAccept-Encoding: br\r\n\r\n")?;
    assert!(packed.contains("content-encoding: br\r\n") && packed.ends_with("\r\n\r\npacked"), "{packed}");
    assert!(packed.contains("content-type: text/css") && packed.contains("immutable"), "{packed}");
    let plain = ask(&url, "GET /app-1f2e3d4c5b6a7988.css HTTP/1.1\r\n\r\n")?;
    assert!(!plain.contains("content-encoding") && plain.ends_with("\r\n\r\nmain{}"), "{plain}");
    Ok(())
}

#[test]
fn head_sends_the_length_and_no_body() -> Result<()> {
    let app = App::new("head")?;
    let reply = ask(&spawn(&app.0)?, "HEAD / HTTP/1.1\r\n\r\n")?;
    assert!(reply.contains("content-length: 24\r\n") && reply.ends_with("\r\n\r\n"), "{reply}");
    Ok(())
}

#[test]
fn what_is_not_there_outside_or_not_asked_rightly_has_its_status() -> Result<()> {
    let app = App::new("status")?;
    let url = spawn(&app.0)?;
    for (request, status) in [
        ("GET /nothing.js HTTP/1.1\r\n\r\n", "404"),
        ("GET /../secret.txt HTTP/1.1\r\n\r\n", "404"),
        ("GET /%2e%2e/secret.txt HTTP/1.1\r\n\r\n", "404"),
        ("DELETE / HTTP/1.1\r\n\r\n", "405"),
        ("nonsense\r\n\r\n", "400"),
    ] {
        let reply = ask(&url, request)?;
        assert!(reply.starts_with(&format!("HTTP/1.1 {status} ")), "{request:?}: {reply}");
    }
    Ok(())
}

#[test]
fn what_a_browser_has_already_is_not_sent_again() -> Result<()> {
    let app = App::new("kept")?;
    let url = spawn(&app.0)?;
    let first = ask(&url, "GET / HTTP/1.1\r\n\r\n")?;
    let date = first.lines().find_map(|line| line.strip_prefix("last-modified: ")).context("no date")?;
    let again = ask(&url, &format!("GET / HTTP/1.1\r\nIf-Modified-Since: {date}\r\n\r\n"))?;
    assert!(again.starts_with("HTTP/1.1 304 ") && again.ends_with("\r\n\r\n"), "{again}");
    assert!(again.contains("cache-control: no-cache\r\n"), "{again}");
    Ok(())
}

#[test]
fn files_have_their_types() -> Result<()> {
    let app = App::new("types")?;
    let url = spawn(&app.0)?;
    // Browsers compile while loading only under exactly the name of wasm.
    for (name, kind) in [
        ("a_bg.wasm", "application/wasm"),
        ("start.js", "text/javascript"),
        ("body.woff2", "font/woff2"),
        ("mark.svg", "image/svg+xml"),
        ("app.webmanifest", "application/manifest+json"),
    ] {
        fs::write(app.0.join(name), "x")?;
        let reply = ask(&url, &format!("GET /{name} HTTP/1.1\r\n\r\n"))?;
        assert!(reply.contains(&format!("content-type: {kind}\r\n")), "{reply}");
    }
    Ok(())
}

#[test]
fn a_taken_port_gives_way_to_a_free_one() -> Result<()> {
    let app = App::new("port")?;
    let first = Server::bind(&app.0, 0)?;
    let second = Server::bind(&app.0, first.port())?;
    assert_ne!(first.port(), second.port());
    assert!(second.url().starts_with("http://127.0.0.1:"));
    Ok(())
}

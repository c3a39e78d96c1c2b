//! The answer to a request: a file with its headers, or a status.

use std::fs;
use std::path::{Path, PathBuf};

use super::request::{Method, Request};
use super::{mime, path, policy};

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Status {
    Ok,
    BadRequest,
    NotFound,
    MethodNotAllowed,
}

impl Status {
    fn line(self) -> &'static str {
        match self {
            Self::Ok => "200 OK",
            Self::BadRequest => "400 Bad Request",
            Self::NotFound => "404 Not Found",
            Self::MethodNotAllowed => "405 Method Not Allowed",
        }
    }
}

#[derive(Debug)]
pub(super) struct Reply {
    status: Status,
    headers: Vec<(&'static str, String)>,
    body: Vec<u8>,
    sends_body: bool,
}

impl Reply {
    /// The file that the request asks for.
    pub(super) fn to(request: &Request, folder: &Path) -> Self {
        let found = path::relative(&request.target).and_then(|name| Some((inside(folder, &folder.join(&name))?, name)));
        let Some((file, name)) = found else {
            return Self::plain(Status::NotFound).for_method(request.method);
        };
        let packed = request.takes_brotli.then(|| inside(folder, &with_br(&file))).flatten();
        let Ok(body) = fs::read(packed.as_ref().unwrap_or(&file)) else {
            return Self::plain(Status::NotFound).for_method(request.method);
        };
        // Read anew each time, so that a rebuilt page is served with its own policy.
        let page = fs::read_to_string(folder.join("index.html")).unwrap_or_default();
        let mut headers = vec![
            ("Content-Type", mime::of(&name).to_owned()),
            ("Cache-Control", mime::cache_control(&name).to_owned()),
            ("Content-Security-Policy", policy::for_page(&page)),
            ("Vary", "Accept-Encoding".to_owned()),
        ];
        if packed.is_some() {
            headers.push(("Content-Encoding", "br".to_owned()));
        }
        Self { status: Status::Ok, headers, body, sends_body: true }.for_method(request.method)
    }

    /// A status and nothing else.
    pub(super) fn plain(status: Status) -> Self {
        let mut headers = vec![("Content-Type", "text/plain; charset=utf-8".to_owned())];
        if status == Status::MethodNotAllowed {
            headers.push(("Allow", "GET, HEAD".to_owned()));
        }
        Self { status, headers, body: format!("{}\n", status.line()).into_bytes(), sends_body: true }
    }

    fn for_method(self, method: Method) -> Self {
        Self { sends_body: method == Method::Get, ..self }
    }

    /// The reply as it is sent.
    pub(super) fn bytes(&self) -> Vec<u8> {
        let own = [
            ("Content-Length", self.body.len().to_string()),
            ("Connection", "close".to_owned()),
            ("X-Content-Type-Options", "nosniff".to_owned()),
            ("Referrer-Policy", "no-referrer".to_owned()),
        ];
        let headers = own.iter().chain(&self.headers);
        let lines: Vec<String> = headers.map(|(name, value)| format!("{name}: {value}\r\n")).collect();
        let status = self.status.line();
        let mut bytes = format!("HTTP/1.1 {status}\r\n{}\r\n", lines.concat()).into_bytes();
        if self.sends_body {
            bytes.extend_from_slice(&self.body);
        }
        bytes
    }
}

/// The file, if it is one and no link leads out of the folder.
fn inside(folder: &Path, file: &Path) -> Option<PathBuf> {
    let file = file.canonicalize().ok()?;
    (file.is_file() && file.starts_with(folder)).then_some(file)
}

fn with_br(file: &Path) -> PathBuf {
    let mut name = file.as_os_str().to_owned();
    name.push(".br");
    name.into()
}

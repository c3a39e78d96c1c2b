//! The beginning of an HTTP request, as far as a file server needs it.

use std::io::Read;

use super::reply::Status;

/// Longer beginnings are refused; browsers send far less.
const LONGEST: usize = 16 * 1024;

#[derive(Debug, PartialEq)]
pub(super) struct Request {
    pub(super) method: Method,
    /// Path and query as sent.
    pub(super) target: String,
    pub(super) takes_brotli: bool,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Method {
    Get,
    Head,
}

/// Why a request has no answer but a status.
#[derive(Debug, PartialEq)]
pub(super) enum Problem {
    Malformed,
    OtherMethod,
}

impl Problem {
    pub(super) fn status(&self) -> Status {
        match self {
            Self::Malformed => Status::BadRequest,
            Self::OtherMethod => Status::MethodNotAllowed,
        }
    }
}

impl Request {
    /// Reads up to the empty line that ends the headers.
    pub(super) fn read(stream: &mut impl Read) -> Result<Self, Problem> {
        let mut bytes = Vec::new();
        let mut chunk = [0; 2048];
        while !bytes.windows(4).any(|window| window == b"\r\n\r\n") {
            let count = stream.read(&mut chunk).map_err(|_| Problem::Malformed)?;
            if count == 0 || bytes.len() > LONGEST {
                return Err(Problem::Malformed);
            }
            bytes.extend_from_slice(&chunk[..count]);
        }
        Self::parse(&String::from_utf8(bytes).map_err(|_| Problem::Malformed)?)
    }

    fn parse(text: &str) -> Result<Self, Problem> {
        let mut lines = text.split("\r\n");
        let mut words = lines.next().unwrap_or_default().split(' ');
        let (Some(method), Some(target), Some(version)) = (words.next(), words.next(), words.next()) else {
            return Err(Problem::Malformed);
        };
        if !version.starts_with("HTTP/1.") || words.next().is_some() {
            return Err(Problem::Malformed);
        }
        let method = match method {
            "GET" => Method::Get,
            "HEAD" => Method::Head,
            _ => return Err(Problem::OtherMethod),
        };
        let takes_brotli = lines
            .take_while(|line| !line.is_empty())
            .filter_map(|line| line.split_once(':'))
            .filter(|(name, _)| name.eq_ignore_ascii_case("accept-encoding"))
            .any(|(_, value)| value.split(',').any(is_brotli));
        Ok(Self { method, target: target.to_owned(), takes_brotli })
    }
}

/// An encoding may carry a weight, and weight zero refuses it.
fn is_brotli(encoding: &str) -> bool {
    let (name, weight) = encoding.split_once(';').unwrap_or((encoding, ""));
    let refused = weight.trim().strip_prefix("q=").and_then(|q| q.parse::<f32>().ok()).is_some_and(|q| q <= 0.0);
    name.trim().eq_ignore_ascii_case("br") && !refused
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn method_target_and_encodings_are_read() {
        for (text, expected) in [
            ("GET / HTTP/1.1\r\n\r\n", Ok((Method::Get, "/", false))),
            ("HEAD /a?b=1 HTTP/1.1\r\nAccept-Encoding: gzip, br\r\n\r\n", Ok((Method::Head, "/a?b=1", true))),
            ("GET / HTTP/1.1\r\naccept-encoding: gzip, br;q=0\r\n\r\n", Ok((Method::Get, "/", false))),
            ("GET / HTTP/1.1\r\nX-Note: br\r\n\r\n", Ok((Method::Get, "/", false))),
            ("POST / HTTP/1.1\r\n\r\n", Err(Problem::OtherMethod)),
            ("GET /a b HTTP/1.1\r\n\r\n", Err(Problem::Malformed)),
            ("GET /\r\n\r\n", Err(Problem::Malformed)),
            ("GET / HTTP/1.1\r\n", Err(Problem::Malformed)),
        ] {
            let expected = expected.map(|(method, target, takes_brotli)| Request {
                method,
                target: target.to_owned(),
                takes_brotli,
            });
            assert_eq!(Request::read(&mut text.as_bytes()), expected, "{text:?}");
        }
    }

    #[test]
    fn an_endless_beginning_is_refused() {
        let endless = "GET / HTTP/1.1\r\nX: ".bytes().chain(std::iter::repeat_n(b'x', 100_000));
        let bytes: Vec<u8> = endless.collect();
        assert_eq!(Request::read(&mut bytes.as_slice()), Err(Problem::Malformed));
    }
}

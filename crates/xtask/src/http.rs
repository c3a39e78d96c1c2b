//! The built app as a host would serve it, for this machine only.

pub(crate) mod cache;
pub(crate) mod policy;

use std::net::{Ipv4Addr, SocketAddr, TcpListener};
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use axum::Router;
use axum::extract::{Request, State};
use axum::http::header::{self, HeaderName, HeaderValue};
use axum::middleware::{self, Next};
use axum::response::Response;
use tower_http::services::ServeDir;

/// A server with its port, not yet answering.
#[derive(Debug)]
pub(crate) struct Server {
    listener: TcpListener,
    address: SocketAddr,
    folder: PathBuf,
}

impl Server {
    /// Takes this port, or any free one if it is taken; port 0 is any free one.
    pub(crate) fn bind(folder: &Path, port: u16) -> Result<Self> {
        let folder = folder.canonicalize().with_context(|| folder.display().to_string())?;
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port))
            .or_else(|_| TcpListener::bind((Ipv4Addr::LOCALHOST, 0)))
            .context("no port of 127.0.0.1 is free")?;
        let address = listener.local_addr().context("the port has no address")?;
        Ok(Self { listener, address, folder })
    }

    pub(crate) fn port(&self) -> u16 {
        self.address.port()
    }

    pub(crate) fn url(&self) -> String {
        format!("http://{}/", self.address)
    }

    /// Answers until the program ends.
    pub(crate) fn run(self) -> Result<()> {
        let runtime = tokio::runtime::Builder::new_current_thread().enable_io().enable_time().build();
        runtime.context("no runtime for the server")?.block_on(async {
            self.listener.set_nonblocking(true).context("the port")?;
            let listener = tokio::net::TcpListener::from_std(self.listener).context("the port")?;
            axum::serve(listener, app(&self.folder)).await.context("the server")
        })
    }
}

/// Serves a folder beside the caller's work for as long as the program runs; the address.
pub(crate) fn spawn(folder: &Path) -> Result<String> {
    let server = Server::bind(folder, 0)?;
    let url = server.url();
    // Whoever asks a server that has ended hears that nobody answers.
    std::thread::spawn(move || server.run());
    Ok(url)
}

/// Every file with its packed twin, its date and the headers that the README asks of a host.
fn app(folder: &Path) -> Router {
    let files = ServeDir::new(folder).precompressed_br();
    Router::new().fallback_service(files).layer(middleware::from_fn_with_state(folder.to_owned(), with_headers))
}

async fn with_headers(State(folder): State<PathBuf>, request: Request, next: Next) -> Response {
    let kept = cache::cache_control(request.uri().path());
    let mut response = next.run(request).await;
    // Read anew each time, so that a rebuilt page is served with its own policy.
    let page = std::fs::read_to_string(folder.join("index.html")).unwrap_or_default();
    let found = response.status().is_success() || response.status() == axum::http::StatusCode::NOT_MODIFIED;
    let headers = response.headers_mut();
    let mut set = |name: HeaderName, value: &str| {
        // What holds a character that no header may hold is left out; a test asks for all of them.
        HeaderValue::from_str(value).map(|value| headers.insert(name, value)).ok();
    };
    set(header::CACHE_CONTROL, if found { kept } else { "no-cache" });
    set(header::CONTENT_SECURITY_POLICY, &policy::for_page(&page));
    set(header::VARY, "Accept-Encoding");
    set(header::X_CONTENT_TYPE_OPTIONS, "nosniff");
    set(header::REFERRER_POLICY, "no-referrer");
    set(HeaderName::from_static("cross-origin-opener-policy"), "same-origin");
    set(HeaderName::from_static("cross-origin-resource-policy"), "same-origin");
    response
}

#[cfg(test)]
mod tests;

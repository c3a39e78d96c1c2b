//! A small static file server for the built app: this machine only, one thread per connection,
//! one request per connection.

pub(crate) mod mime;
mod path;
pub(crate) mod policy;
mod reply;
mod request;

use std::io::Write;
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

use anyhow::{Context, Result};

use reply::Reply;
use request::Request;

/// A silent client is let go after this time.
const PATIENCE: Duration = Duration::from_secs(10);

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
    pub(crate) fn run(self) {
        let folder: Arc<Path> = self.folder.into();
        // A connection that broke before it began concerns nobody.
        for stream in self.listener.incoming().flatten() {
            let folder = Arc::clone(&folder);
            std::thread::spawn(move || answer(stream, &folder));
        }
    }
}

/// Serves a folder beside the caller's work for as long as the program runs; the address.
pub(crate) fn spawn(folder: &Path) -> Result<String> {
    let server = Server::bind(folder, 0)?;
    let url = server.url();
    std::thread::spawn(move || server.run());
    Ok(url)
}

/// Whatever fails here, the client went away; the next one has its own thread.
fn answer(mut stream: TcpStream, folder: &Path) {
    let patient = stream.set_read_timeout(Some(PATIENCE)).and_then(|()| stream.set_write_timeout(Some(PATIENCE)));
    if patient.is_err() {
        return;
    }
    let reply = match Request::read(&mut stream) {
        Ok(request) => Reply::to(&request, folder),
        Err(problem) => Reply::plain(problem.status()),
    };
    if stream.write_all(&reply.bytes()).and_then(|()| stream.flush()).is_ok() {
        // Closing with unread bytes would reset the connection under the reply.
        stream.shutdown(std::net::Shutdown::Write).ok();
    }
}

#[cfg(test)]
mod tests;

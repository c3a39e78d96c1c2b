//! `cargo xtask serve`: the built app on this machine's own address.

use anyhow::Result;

use crate::arguments::Arguments;
use crate::dist::Make;
use crate::http::Server;
use crate::root::Root;
use crate::{dist, say, setup};

const USUAL_PORT: u16 = 8080;

/// Sets up, builds, and serves until it is stopped.
pub(crate) fn run(root: &Root, arguments: &Arguments) -> Result<()> {
    dist::build(root, &setup::web(root, arguments)?, Make::of(arguments))?;
    let port = arguments.port.unwrap_or(USUAL_PORT);
    let server = Server::bind(&root.dist(), port)?;
    if server.port() != port {
        say::step(&format!("Port {port} is taken, so another one serves"));
    }
    say::line(&format!("\nSlotwright is at {} (Ctrl-C stops it)", server.url()));
    server.run()
}

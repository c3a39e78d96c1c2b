//! Debian packages.

use std::process::Command;
use std::sync::Once;

use anyhow::{Result, bail};

use crate::command::{on_path, read, run};
use crate::say;

/// Installs packages; `why` says what they are for.
pub(super) fn install(packages: &[&str], why: &str) -> Result<()> {
    let list = packages.join(" ");
    say::step(&format!("Installing {list} with apt-get ({why})"));
    let Some(apt) = on_path(&["apt-get"]) else {
        bail!("there is no apt-get here. To do: install by hand what Debian calls {list}, {why}");
    };
    let mut as_root = if is_root() { Command::new(&apt) } else { Command::new("sudo") };
    if !is_root() {
        as_root.args(["env", "DEBIAN_FRONTEND=noninteractive"]).arg(&apt);
    }
    let by_hand = format!("run `apt-get update && apt-get install --no-install-recommends {list}` as root");
    update(&as_root, &by_hand)?;
    run(
        as_root
            .env("DEBIAN_FRONTEND", "noninteractive")
            .args(["install", "--yes", "--quiet=2", "--no-install-recommends"])
            .args(packages),
        &by_hand,
    )
}

/// Package lists may be old or missing; once for each run of this program is enough.
fn update(as_root: &Command, by_hand: &str) -> Result<()> {
    static ONCE: Once = Once::new();
    let mut result = Ok(());
    ONCE.call_once(|| {
        let mut command = Command::new(as_root.get_program());
        command.args(as_root.get_args()).args(["update", "--quiet=2"]);
        result = run(&mut command, by_hand);
    });
    result
}

fn is_root() -> bool {
    read(Command::new("id").arg("-u")).is_ok_and(|id| id.trim() == "0")
}

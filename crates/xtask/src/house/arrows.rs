//! Which crate may need which: arrows point inwards, and the core needs none.

use anyhow::{Result, bail, ensure};

use crate::metadata::{self, Crate};
use crate::root::Root;

const CORE: &str = "slotwright-core";
const NEST: &str = "slotwright-nest";
const SOLID: &str = "slotwright-solid";
const STAGE: &str = "slotwright-stage";
const CUTPACK: &str = "slotwright-cutpack";
const PROTOCOL: &str = "slotwright-protocol";
const TESTS: &str = "slotwright-tests";

/// What each crate may need to run.
fn allowed(name: &str) -> Option<&'static [&'static str]> {
    match name {
        NEST | "wasm-streams" => Some(&[]),
        CORE => Some(&[NEST]),
        "slotwright-shop" => Some(&[CORE, SOLID, CUTPACK, NEST]),
        "slotwright-web" => Some(&[
            CORE,
            CUTPACK,
            PROTOCOL,
            "slotwright-adviser",
            "slotwright-orders",
            "slotwright-packs",
            "slotwright-scene",
        ]),
        "slotwright-adviser" => Some(&[CORE, PROTOCOL]),
        "slotwright-orders" | "slotwright-packs" => Some(&[CORE, CUTPACK, PROTOCOL]),
        "xtask" => Some(&[CORE, CUTPACK]),
        "slotwright-scene" => Some(&[CORE, SOLID, STAGE, PROTOCOL]),
        CUTPACK => Some(&[CORE, NEST, SOLID]),
        STAGE => Some(&[CORE, SOLID]),
        TESTS => Some(&[CORE, CUTPACK]),
        "slotwright-parity" => Some(&[CORE, TESTS]),
        SOLID | PROTOCOL => Some(&[CORE]),
        _ => None,
    }
}

fn check(members: &[Crate]) -> Result<()> {
    for Crate { name, needs, .. } in members {
        let Some(allowed) = allowed(name) else {
            bail!("{name} is new: say in this test what it may need");
        };
        for needed in needs {
            ensure!(allowed.contains(&needed.as_str()), "{name} must not need {needed}");
        }
    }
    Ok(())
}

#[test]
fn arrows_between_crates_point_inwards() -> Result<()> {
    check(&metadata::crates(&Root::find()?)?)
}

#[test]
fn an_arrow_outwards_is_found() {
    let member = |name: &str, needed: &str| Crate {
        name: name.to_owned(),
        license: None,
        needs: vec![needed.to_owned()],
        benches: Vec::new(),
    };
    for (name, needed, passes) in [
        (CUTPACK, CORE, true),
        (CORE, NEST, true),
        (NEST, CORE, false),
        (CORE, CUTPACK, false),
        (CUTPACK, "slotwright-web", false),
        ("slotwright-web", "slotwright-shop", false),
        ("slotwright-shop", "xtask", false),
        ("newcomer", CORE, false),
    ] {
        assert_eq!(check(&[member(name, needed)]).is_ok(), passes, "{name} needs {needed}");
    }
}

//! Which module of the core may use which: no two use each other, however far around, and a folder only uses
//! those before it.

use std::collections::{BTreeMap, BTreeSet};

use anyhow::{Result, bail, ensure};

use super::files::texts;
use super::imports::{Import, imports};
use crate::root::Root;

const CORE: &str = "crates/core/src/";

/// The folders of the core in reading order: each may use those before it.
const FOLDERS: [&str; 13] = [
    "units", "input", "range", "choice", "geometry", "cabinet", "statics", "business", "rules", "solver", "words",
    "order", "audit",
];

/// The modules of a crate by their path from its root, `rules/sag`, with what each imports.
type Modules = BTreeMap<String, Vec<Import>>;

/// Who uses whom.
type Uses = BTreeMap<String, BTreeSet<String>>;

/// The modules of the files below a folder; tests may use whatever they like.
fn modules<'a>(files: impl IntoIterator<Item = (&'a str, &'a str)>) -> Modules {
    let named = files.into_iter().filter_map(|(path, text)| Some((path.strip_suffix(".rs")?, text)));
    let kept = named.filter(|(path, _)| {
        let mut folders = path.split('/');
        *path != "lib" && folders.all(|folder| !matches!(folder, "tests" | "testing"))
    });
    kept.map(|(path, text)| (path.to_owned(), imports(text))).collect()
}

/// A path from the root of the crate; nothing if it leads out of it.
fn absolute(modules: &Modules, me: &str, path: &[String]) -> Option<Vec<String>> {
    let mut base: Vec<String> = me.split('/').map(str::to_owned).collect();
    let mut rest = path;
    match path.first()?.as_str() {
        "crate" => {
            base.clear();
            rest = path.get(1..)?;
        }
        "self" => rest = path.get(1..)?,
        "super" => {
            while rest.first().is_some_and(|step| step == "super") {
                base.pop();
                rest = rest.get(1..)?;
            }
        }
        child => {
            modules.get(&format!("{me}/{child}"))?;
        }
    }
    base.extend(rest.iter().cloned());
    Some(base)
}

/// The module that a path names or leads into, and what is left of the path.
fn module_of(modules: &Modules, path: &[String]) -> Option<(String, Vec<String>)> {
    (1..=path.len()).rev().find_map(|length| {
        let (module, rest) = path.split_at_checked(length)?;
        let module = module.join("/");
        modules.contains_key(&module).then(|| (module, rest.to_vec()))
    })
}

/// Who uses whom; what a module only passes on is used where it comes from.
fn uses(modules: &Modules) -> Uses {
    let mut passed_on: BTreeMap<(&str, &str), String> = BTreeMap::new();
    let all = || modules.iter().flat_map(|(me, imports)| imports.iter().map(move |import| (me.as_str(), import)));
    for (me, import) in all().filter(|(_, import)| import.passed_on) {
        if let Some((from, _)) = absolute(modules, me, &import.path).and_then(|path| module_of(modules, &path)) {
            passed_on.insert((me, &import.name), from);
        }
    }
    let mut uses = Uses::new();
    for (me, import) in all() {
        let Some(found) = absolute(modules, me, &import.path).and_then(|path| module_of(modules, &path)) else {
            continue;
        };
        let (mut module, mut rest) = found;
        // From hand to hand; no chain is longer than there are modules.
        for _ in modules {
            let Some(name) = rest.first() else { break };
            let Some(from) = passed_on.get(&(module.as_str(), name.as_str())) else { break };
            let is_the_module = from.rsplit('/').next() == Some(name);
            module = from.clone();
            if is_the_module {
                rest.remove(0);
            }
        }
        if module != me {
            uses.entry(me.to_owned()).or_default().insert(module);
        }
    }
    uses
}

/// A module and one within it belong together.
fn is_within(one: &str, other: &str) -> bool {
    let inside = |inner: &str, outer: &str| inner.strip_prefix(outer).is_some_and(|rest| rest.starts_with('/'));
    inside(one, other) || inside(other, one)
}

/// Modules each of which uses the next, and the last the first; those within each other aside.
fn circle(uses: &Uses) -> Option<Vec<&str>> {
    let mut left: BTreeMap<&str, BTreeSet<&str>> = uses
        .iter()
        .map(|(me, all)| (me.as_str(), all.iter().map(String::as_str).filter(|used| !is_within(me, used)).collect()))
        .collect();
    // Who uses nobody that is left is in no circle.
    loop {
        let before = left.len();
        let names: BTreeSet<&str> = left.keys().copied().collect();
        for used in left.values_mut() {
            used.retain(|name| names.contains(name));
        }
        left.retain(|_, used| !used.is_empty());
        if left.len() == before {
            break;
        }
    }
    let mut way: Vec<&str> = Vec::new();
    let mut at = *left.keys().next()?;
    while !way.contains(&at) {
        way.push(at);
        at = left.get(at)?.first()?;
    }
    Some(way.into_iter().skip_while(|name| *name != at).collect())
}

fn folder(module: &str) -> &str {
    module.split('/').next().unwrap_or(module)
}

fn place(folder: &str) -> Result<usize> {
    let Some(place) = FOLDERS.iter().position(|known| *known == folder) else {
        bail!("{folder} is new in the core: say in this test where it stands");
    };
    Ok(place)
}

/// Whether every module only uses its own folder and those before it.
fn keeps_order(uses: &Uses) -> Result<()> {
    for (me, all) in uses {
        for used in all {
            ensure!(place(folder(used))? <= place(folder(me))?, "{me} must not use {used}: its folder comes later");
        }
    }
    Ok(())
}

fn core() -> Result<Modules> {
    let all = texts(&Root::find()?)?;
    let files: Vec<(&str, &str)> =
        all.iter().filter_map(|(path, text)| Some((path.strip_prefix(CORE)?, text.as_str()))).collect();
    Ok(modules(files))
}

#[test]
fn no_modules_of_the_core_use_each_other() -> Result<()> {
    let uses = uses(&core()?);
    assert!(uses.len() > 50, "hardly any imports were found: {}", uses.len());
    assert_eq!(circle(&uses), None);
    Ok(())
}

#[test]
fn folders_of_the_core_only_use_those_before_them() -> Result<()> {
    let modules = core()?;
    for name in modules.keys() {
        place(folder(name))?;
    }
    keeps_order(&uses(&modules))
}

#[test]
fn a_planted_circle_is_found() {
    let check = |files: &[(&str, &str)], expected: Option<&[&str]>| {
        let uses = uses(&modules(files.iter().copied()));
        assert_eq!(circle(&uses).as_deref(), expected, "{files:?}");
    };
    check(&[("a.rs", "use crate::b::B;"), ("b.rs", "")], None);
    check(&[("a.rs", "use crate::b::B;"), ("b.rs", "use crate::a::{self, A};")], Some(&["a", "b"]));
    // The long way around, between folders, in code and in a list of lists.
    let c = ("a/c.rs", "use crate::{d::{D, E}, x};");
    check(&[("a/b.rs", "use super::c::C;"), c, ("d.rs", "fn f() { crate::a::b::f() }")], Some(&["a/b", "a/c", "d"]));
    // Through what a module passes on, under its own name or another.
    let (b, c) = (("a/b.rs", "use super::C;"), ("a/c.rs", "use super::b::B;"));
    check(&[("a.rs", "pub use c::C;"), b, c], Some(&["a/b", "a/c"]));
    check(&[("a.rs", "pub(crate) use self::c::{Z as C};"), b, c], Some(&["a/b", "a/c"]));
    check(&[("a.rs", "use c::C;"), b, c], None);
    // A module and those within it belong together; tests and comments are not counted.
    check(&[("a.rs", "use b::B;\nuse crate::a::b::C;"), ("a/b.rs", "use super::A;")], None);
    check(&[("a.rs", "use crate::b::B;"), ("b.rs", "#[cfg(test)]\nmod tests {\n    use crate::a::A;\n}")], None);
    check(&[("a.rs", "use crate::b::B;"), ("b/tests.rs", "use crate::a::A;"), ("b.rs", "// crate::a::A")], None);
}

#[test]
fn an_import_of_a_later_folder_is_found() {
    for (files, passes) in [
        ([("rules/sag.rs", "use crate::units::Length;"), ("units.rs", "")], true),
        ([("rules/sag.rs", ""), ("units/length.rs", "use crate::rules::sag::Sag;")], false),
        ([("rules/sag.rs", "use crate::newcomer::Thing;"), ("newcomer.rs", "")], false),
    ] {
        assert_eq!(keeps_order(&uses(&modules(files))).is_ok(), passes, "{files:?}");
    }
}

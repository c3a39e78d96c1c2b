//! What a Rust file names of its own crate: a small reader of `use` and of paths in code.

/// A path that a file names.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Import {
    /// Its steps: `crate`, `rules`, `Rule`.
    pub(super) path: Vec<String>,
    /// The name by which the file knows it.
    pub(super) name: String,
    /// Whether others may take it from here.
    pub(super) passed_on: bool,
}

/// All imports, and all paths in code that begin with `crate`, `self` or `super`; unit tests and comments aside.
pub(super) fn imports(text: &str) -> Vec<Import> {
    let code = code_of(text);
    let tokens = tokens(&code);
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(token) = tokens.get(at) {
        let before = at.checked_sub(1).and_then(|before| tokens.get(before)).copied();
        match *token {
            "use" => {
                at += 1;
                tree(&tokens, &mut at, &[], matches!(before, Some("pub" | ")")), &mut found);
            }
            "crate" | "self" | "super" if before != Some("::") && tokens.get(at + 1) == Some(&"::") => {
                tree(&tokens, &mut at, &[], false, &mut found);
            }
            _ => at += 1,
        }
    }
    found
}

/// The text without lines of comment and without its unit tests, which stand at its end.
fn code_of(text: &str) -> String {
    let lines = text.lines().map(str::trim_start).filter(|line| !line.starts_with("//"));
    let code: Vec<&str> = lines.collect();
    let tests = |lines: &[&str]| matches!(lines, ["#[cfg(test)]", next] if next.starts_with("mod tests"));
    let end = code.windows(2).position(tests).unwrap_or(code.len());
    code.into_iter().take(end).collect::<Vec<_>>().join("\n")
}

/// Words, `::` and single signs.
fn tokens(code: &str) -> Vec<&str> {
    let mut tokens = Vec::new();
    let mut rest = code.trim_start();
    while let Some(first) = rest.chars().next() {
        let is_word = |letter: char| letter.is_alphanumeric() || letter == '_';
        let length = if is_word(first) {
            rest.find(|letter| !is_word(letter)).unwrap_or(rest.len())
        } else if rest.starts_with("::") {
            2
        } else {
            first.len_utf8()
        };
        let (token, after) = rest.split_at(length);
        tokens.push(token);
        rest = after.trim_start();
    }
    tokens
}

/// Reads one path or a tree of them.
fn tree(tokens: &[&str], at: &mut usize, before: &[String], passed_on: bool, found: &mut Vec<Import>) {
    let mut path = before.to_vec();
    while let Some(token) = tokens.get(*at).copied() {
        if token == "{" {
            *at += 1;
            while tokens.get(*at).is_some_and(|token| *token != "}") {
                if tokens.get(*at) == Some(&",") {
                    *at += 1;
                } else {
                    let begun = *at;
                    tree(tokens, at, &path, passed_on, found);
                    // Whatever this is, it is no path.
                    *at = (*at).max(begun + 1);
                }
            }
            *at += 1;
            return;
        }
        // `{self, …}` names the module itself, `*` what is in it.
        let itself = (token == "self" && !path.is_empty()) || token == "*";
        if !itself {
            path.push(token.to_owned());
        }
        *at += 1;
        if tokens.get(*at) != Some(&"::") || itself {
            break;
        }
        *at += 1;
    }
    let mut name = path.last().cloned().unwrap_or_default();
    if tokens.get(*at) == Some(&"as") {
        name = tokens.get(*at + 1).map(|other| (*other).to_owned()).unwrap_or_default();
        *at += 2;
    }
    found.push(Import { path, name, passed_on });
}

#[test]
fn imports_are_read() {
    let read = |text: &str| -> Vec<String> {
        let line = |import: Import| {
            let mark = if import.passed_on { "pub " } else { "" };
            format!("{mark}{} as {}", import.path.join("::"), import.name)
        };
        imports(text).into_iter().map(line).collect()
    };
    for (text, expected) in [
        ("use crate::a::B;", vec!["crate::a::B as B"]),
        ("pub use a::{B, c::{self, D as E}};", vec!["pub a::B as B", "pub a::c as c", "pub a::c::D as E"]),
        (
            "pub(crate) use super::super::a::{\n    B,\n    C,\n};",
            vec!["pub super::super::a::B as B", "pub super::super::a::C as C"],
        ),
        ("use super::*;", vec!["super as super"]),
        ("fn f() -> crate::a::B<'_> { crate::c::d() }", vec!["crate::a::B as B", "crate::c::d as d"]),
        ("pub(crate) fn f(self) { self.g() }", vec![]),
        ("// use crate::a::B;\n/// [`crate::a::B`]\nfn f() {}", vec![]),
        ("use crate::a;\n\n#[cfg(test)]\nmod tests {\n    use crate::b;\n}", vec!["crate::a as a"]),
    ] {
        assert_eq!(read(text), expected, "{text}");
    }
}

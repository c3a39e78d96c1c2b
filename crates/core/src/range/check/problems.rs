//! Problems of a range as they are found: one for each cause.

use super::Wrong;

/// What is wrong, each with its path, and what could not be read.
#[derive(Debug, Default)]
pub(super) struct Problems {
    found: Vec<(String, Wrong)>,
    unread: Vec<String>,
    #[cfg(any(test, feature = "schema"))]
    pub(super) bounds: Vec<super::Bound>,
}

impl Problems {
    /// None yet; nothing is judged of what could not be read.
    pub(super) fn new(unread: Vec<String>) -> Self {
        Self { unread, ..Self::default() }
    }

    /// Notes a problem, unless what it is about could not be read: then that is the problem.
    pub(super) fn push(&mut self, (path, wrong): (String, Wrong)) {
        let counts = matches!(wrong, Wrong::Length { .. });
        let unread = |unread: &String| is_within(&path, unread) || counts && is_within(unread, &path);
        if !self.unread.iter().any(unread) {
            self.found.push((path, wrong));
        }
    }

    /// Whether nothing is wrong with what stands there.
    pub(super) fn is_right(&self, path: &str) -> bool {
        let mut wrong = self.found.iter().map(|(path, _)| path).chain(&self.unread);
        !wrong.any(|wrong| is_within(wrong, path) || is_within(path, wrong))
    }

    /// Whether all entries of a list are known by their keys and uses.
    pub(super) fn is_listed(&self, list: &str) -> bool {
        !self.unread.iter().any(|unread| {
            let entry = unread.strip_prefix(list).and_then(|rest| rest.strip_prefix('.'));
            unread == list
                || entry.is_some_and(|rest| {
                    let mut parts = rest.split('.').skip(1).peekable();
                    parts.peek().is_none() || parts.any(|part| part.starts_with("key") || part.starts_with("uses"))
                })
        })
    }

    /// All of them.
    pub(super) fn all(self) -> Vec<(String, Wrong)> {
        self.found
    }
}

/// Whether a path is another one or leads further into it.
fn is_within(path: &str, other: &str) -> bool {
    path.strip_prefix(other).is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
}

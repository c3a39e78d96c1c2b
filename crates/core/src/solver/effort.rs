//! How much the searches may do before they give up: what was given up is never called impossible.

/// Steps and trials that a search may take.
pub(crate) struct Effort {
    /// Steps of one search.
    pub(crate) search: u32,
    /// Steps of all searches for the answers of one choice.
    pub(crate) together: u32,
    /// Steps of a search after which, and each time that they have doubled, all questions are set free at once for
    /// twice as many: what nothing makes up for shows sooner so.
    pub(crate) all_at_once: u32,
    /// Steps for the question whether one rule forbids everything.
    pub(crate) one_rule: u32,
    /// Units that are priced and dated for one goal, and again for what stands in its way.
    pub(crate) goal_trials: u32,
    /// How many of them are left for taking the nearest answer again and again.
    pub(crate) goal_descent: u32,
    /// Steps of a search for another way, where the first one breaks what was given for the visit.
    pub(crate) kept_steps: u32,
    /// Units that are priced and dated for the answers of one choice, where a budget or a day was given, and again for
    /// each part of why one is shut.
    pub(crate) kept_trials: u32,
}

/// What they may do. The figures beside them are our own estimates for a browser on a phone.
pub(crate) const EFFORT: Effort = Effort {
    search: 20_000,     // some hundredths of a second
    together: 60_000,   // some tenths of a second
    all_at_once: 200,   // under a millisecond
    one_rule: 200,      // under a millisecond
    goal_trials: 1_500, // half a second
    goal_descent: 500,  // a fifth of a second
    kept_steps: 1_000,  // some milliseconds
    kept_trials: 400,   // a tenth of a second
};

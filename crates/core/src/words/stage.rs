//! What the stage shows, said for those who do not see its picture.

/// From which side the unit is seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "sides are known")]
pub enum Side {
    Front,
    FrontRight,
    Right,
    RearRight,
    Rear,
    RearLeft,
    Left,
    FrontLeft,
}

/// From how high.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Height {
    /// About level.
    Level,
    /// A little from above.
    Above,
    /// From high above.
    HighAbove,
}

/// What the stage says.
#[derive(Clone, Copy, Debug)]
pub enum Message<'a> {
    /// The direction of view.
    Seen(Side, Height),
    /// The view straight down.
    SeenFromAbove,
    /// A step of the assembly is shown, and of how many.
    GoingTogether(usize, usize),
    /// The parts are apart.
    Apart,
    /// The doors are open.
    DoorsOpen,
    /// Somebody stands beside it.
    Person,
    /// What is done in a step.
    Step {
        /// Its number.
        number: usize,
        /// How many there are.
        of: usize,
        /// What is done.
        what: &'a str,
    },
}

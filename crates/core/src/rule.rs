//! Which rules there are. What each checks is told in [`crate::rules`].

macro_rules! rules {
    ($($(#[$doc:meta])* $name:ident;)*) => {
        /// All rules.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Rule {
            $($(#[$doc])* $name,)*
        }

        impl Rule {
            /// Every rule, in the order of checking.
            pub const ALL: &[Self] = &[$(Self::$name),*];
        }
    };
}

rules! {
    /// The range has what the choice names.
    Known;
    /// Sizes within the model's limits.
    SizeLimit;
    /// Sizes on the model's steps.
    SizeStep;
    /// Number of bays, shelves and leaves.
    FitOutCount;
    /// Weights of the bays' widths.
    BayShare;
    /// Bays wide enough.
    BayRoom;
    /// Rows high enough.
    RowRoom;
    /// Deep enough for shelves and chase.
    DepthRoom;
    /// Every panel on a sheet.
    SheetFit;
    /// Shelves do not bend too far.
    ShelfSag;
    /// Nor does the top.
    TopSag;
    /// Nor does the base.
    BaseSag;
    /// Shelf slots in a shared divider.
    ShelfSlot;
    /// A leaf's shape.
    LeafShape;
    /// A leaf's mass on its pivots.
    LeafMass;
    /// The plug passes.
    HolePlug;
    /// Material round a hole.
    HoleEdge;
    /// No stile before a hole.
    HoleStile;
    /// No shelf before a hole.
    HoleShelf;
    /// A device goes in.
    DeviceWidth;
    /// A device has air over it.
    DeviceHeight;
    /// A device does not stand out.
    DeviceDepth;
    /// Joints that go in.
    JointFit;
    /// Ears that carry their shelf.
    ShelfEar;
    /// Pivots that carry their leaf.
    LeafPivot;
    /// Uprights that stay straight.
    UprightBuckling;
    /// Parts that people can carry.
    PartMass;
    /// A unit that stands by itself.
    TipOver;
    /// Parts that are long.
    PartLength;
    /// Packages that a carrier takes.
    Package;
    /// The top while moisture changes.
    TopMoisture;
    /// Gaps round leaves.
    LeafGap;
    /// Leaves that touch.
    LeafSwing;
    /// Something to open leaves by.
    LeafGrip;
    /// A device behind a leaf.
    DeviceShut;
    /// A device without a cable hole.
    DeviceCable;
    /// Cables behind the back.
    CableBend;
    /// Coats on edges.
    FinishEdges;
    /// Dark films in the sun.
    FinishSun;
    /// The screen on the top.
    ScreenWidth;
    /// The wall.
    WallWidth;
    /// Eyes before the screen.
    ViewingHeight;
    /// Feet of the screen.
    ScreenFeet;
    /// Fastening to the wall.
    WallTether;
    /// It goes together and holds.
    Interlock;
    /// The range takes orders on that day.
    OrderDay;
    /// A day of arrival.
    PromiseDay;
    /// Parts at all.
    NoParts;
}

impl Rule {
    /// A bit of a set of rules.
    pub(crate) const fn bit(self) -> u64 {
        1 << self as u64
    }
}

//! Which rules there are, and the codes by which findings name them. What each checks is told in [`crate::rules`].

use serde::Serialize;

macro_rules! rules {
    ($($(#[$doc:meta])* $name:ident = $code:literal;)*) => {
        /// All rules.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Rule {
            $($(#[$doc])* $name,)*
        }

        impl Rule {
            /// Every rule, stage by stage: the basics, what stops, what is good to know, and what is found at last.
            pub const ALL: &[Self] = &[$(Self::$name),*];

            /// The code by which findings name it.
            pub const fn code(self) -> &'static str {
                match self {
                    $(Self::$name => $code,)*
                }
            }
        }
    };
}

rules! {
    /// The range has what the choice names.
    Known = "not-in-range";
    /// Sizes within the model's limits.
    SizeLimit = "size-limit";
    /// Sizes on the model's steps.
    SizeStep = "size-step";
    /// Number of bays, shelves and leaves.
    FitOutCount = "fit-out-count";
    /// Weights of the bays' widths.
    BayShare = "bay-share";
    /// Bays wide enough.
    BayRoom = "bay-room";
    /// Rows high enough.
    RowRoom = "row-room";
    /// Deep enough for shelves and chase.
    DepthRoom = "depth-room";
    /// High enough for the hooks of the back.
    HookRoom = "hook-room";
    /// A row of staves along bowed ends.
    BowRoom = "bow-room";
    /// It goes together under the ceiling.
    CeilingHeight = "ceiling-height";
    /// Every panel on a sheet.
    SheetFit = "sheet-fit";
    /// Shelves do not bend too far.
    ShelfSag = "shelf-sag";
    /// Nor does the top.
    TopSag = "top-sag";
    /// Nor does the base.
    BaseSag = "base-sag";
    /// Shelf slots in a shared divider.
    ShelfSlot = "shelf-slot";
    /// A leaf's shape.
    LeafShape = "leaf-shape";
    /// A leaf's mass on its pivots.
    LeafMass = "leaf-mass";
    /// The plug passes.
    HolePlug = "hole-plug";
    /// Material round a hole.
    HoleEdge = "hole-edge";
    /// No stile before a hole.
    HoleStile = "hole-stile";
    /// No shelf before a hole.
    HoleShelf = "hole-shelf";
    /// A device goes in.
    DeviceWidth = "device-width";
    /// A device has air over it.
    DeviceHeight = "device-height";
    /// A device does not stand out.
    DeviceDepth = "device-depth";
    /// Joints that go in.
    JointFit = "joint-fit";
    /// Ears that carry their shelf.
    ShelfEar = "shelf-ear";
    /// Pivots that carry their leaf.
    LeafPivot = "leaf-pivot";
    /// Uprights that stay straight.
    UprightBuckling = "upright-buckling";
    /// What stands out takes a knock.
    Knock = "knock";
    /// Slender parts stay straight under a small push.
    Slender = "slender-part";
    /// Parts that people can carry.
    PartMass = "part-mass";
    /// A unit that stands by itself.
    TipOver = "tip-over";
    /// Parts that are long.
    PartLength = "part-length";
    /// Packages that a carrier takes.
    Package = "package";
    /// The top while moisture changes.
    PartMoisture = "part-moisture";
    /// Gaps round leaves.
    LeafGap = "leaf-gap";
    /// Leaves that touch.
    LeafSwing = "leaf-swing";
    /// Something to open leaves by.
    LeafGrip = "leaf-grip";
    /// A device behind a leaf.
    DeviceShut = "device-shut";
    /// A device without a cable hole.
    DeviceCable = "device-cable";
    /// Cables behind the back.
    CableBend = "cable-bend";
    /// A sheet that is bought for little.
    SheetUse = "sheet-use";
    /// Coats on edges.
    FinishEdges = "finish-edges";
    /// Dark films in the sun.
    FinishSun = "finish-sun";
    /// The screen on the top.
    ScreenWidth = "screen-width";
    /// The wall.
    WallWidth = "wall-width";
    /// Eyes before the screen.
    ViewingHeight = "viewing-height";
    /// Feet of the screen.
    ScreenFeet = "screen-feet";
    /// Fastening to the wall.
    WallTether = "wall-tether";
    /// It goes together and holds.
    Interlock = "interlock";
    /// Height for putting it together.
    Headroom = "headroom";
    /// Joints that a part meets at the same moment.
    AtOnce = "joints-at-once";
    /// The range takes orders on that day.
    OrderDay = "order-day";
    /// A day of arrival.
    PromiseDay = "promise-day";
    /// Parts at all.
    NoParts = "no-parts";
}

impl Rule {
    /// The rule of that code.
    pub fn of_code(code: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|rule| rule.code() == code)
    }

    /// A bit of a set of rules.
    pub(crate) const fn bit(self) -> u64 {
        1 << self as u64
    }
}

impl Serialize for Rule {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.code())
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Rule {
    fn schema_name() -> alloc::borrow::Cow<'static, str> {
        "Rule".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        let codes: Vec<&str> = Self::ALL.iter().map(|rule| rule.code()).collect();
        schemars::json_schema!({ "type": "string", "enum": codes })
    }
}

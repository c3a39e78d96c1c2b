//! Cards of the rules: what is checked, why it matters, and where formula and limit come from. The figures themselves
//! stand in the rules' files, with their source beside them.

use crate::rules::Rule;
use crate::words::Card;

const SAG: &str = "Wood Handbook, FPL-GTR-190 (2010), eq. 9-2 with its shear term and table 9-1 (simple ends, uniform load); creep by EN 1995-1-1:2004+A1, 2.2.3 and table 3.2; the limit is common practice";

#[expect(clippy::too_many_lines, reason = "a card for each rule")]
pub(in crate::words) const fn card(rule: Rule) -> Card {
    match rule {
        Rule::Known => Card {
            what: "Model, back, finish, corner radius, cable holes, plug and devices are those that the range offers.",
            why: "An order for something that the workshop does not have cannot be made.",
            source: "the range file",
        },
        Rule::SizeLimit => Card {
            what: "Width, height and depth lie between the model's least and most.",
            why: "The model is drawn and tried for these sizes.",
            source: "the range file",
        },
        Rule::SizeStep => Card {
            what: "Width, height and depth are a whole number of steps above the model's least.",
            why: "The workshop keeps to a grid, so that parts stay comparable.",
            source: "the range file",
        },
        Rule::FitOutCount => Card {
            what: "Bays, shelves in a bay and door leaves are no more and no fewer than the model has room for.",
            why: "The model is drawn and tried for these.",
            source: "the range file",
        },
        Rule::BayShare => Card {
            what: "Every bay's share of the width is a whole number from 1 to 9.",
            why: "The clear width is divided by these shares.",
            source: "the order format",
        },
        Rule::BayRoom => Card {
            what: "Every bay is at least as wide inside as the range asks.",
            why: "A hand has to reach in, and stiles and joints need their room.",
            source: "the range file; common practice",
        },
        Rule::RowRoom => Card {
            what: "The clear height under, over and between shelves is at least what the range asks.",
            why: "A hand has to reach in, and slots one over the other need wood between them.",
            source: "the range file; common practice",
        },
        Rule::DepthRoom => Card {
            what: "Behind the stiles and before the back there is room for the uprights' tabs and for a door's stop.",
            why: "Tabs too close to an edge split off.",
            source: "the range file; common practice",
        },
        Rule::SheetFit => Card {
            what: "Every panel, tabs included, fits a sheet of its board within the border, face grain in its direction.",
            why: "A panel is one piece: it cannot be longer than the sheet, nor be turned against the grain.",
            source: "the range file; formats as traded, common practice",
        },
        Rule::ShelfSag => Card {
            what: "Under the load that the range lays shelves out for, a shelf's sag over the years stays under its span divided by the range's figure.",
            why: "A shelf that bends visibly looks wrong, and it creeps further.",
            source: SAG,
        },
        Rule::TopSag => Card {
            what: "Under the load that the range lays the top out for, its sag between two uprights over the years stays under that span divided by the range's figure.",
            why: "The top has to stay straight over doors and tabs.",
            source: SAG,
        },
        Rule::BaseSag => Card {
            what: "Where the floor bears the base only under the uprights, its two plates sag over the years by less than their span divided by the range's figure.",
            why: "No floor is flat, and doors hang on the base.",
            source: SAG,
        },
        Rule::HookRoom => Card {
            what: "The uprights are so high that two hooks of the back stand over each other with wood between their slots.",
            why: "Slots that run into each other let the back break out between them.",
            source: "geometry; the range file",
        },
        Rule::BowRoom => Card {
            what: "Along a bowed end stand two staves at least, its arc is no more than half a circle, and no stave reaches to the end upright.",
            why: "One stave is no row, and plates that end in more than half a circle would be narrower at the front than behind it.",
            source: "geometry of the construction and of the range file",
        },
        Rule::CeilingHeight => Card {
            what: "Under the ceiling that the customer gave, every part can be lifted over what stands while the unit is put together.",
            why: "What cannot be put together in a room is no use there.",
            source: "the straight moves of the proof of assembly; the customer's own figure. How a tall part is tilted up is not looked at: its diagonal is longer",
        },
        Rule::ShelfSlot => Card {
            what: "Shelves on both sides of a divider are at the same height, or their slots have wood between them.",
            why: "Two slots that run into each other let the divider break out between them.",
            source: "common practice",
        },
        Rule::LeafShape => Card {
            what: "A leaf is at least as wide as the range asks, and its width over its height stays within the range's limits.",
            why: "A wide low door hangs on its pivots with a long lever and droops; a narrow one leaves no room to reach in.",
            source: "the range file; common practice",
        },
        Rule::LeafMass => Card {
            what: "A leaf is no heavier than what its wooden pivots carry.",
            why: "The lower pivot bears the whole door and wears.",
            source: "the range file; common practice",
        },
        Rule::HolePlug => Card {
            what: "The plug that the customer named passes every cable hole.",
            why: "A cable whose plug does not pass has to be cut or stays outside.",
            source: "the range file, with the plugs' standards beside the figures; geometry",
        },
        Rule::HoleEdge => Card {
            what: "Between a cable hole and the back's edges, its slots and its neighbours stays as much wood as the range asks.",
            why: "A thin bridge breaks when the back is carried and dropped onto its hooks.",
            source: "the range file; common practice",
        },
        Rule::HoleStile => Card {
            what: "A cable hole lies within the opening of its bay, not behind a stile, an open door or its stop.",
            why: "A hand has to reach it with the plug.",
            source: "geometry; common practice",
        },
        Rule::HoleShelf => Card {
            what: "No shelf's rear tab or edge stands before a cable hole or closer to it than the range's least bridge.",
            why: "A shelf closes the hole, and its slot in the back would break into it.",
            source: "the range file; common practice",
        },
        Rule::DeviceWidth => Card {
            what: "A named device goes in between stiles or uprights, past an open door and its stop, and has its air at either side.",
            why: "What does not go in stays outside; what stands too close grows hot.",
            source: "the range file, with the device's sizes and air; its own manual decides",
        },
        Rule::DeviceHeight => Card {
            what: "A named device stands under the lowest shelf, or under the top, with its air over it.",
            why: "Warm air leaves upwards, and a lid or a hand wants room.",
            source: "the range file, with the device's sizes and air; its own manual decides",
        },
        Rule::DeviceDepth => Card {
            what: "A named device and the plugs behind it stand between the front edge of the uprights and the back.",
            why: "Bent plugs loosen, and a device that stands out keeps a door open.",
            source: "the range file, with the device's sizes and plugs; its own manual decides",
        },
        Rule::JointFit => Card {
            what: "Of the joints of a batch in this finish no larger share is too tight, or outside the wanted clearance, than the range allows: at the worse end of 95 % of all batches.",
            why: "A joint that is too tight does not go in by hand or splits its film; one that is too loose rattles. Films differ from finish to finish.",
            source: "root of the summed squares of thickness, films and cutting within a batch, normally distributed; its mean as in EN 324-1:1993, off by Student's t; where nobody measured, EN 315:2000; tolerances and limits from the range file",
        },
        Rule::ShelfEar => Card {
            what: "Under the load that the range lays shelves out for, the plies of a shelf's ears neither shear off each other nor crush the wood under them.",
            why: "The whole shelf hangs on two ears, half a board's thickness each.",
            source: "geometry; planar (rolling) shear, as the load goes across the plies, and bearing strength of the range's board (Handbook of Finnish Plywood, 2002, from memory: verify before they decide), times k_mod over γ_M of EN 1995-1-1:2004+A1, tables 3.1 and 2.3. The rear tabs' help is left out",
        },
        Rule::LeafPivot => Card {
            what: "A leaf's weight and its pull to the side do not crush the wood at its pivots.",
            why: "A crushed pivot hole lets the door droop.",
            source: "statics: the pull is weight × (half width − inset) / height; strengths as for shelf-ear, from memory: verify before they decide",
        },
        Rule::UprightBuckling => Card {
            what: "An upright carries as many times the load of its shelves and of the top as the range asks before it gives way to the side.",
            why: "A tall thin upright under heavy shelves bends out without warning.",
            source: "along the back, where its slots hold the hooks, an orthotropic strip with one free edge: 12 D66 / b² + π² D11 / L² (Bank and Yin, Thin-Walled Structures 24, 1996; Kollár, J. Struct. Eng. 128, 2002; formula from memory, checked against finite elements); between two hooks a column by Euler; moduli from the range file, less by creep as in EN 1995-1-1:2004+A1, table 3.2",
        },
        Rule::Knock => Card {
            what: "All that stands out of a part takes a knock at its tip from any side: hooks, tabs, ears, pivots, the ends of a plinth's boards beyond a lap, an upright's wood between two slots of shelves, the tongue that keeps a door shut; so do the strips of the back beside and over its slots. A neck carries half of the back for good. A door's tongue bends up to the top, which stops it before it breaks; it bears to be lifted for as many openings as the range says.",
            why: "Parts lie about, are carried and dropped: what stands out is knocked first.",
            source: "statics of cantilevers and beams; twisting by Roark's Formulas, 7th ed., table 10.1, from memory; strengths as for shelf-ear, from memory: verify before they decide; k_mod for a short load is 0.90 in EN 1995-1-1:2004+A1, table 3.1; the knock is the range file's",
        },
        Rule::Slender => Card {
            what: "A stile, a stave, a door, its stop or a board of the plinth bends no further than its length divided by the range's figure when it is pushed in its middle. Pushed at its free lower corner, a door that is kept shut at its head gives way by twice that at most.",
            why: "What gives way at a touch looks weak, rattles, and warps the sooner.",
            source: "beam on two supports under a force in mid-span, by bending and shear: Wood Handbook, FPL-GTR-190 (2010), table 9-1; torsion of a thin rectangle: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, § 11; twice as far at a free end: EN 1995-1-1:2004+A1, table 7.2, both from memory; the push and the figure are the range file's",
        },
        Rule::PartMass => Card {
            what: "No part is heavier than what three people may carry; from what one may carry on, two are asked for, and three beyond what two may.",
            why: "The unit is put together by hand, and every part is lifted into its place.",
            source: "the range file; HSE INDG143, figure 1: 25 kg close to the body at knuckle height for one man; HSE L23: two carry two thirds, three half of the sum of what each may carry. Local rules on manual handling decide",
        },
        Rule::TipOver => Card {
            what: "Empty, with all leaves open and the rear of its foot lifted by a carpet, the unit still stands, with the range's factor to spare.",
            why: "Furniture that tips over kills children. This is a calculation, no test and no certificate; local rules and qualified people decide, and the tethers are fitted all the same.",
            source: "statics: moments about the front edge of the foot; of all combinations of doors and loads this is the worst. The lift is that of ASTM F2057-23; the factor is the range file's",
        },
        Rule::PartLength => Card {
            what: "Parts longer than the range's figure are lifted by two people.",
            why: "A long part knocks against things, and nobody sees both of its ends.",
            source: "the range file; common practice",
        },
        Rule::Package => Card {
            what: "Packages of whole parts, laid in layers with their protection, stay within the limits of one of the range's carriers: mass, also as people lift it, length, length and girth.",
            why: "What no carrier takes as usual has to be agreed with the workshop.",
            source: "the range file; 20 or 31.5 kg, 1 500 mm, and 3 000 mm of length and girth are usual for parcels; people lift as in part-mass",
        },
        Rule::PartMoisture => Card {
            what: "The top and the back go over all their joints, pressed by hand, when they have dried or swollen as far as the range says and the rest has not.",
            why: "Wood moves with the air's moisture, and along a part that adds up. Parts that lay in the room for some days fit again.",
            source: "positions along the panel and thickness by moisture, figures of the range file; growth for one percent from memory of the Handbook of Finnish Plywood, 3.2",
        },
        Rule::LeafGap => Card {
            what: "The gap round a leaf is 2 to 3 mm.",
            why: "Less binds when the wood swells, more looks careless and pinches.",
            source: "common practice",
        },
        Rule::LeafSwing => Card {
            what: "Two leaves hung side by side do not touch when both stand 95° open.",
            why: "They knock each other's film off.",
            source: "geometry: both lean over by width × sin of what is beyond a right angle",
        },
        Rule::LeafGrip => Card {
            what: "A leaf has a finger hole of 25 mm or more.",
            why: "Nothing stands out of a door, and the gap round it is too narrow for fingers. A hole that holds a finger tight is worse than none.",
            source: "25 mm: what EN 14749 asks of gaps that open and shut, as cited in trade notes, taken for a hole by analogy; holes in doors: common practice",
        },
        Rule::DeviceShut => Card {
            what: "The leaf before a device that wants air stands open while the device is on.",
            why: "Behind a shut door warm air has nowhere to go: the device grows hot, and wood dries out.",
            source: "common practice; the device's own manual decides",
        },
        Rule::DeviceCable => Card {
            what: "A device with plugs has a cable hole in the back of its bay.",
            why: "Without one its cables go round the front.",
            source: "common practice",
        },
        Rule::CableBend => Card {
            what: "The chase behind the back is deep enough for the tightest bend of the named plug's cable.",
            why: "A cable bent too tightly breaks inside.",
            source: "the range file; common practice. The cable's own data decide",
        },
        Rule::SheetUse => Card {
            what: "Where a unit takes several sheets of a board, a third of each ends up in its parts at least.",
            why: "A whole sheet is bought, coated and cut for little, and most of it goes back to the rack.",
            source: "the range file, for sheets and offcuts; the third is our own",
        },
        Rule::FinishEdges => Card {
            what: "A light opaque finish has a coat more than others: four in all.",
            why: "Dark plies show through a thin light film on the edges.",
            source: "two coats before cutting and one after, white one more: common practice",
        },
        Rule::FinishSun => Card {
            what: "A dark finish is better kept out of full sun.",
            why: "Dark faces grow hot in the sun; wood dries, and films fade and open at the edges.",
            source: "common practice; darkness is relative luminance as in WCAG 2.2, under 5 %",
        },
        Rule::ScreenWidth => Card {
            what: "A screen of the given diagonal, 16 to 9, is no wider than the top.",
            why: "A screen that stands over is easily knocked down.",
            source: "geometry: width = diagonal × 16 / √(16² + 9²)",
        },
        Rule::WallWidth => Card {
            what: "The unit is no wider than the free wall.",
            why: "It would not stand there.",
            source: "the customer's own figure",
        },
        Rule::ScreenFeet => Card {
            what: "Under a screen's two feet the top sags over the years by less than its span divided by the range's figure.",
            why: "Feet press on two points, often in the middle of a bay.",
            source: "Wood Handbook, FPL-GTR-190 (2010), eq. 9-2 and table 9-1, on a strip as wide as a foot is deep; the weight stays, so creep is that of EN 1995-1-1:2004+A1, table 3.2; mass and feet are typical ones of the range file, the screen's own data decide",
        },
        Rule::ViewingHeight => Card {
            what: "The middle of the screen is about as high as seated eyes, within 15° up or down from where its width is seen at 30°.",
            why: "Looking up or down for hours makes the neck ache.",
            source: "seated eyes 1 140 to 1 230 mm over the floor (Pheasant, Bodyspace, medians added), up to 100 mm lower on a soft seat; 1.63 diagonals away is SMPTE EG-18; 15° is from memory",
        },
        Rule::WallTether => Card {
            what: "A unit over 600 mm high, or with a door leaf, is fastened to the wall. One that begins to tip under a small push at its top, over its foot or out of its base, has to be; so has one that a child who climbs it tips over, or a load case that is usual in tests.",
            why: "Furniture that tips over kills children. The load cases are calculated as guidance: no calculation replaces a test, and local rules and qualified people decide.",
            source: "the height above which GB/T 10357.4-2013, 4.1 asks for a stability test; loads on the top 50 mm from its edge as in EN 16122:2012, 11.2, their forces as in EN 14749 and EN 16121, from memory: 750 N, or 350 N and 50 N to the front over 1 000 mm; a child of 60 lb as in ASTM F2057-23 at the edge of an open door, or leaning out 158 mm before a shelf as in 87 FR 72598, from memory; the push is the range file's. Verify them before they decide",
        },
        Rule::Interlock => Card {
            what: "Every part goes in along one straight move or two, in the finished unit nothing moves but the top, upwards, and the back holds every upright.",
            why: "There are no screws and no glue: tabs, slots, hooks and weight are all that holds the unit.",
            source: "directional blocking graphs: Wilson and Latombe, Artificial Intelligence 71 (1994), from the parts' solids; no valid unit breaks it",
        },
        Rule::AtOnce => Card {
            what: "No part meets more of its joints at the same moment than the range says; tabs of other lengths are met before or after.",
            why: "Each joint wants a hand or a look while it finds its place.",
            source: "counted from the proven order of assembly; the most is the range file's",
        },
        Rule::Headroom => Card {
            what: "No step of the assembly takes more height than the unit and what the range allows beyond it.",
            why: "A tall part that has to be lifted over the unit finds the ceiling of a living room.",
            source: "the straight moves of the proof of assembly; the range file",
        },
        Rule::OrderDay => Card {
            what: "The day of the order is not after the last one on which its range takes orders.",
            why: "After that day the workshop sells by another range, with other prices and perhaps other boards.",
            source: "the range file",
        },
        Rule::PromiseDay => Card {
            what: "The calendar has as many working days as the unit takes until it is there, booked work included, and a day on which the carrier collects it.",
            why: "An order without a day of arrival promises nothing.",
            source: "the range file; ten years are looked ahead, to the last day of the year 9999 at most",
        },
        Rule::NoParts => Card {
            what: "A choice that keeps every other rule comes to parts.",
            why: "What has no parts can neither be priced nor made. No right range breaks it.",
            source: "the parts themselves",
        },
    }
}

pub(in crate::words) const fn given() -> Card {
    Card {
        what: "It costs no more and comes no later than the customer gave.",
        why: "You gave it; ways out keep to it once it holds.",
        source: "the customer's own figure",
    }
}

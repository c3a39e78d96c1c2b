//! The workshop's paper in English.

use super::count::{counted, number_of_first};
use crate::cabinet::panel::PanelId;
use crate::words::paper::{Label, Message};

#[expect(clippy::too_many_lines, reason = "one line a text")]
pub(in crate::words) const fn label(of: Label) -> &'static str {
    match of {
        Label::Labels => "Labels",
        Label::CutList => "Cut list",
        Label::Finishing => "Finishing",
        Label::PackingList => "Packing list",
        Label::DeliveryNote => "Delivery note",
        Label::Assembly => "How it goes together",
        Label::JobCard => "Job card",
        Label::BatchSheet => "Batch",
        Label::Mark => "Mark",
        Label::Part => "Part",
        Label::Along => "Along grain\u{a0}mm",
        Label::Across => "Across mm",
        Label::Step => "Step",
        Label::People => "People",
        Label::Mass => "Mass",
        Label::Sheet => "Sheet",
        Label::Size => "Size",
        Label::Uncoated => "Uncoated",
        Label::Coated => "Coated",
        Label::Parts => "Parts",
        Label::Used => "Used",
        Label::Cuts => "Cuts",
        Label::Machine => "Machine",
        Label::Cutter => "Cutter",
        Label::Spacing => "Between parts",
        Label::Through => "Cut depth",
        Label::Outside => "Depth round parts",
        Label::Bridges => "Bridges",
        Label::Passes => "Passes",
        Label::Feed => "Feed",
        Label::Coats => "Coats",
        Label::Faces => "Faces",
        Label::Edges => "Edges",
        Label::Chamfer => "Chamfer",
        Label::Rounding => "Rounding",
        Label::TabsAndPivots => "Tabs\u{a0}and\u{a0}pivots",
        Label::Tabs => "Tabs",
        Label::Pivots => "Pivots",
        Label::TurnAfter => "Other face after",
        Label::NextAfter => "Next coat after",
        Label::Order => "Order",
        Label::Ordered => "Ordered",
        Label::Arrives => "Arrives by",
        Label::Carrier => "Carrier",
        Label::Package => "Package",
        Label::To => "To",
        Label::Stock | Label::From => "From",
        Label::Contact => "Contact",
        Label::Unit => "Unit",
        Label::Board => "Board",
        Label::Litres | Label::Finish => "Finish",
        Label::Remark => "Remark",
        Label::Stage => "Stage",
        Label::Minutes => "Minutes",
        Label::PerDay => "Minutes a day",
        Label::Days => "Days",
        Label::Begins => "Begins",
        Label::Ends => "Ends",
        Label::Promised => "Promised",
        Label::Planned => "Planned",
        Label::Sheets => "Sheets",
        Label::Packages => "Packages",
        Label::Digest => "Digest",
        Label::Kept => "Kept",
        Label::Orders => "Orders",
        Label::HowItIsCut => "How it is cut",
        Label::Machining => "Before the machine runs",
        Label::BeforeCutting => "Before cutting",
        Label::AfterCutting => "After cutting",
        Label::WhileSpraying => "While you spray and sand",
        Label::Lifting => "Lifting",
        Label::LiftedBy => "Lifted by",
        Label::Lifter => "vacuum lifter",
        Label::Mind => "What to mind",
        Label::First => "First",
        Label::Steps => "Steps",
        Label::PromisedEnd => "Promised end",
        Label::ByStage => "By stage",
        Label::ByOrder => "By order",
        Label::CutOtherwise => "Cut by another batch or cutter than promised",
        Label::Lots => "By board and finish",
        Label::OutlinesAreEdges => {
            "Outlines in the drawings are edges of parts: offset them by the radius of the cutter, holes inwards \
             and parts outwards."
        }
        Label::CutsInOrder => {
            "Cuts stand in their order: holes before outlines, small parts before large ones, all in climb \
             direction for a spindle that turns clockwise."
        }
        Label::LeadIns => {
            "Lead-ins are ways of the cutter's centre, beside the part. Red goes round parts, blue is cut out of \
             them, green is lead-in and bridge, grey is not cut."
        }
        Label::ZeroPoint => {
            "Zero is the lower left corner of the sheet, on its upper face. Depths go down from that face, by the mean \
             thickness of the batch with its coats, and a little into the board beneath. Where a sheet differs by more \
             than that little, set them from the table."
        }
        Label::WasteFalls => {
            "What is cut out of parts, slots and holes, is held by nothing: it lies loose beside the cutter. Use \
             strong extraction or vacuum, stop the spindle before you clear it."
        }
        Label::MeasureFirst => {
            "There are offcuts here that nobody measured: measure each before you cut it. Slots and depths are those of the batch."
        }
        Label::CutBridges => {
            "Bridges hold the parts: OUTSIDE goes round each part down to their tops, BETWEEN through the sheet \
             from one bridge to the next. BRIDGE shows where they stay and is not cut. When the sheet is unloaded \
             cut them by hand, then clean the edge."
        }
        Label::CutSkin => "A skin holds the parts until the sheet is unloaded. Cut it by hand, then clean the edge.",
        Label::MachineCaution1 => {
            "Clamp every sheet and try the program in the air first. Guards closed, nobody within reach while the \
             spindle turns."
        }
        Label::MachineCaution2 => {
            "Birch dust can cause cancer and asthma: extraction at the cutter, and a fitted mask when you unload \
             and sweep. The limit in the EU is 2 mg/m\u{b3} of hardwood dust over eight hours (Directives \
             2004/37/EC and (EU) 2017/2398)."
        }
        Label::MachineCaution3 => {
            "Sheets are heavy and sharp: lift each with as many people as its figures say, or with a vacuum lifter. Gloves off near \
             the cutter. The machine's own manual and local rules decide."
        }
        Label::SandSheets => "Sand both faces of every new sheet.",
        Label::CoatSheets => "Coat the first face, turn the sheet, coat the other; sand between coats.",
        Label::SheetsHarden => "Let the last coat harden before the sheets are cut.",
        Label::MarkParts => {
            "Pencil each part's mark on the first place that its row below names, where nothing is sanded or coated, and only then take \
             its label off; once the last coat is hard and the tape is off, read the mark and stick the label on again where it says."
        }
        Label::MaskParts => "Sand and dust, then mask with tape what the table below names, as far as it says.",
        Label::CoatParts => "Coat edges and faces.",
        Label::StaysUncoated => "What stays uncoated",
        Label::HowFar => "Masked, and how far",
        Label::PartsHarden => {
            "Let parts cure before they are packed: films go on hardening for one to two weeks (common practice)."
        }
        Label::NoCoatsBefore => "These sheets are cut uncoated.",
        Label::NoCoatsAfter => "These parts are not coated after cutting: nothing is masked, and their labels stay on.",
        Label::Climate => {
            "Water-based coats: 12 to 38 \u{b0}C and less than 85 % humidity of the air, from a data sheet. That \
             of the finish decides."
        }
        Label::SprayCaution => {
            "Spray with ventilation, away from flames and sparks, in a fitted mask for particles and organic \
             vapour. The safety data sheet decides."
        }
        Label::DustCaution => "Sanding dust of wood and film: extraction at the tool and a fitted mask.",
        Label::Diisocyanates => {
            "This finish has diisocyanates: only trained people may use it (REACH, Annex XVII, entry 74; \
             Regulation (EU) 2020/1149)."
        }
        Label::NoDiisocyanates => {
            "By its range this finish has less than 0.1 % of diisocyanates. Its safety data sheet decides."
        }
        Label::DiisocyanatesUnknown => {
            "Nobody said whether this finish has diisocyanates: look into its safety data sheet. With 0.1 % or \
             more only trained people may use it (Regulation (EU) 2020/1149)."
        }
        Label::OffcutsCoated => "Offcuts from the rack are coated already.",
        Label::PackInLayers => {
            "Lay each package in layers, number 1 lowest, all parts lengthwise. Parts of a row lie one behind the other, rows follow each other across, as its picture \
             shows each layer from above. Card round all parts, edges and corners first; fill what stays empty, below parts too, so that nothing slides or bends."
        }
        Label::PackedSizes => "Sizes are those of the parts as they lie; card round them adds to that.",
        Label::Niosh => {
            "For one person who lifts it from the floor to the height of the knuckles, straight ahead and now and then, the revised NIOSH equation \
             (publication 94-110) recommends the limit in the table; it is not made for two. The lifting index is the mass over that limit. It is \
             information: what people may carry is for the workshop and local rules to say."
        }
        Label::Recommended => "NIOSH limit for one",
        Label::LiftingIndex => "Lifting index",
        Label::Layer => "Layer",
        Label::Row => "Row",
        Label::OfItPacking => "Of it packing",
        Label::TwoLift => "Lift it with two people.",
        Label::ThreeLift => "Lift it with three people.",
        Label::OneLifts => {
            "Packed so that one person can lift it, as the workshop counts. Get help where it is too heavy or too long for \
             you."
        }
        Label::ReceivedWhole => "Received whole and undamaged",
        Label::DayAndName => "Day and name",
        Label::TetherFirst => {
            "Fasten the unit to the wall before you put anything in or on it: by two tethers on the rear face of the back, behind the \
             broken rings in its picture, never on the top, which lifts off. Its step says where, and when. Their own \
             instructions say the rest; they and their screws have to suit the wall: ask who knows it."
        }
        Label::Children => {
            "Children climb: keep them away until it is fastened. Nothing that draws them belongs on its top; a screen there needs \
             a tether of its own."
        }
        Label::Guidance => {
            "Strength, stability and figures for carrying are calculated, not tested: they are guidance and no \
             certificate. Local rules decide."
        }
        Label::NoHurry => {
            "Put all parts where you can see their marks. Nothing but the tethers is screwed, nothing is glued, nothing needs force: where \
             a part wants to be pressed, look at its picture again."
        }
        Label::Needed => "What you need besides",
        Label::WholeUnit => "The whole unit from its left front corner and above",
        Label::SharedSheets => {
            "Sheets and cuts are those of the pack, which orders share; all other work is that of each order."
        }
        Label::ForTheFirst => {
            "A sheet that orders share is sanded, coated and loaded for the order that was promised first, and its minutes count there."
        }
        Label::Late => "late",
        Label::SprayFoot => "Ventilate, keep flames and sparks away, wear a fitted mask.",
        Label::MachineFoot => "Guards closed, extraction on, nobody within reach.",
        Label::GuidanceFoot => "Calculated, not tested: guidance and no certificate.",
        Label::AssemblySheet => "assembly sheet",
        Label::BeyondEquation => "too deep for it",
        Label::SetAside => "Set aside",
        Label::PackFoot => "Layer 1 lies lowest, card between all parts.",
        Label::GoesAlong => "What goes along, on top in the first package",
        Label::CoatedFaces => {
            "Between coated faces lay foam or soft paper as well as card: card alone can rub a young coat, film can stick to it (common practice)."
        }
        Label::StopTongue => {
            "A door stop has a thin tongue at its head that springs and can break: wrap that end in card, lay it towards the middle of the package, let nothing press on it."
        }
        Label::LiftingMeans => {
            "A lifting index up to 1 suits nearly all healthy workers. Above 1 the risk to the back is increased for some of them: a second person or a \
             trolley is better. Above 3, or where it is too deep for the equation, the risk is high for many: nobody lifts it alone; two people at least, with a trolley or a tail lift."
        }
        Label::NotForOne => "not for one",
        Label::LieFlat => "Lay it flat, this side up, not on an edge or an end. Carry it level. Keep it dry.",
        Label::ToDriver => "Remark of the customer, for the driver too",
        Label::CollectedInstead => "If the customer collects: on the day agreed with the workshop, not as above.",
        Label::InTime => "in time",
        Label::NoDay => "no day in the calendar",
        Label::NothingKept | Label::NothingToMind => "nothing",
    }
}

pub(in crate::words) fn message(of: Message<'_>) -> String {
    match of {
        Message::Pack(name) => format!("Pack {name}"),
        Message::Order(number) => format!("Order {number}"),
        Message::Page(page, of) => format!("{page} of {of}"),
        Message::Sheet { number, board, finish } => format!("Sheet {number}: {board}, {finish}"),
        Message::PartOf { order, sheet, step, pack } => {
            format!("Order {order} \u{b7} Sheet {sheet} \u{b7} Step {step} \u{b7} {pack}")
        }
        Message::Lot { board, finish } => format!("{board}, {finish}"),
        Message::Bought(format) => format!("new sheet, {format}"),
        Message::FromRack(name) => format!("offcut {name}"),
        Message::Millimetres(length) => format!("{length}\u{a0}mm"),
        Message::Sides(sides) => format!("{}\u{a0}mm", sides.join("\u{a0}\u{d7}\u{a0}")),
        Message::Metres(length) => format!("{length}\u{a0}m"),
        Message::SquareMetres(area) => format!("{area}\u{a0}m\u{b2}"),
        Message::Litres(litres) => format!("{litres}\u{a0}l"),
        Message::Minutes(minutes) => format!("{minutes}\u{a0}min"),
        Message::Hours(hours, minutes) => format!("{hours}\u{a0}h {minutes:02}\u{a0}min"),
        Message::Feed(feed) => format!("{feed}\u{a0}mm/min"),
        Message::Bridges(length, thick, apart) => {
            format!("{length}\u{a0}mm long, {thick}\u{a0}mm thick, at most {apart}\u{a0}mm apart")
        }
        Message::Coats(1) => "one, both faces".into(),
        Message::Coats(coats) => format!("{coats}, both faces"),
        Message::Package(number, of) => format!("Package {number} of {of}"),
        Message::Packed(whole, packing) => format!("{whole}, of it {packing} packing"),
        Message::PackingWeighs(per_area, per_package) => format!(
            "Packing weighs {per_area}\u{a0}kg for each square metre of parts, as card between and round them, and {per_package}\u{a0}kg \
             for each package, as edges and tape: so the range counts it."
        ),
        Message::LayersPicture(number, (first, last)) if first == last => {
            format!("Package {number} from above, layer {first} with marks of the parts")
        }
        Message::LayersPicture(number, (first, last)) => {
            format!("Package {number} from above, layers {first} to {last} with marks of the parts")
        }
        Message::SheetsHarden(days) => {
            format!("After the day of the last coat let it harden for {}, then cut the sheets.", working_days(days))
        }
        Message::PartsHarden(days) => format!(
            "After the day of the last coat let parts cure for {}, then pack them. Films go on hardening for one to two weeks \
             (common practice).",
            working_days(days)
        ),
        Message::Tether(screw) => format!(
            "two tethers and their screws for the back, {screw} long at most; what holds them in the wall depends on the wall"
        ),
        Message::Cards(count, thick) => cards(count, thick),
        Message::People(1) => "one person".into(),
        Message::People(2) => "two people".into(),
        Message::People(people) => format!("{people} people"),
        Message::PeopleForIt(people) => {
            let people = number_of_first(people, "person puts it together", "people put it together");
            format!("{people}; each step says how many it takes, those who hold or guide among them.")
        }
        Message::ForLength(people) => format!("{people}, for its length"),
        Message::PartPicture(part) => format!("Outline of the {part} with its holes; lines show the grain"),
        Message::SheetPicture(number, parts) => {
            format!("Sheet {number} with {}", counted(&parts.to_string(), "part", "parts"))
        }
        Message::Code(text) => format!("Code: {text}"),
        Message::DoorOpens(newtons) => format!(
            "A wooden tongue at the head of its stop keeps each door shut: a finger opens it with about {newtons}\u{a0}N, calculated with wood on wood at \
             0.4. Coats, wax and years change that. Open a door by its finger hole alone; hang nothing on the tongue, and carry no stop by it. Where one has worn, the \
             workshop cuts that door's stop alone again."
        ),
        Message::StickOn(id) => format!("Stick on: {}", place(id)),
        Message::ByGrain(sides) => format!("{}\u{a0}mm, grain along the first", sides.join("\u{a0}\u{d7}\u{a0}")),
        Message::OffcutThickness { coated, measured: Some(uncoated) } => {
            format!("{coated} coated; batch of {uncoated}")
        }
        Message::OffcutThickness { coated, measured: None } => format!("{coated}; not measured: measure first"),
        Message::OffcutOf { sheet, pack } => format!("Offcut of sheet {sheet} \u{b7} {pack}"),
        Message::OffcutPicture(name) => format!("Offcut {name}; lines show the grain"),
        Message::InTurn { from, is_booked } => in_turn(from, is_booked),
        Message::SetBefore { set, from } => format!(
            "Work was set to begin after {set}, but the last of these orders was made on {from}: it begins after that day, since \
             nothing is made before it was ordered."
        ),
        Message::Step(number, of) => format!("{number} of {of}"),
        Message::Other { place, promised, derived } => format!("{place}: promised {promised}, cut {derived}"),
        Message::Lacking(letter, text) => {
            format!("the paper has no letter {letter:?}, in {text:?}: a box stands for it")
        }
        Message::Cut(text) => format!("only the beginning of {text:?} has room"),
        Message::Missing { path, count, first } => {
            let pictures = counted(&count.to_string(), "picture has", "pictures have");
            format!("{path}: {pictures} no room there, as {first:?}")
        }
    }
}

fn in_turn(from: &str, is_booked: bool) -> String {
    let booked = if is_booked { "once what is booked is done" } else { "with nothing else booked" };
    format!("Orders are made one after the other, the earliest promise first, from the day after {from}, {booked}.")
}

fn cards(count: usize, thick: &str) -> String {
    match count {
        1 => format!("strip of card, {thick} thick: the door stands on it until the top is on"),
        count => format!("{count} strips of card, {thick} thick: doors stand on them until the top is on"),
    }
}

fn working_days(days: u32) -> String {
    counted(&days.to_string(), "working day", "working days")
}

/// A place on a part where a label covers no joint while the part goes from stage to stage.
fn place(id: PanelId) -> &'static str {
    match id {
        PanelId::BaseLower | PanelId::BaseUpper | PanelId::Shelf { .. } | PanelId::Top => {
            "underside, between the joints"
        }
        PanelId::PlinthFront | PanelId::PlinthRear => "inner face, between two bearers",
        PanelId::Bearer(_) => "left face, in the middle",
        PanelId::Upright(_) | PanelId::Stop(_) => "right face, half way up",
        PanelId::Back => "rear face, in the middle of a bay",
        PanelId::Stile(_) => "rear face, half way up",
        PanelId::Stave { .. } => "inner face, half way up",
        PanelId::Leaf(_) => "inner face, in the middle",
    }
}

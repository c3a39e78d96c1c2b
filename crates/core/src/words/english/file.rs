//! Files and arguments that the workshop's tool cannot use, in English. As after a name, without a capital and a stop.

use super::LOCALE;
use super::json::key;
use crate::choice::question::NotAQuestion;
use crate::range::{NotABatch, NotAKey};
use crate::words::file::{Label, Message};

pub(in crate::words) const fn label(of: Label) -> &'static str {
    match of {
        Label::Folder => "this is a folder, not a file",
        Label::NotAFolder => "this is a file, not a folder",
        Label::NoFile => "this is a pipe or a device, not a file",
        Label::Utf16 => "this is text in UTF-16; it has to be in UTF-8",
        Label::ReadAlready => "standard input was read already, and can be read once only",
        Label::DiskFull => "the disk is full: not all of it could be written",
        Label::NothingThere => "there is nothing of this name",
        Label::NotPermitted => "this is not permitted",
        Label::Exists => "there is a file of this name already; nothing was written",
        Label::NoChoice => "no choice",
        Label::NoBacklog => "no backlog",
        Label::NoOrder => "no order",
        Label::NoModel => "the range has no model that a choice could begin with",
        Label::Unorderable => "this unit cannot be ordered:",
        Label::Closed => "the output was closed",
        Label::PointsMissing => "write it as birch-18='17.6 17.7 \u{2026}', eight points",
        Label::NotAPage => "write it as https://example.org/",
        Label::NotSeconds => "write it as 2 or 0.5; 0 to 3600 seconds are possible",
        Label::NoInstance => "no instance",
        Label::NoManifest => "no manifest of a pack",
        Label::ManifestOfAPack => "--from names the folder of a pack that this program wrote",
        Label::OutOfProportion => "no instance: a size or the number of parts is out of proportion",
        Label::PlacementUnsound => {
            "the placement did not pass its check, and nothing was written: an error of this program"
        }
        Label::IsTheNameRight => "is the name right, and may this file be read?",
        Label::NameAFile => "name a file",
        Label::NameAFileInIt => "name a file in it",
        Label::NameAFolder => "name a folder; it is made if there is none",
        Label::SendItToInput => "to read what another program prints, name it - and send it to standard input",
        Label::IsItMeant => "is this the file that was meant?",
        Label::SaveAsUtf8 => "save it again as UTF-8, without a byte order mark",
        Label::NameOneInput => "name - for one document, and files for the others",
        Label::MakeRoom => "make room, then try again; nothing of it was kept",
        Label::MakeRoomNotAll => "make room, then try again; what came out is not all of it",
        Label::DoesTheFolderExist => "does the folder exist, and may you write there?",
        Label::ForceWritesOver => "--force writes over it",
        Label::BacklogExample => "a backlog looks like {\"minutes\": {\"cut\": 600}}",
        Label::ChoicesAndSchemas => "`slotwright sample` prints choices, `slotwright schema` says what stands where",
        Label::LinkExample => {
            "a link looks like '#1/teasel/1640x920x400/30/birch-18/chalk/2o,1s2,1l'; `slotwright link` prints one"
        }
        Label::BaysOfALink => "`slotwright derive` prints any choice",
        Label::OneChoice => {
            "give one choice at a time: `head -n 1 choices.jsonl | slotwright derive --choice -`; `slotwright check` alone \
             takes many files, with an order each"
        }
        Label::RangeOfThatTime => "name the range file of that time with --range, or take the choice out of it",
        Label::DemoRange => "the demo range web/ranges/fenland.toml documents every key",
        Label::FindingsShown => "`slotwright derive` shows the findings with their remedies",
        Label::RulesListed => "`slotwright explain` lists them",
        Label::ModelsListed => "`slotwright range` lists its models",
        Label::BoardsListed => "`slotwright fit` lists its boards",
        Label::DocumentsListed => "`slotwright schema` lists them",
        Label::OneBatch => "give the eight points of the batch that is to be cut, once",
        Label::RightBoard => "is it the right board, and was it measured in millimetres?",
        Label::BaysCounted => "bays are counted from the left, from 1",
        Label::OnTheLabel => "--name, --contact, --address and --remark say what stands on the label",
        Label::InstanceExample => {
            "an instance looks like {\"kind\": \"rect-bins\", \"sheet\": [10, 10], \"rotation_allowed\": false, \"items\": \
             [{\"w\": 6, \"h\": 4, \"count\": 3}]}, or like {\"kind\": \"strip-polygons\", \"strip_height\": 10, \"items\": \
             [{\"count\": 3, \"rotations\": [0, 180], \"polygon\": [[0, 0], [4, 0], [0, 2.5]]}]}"
        }
        Label::PartsThatFit => "take it out, or name a larger sheet",
        Label::HigherStrip => "take it out, or name a higher strip",
        Label::CornersInOrder => {
            "give at most 400 corners in order, the first one once; edges may meet at corners alone, and there are no holes"
        }
        Label::QuarterTurns => "give some of 0, 90, 180 and 270 degrees",
        Label::TellWhoKeepsThis => "tell those who keep this program, with the instance",
    }
}

pub(in crate::words) fn message(of: Message<'_>) -> String {
    match of {
        Message::TooLarge { bytes, most } => format!("the file has {bytes} bytes; {most} are the most that is read"),
        Message::TooMuch(most) => format!("more than {most} bytes came in, the most that is read"),
        Message::NotText(at) => format!("not text in UTF-8, from byte {at} on"),
        Message::NoLinkOf(bays) => format!("this choice has {bays} bays, more than a link can hold"),
        Message::OtherRange { key, digest } => {
            format!("this order was made with the range {key} {digest}, not with this one")
        }
        Message::OtherModel(model) => format!("the range has no model {model:?}"),
        Message::NoRule(code) => format!("no rule has the code {code:?}"),
        Message::NoBoard(board) => format!("the range has no board {board:?}"),
        Message::NoFormat(format) => format!("no range has sheets of {format:?}"),
        Message::MeasuredTwice(board) => format!("the board \"{board}\" is measured twice"),
        Message::Strays { mean, nominal, least, most } => {
            let [mean, nominal, least, most] =
                [mean, nominal, least, most].map(|length| LOCALE.decimal(length.in_mm(), 3));
            format!("{mean} mm was measured for a board of {nominal} mm; {least} to {most} mm is possible (EN 315)")
        }
        Message::NoStage(stage) => format!("the range has no stage \"{stage}\""),
        Message::Stages(stages, meant) => {
            let stages = format!("its stages are {}", stages.join(", "));
            meant.map_or_else(|| stages.clone(), |meant| format!("did you mean {meant}? {stages}"))
        }
        Message::NoBay { pin, bays } => format!("--pin {pin}: this unit has no such bay; it has {bays}"),
        Message::NoDocument(name) => format!("no document has the name {name:?}"),
        Message::Key(NotAKey(text)) => key(text),
        Message::Batch(NotABatch::Count(1)) => {
            "1 point was given; measure eight, about 50 mm from the edge (EN 324-1)".into()
        }
        Message::Batch(NotABatch::Count(count)) => {
            format!("{count} points were given; measure eight, about 50 mm from the edge (EN 324-1)")
        }
        Message::Batch(NotABatch::Point(text)) => format!("{text:?} is not a thickness from 3 to 60 mm"),
        Message::Question(NotAQuestion(text)) => {
            let [unit, bay] =
                NotAQuestion::known().map(|known| known.iter().map(ToString::to_string).collect::<Vec<_>>().join(", "));
            format!("{text:?} is no question: {unit}, or for a bay: {bay}")
        }
        Message::FitsNowhere(item) => format!("/items/{item}: this part fits on no sheet"),
        Message::TooHigh(item) => format!("/items/{item}: this part is higher than the strip"),
        Message::NoPolygon(item) => format!("/items/{item}/polygon: these are not the corners of a simple polygon"),
        Message::NoTurns(item) => format!("/items/{item}/rotations: turns are by quarters, and there is one at least"),
        Message::Meant(name) => format!("did you mean {name}?"),
    }
}

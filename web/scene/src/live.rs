//! What stands between two frames, and what changes it.

use slotwright_core::cabinet::assembly::Assembly;
use slotwright_core::cabinet::case::WeighedCase;
use slotwright_core::cabinet::layout::{Layout, Picked};
use slotwright_core::cabinet::panel::PanelId;
use slotwright_core::choice::Choice;
use slotwright_core::range::{Look, Range};
use slotwright_core::rules::tether;
use slotwright_core::units::short;
use slotwright_core::words;
use slotwright_core::words::stage::Message;
use slotwright_protocol::stage::{Command, Shown, Step, View};
use slotwright_solid::appearance::Appearance;
use slotwright_stage::Vec3;
use slotwright_stage::bounds::Bounds;
use slotwright_stage::camera::Place;
use slotwright_stage::pose::{self, Pose};
use slotwright_stage::scene::Scene;
use slotwright_stage::show::Show;
use slotwright_stage::sight::{Standing, seen};
use slotwright_stage::words::shown;
use web_sys::OffscreenCanvas;

use crate::gl::{Paint, Shot, Stage, Stands};
use crate::overlay::Overlay;

/// From this share on parts that are drawn apart have their names.
const NAMED_FROM: f32 = 0.3;

/// On a picture that is narrower than that, in pixels, so many parts have names.
const SMALL: f32 = 480.0;
const FEW: usize = 6;

/// The unit that is shown.
#[derive(Debug)]
struct Unit {
    layout: Layout,
    assembly: Assembly,
    scene: Scene,
    paint: Paint,
    tethered: bool,
}

/// What the person's screen asks for.
#[derive(Clone, Copy, Debug, Default)]
struct Mood {
    dark: bool,
    still: bool,
}

/// Buttons that stay down.
#[derive(Clone, Copy, Debug, Default)]
struct Toggles {
    person: bool,
    open: bool,
}

/// Everything between two frames.
#[derive(Debug, Default)]
pub(crate) struct Live {
    range: Option<Range>,
    stage: Option<Stage>,
    unit: Option<Unit>,
    show: Option<Show>,
    stands: Stands,
    marked: Option<usize>,
    moved: bool,
    extent: (f32, f32),
    /// Device pixels for one of the page's; `None` once the picture has its size.
    ratio: Option<f32>,
    /// What lies over the last picture.
    lines: String,
    mood: Mood,
    toggles: Toggles,
    /// In hundredths.
    apart: u8,
    before: Option<f64>,
    due: bool,
    told: Option<Shown>,
    asked: Option<Choice>,
    /// Milliseconds that the last picture took, the graphics card's work among them.
    took: f64,
}

impl Live {
    /// Begins drawing on a canvas; `false` where there is no WebGL 2.
    pub(crate) fn begin(&mut self, canvas: &OffscreenCanvas) -> bool {
        self.stage = Stage::on(canvas.clone());
        self.load();
        self.stage.is_some()
    }

    /// Ends drawing: the context is gone.
    pub(crate) fn end(&mut self) {
        self.stage = None;
    }

    /// Whether a picture has to be asked for; it counts as asked for then.
    pub(crate) fn is_due(&mut self) -> bool {
        let unit = self.unit.is_some() || self.asked.is_some();
        let ready = self.stage.is_some() && unit && self.extent.0 > 0.0;
        ready && !core::mem::replace(&mut self.due, true)
    }

    /// Milliseconds to rest before the next picture: where pictures are drawn by the processor, the page
    /// needs it too.
    pub(crate) fn rest(&self) -> i32 {
        #[expect(clippy::cast_possible_truncation, reason = "below half a second")]
        let rest = self.took.min(500.0) as i32;
        if rest > 25 { rest } else { 0 }
    }

    fn steps(&self) -> usize {
        self.unit.as_ref().map_or(0, |unit| pose::steps(&unit.assembly))
    }

    fn aspect(&self) -> f32 {
        (self.extent.0 / self.extent.1.max(1.0)).max(0.1)
    }

    /// Does what the page asks.
    pub(crate) fn hear(&mut self, command: Command) {
        let steps = self.steps();
        match command {
            Command::Range(text) => self.range = Range::parse_judged(&text),
            // Taken up with the next frame: of units that follow each other quickly, only the last.
            Command::Unit(choice) => self.asked = Some(choice),
            Command::Extent { across, down, ratio } => {
                // A picture is empty until it is drawn anew, so it takes its size then.
                (self.extent, self.ratio) = ((single(across), single(down)), Some(single(ratio)));
                // What is hidden has no extent.
                if across > 0.0 {
                    self.show(Show::fit);
                }
            }
            Command::Mood { dark, still } => self.mood = Mood { dark, still },
            Command::Look(view) => {
                let place = match view {
                    View::Corner => Place::Corner,
                    View::Front => Place::Front,
                    View::Above => Place::Above,
                };
                self.show(|show, bounds, aspect| show.look(place, bounds, aspect));
            }
            Command::Turn(aside, up) => {
                self.show(|show, bounds, aspect| show.turn((single(aside), single(up)), bounds, aspect));
            }
            Command::Shift(aside, up) => self.show(|show, bounds, _| show.shift((single(aside), single(up)), bounds)),
            Command::Near(times) => self.show(|show, bounds, aspect| show.near(single(times), bounds, aspect)),
            Command::Person => {
                (self.toggles.person, self.moved) = (!self.toggles.person, true);
                self.show(Show::fit);
            }
            Command::Leaves => {
                self.toggles.open = !self.toggles.open;
                let open = self.toggles.open;
                self.pose(|show| show.open(open));
            }
            Command::Apart(hundredths) => {
                self.apart = hundredths.min(100);
                let share = f32::from(self.apart) / 100.0;
                self.pose(|show| show.apart(share));
            }
            Command::Build if self.show.as_ref().is_some_and(|show| show.pose.built.is_some()) => {
                self.pose(Show::whole);
            }
            Command::Build if self.mood.still => self.assemble(|show| show.build(0, steps)),
            Command::Build => self.assemble(|show| show.play(true, steps)),
            Command::Play => self.assemble(|show| show.play(!show.is_playing(), steps)),
            Command::Step { back } => {
                let now = self.show.as_ref().and_then(|show| show.step_shown(steps)).unwrap_or(0);
                let next = if back { now.saturating_sub(1) } else { now.saturating_add(1) };
                self.assemble(|show| show.build(next, steps));
            }
        }
    }

    /// Changes what is shown, with the room that it takes.
    fn show(&mut self, change: impl FnOnce(&mut Show, Bounds, f32)) {
        let (aspect, person) = (self.aspect(), self.toggles.person);
        if let Some((show, unit)) = self.show.as_mut().zip(self.unit.as_ref()) {
            change(show, unit.scene.reach(show.goal(), &unit.assembly, person), aspect);
        }
    }

    fn pose(&mut self, change: impl FnOnce(&mut Show)) {
        self.show(|show, _, _| change(show));
        self.show(Show::fit);
    }

    fn assemble(&mut self, change: impl FnOnce(&mut Show)) {
        (self.apart, self.toggles.open) = (0, false);
        self.pose(change);
    }

    /// Takes another unit; one that leaves no room for its parts leaves the last one standing.
    fn unit(&mut self, choice: &Choice) {
        let Some(unit) = self.range.as_ref().and_then(|range| built(range, choice)) else { return };
        let (aspect, person) = (self.aspect(), self.toggles.person);
        let show = self
            .show
            .get_or_insert_with(|| Show::new(unit.scene.reach(Pose::default(), &unit.assembly, person), aspect));
        if self.toggles.open && !unit.scene.has_leaves() {
            self.toggles.open = false;
            show.open(false);
        }
        let room = |unit: &Unit| unit.scene.reach(show.goal(), &unit.assembly, person);
        let same = self.unit.as_ref().is_some_and(|known| room(known) == room(&unit));
        self.unit = Some(unit);
        if !same {
            self.show(Show::fit);
        }
        self.load();
    }

    fn load(&mut self) {
        if let Some((stage, unit)) = self.stage.as_ref().zip(self.unit.as_ref()) {
            stage.load(&unit.scene);
        }
        self.moved = true;
    }

    /// Draws a frame. Whether there is another one to draw.
    pub(crate) fn frame(&mut self, now: f64) -> bool {
        let began = js_sys::Date::now();
        self.due = false;
        if self.extent.0 <= 0.0 {
            return false;
        }
        if let Some(choice) = self.asked.take() {
            self.unit(&choice);
        }
        let (Some(stage), Some(unit), Some(show)) = (&self.stage, &self.unit, &mut self.show) else {
            return false;
        };
        if let Some(ratio) = self.ratio.take() {
            stage.fit(self.extent, ratio);
        }
        #[expect(clippy::cast_possible_truncation, reason = "seconds between two frames")]
        let seconds = self.before.map_or(0.0, |before| ((now - before) / 1000.0).clamp(0.0, 0.5) as f32);
        let steps = pose::steps(&unit.assembly);
        let shown = show.step_shown(steps);
        let (moved, goes_on) = show.step(seconds, self.mood.still);
        let next = show.step_shown(steps) != shown;
        let goes_on = goes_on || next;
        self.before = goes_on.then_some(now);
        self.moved |= moved;
        if self.moved {
            let moving = show.pose.moving(&unit.assembly);
            self.marked = unit.scene.parts.iter().position(|part| Some(part.id) == moving);
            self.stands = unit.scene.parts.iter().map(|part| show.pose.stand(part, &unit.assembly)).collect();
        }
        let person = self.toggles.person;
        stage.shoot(&Shot {
            scene: &unit.scene,
            stands: &self.stands,
            marked: self.marked,
            camera: show.camera,
            moved: self.moved,
            paint: unit.paint,
            dark: self.mood.dark,
            wall: show.pose.wall(),
            company: unit.scene.company(show.pose, person).collect(),
            bounds: unit.scene.reach(show.pose, &unit.assembly, person),
        });
        stage.wait();
        self.took = js_sys::Date::now() - began;
        self.moved = false;
        self.lines = lines(unit, show, &self.stands, self.marked, self.extent);
        if next {
            self.show(Show::refit);
        }
        goes_on
    }

    /// What to tell if it is new: what is asked for is told at once, whatever time its picture takes.
    pub(crate) fn news(&mut self) -> Option<Shown> {
        let (show, unit) = self.show.as_ref().zip(self.unit.as_ref())?;
        let (steps, person) = (self.steps(), self.toggles.person);
        let step = show.step_shown(steps).map(|at| Step {
            sentence: sentence(unit, at),
            plays: show.is_playing(),
            first: at == 0,
            last: at + 1 == steps,
        });
        let told = Shown {
            lines: self.lines.clone(),
            words: shown(show.heading(), show.goal(), steps, person),
            open: self.toggles.open,
            person,
            apart: self.apart,
            step,
        };
        (self.told.as_ref() != Some(&told)).then(|| self.told.insert(told).clone())
    }
}

/// What lies over the picture: the unit's size, or the names of parts that are apart or going in.
fn lines(unit: &Unit, show: &Show, stands: &Stands, marked: Option<usize>, extent: (f32, f32)) -> String {
    let overlay = Overlay::of(show.camera, extent);
    let standing = || unit.scene.parts.iter().zip(stands).filter_map(|(part, stand)| Some((part, (*stand)?)));
    let boxes = standing().map(|(part, stand)| part.bounds.taken(stand));
    let bounds = boxes.fold(Bounds::default(), Bounds::with);
    if show.pose.is_whole() {
        return overlay.dimensions(unit.scene.size, bounds, &unit.layout).into_svg();
    }
    let marked = marked.and_then(|at| unit.scene.parts.get(at)).map(|part| part.id);
    let (ids, boxes): (Vec<PanelId>, Vec<Standing>) =
        standing().map(|(part, stand)| (part.id, (part.bounds, stand))).unzip();
    let named = ids.iter().enumerate().filter(|(_, id)| marked == Some(**id) || show.pose.apart > NAMED_FROM);
    let mut named: Vec<(usize, Vec3, PanelId)> = named
        .filter_map(|(at, id)| seen(&boxes, at, show.camera.eye()).map(|(point, points)| (points, point, *id)))
        .collect();
    // On a small picture the parts that are seen best.
    if extent.0 < SMALL {
        short::sort(&mut named, |(points, ..)| core::cmp::Reverse(*points));
        named.truncate(FEW);
    }
    overlay.names(named.into_iter().map(|(_, point, id)| (point, words::part(id))), bounds).into_svg()
}

/// What to do in a step, counted from 0.
fn sentence(unit: &Unit, at: usize) -> String {
    let what = match unit.assembly.steps.get(at) {
        // Where tethers go to the millimetre the paper says, which lies beside the parts.
        Some(step) => format!("{} {}", words::step(step, None), words::burden(step)),
        None => words::last_step(unit.tethered),
    };
    Message::Step { number: at + 1, of: pose::steps(&unit.assembly), what: &what }.text()
}

/// To the single precision of graphics cards.
#[expect(clippy::cast_possible_truncation, reason = "the numbers of graphics cards")]
const fn single(value: f64) -> f32 {
    value as f32
}

fn built(range: &Range, choice: &Choice) -> Option<Unit> {
    let picked = Picked::of(range, choice)?;
    let layout = Layout::of(picked, choice)?;
    let cut = WeighedCase::of(picked, choice, &layout)?;
    let look = Appearance::of(picked.finish);
    let [along, across] = look.plies;
    let colours = [look.face, along, across].map(|colour| Vec3::from_array(colour.map(single)));
    Some(Unit {
        assembly: Assembly::of(picked, &cut.case),
        scene: Scene::of(picked, &layout, &cut.case, choice),
        paint: Paint { colours, grain: single(look.grain), clear: picked.finish.look == Look::Clear },
        tethered: tether::is_asked(picked, choice, &layout, &cut),
        layout,
    })
}

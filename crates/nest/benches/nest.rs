//! How long the quick nest takes for the parts of one cabinet and of fifty, and how much better a search is.
#![expect(clippy::print_stdout, reason = "a benchmark prints its figures")]
#![expect(clippy::disallowed_methods, reason = "a benchmark reads the clock")]

use std::hint::black_box;
use std::time::{Duration, Instant};

use slotwright_nest::problem::{Format, Gaps, Item, NoRoom, Problem, Worth};
use slotwright_nest::quick::quick;
use slotwright_nest::search::{Progress, Search};

/// Hundredths of a millimetre.
const MM: i64 = 100;

/// An offcut of 300 × 200 mm and more is kept, and is worth half its share of a sheet.
const WORTH: Worth = Worth { least_width: 300 * MM, least_height: 200 * MM, per_mille: 500 };

/// Units whose nest is compared with that of a search.
const UNITS: u32 = 300;

/// The effort of that search, well after which hardly anything is found any more.
const EFFORT: u32 = 2_000_000;

/// Numbers by a linear congruence: nothing here needs better ones.
struct Numbers(u64);

impl Numbers {
    /// A number from one to another, both included, in steps.
    fn next(&mut self, least: i64, most: i64, step: i64) -> i64 {
        // Source: Knuth, The Art of Computer Programming, volume 2, 3.3.4 (MMIX).
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        let steps = u64::try_from((most - least) / step + 1).unwrap_or(1);
        least + step * i64::try_from((self.0 >> 33) % steps).unwrap_or(0)
    }
}

/// The parts of a cabinet: plates, uprights, a back, shelves, stiles and leaves, as large as those of the demo range.
fn unit(numbers: &mut Numbers) -> Vec<Item> {
    let mut any = |least, most, step| numbers.next(least, most, step);
    let (width, height, depth) = (any(800, 2400, 10), any(300, 1100, 10), any(300, 600, 10));
    let bays = any(1, 5, 1);
    let bay = (width - 20) / bays;
    let mut items = Vec::new();
    let mut add = |width: i64, height: i64, count: i64| {
        let count = u32::try_from(count).unwrap_or(0);
        items.push(Item { width: width * MM, height: height * MM, turns: false, count });
    };
    add(width, depth, any(2, 3, 1));
    add(depth, height, bays + 1);
    add(width - 40, height - 40, any(0, 1, 1));
    add(bay - 20, depth - 20, bays * any(0, 2, 1));
    add(46, height - 40, any(0, 4, 1));
    if bay < 700 {
        add(bay - 30, height - 50, any(0, bays, 1));
    }
    items
}

fn problem(items: Vec<Item>) -> Problem {
    let format = |width: i64, height: i64, cost| Format { width: width * MM, height: height * MM, cost, most: None };
    let formats = vec![format(2440, 1220, 9800), format(3050, 1525, 16_900)];
    Problem { formats, items, gaps: Gaps { spacing: 8 * MM, trim: 10 * MM } }
}

/// The shortest of some runs.
fn shortest(work: impl Fn()) -> Duration {
    let once = |_| {
        let began = Instant::now();
        work();
        began.elapsed()
    };
    (0..10).map(once).min().unwrap_or_default()
}

fn parts(problem: &Problem) -> u32 {
    problem.items.iter().map(|item| item.count).sum()
}

fn main() -> Result<(), NoRoom> {
    let mut numbers = Numbers(1);
    let mut units: Vec<Problem> = (0..UNITS).map(|_| problem(unit(&mut numbers))).collect();
    let (mut times, mut gaps) = (Vec::new(), Vec::new());
    for unit in &units {
        times.push(shortest(|| drop(black_box(quick(unit, &WORTH)))));
        let known = quick(unit, &WORTH)?.figures(unit).net();
        let mut search = Search::new(unit, &WORTH, 1)?;
        search.step(EFFORT);
        #[expect(clippy::cast_precision_loss, reason = "a share to a tenth of a percent")]
        gaps.push((known as f64 / search.net() as f64 - 1.0) * 100.0);
    }
    times.sort_unstable();
    gaps.sort_by(f64::total_cmp);
    let mean = gaps.iter().sum::<f64>() / f64::from(UNITS);
    let of = |share: usize| gaps.get(gaps.len() * share / 100).copied().unwrap_or_default();
    println!("quick nest of a unit  {:?} median, {:?} at worst", times[times.len() / 2], times[times.len() - 1]);
    println!(
        "beyond a search  {mean:.2} % mean, {:.2} % of 95 in 100, {:.2} % at worst",
        of(95),
        of(99).max(gaps[gaps.len() - 1])
    );
    units.truncate(90);
    for many in [50, 90] {
        let all = problem(units.iter().take(many).flat_map(|unit| unit.items.clone()).collect());
        println!(
            "quick nest of {many} units, {} parts  {:?}",
            parts(&all),
            shortest(|| drop(black_box(quick(&all, &WORTH))))
        );
    }
    let all = problem(units.iter().take(10).flat_map(|unit| unit.items.clone()).collect());
    let search = Search::new(&all, &WORTH, 1)?;
    println!("an effort of 1000000  {:?}", shortest(|| assert!(search.clone().step(1_000_000) != Progress::Done)));
    Ok(())
}

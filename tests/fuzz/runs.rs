//! How many cases of a property are tried, and for how long.

use std::cell::Cell;
use std::time::{Duration, Instant};

use proptest::strategy::Strategy;
use proptest::test_runner::{Config, TestRunner};

/// The variable that makes each property go on for so many seconds.
const SECONDS: &str = "SLOTWRIGHT_FUZZ_SECONDS";

/// No case may take longer, with optimisation and on a busy machine; only asked for in long runs.
const LONGEST: Duration = Duration::from_secs(20);

/// Tries a property on a few cases, or goes on for as long as is asked for. The property says whether a
/// case was read, and so went further.
pub(crate) fn check<S: Strategy>(name: &str, cases: u32, given: &S, property: impl Fn(S::Value) -> bool)
where
    S::Value: Clone,
{
    let long: Option<u64> = std::env::var(SECONDS).ok().and_then(|seconds| seconds.parse().ok());
    let lasts = Duration::from_secs(long.unwrap_or(0));
    let (tried, read, slowest) = (Cell::new(0_u64), Cell::new(0_u64), Cell::new(Duration::ZERO));
    let begun = Instant::now();
    loop {
        let config = Config { cases, failure_persistence: None, ..Config::default() };
        let tested = TestRunner::new(config).run(given, |value| {
            let shown = value.clone();
            let begun = Instant::now();
            read.set(read.get() + u64::from(property(value)));
            tried.set(tried.get() + 1);
            let took = begun.elapsed();
            if long.is_some() && took > slowest.get() {
                slowest.set(took);
                eprintln!("{name}: {took:.1?} for {shown:?}");
            }
            assert!(long.is_none() || took < LONGEST, "{took:?}");
            Ok(())
        });
        if let Err(error) = tested {
            panic!("{name}: {error}");
        }
        if begun.elapsed() >= lasts {
            break;
        }
    }
    if long.is_some() {
        let (tried, read, slowest) = (tried.get(), read.get(), slowest.get());
        eprintln!("{name}: {tried} cases, {read} of them read, in {:.0?}; the slowest {slowest:.1?}", begun.elapsed());
    }
    assert!(read.get() > 0 || cases < 20, "{name}: no case was read");
}

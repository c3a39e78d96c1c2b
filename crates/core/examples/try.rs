use slotwright_core::{choice::Choice, derive::derive, promise::Backlog, range::Range, words, options};
fn main(){
 let range=Range::parse(include_str!("../../../web/ranges/fenland.toml")).unwrap();
 for m in &range.models { let c=Choice::starting(m).unwrap(); let b=Backlog::default();
  let d=derive(&range,&c,"2026-11-25".parse().unwrap(),&b);
  for f in &d.findings { println!("{} {:?} {} {:?}", m.name, f.severity, words::sentence(f), f.remedies.iter().map(|r| words::change(r,&range)).collect::<Vec<_>>()); }
  if let Some(x)=&d.built { println!("{} panels {} joints {}", words::mass(x.whole.mass), x.case.panels.len(), x.case.joints.len()); println!("{} {:?}", words::money(x.price.total_minor,"EUR"), x.price.lines); println!("{:?}", x.promise.as_ref().map(|p| (words::day(p.arrives), p.decided_by.clone(), p.carrier.clone())));
   println!("heaviest {:?}", x.heaviest());
   for s in [options::Size::Width, options::Size::Height, options::Size::Depth] { for r in options::runs(&range,&c,s) { println!("  {:?} {}..{} {}", s, words::size(r.from), words::size(r.to), match &r.state { options::State::Open=>"open".into(), options::State::Shut(f)=>words::sentence(f)}); } }
   let o=options::options(&range,&c).unwrap();
   for a in o.bay_counts.iter().chain(o.bays.iter().flat_map(|b| b.fills.iter().chain(&b.holes))) { println!("   {} {} {}", words::change(&a.change,&range), a.taken, match &a.state { options::State::Open=>"open".into(), options::State::Shut(f)=>words::sentence(f)}); }
  }
  let t=std::time::Instant::now(); for _ in 0..100 { std::hint::black_box(derive(&range,&c,"2026-11-25".parse().unwrap(),&b)); } println!("derive {:?}", t.elapsed()/100);
  let t=std::time::Instant::now(); for _ in 0..10 { std::hint::black_box(options::options(&range,&c)); for s in [options::Size::Width, options::Size::Height, options::Size::Depth] {std::hint::black_box(options::runs(&range,&c,s));} } println!("options {:?}", t.elapsed()/10);
 }
}

use super::*;
use crate::exchange::summary::Fitted;
use crate::job::entry::LogId;
use crate::job::fold;

fn jobs(n: usize) -> Vec<Summary> {
    let plain = Summary::of(&LogId("job".to_owned()), &fold([]), &[], None);
    let job = |at: usize| Summary {
        plate: format!("PLT {at:05}"),
        name: format!("Person {at} Nobody"),
        vin: format!("1M8GDM9AXKP{at:06}"),
        parts: vec![Fitted {
            number: "MX-4410".to_owned(),
            lot: format!("L{at:05}"),
        }],
        ..plain.clone()
    };
    (0..n).map(job).collect()
}

#[test]
fn ten_thousand_jobs_are_searched_by_plate_vin_name_part_and_lot() {
    let finder = Finder::of(&jobs(10_000));
    let found = |typed: &str| finder.find(typed).collect::<Vec<_>>();
    assert_eq!(found("plt-04217"), [4217]);
    assert_eq!(found("AXKP004217"), [4217]);
    assert_eq!(found("person 4217 no"), [4217]);
    assert_eq!(found("l04217"), [4217]);
    assert_eq!(found("mx 4410").len(), 10_000);
    assert_eq!(found("").len(), 10_000);
    assert_eq!(found("nowhere"), [0_usize; 0]);
    // A plate does not run on into a name.
    assert_eq!(found("00001person"), [0_usize; 0]);
}

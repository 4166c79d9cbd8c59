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
        phone: format!("+1 (555) 01{at:05}"),
        invoices: vec![format!("N{at:04}")],
        parts: vec![Fitted {
            number: "MX-4410".to_owned(),
            lot: format!("L{at:05}"),
        }],
        ..plain.clone()
    };
    (0..n).map(job).collect()
}

#[test]
fn ten_thousand_jobs_are_searched_by_plate_vin_name_phone_invoice_part_and_lot() {
    let finder = Finder::of(&jobs(10_000));
    let found = |typed: &str| finder.find(typed).collect::<Vec<_>>();
    assert_eq!(found("plt-04217"), [4217]);
    assert_eq!(found("AXKP004217"), [4217]);
    assert_eq!(found("person 4217 no"), [4217]);
    assert_eq!(found("l04217"), [4217]);
    assert_eq!(found("(555) 01-04217"), [4217]);
    assert_eq!(found("n4217"), [4217]);
    assert_eq!(found("mx 4410").len(), 10_000);
    assert_eq!(found("").len(), 10_000);
    assert_eq!(found("nowhere"), [0_usize; 0]);
    // A plate does not run on into a name.
    assert_eq!(found("00001person"), [0_usize; 0]);
}

#[test]
fn the_earlier_visit_is_the_latest_other_job_on_the_same_vehicle() {
    let mut jobs = jobs(4);
    for (at, job) in jobs.iter_mut().enumerate() {
        job.log = format!("log-{at}");
        job.touched = i64::try_from(at).unwrap();
    }
    let vin = jobs[0].vin.clone();
    let found = |jobs: &[Summary], log: &str| {
        earlier_visit(jobs, &vin.to_lowercase(), log).map(|job| job.log.clone())
    };
    assert_eq!(found(&jobs, "log-0"), None);
    assert_eq!(found(&jobs, "log-3").as_deref(), Some("log-0"));
    jobs[2].vin = vin.clone();
    assert_eq!(found(&jobs, "log-3").as_deref(), Some("log-2"));
    jobs[2].practice = true;
    assert_eq!(found(&jobs, "log-3").as_deref(), Some("log-0"));
    for job in &mut jobs {
        job.vin = String::new();
    }
    assert_eq!(earlier_visit(&jobs, "", "log-3"), None);
}

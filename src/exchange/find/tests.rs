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

#[test]
fn earlier_visits_are_those_of_the_vin_or_the_plate_the_latest_first() {
    let mut jobs = jobs(5);
    for (at, job) in jobs.iter_mut().enumerate() {
        job.log = format!("log-{at}");
        job.touched = i64::try_from(at).unwrap();
    }
    let (vin, plate) = (jobs[1].vin.clone(), jobs[1].plate.clone());
    jobs[2].vin = String::new();
    jobs[2].plate.clone_from(&plate);
    jobs[3].plate = plate.to_lowercase();
    let found = |jobs: &[Summary], vin: &str, plate: &str| -> Vec<(String, bool)> {
        let visits = earlier_visits(jobs, vin, plate, "log-0").into_iter();
        visits
            .map(|it| (it.job.log.clone(), it.other_vin))
            .collect()
    };
    let is = |log: &str, other| (log.to_owned(), other);
    // The plate went on to another car: that is said.
    let all = [is("log-3", true), is("log-2", false), is("log-1", false)];
    assert_eq!(found(&jobs, &vin, &plate), all);
    // Without a VIN to compare nothing is said of one.
    let by_plate = [is("log-3", false), is("log-2", false), is("log-1", false)];
    assert_eq!(found(&jobs, "", &plate), by_plate);
    assert_eq!(found(&jobs, &vin, ""), [is("log-1", false)]);
    assert_eq!(found(&jobs, "", ""), []);
    // Neither the job itself nor practice is an earlier visit.
    jobs[3].practice = true;
    jobs[2].log = "log-0".to_owned();
    assert_eq!(found(&jobs, &vin, &plate), [is("log-1", false)]);
}

#[test]
fn earlier_visits_are_found_among_ten_thousand_lines() {
    let jobs = jobs(10_000);
    let found = |vin: &str, plate: &str| -> Vec<String> {
        let visits = earlier_visits(&jobs, vin, plate, "").into_iter();
        visits.map(|it| it.job.plate.clone()).collect()
    };
    assert_eq!(found("1m8gdm9axkp004217", ""), ["PLT 04217"]);
    assert_eq!(found("", "plt-04217"), ["PLT 04217"]);
    assert_eq!(found("1M8GDM9AXKP00421", "PLT 0421"), [""; 0]);
}

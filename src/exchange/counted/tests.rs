use super::*;
use crate::exchange::tally::Replaced;
use crate::job::entry::{Ending, LogId};
use crate::job::fold;
use crate::trade::damage::Finding;

fn job(van: &str) -> Summary {
    let mut job = Summary::of(&LogId(van.to_owned()), &fold([]), &[], None);
    job.tally.van = van.to_owned();
    job.ending = Ending::Finished.code().to_owned();
    job
}

fn replaced(van: &str, decided: bool, mended: Option<bool>) -> Summary {
    let mut job = job(van);
    job.tally.corners = vec![Replaced {
        decided,
        mended,
        ..Replaced::default()
    }];
    job
}

/// A finished job whose removed part was read so.
fn read(inspected: Inspected, seen: &[Finding]) -> Summary {
    let mut job = replaced("a", true, Some(true));
    for corner in &mut job.tally.corners {
        inspected.code().clone_into(&mut corner.inspected);
        corner.seen = seen.iter().map(|it| it.code().to_owned()).collect();
    }
    job
}

fn recorded<K: Clone>(rows: &[Row<K>]) -> Vec<(K, usize, usize)> {
    let recorded = rows.iter().map(|row| (row.what.clone(), row.of, row.all));
    recorded.collect()
}

#[test]
fn decisions_are_counted_against_what_was_proved_and_all_vans_come_first() {
    let mut jobs = vec![
        replaced("b", true, Some(true)),
        replaced("a", true, Some(true)),
        replaced("a", true, Some(false)),
        replaced("a", true, None),
        replaced("a", false, Some(true)),
        replaced("c", true, None),
    ];
    let rows = by_van(&jobs, Measure::Mended);
    let name = |text: &str| text.to_owned();
    assert_eq!(
        recorded(&rows),
        [(name(""), 2, 3), (name("a"), 1, 2), (name("b"), 1, 1)]
    );
    // 2 of 3 at 95 %, by scipy 1.17.1: binomtest(2, 3).proportion_ci(0.95, "exact").
    let share = rows[0].share.unwrap();
    assert!((share.low - 0.094_299_324_050_713_03).abs() < 1e-9);
    assert!((share.high - 0.991_596_241_340_387_4).abs() < 1e-9);
    jobs.iter_mut().for_each(|job| job.practice = true);
    assert_eq!(by_van(&jobs, Measure::Mended), []);
}

#[test]
fn quality_is_counted_of_ended_jobs_alone() {
    let mut jobs = vec![job("a"), job("a"), job("b")];
    jobs[0].tally.later = (3, 100);
    jobs[1].tally.later = (7, 50);
    jobs[2].tally.later = (9, 9);
    jobs[2].ending = String::new();
    jobs[0].tally.quick = (1, 1);
    jobs[1].tally.reasons = (2, 8);
    let name = |text: &str| text.to_owned();
    let rows = |measure| recorded(&by_van(&jobs, measure));
    assert_eq!(
        rows(Measure::NotedLater),
        [(name(""), 10, 150), (name("a"), 10, 150)]
    );
    assert_eq!(
        rows(Measure::QuickNuts),
        [(name(""), 1, 1), (name("a"), 1, 1)]
    );
    assert_eq!(
        rows(Measure::Reasons),
        [(name(""), 2, 8), (name("a"), 2, 8)]
    );
    assert_eq!(rows(Measure::CameBack), []);
}

#[test]
fn causes_of_removed_parts_are_of_those_inspected_and_name_how_many_were_cut_open() {
    let mut jobs = vec![
        read(Inspected::Closed, &[Finding::RedGrease]),
        read(
            Inspected::CutOpen,
            &[Finding::EtchedLines, Finding::RedGrease, Finding::SealCut],
        ),
        read(Inspected::CutOpen, &[]),
        read(Inspected::NotInspected, &[]),
        replaced("a", true, None),
        // A closed part shows nothing of its races, whatever a file says.
        read(Inspected::Closed, &[Finding::Flaked]),
    ];
    let rows = |jobs: &[Summary]| -> Vec<_> {
        let rows = removed_parts(jobs).into_iter();
        rows.map(|it| (it.row.what, it.row.of, it.row.all, it.cut_open))
            .collect()
    };
    assert_eq!(
        rows(&jobs),
        [
            (Some(LikelyCause::Water), 2, 4, 1),
            (Some(LikelyCause::ToolSlip), 1, 4, 1),
            (None, 2, 4, 1),
        ]
    );
    jobs.iter_mut().for_each(|job| job.practice = true);
    assert_eq!(rows(&jobs), []);
}

#[test]
fn causes_of_comebacks_are_of_those_with_a_recorded_cause() {
    let mut jobs = vec![replaced("a", true, Some(true)); 3];
    jobs[0].came_back = Some(true);
    jobs[0].tally.came_back_for = CameBackFor::Fitting.code().to_owned();
    jobs[1].came_back = Some(true);
    jobs[2].came_back = Some(false);
    jobs[2].tally.came_back_for = CameBackFor::Part.code().to_owned();
    assert_eq!(recorded(&causes(&jobs)), [(CameBackFor::Fitting, 1, 1)]);
    jobs.iter_mut().for_each(|job| job.practice = true);
    assert_eq!(causes(&jobs), []);
}

#[test]
fn minutes_are_paired_job_by_job_and_practice_is_in_none() {
    let timed = |took: u32, sold: Option<u32>| {
        let mut job = replaced("a", true, None);
        job.tally.kind = "bolted_driven".to_owned();
        job.tally.minutes = (Some(took), sold);
        job
    };
    let mut jobs = vec![
        timed(90, Some(75)),
        timed(120, Some(90)),
        timed(100, Some(90)),
        timed(500, None),
    ];
    let rows = minutes(&jobs);
    assert_eq!((rows.len(), rows[0].n, rows[0].corners), (1, 3, 1));
    assert_eq!(rows[0].sold, 85.0);
    // scipy 1.17.1: stats.t.interval(0.95, 2, mean, sem) of 15, 30, 10.
    let over = rows[0].over.unwrap();
    assert!((over.mean - 18.333_333_333_333_332).abs() < 1e-9);
    assert!(
        (over.low + 7.522_391_729_377_983).abs() < 1e-9
            && (over.high - 44.189_058_396_044_64).abs() < 1e-9
    );
    jobs.iter_mut().for_each(|job| job.practice = true);
    assert_eq!(minutes(&jobs), []);
}

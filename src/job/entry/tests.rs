use super::*;

#[test]
fn the_day_is_the_one_on_the_wall() {
    let day = |utc_ms, offset_min| {
        let recorded = None;
        let at = Timestamp {
            utc_ms,
            offset_min,
            recorded,
        };
        at.day().map(|day| day.to_string())
    };
    assert_eq!(day(0, 0).as_deref(), Some("1970-01-01"));
    assert_eq!(day(0, -300).as_deref(), Some("1969-12-31"));
    // 2026-03-04 23:30 UTC, by `date -u -d @1772667000`.
    assert_eq!(day(1_772_667_000_000, 0).as_deref(), Some("2026-03-04"));
    assert_eq!(day(1_772_667_000_000, 60).as_deref(), Some("2026-03-05"));
    assert_eq!(day(i64::MAX, 0), None);
}

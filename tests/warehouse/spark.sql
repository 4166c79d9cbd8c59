-- Spark: loads `entries` out of entries.jsonl. Out of Parquet it is, instead of the two views below,
--   CREATE TEMPORARY VIEW entries USING parquet OPTIONS (path 'entries');

CREATE TEMPORARY VIEW numbers AS SELECT CAST(id AS INT) AS i FROM range(64);
CREATE TEMPORARY VIEW lines (
    shop STRING, log STRING, place INT, counts BOOLEAN, day DATE,
    at STRUCT<utc_ms: BIGINT, offset_min: INT, recorded: BIGINT>,
    device STRING, n BIGINT, by STRING, kind STRING, what STRING
) USING json OPTIONS (path 'entries.jsonl');
CREATE TEMPORARY VIEW entries AS
SELECT shop, log, place, counts, day, at.utc_ms AS utc_ms, device, n, by AS who, kind, what FROM lines;

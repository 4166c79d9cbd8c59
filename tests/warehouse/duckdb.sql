-- DuckDB: loads `entries` out of entries.jsonl, and gives the few functions of warehouse.sql that it
-- has under another name. Out of Parquet it is, instead of the table below,
--   CREATE VIEW entries AS SELECT * FROM read_parquet('entries/*/*/*.parquet', hive_partitioning = true);

CREATE MACRO get_json_object(json, path) AS json_extract_string(json, path);
CREATE VIEW numbers AS SELECT CAST(range AS INTEGER) AS i FROM range(64);
CREATE TABLE entries AS
SELECT shop, log, place, counts, day, "at".utc_ms AS utc_ms, device, n, "by" AS who, kind, CAST(what AS VARCHAR) AS what
FROM read_json('entries.jsonl', format = 'newline_delimited', columns = {
    'shop': 'VARCHAR', 'log': 'VARCHAR', 'place': 'INTEGER', 'counts': 'BOOLEAN', 'day': 'DATE',
    'at': 'STRUCT(utc_ms BIGINT, offset_min INTEGER, recorded BIGINT)',
    'device': 'VARCHAR', 'n': 'BIGINT', 'by': 'VARCHAR', 'kind': 'VARCHAR', 'what': 'JSON'
});

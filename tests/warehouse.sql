-- Loads and questions entries in DuckDB, out of the file that `hubslate lines FILES… -o entries.jsonl`
-- writes into the folder where this is run. tests/formats.rs runs every statement.

CREATE TABLE entries AS
SELECT *, json_keys(what)[1] AS kind
FROM read_json('entries.jsonl', format = 'newline_delimited', columns = {
    'v': 'INTEGER', 'id': 'UUID', 'log': 'VARCHAR',
    'at': 'STRUCT(utc_ms BIGINT, offset_min INTEGER, told BIGINT)',
    'by': 'VARCHAR', 'device': 'VARCHAR', 'n': 'UBIGINT', 'after': 'VARCHAR[]', 'what': 'JSON'
});

-- An entry counts unless a strike hits it that was not struck itself; whoever strikes a strike of a
-- strike asks the app.
CREATE VIEW strikes AS
SELECT id, unnest(from_json(what->'strike'->'hits', '["UUID"]')) AS hit FROM entries WHERE kind = 'strike';
CREATE VIEW counting AS
SELECT * FROM entries WHERE id NOT IN (
    SELECT hit FROM strikes WHERE id NOT IN (SELECT hit FROM strikes)
);

-- The play of a round as read, the push taken as zero where it was not read. Past the zero of the
-- face the short way round holds, so that this is for sets on one side of it.
CREATE VIEW readings AS
SELECT log, what->'reading'->>'corner' AS corner, what->'reading'->>'when' AS "when",
    (what->'reading'->>'set')::INTEGER AS nth, (what->'reading'->>'round')::INTEGER AS round,
    what->'reading'->>'side' AS side,
    replace(what->'reading'->>'divisions', ',', '.')::DOUBLE
        * (what->'reading'->'dial'->>'graduation_mm')::DOUBLE AS mm
FROM counting WHERE kind = 'reading';
CREATE VIEW plays AS
SELECT log, corner, "when", nth, round,
    abs(max(mm) FILTER (side = 'pull') - coalesce(max(mm) FILTER (side = 'push'), 0)) AS play_mm
FROM readings GROUP BY ALL;

-- How many jobs ended how?
SELECT what->'ended'->>'ending' AS ending, count(*) AS jobs
FROM counting WHERE kind = 'ended' GROUP BY ALL ORDER BY ALL;

-- How did corners that were replaced measure before, and after?
SELECT "when", count(*) AS rounds, round(avg(play_mm), 4) AS mean_mm
FROM plays WHERE (log, corner) IN (
    SELECT (log, what->'decided'->>'corner') FROM counting
    WHERE kind = 'decided' AND what->'decided'->>'decision' = 'replace'
) GROUP BY ALL ORDER BY "when" DESC;

-- Which running numbers of a device are missing?
SELECT device, before + 1 AS "from", n - 1 AS "to" FROM (
    SELECT device, n, lag(n) OVER (PARTITION BY device ORDER BY n) AS before
    FROM (SELECT DISTINCT device, n FROM entries)
) WHERE before + 1 < n ORDER BY ALL;

-- Which re-torques are open on a day?
SELECT log, (what->'due'->>'date')::DATE AS by_day FROM counting
WHERE kind = 'due' AND what->'due'->>'kind' = 'retorque' AND log NOT IN (
    SELECT log FROM counting WHERE kind = 'answered' AND what->'answered'->>'step' = 'retorque_done'
) ORDER BY ALL;

-- The views and questions of a shop, or of a chain of shops, over the entries of all its jobs.
--
-- One text for every engine: tests/warehouse.rs runs it on DuckDB (one computer) and on Spark (many),
-- and holds the answers against one another. Before it runs tests/warehouse/duckdb.sql or
-- tests/warehouse/spark.sql, which load what `hubslate lines` wrote as `entries`, one row an entry:
--
--   shop   text     the shop whose file it came in; null where the shop has no settings
--   log    text     the job (or book, kit ...) it belongs to
--   place  int      its place in its log: after all that it saw, ties by id
--   counts boolean  whether it holds: not struck, and its body can be read
--   day    date     the day it was noted, on the clock of the phone
--   utc_ms bigint   the same as milliseconds since 1970
--   device text     the phone or van; `n` bigint is its running number there
--   who    text     the technician
--   kind   text     what it is; `what` text is its body as JSON, by public/schema/job-1.schema.json
--
-- Each also brings `numbers` (one column `i`, 0 to 63), to reach into lists.
--
-- One rule for what holds: of the entries that count and state one fact, the last by `place`. Of two
-- that had not seen one another that is the one with the higher id; where such a pair must be settled
-- the app, which keeps the more careful one, has the word.
-- Amounts are in the smallest unit of their currency, never added across currencies.

-- One row a job that is not practice. A job belongs to the van (device) that ended it, and before its
-- end to the one that noted last.
CREATE TEMPORARY VIEW jobs AS
SELECT shop, log, opened, ended, ending, coalesce(ended_by, last_by) AS van, vin, plate, family, lines
FROM (
    SELECT max(shop) AS shop, log,
        min(CASE WHEN kind = 'opened' THEN day END) AS opened,
        max_by(day, place) FILTER (WHERE kind = 'ended') AS ended,
        max_by(get_json_object(what, '$.ended.ending'), place) FILTER (WHERE kind = 'ended') AS ending,
        max_by(device, place) FILTER (WHERE kind = 'ended') AS ended_by,
        max_by(device, place) AS last_by,
        max_by(get_json_object(what, '$.vehicle.text'), place)
            FILTER (WHERE kind = 'vehicle' AND get_json_object(what, '$.vehicle.field') = 'vin') AS vin,
        max_by(get_json_object(what, '$.person.text'), place)
            FILTER (WHERE kind = 'person' AND get_json_object(what, '$.person.field') = 'plate') AS plate,
        max_by(get_json_object(what, '$.vehicle.text'), place)
            FILTER (WHERE kind = 'vehicle' AND get_json_object(what, '$.vehicle.field') = 'family') AS family,
        max(CASE WHEN kind = 'opened' THEN get_json_object(what, '$.opened.practice') END) AS practice,
        count(*) AS lines
    FROM entries WHERE counts AND log NOT LIKE '%:%' GROUP BY log
) AS folded WHERE opened IS NOT NULL AND practice IS NULL;

-- One row an invoice or credit note; a credit note names the number that it takes back, and its
-- amounts are below zero.
CREATE TEMPORARY VIEW invoices AS
SELECT jobs.shop, jobs.log, numbered.number, numbered.credits, numbered.currency, numbered.day, numbered.who,
    numbered.net, numbered.tax, numbered.net + numbered.tax AS gross
FROM jobs JOIN (
    SELECT log, place, max(number) AS number, max(credits) AS credits, max(currency) AS currency,
        max(day) AS day, max(who) AS who,
        CAST(sum(coalesce(CAST(get_json_object(what, concat(part, '.lines[', CAST(inner_i AS STRING), '].net')) AS BIGINT), 0)) AS BIGINT) AS net,
        CAST(sum(coalesce(CAST(get_json_object(what, concat(part, '.taxes[', CAST(inner_i AS STRING), '].tax')) AS BIGINT), 0)) AS BIGINT) AS tax
    FROM (
        SELECT e.log, e.place, e.day, e.who, e.what,
            get_json_object(e.what, '$.invoice.number') AS number,
            get_json_object(e.what, '$.invoice.credits') AS credits,
            get_json_object(e.what, '$.invoice.currency') AS currency,
            concat('$.invoice.parts[', CAST(parts.i AS STRING), ']') AS part, inside.i AS inner_i
        FROM entries AS e
        JOIN numbers AS parts ON parts.i < json_array_length(get_json_object(e.what, '$.invoice.parts'))
        CROSS JOIN numbers AS inside
        WHERE e.kind = 'invoice' AND e.counts
    ) AS reached GROUP BY log, place
) AS numbered ON jobs.log = numbered.log;

-- One row a payment; what went back is below zero.
CREATE TEMPORARY VIEW payments AS
SELECT jobs.shop, jobs.log, e.day, e.who,
    coalesce(get_json_object(e.what, '$.paid.how'), get_json_object(e.what, '$.refunded.how')) AS how,
    coalesce(get_json_object(e.what, '$.paid.amount.currency'), get_json_object(e.what, '$.refunded.amount.currency')) AS currency,
    coalesce(CAST(get_json_object(e.what, '$.paid.amount.minor') AS BIGINT),
        -CAST(get_json_object(e.what, '$.refunded.amount.minor') AS BIGINT)) AS amount
FROM entries AS e JOIN jobs ON jobs.log = e.log
WHERE e.counts AND e.kind IN ('paid', 'refunded');

-- One row a corner of a finished job into which a part was put.
CREATE TEMPORARY VIEW parts AS
SELECT jobs.shop, jobs.log, jobs.ended AS fitted, jobs.van, jobs.vin, jobs.plate, said.corner, said.number, said.lot
FROM jobs JOIN (
    SELECT log, get_json_object(what, '$.part.corner') AS corner,
        max_by(get_json_object(what, '$.part.number'), place) AS number,
        max_by(get_json_object(what, '$.part.lot'), place) AS lot
    FROM entries WHERE counts AND kind = 'part'
    GROUP BY log, get_json_object(what, '$.part.corner')
) AS said ON said.log = jobs.log
WHERE jobs.ending = 'finished' AND said.number <> '';

-- One row a job that came back with the same corner: why, where that was said, and the job before it
-- on the same vehicle (by VIN, else by plate) that put in a part.
CREATE TEMPORARY VIEW comebacks AS
SELECT back.shop, back.log, back.opened, back.cause, max_by(parts.log, concat(CAST(parts.fitted AS STRING), parts.log)) AS earlier
FROM (
    SELECT jobs.shop, jobs.log, jobs.opened, jobs.vin, jobs.plate, said.cause
    FROM jobs JOIN (
        SELECT log,
            max_by(get_json_object(what, '$.answered.reply.picked.pick'), place)
                FILTER (WHERE get_json_object(what, '$.answered.step') = 'comeback') AS pick,
            max_by(get_json_object(what, '$.came_back_for.cause'), place)
                FILTER (WHERE kind = 'came_back_for') AS cause
        FROM entries WHERE counts AND kind IN ('answered', 'came_back_for') GROUP BY log
    ) AS said ON said.log = jobs.log
    WHERE said.pick = 'same_corner'
) AS back LEFT JOIN parts ON parts.log <> back.log AND parts.fitted <= back.opened
    AND coalesce(parts.vin, parts.plate) = coalesce(back.vin, back.plate)
GROUP BY back.shop, back.log, back.opened, back.cause;

-- One row a corner that was decided on: the last decision, and what it rests on in millimeters.
CREATE TEMPORARY VIEW decisions AS
SELECT jobs.shop, jobs.log, jobs.van, jobs.family, said.corner, said.day, said.decision, said.rules,
    said.mean_mm, said.limit_mm
FROM jobs JOIN (
    SELECT log, get_json_object(what, '$.decided.corner') AS corner, max_by(day, place) AS day,
        max_by(get_json_object(what, '$.decided.decision'), place) AS decision,
        max_by(CAST(get_json_object(what, '$.decided.rules') AS INT), place) AS rules,
        max_by(CAST(get_json_object(what, '$.decided.inputs.sets[0].mean_mm') AS DOUBLE), place) AS mean_mm,
        max_by(CAST(get_json_object(what, '$.decided.inputs.limit.value_mm') AS DOUBLE), place) AS limit_mm
    FROM entries WHERE counts AND kind = 'decided'
    GROUP BY log, get_json_object(what, '$.decided.corner')
) AS said ON said.log = jobs.log;

-- How many jobs of each shop ended how?
SELECT shop, coalesce(ending, 'open') AS ending, count(*) AS jobs FROM jobs
GROUP BY shop, coalesce(ending, 'open') ORDER BY shop NULLS FIRST, ending;

-- Money: what was billed, its tax, what came in and what is open, by shop and currency?
SELECT shop, currency, sum(net) AS net, sum(tax) AS tax, sum(gross) AS gross, sum(received) AS received,
    sum(gross) - sum(received) AS open
FROM (
    SELECT shop, currency, net, tax, gross, 0 AS received FROM invoices
    UNION ALL SELECT shop, currency, 0, 0, 0, amount FROM payments
) AS both_sides GROUP BY shop, currency ORDER BY shop NULLS FIRST, currency;

-- Lots: how many of each were put in, and how many of those cars came back with the same corner?
SELECT number, lot, count(DISTINCT parts.log) AS jobs, count(DISTINCT comebacks.log) AS came_back
FROM parts LEFT JOIN comebacks ON comebacks.earlier = parts.log
GROUP BY number, lot ORDER BY came_back DESC, number, lot;

-- Comebacks: which job came back from which, after how long, and why?
SELECT comebacks.log, comebacks.earlier, jobs.ended AS fitted, comebacks.opened, comebacks.cause
FROM comebacks LEFT JOIN jobs ON jobs.log = comebacks.earlier ORDER BY comebacks.log;

-- Vans: how many jobs did each finish, with how many comebacks, and what came in for them?
SELECT jobs.shop, jobs.van, count(*) AS jobs,
    sum(CASE WHEN ending = 'finished' THEN 1 ELSE 0 END) AS finished,
    sum(CASE WHEN log IN (SELECT earlier FROM comebacks WHERE earlier IS NOT NULL) THEN 1 ELSE 0 END) AS came_back
FROM jobs GROUP BY jobs.shop, jobs.van ORDER BY jobs.shop NULLS FIRST, jobs.van;

-- Decisions: of each, how many, and the mean of what was measured for them, in micrometers?
SELECT decision, count(*) AS corners, CAST(round(1000 * avg(mean_mm), 1) AS STRING) AS mean_um FROM decisions
GROUP BY decision ORDER BY decision;

-- Which re-torques are open, by the day they are due?
SELECT due.log, max_by(CAST(get_json_object(due.what, '$.due.date') AS DATE), due.place) AS by_day
FROM entries AS due JOIN jobs ON jobs.log = due.log
WHERE due.counts AND due.kind = 'due' AND get_json_object(due.what, '$.due.kind') = 'retorque'
    AND due.log NOT IN (
        SELECT log FROM entries WHERE counts AND kind = 'answered'
            AND get_json_object(what, '$.answered.step') = 'retorque_done'
    )
GROUP BY due.log ORDER BY due.log;

-- Which running numbers of a device are missing? Practice is counted apart.
SELECT device, before + 1 AS first_missing, n - 1 AS last_missing FROM (
    SELECT device, n, lag(n) OVER (PARTITION BY device ORDER BY n) AS before
    FROM (SELECT DISTINCT device, n FROM entries WHERE device NOT LIKE '%-practice') AS each_once
) AS gaps WHERE before + 1 < n ORDER BY device, first_missing;

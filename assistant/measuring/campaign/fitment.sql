-- The verdict on every seal in every place, from the agreed meaning of the tables.
-- Lengths are tenths of a millimetre, openings and volumes hundredths: whole numbers only.

CREATE TABLE valve (valve PRIMARY KEY, style, opening, peg_span, pegs, overflow, tube);
CREATE TABLE valve_mount (valve, way);
CREATE TABLE seal (part_no PRIMARY KEY, style, opening, ear_span, ears, ring, low, high, status,
                   replaced_by);
CREATE TABLE seal_mount (part_no, way);
CREATE TABLE build (build PRIMARY KEY, flush);
CREATE TABLE sits (build, position, valve);
CREATE TABLE evidence (valve, build, position, part_no, verdict, change);

CREATE VIEW verdict AS
WITH RECURSIVE
place AS (
  SELECT sits.*, (SELECT count(*) FROM sits AS s WHERE s.build = sits.build) AS valves FROM sits),
later(old, new) AS (
  SELECT part_no, replaced_by FROM seal WHERE replaced_by IS NOT NULL
  UNION
  SELECT old, replaced_by FROM later JOIN seal ON part_no = new WHERE replaced_by IS NOT NULL),
-- Each way of holding that both sides have, and whether it fails. An empty cell fails nothing.
shared AS (
  SELECT p.build, p.position, s.part_no, CASE w.way
      WHEN 'pegs' THEN coalesce(s.ears <> v.pegs, 0)
                    OR coalesce(abs(s.ear_span - v.peg_span) > 30, 0)
      WHEN 'ring' THEN coalesce(v.overflow <> 'round', 0)
                    OR coalesce(abs(s.ring - v.tube) > 20, 0)
      WHEN 'wire' THEN 0
      ELSE s.style <> v.style END AS fails
  FROM place AS p JOIN valve AS v USING (valve) JOIN valve_mount AS w USING (valve)
  JOIN seal_mount AS m USING (way) JOIN seal AS s USING (part_no)),
barred AS (
  SELECT p.build, p.position, s.part_no
  FROM place AS p JOIN valve AS v USING (valve) JOIN build AS b USING (build) CROSS JOIN seal AS s
  WHERE s.opening <> v.opening
     OR (p.position = 'main' AND (b.flush < s.low OR b.flush > s.high))
     OR (EXISTS (SELECT 1 FROM valve_mount AS w WHERE w.valve = v.valve)
         AND EXISTS (SELECT 1 FROM seal_mount AS m WHERE m.part_no = s.part_no)
         AND NOT EXISTS (SELECT 1 FROM shared AS h WHERE NOT h.fails
             AND (h.build, h.position, h.part_no) = (p.build, p.position, s.part_no)))),
counted AS (
  SELECT p.build, p.position, e.part_no,
         sum(e.verdict = 'fits') AS yes,
         sum(e.verdict = 'does not fit') AS no,
         sum(e.verdict = 'fits with change') AS changed,
         group_concat(DISTINCT CASE WHEN e.verdict = 'fits with change' THEN e.change END) AS changes
  FROM place AS p JOIN evidence AS e ON e.valve = p.valve OR (e.build = p.build AND
    (e.position = p.position
     OR (e.position IS NULL AND (p.valves = 1 OR e.verdict = 'does not fit'))))
  GROUP BY p.build, p.position, e.part_no),
verdict AS (
  SELECT p.build, p.position, s.part_no, s.status, c.changes, CASE
      WHEN (p.build, p.position, s.part_no) IN (SELECT * FROM barred) THEN 'does not fit'
      WHEN c.no > 0 AND c.yes + c.changed > 0 THEN 'unknown'
      WHEN c.no > 0 THEN 'does not fit'
      WHEN c.yes > 0 THEN 'fits'
      WHEN c.changes IS NOT NULL THEN 'fits with change'
      WHEN c.part_no IS NULL AND EXISTS (
          SELECT 1 FROM later AS l JOIN counted AS o ON o.part_no = l.old
          WHERE l.new = s.part_no AND l.old <> s.part_no AND o.yes > 0 AND o.no = 0
            AND (o.build, o.position) = (p.build, p.position)) THEN 'fits'
      ELSE 'unknown' END AS verdict
  FROM place AS p CROSS JOIN seal AS s LEFT JOIN counted AS c
    ON (c.build, c.position, c.part_no) = (p.build, p.position, s.part_no))
SELECT build, position, part_no, verdict, status, changes FROM verdict;

-- What all builds take alike: nothing where their positions differ, and a change only if it is
-- the same for each.
CREATE VIEW common AS
SELECT position, part_no FROM verdict
WHERE verdict IN ('fits', 'fits with change') AND status <> 'discontinued'
  AND NOT EXISTS (SELECT 1 FROM build CROSS JOIN (SELECT DISTINCT position AS everywhere FROM sits)
                  WHERE (build, everywhere) NOT IN (SELECT build, position FROM sits))
GROUP BY position, part_no
HAVING count(*) = (SELECT count(*) FROM build)
   AND count(DISTINCT CASE verdict WHEN 'fits' THEN '' ELSE changes END) = 1;

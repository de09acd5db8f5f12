#!/bin/sh
# Checks a book, or a hand-over file, without our program: sh docs/verify.sh demo.book
# Needs sqlite3, openssl (3), sha256sum and xxd. Reads a copy, says every fault, prints the digest; ends with 1 where there is one.
# What is checked, and what no check of the file can show, is in docs/entry_format.md under "Checking".
# A book may be made to harm who checks it: of what stands in it only row numbers, and names found to be plain hexadecimal digits,
# ever become part of a path; nothing becomes part of SQL or of a command.
set -eu
book=${1:?which book? sh docs/verify.sh FILE}
case $book in /*) ;; *) book=$PWD/$book ;; esac
work=$(mktemp -d) && trap 'rm -rf "$work"' EXIT
cd "$work" && exec 3>&1
fault() { printf '%s\n' "$1" | LC_ALL=C tr -cd '\n -~' >&3 && echo fault >>faults; } # a terminal obeys what it is shown
of_book() { sqlite3 -bail "$1" "PRAGMA trusted_schema = OFF; $2" 2>/dev/null; }
ask() { of_book rows "$1" || fault "the file is damaged"; }
sum() { sha256sum <"$1" | cut -c1-64; }

# A pipe or a device in place of a file would keep us for ever.
[ -f "$book" ] || { fault "there is no such file, or it is no plain one"; exit 1; }
cp "$book" book
# What was handed over is one file; the application id stands in bytes 68 to 71.
handed=$([ "$(tail -c +69 book | head -c 4)" = USHH ] && echo handed || true)
for beside in -journal -wal; do
    [ ! "$handed" ] && [ -e "$book$beside" ] || continue
    # SQLite takes away the file that a journal names at its end. Ours name none.
    if [ -f "$book$beside" ] && [ "$(tail -c 8 "$book$beside" | xxd -p)" != d9d505f920a163d7 ]; then
        cp "$book$beside" "book$beside"
    else
        fault "what lies beside the book as its $beside is none of ours"
    fi
done

# A view, a trigger or a column can hold a command that sqlite3 runs when the table is read: first of all the tables have to be
# those of schema/book.sql or schema/handed.sql, to the letter.
tables=$(of_book book "PRAGMA application_id; PRAGMA user_version;
    SELECT hex(type || name || tbl_name || coalesce(sql, '')) FROM sqlite_schema ORDER BY name" | sha256sum | cut -c1-64)
case $tables$handed in
97ad7eacc307b5df934f5def6ffcb8d15c93aefe68be92153b27b4272c0ccd20 | 4af10b8317874b5cecd895d221192c988dfb64bf539aecd3460007aced62cef8handed) ;;
*) fault "the file is damaged, or holds other tables than a book: nothing in it was looked at"; exit 1 ;;
esac
[ "$(of_book book "PRAGMA integrity_check(1)")" = ok ] || fault "the file is damaged"

# Every row once, past the indexes, which can say something else; what is no JSON becomes an empty object, so that the rest is still read.
# A hand-over file has no notes and no columns that repeat a body, and its photographs are rows.
columns='job, dev, seq, lam, id' photos=$book.photos
others="CREATE TABLE local AS SELECT k, v FROM book.local NOT INDEXED;
CREATE TABLE job AS SELECT job, ref, entries FROM book.job NOT INDEXED;
CREATE TABLE head AS SELECT job, dev, lower(hex(hash)) AS hash, seq, lam FROM book.head;"
if [ "$handed" ]; then
    columns="b ->> 'job' AS job, b ->> 'dev' AS dev, b ->> 'seq' AS seq, b ->> 'lam' AS lam, b ->> 'id' AS id"
    photos=$work/photos && mkdir photos
    others="CREATE TABLE local (k, v);
CREATE TABLE photo AS SELECT rowid AS n, lower(hex(sha256)) AS name FROM book.photo NOT INDEXED;
CREATE TABLE seal AS SELECT CASE WHEN json_valid(CAST(body AS TEXT)) THEN CAST(body AS TEXT) ELSE '{}' END AS b, body FROM book.seal;
SELECT writefile('photo.' || rowid, data) FROM book.photo NOT INDEXED;
SELECT writefile('seal.body', body), writefile('seal.sig', sig) FROM book.seal;"
fi
of_book rows "ATTACH 'book' AS book;
CREATE TABLE e AS SELECT n, lower(hex(hash)) AS hash, $columns, b, body FROM (SELECT rowid AS n, *,
    CASE WHEN json_valid(CAST(body AS TEXT)) THEN CAST(body AS TEXT) ELSE '{}' END AS b FROM book.entry NOT INDEXED);
CREATE TABLE p AS SELECT rowid AS n, dev, length(spki) = 44 AND hex(substr(spki, 1, 12)) = '302A300506032B6570032100' AND length(dev) = 32
    AND length(CAST(dev AS BLOB)) = 32 AND dev NOT GLOB '*[^0-9a-f]*' AS good FROM book.pubkey NOT INDEXED;
CREATE TABLE s AS SELECT rowid AS n, lower(hex(cid)) AS cid, length(salt) = 32 AS good FROM book.secret NOT INDEXED;
CREATE TABLE t AS SELECT rowid AS n, lower(hex(hash)) AS hash FROM book.text NOT INDEXED;
$others
SELECT writefile('body.' || rowid, body), writefile('sig.' || rowid, sig) FROM book.entry NOT INDEXED;
SELECT writefile('key.' || rowid, spki) FROM book.pubkey NOT INDEXED;
SELECT writefile('secret.' || rowid, salt || val) FROM book.secret NOT INDEXED;
SELECT writefile('text.' || rowid, body) FROM book.text NOT INDEXED;" >written || { fault "the file is damaged"; exit 1; }

# The points of small order in every way they can be written (the list that libsodium keeps, from memory; each was worked out again):
# openssl takes a signature that anybody can make under such a key.
zeros=$(printf %060d 0) && effs=$(echo "$zeros" | tr 0 f)
small() {
    case $1 in
    0[01]"$zeros"[08]0 | e[cde]"$effs"[7f]f | 26e8958fc2b227b045c3f489f2ef98f0d5dfac05d3c63339b13802886d53fc[08]5 | \
        c7176a703d4dd84fba3c0b760d10670f2a2053fa2c39ccc64ec7fd7792ac03[7f]a) ;;
    *) return 1 ;;
    esac
}
signed() { # KEY SIGNATURE TEXT
    openssl pkeyutl -verify -pubin -keyform DER -inkey "$1" -rawin -in "$3" -sigfile "$2" >said 2>&1 || return 1
    ! small "$(tail -c 32 "$1" | xxd -p -c 32)" && ! small "$(head -c 32 "$2" | xxd -p -c 32)"
}

ask "SELECT n, CASE WHEN good THEN dev ELSE '?' END FROM p" | tr '|' ' ' | while read -r n dev; do
    [ "$(sum "key.$n" | cut -c1-32)" = "$dev" ] || fault "device $dev: the key is not its own"
done
ask "SELECT e.n, e.hash, coalesce(p.n, 'none') FROM e LEFT JOIN p ON p.dev = e.dev AND p.good" | tr '|' ' ' | while read -r n name key; do
    [ "$(sum "body.$n")" = "$name" ] || fault "$name: its name does not belong to its bytes"
    signed "key.$key" "sig.$n" "body.$n" || fault "$name: the signature does not hold"
    case $(head -c 9 "body.$n") in '{"akey":"') ;; *) continue ;; esac # a person signed, too
    head -c 73 "body.$n" | tail -c 64 | sed 's/^/302a300506032b6570032100/' | xxd -r -p >own.key
    head -c 211 "body.$n" | tail -c 128 | xxd -r -p >own.sig
    { echo undersheet.asig.1 && head -c 75 "body.$n" && tail -c +214 "body.$n"; } >own.text
    signed own.key own.sig own.text || fault "$name: the person's own signature does not hold"
done
ask "SELECT n, cid, good FROM s" | tr '|' ' ' | while read -r n name good; do
    [ "$good $(sum "secret.$n")" = "1 $name" ] || fault "$name: a personal value is not the one that was recorded"
done
[ ! "$handed" ] || ask "SELECT n, CASE WHEN length(name) = 64 THEN name ELSE '?' END FROM photo" | tr '|' ' ' | while read -r n name; do
    [ "$(sum "photo.$n")" = "$name" ] && mv "photo.$n" "photos/$name" || fault "$name: a photograph is not the one that was recorded"
done
ask "SELECT n, hash FROM t" | tr '|' ' ' | while read -r n name; do
    [ "$(sum "text.$n")" = "$name" ] || fault "$name: a method or catalogue is not the one that was kept"
done

# Form, columns, order and chains, from the bodies alone.
ask "
CREATE TABLE j AS SELECT hash, job, dev, seq, lam, id, b ->> 'prev' AS prev, b ->> 'dprev' AS dprev, b ->> 'dctr' AS dctr,
  b -> 'seen' AS seen, (job, dev, seq, lam, id) IS (b ->> 'job', b ->> 'dev', b ->> 'seq', b ->> 'lam', b ->> 'id') AS same FROM e;
CREATE INDEX jh ON j (hash);
CREATE INDEX jp ON j (prev);
CREATE TABLE before AS SELECT j.hash, j.job, prev AS other FROM j WHERE prev IS NOT NULL
  UNION ALL SELECT j.hash, j.job, s.value FROM j, json_each(j.seen) s;
CREATE INDEX bh ON before (hash);
CREATE TABLE own AS SELECT substr(k, 4) AS dev, substr(v, -64) AS last FROM local WHERE k LIKE 'at/%';
SELECT hash || ': it is not in the strict form' FROM e WHERE CAST(json(b) AS BLOB) IS NOT body
  OR (json_type(b, '\$.seq'), json_type(b, '\$.lam'), json_type(b, '\$.dctr')) IS NOT ('integer', 'integer', 'integer')
  OR EXISTS (SELECT 1 FROM (SELECT '\$' AS at UNION SELECT '\$.data') WHERE (SELECT group_concat(key) FROM json_each(b, at))
    IS NOT (SELECT group_concat(key) FROM (SELECT DISTINCT key FROM json_each(b, at) ORDER BY key)));
SELECT hash || ': the columns say something else' FROM j WHERE NOT same;
SELECT hash || ': the entry before it is missing' FROM j WHERE (seq > 1) <> (prev IS NOT NULL) OR prev IS NOT NULL
  AND NOT EXISTS (SELECT 1 FROM j p WHERE p.hash = j.prev AND p.job = j.job AND p.dev = j.dev AND p.seq = j.seq - 1);
SELECT hash || ': what it has seen is missing' FROM before b WHERE NOT EXISTS (SELECT 1 FROM j p WHERE p.hash = b.other AND p.job = b.job);
SELECT hash || ': its lam is wrong' FROM j WHERE lam <>
  1 + coalesce((SELECT max(p.lam) FROM before b JOIN j p ON p.hash = b.other WHERE b.hash = j.hash), 0);
SELECT min(hash) || ': the device was copied, two of number ' || seq FROM j GROUP BY job, dev, seq HAVING count(*) > 1;
SELECT min(hash) || ': the device was copied, two of number ' || dctr || ' of all jobs' FROM j GROUP BY dev, dctr HAVING count(*) > 1;
SELECT min(hash) || ': the device was copied, two behind one entry' FROM j WHERE dprev IS NOT NULL GROUP BY dev, dprev HAVING count(*) > 1;
SELECT hash || ': the device wrote something before it that is missing' FROM j WHERE (dctr > 1) <> (dprev IS NOT NULL) OR dprev IS NOT NULL
  AND (dev IN (SELECT dev FROM own) OR dprev IN (SELECT hash FROM j))
  AND NOT EXISTS (SELECT 1 FROM j p WHERE p.hash = j.dprev AND p.dev = j.dev AND p.dctr = j.dctr - 1);
SELECT 'the last entry of device ' || dev || ' is missing' FROM own WHERE last NOT IN (SELECT hash FROM j);
SELECT hash || ': a text it began with is missing (' || k || ')' FROM e, (SELECT 'method' AS k UNION SELECT 'kinds')
  WHERE b ->> 'kind' = 'open' AND b -> 'data' ->> k NOT IN (SELECT hash FROM t);
" >chains
# What the book notes about them.
[ "$handed" ] || ask "
CREATE TABLE tip AS SELECT job, dev, hash, seq, lam FROM j WHERE NOT EXISTS (SELECT 1 FROM j n WHERE n.prev = j.hash AND n.job = j.job);
SELECT 'what the book notes about where its jobs have got to is not so' WHERE EXISTS (SELECT * FROM tip EXCEPT SELECT * FROM head)
  OR EXISTS (SELECT * FROM head EXCEPT SELECT * FROM tip);
CREATE TABLE count AS SELECT job, count(*) AS entries FROM j GROUP BY job;
SELECT 'what the book notes about how many entries its jobs have is not so' WHERE EXISTS (SELECT * FROM count EXCEPT SELECT job, entries FROM job)
  OR EXISTS (SELECT job, entries FROM job EXCEPT SELECT * FROM count);
CREATE TABLE ref AS SELECT job, b ->> '\$.data.ref' AS ref FROM e WHERE b ->> 'kind' = 'open' AND ref IS NOT NULL;
SELECT 'what the book notes about what its jobs are called is not so' WHERE EXISTS (SELECT 1 FROM job
  WHERE (job, ref) NOT IN (SELECT * FROM ref) AND (ref <> '' OR job IN (SELECT job FROM ref)));
" >>chains
while read -r line; do fault "$line"; done <chains

# A job erases what its own entries name, and nothing of another job; what every job that names it has erased is gone, and every
# other photograph is beside the book. Values may be missing: a book can be handed on without them.
ask "
CREATE TABLE named AS SELECT job, 'value' AS what, d.value ->> 'cid' AS name FROM e, json_each(b, '\$.data') d
    WHERE d.type = 'object' AND d.value = json_object('cid', d.value ->> 'cid')
  UNION SELECT job, 'photo', b ->> '\$.data.sha256' FROM e WHERE b ->> 'kind' = 'photo' AND b ->> '\$.data.sha256' IS NOT NULL;
CREATE TABLE gone AS SELECT job, 'value' AS what, g.value AS name FROM e, json_each(b, '\$.data.values') g WHERE b ->> 'kind' = 'erase' AND g.type = 'text'
  UNION SELECT job, 'photo', g.value FROM e, json_each(b, '\$.data.photos') g WHERE b ->> 'kind' = 'erase' AND g.type = 'text';
SELECT what || CASE WHEN min((job, what, name) IN (SELECT * FROM gone)) THEN '-gone ' ELSE ' ' END || CASE WHEN length(name) = 64
    AND length(CAST(name AS BLOB)) = 64 AND name NOT GLOB '*[^0-9a-f]*' THEN name || ' ' || (name IN (SELECT cid FROM s)) ELSE '? 0' END
  FROM named GROUP BY what, name;" >personal
while read -r what name held; do
    file=$photos/$name
    case $what/$name in
    */'?') fault "an entry names a $what by what is no name" ;;
    value-gone/*) [ "$held" = 0 ] || fault "$name: a personal value was erased and is still here" ;;
    photo-gone/*) [ ! -e "$file" ] || fault "$name: a photograph was erased and is still here" ;;
    photo/*) [ -f "$file" ] && [ "$(wc -c <"$file")" -le 33554432 ] && [ "$(sum "$file")" = "$name" ] ||
        fault "$name: the photograph is not there, or not the one that was recorded" ;;
    esac
done <personal
for file in "$photos"/*; do
    [ -f "$file" ] || [ ! -e "$file" ] || fault "something beside the photographs is no plain file"
done

ask "SELECT hash FROM e ORDER BY job, lam, dev, seq, hash" | xxd -r -p >digest

# What was handed over belongs to entries, and is what it was sealed as; files of the first versions do not say what is no entry.
if [ "$handed" ]; then
    ask "SELECT cid || ': a personal value belongs to no entry' FROM s WHERE ('value', cid) NOT IN (SELECT what, name FROM named)
      UNION ALL SELECT name || ': a photograph belongs to no entry' FROM photo WHERE ('photo', name) NOT IN (SELECT what, name FROM named)" >strays
    while read -r line; do fault "$line"; done <strays
    ask "SELECT 'photo ' || name FROM photo UNION ALL SELECT 'pubkey ' || dev FROM p UNION ALL SELECT 'secret ' || cid FROM s
      UNION ALL SELECT 'text ' || hash FROM t ORDER BY 1" >rest
    signed "key.$(ask "SELECT coalesce(min(p.n), 'none') FROM seal JOIN p ON p.dev = b ->> 'dev' AND p.good")" seal.sig seal.body ||
        fault "the seal's signature does not hold"
    fits=$(ask "SELECT b ->> 'v' IS 'undersheet.seal.1' AND CAST(json(b) AS BLOB) IS body AND (b ->> 'digest') IS '$(sum digest)'
      AND (b ->> 'entries') IS (SELECT count(*) FROM e) AND (b ->> 'photos') IS (SELECT count(*) FROM photo)
      AND coalesce(b ->> 'rest', '$(sum rest)') IS '$(sum rest)' FROM seal")
    [ "$fits" = 1 ] || fault "the file holds something else than its seal says"
fi
echo "entries: $(ask 'SELECT count(*) FROM e')"
echo "digest:  $(sum digest)"
[ ! -e faults ]

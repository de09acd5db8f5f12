#!/bin/sh
# Checks a book without our program: sh docs/verify.sh demo.book
# Needs sqlite3, openssl (3), sha256sum and xxd. Reads a copy, says every fault, prints the digest; ends with 1 where there is one.
# What is checked, and what no check of the file can show, is in docs/entry_format.md under "Checking".
set -eu
book=${1:?which book? sh docs/verify.sh FILE}
work=$(mktemp -d) && trap 'rm -rf "$work"' EXIT
cp "$book" "$work/book" && cp "$book-journal" "$work/book-journal" 2>/dev/null || true
ask() { sqlite3 "$work/book" "$1"; }
sum() { sha256sum "$1" | cut -c1-64; }
fault() { echo "$1"; echo fault >>"$work/faults"; }

# Every row as files: body, signature, key, salt and value.
ask "SELECT writefile('$work/'||hex(hash)||'.body', body), writefile('$work/'||hex(hash)||'.sig', sig) FROM entry;
     SELECT writefile('$work/'||dev||'.der', spki) FROM pubkey;
     SELECT writefile('$work/'||hex(cid)||'.salt', salt), writefile('$work/'||hex(cid)||'.value', val) FROM secret;" >"$work/written" || fault "the file is damaged"

ask "SELECT dev FROM pubkey" | while read -r dev; do
    [ "$(sum "$work/$dev.der" | cut -c1-32)" = "$dev" ] || fault "device $dev: the key is not its own"
done
ask "SELECT lower(hex(hash)), hex(hash), dev FROM entry" | tr '|' ' ' | while read -r name file dev; do
    [ "$(sum "$work/$file.body")" = "$name" ] || fault "$name: its name does not belong to its bytes"
    openssl pkeyutl -verify -pubin -keyform DER -inkey "$work/$dev.der" -rawin -in "$work/$file.body" \
        -sigfile "$work/$file.sig" >/dev/null 2>&1 || fault "$name: the signature does not hold"
    case $(head -c 9 "$work/$file.body") in '{"akey":"') ;; *) continue ;; esac # a person signed, too
    head -c 73 "$work/$file.body" | tail -c 64 | sed 's/^/302a300506032b6570032100/' | xxd -r -p >"$work/own.der"
    head -c 211 "$work/$file.body" | tail -c 128 | xxd -r -p >"$work/own.sig"
    { echo undersheet.asig.1 && head -c 75 "$work/$file.body" && tail -c +214 "$work/$file.body"; } >"$work/own.text"
    openssl pkeyutl -verify -pubin -keyform DER -inkey "$work/own.der" -rawin -in "$work/own.text" \
        -sigfile "$work/own.sig" >/dev/null 2>&1 || fault "$name: the person's own signature does not hold"
done
ask "SELECT lower(hex(cid)), hex(cid) FROM secret" | tr '|' ' ' | while read -r name file; do
    cat "$work/$file.salt" "$work/$file.value" >"$work/secret"
    [ "$(sum "$work/secret")" = "$name" ] || fault "$name: a personal value is not the one that was recorded"
done

# Columns, order and chains, from the bodies alone.
ask "
CREATE TEMP TABLE e AS SELECT lower(hex(hash)) AS hash, job, dev, seq, lam, id, CAST(body AS TEXT) AS b FROM entry;
CREATE TEMP TABLE j AS SELECT hash, job, dev, seq, lam, id, b ->> 'prev' AS prev, b ->> 'dprev' AS dprev, b ->> 'dctr' AS dctr,
  b -> 'seen' AS seen, (job, dev, seq, lam, id) = (b ->> 'job', b ->> 'dev', b ->> 'seq', b ->> 'lam', b ->> 'id') AS same FROM e;
CREATE INDEX temp.jh ON j (hash);
CREATE TEMP TABLE before AS SELECT j.hash, j.job, prev AS other FROM j WHERE prev IS NOT NULL
  UNION ALL SELECT j.hash, j.job, s.value FROM j, json_each(j.seen) s;
SELECT hash || ': the columns say something else' FROM j WHERE NOT same;
SELECT hash || ': the entry before it is missing' FROM j WHERE (seq > 1) <> (prev IS NOT NULL) OR prev IS NOT NULL
  AND NOT EXISTS (SELECT 1 FROM j p WHERE p.hash = j.prev AND p.job = j.job AND p.dev = j.dev AND p.seq = j.seq - 1);
SELECT hash || ': what it has seen is missing' FROM before b WHERE NOT EXISTS (SELECT 1 FROM j p WHERE p.hash = b.other AND p.job = b.job);
SELECT hash || ': its lam is wrong' FROM j WHERE lam <>
  1 + coalesce((SELECT max(p.lam) FROM before b JOIN j p ON p.hash = b.other WHERE b.hash = j.hash), 0);
SELECT min(hash) || ': the device was copied, two of number ' || seq FROM j GROUP BY job, dev, seq HAVING count(*) > 1;
SELECT hash || ': the device wrote something before it that is missing' FROM j WHERE (dctr > 1) <> (dprev IS NOT NULL) OR dprev IS NOT NULL
  AND dev IN (SELECT substr(k, 4) FROM local WHERE k LIKE 'at/%')
  AND NOT EXISTS (SELECT 1 FROM j p WHERE p.hash = j.dprev AND p.dev = j.dev AND p.dctr = j.dctr - 1);
SELECT 'the last entry of device ' || substr(k, 4) || ' is missing' FROM local WHERE k LIKE 'at/%' AND substr(v, -64) NOT IN (SELECT hash FROM j);
" >"$work/chains" || fault "the file is damaged"
while read -r line; do fault "$line"; done <"$work/chains"

# What was erased is gone; every other photograph is beside the book.
ask "CREATE TEMP TABLE gone AS SELECT g.value AS name FROM entry, json_each(CAST(body AS TEXT), '\$.data.values') g WHERE CAST(body AS TEXT) ->> 'kind' = 'erase'
  UNION SELECT g.value FROM entry, json_each(CAST(body AS TEXT), '\$.data.photos') g WHERE CAST(body AS TEXT) ->> 'kind' = 'erase';
SELECT 'gone ' || name FROM gone; SELECT 'held ' || lower(hex(cid)) FROM secret WHERE lower(hex(cid)) IN (SELECT name FROM gone);
SELECT DISTINCT 'photo ' || (CAST(body AS TEXT) ->> '\$.data.sha256') AS p FROM entry WHERE CAST(body AS TEXT) ->> 'kind' = 'photo'
  AND CAST(body AS TEXT) ->> '\$.data.sha256' NOT IN (SELECT name FROM gone);" >"$work/personal"
grep '^held' "$work/personal" | while read -r _ name; do fault "$name: a personal value was erased and is still here"; done
grep '^gone' "$work/personal" | while read -r _ name; do
    [ ! -e "$book.photos/$name" ] || fault "$name: a photograph was erased and is still here"
done
grep '^photo' "$work/personal" | while read -r _ name; do
    [ "$(sum "$book.photos/$name" 2>/dev/null)" = "$name" ] || fault "$name: the photograph is not there, or not the one that was recorded"
done

ask "SELECT lower(hex(hash)) FROM entry ORDER BY job, lam, dev, seq, hash" | xxd -r -p >"$work/digest"
echo "entries: $(ask 'SELECT count(*) FROM entry')"
echo "digest:  $(sum "$work/digest")"
[ ! -e "$work/faults" ]

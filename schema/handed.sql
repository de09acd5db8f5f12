-- A hand-over file: the evidence of one job or of a whole book, with its photographs and a seal. Plain SQLite, no archive.
-- Taking one compares what stands here line by line with what the file says of itself: nothing else may be in it.
PRAGMA application_id = 1431521352; -- "USHH"
PRAGMA user_version = 1;

CREATE TABLE entry (hash BLOB NOT NULL PRIMARY KEY, body BLOB NOT NULL, sig BLOB NOT NULL) STRICT;
CREATE TABLE pubkey (dev TEXT NOT NULL PRIMARY KEY, spki BLOB NOT NULL) STRICT;
CREATE TABLE secret (cid BLOB NOT NULL PRIMARY KEY, salt BLOB NOT NULL, val BLOB NOT NULL) STRICT;
CREATE TABLE text (hash BLOB NOT NULL PRIMARY KEY, body BLOB NOT NULL) STRICT;
CREATE TABLE photo (sha256 BLOB NOT NULL PRIMARY KEY, data BLOB NOT NULL) STRICT;

-- One row. body, in the strict form: v "undersheet.seal.1", dev, clock, digest and entries (of this file), photos, rest (over
-- the names of what is no entry), and office (the journal of the firm, when the whole book was handed). sig is Ed25519 by dev
-- over body.
CREATE TABLE seal (one INTEGER NOT NULL PRIMARY KEY CHECK (one = 1), body BLOB NOT NULL, sig BLOB NOT NULL) STRICT;

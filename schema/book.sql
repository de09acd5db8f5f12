-- The book: one SQLite file. An applied schema is never edited; a later one is added behind it with the next user_version.
-- What is evidence: entry, pubkey, secret, text. What is this device's alone: local. What only makes look-ups quick and can
-- be made again from the entries: job, head.
PRAGMA application_id = 1431521364; -- "USHT"
PRAGMA user_version = 1;

-- The only truth. body holds the exact bytes that were signed; the columns before it repeat what stands in it, for the
-- indexes, and are checked against it. Not unique on (job, dev, seq): a copied device makes two of one number, and both
-- have to be kept. No program of ours ever updates or deletes a row here.
CREATE TABLE entry (
    hash BLOB NOT NULL PRIMARY KEY, -- SHA-256 of body
    job  TEXT NOT NULL,
    dev  TEXT NOT NULL,
    seq  INTEGER NOT NULL,
    lam  INTEGER NOT NULL,
    id   TEXT NOT NULL,
    body BLOB NOT NULL,
    sig  BLOB NOT NULL              -- Ed25519 by the device over body
) STRICT;
CREATE INDEX entry_order ON entry (job, lam, dev, seq, hash);
CREATE INDEX entry_id ON entry (id);

-- The public keys of the devices. dev is made from spki, so nobody can put another key under a name.
CREATE TABLE pubkey (
    dev  TEXT NOT NULL PRIMARY KEY,
    spki BLOB NOT NULL -- SubjectPublicKeyInfo, DER
) STRICT;

-- Personal values: SHA-256(salt, val) is the cid that stands in a body. Erasing a person deletes rows here, nothing else.
CREATE TABLE secret (
    cid  BLOB NOT NULL PRIMARY KEY,
    salt BLOB NOT NULL,
    val  BLOB NOT NULL
) STRICT;

-- Methods and catalogues that jobs are pinned to, by SHA-256.
CREATE TABLE text (
    hash BLOB NOT NULL PRIMARY KEY,
    body BLOB NOT NULL
) STRICT;

-- Never handed over: the office journal's job, the device and its install nonce, its last entry, the job last worked on.
CREATE TABLE local (
    k TEXT NOT NULL PRIMARY KEY,
    v TEXT NOT NULL
) STRICT;

-- One row a job, so that listing jobs does not read them.
CREATE TABLE job (
    job       TEXT NOT NULL PRIMARY KEY,
    ref       TEXT NOT NULL, -- field "ref" of its entry of kind "open"; '' before there is one
    entries   INTEGER NOT NULL,
    last_when TEXT NOT NULL
) STRICT;

-- The entries that no later entry of the same device stands on: where each device has got to in a job.
CREATE TABLE head (
    job  TEXT NOT NULL,
    dev  TEXT NOT NULL,
    hash BLOB NOT NULL,
    seq  INTEGER NOT NULL,
    lam  INTEGER NOT NULL,
    PRIMARY KEY (job, dev, hash)
) STRICT, WITHOUT ROWID;

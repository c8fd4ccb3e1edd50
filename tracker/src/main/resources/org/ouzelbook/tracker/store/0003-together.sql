-- What lets several people's books be put together. These rows speak of records in any table by their keys, and outlive them.

-- Whose book a record came from; a record of this book's own keeper has no row. The key is the record's.
CREATE TABLE record_owner (
    id UUID PRIMARY KEY,
    table_name VARCHAR(40) NOT NULL,
    owner VARCHAR(200) NOT NULL CHECK (owner <> ''),
    step BIGINT NOT NULL
);

-- The key that a record of this book has in another book.
CREATE TABLE other_key (
    id UUID PRIMARY KEY,
    table_name VARCHAR(40) NOT NULL,
    record_id UUID NOT NULL,
    step BIGINT NOT NULL
);

-- A state of a record in another book that is known here. state_here is what it became in this book; nothing if it was
-- superseded, or if a person decided against it.
CREATE TABLE known_state (
    id UUID PRIMARY KEY,
    table_name VARCHAR(40) NOT NULL,
    record_id UUID NOT NULL,
    state BIGINT NOT NULL,
    state_here BIGINT,
    step BIGINT NOT NULL
);

-- Two records of different people, and whether a person decided that they are of one bird, or one visit.
CREATE TABLE same_or_not (
    id UUID PRIMARY KEY,
    table_name VARCHAR(40) NOT NULL,
    one_id UUID NOT NULL,
    other_id UUID NOT NULL,
    is_same BOOLEAN NOT NULL,
    decided_by VARCHAR NOT NULL,
    decided_on DATE NOT NULL,
    step BIGINT NOT NULL,
    CHECK (one_id < other_id)
);

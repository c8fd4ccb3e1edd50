-- The first book. Standard SQL that H2 and PostgreSQL both run; statements end with a semicolon at the end of a line.
-- Every table of records ends with the same five columns: fingerprint (of what the record says), source_id and source_row
-- (the file and row it was imported from), and step (the step of the history that left the row as it is).

CREATE TABLE book (
    application VARCHAR(40) NOT NULL,
    schema_version INTEGER NOT NULL
);

-- History: one step for each change that somebody made, and one row_change for each row that it touched.

CREATE TABLE step (
    nr BIGINT PRIMARY KEY,
    made_at TIMESTAMP(6) WITH TIME ZONE NOT NULL,
    made_by VARCHAR(200) NOT NULL,
    what VARCHAR NOT NULL,
    undoes BIGINT REFERENCES step (nr),
    first_change BIGINT NOT NULL,
    rows_added BIGINT NOT NULL CHECK (rows_added >= 0),
    rows_replaced BIGINT NOT NULL CHECK (rows_replaced >= 0),
    rows_removed BIGINT NOT NULL CHECK (rows_removed >= 0),
    CHECK (undoes < nr)
);

CREATE TABLE row_change (
    nr BIGINT PRIMARY KEY,
    table_name VARCHAR(40) NOT NULL,
    row_id UUID NOT NULL,
    step_before BIGINT,
    step_after BIGINT,
    row_before VARCHAR,
    CHECK (step_before IS NOT NULL OR step_after IS NOT NULL),
    CHECK ((step_before IS NULL) = (row_before IS NULL))
);

CREATE TABLE content_sum (
    table_name VARCHAR(40) PRIMARY KEY,
    row_count BIGINT NOT NULL CHECK (row_count >= 0),
    row_sum BIGINT NOT NULL
);

-- Records.

CREATE TABLE imported_file (
    id UUID PRIMARY KEY,
    name VARCHAR NOT NULL CHECK (name <> ''),
    sha256 CHAR(64) NOT NULL UNIQUE,
    fingerprint BIGINT NOT NULL,
    source_id UUID REFERENCES imported_file (id),
    source_row INTEGER CHECK (source_row >= 1),
    step BIGINT NOT NULL
);

CREATE TABLE river (
    id UUID PRIMARY KEY,
    name VARCHAR NOT NULL UNIQUE CHECK (name <> ''),
    mouth_river_id UUID REFERENCES river (id),
    mouth_chainage_m DOUBLE PRECISION CHECK (mouth_chainage_m >= 0),
    fingerprint BIGINT NOT NULL,
    source_id UUID REFERENCES imported_file (id),
    source_row INTEGER CHECK (source_row >= 1),
    step BIGINT NOT NULL,
    CHECK (mouth_river_id <> id),
    CHECK ((mouth_river_id IS NULL) = (mouth_chainage_m IS NULL))
);

-- points: "longitude latitude, longitude latitude, …" in degrees, going upstream.
CREATE TABLE river_line (
    id UUID PRIMARY KEY,
    river_id UUID NOT NULL REFERENCES river (id),
    version INTEGER NOT NULL CHECK (version >= 1),
    lower_end_m DOUBLE PRECISION NOT NULL CHECK (lower_end_m >= 0),
    points VARCHAR NOT NULL,
    source VARCHAR NOT NULL,
    fingerprint BIGINT NOT NULL,
    source_id UUID REFERENCES imported_file (id),
    source_row INTEGER CHECK (source_row >= 1),
    step BIGINT NOT NULL,
    UNIQUE (river_id, version)
);

CREATE TABLE landmark (
    id UUID PRIMARY KEY,
    name VARCHAR NOT NULL CHECK (name <> ''),
    kind VARCHAR(20) NOT NULL CHECK (kind IN ('BRIDGE', 'WEIR', 'ROCK', 'CONFLUENCE', 'WALL', 'FALL', 'OTHER')),
    river_id UUID NOT NULL REFERENCES river (id),
    chainage_m DOUBLE PRECISION NOT NULL CHECK (chainage_m >= 0),
    bank VARCHAR(20) NOT NULL CHECK (bank IN ('LEFT', 'RIGHT', 'CHANNEL', 'UNKNOWN')),
    uncertainty_m DOUBLE PRECISION NOT NULL CHECK (uncertainty_m > 0),
    line_version INTEGER NOT NULL CHECK (line_version >= 1),
    aliases VARCHAR ARRAY NOT NULL,
    nest_site BOOLEAN NOT NULL,
    fingerprint BIGINT NOT NULL,
    source_id UUID REFERENCES imported_file (id),
    source_row INTEGER CHECK (source_row >= 1),
    step BIGINT NOT NULL
);
CREATE INDEX landmark_fingerprint ON landmark (fingerprint);

CREATE TABLE reach (
    id UUID PRIMARY KEY,
    name VARCHAR NOT NULL CHECK (name <> ''),
    river_id UUID NOT NULL REFERENCES river (id),
    lower_m DOUBLE PRECISION NOT NULL CHECK (lower_m >= 0),
    upper_m DOUBLE PRECISION NOT NULL,
    fingerprint BIGINT NOT NULL,
    source_id UUID REFERENCES imported_file (id),
    source_row INTEGER CHECK (source_row >= 1),
    step BIGINT NOT NULL,
    UNIQUE (river_id, name),
    CHECK (upper_m > lower_m)
);

CREATE TABLE visit (
    id UUID PRIMARY KEY,
    label VARCHAR NOT NULL UNIQUE CHECK (label <> ''),
    river_id UUID NOT NULL REFERENCES river (id),
    walked_on DATE NOT NULL,
    started_at TIME(0),
    ended_at TIME(0),
    walked_lower_m DOUBLE PRECISION CHECK (walked_lower_m >= 0),
    walked_upper_m DOUBLE PRECISION,
    direction VARCHAR(20) CHECK (direction IN ('UPSTREAM', 'DOWNSTREAM')),
    travel_mode VARCHAR(20) CHECK (travel_mode IN ('FOOT', 'CANOE')),
    observers VARCHAR ARRAY NOT NULL,
    looked_for VARCHAR ARRAY NOT NULL,
    water_level VARCHAR NOT NULL,
    weather VARCHAR NOT NULL,
    effective BOOLEAN NOT NULL,
    note VARCHAR NOT NULL,
    fingerprint BIGINT NOT NULL,
    source_id UUID REFERENCES imported_file (id),
    source_row INTEGER CHECK (source_row >= 1),
    step BIGINT NOT NULL,
    CHECK (walked_upper_m >= walked_lower_m),
    CHECK ((walked_lower_m IS NULL) = (walked_upper_m IS NULL))
);
CREATE INDEX visit_walked_on ON visit (walked_on);

CREATE TABLE sighting (
    id UUID PRIMARY KEY,
    label VARCHAR,
    visit_id UUID REFERENCES visit (id),
    seen_on DATE NOT NULL,
    seen_at TIME(0),
    river_id UUID NOT NULL REFERENCES river (id),
    chainage_m DOUBLE PRECISION NOT NULL CHECK (chainage_m >= 0),
    bank VARCHAR(20) NOT NULL CHECK (bank IN ('LEFT', 'RIGHT', 'CHANNEL', 'UNKNOWN')),
    uncertainty_m DOUBLE PRECISION NOT NULL CHECK (uncertainty_m > 0),
    line_version INTEGER NOT NULL CHECK (line_version >= 1),
    species VARCHAR(100) NOT NULL,
    individuals INTEGER NOT NULL CHECK (individuals >= 1),
    age VARCHAR(20) NOT NULL CHECK (age IN ('ADULT', 'DEPENDENT_JUVENILE', 'INDEPENDENT_JUVENILE', 'JUVENILE',
        'FIRST_YEAR', 'UNKNOWN')),
    sex VARCHAR(20) NOT NULL CHECK (sex IN ('FEMALE', 'MALE', 'UNKNOWN')),
    activities VARCHAR(20) ARRAY NOT NULL,
    breeding_code INTEGER CHECK (breeding_code BETWEEN 0 AND 16),
    rings VARCHAR NOT NULL,
    flew_to_m DOUBLE PRECISION CHECK (flew_to_m >= 0),
    turned_back BOOLEAN NOT NULL,
    observer VARCHAR NOT NULL,
    note VARCHAR NOT NULL,
    fingerprint BIGINT NOT NULL,
    source_id UUID REFERENCES imported_file (id),
    source_row INTEGER CHECK (source_row >= 1),
    step BIGINT NOT NULL,
    CHECK (flew_to_m IS NOT NULL OR NOT turned_back)
);
-- The fingerprint stands behind species and day: an index of fingerprints alone would scatter the rows of a long file.
CREATE INDEX sighting_species ON sighting (species, seen_on, fingerprint);
CREATE INDEX sighting_label ON sighting (label);

-- Two sightings that were certainly different birds at the same time: one row for both, so the link is always mutual.
CREATE TABLE simultaneous (
    id UUID PRIMARY KEY,
    one_id UUID NOT NULL REFERENCES sighting (id),
    other_id UUID NOT NULL REFERENCES sighting (id),
    step BIGINT NOT NULL,
    UNIQUE (one_id, other_id),
    CHECK (one_id < other_id)
);

CREATE TABLE nest (
    id UUID PRIMARY KEY,
    label VARCHAR NOT NULL UNIQUE CHECK (label <> ''),
    river_id UUID NOT NULL REFERENCES river (id),
    chainage_m DOUBLE PRECISION NOT NULL CHECK (chainage_m >= 0),
    bank VARCHAR(20) NOT NULL CHECK (bank IN ('LEFT', 'RIGHT', 'CHANNEL', 'UNKNOWN')),
    uncertainty_m DOUBLE PRECISION NOT NULL CHECK (uncertainty_m > 0),
    line_version INTEGER NOT NULL CHECK (line_version >= 1),
    species VARCHAR(100) NOT NULL,
    site VARCHAR(20) NOT NULL CHECK (site IN ('BRIDGE', 'WEIR', 'ROCK', 'WALL', 'BANK', 'FALL', 'BOX', 'TREE', 'OTHER')),
    height_m DOUBLE PRECISION,
    found_on DATE,
    note VARCHAR NOT NULL,
    fingerprint BIGINT NOT NULL,
    source_id UUID REFERENCES imported_file (id),
    source_row INTEGER CHECK (source_row >= 1),
    step BIGINT NOT NULL
);

CREATE TABLE nest_check (
    id UUID PRIMARY KEY,
    nest_id UUID NOT NULL REFERENCES nest (id),
    checked_on DATE NOT NULL,
    checked_at TIME(0),
    stage VARCHAR(20) NOT NULL CHECK (stage IN ('BUILDING', 'COMPLETE', 'EGGS', 'YOUNG', 'EMPTY', 'UNKNOWN')),
    stage_text VARCHAR NOT NULL,
    eggs INTEGER CHECK (eggs >= 0),
    young INTEGER CHECK (young >= 0),
    adults INTEGER CHECK (adults >= 0),
    outcome VARCHAR(20) CHECK (outcome IN ('SUCCESS', 'FAILURE', 'UNKNOWN')),
    note VARCHAR NOT NULL,
    fingerprint BIGINT NOT NULL,
    source_id UUID REFERENCES imported_file (id),
    source_row INTEGER CHECK (source_row >= 1),
    step BIGINT NOT NULL
);
CREATE INDEX nest_check_fingerprint ON nest_check (fingerprint);

CREATE TABLE ringed_bird (
    id UUID PRIMARY KEY,
    label VARCHAR NOT NULL UNIQUE CHECK (label <> ''),
    left_upper VARCHAR NOT NULL,
    left_lower VARCHAR NOT NULL,
    right_upper VARCHAR NOT NULL,
    right_lower VARCHAR NOT NULL,
    ring VARCHAR NOT NULL,
    sex VARCHAR(20) NOT NULL CHECK (sex IN ('FEMALE', 'MALE', 'UNKNOWN')),
    hatched_in INTEGER,
    ringed_on DATE,
    note VARCHAR NOT NULL,
    fingerprint BIGINT NOT NULL,
    source_id UUID REFERENCES imported_file (id),
    source_row INTEGER CHECK (source_row >= 1),
    step BIGINT NOT NULL
);

-- taxa and abundances go together, in the order of the sheet.
CREATE TABLE kick_sample (
    id UUID PRIMARY KEY,
    label VARCHAR NOT NULL UNIQUE CHECK (label <> ''),
    sampled_on DATE NOT NULL,
    river_id UUID NOT NULL REFERENCES river (id),
    chainage_m DOUBLE PRECISION NOT NULL CHECK (chainage_m >= 0),
    bank VARCHAR(20) NOT NULL CHECK (bank IN ('LEFT', 'RIGHT', 'CHANNEL', 'UNKNOWN')),
    uncertainty_m DOUBLE PRECISION NOT NULL CHECK (uncertainty_m > 0),
    line_version INTEGER NOT NULL CHECK (line_version >= 1),
    kicked_min DOUBLE PRECISION,
    method VARCHAR NOT NULL,
    sampler VARCHAR NOT NULL,
    note VARCHAR NOT NULL,
    taxa VARCHAR ARRAY NOT NULL,
    abundances VARCHAR ARRAY NOT NULL,
    fingerprint BIGINT NOT NULL,
    source_id UUID REFERENCES imported_file (id),
    source_row INTEGER CHECK (source_row >= 1),
    step BIGINT NOT NULL,
    CHECK (CARDINALITY(taxa) = CARDINALITY(abundances))
);

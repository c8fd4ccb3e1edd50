-- What surveyors decided about the territories of a season. A boundary has no length; a note always says something.

CREATE TABLE decision (
    id UUID PRIMARY KEY,
    species VARCHAR(100) NOT NULL,
    season INTEGER NOT NULL,
    river_id UUID NOT NULL REFERENCES river (id),
    kind VARCHAR(20) NOT NULL CHECK (kind IN ('BOUNDARY', 'TOGETHER', 'NO_TERRITORY', 'NOTE')),
    lower_m DOUBLE PRECISION NOT NULL CHECK (lower_m >= 0),
    upper_m DOUBLE PRECISION NOT NULL,
    note VARCHAR CHECK (note <> ''),
    decided_by VARCHAR NOT NULL,
    decided_on DATE NOT NULL,
    fingerprint BIGINT NOT NULL,
    source_id UUID REFERENCES imported_file (id),
    source_row INTEGER CHECK (source_row >= 1),
    step BIGINT NOT NULL,
    CHECK (upper_m >= lower_m),
    CHECK (kind <> 'BOUNDARY' OR upper_m = lower_m),
    CHECK (kind NOT IN ('TOGETHER', 'NO_TERRITORY') OR upper_m > lower_m),
    CHECK (kind <> 'NOTE' OR note IS NOT NULL)
);

-- What was answered about seasons when they were reported. Names and values go together, in the order of the answer.

CREATE TABLE seal (
    id UUID PRIMARY KEY,
    species VARCHAR(100) NOT NULL,
    season INTEGER NOT NULL,
    program VARCHAR NOT NULL CHECK (program <> ''),
    last_step BIGINT NOT NULL CHECK (last_step >= 0),
    setting_names VARCHAR ARRAY NOT NULL,
    setting_values VARCHAR ARRAY NOT NULL,
    figure_names VARCHAR ARRAY NOT NULL,
    figure_values VARCHAR ARRAY NOT NULL,
    sentences VARCHAR ARRAY NOT NULL,
    sealed_by VARCHAR NOT NULL,
    sealed_on DATE NOT NULL,
    fingerprint BIGINT NOT NULL,
    source_id UUID REFERENCES imported_file (id),
    source_row INTEGER CHECK (source_row >= 1),
    step BIGINT NOT NULL,
    UNIQUE (species, season),
    CHECK (CARDINALITY(setting_names) = CARDINALITY(setting_values)),
    CHECK (CARDINALITY(figure_names) = CARDINALITY(figure_values)),
    CHECK (CARDINALITY(figure_names) > 0)
);

-- A pair may also be two spellings of a person's name. A name is no record, so the pair says it; the keys are made of it.
ALTER TABLE same_or_not ADD COLUMN one_name VARCHAR;
ALTER TABLE same_or_not ADD COLUMN other_name VARCHAR;

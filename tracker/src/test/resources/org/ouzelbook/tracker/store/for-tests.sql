-- A later version, for tests.
CREATE TABLE air_temperature (
    weather VARCHAR NOT NULL
);
INSERT INTO air_temperature (weather) VALUES ('still; dry');

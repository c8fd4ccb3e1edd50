package org.ouzelbook.stats.simulate.skerra;

import org.ouzelbook.stats.simulate.Draws;

/**
 * How one of the people of Skerra kept visits and sightings for some years.
 *
 * @param folder where the files lie
 * @param visits how the visits are laid out
 * @param birds how the sightings are laid out
 */
record FieldBook(String folder, Layout visits, Layout birds) {

    /** E.T.: an old office program, km with decimal commas. */
    static final FieldBook OLD_OFFICE =
            new FieldBook("ET-2017-to-2020", new Layout(Style.OLD_OFFICE, """
                    Visit No    | label
                    Date        | date
                    Started     | start
                    Finish      | end
                    Stream      | river
                    From km     | from km
                    To km       | to km
                    Walked      | direction
                    Who         | observers
                    Water level | level
                    Weather     | weather in degrees
                    Valid       | y or n
                    Looked for  | codes
                    Remarks     | note
                    """), new Layout(Style.OLD_OFFICE, """
                    Sighting No  | label
                    Visit No     | visit
                    Date         | date
                    Time         | time
                    Stream       | river
                    River km     | km
                    Side         | bank in letters
                    Species      | code
                    No of birds  | count
                    Age          | age
                    Doing        | activities in short by comma
                    Colour rings | rings
                    Same time as | simultaneous
                    Flew to      | flew to
                    Turned back  | turned back, y
                    Who          | observer
                    Remarks      | remark
                    """));

    /** M.O.: a spreadsheet of today, with columns that only M.O. needs; landmarks and steps. */
    static final FieldBook SPREADSHEET =
            new FieldBook("MO-2021", new Layout(Style.OFFICE, """
                    Visit              | label
                    Survey date        | date
                    Start time         | start
                    End time           | end
                    River              | river
                    From (km)          | from km
                    To (km)            | to km
                    Direction          | direction
                    Mode               | mode
                    Surveyors          | observers
                    River level        | level
                    Weather            | weather
                    Effective          | Yes or No
                    Species looked for | names
                    Bus fare           | bus fare
                    Notes              | note
                    """), new Layout(Style.OFFICE, """
                    Record            | label
                    Visit             | visit
                    Survey date       | date
                    Time              | time
                    River             | river
                    Landmark          | landmark in short
                    Metres upstream   | metres above it
                    Bank              | bank
                    Species           | name
                    Number            | count
                    Age               | age
                    Activity          | activities by semicolon and blank
                    Rings             | rings
                    Simultaneous with | simultaneous
                    Flew to km        | flew to
                    Turned back       | turned back, yes
                    Photo             | photo
                    Surveyor          | observer
                    Notes             | remark
                    """));

    /** R.H.: typed with tabs, dates in words, times without a colon. */
    static final FieldBook TYPED =
            new FieldBook("RH-2022-and-2023", new Layout(Style.TABS, """
                    VISIT       | label
                    DATE        | date
                    START       | start
                    FINISH      | end
                    WATERCOURSE | river
                    FROM KM     | from km
                    TO KM       | to km
                    DIRECTION   | direction
                    OBSERVERS   | observers
                    LEVEL       | level
                    CONDITIONS  | weather
                    EFFECTIVE   | yes or no
                    SPECIES     | codes
                    COMMENTS    | note
                    """), new Layout(Style.TABS, """
                    SIGHTING            | label
                    VISIT               | visit
                    DATE                | date
                    TIME                | time
                    WATERCOURSE         | river
                    LANDMARK            | landmark
                    OFFSET              | metres above it
                    SPECIES             | name
                    COUNT               | count
                    AGE                 | age
                    BEHAVIOUR           | activities in short by plus
                    COLOUR RINGS        | rings
                    AT THE SAME TIME AS | simultaneous
                    FLEW TO KM          | flew to
                    TURNED BACK         | turned back, yes
                    OBSERVER            | observer
                    COMMENTS            | remark
                    """));

    /** The records centre's terms, Darwin Core, with columns of the group's own where it has none. */
    static final FieldBook RECORDS_CENTRE =
            new FieldBook("records-centre-2024", new Layout(Style.SHEET, """
                    eventID        | label
                    eventDate      | from time to time
                    waterBody      | river
                    from_km        | from km
                    to_km          | to km
                    direction      | direction
                    recordedBy     | observers
                    scientificName | scientific names
                    level          | level
                    effective      | yes or no
                    eventRemarks   | note
                    """), new Layout(Style.SHEET, """
                    occurrenceID                  | label
                    eventID                       | visit
                    eventDate                     | date
                    eventTime                     | time
                    waterBody                     | river
                    decimalLatitude               | latitude
                    decimalLongitude              | longitude
                    coordinateUncertaintyInMeters | 30 m
                    scientificName                | scientific name
                    individualCount               | count
                    lifeStage                     | age
                    behavior                      | activities by bar
                    occurrenceStatus              | present
                    rings                         | rings
                    simultaneous_with             | simultaneous
                    flew_to_km                    | flew to
                    turned_back                   | turned back, yes
                    recordedBy                    | observer
                    occurrenceRemarks             | remark
                    """));

    private static final Layout SHEET_VISITS = new Layout(Style.SHEET, """
            visit     | label
            date      | date
            start     | start
            end       | end
            river     | river
            from_km   | from km
            to_km     | to km
            direction | direction
            mode      | mode
            observers | observers
            species   | names
            level     | level
            weather   | weather
            effective | yes or no
            note      | note
            """);

    /** J.P.: what a phone hands out. */
    static final FieldBook PHONE = new FieldBook("JP-phone-2025", SHEET_VISITS, new Layout(Style.SHEET, """
                    id                | waypoint
                    sighting          | label
                    visit             | visit
                    date              | date
                    time              | time
                    river             | river
                    lat               | latitude from the phone
                    lon               | longitude from the phone
                    accuracy_m        | accuracy from the phone
                    species           | name
                    count             | count
                    age               | age
                    activity          | activities by semicolon
                    rings             | rings
                    simultaneous_with | simultaneous
                    flew_to_km        | flew to
                    turned_back       | turned back, yes
                    observer          | observer
                    note              | remark
                    """));

    /** The field sheet that the group took up in the end. */
    static final FieldBook SHEET = new FieldBook("field-sheets-2026", SHEET_VISITS, new Layout(Style.SHEET, """
                    sighting          | label
                    visit             | visit
                    date              | date
                    time              | time
                    river             | river
                    km                | km
                    bank              | bank
                    species           | name
                    count             | count
                    age               | age
                    activity          | activities by semicolon and blank
                    rings             | rings
                    simultaneous_with | simultaneous
                    flew_to_km        | flew to
                    turned_back       | turned back, yes
                    observer          | observer
                    note              | remark
                    """));

    /** The file of the visits of a season. */
    byte[] visits(int season, SkerraRecords records) {
        return visits.table(new VisitCells(visits.style())::cell)
                .careless(
                        visits.style(), records.visits(season), careless(season).branch("visits"));
    }

    /** The file of the birds of a season. */
    byte[] birds(int season, SkerraRecords records) {
        return birds.table(new SightingCells(birds.style(), records)::cell)
                .careless(
                        birds.style(),
                        records.sightings(season),
                        careless(season).branch("birds"));
    }

    private static Draws careless(int season) {
        return Draws.of(Skerra.SEED).branch("careless", season);
    }
}

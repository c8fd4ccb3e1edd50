package org.ouzelbook.tracker.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeaderTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    LANDMARKS    | name,km,kind,aliases
                    LANDMARKS    | Name,Latitude,Longitude
                    REACHES      | reach,from_km,to_km,river
                    VISITS       | Visit,Date,Start,End,From km,To km,Observers
                    VISITS       | eventID,eventDate
                    SIGHTINGS    | sighting,visit,km,species,count
                    SIGHTINGS    | eventDate,decimalLatitude,decimalLongitude,scientificName,individualCount
                    SIGHTINGS    | date,landmark,weather,name,count
                    NESTS        | nest,km,site,found
                    NEST_CHECKS  | nest,date,stage,eggs
                    RINGED_BIRDS | bird,left_upper,left_lower,right_upper,right_lower
                    KICK_SAMPLES | sample,date,km,taxon,abundance,time
                    """)
    void recognisesTheKindByItsColumns(TableKind kind, String names) {
        assertThat(Header.kinds(List.of(names.split(",", -1)))).containsExactly(kind);
    }

    @Test
    void isInDoubtBetweenNestsAndLooksAtNests() {
        assertThat(Header.kinds(List.of("nest", "date", "km", "note"))).hasSizeGreaterThan(1);
        assertThat(Header.kinds(List.of("colour", "shape"))).isEmpty();
    }

    @Test
    void takesNamesInAnyCaseWithSpacesUnderscoresAndHyphensEqual() {
        Header header = Header.of(
                TableKind.SIGHTINGS,
                List.of("River-KM", "DATE", "breeding  Code", "Flew to km", "Colour of hat", "dwc:sex"));

        assertThat(header.columns())
                .containsExactlyInAnyOrder(Column.KM, Column.DATE, Column.BREEDING_CODE, Column.FLEW_TO_KM, Column.SEX);
        assertThat(header.unknown()).containsExactly(4);
    }

    @Test
    void aSecondColumnOfTheSameMeaningIsKeptAsANote() {
        Header header = Header.of(TableKind.SIGHTINGS, List.of("km", "scientificName", "species", "date"));

        assertThat(header.places()).containsEntry(Column.SPECIES, 1);
        assertThat(header.unknown()).containsExactly(2);
    }

    @Test
    void everyKindKnowsTheColumnsItNeeds() {
        for (TableKind kind : TableKind.values()) {
            assertThat(kind.required()).allMatch(kind::has);
            assertThat(TableKind.named(kind.written())).contains(kind);
        }
    }
}

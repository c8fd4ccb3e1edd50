package org.ouzelbook.tracker.exchange.darwin;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.exchange.export.Degrees;
import org.ouzelbook.tracker.exchange.export.Numbers;
import org.ouzelbook.tracker.exchange.export.XmlText;

/**
 * What a data set is, whose, and what may be done with it.
 *
 * <p>Source: the profile of the Ecological Metadata Language 2.2.0 of the Global Biodiversity Information Facility; the order of
 * the elements is its.
 */
final class EmlXml {
    private final Publication publication;
    private final XmlText xml = new XmlText();

    private EmlXml(Publication publication) {
        this.publication = publication;
    }

    /**
     * What the records cover.
     *
     * @param id a key that stays with the book
     * @param rivers the names of the rivers
     * @param corners the corners of the lines of the rivers, south-west and north-east; empty if they have none
     * @param first the first day; empty without records
     * @param last the last day
     */
    record Coverage(
            UUID id, String rivers, List<GeoPoint> corners, Optional<LocalDate> first, Optional<LocalDate> last) {
        Coverage {
            corners = List.copyOf(corners);
        }
    }

    static String text(Publication publication, Coverage coverage) {
        return new EmlXml(publication).write(coverage);
    }

    private String write(Coverage coverage) {
        xml.open(
                "eml:eml",
                "xmlns:eml",
                "https://eml.ecoinformatics.org/eml-2.2.0",
                "packageId",
                coverage.id() + "/" + publication.published(),
                "system",
                "http://gbif.org",
                "scope",
                "system",
                "xml:lang",
                "en");
        xml.open("dataset")
                .element("alternateIdentifier", coverage.id().toString())
                .element("title", publication.title());
        agent("creator");
        agent("metadataProvider");
        xml.element("pubDate", publication.published().toString()).element("language", "en");
        xml.open("abstract");
        publication.about().forEach(paragraph -> xml.element("para", paragraph));
        xml.close();
        keywords();
        rights();
        coverage(coverage);
        agent("contact");
        methods();
        return xml.end();
    }

    private void agent(String role) {
        xml.open(role)
                .element("organizationName", publication.group())
                .element("electronicMailAddress", publication.email())
                .close();
    }

    private void keywords() {
        xml.open("keywordSet")
                .element("keyword", "Samplingevent")
                .element(
                        "keywordThesaurus",
                        "GBIF Dataset Type Vocabulary: http://rs.gbif.org/vocabulary/gbif/dataset_type.xml")
                .close();
    }

    private void rights() {
        Licence licence = publication.licence();
        xml.open("intellectualRights").open("para");
        xml.open("ulink", "url", licence.url())
                .element("citetitle", licence.title())
                .close()
                .close()
                .close();
        xml.open("licensed")
                .element("licenseName", licence.title())
                .element("url", licence.url())
                .element("identifier", licence.identifier())
                .close();
    }

    private void coverage(Coverage coverage) {
        xml.open("coverage");
        if (coverage.corners().size() == 2) {
            GeoPoint southWest = coverage.corners().get(0);
            GeoPoint northEast = coverage.corners().get(1);
            xml.open("geographicCoverage")
                    .element("geographicDescription", coverage.rivers())
                    .open("boundingCoordinates")
                    .element("westBoundingCoordinate", degrees(southWest.longitude()))
                    .element("eastBoundingCoordinate", degrees(northEast.longitude()))
                    .element("northBoundingCoordinate", degrees(northEast.latitude()))
                    .element("southBoundingCoordinate", degrees(southWest.latitude()))
                    .close()
                    .close();
        }
        if (coverage.first().isPresent() && coverage.last().isPresent()) {
            xml.open("temporalCoverage").open("rangeOfDates");
            xml.open("beginDate")
                    .element("calendarDate", coverage.first().get().toString())
                    .close();
            xml.open("endDate")
                    .element("calendarDate", coverage.last().get().toString())
                    .close();
            xml.close().close();
        }
        xml.open("taxonomicCoverage");
        for (Species species : Species.all()) {
            xml.open("taxonomicClassification")
                    .element("taxonRankName", "species")
                    .element("taxonRankValue", species.scientificName())
                    .element("commonName", species.englishName())
                    .close();
        }
        xml.close().close();
    }

    private static String degrees(double exact) {
        return Numbers.text(Degrees.of(exact));
    }

    private void methods() {
        xml.open("methods").open("methodStep").open("description");
        xml.element("para", publication.method()).close().close();
        xml.close();
    }
}

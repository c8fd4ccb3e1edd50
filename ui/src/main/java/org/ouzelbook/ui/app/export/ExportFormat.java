package org.ouzelbook.ui.app.export;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** The forms in which a book's records go out. */
public enum ExportFormat {
    /** Text tables in a zip, with the rivers and a data dictionary. */
    CSV("zip"),
    /** The same tables as sheets of a spreadsheet. */
    XLSX("xlsx"),
    /** Rivers, landmarks, territories and sightings for any GIS. */
    GEOJSON("geojson"),
    /** The same for a globe. */
    KML("kml"),
    /** Landmarks and territories for a receiver in the field. */
    GPX("gpx"),
    /** The same as GeoJSON, as tables with geometries. */
    GEOPACKAGE("gpkg"),
    /** Events, occurrences and measurements for data centres, in a zip. */
    DARWIN_CORE("zip"),
    /** Histories of sites, counts, nests and ringed birds, for an analysis elsewhere. */
    ANALYSIS("zip");

    /** Ends of names that promise a kind of file. */
    private static final Set<String> KINDS = Set.of(
            "csv", "tsv", "txt", "xlsx", "xls", "ods", "geojson", "json", "kml", "kmz", "gpx", "gpkg", "zip", "pdf",
            "html");

    private final String extension;

    ExportFormat(String extension) {
        this.extension = extension;
    }

    /** {@return the end of the names of its files} */
    public String extension() {
        return extension;
    }

    /** {@return whether a name’s end promises another kind of file than this} */
    boolean isMisnamed(String file) {
        String name = file.toLowerCase(Locale.ROOT);
        boolean isJson = this == GEOJSON && name.endsWith(".json");
        return !isJson && !name.endsWith("." + extension) && KINDS.stream().anyMatch(kind -> name.endsWith("." + kind));
    }

    /** {@return the name that the command line knows it by} */
    public String written() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * {@return the form with this name, in any case; empty if none}
     *
     * @param name a name
     */
    public static Optional<ExportFormat> named(String name) {
        for (ExportFormat format : values()) {
            if (format.written().equals(name.strip().toLowerCase(Locale.ROOT).replaceAll("[ _]", "-"))) {
                return Optional.of(format);
            }
        }
        return Optional.empty();
    }
}

package org.ouzelbook.tracker.exchange.geopackage;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.Closeable;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;
import org.ouzelbook.tracker.exchange.export.Numbers;
import org.sqlite.SQLiteConnection;

/**
 * What can be read in a SQLite file, such as a GeoPackage: each table as text, a geometry as its positions, and what is neither text nor
 * number nor geometry as bytes. Only plain tables are read, so nothing that the file brings is run.
 */
public final class DatabaseTables implements Closeable {
    private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.ISO_8859_1);

    /** How many of a file’s first bytes show what it is. */
    public static final int START = MAGIC.length;

    /** Bytes of the envelope by its kind. Source: OGC GeoPackage Encoding Standard 1.3.1 (12-128r18), 2.1.3. */
    private static final int[] ENVELOPES = {0, 32, 48, 48, 64};

    private static final int HEADER = 8;
    private static final Pattern BOX = Pattern.compile("(?i)(?:min|max)_[xy]");

    private final Connection database;

    private DatabaseTables(Connection database) {
        this.database = database;
    }

    /**
     * {@return whether a file is one of SQLite}
     *
     * @param file its bytes, or the first {@link #START} of them
     */
    public static boolean isDatabase(byte[] file) {
        return file.length >= START && Arrays.equals(file, 0, MAGIC.length, MAGIC, 0, MAGIC.length);
    }

    /**
     * Opens a SQLite file.
     *
     * @param file its bytes
     * @return its tables
     * @throws IOException if it is damaged
     */
    public static DatabaseTables of(byte[] file) throws IOException {
        try {
            Connection database = DriverManager.getConnection("jdbc:sqlite::memory:");
            try {
                database.unwrap(SQLiteConnection.class).deserialize("main", file);
                return new DatabaseTables(database);
            } catch (SQLException | RuntimeException e) {
                database.close();
                throw e;
            }
        } catch (SQLException e) {
            throw new IOException(e);
        }
    }

    /**
     * {@return the names of the tables}
     *
     * @throws IOException if the file is damaged
     */
    public List<String> names() throws IOException {
        List<String> names = new ArrayList<>();
        try (Statement statement = database.createStatement();
                ResultSet found = statement.executeQuery("SELECT name FROM sqlite_master WHERE type = 'table'"
                        + " AND upper(sql) NOT LIKE 'CREATE VIRTUAL%' ORDER BY name")) {
            while (found.next()) {
                names.add(found.getString(1));
            }
        } catch (SQLException e) {
            throw new IOException(e);
        }
        return names;
    }

    /**
     * Writes a table.
     *
     * @param name its name
     * @param out takes its columns and rows as CSV
     * @param other hears the cells that are neither text nor number nor geometry
     * @throws IOException if the file is damaged
     */
    public void write(String name, Writer out, Consumer<byte[]> other) throws IOException {
        try (Statement statement = database.createStatement();
                ResultSet rows = statement.executeQuery("SELECT * FROM \"" + name.replace("\"", "\"\"") + '"');
                CsvWriter csv = CsvWriter.builder().build(out)) {
            ResultSetMetaData columns = rows.getMetaData();
            // the box around a layer has corners at which nothing lies
            boolean isContents = name.equalsIgnoreCase("gpkg_contents");
            List<String> cells = new ArrayList<>();
            for (int i = 1; i <= columns.getColumnCount(); i++) {
                cells.add(columns.getColumnName(i));
            }
            csv.writeRecord(cells);
            while (rows.next()) {
                cells.clear();
                for (int i = 1; i <= columns.getColumnCount(); i++) {
                    boolean isCorner =
                            isContents && BOX.matcher(columns.getColumnName(i)).matches();
                    cells.add(isCorner ? "" : cell(rows.getObject(i), other));
                }
                csv.writeRecord(cells);
            }
        } catch (SQLException e) {
            throw new IOException(e);
        }
    }

    @Override
    public void close() throws IOException {
        try {
            database.close();
        } catch (SQLException e) {
            throw new IOException(e);
        }
    }

    private static String cell(Object value, Consumer<byte[]> other) {
        if (value instanceof byte[] some) {
            String positions = positions(some);
            if (positions.isEmpty()) {
                other.accept(some);
            }
            return positions;
        }
        return value == null ? "" : value instanceof Double number ? written(number) : value.toString();
    }

    /** Digits only: near Greenwich and the equator Java would write 2.0E-4. */
    private static String written(double number) {
        return Double.isFinite(number) ? Numbers.text(number) : String.valueOf(number);
    }

    /** The positions of a geometry, as {@code [[-6.41,57.24],[-6.40,57.20]]}; blank if it is none. */
    private static String positions(byte[] bytes) {
        int envelope = bytes.length < HEADER ? 0 : bytes[3] >> 1 & 7;
        if (bytes.length < HEADER || bytes[0] != 'G' || bytes[1] != 'P' || envelope >= ENVELOPES.length) {
            return "";
        }
        int start = Math.min(bytes.length, HEADER + ENVELOPES[envelope]);
        try {
            return Stream.of(new WKBReader()
                            .read(Arrays.copyOfRange(bytes, start, bytes.length))
                            .getCoordinates())
                    .map(position -> "[" + written(position.x) + "," + written(position.y) + "]")
                    .collect(Collectors.joining(",", "[", "]"));
        } catch (ParseException e) {
            return "";
        }
    }
}

package org.ouzelbook.tracker.exchange.geopackage;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.StringWriter;
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
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;
import org.sqlite.SQLiteConnection;

/**
 * What can be read in a SQLite file, such as a GeoPackage: each table as text, a geometry as its positions, and what is neither text nor
 * number nor geometry as bytes. Only plain tables are read, so nothing that the file brings is run.
 */
public final class DatabaseTables {
    private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.ISO_8859_1);

    /** Bytes of the envelope by its kind. Source: OGC GeoPackage Encoding Standard 1.3.1 (12-128r18), 2.1.3. */
    private static final int[] ENVELOPES = {0, 32, 48, 48, 64};

    private static final int HEADER = 8;

    private DatabaseTables() {}

    /**
     * A table.
     *
     * @param name its name
     * @param text its columns and rows as CSV
     * @param bytes the cells that are neither text nor number nor geometry
     */
    public record Table(String name, String text, List<byte[]> bytes) {
        /** Copies the list. */
        public Table {
            bytes = List.copyOf(bytes);
        }
    }

    /** {@return whether a file is one of SQLite} */
    public static boolean isDatabase(byte[] file) {
        return file.length > MAGIC.length && Arrays.equals(file, 0, MAGIC.length, MAGIC, 0, MAGIC.length);
    }

    /**
     * {@return every table of a SQLite file, by name}
     *
     * @param file its bytes
     * @throws IOException if it is damaged
     */
    public static List<Table> read(byte[] file) throws IOException {
        List<Table> tables = new ArrayList<>();
        try (Connection database = DriverManager.getConnection("jdbc:sqlite::memory:")) {
            database.unwrap(SQLiteConnection.class).deserialize("main", file);
            for (String name : names(database)) {
                tables.add(table(database, name));
            }
        } catch (SQLException e) {
            throw new IOException(e);
        }
        return tables;
    }

    private static List<String> names(Connection database) throws SQLException {
        List<String> names = new ArrayList<>();
        try (Statement statement = database.createStatement();
                ResultSet found = statement.executeQuery("SELECT name FROM sqlite_master WHERE type = 'table'"
                        + " AND upper(sql) NOT LIKE 'CREATE VIRTUAL%' ORDER BY name")) {
            while (found.next()) {
                names.add(found.getString(1));
            }
        }
        return names;
    }

    private static Table table(Connection database, String name) throws SQLException, IOException {
        StringWriter text = new StringWriter();
        List<byte[]> bytes = new ArrayList<>();
        try (Statement statement = database.createStatement();
                ResultSet rows = statement.executeQuery("SELECT * FROM \"" + name.replace("\"", "\"\"") + '"');
                CsvWriter csv = CsvWriter.builder().build(text)) {
            ResultSetMetaData columns = rows.getMetaData();
            List<String> cells = new ArrayList<>();
            for (int i = 1; i <= columns.getColumnCount(); i++) {
                cells.add(columns.getColumnName(i));
            }
            csv.writeRecord(cells);
            while (rows.next()) {
                cells.clear();
                for (int i = 1; i <= columns.getColumnCount(); i++) {
                    cells.add(cell(rows.getObject(i), bytes));
                }
                csv.writeRecord(cells);
            }
        }
        return new Table(name, text.toString(), bytes);
    }

    private static String cell(Object value, List<byte[]> bytes) {
        if (value instanceof byte[] some) {
            String positions = positions(some);
            if (positions.isEmpty()) {
                bytes.add(some);
            }
            return positions;
        }
        return value == null ? "" : value.toString();
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
                    .map(position -> "[" + position.x + "," + position.y + "]")
                    .collect(Collectors.joining(",", "[", "]"));
        } catch (ParseException e) {
            return "";
        }
    }
}

package org.ouzelbook.tracker.exchange.geopackage;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import org.ouzelbook.tracker.domain.GeoPoint;

/**
 * A geometry as a GeoPackage stores it: a header with the reference system and, for a line, its envelope, then the well-known binary form.
 *
 * <p>Source: OGC GeoPackage Encoding Standard 1.3.1 (12-128r18), 2.1.3; OGC Simple Feature Access (06-103r4), 8.2.
 */
final class GeometryBytes {
    private static final int WGS84 = 4326;
    private static final byte LITTLE_ENDIAN = 1;
    private static final byte WITH_ENVELOPE = 1 << 1;
    private static final int POINT = 1;
    private static final int LINE = 2;
    private static final int HEADER = 8;
    private static final int ENVELOPE = 4 * Double.BYTES;
    private static final int POSITION = 2 * Double.BYTES;

    private GeometryBytes() {}

    /** {@return a point, or a line} */
    static byte[] of(List<GeoPoint> points, boolean isPoint) {
        ByteBuffer bytes = ByteBuffer.allocate(HEADER + ENVELOPE + 1 + 2 * Integer.BYTES + points.size() * POSITION)
                .order(ByteOrder.LITTLE_ENDIAN);
        bytes.put((byte) 'G').put((byte) 'P').put((byte) 0);
        bytes.put(isPoint ? LITTLE_ENDIAN : (byte) (LITTLE_ENDIAN | WITH_ENVELOPE))
                .putInt(WGS84);
        if (!isPoint) {
            bytes.putDouble(
                    points.stream().mapToDouble(GeoPoint::longitude).min().orElseThrow());
            bytes.putDouble(
                    points.stream().mapToDouble(GeoPoint::longitude).max().orElseThrow());
            bytes.putDouble(
                    points.stream().mapToDouble(GeoPoint::latitude).min().orElseThrow());
            bytes.putDouble(
                    points.stream().mapToDouble(GeoPoint::latitude).max().orElseThrow());
        }
        bytes.put(LITTLE_ENDIAN).putInt(isPoint ? POINT : LINE);
        if (!isPoint) {
            bytes.putInt(points.size());
        }
        points.forEach(point -> bytes.putDouble(point.longitude()).putDouble(point.latitude()));
        byte[] written = new byte[bytes.position()];
        bytes.flip().get(written);
        return written;
    }
}

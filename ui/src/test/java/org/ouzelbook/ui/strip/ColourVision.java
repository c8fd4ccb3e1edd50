package org.ouzelbook.ui.strip;

import java.util.List;

/**
 * How colours look to people who see them otherwise, and how far apart two of them look.
 *
 * <p>Missing cones after G. M. Machado, M. M. Oliveira and L. A. F. Fernandes (2009), A physiologically-based model for simulation
 * of color vision deficiency, IEEE Transactions on Visualization and Computer Graphics 15:1291–1298, severity 1, on linear RGB; no
 * colour at all as the luminance of IEC 61966-2-1 (sRGB).
 */
enum ColourVision {
    USUAL,
    PROTANOPIA,
    DEUTERANOPIA,
    TRITANOPIA,
    ACHROMATOPSIA;

    private List<Double> matrix() {
        return switch (this) {
            case USUAL -> List.of(1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0);
            case PROTANOPIA ->
                List.of(0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998);
            case DEUTERANOPIA ->
                List.of(0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881);
            case TRITANOPIA ->
                List.of(1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900);
            case ACHROMATOPSIA -> List.of(0.2126, 0.7152, 0.0722, 0.2126, 0.7152, 0.0722, 0.2126, 0.7152, 0.0722);
        };
    }

    /** A colour in CIELAB, under the white of sRGB (D65). */
    record Lab(double lightness, double a, double b) {
        /**
         * The difference CIEDE2000, ISO/CIE 11664-6:2022, as written out by G. Sharma, W. Wu and E. N. Dalal (2005), Color Research and
         * Application 30:21–30.
         */
        double from(Lab other) {
            double chroma = (Math.hypot(a, b) + Math.hypot(other.a, other.b)) / 2;
            double c7 = Math.pow(chroma, 7);
            double g = 0.5 * (1 - Math.sqrt(c7 / (c7 + Math.pow(25, 7))));
            double a1 = (1 + g) * a;
            double a2 = (1 + g) * other.a;
            double c1 = Math.hypot(a1, b);
            double c2 = Math.hypot(a2, other.b);
            double h1 = degrees(a1, b);
            double h2 = degrees(a2, other.b);
            double dh = c1 * c2 == 0 ? 0 : h2 - h1 > 180 ? h2 - h1 - 360 : h2 - h1 < -180 ? h2 - h1 + 360 : h2 - h1;
            double hue = c1 * c2 == 0
                    ? h1 + h2
                    : Math.abs(h1 - h2) <= 180
                            ? (h1 + h2) / 2
                            : h1 + h2 < 360 ? (h1 + h2 + 360) / 2 : (h1 + h2 - 360) / 2;
            double middle = (c1 + c2) / 2;
            double light = (lightness + other.lightness) / 2;
            double t =
                    1 - 0.17 * cos(hue - 30) + 0.24 * cos(2 * hue) + 0.32 * cos(3 * hue + 6) - 0.20 * cos(4 * hue - 63);
            double sl = 1 + 0.015 * Math.pow(light - 50, 2) / Math.sqrt(20 + Math.pow(light - 50, 2));
            double sc = 1 + 0.045 * middle;
            double sh = 1 + 0.015 * middle * t;
            double m7 = Math.pow(middle, 7);
            double rt = -2
                    * Math.sqrt(m7 / (m7 + Math.pow(25, 7)))
                    * Math.sin(Math.toRadians(60 * Math.exp(-Math.pow((hue - 275) / 25, 2))));
            double dl = (other.lightness - lightness) / sl;
            double dc = (c2 - c1) / sc;
            double dhh = 2 * Math.sqrt(c1 * c2) * Math.sin(Math.toRadians(dh / 2)) / sh;
            return Math.sqrt(dl * dl + dc * dc + dhh * dhh + rt * dc * dhh);
        }

        private static double degrees(double a, double b) {
            double degrees = a == 0 && b == 0 ? 0 : Math.toDegrees(Math.atan2(b, a));
            return degrees < 0 ? degrees + 360 : degrees;
        }

        private static double cos(double degrees) {
            return Math.cos(Math.toRadians(degrees));
        }
    }

    /** {@return how a colour, as {@code #rrggbb}, looks} */
    Lab seen(String colour) {
        double red = linear(colour, 1);
        double green = linear(colour, 3);
        double blue = linear(colour, 5);
        List<Double> matrix = matrix();
        double r = row(matrix.subList(0, 3), red, green, blue);
        double g = row(matrix.subList(3, 6), red, green, blue);
        double b = row(matrix.subList(6, 9), red, green, blue);
        double x = root((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
        double y = root(0.2126 * r + 0.7152 * g + 0.0722 * b);
        double z = root((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
        return new Lab(116 * y - 16, 500 * (x - y), 200 * (y - z));
    }

    private static double row(List<Double> row, double red, double green, double blue) {
        return Math.max(0, Math.min(1, row.get(0) * red + row.get(1) * green + row.get(2) * blue));
    }

    private static double linear(String colour, int from) {
        double value = Integer.parseInt(colour.substring(from, from + 2), 16) / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
    }

    private static double root(double value) {
        return value > Math.pow(6.0 / 29, 3) ? Math.cbrt(value) : value * Math.pow(29.0 / 6, 2) / 3 + 4.0 / 29;
    }
}

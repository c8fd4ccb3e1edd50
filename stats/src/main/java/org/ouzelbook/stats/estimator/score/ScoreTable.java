package org.ouzelbook.stats.estimator.score;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Which taxa score how much: a published table with its name and version, the taxa that score as another, and those that are
 * known and do not score.
 *
 * @param name its name
 * @param version version of the file that holds it
 * @param taxa every known taxon
 */
public record ScoreTable(String name, int version, List<Taxon> taxa) {
    /** Copies the list. */
    public ScoreTable {
        taxa = List.copyOf(taxa);
    }

    /** How a value of the table was checked. */
    public enum Evidence {
        /** Seen in public copies of the published table. */
        SEEN,
        /** Written from memory, to be read against a paper copy. */
        MEMORY
    }

    /**
     * A taxon of the table.
     *
     * @param name its name
     * @param scoredAs the taxon whose score it has, itself in most cases; empty if it does not score
     * @param score that score; empty if it does not score
     * @param order its order, told for mayflies, stoneflies and caddis flies only
     * @param evidence how the row was checked
     */
    public record Taxon(
            String name, Optional<String> scoredAs, OptionalInt score, Optional<String> order, Evidence evidence) {}

    /**
     * {@return the biological monitoring working party's scores}
     *
     * <p>Source: National Water Council (1981), River Quality: the 1980 survey; P. D. Armitage, D. Moss, J. F. Wright and M. T.
     * Furse (1983), Water Res. 17:333–347; H. A. Hawkes (1997), Water Res. 32:964–968. Twelve scores and some merged families are
     * from memory; each taxon says so.
     */
    public static ScoreTable bmwp() {
        return Bmwp.TABLE;
    }

    /** Read when first asked for. */
    private static final class Bmwp {
        private static final ScoreTable TABLE = read("BMWP", 1, "bmwp.csv");
    }

    private static ScoreTable read(String name, int version, String file) {
        try (InputStream in = ScoreTable.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException(file + " is missing from the program");
            }
            BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
            List<String[]> rows =
                    reader.lines().skip(1).map(line -> line.split(",", -1)).toList();
            Map<String, Integer> scores = new LinkedHashMap<>();
            for (String[] row : rows) {
                if (!row[2].isEmpty()) {
                    scores.put(row[0], Integer.parseInt(row[2]));
                }
            }
            return new ScoreTable(
                    name, version, rows.stream().map(row -> taxon(row, scores)).toList());
        } catch (IOException e) {
            throw new UncheckedIOException(file, e);
        }
    }

    private static Taxon taxon(String[] row, Map<String, Integer> scores) {
        Optional<String> scoredAs = Optional.of(row[1]).filter(text -> !text.isEmpty());
        Integer score = scoredAs.map(scores::get).orElse(null);
        return new Taxon(
                row[0],
                scoredAs,
                score == null ? OptionalInt.empty() : OptionalInt.of(score),
                Optional.of(row[3]).filter(text -> !text.isEmpty()),
                Evidence.valueOf(row[4].toUpperCase(Locale.ROOT)));
    }

    /**
     * {@return the taxon with this name, in any case; empty if the table does not know it}
     *
     * @param written a name as somebody wrote it
     */
    public Optional<Taxon> taxon(String written) {
        String wanted = plain(written);
        return taxa.stream().filter(taxon -> plain(taxon.name()).equals(wanted)).findFirst();
    }

    /**
     * {@return the names most like one that the table does not know, at most three}
     *
     * @param written a name as somebody wrote it
     */
    public List<String> nearest(String written) {
        String wanted = plain(written);
        int allowed = Math.max(2, wanted.length() / 3);
        Map<Integer, List<String>> byDistance = new LinkedHashMap<>();
        for (Taxon taxon : taxa) {
            byDistance
                    .computeIfAbsent(distance(wanted, plain(taxon.name())), key -> new ArrayList<>())
                    .add(taxon.name());
        }
        int least = Collections.min(byDistance.keySet());
        return least > allowed
                ? List.of()
                : byDistance.getOrDefault(least, List.of()).stream().limit(3).toList();
    }

    private static String plain(String name) {
        return name.strip().toLowerCase(Locale.ROOT);
    }

    /** Letters put in, left out, changed, or swapped with their neighbour, that lead from one word to the other. */
    private static int distance(String one, String other) {
        int[][] slips = new int[one.length() + 1][other.length() + 1];
        for (int i = 0; i <= one.length(); i++) {
            for (int j = 0; j <= other.length(); j++) {
                if (i == 0 || j == 0) {
                    slips[i][j] = i + j;
                    continue;
                }
                int changed = slips[i - 1][j - 1] + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
                slips[i][j] = Math.min(changed, Math.min(slips[i - 1][j], slips[i][j - 1]) + 1);
                boolean swapped = i > 1
                        && j > 1
                        && one.charAt(i - 1) == other.charAt(j - 2)
                        && one.charAt(i - 2) == other.charAt(j - 1);
                if (swapped) {
                    slips[i][j] = Math.min(slips[i][j], slips[i - 2][j - 2] + 1);
                }
            }
        }
        return slips[one.length()][other.length()];
    }
}

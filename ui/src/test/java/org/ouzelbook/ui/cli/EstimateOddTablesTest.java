package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tables that are empty, degenerate or wrong: each gives an answer or a reason, in words and in JSON, and never NaN. */
class EstimateOddTablesTest {
    @TempDir
    private Path folder;

    /** Rows are parted by {@code /}; the last column is something that the answer or the complaint must say. */
    @ParameterizedTest(name = "{0} {2}: {1}")
    @CsvSource(delimiter = '|', ignoreLeadingAndTrailingWhitespace = true, quoteCharacter = '"', textBlock = """
            occupancy  | site,1,2/a,1,1/b,1,1                             |                      | 0 | lies at the end
            occupancy  | site,1,2/a,0,0/b,0,0                             |                      | 0 | Nothing was detected
            occupancy  | site,1,2,3/a,1,0,1                               |                      | 0 | lies at the end
            occupancy  | site,1/a,1/b,0                                   |                      | 0 | visited twice
            occupancy  | site,1,2/a,,/b,,                                 |                      | 0 | No site was visited
            occupancy  | site,1,2,x/a,1,1,1/b,1,0,1/c,0,0,0/d,0,0,0       | --occupancy-by x     | 0 | lies at the end
            occupancy  | site,1,2,x/a,1,1,4/b,1,0,4/c,0,0,4               | --occupancy-by x     | 0 | only repeat
            occupancy  | site,1,2,x/a,1,0,1e15/b,0,1,-1e15/c,1,1,3        | --occupancy-by x     | 0 | lies at the end
            occupancy  | site,2020.1,2020.2,2021.1,2021.2/a,1,1,0,0/b,1,0,0,0 |                  | 0 | No site is occupied
            occupancy  | ""                                               |                      | 1 | empty
            occupancy  | site,1,2                                         |                      | 1 | No row stands below
            occupancy  | site,morning/a,yes                               |                      | 1 | looks like a header
            occupancy  | site,1,2/a,yes,0                                 |                      | 1 | not a number
            occupancy  | site,1,2/a,1,0/a,0,1                             |                      | 1 | row for this site already
            occupancy  | site,1,1,2/a,1,0,1                               |                      | 1 | Two columns
            survival   | history,count/100,5/010,3                        |                      | 0 | ever met again
            survival   | history,count/111,5/011,3                        |                      | 0 | nothing to test
            survival   | history/1/1                                      |                      | 0 | only one occasion
            survival   | history,count/11,5/10,5                          |                      | 0 | only the product
            survival   | history,count/001,5                              |                      | 0 | before the last occasion
            survival   | history,count,sex/110,5,m/100,5,m/100,7,f        | --survival-by sex --resighting-by sex | 0 | nothing to test
            survival   | ""                                               |                      | 1 | empty
            survival   | history,count                                    |                      | 1 | no rows
            survival   | encounters,count/101,1                           |                      | 1 | lacks history
            survival   | history,count/101,many                           |                      | 1 | not a number
            survival   | history,count/101,99999999999                    |                      | 1 | whole number
            survival   | history,count/101,1/11,1                         |                      | 1 | leading zeros
            nests      | nest,days,survived/a,5,1/b,7,1                   | --period 38          | 0 | no loss
            nests      | nest,days,survived/a,5,0/b,7,0                   | --period 38          | 0 | only 2 losses
            nests      | nest,days,survived/a,0,0                         |                      | 0 | found on the day it failed
            nests      | nest,days,survived/a,1,0/b,1,0                   |                      | 0 | found too late
            nests      | nest,days,survived,x/a,5,1,1/b,5,1,1/c,5,0,0/d,5,0,0 | --survival-by x  | 0 | only 2 losses
            nests      | nest,days,survived,x/a,5,1,1/b,5,0,1             | --survival-by x      | 0 | only repeat
            nests      | ""                                               |                      | 1 | empty
            nests      | nest,days,survived                               |                      | 1 | no rows
            nests      | nest,survived/a,1                                |                      | 1 | lacks days
            nests      | nest,days,survived/a,five,1                      |                      | 1 | not a number
            nests      | nest,days,survived/a,1e15,1                      |                      | 1 | too large
            nests      | nest,days,survived/a,-5,1                        |                      | 1 | fewer than 0
            nests      | nest,date,stage/a,2026-04-01,eggs/a,2026-04-01,failed |                 | 0 | found on the day it failed
            nests      | nest,date,stage/a,1 April,eggs                   |                      | 1 | must be a date
            nests      | nest,date,stage/a,2026-04-01,hopping             |                      | 1 | must be eggs, young
            nests      | nest,date,stage/a,2026-04-01,eggs/a,2026-04-09,failed/a,2026-04-20,eggs | | 1 | ended by 9 Apr 2026
            trend      | site,year,count/a,2001,5/a,2002,5/a,2003,5       |                      | 0 | +0.0 % (
            trend      | site,year,count/a,2001,0/a,2002,0/a,2003,0       |                      | 0 | Every count is 0
            trend      | site,year,count/a,2001,5                         |                      | 0 | Only one season
            trend      | site,year,count/a,2001,0/a,2002,0/a,2003,1       |                      | 0 | numbers rose
            trend      | site,year,count/a,2001,4/a,2002,0/a,2003,0       | --negative-binomial  | 0 | numbers fell
            trend      | site,year,count/a,2001,0/a,2002,1/a,2003,0/a,2004,0/a,2005,0/a,2006,1 | --shape curve | 0 | Too few birds hold a curve
            trend      | site,year,count/a,2001,0/a,2002,1/a,2003,0       | --shape seasons      | 0 | Only one season
            trend      | site,year,count/a,2001,3/a,2002,1/a,2003,4       | --serial             | 0 | serial correlation
            trend      | site,year,count/a,2001,5/a,2002,3                | --shape curve        | 0 | as many parameters
            trend      | ""                                               |                      | 1 | empty
            trend      | site,year,count                                  |                      | 1 | no rows
            trend      | site,count/a,5                                   |                      | 1 | lacks year
            trend      | site,year,count/a,2001,many                      |                      | 1 | not a number
            trend      | site,year,count/a,2001,900000000000              |                      | 1 | whole number
            trend      | site,year,count/a,2001,-5                        |                      | 1 | whole number
            trend      | site,year,count/a,2001,5/a,2001,6                |                      | 1 | a count for 2001 already
            trend      | site,year,count,km/a,2001,5,0/a,2002,3,1         |                      | 1 | more than 0
            rate       | count,exposure/0,5/0,3                           |                      | 0 | could be anything
            rate       | count,exposure/4,5/0,3                           |                      | 0 | lower limit only
            rate       | count,exposure/3,0                               |                      | 1 | more than 0
            rate       | count,exposure                                   |                      | 1 | one row, or two
            proportion | successes,trials/0,10                            |                      | 0 | 0 to 0.3085
            proportion | successes,trials/11,10                           |                      | 1 | more successes
            rank-trend | year,value/1,5/2,5/3,5                           |                      | 0 | All values are the same
            rank-trend | year,value/1,5/1,6/1,4                           |                      | 0 | belong to one year
            rank-trend | year,value                                       |                      | 1 | no rows
            """)
    void givesAnAnswerOrAReason(String what, String rows, String options, int exitCode, String says)
            throws IOException {
        String text = rows.isEmpty() ? "" : rows.replace('/', '\n') + "\n";
        Path table = Files.writeString(folder.resolve("table.csv"), text);
        List<Object> arguments = new ArrayList<>(List.of("estimate", what, table));
        if (options != null) {
            arguments.addAll(Arrays.asList(options.split(" ")));
        }

        CommandRun told = CommandRun.of(arguments.toArray());
        arguments.add("--json");
        CommandRun json = CommandRun.of(arguments.toArray());

        assertThat(told.exitCode()).as(told.out() + told.err()).isEqualTo(exitCode);
        assertThat(told.out() + told.err()).contains(says);
        assertThat(json.exitCode()).isEqualTo(exitCode);
        for (CommandRun run : List.of(told, json)) {
            assertThat(run.out() + run.err()).doesNotContain("NaN", "Infinity", "Exception", "∞");
        }
        if (exitCode == ExitCode.DONE) {
            assertThat(JsonParser.parseString(json.out()).isJsonObject()).isTrue();
        } else {
            assertThat(told.err()).contains("table.csv");
        }
    }
}

package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.Charset;
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
            occupancy  | site,2020.1,2020.2,2021.1,2021.2/a,1,1,1,1/b,1,1,1,1 |  | 0 | lies at its natural limit
            occupancy  | site,1,2/a,1,0/b,0,1/c,0,0 | --profile | 0 | from the profile likelihood
            occupancy  | site,1,2/a,1,0/b,0,1/c,0,0 | --level 0.9999999 | 0 | lower (99.99999%)
            occupancy  | site,1,2/a,1,0/b,0,1/c,0,0 | --occupancy-by site | 0 | lies at the end
            occupancy  | site,1,2,kind/a,1,0,x/b,0,1,x/c,0,0,y/d,0,0,y/e,1,1,z | --occupancy-by kind | 0 | kind=y
            occupancy  | site,1,2,x,y/a,1,0,1,2/b,0,1,2,4/c,0,0,3,6/d,0,1,4,8 | --occupancy-by x,y | 0 | leave them out: y
            occupancy  | site,1,2,x/a,1,0,/b,0,1,2/c,0,0,3/d,0,1,4 | --occupancy-by x | 1 | may not be empty
            occupancy  | site,1,2/a,1,0/b,0,1 | --occupancy-by nosuch | 1 | lacks nosuch
            occupancy  | site;1;2;x/a;1;0;1,5/b;0;1;2,25/c;0;0;3,1/d;0;1;0,5/e;1;1;2,2/f;0;0;4 | --occupancy-by x | 0 | lies at the end
            occupancy  | site,1,2/a,1,2/b,0,1 |  | 1 | whole number from 0 to 1
            occupancy  | site,1,2/a,1,0.5/b,0,1 |  | 1 | whole number from 0 to 1
            occupancy  | site,2001.1,2001.2,2003.1,2003.2/a,1,0,,/b,0,1,,/c,0,0,, |  | 0 | No column holds a visit in 2002
            occupancy  | site,2001.1,2001.2,3001.1/a,1,0,1/b,0,1,1 |  | 1 | up to 500 seasons
            occupancy  | 1,2/1,0/0,1/0,0 |  | 0 | lies at the end
            occupancy  | site,1,2,w.1,w.2/a,1,0,0.1,0.2/b,0,1,0.5,/c,0,0,0.1,0.3 | --detection-by w | 1 | may not be empty
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
            survival   | history,count/1111,5 |  | 0 | 0.8798
            survival   | history,count/1111,1000000000/1011,1 |  | 0 | 1,000,000,001 birds
            survival   | history,count/0000,5/1010,3/1100,2 |  | 0 | 5 birds without a 1 left out
            survival   | history,count/1010,3/1100,0 |  | 1 | whole number from 1
            survival   | history,count/1010,-3/1100,2 |  | 1 | whole number from 1
            survival   | history,count/10a0,3/1100,2 |  | 1 | made of the digits
            survival   | history,count,sex/1011,3,m/1100,2,/1010,4,f | --survival-by sex | 1 | may not be empty
            survival   | history,count/1011,3/1100,2 | --survival-by nosuch | 1 | lacks nosuch
            survival   | history/1011/1100/1010/1110/0110/0101 | --survival-by occasion --resighting-by occasion | 0 | only the product
            survival   | history;count/1011;3/1100;2 |  | 0 | 0.6902
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
            nests      | nest,days,survived/a,0,1/b,0,1 |  | 0 | No nest was seen alive
            nests      | nest,days,survived/a,5,2/b,3,0 |  | 1 | alive at the end
            nests      | nest,days,survived/a,,1/b,3,0 |  | 1 | may not be empty
            nests      | nest;days;survived;x/a;5,5;1;1,5/b;3;0;2,5/c;4;1;3/d;6;1;1 | --survival-by x | 0 | 17 exposure days
            nests      | nest,days,survived/a,5,1/b,3,0 | --period 0 | 2 | no number of days
            nests      | nest,date,stage/a,2026-04-01,eggs |  | 0 | No nest was seen alive
            nests      | nest,date,stage/a,2026-04-01,young/a,2026-04-08,eggs |  | 1 | had young on 1 Apr 2026 already
            nests      | nest,date,stage/a,2026-02-30,eggs |  | 1 | must be a date
            nests      | nest,date,stage/a,2026-04-01,eggs/a,2026-04-08,unknown |  | 0 | how it ended is unknown
            trend      | site,year,count/a,2001,5/a,2002,5/a,2003,5       |                      | 0 | Change a year: 0% (−46.2 to +85.9)
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
            trend      | site,year,count/a,2001,1000000000/a,2002,900000000/a,2003,810000000 |  | 0 | −10.0% (−10.0 to −10.0)
            trend      | site,year,count/a,2001,1000000000/a,2002,0/a,2003,1000000000 |  | 0 | (−100.0 to open)
            trend      | site,year,count/a,2001,1/a,2002,1000000000 |  | 0 | as many parameters
            trend      | site,year,count/a,2005,3/a,2001,9/a,2003,5/b,2002,4/b,2004,2 |  | 0 | −24.9%
            trend      | site,year,count/a,2001,5/b,2002,4/c,2003,3 |  | 0 | more than one season
            trend      | site,year,count/a,2001,5/b,2002,4/c,2003,3 | --shape seasons | 0 | Too few sites have birds
            trend      | site,year,count/a,2001,/a,2002,/a,2003, |  | 0 | no count at all
            trend      | site,year,count/a,2001,5/a,2002,/a,2003,4/a,2004,6 |  | 0 | left as a gap: 2002
            trend      | site,year,count/a,2001,5/a,1500,9/a,2011,7 |  | 0 | left as a gap: 1501–2000, 2002–2010
            trend      | site,year,count/a,2001,2.5/a,2002,5 |  | 1 | whole number
            trend      | site,year,count/a,01.05.2001,2/a,2002,5 |  | 1 | not a number
            trend      | site,year,count/a,99999,2/a,2002,5 |  | 1 | from 1 to 9999
            trend      | site,year,count/a,2001,=2+3/a,2002,5 |  | 1 | not a number
            trend      | site,year,count/,2001,5/,2002,5 |  | 1 | may not be empty
            trend      | site,year,count,count/a,2001,5,6 |  | 1 | Two columns
            trend      | site,year,count/a,2001,5,6,7 |  | 1 | has 5 cells
            trend      | site,year,count,km/a,2001,5,1/a,2002,3, |  | 1 | this one has none
            trend      | site,year,count,km/a,2001,5,-1/a,2002,3,1 |  | 1 | more than 0
            trend      | Site;Year;Count;KM/a;2001;5;1,5/a;2002;3;2,25/a;2003;4;0,75 |  | 0 | +19.1% (−100.0 to open)
            trend      | site,year,count/a,2001,1000000000/a,2002,1/b,2001,1/b,2002,1000000000/a,2003,1/b,2003,1 | --shape seasons | 0 | set an upper limit in 2003
            trend      | site,year,count/a,2001,1000000000/a,2002,1/b,2001,1/b,2002,1000000000/a,2003,1/b,2003,1 | --changes 2002 | 0 | (−100.0 to open)
            trend      | site,year,count/a,2001,1000000000/a,2002,1000000000/a,2003,0/a,2004,1000000000/b,2001,3/b,2003,2 | --shape seasons | 0 | hold an effect for each season
            trend      | site,year,count/a,2001,3/a,2002,5/a,2003,2/a,2004,6 | --changes 1990 | 0 | not so: 1990
            trend      | site,year,count/a,2001,0/a,2002,0/a,2003,5/a,2004,9 | --changes 2002 | 0 | No birds were counted before 2002
            trend      | site,year,count/a,2001,5/a,2002,4/a,2003,0/a,2004,0 | --changes 2002 | 0 | No birds were counted after 2002
            trend      | site,year,count/a,2001,1/b,2001,0/a,2002,0/b,2002,1/a,2003,1/b,2003,0 | --shape seasons --serial | 0 | hold an effect for each season
            trend      | site,year,count/a,2001,0/a,2002,5/a,2003,5/a,2004,0 | --shape seasons --negative-binomial | 0 | Only zeros were counted in 2001, 2004
            trend      | site,year,count/a,2001,3/a,2002,5/a,2003,2/b,2001,0/b,2002,0 | --count-empty-sites | 0 | count in the degrees of freedom
            rate       | count,exposure/0,5/0,3                           |                      | 0 | could be anything
            rate       | count,exposure/4,5/0,3                           |                      | 0 | lower limit only
            rate       | count,exposure/3,0                               |                      | 1 | more than 0
            rate       | count,exposure                                   |                      | 1 | one row, or two
            rate       | count,exposure/1000000000,1/1000000000,1 |  | 0 | 0.9999 to 1.000
            rate       | count,exposure/5,1e-15/3,1e15 |  | 0 | 1.667E+30
            rate       | count,exposure/-5,1 |  | 1 | whole number
            rate       | count,exposure/1,1/2,1/3,1 |  | 1 | has 3
            rate       | count;exposure/5;2,5/3;1,5 |  | 0 | 0.1946 to 6.439
            proportion | successes,trials/0,10                            |                      | 0 | 0 to 0.3085
            proportion | successes,trials/11,10                           |                      | 1 | more successes
            proportion | successes,trials/0,0 |  | 1 | whole number from 1
            proportion | successes,trials/1000000000,1000000000 |  | 0 | 1.000 to 1
            proportion | successes,trials/1,1 |  | 0 | 0.2065
            rank-trend | year,value/1,5/2,5/3,5                           |                      | 0 | All values are the same
            rank-trend | year,value/1,5/1,6/1,4                           |                      | 0 | belong to one year
            rank-trend | year,value                                       |                      | 1 | no rows
            rank-trend | year,value/1,5/2,6 |  | 0 | at least 3
            rank-trend | year,value/1,5/2,6/3,7/4,1 |  | 0 | an open limit could be anything
            rank-trend | year,value/3,5/3,6/2,9/5,1 |  | 0 | no exact probability
            rank-trend | year,value/3,/4,6/2,9/5,1/6,2 |  | 0 | left out as a gap
            rank-trend | year,value/1,1e15/2,-1e15/3,1e-15/4,0 |  | 0 | -1.667E+14
            rank-trend | year;value/1;1,5/2;2,5/3;0,5/4;7,25 |  | 0 | 1.458
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
        } else if (exitCode == ExitCode.PROBLEMS) {
            assertThat(told.err()).contains("table.csv");
        }
    }

    /** Marks of the byte order, quotation marks, other alphabets and line ends, as spreadsheets of several makes write them. */
    @ParameterizedTest(name = "{0} in {1}")
    @CsvSource(delimiter = '|', quoteCharacter = '#', textBlock = """
            <mark>"site","year","count"~"a, ""b"" c","2001","5"~"a, ""b"" c","2002","3" | UTF-8
            site,year,count~ä,2001,5~ä,2002,3                                               | windows-1252
            <mark>site;year;count~é;2001;5~é;2002;3                                         | UTF-16LE
            site<tab>year<tab>count~a<tab>2001<tab>5~a<tab>2002<tab>3                       | UTF-8
            """)
    void readsWhatSpreadsheetsWrite(String rows, String encoding) throws IOException {
        String text = rows.replace("~", "\r\n").replace("<tab>", "\t").replace("<mark>", "\uFEFF") + "\r\n";
        Path table = Files.write(folder.resolve("table.csv"), text.getBytes(Charset.forName(encoding)));

        CommandRun told = CommandRun.of("estimate", "trend", table);

        assertThat(told.exitCode()).as(told.err()).isEqualTo(ExitCode.DONE);
        assertThat(told.out()).contains("Change a year: −40.0% (−85.7 to +151.1)");
    }

    @ParameterizedTest(name = "{0} seasons, {1}: {2}")
    @CsvSource({
        "500, line, 498 degrees of freedom",
        "1000, line, up to 500",
        "1000, seasons, up to 500",
        "1000, curve, up to 500"
    })
    void saysHowManySeasonsAreTooMany(int seasons, String shape, String says) throws IOException {
        StringBuilder text = new StringBuilder("site,year,count\n");
        for (int year = 1001; year <= 1000 + seasons; year++) {
            text.append("a,").append(year).append(',').append(year % 5).append('\n');
        }
        Path table = Files.writeString(folder.resolve("table.csv"), text);

        CommandRun told = CommandRun.of("estimate", "trend", table, "--shape", shape);

        assertThat(told.exitCode()).as(told.err()).isEqualTo(ExitCode.DONE);
        assertThat(told.out()).contains(says);
    }
}

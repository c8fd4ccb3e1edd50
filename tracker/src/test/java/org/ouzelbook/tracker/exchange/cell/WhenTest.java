package org.ouzelbook.tracker.exchange.cell;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.Year;
import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WhenTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
    private static final DateChoices NOTHING_KNOWN =
            new DateChoices(TODAY, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    2026-04-13               | 2026-04-13
                    2026-4-3                 | 2026-04-03
                    2026/04/13               | 2026-04-13
                    20260413                 | 2026-04-13
                    13/04/2026               | 2026-04-13
                    04/13/2026               | 2026-04-13
                    13.4.26                  | 2026-04-13
                    13.04.1998               | 1998-04-13
                    13-4-98                  | 1998-04-13
                    5/5/2025                 | 2025-05-05
                    12-Apr-2026              | 2026-04-12
                    12-Apr-26                | 2026-04-12
                    12 April 2026            | 2026-04-12
                    12th of April 2026       | 2026-04-12
                    April 12 2026            | 2026-04-12
                    April 12, 2026           | 2026-04-12
                    Apr 3 2026               | 2026-04-03
                    2026 Apr 12              | 2026-04-12
                    1 Sept 2025              | 2025-09-01
                    Mon 13 Apr 2026          | 2026-04-13
                    Monday, 13/04/2026       | 2026-04-13
                    Thu 03/04/2025           | 2025-04-03
                    2026-04-13 00:00:00      | 2026-04-13
                    29/02/2024               | 2024-02-29
                    """)
    void readsADayThatCanOnlyBeOne(String text, LocalDate day) {
        assertThat(When.of(text, NOTHING_KNOWN)).isEqualTo(new When.Read(day, Optional.empty(), Optional.empty()));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    2026-04-13T07:10+01:00                          | 07:10 |
                    2026-04-13 07:10                                | 07:10 |
                    13/04/2026 7:10 am                              | 07:10 |
                    2026-04-13T07:10+01:00/2026-04-13T10:35+01:00   | 07:10 | 10:35
                    2026-04-13T07:10/10:35                          | 07:10 | 10:35
                    """)
    void readsTimesBesideTheDay(String text, LocalTime start, LocalTime end) {
        assertThat(When.of(text, NOTHING_KNOWN))
                .isEqualTo(new When.Read(LocalDate.of(2026, 4, 13), Optional.of(start), Optional.ofNullable(end)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    03/04/2025   | import.ask.dateOrder
                    3.4.98       | import.ask.dateOrder
                    46125        | import.ask.serialDates
                    Apr 12       | import.ask.year
                    12-Apr       | import.ask.year
                    2026-03-29T23:30Z | import.ask.zone
                    """)
    void leavesOpenWhatNothingSettles(String text, String question) {
        assertThat(When.of(text, NOTHING_KNOWN))
                .isInstanceOfSatisfying(
                        When.Open.class,
                        open -> assertThat(open.question().key()).isEqualTo(question));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    31/04/2025      | import.date.monthTooShort
                    29/02/2025      | import.date.noLeapYear
                    30 February 2024| import.date.monthTooShort
                    13/13/2025      | import.date.noMonth
                    26/11/2026      | import.date.future
                    2027-01-01      | import.date.future
                    mid Apr         | import.date.vague
                    late April 2025 | import.date.vague
                    c. 12 Apr 2025  | import.date.vague
                    12 Apr 2025?    | import.date.vague
                    12/13-4-01      | import.date.severalDays
                    12-13/4         | import.date.severalDays
                    12 and 13 Apr 2025 | import.date.severalDays
                    2026-04-12/2026-04-13 | import.date.severalDays
                    12/4            | import.date.noYear
                    Apr 2012        | import.date.noDay
                    2012            | import.date.noDay
                    04/2012         | import.date.noDay
                    Tue 13 Apr 2026 | import.date.otherWeekday
                    3/4/5           | import.date.unknownForm
                    13/4/206        | import.date.unknownForm
                    0001-01-01      | import.date.tooOld
                    #REF!           | import.date.unknownForm
                    yesterday       | import.date.unknownForm
                    00/00/0000      | import.date.tooOld
                    """)
    void refusesWhatIsNoDayAndSaysWhy(String text, String reason) {
        assertThat(When.of(text, NOTHING_KNOWN))
                .isInstanceOfSatisfying(
                        When.Refused.class,
                        refused -> assertThat(refused.why().key()).isEqualTo(reason));
    }

    @Test
    void takesTheOrderThatTheFileShows() {
        DateChoices dayFirst = NOTHING_KNOWN.withOrder(Optional.of(DateOrder.DAY_FIRST));
        DateChoices monthFirst = NOTHING_KNOWN.withOrder(Optional.of(DateOrder.MONTH_FIRST));

        assertThat(day("03/04/2025", dayFirst)).isEqualTo(LocalDate.of(2025, 4, 3));
        assertThat(day("03/04/2025", monthFirst)).isEqualTo(LocalDate.of(2025, 3, 4));
        assertThat(When.of("25/04/2025", monthFirst)).isInstanceOf(When.Refused.class);
    }

    /** ECMA-376 part 1, 18.17.4.1: serial 39448 is 1 January 2008 in the 1900 system, 37986 in the 1904 system. */
    @Test
    void readsSpreadsheetDaysOnlyWhenTold() {
        assertThat(day("39448", with(SerialDates.EXCEL_1900))).isEqualTo(LocalDate.of(2008, 1, 1));
        assertThat(day("37986", with(SerialDates.EXCEL_1904))).isEqualTo(LocalDate.of(2008, 1, 1));
    }

    @Test
    void takesTheYearThatTheSurveyorSaid() {
        DateChoices told = new DateChoices(
                TODAY, Optional.empty(), Optional.empty(), Optional.of(Year.of(2025)), Optional.empty());

        assertThat(day("Apr 12", told)).isEqualTo(LocalDate.of(2025, 4, 12));
        assertThat(When.of("29 Feb", told)).isInstanceOf(When.Refused.class);
    }

    /** The European Union's summer time began at 01:00 UTC on 29 March 2026 (Directive 2000/84/EC: last Sunday of March). */
    @Test
    void turnsUtcIntoLocalTimeAcrossMidnightAndSummerTime() {
        DateChoices there = new DateChoices(
                TODAY, Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(ZoneId.of("Europe/London")));

        assertThat(When.of("2026-03-29T23:30Z", there))
                .isEqualTo(
                        new When.Read(LocalDate.of(2026, 3, 30), Optional.of(LocalTime.of(0, 30)), Optional.empty()));
        assertThat(When.of("2026-03-28T23:30Z", there))
                .isEqualTo(
                        new When.Read(LocalDate.of(2026, 3, 28), Optional.of(LocalTime.of(23, 30)), Optional.empty()));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"7:12", "07:12", "0712", "712", "7.12", "7,12", "7h12", "7:12 am", "07:12:30", "07:12+01:00"})
    void readsManyWaysOfWritingTwelvePastSeven(String text) {
        assertThat(WrittenTime.of(text)).isEqualTo(new WrittenTime.Read(LocalTime.of(7, 12)));
    }

    @Test
    void knowsMorningFromEvening() {
        assertThat(WrittenTime.of("7:12 pm")).isEqualTo(new WrittenTime.Read(LocalTime.of(19, 12)));
        assertThat(WrittenTime.of("7 p.m.")).isEqualTo(new WrittenTime.Read(LocalTime.of(19, 0)));
        assertThat(WrittenTime.of("12:30 am")).isEqualTo(new WrittenTime.Read(LocalTime.of(0, 30)));
        assertThat(WrittenTime.of("12:30 pm")).isEqualTo(new WrittenTime.Read(LocalTime.of(12, 30)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"7", "7.5", "25:00", "07:60", "0.2986", "early", "13:00 pm", "~0700"})
    void refusesTimesThatAreNone(String text) {
        assertThat(WrittenTime.of(text)).isInstanceOf(WrittenTime.Refused.class);
    }

    private static LocalDate day(String text, DateChoices choices) {
        return ((When.Read) When.of(text, choices)).date();
    }

    private static DateChoices with(SerialDates serials) {
        return new DateChoices(TODAY, Optional.empty(), Optional.of(serials), Optional.empty(), Optional.empty());
    }
}

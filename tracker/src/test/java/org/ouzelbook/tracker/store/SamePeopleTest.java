package org.ouzelbook.tracker.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.ouzelbook.tracker.store.BookFixture.*;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.BiPredicate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ouzelbook.tracker.domain.Progress;

/** Observers whose names several people spelt in their own ways, in books that are put together. */
class SamePeopleTest {
    private static final List<String> NAMES = List.of("Anna", "Ben", "Cora");
    private static final LocalDate DAY = LocalDate.of(2026, 9, 1);

    /** Invented people, each with the ways in which they are written. */
    private static final List<List<String>> PEOPLE = List.of(
            List.of("Jo Marl", "J. Marl", "jo marl ", "JM", "JO MARL", "Marl, J."),
            List.of("Jan Marl", "Jan K. Marl", "JKM"),
            List.of("Zoë Dell", "Zoe Dell", "Z. Dell", "ZD"),
            List.of("Bo Hask", "BH", "bo-hask"));

    @RegisterExtension
    final VolunteerBooks books = new VolunteerBooks();

    private Book start;
    private int made;

    @BeforeEach
    void makeABook() {
        start = books.empty();
        add(start, WATER, LINE);
    }

    private Book with(String... observers) {
        Book book = books.started();
        for (String observer : observers) {
            add(book, casual(WATER, "", 6 + made++ / 100.0).observedBy(observer));
        }
        return book;
    }

    private static MergeResult merge(Book into, Book from, String name) {
        return Volunteers.merge(into, Volunteers.bundle(from, name), MergeAnswers.NONE);
    }

    private static List<SamePair> pairs(Book book) {
        return book.read(BookView::openPairs).stream()
                .filter(SamePair::ofPeople)
                .toList();
    }

    private static List<List<Object>> asked(Book book) {
        return pairs(book).stream()
                .map(pair ->
                        List.of(pair.told().facts().get(0), pair.told().facts().get(2)))
                .toList();
    }

    private static Map<String, String> people(Book book) {
        return book.read(BookView::samePeople);
    }

    /** Answers every pair that is open, and those that open then. */
    private static void answer(Book book, BiPredicate<String, String> same) {
        for (List<SamePair> pairs = pairs(book); !pairs.isEmpty(); pairs = pairs(book)) {
            SamePair pair = pairs.get(0);
            List<Object> names = pair.told().facts();
            book.change(SOMETHING, "ina", edit -> {
                edit.decide(pair, same.test((String) names.get(0), (String) names.get(2)), "Ina", DAY);
                return null;
            });
        }
    }

    private static boolean isOnePerson(String one, String other) {
        return PEOPLE.stream().anyMatch(person -> person.contains(one) && person.contains(other));
    }

    @Test
    void proposesSpellingsOfOnePersonAndNoMoreThanItMustAsk() {
        Book anna = with("J. Marl", "jo marl ", "Ben Dell", "Jo Marl, Ben Dell");
        Book mine = with("Jo Marl", "JM", "BD", "Bo Dust", "Anna Berg");

        merge(mine, anna, "Anna");

        assertThat(asked(mine))
                .containsExactly(
                        List.of("Jo Marl", "jo marl "), List.of("Jo Marl", "J. Marl"), List.of("Jo Marl", "JM"));
        assertThat(pairs(mine)).extracting(SamePair::otherOwner).containsExactly("Anna", "Anna", "");
    }

    @Test
    void proposesNothingInABookThatWasNeverPutTogether() {
        add(
                start,
                casual(WATER, "", 7).observedBy("Jo Marl"),
                casual(WATER, "", 8).observedBy("J. Marl"));

        assertThat(asked(start)).isEmpty();
    }

    @Test
    void remembersTheAnswerHereAndInEveryBookThatGetsIt() {
        Book anna = with("J. Marl");
        Book mine = with("Jo Marl");
        merge(mine, anna, "Anna");
        List<String> written = Volunteers.content(mine);
        answer(mine, (one, other) -> true);

        assertThat(people(mine)).containsExactly(Map.entry("J. Marl", "Jo Marl"));
        assertThat(Volunteers.content(mine)).isEqualTo(written);
        int steps = mine.history(100).size();
        merge(mine, anna, "Anna");
        assertThat(mine.history(100)).hasSize(steps);
        assertThat(pairs(mine)).isEmpty();
        merge(anna, mine, "Ina");
        assertThat(pairs(anna)).isEmpty();
        assertThat(people(anna)).isEqualTo(people(mine));
        assertThat(mine.check(Progress.NONE)).isEmpty();
        assertThat(anna.check(Progress.NONE)).isEmpty();

        mine.undo("ina", Progress.NONE);
        assertThat(people(mine)).isEmpty();
        assertThat(pairs(mine)).hasSize(1);
        mine.undo("ina", Progress.NONE);
        assertThat(pairs(mine)).isEmpty();
        assertThat(Volunteers.content(mine)).noneMatch(line -> line.contains("J. Marl"));
    }

    @Test
    void keepsTwoPeopleTwoWithoutAskingAgainInOtherWords() {
        Book mine = with("Jo Marl", "J. Marl");
        answer(mine, (one, other) -> false);
        merge(mine, with("JO MARL"), "Anna");

        assertThat(asked(mine)).containsExactly(List.of("Jo Marl", "JO MARL"));
        answer(mine, (one, other) -> true);

        assertThat(people(mine)).containsExactly(Map.entry("JO MARL", "Jo Marl"));
        assertThat(asked(mine)).isEmpty();
    }

    @Test
    void asksWhereTwoPeopleDecidedOtherwise() {
        Book anna = with("J. Marl", "Jo Marl");
        Book mine = books.started();
        merge(mine, anna, "Anna");
        answer(mine, (one, other) -> true);
        answer(anna, (one, other) -> false);

        MergeResult result = merge(mine, anna, "Anna");

        assertThat(result.questions())
                .extracting(MergeQuestion::about)
                .containsExactly(MergeQuestion.About.CONTRADICTION);
        Volunteers.merge(mine, Volunteers.bundle(anna, "Anna"), question -> MergeAnswer.THEIRS);
        assertThat(people(mine)).isEmpty();
        assertThat(pairs(mine)).isEmpty();
        assertThat(merge(mine, anna, "Anna").questions()).isEmpty();
    }

    @Test
    void refusesAPairOfNamesWhoseKeysAreNotTheirs() {
        Book anna = with("J. Marl", "Jo Marl");
        answer(anna, (one, other) -> true);
        Map<String, byte[]> parts = new LinkedHashMap<>(Volunteers.parts(anna, "Anna"));
        String part = Together.PAIRS.name() + Bundle.LINES;
        String text = new String(parts.get(part), StandardCharsets.UTF_8);
        assertThat(text).contains("J. Marl");

        for (String harmed : List.of(
                text.replace("J. Marl", "B. Dell"),
                text.replace("\"one_name\"", "\"decided_by\""),
                text.replace("\"person\"", "\"nobody\""))) {
            parts.put(part, harmed.getBytes(StandardCharsets.UTF_8));
            assertThatThrownBy(() -> Volunteers.read(parts)).isInstanceOf(BookException.class);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void asksTheSameInEveryOrderAndComesToTheSame(long seed) {
        Random random = new Random(seed);
        List<Book> theirs = new ArrayList<>();
        for (int i = 0; i < NAMES.size(); i++) {
            List<String> observers = new ArrayList<>();
            PEOPLE.forEach(person ->
                    person.stream().filter(name -> random.nextInt(3) == 0).forEach(observers::add));
            theirs.add(with(observers.toArray(String[]::new)));
        }
        int[][] orders = {{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}};
        List<Object> came = new ArrayList<>();
        for (int[] order : orders) {
            Book all = books.started();
            for (int who : order) {
                merge(all, theirs.get(who), NAMES.get(who));
            }
            List<List<Object>> asked = asked(all);
            answer(all, SamePeopleTest::isOnePerson);
            came.add(List.of(asked, people(all), Volunteers.content(all), bundled(all)));
            for (int who : order) {
                merge(all, theirs.get(who), NAMES.get(who));
            }
            assertThat(pairs(all)).isEmpty();
            assertThat(people(all).entrySet()).allMatch(entry -> isOnePerson(entry.getKey(), entry.getValue()));
            assertThat(all.check(Progress.NONE)).isEmpty();
        }

        assertThat(came).allMatch(came.get(0)::equals);
    }

    /** The decisions as they go out. */
    private static List<String> bundled(Book book) {
        return book.read(view -> Together.PAIRS.rows(view.database(), "").stream()
                .map(row -> row.text("one_name") + row.text("other_name") + row.yes("is_same"))
                .sorted(Comparator.naturalOrder())
                .toList());
    }

    /** Names that an answer before the last book already settled come to the same as in any other order. */
    @ParameterizedTest
    @ValueSource(longs = {11, 12})
    void comesToTheSameWhoeverAnswersFirst(long seed) {
        Random random = new Random(seed);
        List<Book> theirs = new ArrayList<>();
        for (int i = 0; i < NAMES.size(); i++) {
            List<String> observers = new ArrayList<>(List.of("Jo Marl"));
            PEOPLE.get(0).stream().filter(name -> random.nextBoolean()).forEach(observers::add);
            PEOPLE.get(1).stream().filter(name -> random.nextBoolean()).forEach(observers::add);
            theirs.add(with(observers.stream().distinct().toArray(String[]::new)));
        }
        List<Map<String, String>> came = new ArrayList<>();
        for (int[] order : new int[][] {{0, 1, 2}, {1, 2, 0}, {2, 1, 0}}) {
            Book all = books.started();
            for (int who : order) {
                answer(theirs.get(who), SamePeopleTest::isOnePerson);
                merge(all, theirs.get(who), NAMES.get(who));
                answer(all, SamePeopleTest::isOnePerson);
            }
            came.add(people(all));
        }

        assertThat(came).allMatch(came.get(0)::equals);
    }
}

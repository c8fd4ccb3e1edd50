package org.ouzelbook.tracker.exchange;

import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.ImportedFile;
import org.ouzelbook.tracker.domain.Keys;
import org.ouzelbook.tracker.exchange.cell.DateChoices;
import org.ouzelbook.tracker.exchange.cell.DecimalSign;

/**
 * What every row of one table is read with.
 *
 * @param survey what the table shows of itself
 * @param answers what the surveyor said
 * @param book what the book holds so far
 * @param dates what is known of the dates
 * @param decimals the sign before decimals
 * @param unknownColumns where the columns stand that go into the note
 * @param file the file as the book will remember it
 */
record TableContext(
        TableSurvey survey,
        ImportAnswers answers,
        BookIndex book,
        DateChoices dates,
        Optional<DecimalSign> decimals,
        List<Integer> unknownColumns,
        ImportedFile file) {
    static TableContext of(TableSurvey survey, ImportAnswers answers, BookIndex book) {
        String name = survey.file().source().plainName();
        String sha256 = survey.file().bytes().sha256();
        return new TableContext(
                survey,
                answers,
                book,
                survey.dateChoices(answers),
                survey.decimals(answers),
                survey.header().unknown(),
                book.importedFile(sha256).orElseGet(() -> new ImportedFile(Keys.next(), name, sha256)));
    }

    String name() {
        return survey.file().source().name();
    }

    Header header() {
        return survey.header();
    }
}

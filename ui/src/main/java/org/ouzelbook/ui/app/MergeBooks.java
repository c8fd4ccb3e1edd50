package org.ouzelbook.ui.app;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.exchange.bundle.BundleFile;
import org.ouzelbook.tracker.exchange.file.UnreadableFile;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.BookEdit;
import org.ouzelbook.tracker.store.Bundle;
import org.ouzelbook.tracker.store.MergeAnswer;
import org.ouzelbook.tracker.store.MergeAnswers;
import org.ouzelbook.tracker.store.MergeQuestion;
import org.ouzelbook.tracker.store.MergeResult;
import org.ouzelbook.tracker.store.SamePair;

/** Puts other people's books into one, all of it in one step or nothing. */
public final class MergeBooks {
    /** How many letters of a pair's code are shown; enough to tell some thousands apart. */
    private static final int SHOWN = 6;

    private final MergeRequest request;
    private final Progress progress;

    private MergeBooks(MergeRequest request, Progress progress) {
        this.request = request;
        this.progress = progress;
    }

    /**
     * Merges, or rehearses it.
     *
     * @param request what, and how
     * @param progress hears how far it is, and may stop
     * @return what was done, or would be
     * @throws WrongRequest if a bundle must be refused, or an answer answers nothing
     * @throws org.ouzelbook.tracker.store.BookException if the book cannot be opened, a bundle is damaged, or an answer does
     *     not fit its question
     */
    public static MergeReport run(MergeRequest request, Progress progress) {
        return new MergeBooks(request, progress).run();
    }

    private MergeReport run() {
        List<Bundle> bundles = request.bundles().stream().map(MergeBooks::read).toList();
        try (Book book = Book.open(request.book())) {
            if (request.mode() == ImportRequest.Mode.REHEARSE) {
                return book.rehearse(edit -> merge(edit, bundles));
            }
            return book.change(what(bundles), request.who(), edit -> {
                MergeReport report = merge(edit, bundles);
                if (!report.questions().isEmpty() && request.mode() == ImportRequest.Mode.ALL_OR_NOTHING) {
                    throw new Undecided(report);
                }
                return report;
            });
        } catch (Undecided e) {
            return e.report;
        }
    }

    /** Leaves the change half-way, so that the book undoes it, while something is open. */
    private static final class Undecided extends RuntimeException {
        private static final long serialVersionUID = 1;
        private final transient MergeReport report;

        private Undecided(MergeReport report) {
            super("Something is open", null, false, false);
            this.report = new MergeReport(false, false, report.bundles(), report.questions(), 0, report.pairs());
        }
    }

    private static Bundle read(Path file) {
        try {
            return BundleFile.read(file);
        } catch (UnreadableFile e) {
            throw new WrongRequest(e.why());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Message what(List<Bundle> bundles) {
        return bundles.isEmpty()
                ? Message.of("history.pairs")
                : Message.of(
                        "history.merge",
                        bundles.stream()
                                .map(bundle -> Message.of("history.merge.bundle", bundle.from(), bundle.name()))
                                .toList());
    }

    private MergeReport merge(BookEdit edit, List<Bundle> bundles) {
        List<MergeResult> results = new ArrayList<>();
        List<MergeQuestion> questions = new ArrayList<>();
        for (Bundle bundle : bundles) {
            MergeResult result = edit.merge(bundle, request.answers(), progress);
            results.add(result);
            questions.addAll(result.questions());
        }
        List<SamePair> proposed = edit.openPairs();
        int decided = decide(edit, proposed);
        refuseIdle(results, proposed);
        boolean merges = request.mode() != ImportRequest.Mode.REHEARSE;
        List<SamePair> pairs = (decided == 0 ? proposed : edit.openPairs())
                .stream()
                        .map(pair -> new SamePair(
                                pair.code().substring(0, SHOWN),
                                pair.table(),
                                pair.one(),
                                pair.other(),
                                pair.told(),
                                pair.oneOwner(),
                                pair.otherOwner()))
                        .toList();
        return new MergeReport(merges, !merges, results, questions, decided, pairs);
    }

    private int decide(BookEdit edit, List<SamePair> proposed) {
        int decided = 0;
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        for (SamePair pair : proposed) {
            Optional<MergeAnswer> answer = request.answers().to(pair);
            if (answer.isPresent()) {
                edit.decide(pair, answer.get() == MergeAnswer.SAME, request.who(), today);
                decided++;
            }
        }
        return decided;
    }

    /** An answer to nothing is a slip of the pen, and must not go unseen; nor may one that answers two things. */
    private void refuseIdle(List<MergeResult> results, List<SamePair> pairs) {
        for (String code : request.answers().byCode().keySet()) {
            long answered = results.stream()
                            .flatMap(result -> result.asked().stream())
                            .distinct()
                            .filter(asked -> asked.startsWith(code))
                            .count()
                    + pairs.stream()
                            .filter(pair -> pair.code().startsWith(code))
                            .count();
            if (!code.equals(MergeAnswers.ALL) && answered != 1) {
                throw new WrongRequest(Message.of(answered == 0 ? "merge.wrong.idle" : "merge.wrong.ambiguous", code));
            }
        }
    }
}

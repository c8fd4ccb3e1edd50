package org.ouzelbook.ui.window;

import java.time.LocalDate;
import java.time.Year;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.BookCounts;
import org.ouzelbook.ui.app.SealSeason;
import org.ouzelbook.ui.app.Texts;

/** The seal of the season that is shown: what was answered when it was reported, and what differs today. */
final class SealViewModel {
    private final BookViewModel book;
    private final Work work;
    private final ReadOnlyObjectWrapper<Optional<Explanation>> told = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyBooleanWrapper sealed = new ReadOnlyBooleanWrapper();

    SealViewModel(BookViewModel book, Work work) {
        this.book = book;
        this.work = work;
    }

    /** {@return the seal in sentences, or what sealing would do} */
    ReadOnlyObjectProperty<Optional<Explanation>> told() {
        return told.getReadOnlyProperty();
    }

    /** {@return whether the season is sealed} */
    ReadOnlyBooleanProperty sealed() {
        return sealed.getReadOnlyProperty();
    }

    private int season() {
        return book.strip().season().get();
    }

    /** Reads the seal of the season shown. */
    void read() {
        int season = season();
        Species species = book.species();
        Book open = book.book();
        Optional<BookCounts> counts = book.contents()
                .get()
                .flatMap(
                        there -> book.model().counts().get().map(modelled -> new BookCounts(there.mapped(), modelled)));
        work.start(
                Texts.of("window.work.reading"),
                progress -> {
                    if (open.read(view -> view.seal(species, season)).isEmpty()) {
                        return Optional.<SealSeason.Answer>empty();
                    }
                    return Optional.of(counts.map(model -> SealSeason.of(open, species, season, model, progress))
                            .orElseGet(() -> SealSeason.of(open, species, Optional.of(season))));
                },
                answer -> show(answer, season, species),
                book::failed);
    }

    private void show(Optional<SealSeason.Answer> answer, int season, Species species) {
        sealed.set(answer.isPresent());
        told.set(Optional.of(answer.map(this::words)
                .orElseGet(() -> new Explanation(
                        Texts.of("window.seal.title", Year.of(season), species),
                        Texts.of("window.seal.notYet"),
                        List.of(new Explanation.Section("", List.of(Texts.of("window.seal.what"))))))));
    }

    private Explanation words(SealSeason.Answer answer) {
        List<Explanation.Section> sections = new ArrayList<>();
        sections.add(compared(answer.differences(), "seal.same", "seal.differs"));
        sections.add(answer.byModel()
                .map(differences -> compared(differences, "seal.sameByModel", "seal.differsByModel"))
                .orElseGet(() -> new Explanation.Section("", List.of(Texts.of("window.seal.modelLater")))));
        if (!answer.same()) {
            sections.add(
                    section("seal.why", answer.because().stream().map(Texts::of).toList()));
        }
        List<String> figures = new ArrayList<>();
        answer.figures().forEach((name, value) -> figures.add(name + ": " + value));
        sections.add(section("window.seal.story", answer.sentences()));
        sections.add(section("window.seal.answer", figures));
        List<String> settings = new ArrayList<>();
        answer.settings().forEach((name, value) -> settings.add(name + ": " + value));
        sections.add(section("window.seal.settings", settings));
        return new Explanation(
                Texts.of("window.seal.title", answer.season(), answer.species()),
                Texts.of("window.seal.sealed", answer.on(), answer.by(), answer.program()),
                sections);
    }

    private static Explanation.Section compared(List<Message> differences, String same, String differs) {
        return differences.isEmpty()
                ? new Explanation.Section("", List.of(Texts.of(same)))
                : section(differs, differences.stream().map(Texts::of).toList());
    }

    private static Explanation.Section section(String heading, List<String> sentences) {
        return new Explanation.Section(Texts.of(heading), sentences);
    }

    /** Seals the season shown, or takes its seal away. */
    void turn() {
        boolean remove = sealed.get();
        int season = season();
        Species species = book.species();
        Book open = book.book();
        work.start(
                Texts.of("window.work.sealing"),
                progress -> remove
                        ? SealSeason.remove(open, species, Optional.of(season), book.who())
                        : SealSeason.seal(
                                open,
                                species,
                                Optional.of(season),
                                book.who(),
                                LocalDate.now(ZoneId.systemDefault()),
                                progress),
                answer -> {
                    book.done(Texts.of(remove ? "seal.removed" : "seal.sealed", answer.season(), answer.species()));
                    read();
                },
                book::failed);
    }
}

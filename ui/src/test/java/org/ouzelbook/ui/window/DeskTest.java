package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.ui.strip.StripView;
import org.ouzelbook.ui.strip.Subject;

/** What the window remembers. */
class DeskTest {
    @TempDir
    private Path folder;

    @Test
    void remembersWhereTheWindowStoodAndWhatWasLookedAt() {
        Path memory = folder.resolve("deep").resolve("window.properties");
        Path book = folder.resolve("arrel: a|b=c.mv.db");
        Desk desk = new Desk(memory);
        desk.keep(new Desk.Place(10, 20, 1400, 800, true));
        UUID river = UUID.fromString("00000000-0000-4000-8000-000000000001");
        StripPlace bend = new StripPlace(
                2024,
                new StripView.OnePlace(
                        river, new Stretch(new Chainage(1500), new Chainage(1750.5)), "Smith’s | bend / weir=1"),
                Optional.of(new StripPlace.Near(-12.5, 4000)),
                Optional.of(new Subject.OfTerritory(2024, river, "B")));
        desk.keep(book, new Desk.View(Species.KINGFISHER, bend));

        Desk later = new Desk(memory);

        assertThat(later.place()).contains(new Desk.Place(10, 20, 1400, 800, true));
        assertThat(later.view(book)).contains(new Desk.View(Species.KINGFISHER, bend));
        assertThat(later.view(folder.resolve("other.mv.db"))).isEmpty();
    }

    @Test
    void understandsEveryViewThatItWroteAndNothingElse() {
        UUID id = UUID.fromString("00000000-0000-4000-8000-000000000002");
        List<StripView> views =
                List.of(new StripView.AllSeasons(), new StripView.OneSeason(2019), new StripView.OneBird(id));
        List<Subject> subjects =
                List.of(new Subject.OfSighting(id), new Subject.OfVisit(id), new Subject.OfLandmark(id));
        for (int i = 0; i < views.size(); i++) {
            StripPlace place = new StripPlace(2019, views.get(i), Optional.empty(), Optional.of(subjects.get(i)));
            assertThat(StripPlace.read(place.written())).contains(place);
        }

        assertThat(StripPlace.read("2021")).contains(StripPlace.of(2021));
        assertThat(StripPlace.read("")).isEmpty();
        assertThat(StripPlace.read("last year|all||")).isEmpty();
        assertThat(StripPlace.read("2019|bird/nobody||")).isEmpty();
        assertThat(StripPlace.read("2019|place/" + id + "/5/1/x||")).isEmpty();
        assertThat(StripPlace.read("2019|all|7/7|").orElseThrow().near()).isEmpty();
    }

    @Test
    void takesNoNonsenseFromItsFile() throws IOException {
        Path memory = folder.resolve("window.properties");
        Files.writeString(memory, "stand-x=far\nstand-y=0\nstand-width=3\nstand-height=\n");
        assertThat(new Desk(memory).place()).isEmpty();

        Files.writeString(memory, "stand-x=0\nstand-y=0\nstand-width=3\nstand-height=4\n");
        assertThat(new Desk(memory).place()).isEmpty();

        Files.writeString(memory, "stand-x=\\u00zz");
        assertThat(new Desk(memory).place()).isEmpty();
    }

    @Test
    void showsWhatIsAskedForBeforeWhatWasLookedAtLast() {
        StripPlace all = new StripPlace(2024, new StripView.AllSeasons(), Optional.empty(), Optional.empty());
        Optional<Desk.View> kept = Optional.of(new Desk.View(Species.KINGFISHER, all));

        assertThat(Wanted.NOTHING.place(kept)).contains(all);
        assertThat(Wanted.NOTHING.species(kept)).contains(Species.KINGFISHER);
        Wanted season = new Wanted(Optional.empty(), Optional.of(2026));
        assertThat(season.place(kept)).contains(StripPlace.of(2026));
        assertThat(season.species(kept)).contains(Species.KINGFISHER);
        Wanted dipper = new Wanted(Optional.of(Species.DIPPER), Optional.empty());
        assertThat(dipper.place(kept)).isEmpty();
        assertThat(dipper.species(kept)).contains(Species.DIPPER);
        assertThat(Wanted.NOTHING.place(Optional.empty())).isEmpty();
    }
}

package org.ouzelbook.tracker.notebook;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.notebook.LineReading.Part;
import org.ouzelbook.tracker.notebook.LineReading.Question;
import org.ouzelbook.tracker.place.Word;

/**
 * Reads one line of a notebook as sightings: {@code otter stone 0712 2 song}, {@code km 8.4 LB pair, flew up, back at 8.9},
 * {@code 14.0 pair = 14.9 song}.
 *
 * <p>A place stands in the line; everything else may, in any order. No number means one bird. {@code +} parts birds of
 * different ages at one place, {@code =} birds that were certainly different and seen at once: between two places, or at the
 * start of a line for the line before. What follows {@code "} or {@code //} is a note. A word that is not understood is asked
 * about; none is passed over.
 */
public final class NotebookLine {
    private static final Pattern NOTE = Pattern.compile("\\s*(?:[\"“”]|//)\\s*");

    private final LineContext context;
    private final List<Part> parts = new ArrayList<>();
    private final List<Question> questions = new ArrayList<>();

    private NotebookLine(LineContext context) {
        this.context = context;
    }

    /**
     * {@return what a line says}
     *
     * @param text the line
     * @param context what the line may leave unsaid
     */
    public static LineReading read(String text, LineContext context) {
        return new NotebookLine(context).read(text);
    }

    private LineReading read(String text) {
        Matcher note = NOTE.matcher(text);
        boolean noted = note.find();
        String told = noted ? text.substring(0, note.start()) : text;
        String written = noted
                ? text.substring(note.end()).replaceFirst("[\"“”]\\s*$", "").strip()
                : "";
        List<Word> words = Vocabulary.apart(Word.of(told));
        if (noted) {
            parts.add(new Part(note.start(), text.length(), Message.of("log.part.note", written)));
        }
        if (words.isEmpty()) {
            return new LineReading(
                    parts, List.of(new Question(0, 0, Message.of("log.empty"), List.of())), List.of(), List.of());
        }
        List<Sighting> sightings = birds(words, written);
        return questions.isEmpty()
                ? new LineReading(parts, questions, remarks(sightings), sightings)
                : new LineReading(parts, questions, List.of(), List.of());
    }

    private List<Sighting> birds(List<Word> words, String note) {
        boolean linked = words.get(0).text().equals("=");
        Optional<Sighting> before = linked ? context.before() : Optional.empty();
        if (linked) {
            parts.add(new Part(words.get(0).from(), words.get(0).to(), Message.of("log.part.atOnceWithLast")));
            if (before.isEmpty()) {
                ask(words.get(0), Message.of("log.nothingBefore"));
            }
        }
        List<BirdLine> lines = new ArrayList<>();
        int start = linked ? 1 : 0;
        for (int i = start; i <= words.size(); i++) {
            boolean ends = i == words.size() || words.get(i).text().equals("=");
            if (ends && i == start) {
                ask(words.get(Math.min(i, words.size() - 1)), Message.of("log.emptyAtOnce"));
            } else if (ends) {
                lines.add(line(words.subList(start, i)));
            }
            if (ends) {
                start = i + 1;
            }
            if (ends && i < words.size()) {
                parts.add(new Part(words.get(i).from(), words.get(i).to(), Message.of("log.part.atOnce")));
            }
        }
        return questions.isEmpty() ? sightings(lines, before, note) : List.of();
    }

    private BirdLine line(List<Word> words) {
        BirdLine line = new BirdLine(context, new BirdLine.Found() {
            @Override
            public void part(Word first, Word last, Message meaning) {
                parts.add(new Part(first.from(), last.to(), meaning));
            }

            @Override
            public void question(Word first, Word last, Message question, List<String> choices) {
                questions.add(new Question(first.from(), last.to(), question, choices));
            }
        });
        line.read(words);
        return line;
    }

    private void ask(Word word, Message question) {
        questions.add(new Question(word.from(), word.to(), question, List.of()));
    }

    /** Birds of different places on the line are linked to each other and to the line before; those of one place are not. */
    private List<Sighting> sightings(List<BirdLine> lines, Optional<Sighting> before, String note) {
        Optional<LocalTime> sharedTime = lines.stream()
                .flatMap(line -> line.time().stream())
                .findFirst()
                .or(() -> before.flatMap(Sighting::time));
        List<List<Sighting>> byLine = new ArrayList<>();
        for (BirdLine line : lines) {
            Optional<LocalTime> time =
                    lines.size() > 1 || before.isPresent() ? line.time().or(() -> sharedTime) : line.time();
            byLine.add(line.sightings(time, Set.of(), note));
        }
        List<Sighting> linked = new ArrayList<>();
        for (List<Sighting> here : byLine) {
            Set<UUID> atOnce = new HashSet<>();
            before.ifPresent(sighting -> atOnce.add(sighting.id()));
            byLine.stream()
                    .filter(there -> !there.equals(here))
                    .forEach(there -> there.forEach(sighting -> atOnce.add(sighting.id())));
            here.forEach(sighting -> linked.add(linked(sighting, atOnce)));
        }
        return linked;
    }

    private static Sighting linked(Sighting sighting, Set<UUID> simultaneousWith) {
        return new Sighting(
                sighting.id(),
                sighting.label(),
                sighting.visitId(),
                sighting.date(),
                sighting.time(),
                sighting.place(),
                sighting.species(),
                sighting.count(),
                sighting.age(),
                sighting.sex(),
                sighting.activities(),
                sighting.breedingCode(),
                sighting.rings(),
                simultaneousWith,
                sighting.flewTo(),
                sighting.turnedBack(),
                sighting.observer(),
                sighting.note());
    }

    private List<Message> remarks(List<Sighting> sightings) {
        List<Message> remarks = new ArrayList<>();
        if (context.visit().isEmpty()) {
            return remarks;
        }
        Visit visit = context.visit().get();
        for (Sighting sighting : sightings) {
            if (!sighting.place().riverId().equals(visit.riverId())) {
                remarks.add(Message.of(
                        "log.otherRiver",
                        context.places()
                                .network()
                                .river(sighting.place().riverId())
                                .name()));
            } else if (visit.walked()
                    .filter(walked -> !walked.contains(sighting.place().chainage()))
                    .isPresent()) {
                remarks.add(Message.of(
                        "log.outsideStretch",
                        sighting.place().chainage(),
                        visit.walked().get()));
            }
            boolean early = sighting.time().isPresent()
                    && visit.start()
                            .filter(start -> sighting.time().get().isBefore(start))
                            .isPresent();
            boolean late = sighting.time().isPresent()
                    && visit.end()
                            .filter(end -> sighting.time().get().isAfter(end))
                            .isPresent();
            if (early || late) {
                remarks.add(Message.of("log.outsideTime", sighting.time().get()));
            }
            if (!visit.lookedFor().isEmpty() && !visit.lookedFor().contains(sighting.species())) {
                remarks.add(Message.of("log.notLookedFor", sighting.species()));
            }
        }
        return remarks.stream().distinct().toList();
    }
}

package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.ouzelbook.tracker.domain.BreedingCode.EvidenceClass;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.ui.app.ByModel;
import org.ouzelbook.ui.app.DecisionAnswer;
import org.ouzelbook.ui.app.MapAnswer;
import org.ouzelbook.ui.app.MapAnswer.Cluster;
import org.ouzelbook.ui.app.MapAnswer.OnRiver;
import org.ouzelbook.ui.app.ModelLearnt;
import org.ouzelbook.ui.app.Texts;

/** A territory map for a person at a terminal: the finding first, then the table, then what to know and where to ask on. */
final class MapPage {
    private final Terminal terminal;
    private final Path book;

    MapPage(Terminal terminal, Path book) {
        this.terminal = terminal;
        this.book = book;
    }

    /** Prints the whole map. */
    void print(MapAnswer answer) {
        for (OnRiver river : answer.rivers()) {
            finding(answer, river);
            table(river);
            setAside(river);
            terminal.out().println();
        }
        answer.warnings().forEach(warning -> paragraph("cli.map.warning", warning, 6));
        if (!answer.warnings().isEmpty()) {
            terminal.out().println();
        }
        answer.withoutDecisions().ifPresent(without -> decisions(answer, without));
        rules(answer);
        learnt(answer.model());
        answer.rivers().stream()
                .flatMap(river -> river.territories().stream())
                .findFirst()
                .ifPresent(any -> say(
                        "cli.map.askWhy", ShellWords.of("map", book, "--season", answer.season(), "--why", any.id())));
    }

    private void finding(MapAnswer answer, OnRiver river) {
        MapAnswer.ByRule count = river.byRule();
        String title = Texts.of("cli.map.title", answer.species(), String.valueOf(answer.season()), river.river());
        terminal.out().println(terminal.bold(title));
        if (river.surveyedKm() == 0) {
            say("cli.map.notSurveyed", river.visits());
            return;
        }
        say(
                "cli.map.count",
                count.count(),
                count.min(),
                count.max(),
                river.surveyedKm(),
                count.count() / river.surveyedKm(),
                count.min() / river.surveyedKm(),
                count.max() / river.surveyedKm(),
                count.min() == count.max() ? 0 : 1);
        byModel(river);
        say(
                "cli.map.evidence",
                river.counted(EvidenceClass.CONFIRMED),
                river.counted(EvidenceClass.PROBABLE),
                river.counted(EvidenceClass.POSSIBLE),
                count.edge(),
                count.unassigned(),
                river.effectiveVisits(),
                river.visits());
    }

    private void byModel(OnRiver river) {
        ByModel model = river.byModel();
        if (model.estimate().isEmpty()) {
            model.why().ifPresent(why -> say("cli.map.byModelNot", Texts.of(why)));
            return;
        }
        double estimate = model.estimate().getAsDouble();
        double lower = model.lower().orElse(0);
        double upper = model.upper().orElse(0);
        double km = river.surveyedKm();
        terminal.out()
                .println(Lines.of(
                        Texts.of(
                                "cli.map.byModel",
                                estimate,
                                lower,
                                upper,
                                model.level(),
                                km > 0 ? 1 : 0,
                                km,
                                estimate / km,
                                lower / km,
                                upper / km,
                                model.unseen().orElse(0)),
                        0));
        for (ByModel.Room room : model.roomForUnseen()) {
            say("cli.map.room", room.fromKm(), room.toKm(), room.probability());
        }
        if (!model.foundByVisit().isEmpty()) {
            List<String> visits = model.foundByVisit().stream()
                    .map(visit -> Texts.of("cli.map.foundOne", visit.date(), visit.found(), visit.passed()))
                    .toList();
            terminal.out().println(Lines.of(Texts.of("cli.map.found", String.join("; ", visits)), 0));
        }
    }

    private void learnt(ModelLearnt learnt) {
        if (learnt.riverSeasons() > 0) {
            paragraph(
                    "cli.map.learnt",
                    0,
                    learnt.riverSeasons(),
                    learnt.findingChance().estimate(),
                    learnt.findingChance().lower(),
                    learnt.findingChance().upper(),
                    learnt.lengthKm().estimate(),
                    learnt.lengthKm().lower(),
                    learnt.lengthKm().upper(),
                    learnt.straysPerTenKm().estimate(),
                    learnt.straysPerTenKm().lower(),
                    learnt.straysPerTenKm().upper());
        }
    }

    private void table(OnRiver river) {
        Table table = Table.of(
                "",
                Texts.of("cli.map.km"),
                Texts.of("cli.map.records"),
                Texts.of("cli.map.breeding"),
                Texts.of("cli.map.standing"),
                Texts.of("cli.map.model"));
        for (Cluster territory : river.territories()) {
            table.add(
                    territory.id(),
                    km(territory),
                    String.valueOf(
                            territory.sightings().size() + territory.nests().size()),
                    breeding(territory),
                    Texts.word(territory.standing()),
                    probability(territory));
        }
        terminal.out().println();
        table.print(terminal);
    }

    private static String km(Cluster territory) {
        return String.format(Locale.ROOT, "%.2f–%.2f", territory.fromKm(), territory.toKm());
    }

    private static String probability(Cluster territory) {
        return territory.probability().isPresent()
                ? String.format(Locale.ROOT, "%.2f", territory.probability().getAsDouble())
                : "–";
    }

    private static String breeding(Cluster territory) {
        return territory
                .evidence()
                .map(evidence -> Texts.of(
                        "cli.map.breedingCode",
                        evidence,
                        territory.breedingCode().orElse(0)))
                .orElse("–");
    }

    private void setAside(OnRiver river) {
        List<MapAnswer.SetAside> aside = river.setAside();
        if (!aside.isEmpty()) {
            terminal.out().println();
            say("cli.map.setAside", aside.size());
            aside.forEach(one -> say("cli.map.setAsideOne", one.sighting(), Texts.of(one.because())));
        }
    }

    /** Prints why one territory stands, or does not. */
    void explain(MapAnswer answer, OnRiver river, Cluster territory) {
        terminal.out()
                .println(terminal.bold(Texts.of(
                        "cli.map.whyTitle",
                        territory.id(),
                        river.river(),
                        km(territory),
                        String.valueOf(answer.season()),
                        territory.standing())));
        list(territory.because());
        if (!territory.hangsOn().isEmpty()) {
            say("cli.map.hangsOn");
            list(territory.hangsOn());
        }
    }

    private void list(List<Message> messages) {
        messages.forEach(message -> paragraph("cli.map.item", message, 4));
    }

    private void decisions(MapAnswer answer, MapAnswer without) {
        say("cli.map.decisions");
        for (DecisionAnswer decision : answer.decisions()) {
            paragraph(
                    "cli.map.item",
                    Message.of(
                            decision.note().isEmpty() ? "cli.map.decision" : "cli.map.decisionBecause",
                            decision.kind(),
                            decision.km(),
                            decision.river(),
                            decision.by(),
                            decision.on(),
                            decision.note().orElse("")),
                    4);
        }
        for (OnRiver river : without.rivers()) {
            MapAnswer.ByRule count = river.byRule();
            say(
                    "cli.map.without",
                    river.river(),
                    count.count(),
                    count.min(),
                    count.max(),
                    count.min() == count.max() ? 0 : 1);
        }
        terminal.out().println();
    }

    private void rules(MapAnswer answer) {
        say(
                "cli.map.rules",
                SeasonWindow.DayOfYear.word(answer.settings().seasonFrom()),
                SeasonWindow.DayOfYear.word(answer.settings().seasonTo()),
                answer.settings()
                        .minimumRegistrations()
                        .map(String::valueOf)
                        .orElseGet(() -> Texts.of(
                                "cli.map.rulesByVisits",
                                answer.settings().registrationsWithFewVisits(),
                                answer.settings().registrationsWithManyVisits(),
                                answer.settings().manyVisits())),
                answer.settings().minimumSpreadDays(),
                answer.settings().maximumLengthMetres() / 1000);
    }

    private void paragraph(String key, Message message, int furtherIn) {
        paragraph(key, furtherIn, message);
    }

    private void paragraph(String key, int furtherIn, Object... facts) {
        terminal.out().println(Lines.of(Texts.of(key, facts), furtherIn));
    }

    private void say(String key, Object... facts) {
        terminal.out().println(Texts.of(key, facts));
    }
}

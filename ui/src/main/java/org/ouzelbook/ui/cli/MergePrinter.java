package org.ouzelbook.ui.cli;

import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.store.MergeAnswer;
import org.ouzelbook.tracker.store.MergeQuestion;
import org.ouzelbook.tracker.store.MergeResult;
import org.ouzelbook.tracker.store.SamePair;
import org.ouzelbook.ui.app.MergeReport;
import org.ouzelbook.ui.app.Texts;

/** Tells a person what came of putting books together, what is open, and what to do next. */
final class MergePrinter {
    private static final int SHOWN = 20;

    private final Terminal terminal;

    MergePrinter(Terminal terminal) {
        this.terminal = terminal;
    }

    void print(MergeReport report) {
        report.bundles().forEach(bundle -> bundle(bundle, report));
        list("merge.told.questions", report.questions(), this::question);
        list("merge.told.people", pairs(report, true), this::pair);
        list("merge.told.pairs", pairs(report, false), this::pair);
        line("");
        line(ending(report));
    }

    private void line(String text) {
        terminal.out().println(text);
    }

    private void told(String key, Object... facts) {
        line("  " + Texts.of(key, facts));
    }

    private interface Line<T> {
        void of(T one);
    }

    private <T> void list(String heading, List<T> all, Line<T> print) {
        if (all.isEmpty()) {
            return;
        }
        line("");
        line(terminal.bold(Texts.of(heading)));
        all.subList(0, Math.min(SHOWN, all.size())).forEach(print::of);
        if (all.size() > SHOWN) {
            told("merge.told.more", all.size() - SHOWN);
        }
    }

    private void bundle(MergeResult bundle, MergeReport report) {
        line(terminal.bold(Texts.of("merge.told.bundle", bundle.from(), bundle.file(), bundle.read())));
        List<String> parts = new ArrayList<>();
        parts.add(Texts.of(
                report.rehearsal() || !report.merged() ? "merge.told.toAdd" : "merge.told.added", bundle.addedInAll()));
        part(parts, "merge.told.changed", bundle.changed().size());
        part(parts, "merge.told.removed", bundle.removed().size());
        part(parts, "merge.told.known", bundle.known());
        part(parts, "merge.told.older", bundle.older());
        part(parts, "merge.told.duplicates", bundle.duplicates());
        part(parts, "merge.told.matched", bundle.matched());
        part(parts, "merge.told.open", bundle.questions().size());
        part(parts, "merge.told.leftOut", bundle.leftOut());
        line("  " + String.join(", ", parts));
        bundle.added().forEach((table, count) -> told("export.contents", Texts.of("book.table." + table), count));
        some(bundle.changed());
        bundle.removed().stream().limit(SHOWN).forEach(words -> told("merge.removed", words));
        some(bundle.notes().stream().distinct().toList());
    }

    private static void part(List<String> parts, String key, long count) {
        if (count > 0) {
            parts.add(Texts.of(key, count));
        }
    }

    private void some(List<Message> messages) {
        messages.stream().limit(SHOWN).forEach(message -> line("  " + Texts.of(message)));
        if (messages.size() > SHOWN) {
            told("merge.told.more", messages.size() - SHOWN);
        }
    }

    private void question(MergeQuestion question) {
        told(
                "merge.told.question",
                question.code(),
                question.told(),
                String.join(
                        ", ",
                        question.answers().stream().map(MergeAnswer::written).toList()));
        question.details().forEach(detail -> line("          " + Texts.of(detail)));
    }

    private static List<SamePair> pairs(MergeReport report, boolean ofPeople) {
        return report.pairs().stream()
                .filter(pair -> pair.ofPeople() == ofPeople)
                .toList();
    }

    private void pair(SamePair pair) {
        told("merge.told.question", pair.code(), pair.told(), Texts.of("merge.told.pairAnswers"));
    }

    private String ending(MergeReport report) {
        List<String> sentences = new ArrayList<>();
        boolean open = !report.questions().isEmpty();
        boolean changes = report.added() + report.changed() + report.decided() > 0;
        if (report.rehearsal()) {
            sentences.add(Texts.of("merge.told.dry"));
        } else if (!report.merged()) {
            sentences.add(Texts.of("merge.told.nothingMerged"));
        } else {
            sentences.add(Texts.of(
                    changes ? "merge.told.done" : "merge.told.nothingNew",
                    report.added(),
                    report.changed(),
                    report.decided()));
        }
        if (open) {
            sentences.add(Texts.of(
                    report.merged() ? "merge.told.stillOpen" : "merge.told.next",
                    report.questions().get(0).code(),
                    report.questions().get(0).answers().get(0).written()));
        }
        if (!report.pairs().isEmpty()) {
            sentences.add(Texts.of("merge.told.nextPairs", report.pairs().get(0).code()));
        }
        return String.join(" ", sentences);
    }
}

package org.ouzelbook.ui.cli;

import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TypedLines;

/** Prints what became of a typed line, or what is asked about it. */
final class LogPrinter {
    private final Terminal terminal;

    LogPrinter(Terminal terminal) {
        this.terminal = terminal;
    }

    void print(TypedLines.Answer answer) {
        answer.understood().forEach(words -> terminal.out().println(words));
        answer.remarks().forEach(remark -> terminal.out().println("  " + Texts.of(remark)));
        if (answer.isClear() && !answer.stored()) {
            terminal.out().println("  " + Texts.of("log.dryRun"));
        }
        if (!answer.isClear()) {
            terminal.err().println(answer.line());
            for (TypedLines.QuestionAnswer question : answer.questions()) {
                terminal.err()
                        .println(
                                " ".repeat(question.from()) + "^".repeat(Math.max(1, question.to() - question.from())));
                terminal.err().println("  " + Texts.of(question.question()));
                if (!question.choices().isEmpty()) {
                    terminal.err().println("  " + Texts.of("log.choices", question.choices()));
                }
            }
            terminal.err().println("  " + Texts.of("log.nothingStored"));
        }
    }
}

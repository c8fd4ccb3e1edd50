package org.ouzelbook.tracker.store;

import java.nio.file.Path;
import java.sql.SQLException;
import org.h2.api.ErrorCode;
import org.ouzelbook.tracker.domain.Message;

/** Tells what a failure of the database means: something to say to a person, a broken rule, or a mistake of ours. */
final class BookFailure {
    /** A rule of the schema that a statement broke. */
    enum Rule {
        /** Another row has the same label or key. */
        UNIQUE,
        /** Another row points here, or the row pointed to is not there. */
        REFERENCE
    }

    /** A statement broke a rule of the schema; whoever sent it knows what it means. */
    static final class RuleBroken extends RuntimeException {
        private static final long serialVersionUID = 1L;

        private final Rule rule;

        private RuleBroken(Rule rule, SQLException cause) {
            super(cause);
            this.rule = rule;
        }

        Rule rule() {
            return rule;
        }
    }

    private BookFailure() {}

    /** {@return what to throw} */
    static RuntimeException of(SQLException cause, Path file, String statement) {
        return switch (cause.getErrorCode()) {
            case ErrorCode.DUPLICATE_KEY_1 -> new RuleBroken(Rule.UNIQUE, cause);
            case ErrorCode.REFERENTIAL_INTEGRITY_VIOLATED_CHILD_EXISTS_1,
                    ErrorCode.REFERENTIAL_INTEGRITY_VIOLATED_PARENT_MISSING_1 -> new RuleBroken(Rule.REFERENCE, cause);
            case ErrorCode.DATABASE_ALREADY_OPEN_1 -> told("book.inUse", file, cause);
            case ErrorCode.DATABASE_NOT_FOUND_WITH_IF_EXISTS_1 -> told("book.missing", file, cause);
            case ErrorCode.DATABASE_IS_READ_ONLY -> told("book.readOnly", file, cause);
            case ErrorCode.FILE_VERSION_ERROR_1, ErrorCode.FILE_CORRUPTED_1, ErrorCode.GENERAL_ERROR_1 ->
                told("book.damaged", file, cause);
            case ErrorCode.IO_EXCEPTION_1, ErrorCode.IO_EXCEPTION_2, ErrorCode.FILE_CREATION_FAILED_1 ->
                told("book.cannotWrite", file, cause);
            case ErrorCode.WRONG_USER_OR_PASSWORD, ErrorCode.FILE_ENCRYPTION_ERROR_1 ->
                told("book.foreign", file, cause);
            default -> new IllegalStateException(file + ": " + statement, cause);
        };
    }

    private static BookException told(String key, Path file, SQLException cause) {
        return new BookException(Message.of(key, file.toString()), cause);
    }
}

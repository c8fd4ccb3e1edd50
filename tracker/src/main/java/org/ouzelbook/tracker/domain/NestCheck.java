package org.ouzelbook.tracker.domain;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;

/**
 * One look at a nest.
 *
 * @param id its key
 * @param nestId the {@link Nest}
 * @param date the local date
 * @param time the local time
 * @param stage what was found
 * @param stageText the stage in the surveyor's words
 * @param eggs eggs counted; empty if not counted
 * @param young young counted; empty if not counted
 * @param adults adults in attendance; empty if not written down
 * @param outcome how the attempt ended, if this check shows it
 * @param note anything else
 */
public record NestCheck(
        UUID id,
        UUID nestId,
        LocalDate date,
        Optional<LocalTime> time,
        NestStage stage,
        String stageText,
        OptionalInt eggs,
        OptionalInt young,
        OptionalInt adults,
        Optional<NestOutcome> outcome,
        String note)
        implements Entry {
    /**
     * Checks the counts.
     *
     * @throws IllegalArgumentException if a count is negative
     */
    public NestCheck {
        if (eggs.orElse(0) < 0 || young.orElse(0) < 0 || adults.orElse(0) < 0) {
            throw new IllegalArgumentException("A nest holds no negative number of eggs, young or adults");
        }
    }
}

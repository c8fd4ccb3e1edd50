package org.ouzelbook.stats.simulate.nature;

import java.time.LocalDate;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * A poisoning of the river bed that fades as animals drift back from above.
 *
 * @param day when it happened
 * @param riverId the river
 * @param where the stretch
 * @param harm how bad: log abundance lost by a family of sensitivity 1, on the first day
 * @param halvingDays days after which half of the harm is left; positive
 */
public record Spill(LocalDate day, UUID riverId, Stretch where, double harm, double halvingDays) {}

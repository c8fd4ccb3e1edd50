package org.ouzelbook.ui.window;

import java.util.Optional;
import org.ouzelbook.ui.strip.Subject;

/**
 * A record, or a territory made of records, that a number rests on.
 *
 * @param words what it is
 * @param season the season to look at
 * @param subject what to select on the strip; empty for a mere heading
 */
record Evidence(String words, int season, Optional<Subject> subject) {}

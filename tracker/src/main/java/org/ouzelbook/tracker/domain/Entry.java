package org.ouzelbook.tracker.domain;

import java.util.UUID;

/** One record of the book, known by a key that the program made, so that books can be put together. */
public sealed interface Entry
        permits ImportedFile,
                River,
                RiverLine,
                Landmark,
                Reach,
                Visit,
                Sighting,
                Nest,
                NestCheck,
                RingedBird,
                KickSample,
                Decision,
                Seal {

    /** {@return its key, which nothing else in any book has} */
    UUID id();
}

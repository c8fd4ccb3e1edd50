package org.ouzelbook.tracker.exchange.darwin;

import java.util.Locale;
import java.util.Optional;

/** The licences under which the Global Biodiversity Information Facility takes data, and no others. */
public enum Licence {
    /** No rights reserved. */
    CC0(
            "Creative Commons Zero v1.0 Universal",
            "CC0-1.0",
            "https://creativecommons.org/publicdomain/zero/1.0/legalcode"),
    /** Use with the name of the source. */
    CC_BY(
            "Creative Commons Attribution 4.0 International",
            "CC-BY-4.0",
            "https://creativecommons.org/licenses/by/4.0/legalcode"),
    /** The same, and not for money. */
    CC_BY_NC(
            "Creative Commons Attribution Non Commercial 4.0 International",
            "CC-BY-NC-4.0",
            "https://creativecommons.org/licenses/by-nc/4.0/legalcode");

    private final String title;
    private final String identifier;
    private final String url;

    Licence(String title, String identifier, String url) {
        this.title = title;
        this.identifier = identifier;
        this.url = url;
    }

    /** {@return its full name} */
    public String title() {
        return title;
    }

    /** {@return its identifier in the list of the Software Package Data Exchange} */
    public String identifier() {
        return identifier;
    }

    /** {@return where its text stands} */
    public String url() {
        return url;
    }

    /** {@return its usual short name, such as {@code CC BY-NC}} */
    public String written() {
        return this == CC_BY_NC ? "CC BY-NC" : name().replace('_', ' ');
    }

    /**
     * {@return the licence with this name, in any case, with spaces, hyphens and underscores equal, with or without its version;
     * empty if none}
     *
     * @param name a name
     */
    public static Optional<Licence> named(String name) {
        String wanted =
                name.strip().toUpperCase(Locale.ROOT).replaceAll("[ _-]+", "_").replaceFirst("_[14]\\.0$", "");
        for (Licence licence : values()) {
            if (licence.name().equals(wanted)) {
                return Optional.of(licence);
            }
        }
        return Optional.empty();
    }
}

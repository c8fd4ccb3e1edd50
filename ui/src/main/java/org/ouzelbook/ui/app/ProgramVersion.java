package org.ouzelbook.ui.app;

/** The version of the program, as answers that are kept name it. */
public final class ProgramVersion {
    private ProgramVersion() {}

    /** {@return the version; a word that says so where the program was not packaged} */
    public static String words() {
        String version = ProgramVersion.class.getPackage().getImplementationVersion();
        return version == null ? Texts.of("cli.versionUnpackaged") : version;
    }
}

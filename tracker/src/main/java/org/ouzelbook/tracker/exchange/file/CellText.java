package org.ouzelbook.tracker.exchange.file;

/**
 * Texts in tables that spreadsheets open. A text that a spreadsheet would take for a formula gets an apostrophe before it, by
 * which spreadsheets know that it is text, and loses it again when it is read.
 *
 * <p>Source: OWASP, CSV Injection: cells that begin with =, +, -, @, a tab or a carriage return.
 */
public final class CellText {
    /** No name of a river, a place or a record has more letters; what has was pasted there. */
    public static final int LONGEST_NAME = 200;

    private static final String STARTS_FORMULA = "=+-@\t\r";

    private CellText() {}

    /**
     * {@return the text so that no spreadsheet works it out}
     *
     * @param text a cell; a lone sign and a number stay as they are
     */
    public static String harmless(String text) {
        return isFormula(bare(text)) ? "'" + text : text;
    }

    /**
     * {@return the text as it was before it was made harmless}
     *
     * @param cell a cell of a table
     */
    public static String original(String cell) {
        return cell.startsWith("'") && isFormula(bare(cell)) ? cell.substring(1) : cell;
    }

    /**
     * {@return the text without what nobody sees and what steers a screen: control characters other than tabs and ends of lines, and
     * those that turn the direction of writing, by which a name can be made to look like another (Unicode Standard Annex 9, 2.1 to
     * 2.5)}
     *
     * @param text what somebody wrote
     */
    public static String visible(String text) {
        return text.chars().noneMatch(CellText::steers)
                ? text
                : text.codePoints()
                        .filter(letter -> !steers(letter))
                        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                        .toString();
    }

    private static boolean steers(int letter) {
        boolean control = Character.isISOControl(letter) && letter != '\t' && letter != '\n' && letter != '\r';
        return control
                || (letter >= 0x202A && letter <= 0x202E)
                || (letter >= 0x2066 && letter <= 0x2069)
                || letter == 0xFEFF;
    }

    private static String bare(String text) {
        return text.replaceFirst("^'+", "");
    }

    private static boolean isFormula(String text) {
        return text.length() > 1 && STARTS_FORMULA.indexOf(text.charAt(0)) >= 0 && !text.matches("[-+]\\d+([.,]\\d+)?");
    }
}

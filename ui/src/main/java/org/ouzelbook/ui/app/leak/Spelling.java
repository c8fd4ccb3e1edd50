package org.ouzelbook.ui.app.leak;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** One spelling for what can be written in many: letters for their codes, and letters without accents, wherever they stand. */
final class Spelling {
    private static final Pattern PERCENT = Pattern.compile("(?:%[0-9A-Fa-f]{2}){1,256}");
    private static final Pattern BACKSLASH = Pattern.compile("\\\\u([0-9A-Fa-f]{4})");
    private static final Pattern ENTITY = Pattern.compile("&(?:#(\\d{1,7})|#[xX]([0-9a-fA-F]{1,6})|([a-zA-Z]{2,8}));");
    private static final Pattern UNSEEN = Pattern.compile("\\p{Cf}|\u00a0");
    private static final Pattern NOT_PLAIN = Pattern.compile("[^\\x00-\\x7f]{1,4096}");
    private static final Pattern MARKS = Pattern.compile("\\p{M}+|\\p{Cf}");

    /** The characters 160 to 255 in their order. Source: W3C, HTML 4.01, 24.2. */
    private static final String LATIN_ENTITIES = """
            nbsp iexcl cent pound curren yen brvbar sect uml copy ordf laquo not shy reg macr deg plusmn sup2 sup3 acute \
            micro para middot cedil sup1 ordm raquo frac14 frac12 frac34 iquest Agrave Aacute Acirc Atilde Auml Aring AElig \
            Ccedil Egrave Eacute Ecirc Euml Igrave Iacute Icirc Iuml ETH Ntilde Ograve Oacute Ocirc Otilde Ouml times Oslash \
            Ugrave Uacute Ucirc Uuml Yacute THORN szlig agrave aacute acirc atilde auml aring aelig ccedil egrave eacute \
            ecirc euml igrave iacute icirc iuml eth ntilde ograve oacute ocirc otilde ouml divide oslash ugrave uacute ucirc \
            uuml yacute thorn yuml""";

    private static final Map<String, String> ENTITIES = entities();

    /** Letters that no decomposition takes apart. */
    private static final Map<Character, String> WHOLE = Map.ofEntries(
            Map.entry('ß', "ss"),
            Map.entry('ø', "o"),
            Map.entry('Ø', "O"),
            Map.entry('ł', "l"),
            Map.entry('Ł', "L"),
            Map.entry('đ', "d"),
            Map.entry('Đ', "D"),
            Map.entry('ð', "d"),
            Map.entry('Ð', "D"),
            Map.entry('æ', "ae"),
            Map.entry('Æ', "Ae"),
            Map.entry('œ', "oe"),
            Map.entry('Œ', "Oe"),
            Map.entry('þ', "th"),
            Map.entry('Þ', "Th"),
            Map.entry('ı', "i"));

    private Spelling() {}

    private static Map<String, String> entities() {
        Map<String, String> entities =
                new HashMap<>(Map.of("amp", "&", "lt", "<", "gt", ">", "quot", "\"", "apos", "'", "rsquo", "’"));
        int letter = 160;
        for (String name : Pattern.compile("\\s+").splitAsStream(LATIN_ENTITIES).toList()) {
            entities.put(name, Character.toString(letter));
            letter++;
        }
        return Map.copyOf(entities);
    }

    /** {@return a text with letters for their codes in addresses and in JSON; every line where it was} */
    static CharSequence decoded(CharSequence text, Scratch scratch) throws IOException {
        CharSequence letters = scratch.replaced(text, '%', PERCENT, codes -> letters(codes.group()));
        CharSequence plain = scratch.replaced(
                letters, '\\', BACKSLASH, code -> onOneLine((char) Integer.parseInt(code.group(1), 16)));
        return isPlain(plain)
                ? plain
                : scratch.replaced(plain, UNSEEN, sign -> sign.group().equals("\u00a0") ? " " : "");
    }

    /** {@return the letters of bytes such as {@code %C3%A9}; the bytes as they stand if they are none} */
    private static String letters(String codes) {
        byte[] bytes = new byte[codes.length() / 3];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) Integer.parseInt(codes.substring(3 * i + 1, 3 * i + 3), 16);
        }
        try {
            StringBuilder letters = new StringBuilder();
            for (char letter : StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString()
                    .toCharArray()) {
                letters.append(onOneLine(letter));
            }
            return letters.toString();
        } catch (CharacterCodingException e) {
            return codes;
        }
    }

    private static String onOneLine(char letter) {
        return letter < ' ' ? " " : String.valueOf(letter);
    }

    /** {@return a text with letters for entities; every line where it was} */
    static CharSequence withoutEntities(CharSequence text, Scratch scratch) throws IOException {
        return scratch.replaced(text, '&', ENTITY, Spelling::letter);
    }

    private static String letter(MatchResult entity) {
        if (entity.group(3) != null) {
            return ENTITIES.getOrDefault(entity.group(3), entity.group());
        }
        int code = entity.group(1) != null ? Integer.parseInt(entity.group(1)) : Integer.parseInt(entity.group(2), 16);
        if (!Character.isValidCodePoint(code)) {
            return entity.group();
        }
        return code < ' ' ? " " : Character.toString(code);
    }

    /** {@return a text in which letters of any form stand for their plain ones, and none is unseen; every line where it was} */
    static CharSequence folded(CharSequence text, Scratch scratch) throws IOException {
        return isPlain(text) ? text : scratch.replaced(text, NOT_PLAIN, letters -> folded(letters.group()));
    }

    /** {@return a text in which letters of any form stand for their plain ones, and none is unseen; every line where it was} */
    static String folded(String text) {
        if (isPlain(text)) {
            return text;
        }
        String apart =
                MARKS.matcher(Normalizer.normalize(text, Normalizer.Form.NFKD)).replaceAll("");
        StringBuilder folded = new StringBuilder(apart.length());
        for (int i = 0; i < apart.length(); i++) {
            String whole = WHOLE.get(apart.charAt(i));
            if (whole == null) {
                folded.append(apart.charAt(i));
            } else {
                folded.append(whole);
            }
        }
        return folded.toString();
    }

    /** {@return whether a sign stands somewhere in a text} */
    static boolean holds(CharSequence text, char sign) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) == sign) {
                return true;
            }
        }
        return false;
    }

    private static boolean isPlain(CharSequence text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) >= 128) {
                return false;
            }
        }
        return true;
    }
}

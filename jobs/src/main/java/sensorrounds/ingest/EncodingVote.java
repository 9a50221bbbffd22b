package sensorrounds.ingest;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.List;
import sensorrounds.proposal.Decision;

/** In which encoding bytes are text: counted by the characters that each candidate makes of the bytes above 127. */
final class EncodingVote {
    private static final String ENTRY = "encoding";
    /** Of one byte per character: the one of Windows, of old consoles, of old Macs. */
    private static final List<String> SINGLE_BYTE = List.of("windows-1252", "IBM850", "x-MacRoman");

    /** Letters of the languages whose words are known, and signs that people type. */
    private static final String ORDINARY = "äöüßÄÖÜéèêëàâçîïôùûœÉÈÀÇñÑáíóúìòåÅæøØ°€£µ²³½–—’“”„«»…•¿¡§";

    private EncodingVote() {}

    /** @param cut true when the bytes may end within a character */
    static Decision of(byte[] bytes, boolean cut) {
        if (bytes.length >= 2
                && (bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF
                        || bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE)) {
            return new Decision(
                    ENTRY, "UTF-16", 1, 0, "the file begins with the byte order mark of UTF-16", null, null);
        }
        long high = 0;
        for (byte b : bytes) {
            high += b < 0 ? 1 : 0;
        }
        if (high == 0) {
            return new Decision(
                    ENTRY,
                    "UTF-8",
                    0,
                    0,
                    "no byte is above 127, so that any usual encoding reads the same",
                    null,
                    null);
        }
        String text = utf8(bytes, cut);
        if (text != null) {
            long letters = text.chars().filter(c -> c > 127).count();
            return new Decision(
                    ENTRY, "UTF-8", letters, 0, "characters beyond ASCII, all of them well formed", word(text), null);
        }
        String best = null;
        long most = -1;
        StringBuilder counts = new StringBuilder("characters that are letters or usual signs:");
        for (String name : SINGLE_BYTE) {
            long ordinary = ordinary(new String(bytes, Charset.forName(name)));
            counts.append(' ').append(name).append(' ').append(ordinary).append(',');
            if (ordinary > most) {
                most = ordinary;
                best = name;
            }
        }
        counts.append(" of ").append(high).append("; as UTF-8 the bytes are no text");
        return new Decision(
                ENTRY,
                best,
                most,
                high - most,
                counts.toString(),
                word(new String(bytes, Charset.forName(best))),
                "is the word in the example spelt right? Otherwise name another encoding");
    }

    private static String utf8(byte[] bytes, boolean cut) {
        for (int left = 0; left <= (cut ? 3 : 0); left++) {
            try {
                CharBuffer text = StandardCharsets.UTF_8
                        .newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .decode(ByteBuffer.wrap(bytes, 0, Math.max(0, bytes.length - left)));
                return text.toString();
            } catch (CharacterCodingException e) {
                // The last bytes may be the first ones of a character: try without them.
                continue;
            }
        }
        return null;
    }

    private static long ordinary(String text) {
        long count = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c <= 127) {
                continue;
            }
            // A capital within small letters is the mark of a wrong table.
            boolean inside = i > 0 && Character.isLowerCase(text.charAt(i - 1)) && Character.isUpperCase(c);
            count += ORDINARY.indexOf(c) >= 0 && !inside ? 1 : 0;
        }
        return count;
    }

    private static String word(String text) {
        for (String word : text.split("[^\\p{L}°]+")) {
            if (word.length() > 2 && word.chars().anyMatch(c -> c > 127)) {
                return word;
            }
        }
        return null;
    }
}

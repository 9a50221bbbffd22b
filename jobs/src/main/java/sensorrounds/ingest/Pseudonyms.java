package sensorrounds.ingest;

import java.io.IOException;
import java.io.InputStream;
import java.io.Serializable;
import java.nio.charset.StandardCharsets;
import java.security.InvalidKeyException;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Locale;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.apache.hadoop.conf.Configuration;
import sensorrounds.intake.Field;
import sensorrounds.intake.ParsedRow;
import sensorrounds.intake.Rejection;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.VisitHeader;

/**
 * Replaces what tells of a person before anything is stored: number plates, VINs and if asked technicians by a keyed hash
 * (HMAC with SHA-256, RFC 2104 and FIPS 180-4), free text and the raw text of refused rows by nothing. The same key gives
 * the same pseudonym, so that plates and VINs can still be compared; without the key nobody can try candidates.
 *
 * <p>The first 64 bits are kept. Among a million different plates two share a pseudonym with a chance of 3 in 10^8 (n²/2^65).
 */
public final class Pseudonyms implements Serializable {
    private static final long serialVersionUID = 1L;
    private static final String ALGORITHM = "HmacSHA256";
    private static final int KEPT_BYTES = 8;
    private static final int FEWEST_KEY_BYTES = 32;
    private static final int MOST_KEY_BYTES = 4096;

    /** What becomes of the keys of technicians. */
    public enum Technicians {
        KEPT,
        REPLACED
    }

    /**
     * What a store remembers of the pseudonyms it was filled with.
     *
     * @param key fingerprint of the key, from which nobody can tell the key
     */
    record Mark(String key, Technicians technicians) {}

    private final byte[] key;
    private final Technicians technicians;
    private transient Mac mac;
    private transient VisitHeader lastRead;
    private transient VisitHeader lastGiven;

    private Pseudonyms(byte[] key, Technicians technicians) {
        this.key = key;
        this.technicians = technicians;
    }

    /** @throws IllegalArgumentException for a key of fewer than 32 bytes */
    static Pseudonyms of(byte[] key, Technicians technicians) {
        if (key.length < FEWEST_KEY_BYTES) {
            throw new IllegalArgumentException(
                    "a key of " + key.length + " bytes; expected at least " + FEWEST_KEY_BYTES);
        }
        return new Pseudonyms(key.clone(), technicians);
    }

    /**
     * @param file file of the key: 32 or more random bytes, or as many characters of text; spaces around them do not count
     * @throws RefusedInput when there is no such file, or it is too short
     */
    public static Pseudonyms ofKeyFile(String file, Technicians technicians, Configuration hadoop) {
        try (InputStream in = LogStreams.open(file, hadoop)) {
            byte[] bytes = in.readNBytes(MOST_KEY_BYTES);
            int from = 0;
            int to = bytes.length;
            while (to > from && Character.isWhitespace(bytes[to - 1])) {
                to--;
            }
            while (from < to && Character.isWhitespace(bytes[from])) {
                from++;
            }
            return of(Arrays.copyOfRange(bytes, from, to), technicians);
        } catch (IOException | IllegalArgumentException e) {
            throw new RefusedInput(
                    "the key of the pseudonyms cannot be used",
                    file,
                    e.getMessage(),
                    "a file of at least " + FEWEST_KEY_BYTES + " random bytes that only you can read",
                    "make one with: head -c 32 /dev/urandom | base64 > KEYFILE; keep it apart from the output");
        }
    }

    /** What becomes of the keys of technicians. */
    public Technicians technicians() {
        return technicians;
    }

    /** The same, for a thread of its own: the hash is worked out in place. */
    Pseudonyms forOneThread() {
        return new Pseudonyms(key, technicians);
    }

    Mark mark() {
        return new Mark(hash("fingerprint of the key"), technicians);
    }

    /** The row without anything personal. Not for two threads at once. */
    ParsedRow replace(ParsedRow row) {
        if (row instanceof ParsedRow.Accepted accepted) {
            LoggedWheel wheel = accepted.row();
            return new ParsedRow.Accepted(new LoggedWheel(header(wheel.visit()), wheel.wheel(), wheel.source()));
        }
        return ((Rejection) row).masked();
    }

    /** @return the pseudonym of a text that is a value of a field; null for null */
    String of(Field field, String text) {
        if (text == null) {
            return null;
        }
        // Spaces, hyphens and capitals make no other plate, and no other VIN.
        String plain = field == Field.TECHNICIAN_ID
                ? text
                : text.replaceAll("[\\s-]", "").toUpperCase(Locale.ROOT);
        return hash(field.key() + ":" + plain);
    }

    private String hash(String text) {
        byte[] hash = mac().doFinal(text.getBytes(StandardCharsets.UTF_8));
        return "H" + HexFormat.of().withUpperCase().formatHex(hash, 0, KEPT_BYTES);
    }

    /** One header for all wheels of a visit, as the reader gives it. */
    private VisitHeader header(VisitHeader v) {
        if (v == lastRead) {
            return lastGiven;
        }
        lastRead = v;
        lastGiven = new VisitHeader(
                v.visitId(),
                v.revision(),
                v.visitedAt(),
                technicians == Technicians.REPLACED ? of(Field.TECHNICIAN_ID, v.technicianId()) : v.technicianId(),
                v.readerId(),
                v.vehicleId(),
                of(Field.VIN, v.vin()),
                of(Field.REGISTRATION, v.registration()),
                v.odometerKm(),
                v.ambientCelsius(),
                v.placardKpa(),
                v.wheelSet(),
                v.reason(),
                v.warning(),
                v.warningSince(),
                v.drivingMinutesToWarning(),
                v.faultCodes(),
                v.relearn(),
                v.relearnResult(),
                v.pressuresStored(),
                v.codesCleared(),
                v.testDrive(),
                null);
        return lastGiven;
    }

    private Mac mac() {
        if (mac == null) {
            try {
                mac = Mac.getInstance(ALGORITHM);
                mac.init(new SecretKeySpec(key, ALGORITHM));
            } catch (NoSuchAlgorithmException | InvalidKeyException e) {
                throw new IllegalStateException("every Java has " + ALGORITHM, e);
            }
        }
        return mac;
    }
}

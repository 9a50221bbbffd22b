package sensorrounds.simulate;

import java.util.Locale;

/** Names of vehicles and sensors: unique, without an order that would betray their number. */
final class VehicleIds {
    /** A prime below nine million, so that multiplication permutes the numbers under it. */
    static final int MODULUS = 8_999_993;

    private static final long STEP = 3_141_593L;
    private static final String VIN_LETTERS = "0123456789ABCDEFGHJKLMNPRSTUVWXYZ";
    private static final int[] VIN_WEIGHTS = {8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2};

    private VehicleIds() {}

    static long number(int index) {
        return 1_000_000 + (index * STEP + 2_718_281L) % MODULUS;
    }

    static String vehicle(int index) {
        return "V" + number(index);
    }

    /**
     * Eight hexadecimal digits, unique over the fleet: the finaliser of MurmurHash3 permutes 32 bits, and a vehicle has
     * room for 128 sensors (which holds up to 33 million vehicles).
     */
    static String sensor(int index, int ordinal) {
        // The start keeps clear of the one number that becomes 00000000, an ID that stands for no sensor.
        int h = 0x40000000 + index * 128 + (ordinal & 127);
        h = (h ^ (h >>> 16)) * 0x85EBCA6B;
        h = (h ^ (h >>> 13)) * 0xC2B2AE35;
        return String.format(Locale.ROOT, "%08X", h ^ (h >>> 16));
    }

    /** A registration of a form of our own. */
    static String registration(int index) {
        String n = Long.toString(number(index));
        return "ZZ" + n.substring(0, 2) + " " + n.substring(2, 6) + (char) ('A' + index % 26);
    }

    /**
     * Seventeen signs as in ISO 3779 with the check digit of 49 CFR 565.15. It starts with 0, which stands for no
     * region, so that it is nobody's number.
     */
    static String vin(int index, int modelYear) {
        StringBuilder s = new StringBuilder("0ZZ");
        Dice dice = Dice.of(index, 'V');
        for (int i = 3; i < 8; i++) {
            s.append(VIN_LETTERS.charAt(dice.between(0, VIN_LETTERS.length() - 1)));
        }
        s.append('0').append("ABCDEFGHJKLMNPRSTVWXY123456789".charAt(Math.floorMod(modelYear - 2010, 30)));
        s.append('Z').append(String.format(Locale.ROOT, "%06d", number(index) % 1_000_000));
        int sum = 0;
        for (int i = 0; i < 17; i++) {
            sum += VIN_WEIGHTS[i] * vinValue(s.charAt(i));
        }
        int check = sum % 11;
        s.setCharAt(8, check == 10 ? 'X' : (char) ('0' + check));
        return s.toString();
    }

    private static int vinValue(char c) {
        if (c <= '9') {
            return c - '0';
        }
        if (c <= 'I') {
            return c - 'A' + 1;
        }
        return c <= 'R' ? c - 'J' + 1 : c - 'S' + 2;
    }
}

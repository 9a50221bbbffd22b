package sensorrounds.proposal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import sensorrounds.visit.WheelPosition;

/**
 * Words for places on a vehicle, scheme by scheme (common practice, no source). One file keeps to one scheme, so a word is
 * read by a scheme that knows all the others of the file too; when two such schemes differ on it, nobody can tell.
 */
final class PositionWords {
    private static final Set<String> SPARE = Set.of(
            "SPARE",
            "SPAREWHEEL",
            "RESERVE",
            "RESERVERAD",
            "ERSATZ",
            "ERSATZRAD",
            "NOTRAD",
            "SECOURS",
            "ROUEDESECOURS",
            "SCORTA",
            "RUOTINO",
            "REPUESTO",
            "RESERVEWIEL");
    private static final List<PositionWords> SCHEMES = List.of(
            new PositionWords("left and right in English", "L", "R")
                    .axles("F FRONT FT", "R REAR B BACK")
                    .sides("L LH LEFT", "R RH RIGHT")
                    .mounts("I IN INNER INSIDE", "O OUT OUTER OUTSIDE")
                    .made(),
            new PositionWords("nearside and offside", " nearside", " offside")
                    .axles("F FRONT FT", "R REAR B BACK")
                    .sides("NS NEARSIDE NEAR KERBSIDE KERB", "OS OFFSIDE OFF ROADSIDE")
                    .mounts("I IN INNER INSIDE", "O OUT OUTER OUTSIDE")
                    .made(),
            new PositionWords("German", "L", "R")
                    .axles("V VORN VORNE", "H HINTEN")
                    .sides("L LINKS", "R RECHTS")
                    .mounts("I INNEN", "A AUSSEN")
                    .made(),
            new PositionWords("French", "L", "R")
                    .axles("AV AVANT", "AR ARRIERE D DERRIERE")
                    .sides("G GAUCHE", "D DROIT DROITE")
                    .mounts("I INT INTERIEUR", "E EXT EXTERIEUR")
                    .made(),
            // A stands for avant or for arrière: such words are never told apart.
            new PositionWords("French with A for avant or arrière", "L", "R")
                    .axles("A", "A")
                    .sides("G", "D")
                    .mounts("", "")
                    .made(),
            new PositionWords("Italian", "L", "R")
                    .axles("A ANT ANTERIORE", "P POST POSTERIORE")
                    .sides("S SX SINISTRA SINISTRO", "D DX DESTRA DESTRO")
                    .mounts("I INT INTERNA INTERNO", "E EST ESTERNA ESTERNO")
                    .made(),
            new PositionWords("Spanish", "L", "R")
                    .axles("D DEL DELANTERO DELANTERA", "T TRAS TRASERO TRASERA")
                    .sides("I IZQ IZQUIERDO IZQUIERDA", "D DCHO DCHA DERECHO DERECHA")
                    .mounts("INT INTERIOR", "EXT EXTERIOR")
                    .made(),
            new PositionWords("Portuguese", "L", "R")
                    .axles("D DIANT DIANTEIRO", "T TRAS TRASEIRO")
                    .sides("E ESQ ESQUERDO", "D DIR DIREITO")
                    .mounts("INT INTERNO", "EXT EXTERNO")
                    .made(),
            new PositionWords("Dutch", "L", "R")
                    .axles("V VOOR", "A ACHTER")
                    .sides("L LINKS", "R RECHTS")
                    .mounts("BINNEN", "BUITEN")
                    .made(),
            new PositionWords("Scandinavian", "L", "R")
                    .axles("F FRAM FORAN", "B BAK BAG")
                    .sides("V VENSTRE VANSTER", "H HOYRE HOGER HOJRE")
                    .mounts("INNER INDRE", "YTTER YTRE")
                    .made());

    private final String name;
    private final String left;
    private final String right;
    private String[][] axles;
    private String[][] sides;
    private String[][] mounts;
    /** Places by word; more than one where the scheme itself cannot tell. */
    private final Map<String, Set<String>> places = new HashMap<>();

    private PositionWords(String name, String left, String right) {
        this.name = name;
        this.left = left;
        this.right = right;
    }

    /** The schemes, one of which a file keeps to. */
    static List<PositionWords> schemes() {
        return SCHEMES;
    }

    static boolean isSpare(String word) {
        return SPARE.contains(Texts.squeezed(word));
    }

    String name() {
        return name;
    }

    /** True when left or right depends on the side of the road. */
    boolean needsDrivingSide() {
        return left.startsWith(" ");
    }

    /** The places a word can stand for, as a layout writes them; empty when the scheme does not know it. */
    Set<String> places(String word) {
        return places.getOrDefault(Texts.squeezed(word), Set.of());
    }

    private PositionWords axles(String first, String second) {
        axles = new String[][] {first.split(" "), second.split(" ")};
        return this;
    }

    private PositionWords sides(String leftWords, String rightWords) {
        sides = new String[][] {leftWords.split(" "), rightWords.split(" ")};
        return this;
    }

    private PositionWords mounts(String inner, String outer) {
        mounts = new String[][] {{""}, inner.split(" "), outer.split(" ")};
        return this;
    }

    private PositionWords made() {
        for (int side = 0; side < 2; side++) {
            for (int mount = 0; mount < mounts.length; mount++) {
                for (String s : sides[side]) {
                    for (String m : mounts[mount]) {
                        if (mount == 0 || !m.isEmpty()) {
                            named(side, mount, s, m);
                            numbered(side, mount, s, m);
                        }
                    }
                }
            }
        }
        return this;
    }

    private void named(int side, int mount, String s, String m) {
        for (int axle = 0; axle < 2; axle++) {
            for (String a : axles[axle]) {
                put(a + s + m, axle + 1, side, mount);
                put(s + a + m, axle + 1, side, mount);
            }
        }
    }

    private void numbered(int side, int mount, String s, String m) {
        for (int axle = 1; axle <= WheelPosition.MAX_AXLE; axle++) {
            for (String word :
                    List.of("A" + axle + s + m, s + axle + m, "AXLE" + axle + s + m, "ACHSE" + axle + s + m)) {
                put(word, axle, side, mount);
            }
        }
    }

    private void put(String word, int axle, int side, int mount) {
        String sideWord = side == 0 ? left : right;
        String mountWord = mount == 0 ? "" : mount == 1 ? "inner" : "outer";
        String place = axle
                + sideWord
                + (needsDrivingSide()
                        ? mountWord.isEmpty() ? "" : " " + mountWord
                        : mountWord.isEmpty() ? "" : mountWord.substring(0, 1).toUpperCase(Locale.ROOT));
        places.computeIfAbsent(word, w -> new TreeSet<>()).add(place);
    }

    /** Schemes that know every one of the words. */
    static List<PositionWords> knowingAll(List<String> words) {
        List<PositionWords> all = new ArrayList<>();
        for (PositionWords scheme : SCHEMES) {
            if (words.stream().allMatch(w -> !scheme.places(w).isEmpty())) {
                all.add(scheme);
            }
        }
        return all;
    }
}

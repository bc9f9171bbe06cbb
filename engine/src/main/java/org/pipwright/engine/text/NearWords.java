package org.pipwright.engine.text;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Words that somebody may have meant who wrote another. */
public final class NearWords {
    private NearWords() {}

    /**
     * The name that a line may have been meant to begin with: one that differs in capitals only, or by one slip of the
     * finger, or from six letters on by two.
     *
     * @param line what was written
     * @param names the names it might be
     * @return the nearest, if only one is near
     */
    public static Optional<String> beginning(String line, List<String> names) {
        String lower = line.toLowerCase(Locale.ROOT);
        List<String> near = names.stream()
                .filter(name -> near(lower, name.toLowerCase(Locale.ROOT)))
                .toList();
        return near.size() == 1 ? Optional.of(near.get(0)) : Optional.empty();
    }

    private static boolean near(String line, String name) {
        int words = name.split(" ", -1).length;
        String[] parts = line.split("\\s+", words + 1);
        String same = String.join(" ", List.of(parts).subList(0, Math.min(words, parts.length)));
        int slips = same.length() > 2 * name.length() ? Integer.MAX_VALUE : slips(same, name);
        return slips <= (name.length() < 3 ? 0 : name.length() < 6 ? 1 : 2);
    }

    /**
     * How many slips of the finger lie between two words: Levenshtein's distance (Soviet Physics Doklady 10, 1966), with
     * neighbours exchanged counting once.
     *
     * @param a a word
     * @param b another
     * @return 0 if they are the same
     */
    public static int slips(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    d[i][j] = i + j;
                    continue;
                }
                int differs = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                d[i][j] = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + differs);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}

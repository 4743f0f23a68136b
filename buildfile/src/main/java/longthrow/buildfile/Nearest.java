package longthrow.buildfile;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** The known word that a mistyped one was probably meant to be. */
public final class Nearest {
    private Nearest() {}

    /** Within two slips (one in a short word), or a third of the word; the first of equals. */
    public static Optional<String> to(String typed, Collection<String> known) {
        String word = typed.toLowerCase(Locale.ROOT).strip().replace('-', '_').replace(' ', '_');
        if (word.isEmpty() || word.length() > 60) {
            return Optional.empty();
        }
        int most = word.length() < 4 ? 1 : Math.max(2, word.length() / 3); // two slips in three letters is another word
        return known.stream()
                .filter(k -> Math.abs(k.length() - word.length()) <= most) // cheap, and true of all that are near
                .filter(k -> distance(word, k) <= Math.min(most, k.length() - 1))
                .min(Comparator.comparingInt(k -> distance(word, k)));
    }

    /** Letters left out, put in, changed or swapped with the next (optimal string alignment). */
    static int distance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            d[i][0] = i;
        }
        for (int j = 0; j <= b.length(); j++) {
            d[0][j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            for (int j = 1; j <= b.length(); j++) {
                int change = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                d[i][j] = Math.min(change, Math.min(d[i - 1][j], d[i][j - 1]) + 1);
                boolean swapped =
                        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
                if (swapped) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}

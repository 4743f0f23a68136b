package longthrow.workshop.store;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lines are letters here. */
class TextMergeTest {
    private static String lines(String letters) {
        return letters.replaceAll("(.)", "$1\n");
    }

    /** Worked out by hand; none where both touch a line, or put lines in at one place. */
    @ParameterizedTest
    @CsvSource({
        "abcde, aBcde, abcDe, aBcDe",
        "abcde, aBcde, abCde, aBCde",
        "abcde, xabcde, abcdey, xabcdey",
        "abcde, acde, abcd, acd",
        "abcde, aBcde, aBcde, aBcde",
        "abcde, aBcdE, aBcde, aBcdE",
        "abcde, aBcde, aXcde, ",
        "abcde, abxcde, abycde, ",
        "abcde, aBcde, abxcde, ",
        "abcde, ae, abXde, ",
    })
    void editsOfDifferentLinesGoTogether(String begun, String mine, String theirs, String both) {
        assertThat(TextMerge.of(lines(begun), lines(mine), lines(theirs)).orElse(""))
                .isEqualTo(both == null ? "" : lines(both));
        assertThat(TextMerge.of(lines(begun), lines(theirs), lines(mine)).orElse(""))
                .as("whoever was first")
                .isEqualTo(both == null ? "" : lines(both));
    }

    @Test
    void aMissingLastLineEndStaysMissing() {
        assertThat(TextMerge.of("a\nb\nc", "A\nb\nc", "a\nb\nC")).contains("A\nb\nC");
    }
}

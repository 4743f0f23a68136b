package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.stream.Stream;
import longthrow.buildfile.RowFate.Outcome;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Bad rows and bad files as lists have them: each refused with its reason, the rows around it kept. */
class CatalogueSeededFaultsTest {
    /** Header, bad row, the column it is about, what is said. */
    static Stream<Arguments> badRows() {
        return Stream.of(
                bad(
                        "length",
                        "86.4",
                        "length",
                        "'86.4' has no unit; write 86.4 mm or 86.4 in, or put the unit into the header: length [mm]"),
                bad("length [mm]", "86.4 g", "length [mm]", "is a mass; a length is wanted here"),
                bad("length [mm]", "86.4 mn", "length [mm]", "has the unit 'mn', which is not known; write 86.4 mm"),
                bad("length [mm]", "-86.4", "length [mm]", "is below nothing"),
                bad("length [mm]", "NaN", "length [mm]", "is not a finite number"),
                bad("length [mm]", "1e400 mm", "length [mm]", "exponent"),
                bad("length [mm]", "about 86", "length [mm]", "does not start with a number"),
                bad("length [mm]", "86.4-86.6", "length [mm]", "reads like a range"),
                bad("length [mm]", "<86", "length [mm]", "one value is wanted here"),
                bad("length [mm]", "86 4", "length [mm]", "two numbers side by side"),
                bad("length [mm]", "\"86,4\" x", "", "has quotation marks that do not pair"),
                bad("length [mm]", "\"86,400\"", "length [mm]", "can be read as 86.400 or as 86400"),
                bad("length [mm]", "86.40000000001", "length [mm]", "is not a whole number of picometres"),
                bad("length [mm]", "=A1*25.4", "length [mm]", "is a spreadsheet formula"),
                bad("length [mm]", "86.4 ± 0", "length [mm]", "says there is no doubt at all"),
                bad("length [mm]", "86.4 ± -0.1", "length [mm]", "negative"),
                bad("length [mm]", "86.4 ± 0.1 ± 0.2", "length [mm]", "±"),
                bad("length [mm]", "86.4+0.1", "length [mm]", "reads like a range"),
                bad("length [mm],length ±", "86.4,0", "length ±", "says there is no doubt at all"),
                bad("length [mm],length ±", "86.4,-0.03", "length ±", "is negative"),
                bad("length [mm],length ±", ",0.03", "length ±", "is the tolerance of a figure that is not there"),
                bad("length [mm],length ±", "86.4 ± 0.02,0.03", "length ±", "is a second tolerance"),
                bad("length [mm],length ±", "86.4,0.03 ± 0.01", "length ±", "second ±"),
                bad("length [mm],length tolerance", "86.4,3 g", "length tolerance", "is a mass"),
                bad("rated_speed [rpm]", "7000 km/h", "rated_speed [rpm]", "is a speed; a rotational speed is wanted"),
                bad("rated_speed", "7000", "rated_speed", "has no unit"),
                bad("metal", "tin", "metal", "is not one of the words that fit here"),
                bad("metal", "billet", "metal", "did you mean billet_aluminium?"),
                bad("price", "78", "price", "has no currency"),
                bad("price [EUR]", "78.005", "price [EUR]", "is no price"),
                bad("price [EUR]", "-78", "price [EUR]", "leave out the minus"),
                bad("price [EUR]", "\"1,250.00\"", "price [EUR]", "without marks between the thousands"),
                bad("price", "$78", "price", "instead of its sign"),
                bad("price", "free", "price", "is no price"),
                bad("price [EUR],shipping", "78,5 USD", "shipping", "is a second currency in one row"),
                bad("price [EUR],currency", "78,USD", "currency", "is a second currency in one row"),
                bad("currency", "12", "currency", "is no currency"),
                bad("lead_days", "soon", "lead_days", "is no number of days"),
                bad("lead_days", "-3", "lead_days", "is no number of days"),
                bad("lead_days", "2.5", "lead_days", "is no number of days"),
                bad("lead_days", "400 weeks", "lead_days", "is no number of days"),
                bad("basis", "guessed", "basis", "is not one of the words that fit here"),
                bad("name", "bell\u0007", "name", "holds the invisible character U+0007"),
                bad("name", "a\u202eb", "name", "holds the invisible character U+202E"),
                bad("name", "nul\u0000", "name", "U+0000"),
                bad("note", "x".repeat(5000), "note", "has 5000 characters"),
                bad("note", "\"" + "x".repeat(40_000) + "\"", "", "a cell without end"),
                bad("length [mm]", "86,4", "", "has 3 cells; the header has 2"),
                bad("length [mm],metal", "86.4", "", "has 2 cells; the header has 3"),
                bad("length [mm],", "86.4,7", "", "stands under no header"),
                row("length [mm]", ",86.4", "code", "is missing"),
                row("length [mm]", "unknown,86.4", "code", "is missing"),
                row("length [mm]", "=B1,86.4", "code", "is a spreadsheet formula"));
    }

    static Stream<Arguments> badOperations() {
        return Stream.of(
                Arguments.of("deck_cat,0.05,0.40,", "did you mean deck_cut?"),
                Arguments.of(",0.05,0.40,", "operation: is missing"),
                Arguments.of("deck_cut,,0.40,", "least: is missing"),
                Arguments.of("deck_cut,0.05,,", "most: is missing"),
                Arguments.of("deck_cut,0.50,0.40,", "is more than the most"),
                Arguments.of("deck_cut,-0.50,0.40,", "is below nothing"),
                Arguments.of("deck_cut,0.05,0.40,0", "is no step"),
                Arguments.of("deck_cut,0.05 ± 0.01,0.40,", "has a ±"));
    }

    private static Arguments bad(String header, String cells, String column, String says) {
        return row(header, "B," + cells, column, says);
    }

    private static Arguments row(String header, String row, String column, String says) {
        return Arguments.of(header, row, column, says);
    }

    @ParameterizedTest
    @MethodSource("badRows")
    void aBadRowIsRefusedWithItsReasonAndTheOthersAreKept(String header, String row, String column, String says) {
        String empty = ",".repeat((int) header.chars().filter(c -> c == ',').count() + 1);
        Imported read = CatalogueFileTest.csv(
                "connecting_rod.csv", "code," + header + "\nA" + empty + "\n" + row + "\nC" + empty + "\n");
        assertThat(read.faults()).isEmpty();
        assertThat(read.parts()).extracting(p -> p.code()).containsExactly("A", "C");
        RowFate fate = read.fates().get(1);
        assertThat(fate.outcome()).isEqualTo(Outcome.REFUSED);
        assertThat(fate.line()).isEqualTo(3);
        Fault reason = fate.reasons().get(0);
        assertThat(reason.line()).isEqualTo(3);
        assertThat(reason.path()).isEqualTo(column);
        assertThat(reason.message()).contains(says);
        assertThat(reason.mend() + reason.allowed()).isNotBlank();
    }

    @ParameterizedTest
    @MethodSource("badOperations")
    void aBadOperationIsRefusedWithItsReason(String row, String says) {
        Imported read = CatalogueFileTest.csv(
                "machining.csv",
                "code,operation,least [mm],most [mm],step [mm]\nA,deck_cut,0.05,0.4,\nB," + row + "\n");
        assertThat(read.operations()).hasSize(1);
        assertThat(read.fates().get(1).reasons().get(0).message()).contains(says);
    }

    static Stream<Arguments> badFiles() {
        return Stream.of(
                Arguments.of("x.csv", "code\nA\n", "neither the file nor its name says what its rows are"),
                Arguments.of("x.csv", "# kind: rod\ncode\nA\n", "did you mean connecting_rod?"),
                Arguments.of("rod.csv", "", "has no header"),
                Arguments.of("rod.csv", "# kind: connecting_rod\n", "has no header"),
                Arguments.of("rod.csv", "code,lenght [mm]\nA,1\n", "did you mean length?"),
                Arguments.of("rod.csv", "code,colour\nA,red\n", "put # before it to leave the column out"),
                Arguments.of("rod.csv", "code,length [g]\nA,1\n", "is no unit of length"),
                Arguments.of(
                        "rod.csv",
                        "code,length [mm],length [in]\nA,1,2\n",
                        "is a second column of connecting_rod.length"),
                Arguments.of("rod.csv", "length [mm]\n1\n", "has no column 'code'"),
                Arguments.of("rod.csv", "code|length\nA|1\n", "is no column"),
                Arguments.of("head.csv", "code,lift [mm]\nA,6\n", "intake_valve.lift or exhaust_valve.lift"),
                Arguments.of("piston.csv", "code,pin_clearance [mm]\nA,6\n", "is worked out"),
                Arguments.of("rod.csv", "# invented: perhaps\ncode\nA\n", "neither yes nor no"),
                Arguments.of("rod.csv", "code,metal [mm]\nA,\n", "words have none"),
                Arguments.of("rod.csv", "code,price [$]\nA,3\n", "instead of its sign"),
                Arguments.of("spring.csv", "# kind: valve_spring\ncode,rate [N/mm]\nA,3\n", "is worked out"),
                Arguments.of("rod.csv", "\"code,length [mm]\nA,1\n", "quotation marks that do not pair"));
    }

    @ParameterizedTest
    @MethodSource("badFiles")
    void aBadFileIsRefusedAsAWhole(String name, String text, String says) {
        Imported read = CatalogueFileTest.csv(name, text);
        assertThat(read.parts()).isEmpty();
        assertThat(read.faults()).isNotEmpty();
        assertThat(read.faults().get(0).message()).contains(says);
        assertThat(read.isClean()).isFalse();
    }

    @Test
    void otherEncodingsAreRefusedWithThePlace() {
        byte[] bytes = "code,length [mm]\nA,1 ± 2\n".getBytes(StandardCharsets.ISO_8859_1);
        assertThat(CatalogueFile.csv("rod.csv", bytes).faults().get(0).message())
                .contains("line 2")
                .contains("is not UTF-8")
                .contains("save the file as plain text in UTF-8");
        byte[] wide = "code\nA\n".getBytes(StandardCharsets.UTF_16);
        assertThat(CatalogueFile.csv("rod.csv", wide).faults().get(0).message()).contains("UTF-16");
    }

    @Test
    void theReplacementCharacterItselfIsText() {
        assertThat(CatalogueFileTest.csv("rod.csv", "code,name\nA,\uFFFD\n").parts())
                .hasSize(1);
    }

    @Test
    void tooLargeAFileIsNotLookedInto() {
        byte[] much = new byte[CatalogueFile.MOST_BYTES + 1];
        Arrays.fill(much, (byte) 'a');
        assertThat(CatalogueFile.csv("rod.csv", much).faults().get(0).message()).contains("was not looked into");
    }

    @Test
    void endlessBrokenRowsEnd() {
        Imported read = CatalogueFileTest.csv("rod.csv", "code,name\n" + "\"a\"b,c\n".repeat(3000));
        assertThat(read.faults().get(0).message()).contains("more than 1000 rows with broken quotation marks");
        assertThat(read.fates()).hasSizeGreaterThan(900);
    }
}

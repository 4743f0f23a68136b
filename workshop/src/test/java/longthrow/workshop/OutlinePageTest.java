package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import longthrow.buildfile.BuildFile;
import longthrow.core.build.TracedOutline;
import longthrow.core.term.OutlinedPart;
import org.junit.jupiter.api.Test;

/** The pages on which an outline is entered. */
class OutlinePageTest extends OverHttp {
    private static final String KITE = "x;y\n0;-30\n12;0\n\n0;12\n-12;0\n";

    private static Map<String, String> form(String text, String... more) {
        Map<String, String> form = new LinkedHashMap<>(Map.of("text", text, "unit", "1 mm"));
        for (int i = 0; i < more.length; i += 2) {
            form.put(more[i], more[i + 1]);
        }
        return form;
    }

    /** With the revision that the page is of. */
    private Visitor.Page send(String address, Map<String, String> form) {
        Map<String, String> whole = new LinkedHashMap<>(form);
        whole.put("based", visitor.get(address).hidden("based"));
        whole.put("key", Visitor.key());
        return visitor.post(address, whole);
    }

    private TracedOutline kept(String base, OutlinedPart part) {
        return BuildFile.read(visitor.get(base + "/file").body())
                .build()
                .orElseThrow()
                .outline(part)
                .orElseThrow();
    }

    @Test
    void everyPartHasItsPageWithItsDatum() {
        String base = visitor.empty("To be traced");
        Visitor.Page list = visitor.get(base + "/outlines");
        for (OutlinedPart part : OutlinedPart.values()) {
            assertThat(list.body()).contains("href=\"" + base + "/outlines/" + part.key() + "\"");
            Visitor.Page page = visitor.get(base + "/outlines/" + part.key());
            assertThat(page.status()).isEqualTo(200);
            assertThat(page.words()).contains(part.datum(), "Keep");
            assertThat(page.body()).contains("How the " + part.label() + " is to be drawn");
        }
        assertThat(visitor.get(base + "/outlines/spark_plug").status()).isEqualTo(404);
        assertThat(visitor.get(base + "/measure").body()).contains(base + "/outlines#counterweight");
    }

    @Test
    void whatIsTypedIsRedrawnAndKeptWithoutScript() {
        String base = visitor.example();
        String address = base + "/outlines/counterweight";
        Visitor.Page seen = send(address, form(KITE, "look", "yes"));
        assertThat(seen.status()).isEqualTo(200);
        assertThat(seen.words())
                .contains("Nothing is kept yet", "4 points", "30.0 mm down", "Broken line: the part by its readings");
        assertThat(seen.body()).contains("stroke-dasharray", "Outline of the counterweight");
        send(address, form(KITE, "doubt", "0.3 mm", "from", "13 mm", "to", "29.5 mm"));
        TracedOutline kept = kept(base, OutlinedPart.COUNTERWEIGHT);
        assertThat(kept.lines()).containsExactly("0, -30", "12, 0", "0, 12", "-12, 0");
        assertThat(kept.expandedDoubt()).isEqualTo(0.3e-3);
        assertThat(visitor.get(address).body()).contains("0, -30\n12, 0");
        send(address, form(KITE, "out", "yes"));
        assertThat(visitor.get(base + "/file").body()).doesNotContain("outlines:");
    }

    @Test
    void whatIsWrongIsNamedByTheLineThatWasTypedAndNothingIsLost() {
        String base = visitor.empty("To be traced");
        String address = base + "/outlines/dipper";
        Visitor.Page page = send(address, form("x,y\n\n0,0\n9,zwei\n3,4\n", "note", "from below"));
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.words()).contains("Line 4, column 3: 'zwei' is not a number");
        assertThat(page.body()).contains("9,zwei", "value=\"from below\"");
        assertThat(send(address, form(KITE, "unit", "1")).words()).contains("Unit:");
        assertThat(send(address, form("0,0\n9,9\n9,0\n0,9")).words())
                .contains("Line 1: points 1 to 2 and 3 to 4", "near 4.5, 4.5, in units of the drawing");
        assertThat(send(address, form("M0 0H9V9", "unit", "1 mm")).words()).contains("close it with Z");
        assertThat(send(address, form("0,0\n3000,0\n0,2000")).words()).contains("length of one of its pixels");
    }

    /** A bare number takes the unit beside its box; that of the drawing itself is never guessed. */
    @Test
    void aBareNumberTakesTheUnitBesideItsBox() {
        String base = visitor.example();
        String address = base + "/outlines/counterweight";
        assertThat(visitor.get(address).words()).contains("± all round, mm", "Datum at x, mm", "From, mm");
        send(address, form(KITE, "doubt", "0.3", "from", "13", "to", "29,5", "datum_x", "0.5"));
        TracedOutline kept = kept(base, OutlinedPart.COUNTERWEIGHT);
        assertThat(kept.expandedDoubt()).isEqualTo(0.3e-3);
        assertThat(kept.reach().orElseThrow().to()).isEqualTo(29.5e-3);
        assertThat(java.util.Objects.requireNonNull(kept.datumX()).si()).isEqualTo(0.5e-3);
    }

    /** What the answer will say of outline and readings is said before it is kept: the example's counterweight is read as 37.6 mm. */
    @Test
    void whatSpeaksAgainstItIsShownBeforeItIsKept() {
        String address = visitor.example() + "/outlines/counterweight";
        assertThat(send(address, form(KITE, "look", "yes")).words())
                .contains("disagree", "30.00 mm as traced", "37.60 mm", "No gap is told from it until they agree");
        assertThat(send(address, form("0,30\n12,0\n0,-12\n-12,0", "look", "yes"))
                        .words())
                .contains("cannot be that part as it stands", "upside down");
        assertThat(send(address, form("0,-37.6\n12,0\n0,12\n-12,0", "look", "yes"))
                        .words())
                .doesNotContain("disagree", "cannot be");
    }

    /** A drawing's own width tells its unit; what moves its path, or a second path, is no drawing to be read. Shown first, kept by the button. */
    @Test
    void aFileIsShownFirst() {
        String base = visitor.empty("To be traced");
        String address = base + "/outlines/dipper";
        String svg =
                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"80mm\" viewBox=\"0 0 160 160\"><path %s d=\"M-6 0H6L0 80Z\"/></svg>";
        Visitor.Page page = file(address, "dipper.svg", String.format(Locale.ROOT, svg, ""));
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.words()).contains("nothing is kept yet", "one of its units is 0.5 mm", "40.0 mm down");
        assertThat(page.body()).contains("M-6 0H6L0 80Z", "value=\"0.5 mm\"");
        assertThat(visitor.get(base + "/file").body()).doesNotContain("outlines:");
        assertThat(file(address, "dipper.svg", String.format(Locale.ROOT, svg, "transform=\"scale(2)\""))
                        .words())
                .contains("moved or scaled by a transform");
        assertThat(file(address, "two.svg", "<svg><path d=\"M0 0H1V1Z\"/><path d=\"M0 0H1V1Z\"/></svg>")
                        .words())
                .contains("2 paths; one is wanted");
        assertThat(file(address, "points.csv", "0,-40\n3,0\n-3,0\n").words()).contains("3 points");
    }

    private Visitor.Page file(String address, String name, String content) {
        return visitor.upload(
                address,
                name,
                content.getBytes(StandardCharsets.UTF_8),
                Map.of("based", visitor.get(address).hidden("based"), "key", Visitor.key(), "unit", "1 mm"));
    }
}

package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Faults as people and broken programs make them: each is named with its place and its cure, quickly and in little memory. */
class SeededFaultsTest {
    private static final Duration LONGEST = Duration.ofSeconds(1);
    private static final long MOST_BYTES = 256L << 20;
    private static final String HEAD = BuildFileReadTest.HEAD; // two lines

    /** A broken file. */
    static final class Seeded {
        private final String name;
        private final byte[] bytes;
        private final int line;
        private final String says;

        Seeded(String name, byte[] bytes, int line, String says) {
            this.name = name;
            this.bytes = bytes;
            this.line = line;
            this.says = says;
        }

        String name() {
            return name;
        }

        @Override
        public String toString() {
            return name;
        }
    }

    private static Seeded text(String name, String text, int line, String says) {
        return new Seeded(name, text.getBytes(StandardCharsets.UTF_8), line, says);
    }

    /** The fault stands behind the key of the bore, on line 4. */
    private static Seeded bore(String name, String value, String says) {
        return text(name, HEAD + "cylinder:\n  bore: " + value + "\n", 4, says);
    }

    private static Seeded bytes(String name, int line, String says, int... bytes) {
        byte[] head = (HEAD + "notes: ").getBytes(StandardCharsets.UTF_8);
        byte[] all = Arrays.copyOf(head, head.length + bytes.length);
        for (int i = 0; i < bytes.length; i++) {
            all[head.length + i] = (byte) bytes[i];
        }
        return new Seeded(name, all, line, says);
    }

    static List<Seeded> faults() {
        List<Seeded> all = new ArrayList<>();
        // ---- figures
        all.add(bore("no unit", "66.00", "has no unit"));
        all.add(bore("unknown unit", "66.00 mn", "'mn', which is not known"));
        all.add(bore("wrong dimension", "66.00 cc", "is a volume; a length is wanted"));
        all.add(bore("not a number", "NaN mm", "is not a finite number"));
        all.add(bore("bare NaN", ".nan", "does not start with a number"));
        all.add(bore("infinite", "inf mm", "is not a finite number"));
        all.add(bore("1e308", "1e308 mm", "exponent 308"));
        all.add(bore("beyond the range of exact lengths", "1e29 mm", "9,223 km"));
        all.add(bore("huge whole number", "9".repeat(400) + " mm", "far too long"));
        all.add(bore("many digits", "9".repeat(60) + " mm", "60 digits"));
        all.add(bore("finer than a picometre", "66.0000000001 mm", "picometres"));
        all.add(bore("a thousand times too large", "66000 m", "too large for any engine"));
        all.add(bore("a thousand times too small", "0.001 mm", "too small for any engine"));
        all.add(bore("negative", "-66 mm", "is negative"));
        all.add(bore("comma that can be read in two ways", "66,001 mm", "can be read as"));
        all.add(bore("decimal comma in brackets", "[66,01 mm, 66,02 mm]", "write 66.01 mm"));
        all.add(bore("negative doubt", "66 mm ± -0.01 mm", "negative doubt"));
        all.add(bore("doubt of nothing", "66 mm ± 0 mm", "no doubt at all"));
        all.add(bore("two doubts", "66 mm ± 0.1 mm ± 0.2 mm", "±"));
        all.add(bore("range", "66.00 - 66.02 mm", "range"));
        all.add(bore("words", "about right", "does not start with a number"));
        all.add(bore("null", "null", "is not a figure"));
        all.add(bore("tilde", "~", "is not a figure"));
        all.add(bore("nothing", "", "nothing stands behind the key"));
        all.add(bore("truth value", "yes", "does not start with a number"));
        // ---- forms of a value
        all.add(bore("empty list", "[]", "empty list"));
        all.add(bore("list in a list", "[[66 mm]]", "lines of key: value"));
        all.add(bore(
                "form without its first key", "{with: bore_gauge}", "nothing here says where the figure comes from"));
        all.add(bore("two forms", "{readings: 66 mm, specified: 66 mm}", "stand together"));
        all.add(bore("mistyped form", "{reading: 66 mm}", "did you mean readings"));
        all.add(bore("assumed without doubt", "{assumed: 66 mm, because: so}", "assumed without a ±"));
        all.add(bore("assumed without reason", "{assumed: 66 mm ± 1 mm}", "'because' is missing"));
        all.add(bore("a semicolon with nothing behind it", "66 mm;", "no reading on one side of it"));
        all.add(bore("assumed with an empty reason", "{assumed: 66 mm ± 1 mm, because: ''}", "the reason is empty"));
        all.add(bore(
                "reading with a doubt", "{readings: [66 mm ± 1 mm]}", "doubt of a reading comes from its instrument"));
        all.add(bore("value without doubt", "{value: 66 mm}", "has no ±"));
        all.add(bore("negative tolerance", "{specified: 66 mm, tolerance: -1 mm}", "is negative"));
        all.add(bore("tolerance and doubt", "{specified: 66 mm ± 1 mm, tolerance: 1 mm}", "a tolerance too"));
        all.add(bore("unknown instrument", "{readings: 66 mm, with: bore_guage}", "did you mean bore_gauge"));
        all.add(bore("instrument of another dimension", "{readings: 66 mm, with: burette}", "reads a volume"));
        all.add(bore("temperature of a furnace", "{readings: 66 mm, part_at: 900 °C}", "no temperature at which"));
        all.add(bore("temperature without unit", "{readings: 66 mm, part_at: 24}", "has no unit"));
        all.add(bore("figures without unit keep their doubt", "66.00 ± 0.01", "write 66.00 ± 0.01 mm"));
        all.add(bore(
                "hundreds of entries",
                "[" + "66.00 mm ± 0.01 mm, ".repeat(300) + "]",
                "has 300 entries, each with a doubt of its own"));
        all.add(text("grade of petrol", HEAD + "use: {fuel: premium}\n", 3, "write petrol, and choose the ratio"));
        for (String absurd : List.of("1e6 °C", "5000 °C", "-273.15 °C", "0 K")) {
            all.add(text(
                    "rule at " + absurd,
                    HEAD + "rules:\n  keep:\n    - {name: a, term: cylinder.bore, most: 66 mm, temperature: " + absurd
                            + "}\n",
                    5,
                    "is no temperature"));
        }
        // ---- keys
        all.add(text(
                "key of several sections",
                HEAD + "rated_speed: 3600 rpm\n",
                3,
                "put it under 'flywheel:' or 'connecting_rod:'"));
        all.add(text(
                "rules a second time",
                HEAD + "rules: {choose: {squish_least: general}}\nrules: {choose: {rod_ratio: usual}}\n",
                4,
                "longthrow set FILE rules.choose.rod_ratio 'usual'"));
        all.add(text(
                "mistyped key", HEAD + "cylinder:\n  bore_tpo_thrust: 66 mm\n", 4, "did you mean bore_top_thrust"));
        all.add(text(
                "key of another section", HEAD + "cylinder:\n  stroke: 50 mm\n", 4, "it belongs under crankshaft"));
        all.add(text("aim below nothing", HEAD + "aims:\n  engine.squish: -5 mm\n", 4, "below nothing"));
        all.add(text("aim no ratio", HEAD + "aims:\n  engine.compression_ratio: 0.5\n", 4, "no compression ratio"));
        all.add(text("key on the top level", HEAD + "stroke: 50 mm\n", 3, "put it under 'crankshaft:'"));
        all.add(text("worked-out term entered", HEAD + "engine2: 1\n", 3, "did you mean engine"));
        all.add(text("ratio entered", "longthrow: 1\nengine: {name: a, compression_ratio: 9}\n", 2, "worked out"));
        all.add(text("duplicate key", HEAD + "cylinder:\n  bore: 66 mm\n  bore: 67 mm\n", 5, "and on line 4"));
        all.add(text(
                "duplicate section",
                HEAD + "rings: {mass: 9 g}\npiston: {mass: 9 g}\nrings: {mass: 8 g}\n",
                5,
                "and on line 3"));
        all.add(text("list where keys are wanted", HEAD + "cylinder:\n  - bore\n", 4, "lines of key: value"));
        all.add(text("word where keys are wanted", HEAD + "cylinder: 66 mm\n", 3, "lines of key: value"));
        all.add(text(
                "section with nothing below", HEAD + "cylinder:\nhead: {metal: iron}\n", 3, "lines of key: value"));
        all.add(text("wrong word", HEAD + "head: {metal: aluminum}\n", 3, "did you mean aluminium"));
        all.add(text("merge key", HEAD + "cylinder:\n  <<: {bore: 66 mm}\n", 4, "merge key"));
        all.add(text("key that is a list", HEAD + "? [a, b]\n: c\n", 3, "cannot be a key"));
        all.add(text("empty key", HEAD + "'': c\n", 3, "empty key"));
        all.add(text(
                "trade word for a section", HEAD + "conrod: {length: 86 mm}\n", 3, "did you mean connecting_rod?"));
        all.add(text("trade word, crank", HEAD + "crank: {stroke: 56 mm}\n", 3, "did you mean crankshaft?"));
        all.add(text(
                "trade word in its section",
                HEAD + "cylinder: {deck: 1 mm}\n",
                3,
                "did you mean deck_height or deck_clearance?"));
        all.add(text(
                "trade word in another section",
                HEAD + "cylinder: {cc: 16 cc}\n",
                3,
                "did you mean head.chamber_volume?"));
        all.add(text(
                "trade word, pin height",
                HEAD + "piston: {pin_height: 25 mm}\n",
                3,
                "did you mean compression_height?"));
        all.add(text("trade word, head gasket", HEAD + "head_gasket: {bore: 70 mm}\n", 3, "did you mean gasket?"));
        all.add(text(
                "squish entered",
                "longthrow: 1\nengine: {name: a, squish: 1 mm}\n",
                2,
                "worked out from the readings (engine.squish_flywheel_end and engine.squish_output_end)"));
        all.add(text(
                "half a key",
                HEAD + "cylinder: {deck_flywheel_end: 1 mm}\n",
                3,
                "did you mean deck_clearance_flywheel_end?"));
        all.add(text("half a word", HEAD + "connecting_rod: {metal: billet}\n", 3, "did you mean billet_aluminium?"));
        all.add(text("trade word for a choice", "longthrow: 1\nengine: {name: a, valves: ohv}\n", 2, "mean overhead?"));
        all.add(text("key far from any, top level", HEAD + "zzyzx: 1\n", 3, "sprocket, use, place, aims, rules"));
        all.add(text("key far from any, section", HEAD + "use: {zzyzx: 1}\n", 3, "governed_speed, wanted_speed"));
        all.add(text("key far from any, long section", HEAD + "cylinder: {zzyzx: 1}\n", 3, "bore, sleeve_outside_top"));
        all.add(text("aim far from any term", HEAD + "aims: {use.zzyzx: 1}\n", 3, "use. and one of governed_speed"));
        all.add(text("donors for a build", "longthrow_donors: 1\ndonors: []\n", 1, "this is a donors catalogue"));
        // ---- the other sections
        all.add(text(
                "instrument without kind", HEAD + "instruments:\n  a: {resolution: 1 mm}\n", 4, "'kind' is missing"));
        all.add(text("instrument of no kind", HEAD + "instruments:\n  a: {kind: ruler}\n", 4, "not one of the words"));
        all.add(text(
                "resolution of zero",
                HEAD + "instruments:\n  a: {kind: tape, resolution: 0 mm}\n",
                4,
                "no doubt at all"));
        all.add(text(
                "name with spaces", HEAD + "instruments:\n  My Caliper: {kind: caliper}\n", 4, "cannot be a name"));
        all.add(text(
                "rule without limit",
                HEAD + "rules:\n  keep:\n    - {name: a, term: cylinder.bore}\n",
                5,
                "neither 'least' nor 'most'"));
        all.add(text(
                "rule of no term",
                HEAD + "rules:\n  keep:\n    - {name: a, term: bore, most: 1 mm}\n",
                5,
                "did you mean gasket.bore or cylinder.bore"));
        all.add(text(
                "rule upside down",
                HEAD + "rules:\n  keep:\n    - {name: a, term: cylinder.bore, least: 2 mm, most: 1 mm}\n",
                5,
                "is more than 'most'"));
        all.add(text("aim with a doubt", HEAD + "aims: {engine.squish: 1 mm ± 0.1 mm}\n", 3, "has a ±"));
        all.add(text(
                "damage of no kind", HEAD + "seen:\n  - {part: head, damage: cracked}\n", 4, "did you mean crack"));
        all.add(text(
                "lift table out of order",
                HEAD + "lift_tables:\n  - valve: intake\n    at: valve\n    rows: {9°: 1 mm, 8°: 2 mm}\n",
                6,
                "does not come after"));
        all.add(text(
                "flow table out of order",
                HEAD
                        + "flow_tables:\n  - valve: intake\n    depression: 28 inH2O\n    rows: {9 mm: 10 l/s, 8 mm: 9 l/s}\n",
                6,
                "does not come after"));
        all.add(text(
                "flow at a depression in another unit",
                HEAD + "flow_tables:\n  - valve: intake\n    depression: 28 psi\n    rows: {8 mm: 9 l/s}\n",
                5,
                "not what a flow bench works at"));
        all.add(text(
                "mock-up of nothing",
                HEAD + "mocked_up:\n  - pair: rod_to_skirt\n    way: clay\n",
                4,
                "nothing here says what was found"));
        all.add(text("minutes of no time", HEAD + "bench:\n  deck: {minutes: 0}\n", 4, "no time for one reading"));
        all.add(text("shim of nothing", HEAD + "connecting_rod: {shims_each_side: [0 mm]}\n", 3, "no doubt at all"));
        all.add(text(
                "standard of no kind",
                HEAD + "instruments:\n  a: {kind: bore_gauge, set_with: ring}\n",
                4,
                "neither built in"));
        all.add(text(
                "set with itself",
                HEAD + "instruments:\n  a: {kind: bore_gauge, set_with: a}\n",
                4,
                "defined further up"));
        all.add(text(
                "no such rule", HEAD + "rules: {choose: {squish_lest: general}}\n", 3, "did you mean squish_least"));
        all.add(text(
                "no such alternative", HEAD + "rules: {choose: {squish_least: genral}}\n", 3, "did you mean general"));
        // ---- the file
        all.add(text("empty file", "", 0, "the file is empty"));
        all.add(text("only remarks", "# nothing here\n", 0, "the file is empty"));
        all.add(text("a single word", "hello\n", 1, "lines of key: value"));
        all.add(text("missing format line", "engine: {name: a}\n", 1, "format line is missing"));
        all.add(text("format line not first", "engine: {name: a}\nlongthrow: 1\n", 2, "not the first"));
        all.add(text("newer format", "longthrow: 2\nengine: {whatever: 1}\n", 1, "newer format"));
        all.add(text("no format", "longthrow: one\nengine: {name: a}\n", 1, "not a format version"));
        all.add(text("missing engine", "longthrow: 1\n", 1, "'engine:' is missing"));
        all.add(text("missing name", "longthrow: 1\nengine: {valves: side}\n", 2, "'name' is missing"));
        all.add(text("tab in front", HEAD + "cylinder:\n\tbore: 66 mm\n", 4, "a tab stands here"));
        all.add(text("tab behind the key", HEAD + "cylinder:\n  bore:\t66 mm\n", 4, "a tab stands here"));
        all.add(text("NUL", HEAD + "notes: a\u0000b\n", 3, "U+0000"));
        all.add(text("escape character", HEAD + "notes: a\u001b[31mb\n", 3, "U+001B"));
        all.add(text("escape written as an escape", HEAD + "notes: \"a\\x1b\"\n", 3, "U+001B"));
        all.add(text("text turned round", HEAD + "notes: a\u202eb\n", 3, "U+202E"));
        all.add(text("two documents", HEAD + "---\nengine: {name: b}\n", 3, "document marker"));
        all.add(text("directive", "%YAML 1.1\n" + HEAD, 1, "directive"));
        all.add(text("anchor", HEAD + "notes: &a words\n", 3, "a mark for another place"));
        all.add(text("alias", HEAD + "notes: [&a words, *a]\n", 3, "a reference to another place"));
        all.add(text("tag", HEAD + "notes: !!java.lang.String words\n", 3, "type tag"));
        all.add(text("wrong indentation", HEAD + "cylinder:\n  bore: 66 mm\n   metal: iron\n", 5, "not well formed"));
        all.add(text("unclosed quotation mark", HEAD + "notes: \"never\nhead: {metal: iron}\n", 3, "never closed"));
        all.add(text("unclosed bracket", HEAD + "notes: [a, b\nhead: {metal: iron}\n", 3, "not closed"));
        all.add(text("unclosed brace", HEAD + "head: {metal: iron\n", 3, "not closed"));
        all.add(text("colon in words", HEAD + "notes: this: that\n", 3, "a colon stands where no key can be"));
        all.add(text("line without colon", HEAD + "cylinder\nhead: {metal: iron}\n", 3, "without its colon"));
        all.add(text("at sign in front", HEAD + "notes: @home\n", 3, "cannot stand there"));
        all.add(bytes("not UTF-8", 3, "is not UTF-8", 0xb1, '\n'));
        all.add(bytes("cut off in a letter", 3, "is not UTF-8", 0xc2));
        all.add(new Seeded("UTF-16", HEAD.getBytes(StandardCharsets.UTF_16), 1, "looks like UTF-16"));
        // ---- attacks on time and memory
        all.add(text("10 MB", HEAD + "notes: " + "a".repeat(10 << 20) + "\n", 0, "was not looked into"));
        all.add(text("a long text", HEAD + "notes: " + "a".repeat(100_000) + "\n", 3, "100000 characters"));
        all.add(text("deep brackets", HEAD + "notes: " + "[".repeat(500_000), 3, "deep in one another"));
        all.add(text("deep braces", HEAD + "notes: " + "{a: ".repeat(200_000), 3, "deep in one another"));
        all.add(text("deep dashes", HEAD + "notes:\n  " + "- ".repeat(200_000) + "a\n", 4, "deep in one another"));
        all.add(text(
                "many values", HEAD + "notes: [" + "a,".repeat(500_000) + "]\n", 3, "more than 20000 keys and values"));
        all.add(text("many keys", HEAD + lines(9_000), 3, "is not a key"));
        all.add(text("alias bomb", HEAD + bomb(), 3, "a mark for another place"));
        return all;
    }

    private static String lines(int count) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < count; i++) {
            text.append("k").append(i).append(": 1\n");
        }
        return text.toString();
    }

    private static String bomb() {
        StringBuilder text = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
        for (int i = 1; i < 30; i++) {
            text.append("a").append(i).append(": &a").append(i).append(" [");
            text.append(("*a" + (i - 1) + ", ").repeat(9)).append("x]\n");
        }
        return text.toString();
    }

    @ParameterizedTest
    @MethodSource("faults")
    void isNamedWithItsPlaceAndItsCure(Seeded seeded) {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long allocated = threads.getCurrentThreadAllocatedBytes();
        long start = System.nanoTime();

        ReadBuild read = BuildFile.read(seeded.bytes);

        Duration took = Duration.ofNanos(System.nanoTime() - start);
        allocated = threads.getCurrentThreadAllocatedBytes() - allocated;
        assertThat(took).isLessThan(LONGEST);
        assertThat(allocated).isLessThan(MOST_BYTES); // all that was ever asked for; never held at once
        assertThat(read.build()).isEmpty();
        assertThat(read.faults()).anySatisfy(fault -> {
            assertThat(fault.message()).contains(seeded.says);
            assertThat(fault.line()).isEqualTo(seeded.line);
        });
        for (Fault fault : read.faults()) {
            assertThat(fault.message()).doesNotContain("Exception", "\tat ", "longthrow.buildfile.");
            assertThat(fault.message().length()).isLessThan(900);
            assertThat(fault.why()).isNotBlank();
            assertThat(fault.mend()).isNotBlank();
            assertThat(fault.line() > 0 || fault.path().isEmpty()).isTrue();
        }
    }

    @Test
    void thereAreAtLeastFiftyAndEachIsAnother() {
        Stream<String> names = faults().stream().map(Seeded::name);
        assertThat(names).hasSizeGreaterThanOrEqualTo(50).doesNotHaveDuplicates();
    }

    @Test
    void allFaultsComeAtOnceInTheOrderOfTheFile() {
        ReadBuild read =
                BuildFile.read(HEAD + "cylinder:\n  bore: 66\n  boer: 1 mm\nhead: {metal: wood}\nseen: nothing\n");
        assertThat(read.faults()).extracting(Fault::line).containsExactly(4, 5, 6, 7);
    }

    @Test
    void theMessageSaysWhatWhereWhatIsAllowedAndHowToMend() {
        ReadBuild read = BuildFile.read(HEAD + "cylinder:\n  bore: 66.00\n");
        assertThat(read.faults().get(0).message())
                .isEqualTo("line 4, column 9, cylinder.bore: '66.00' has no unit; write 66.00 mm or 66.00 in"
                        + " (allowed: mm, in, thou, µm, cm, m, ft)");
    }

    @Test
    void columnsCountCharactersAsTheyAreSeen() {
        ReadBuild read = BuildFile.read(HEAD + "head: {metal: '𝛑', chamber_area: 1}\n");
        assertThat(read.faults()).extracting(Fault::column).containsExactly(15, 34);
    }

    @Test
    void aNotUtf8ByteIsNamedByItsOffset() {
        byte[] bytes = "longthrow: 1\nengine: {name: \u00b1}\n".getBytes(StandardCharsets.ISO_8859_1);
        Fault fault = BuildFile.read(bytes).faults().get(0);
        assertThat(fault.message()).contains(String.format(Locale.ROOT, "byte %d", 28)); // 13 + 15, counted from 0
        assertThat(fault.line()).isEqualTo(2);
        assertThat(fault.column()).isEqualTo(16);
    }
}

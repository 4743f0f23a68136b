package longthrow.buildfile;

import java.util.List;
import java.util.Optional;
import longthrow.core.build.Build;
import longthrow.core.build.Damage;
import longthrow.core.build.Decided;
import longthrow.core.build.GasReading;
import longthrow.core.build.Given;
import longthrow.core.build.HoursAt;
import longthrow.core.build.MockedUp;
import longthrow.core.build.TracedOutline;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Term;

/** The build file: one plain text that holds an engine. Its format is in {@link Layout}. */
public final class BuildFile {
    /** The format this program writes, and the only one there has been. */
    public static final int FORMAT_VERSION = Layout.FORMAT_VERSION;

    private BuildFile() {}

    /** Reads a file as it lies on the disk. Never throws, whatever the bytes. */
    public static ReadBuild read(byte[] utf8) {
        Faults faults = new Faults();
        return read(PlainText.decode(utf8, faults), faults);
    }

    /** Reads a file's text. Never throws, whatever the text. */
    public static ReadBuild read(String text) {
        Faults faults = new Faults();
        return read(PlainText.check(text, faults), faults);
    }

    private static ReadBuild read(Optional<String> text, Faults faults) {
        return read(faults, text.flatMap(plain -> TreeReader.read(plain, faults)));
    }

    /**
     * Reads what a file's text says.
     * @param faults of the text and its tree
     */
    static ReadBuild read(Faults faults, Optional<Node.Mapping> tree) {
        Optional<Build> build = tree.flatMap(root -> BuildReader.read(root, faults));
        return new ReadBuild(faults.isEmpty() ? build : Optional.empty(), faults.all(), faults.notes());
    }

    /**
     * The canonical text of a build. Read back it gives an equal build, quantities as they were written.
     * @throws IllegalArgumentException if a text in the build cannot stand in a file: control characters, or far too long
     */
    public static String write(Build build) {
        return new BuildWriter(build).text();
    }

    /**
     * Changes one value and leaves every other character, comment and line where it was. A key that is not there yet is
     * added at its place in the order of stripping.
     * @param path     {@code section.key}, such as {@code cylinder.bore}, {@code engine.name}, {@code instruments.wheel.error}
     * @param newValue what would be typed behind the key, on one line: {@code 66.02 mm}, {@code [66.00 mm, 66.01 mm]},
     *                 <code>{specified: 56.50 mm, by: the maker}</code>; free words with {@link #quoted} around them
     */
    public static Edited edit(String text, String path, String newValue) {
        return new Surgery(text, path, newValue).result();
    }

    /**
     * Puts a limit of the owner's own under {@code rules: keep:}, changes the one there is, or takes it out; every other character stays.
     * @param name  what the limit is called; with the term it says which one is meant
     * @param least as it would be typed, such as {@code 1.27 mm}; empty for none
     * @param most  likewise; both empty to take it out
     */
    public static Edited keepLimit(String text, String name, Term term, String least, String most) {
        return new LimitEdit(text, name, term, least.strip(), most.strip()).result();
    }

    /**
     * Puts the traced outline of a part in, in the place of the one there is, or takes it out; every other character stays.
     * @param wanted empty to take it out
     * @throws IllegalArgumentException if it is of another part, or a text in it cannot stand in a file
     */
    public static Edited outline(String text, OutlinedPart part, Optional<TracedOutline> wanted) {
        if (wanted.filter(w -> w.part() != part).isPresent()) {
            throw new IllegalArgumentException(
                    "the outline is of the " + wanted.get().part().label() + ", not of the " + part.label());
        }
        return new OutlineEdit(text, part, wanted).result();
    }

    /**
     * What was entered for a term as {@link #edit} takes it; nothing at all as unknown.
     * @throws IllegalArgumentException if a text in an entry cannot stand in a file
     */
    public static String entry(List<Given> entries) {
        return FlowEntry.of(entries);
    }

    /**
     * What is taken as {@link #edit} puts it behind {@code taken}; an empty list for nothing.
     * @throws IllegalArgumentException if a text in it cannot stand in a file
     */
    public static String taken(List<Decided> taken) {
        return FlowEntry.ofTaken(taken);
    }

    /**
     * What was mocked up as {@link #edit} puts it behind {@code mocked_up}; an empty list for nothing.
     * @throws IllegalArgumentException if a text in it cannot stand in a file
     */
    public static String mockedUp(List<MockedUp> mockedUp) {
        return FlowEntry.ofMockedUp(mockedUp);
    }

    /** Puts an entry of the mock-up, as somebody typed it, behind those there are; every other character stays. */
    public static Edited addMockUp(String text, MockUpEntry entry) {
        return entry.behind(text);
    }

    /**
     * Takes an entry of the mock-up out; every other character stays.
     * @param index from 0
     * @param was   the entry as it was seen, by {@link #mockedUp}; another one is not taken out
     */
    public static Edited withoutMockUp(String text, int index, String was) {
        return MockUpEntry.without(text, index, was);
    }

    /** Key, in an entry of the mock-up, of a size by which its parts are known again; see {@link MockedUp#SIZES}. */
    public static String mockUpKey(Term size) {
        return MockedUpReader.key(size);
    }

    /**
     * Gas traces as {@link #edit} puts them behind {@code gas_traces}; an empty list for none.
     * @throws IllegalArgumentException if a text in one cannot stand in a file
     */
    public static String gasTraces(List<GasReading> traces) {
        return FlowEntry.ofGas(traces);
    }

    /** The duty as {@link #edit} puts it behind {@code hours_at}; an empty list for none. */
    public static String hoursAt(List<HoursAt> steps) {
        return FlowEntry.ofHoursAt(steps);
    }

    /**
     * Damage seen, and parts looked over, as {@link #edit} puts them behind {@code seen}; an empty list for none.
     * @throws IllegalArgumentException if a text in one cannot stand in a file
     */
    public static String seen(List<Damage> seen) {
        return FlowEntry.ofSeen(seen);
    }

    /**
     * Sections, and terms as {@code section.key}, that a word of the trade stands for, such as conrod or jug; none for a word nobody knows.
     * @param word spaces as underscores
     */
    public static List<String> tradeWord(String word) {
        return TradeWords.terms(word);
    }

    /** Free words as they may stand behind a key, in quotation marks where they need them. */
    public static String quoted(String words) {
        return Scalars.write(words, true);
    }
}

package longthrow.buildfile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.buildfile.Node.Mapping;
import longthrow.buildfile.Node.Sequence;
import longthrow.core.build.Donor;
import longthrow.core.quantity.Stated;
import longthrow.core.term.Term;

/**
 * A catalogue of donor engines: {@code longthrow_donors: 1}, {@code invented: yes} where it is made up, and
 * <code>donors: [{name, note, figures: {section.key: 54.0 mm ± 0.1 mm}}]</code>. The ± is the half-width of the spread among engines
 * of one version; without it the spread is not known.
 */
public final class DonorFile {
    public static final int FORMAT_VERSION = 1;

    static final String VERSION = "longthrow_donors";
    private static final String DONORS = "donors";
    private static final List<String> KEYS = List.of(VERSION, Layout.INVENTED, DONORS);
    private static final List<String> DONOR_KEYS = List.of(Layout.NAME, Layout.NOTE, "figures");

    /** Fewer do not tell look-alikes apart, more nobody reads off a seller's engine. */
    private static final int FEWEST_FIGURES = 4;

    private static final int MOST_FIGURES = 6;

    private final Fields top;
    private final Faults faults;

    private DonorFile(Fields top, Faults faults) {
        this.top = top;
        this.faults = faults;
    }

    /** Reads a catalogue as it lies on the disk. Never throws, whatever the bytes. */
    public static ReadDonors read(byte[] utf8) {
        Faults faults = new Faults();
        return read(PlainText.decode(utf8, faults), faults);
    }

    /** Reads a catalogue's text. Never throws, whatever the text. */
    public static ReadDonors read(String text) {
        Faults faults = new Faults();
        return read(PlainText.check(text, faults), faults);
    }

    private static ReadDonors read(Optional<String> text, Faults faults) {
        Optional<Fields> top = text.flatMap(plain -> TreeReader.read(plain, VERSION + ": " + FORMAT_VERSION, faults))
                .filter(root -> VersionLine.isReadable(root, VERSION, FORMAT_VERSION, faults))
                .flatMap(root -> Fields.of(root, "", KEYS, faults));
        boolean invented = top.flatMap(f -> f.yesOrNo(Layout.INVENTED)).orElse(false);
        Optional<List<Donor>> donors = top.map(f -> new DonorFile(f, faults).donors());
        return new ReadDonors(faults.isEmpty() ? donors : Optional.empty(), invented, faults.all(), faults.notes());
    }

    private List<Donor> donors() {
        List<Donor> donors = new ArrayList<>();
        Set<String> names = new LinkedHashSet<>();
        Optional<Node> node = top.node(DONORS);
        if (node.isEmpty()) {
            faults.add(top.place(), "", "", "'donors' is missing", "", "add the line 'donors:' and a list below it");
        } else if (!(node.get() instanceof Sequence list)) {
            Fields.wrongShape(node.get(), DONORS, "a list", faults);
        } else {
            List<Node> items = list.items();
            for (int i = 0; i < items.size(); i++) {
                Fields.of(items.get(i), DONORS + "[" + (i + 1) + "]", DONOR_KEYS, faults)
                        .flatMap(f -> donor(f, names))
                        .ifPresent(donors::add);
            }
        }
        return donors;
    }

    private Optional<Donor> donor(Fields fields, Set<String> names) {
        Optional<String> name = fields.required(Layout.NAME, "what this version is called");
        String note = fields.textOrEmpty(Layout.NOTE);
        if (name.isPresent() && !names.add(name.get())) {
            faults.add(
                    fields.node(Layout.NAME).orElseThrow().place(),
                    fields.at(Layout.NAME),
                    name.get(),
                    "names two versions",
                    "each name once",
                    "put the year or the batch into the name");
        }
        Map<Term, Donor.Figure> figures = new LinkedHashMap<>();
        Optional<Node> node = fields.node("figures");
        node.ifPresent(n -> TermMap.read(
                n, fields.at("figures"), faults, (term, value, path) -> figure(term, value, path, figures)));
        int written = node.filter(Mapping.class::isInstance)
                .map(n -> leaves((Mapping) n))
                .orElse(0);
        if (written < FEWEST_FIGURES || written > MOST_FIGURES) {
            faults.add(
                    node.map(Node::place).orElse(fields.place()),
                    fields.at("figures"),
                    "",
                    "has " + written + " figures",
                    FEWEST_FIGURES + " to " + MOST_FIGURES,
                    written < FEWEST_FIGURES
                            ? "add figures that differ between the versions and can be read without opening the engine"
                            : "keep those that differ most between the versions");
        }
        return name.map(n -> new Donor(n, note, figures));
    }

    private static int leaves(Mapping map) {
        return map.entries().stream()
                .mapToInt(e -> e.value() instanceof Mapping below ? leaves(below) : 1)
                .sum();
    }

    private void figure(Term term, Node value, String path, Map<Term, Donor.Figure> figures) {
        if (!term.isRead()) {
            faults.add(
                    value.place(),
                    path,
                    term.path(),
                    "is worked out, not read, so it cannot tell versions apart at the bench",
                    "",
                    "give a figure that is read");
            return;
        }
        Optional<Stated> stated = new GivenReader(Map.of(), faults).stated(term, value, path);
        stated.ifPresent(s ->
                figures.put(term, new Donor.Figure(s.value(), s.expandedDoubt().orElse(null))));
    }
}

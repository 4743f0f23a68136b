package longthrow.workshop.web.fit;

import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import longthrow.core.build.Build;
import longthrow.core.build.OwnRule;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import longthrow.workshop.web.Frame;

/**
 * Limits of the owner's own on any figure: those there are, and another.
 * @param key    of the next edit, for once
 * @param figures to limit, by the part they are read on
 * @param faults of what was sent
 * @param sent   what was sent and not taken
 */
public record LimitsPage(
        Frame frame, String key, List<Kept> kept, List<Group> figures, List<String> faults, Sent sent) {
    public LimitsPage {
        kept = List.copyOf(kept);
        figures = List.copyOf(figures);
        faults = List.copyOf(faults);
    }

    /**
     * A limit there is.
     * @param more what else it says, which its text alone changes; empty for nothing
     */
    public record Kept(String name, String term, String label, String least, String most, String more) {}

    /** Figures of one part. */
    public record Group(String part, List<Item> items) {
        public Group {
            items = List.copyOf(items);
        }
    }

    /** One figure to choose. */
    public record Item(String term, String label) {}

    /** What stands in the form for another one. */
    public record Sent(String name, String term, String least, String most) {
        static final Sent NOTHING = new Sent("", "", "", "");
    }

    static LimitsPage of(Frame frame, Build build, List<String> faults, Sent sent) {
        return new LimitsPage(
                frame,
                UUID.randomUUID().toString(),
                build.ownRules().stream().map(LimitsPage::kept).toList(),
                Arrays.stream(Part.values())
                        .map(part -> new Group(
                                part.label(),
                                Arrays.stream(Term.values())
                                        .filter(t -> t.part() == part)
                                        .map(t -> new Item(t.path(), t.label()))
                                        .toList()))
                        .filter(group -> !group.items().isEmpty())
                        .toList(),
                faults,
                sent);
    }

    private static Kept kept(OwnRule rule) {
        Quantity guard = rule.guard();
        Quantity temperature = rule.temperature();
        return new Kept(
                rule.name(),
                rule.term().path(),
                rule.term().label(),
                rule.lower().map(Quantity::written).orElse(""),
                rule.upper().map(Quantity::written).orElse(""),
                String.join(
                        "; ",
                        Stream.of(
                                        guard == null ? "" : guard.written() + " kept back",
                                        temperature == null ? "" : "at " + temperature.written(),
                                        rule.procedure(),
                                        rule.reference())
                                .filter(w -> !w.isEmpty())
                                .toList()));
    }
}

package longthrow.core.book;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import longthrow.core.build.Build;
import longthrow.core.build.Damage;
import longthrow.core.build.Decided;
import longthrow.core.build.FitWish;
import longthrow.core.build.GasReading;
import longthrow.core.build.Given;
import longthrow.core.build.Instrument;
import longthrow.core.build.MockedUp;
import longthrow.core.build.OwnRule;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.Offer;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.Voucher;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * A build and a catalogue as they may be handed on: without any free words, for every one of them can hold a person or a place. Figures,
 * instruments by kind, limits, words chosen from a list and codes of parts stay; so the questions are asked of what is left, and no
 * answer can say what was taken out.
 * @param leftOut   what was taken out, by its place; never its content
 * @param lookAgain what stays though it is free words, to be looked at before it is sent
 */
public record Shared(Build build, Catalogue catalogue, List<String> leftOut, List<String> lookAgain) {
    private static final String LEFT_OUT = "left out for sharing";

    /** Whose word a maker's figure was goes without his name. */
    private static final String MAKERS = "its maker";

    private static final String NO_NAME = "Shared engine, name left out";

    public Shared {
        leftOut = List.copyOf(leftOut);
        lookAgain = List.copyOf(lookAgain);
    }

    /** Takes out every free word. */
    public static Shared of(Build build, Catalogue catalogue) {
        Taking taking = new Taking();
        Build shared = taking.build(build);
        Catalogue offered = taking.catalogue(catalogue);
        return new Shared(shared, offered, taking.list(), lookAgain(build, catalogue));
    }

    /** The same with what was taken out of the sheets of runs beside it. */
    public Shared with(List<SharedRuns> runs) {
        List<String> out = new ArrayList<>(leftOut);
        List<String> look = new ArrayList<>(lookAgain);
        runs.forEach(r -> r.leftOut().stream().filter(l -> !out.contains(l)).forEach(out::add));
        runs.forEach(r -> r.lookAgain().stream().filter(l -> !look.contains(l)).forEach(look::add));
        return new Shared(build, catalogue, out, look);
    }

    private static List<String> lookAgain(Build build, Catalogue catalogue) {
        List<String> kept = new ArrayList<>();
        if (!catalogue.parts().isEmpty() || !catalogue.operations().isEmpty()) {
            kept.add("codes and names of the catalogue's parts and operations are kept");
        }
        if (!build.taken().isEmpty()) {
            kept.add("codes and names of the parts and work that were taken are kept");
        }
        return kept;
    }

    /** What is taken out, counted by place. */
    private static final class Taking {
        private final Map<String, Integer> taken = new TreeMap<>();

        /** Nothing in place of words. */
        private String out(String where, String words) {
            return instead(where, words, "");
        }

        private String instead(String where, String words, String other) {
            if (words.isEmpty() || words.equals(other)) {
                return words;
            }
            taken.merge(where, 1, Integer::sum);
            return other;
        }

        List<String> list() {
            List<String> list = new ArrayList<>();
            taken.forEach((where, times) -> list.add(times == 1 ? where : where + ", " + times + " times"));
            return list;
        }

        Build build(Build from) {
            Map<String, Instrument> instruments = new LinkedHashMap<>();
            Map<String, String> names = new LinkedHashMap<>();
            from.instruments().forEach((key, own) -> {
                String name = own.kind().key().equals(key)
                        ? key
                        : instead("names of instruments", key, own.kind().key() + "_" + (names.size() + 1));
                names.put(key, name);
            });
            from.instruments().forEach((key, own) -> {
                Instrument shared = instrument(own, names);
                instruments.put(shared.key(), shared);
            });
            from.notes().forEach(n -> out("notes", n));
            Map<Term, List<Given>> given = new EnumMap<>(Term.class);
            from.given()
                    .forEach((term, entries) -> given.put(
                            term,
                            entries.stream().map(g -> entry(term, g, names)).toList()));
            Map<Choice, String> choices = new LinkedHashMap<>();
            from.choices().forEach((choice, word) -> word(choice, word).ifPresent(w -> choices.put(choice, w)));
            List<OwnRule> rules = new ArrayList<>();
            from.ownRules().forEach(r -> rules.add(rule(r, rules.size() + 1)));
            return new Build(
                    instead("engine.name", from.name(), NO_NAME),
                    from.invented(),
                    from.units(),
                    List.of(),
                    instruments,
                    given,
                    choices,
                    from.rulesChosen(),
                    rules,
                    from.aims(),
                    from.damage().stream()
                            .map(d -> new Damage(d.part(), d.kind(), out("seen: where", d.where())))
                            .toList(),
                    from.shims(),
                    from.lifts(),
                    from.outlines().stream()
                            .map(o -> o.withNote(out("outlines: note", o.note())))
                            .toList(),
                    from.bench(),
                    wish(from.fit()),
                    from.taken().stream().map(this::decided).toList(),
                    from.mockedUp().stream()
                            .map(m -> new MockedUp(
                                    m.pair(),
                                    m.way(),
                                    m.found(),
                                    m.endPlay(),
                                    m.with(),
                                    out("mocked_up: note", m.note())))
                            .toList(),
                    from.gas().stream()
                            .map(g -> new GasReading(
                                    g.speed(),
                                    g.pressure(),
                                    g.air(),
                                    g.cycles(),
                                    g.within(),
                                    out("gas_traces: note", g.note()),
                                    g.rows()))
                            .toList(),
                    from.hoursAt(),
                    from.flows().stream()
                            .map(f -> f.withNote(out("flow_tables: note", f.note())))
                            .toList());
        }

        private Decided decided(Decided from) {
            if (from instanceof Decided.Work w) {
                return new Decided.Work(
                        w.kind(),
                        w.code(),
                        w.name(),
                        offer("taken: vendor", w.offer()),
                        w.amount(),
                        w.from(),
                        w.to(),
                        w.tolerance(),
                        out("taken: note", w.note()));
            }
            Decided.Bought b = (Decided.Bought) from;
            return new Decided.Bought(b.kind(), b.code(), b.name(), offer("taken: vendor", b.offer()));
        }

        /** Codes of parts have a figure in them and no space; a currency is three capitals. What looks otherwise is free words. */
        private FitWish wish(FitWish from) {
            List<String> codes =
                    from.keep().stream().filter(c -> c.matches("\\S*\\d\\S*")).toList();
            from.keep().stream().filter(c -> !codes.contains(c)).forEach(c -> out("fit.keep", c));
            boolean plainMoney = from.currency().matches("[A-Z]{3}|");
            if (!plainMoney) {
                out("fit.budget", from.currency());
            }
            return new FitWish(
                    from.choose(),
                    codes,
                    plainMoney ? from.budget() : OptionalLong.empty(),
                    plainMoney ? from.currency() : "",
                    from.machining(),
                    from.order(),
                    place(from.airPressure()));
        }

        /** What a barometer shows tells how high its place lies, and so perhaps which place it is. */
        private @Nullable Quantity place(@Nullable Quantity airPressure) {
            if (airPressure != null) {
                out("fit.air_pressure", airPressure.written());
            }
            return null;
        }

        private Instrument instrument(Instrument own, Map<String, String> names) {
            Instrument standard = own.setWith();
            return new Instrument(
                    names.getOrDefault(own.key(), own.key()),
                    own.kind(),
                    own.resolution(),
                    own.statedError(),
                    own.relativeError(),
                    own.temperatureMetalIsSteel(),
                    out("instruments: calibration", own.calibration()),
                    standard == null
                            ? null
                            : names.containsKey(standard.key()) ? instrument(standard, names) : standard);
        }

        private Given entry(Term term, Given given, Map<String, String> names) {
            String note = out(term.path() + ": note", given.note());
            if (given instanceof Given.Taken t) {
                return new Given.Taken(
                        t.readings(),
                        named(t.instrument(), names),
                        t.partTemperature(),
                        t.instrumentTemperature(),
                        new Given.Origin(
                                out(term.path() + ": who", t.origin().who()),
                                out(term.path() + ": when", t.origin().when()),
                                out(term.path() + ": photo", t.origin().photo())),
                        note);
            }
            if (given instanceof Given.Typed t) {
                return new Given.Typed(t.value(), t.plusMinus(), note);
            }
            if (given instanceof Given.Specified s) {
                return new Given.Specified(
                        s.value(),
                        s.tolerance(),
                        instead(term.path() + ": by", s.by(), s.isMakersWord(term) ? MAKERS : LEFT_OUT),
                        s.catalogue(),
                        note);
            }
            if (given instanceof Given.Assumed a) {
                return new Given.Assumed(
                        a.value(), a.plusMinus(), instead(term.path() + ": because", a.because(), LEFT_OUT), note);
            }
            return new Given.NotKnown(note);
        }

        private static @Nullable String named(@Nullable String key, Map<String, String> names) {
            return key == null ? null : names.getOrDefault(key, key);
        }

        /** A word from the list stays; a taper as its maker writes it too, when it is nothing but figures. */
        private Optional<String> word(Choice choice, String word) {
            boolean plain = choice.option(word).isPresent() || word.matches("[0-9]+(\\.[0-9]+)?:[0-9]+(\\.[0-9]+)?");
            if (!plain) {
                out(choice.path(), word);
            }
            return plain ? Optional.of(word) : Optional.empty();
        }

        private OwnRule rule(OwnRule rule, int number) {
            return new OwnRule(
                    instead("rules.keep: name", rule.name(), "rule " + number),
                    rule.term(),
                    rule.least(),
                    rule.most(),
                    rule.guard(),
                    rule.temperature(),
                    out("rules.keep: procedure", rule.procedure()),
                    out("rules.keep: reference", rule.reference()));
        }

        Catalogue catalogue(Catalogue from) {
            return new Catalogue(
                    from.parts().stream().map(this::part).toList(),
                    from.operations().stream().map(this::operation).toList());
        }

        private CataloguePart part(CataloguePart p) {
            Map<Choice, String> words = new LinkedHashMap<>();
            p.words().forEach((choice, word) -> word(choice, word).ifPresent(w -> words.put(choice, w)));
            return new CataloguePart(
                    p.kind(),
                    p.code(),
                    p.name(),
                    p.invented(),
                    p.figures(),
                    words,
                    offer(p.offer()),
                    new Voucher(
                            p.voucher().basis(),
                            out("catalogue: measured by", p.voucher().by()),
                            out("catalogue: measured when", p.voucher().when()),
                            out("catalogue: batch", p.voucher().batch())),
                    out("catalogue: note", p.note()),
                    "");
        }

        private Operation operation(Operation o) {
            return new Operation(
                    o.kind(),
                    o.code(),
                    o.name(),
                    o.invented(),
                    o.least(),
                    o.most(),
                    o.step(),
                    o.tolerance(),
                    offer(o.offer()),
                    out("catalogue: note", o.note()),
                    "");
        }

        private Offer offer(Offer offer) {
            return offer("catalogue: vendor", offer);
        }

        private Offer offer(String where, Offer offer) {
            return new Offer(
                    offer.price(), offer.shipping(), offer.currency(), out(where, offer.vendor()), offer.leadDays());
        }
    }
}

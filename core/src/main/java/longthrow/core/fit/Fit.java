package longthrow.core.fit;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.answer.Aimed;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Candidate;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Rejection;
import longthrow.core.answer.Stop;
import longthrow.core.answer.Unknown;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.Decided;
import longthrow.core.build.FitWish;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.engine.Judge;
import longthrow.core.engine.Rule;
import longthrow.core.measure.Appraisal;
import longthrow.core.measure.AsPlanned;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** The question {@code fit}: a pure function from a build and a catalogue to its answer. */
public final class Fit {
    /** Place of the default that says what best first means. */
    private static final String ORDER = "fit.order";
    /** Place of the finding that says what was taken. */
    public static final String TAKEN = "taken";
    /** Place of the finding that says which machine work would mend what fits nothing. */
    public static final String MISSING_WORK = "missing machine work";

    /** Figures of a candidate that stand beside it; all the others are those of {@code measure}. */
    static final List<Term> SHOWN = List.of(
            Term.STROKE,
            Term.ROD_LENGTH,
            Term.COMPRESSION_HEIGHT,
            Term.GASKET_THICKNESS,
            Term.DECK_CLEARANCE,
            Term.SQUISH,
            Term.SWEPT_VOLUME,
            Term.CLEARANCE_VOLUME,
            Term.COMPRESSION_RATIO,
            Term.PIN_CLEARANCE,
            Term.BIG_END_CLEARANCE,
            Term.ROD_SIDE_CLEARANCE,
            Term.PISTON_TO_WALL,
            Term.SKIRT_TO_COUNTERWEIGHT,
            Term.BOSS_TO_COUNTERWEIGHT,
            Term.TOP_RING_TO_DECK,
            Term.SKIRT_OUT_OF_SLEEVE,
            Term.ROD_RATIO,
            Term.MEAN_PISTON_SPEED,
            Term.TDC_ACCELERATION,
            Term.RING_BEARS,
            Term.RING_SPEED,
            Term.EFFECTIVE_RATIO,
            Term.VALVE_TO_HEAD,
            Term.VALVE_TO_VALVE,
            Term.INTAKE_TO_WALL,
            Term.EXHAUST_TO_WALL);

    /** Figures whose rules decide about a combination; speeds are a matter of stops. */
    static final Set<Term> JUDGED = judged();

    private static Set<Term> judged() {
        Set<Term> terms = EnumSet.copyOf(SHOWN);
        terms.addAll(
                List.of(Term.OIL_GROOVE_TO_PIN, Term.PIN_FLOAT, Term.BOSS_CLEARANCE, Term.GASKET_OVER_BORE, Term.BORE));
        return terms;
    }

    /** What a cut of the head would bring, where a rule says how far it may go. */
    private static final List<Term> CUTS =
            List.of(Term.VALVE_TO_HEAD, Term.HEAD_CUT, Term.RATIO_AFTER_CUT, Term.VALVE_TO_HEAD_AFTER_CUT);
    /** What consequences and rejections look at besides. */
    static final Set<Term> LOOKED_AT = lookedAt();

    private static Set<Term> lookedAt() {
        Set<Term> terms = EnumSet.of(
                Term.DECK_HEIGHT,
                Term.BORE,
                Term.DONOR_STROKE,
                Term.WANTED_SPEED,
                Term.CROWN_RISE,
                Term.PUSHROD_LENGTH,
                Term.OIL_GROOVE_TO_PIN,
                Term.PIN_FLOAT,
                Term.BOSS_CLEARANCE,
                Term.GASKET_OVER_BORE);
        terms.addAll(SHOWN);
        for (Obstacle obstacle : Obstacle.values()) {
            obstacle.term().ifPresent(terms::add);
        }
        for (Gap gap : Gap.values()) {
            terms.add(gap.wide());
            terms.add(gap.inner());
        }
        return terms;
    }

    private final Build build;
    private final Catalogue catalogue;
    private final Appraisal own;
    private final List<Finding> findings = new ArrayList<>();
    private final List<DefaultUsed> defaults = new ArrayList<>();

    private Fit(Build build, Catalogue catalogue) {
        this.build = Place.ratioFor(build, defaults);
        this.catalogue = Money.inOneCurrency(this.build, catalogue, findings);
        this.own = Appraisal.sound(this.build);
        findings.addAll(own.suspects());
        defaults.addAll(own.defaults());
    }

    /**
     * Which parts close the stack and go together, why the others do not, and what machining closes the rest.
     * @param catalogue what may be bought; empty to solve the stack only
     */
    public static Answer of(Build build, Catalogue catalogue) {
        try {
            return new Fit(build, catalogue).answer();
        } catch (NotConvergedException e) {
            return nothing(
                    build, "no engine comes near all of these readings", "ask 'measure' first: it names the suspect");
        }
    }

    /** What best first means in an answer of this question; empty where nothing was put in order. */
    public static String order(Answer answer) {
        return answer.defaults().stream()
                .filter(d -> d.where().equals(ORDER))
                .map(DefaultUsed::what)
                .findFirst()
                .orElse("");
    }

    private static Answer nothing(Build build, String message, String mend) {
        return new Answer(
                "fit",
                build.name(),
                build.invented(),
                build.units(),
                List.of(),
                List.of(),
                List.of(new Finding(Finding.Kind.WARNING, "the whole sheet", message, mend)),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    private Answer answer() {
        findings.addAll(AsPlanned.findings(build));
        findings.addAll(Solved.findings(build, own, catalogue));
        findings.addAll(damage());
        List<Candidate> candidates = List.of();
        List<Rejection> rejections = List.of();
        List<Unknown> unknowns = new ArrayList<>();
        List<Stop> stops = own.stops();
        if (own.figure(Term.DECK_HEIGHT).isEmpty()) {
            unknowns.add(
                    new Unknown(
                            Term.DECK_HEIGHT,
                            List.of(Term.DECK_HEIGHT),
                            "without it nothing can be put together: read it, or stroke, rod, compression height and deck clearance of the engine as it is"));
        } else if (catalogue.parts().isEmpty() && catalogue.operations().isEmpty()) {
            findings.add(new Finding(
                    Finding.Kind.NOTE,
                    "catalogue",
                    "no parts to search: the stack is solved for each of its figures",
                    "name catalogue files with --catalogue"));
        } else {
            Assembly assembly = new Assembly(build, own, catalogue);
            keptCodes();
            exclusiveRules();
            List<Unknown> gaps = gaps(assembly);
            if (!gaps.isEmpty()) {
                return answered(List.of(), List.of(), gaps, stops);
            }
            Shortlist shortlist = new Shortlist(assembly);
            List<Found> best = shortlist.best();
            List<Rejection> withoutWhatMustStay = new ArrayList<>();
            candidates = new ArrayList<>();
            for (Found found : best) {
                Followers followers = new Followers(assembly, catalogue, shortlist.appraise(found), found);
                if (followers.missing().isPresent()) {
                    withoutWhatMustStay.add(followers.missing().get());
                } else {
                    candidates.add(candidate(found, best.get(0), shortlist, followers));
                }
            }
            stops = best.isEmpty() ? stops : shortlist.appraise(best.get(0)).stops();
            rejections = new ArrayList<>(rejections(shortlist.hunt()));
            rejections.addAll(shortlist.rejections());
            rejections.addAll(withoutWhatMustStay);
            overBudget(shortlist.hunt(), assembly).ifPresent(rejections::add);
            summary(assembly, shortlist);
            taken(assembly);
            if (best.isEmpty()) {
                findings.addAll(0, missingWork(shortlist.hunt()));
                findings.addAll(ToOrder.findings(assembly, shortlist.hunt()));
            }
        }
        return answered(candidates, rejections, unknowns, stops);
    }

    /** What is taken counts as taken: it is said first, with which of the parts that may be bought are still to choose. */
    private void taken(Assembly assembly) {
        if (build.taken().isEmpty()) {
            return;
        }
        String open = assembly.kinds().stream()
                .filter(k -> build.taken().stream().noneMatch(d -> d instanceof Decided.Bought b && b.kind() == k))
                .map(PartKind::label)
                .collect(Collectors.joining(", "));
        findings.add(
                0,
                new Finding(
                        Finding.Kind.NOTE,
                        TAKEN,
                        takenWords(build) + "; of what may be bought, left to choose: "
                                + (open.isEmpty() ? "nothing" : open)
                                + ". Ways that are named beside it put other parts in the place of these",
                        ""));
    }

    /** Parts and work decided on, by their codes, in the order of the file. */
    public static String takenWords(Build build) {
        return build.taken().stream()
                .map(d -> d.code() + (d instanceof Decided.Work work ? " (" + work.job() + ")" : ""))
                .collect(Collectors.joining(" + "));
    }

    /** Where nothing goes together and machining would mend it that no catalogue offers, or that is not allowed. */
    private List<Finding> missingWork(Hunt hunt) {
        Map<Operation.Kind, Long> wanted = new EnumMap<>(Operation.Kind.class);
        if (hunt.rejectedOnes().isEmpty()) {
            hunt.examples()
                    .forEach((obstacle, example) -> new Rejections(build, own, example)
                            .wantedWork(obstacle)
                            .ifPresent(
                                    kind -> wanted.merge(kind, hunt.rejected().getOrDefault(obstacle, 0L), Long::sum)));
        } else {
            hunt.rejectedOnes()
                    .forEach((example, obstacle) -> new Rejections(build, own, example)
                            .wantedWork(obstacle)
                            .ifPresent(kind -> wanted.merge(kind, 1L, Long::sum)));
        }
        return wanted.entrySet().stream()
                .filter(e -> !build.fit().machining()
                        || catalogue.operations().stream().noneMatch(o -> o.kind() == e.getKey()))
                .map(e -> new Finding(
                        Finding.Kind.WARNING,
                        MISSING_WORK,
                        (build.fit().machining()
                                        ? "no catalogue offers this: "
                                        : "machining is not allowed (fit: machining: no), so this is not reckoned with: ")
                                + e.getKey().label() + ". What stands first in the way of " + e.getValue() + " of "
                                + hunt.combinations() + " combinations is mended by it",
                        build.fit().machining()
                                ? "write what your shop asks and its tolerance into a catalogue, under machine operations"
                                : "allow machining, and search again"))
                .toList();
    }

    /** Damage that was seen stands above any fit. */
    private List<Finding> damage() {
        return build.damageSeen().stream()
                .map(d -> new Finding(
                        Finding.Kind.WARNING,
                        "seen: " + d.part().label(),
                        d.kind().label() + (d.where().isEmpty() ? "" : " (" + d.where() + ")")
                                + ": what fits on paper does not mend it",
                        "'measure' says what to do with this part before anything is bought for it"))
                .toList();
    }

    /** Places of the stack for which there is neither a part of the engine nor a row that may be taken. */
    private List<Unknown> gaps(Assembly assembly) {
        List<Unknown> gaps = new ArrayList<>();
        Assembly.STACK.forEach((kind, term) -> {
            if (assembly.rows(kind).isEmpty() && !assembly.mayBeMade(kind)) {
                gaps.add(new Unknown(
                        term,
                        List.of(term),
                        "no " + kind.label()
                                + " to put in: the build does not say this (or not well enough), and "
                                + (assembly.kinds().contains(kind)
                                        ? "the catalogue holds no " + kind.label()
                                                + " that may be taken; write it down, or add one to the catalogue"
                                        : "none may be bought; write it down, or add " + kind.key()
                                                + " to fit: choose:")));
            }
        });
        return gaps;
    }

    private Answer answered(
            List<Candidate> candidates, List<Rejection> rejections, List<Unknown> unknowns, List<Stop> stops) {
        return new Answer(
                "fit",
                build.name(),
                build.invented(),
                build.units(),
                own.values().stream()
                        .filter(v -> SHOWN.contains(v.term()) || CUTS.contains(v.term()))
                        .toList(),
                List.of(),
                findings,
                stops,
                unknowns,
                defaults,
                List.of(),
                candidates,
                rejections);
    }

    /** Codes to keep that no row has are slips of the pen. */
    private void keptCodes() {
        for (String code : build.fit().keep()) {
            List<PartKind> kinds = catalogue.parts().stream()
                    .filter(p -> p.code().equals(code))
                    .map(p -> p.kind())
                    .toList();
            if (kinds.isEmpty()) {
                findings.add(new Finding(
                        Finding.Kind.WARNING,
                        "fit.keep",
                        "no row of the catalogue has the code '" + code + "'; it is not kept",
                        "look at its spelling, capitals count; 'longthrow catalogue' shows what there is"));
            } else if (!build.fit().choose().isEmpty() && !build.fit().choose().contains(kinds.get(0))) {
                findings.add(new Finding(
                        Finding.Kind.NOTE,
                        "fit.keep",
                        code + " is a " + kinds.get(0).label() + "; that kind is searched too, with it alone",
                        ""));
            }
        }
    }

    /** An aim that no rule allows draws the search to its edge. */
    private void aimOutside(RuleWindows.Limits squish) {
        Quantity aim = build.aims().get(Term.SQUISH);
        if (aim != null && (aim.si() < squish.least() || aim.si() > squish.most())) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    "aims on " + Term.SQUISH.path(),
                    "the squish aimed at, " + aim.written() + ", is outside what the rules allow",
                    "look at aims: and at rules: keep: and choose:"));
        }
    }

    /** Two rules that nothing can keep at once are named before a search that must fail. */
    private void exclusiveRules() {
        RuleWindows windows = new RuleWindows(build);
        Map<Term, RuleWindows.Limits> all = new LinkedHashMap<>();
        all.put(
                Term.SQUISH,
                windows.of(Rule.SQUISH_LEAST, Term.SQUISH, build.choices(), own::figure)
                        .and(windows.ifPicked(Rule.SQUISH_MOST, Term.SQUISH, build.choices(), own::figure)));
        build.ownRules().forEach(r -> all.putIfAbsent(r.term(), windows.own(r.term())));
        aimOutside(windows.of(Rule.SQUISH_LEAST, Term.SQUISH, build.choices(), own::figure)
                .and(windows.of(Rule.SQUISH_MOST, Term.SQUISH, build.choices(), own::figure)));
        all.forEach((term, limits) -> {
            if (limits.least() > limits.most()) {
                findings.add(new Finding(
                        Finding.Kind.WARNING,
                        "rules on " + term.path(),
                        "they exclude each other: one asks for more than another allows, so nothing can keep them all",
                        "look at rules: keep: and rules: choose: on " + term.label()));
            }
        });
    }

    private void summary(Assembly assembly, Shortlist shortlist) {
        Hunt hunt = shortlist.hunt();
        String kinds = assembly.kinds().stream().map(PartKind::label).collect(Collectors.joining(", "));
        findings.add(
                0,
                new Finding(
                        Finding.Kind.NOTE,
                        "search",
                        String.format(
                                Locale.ROOT,
                                "searched: %s; %,d combinations, %s%,d of them go together as they are, honed and bored to each other where the shop can; the best are held against every rule%s",
                                kinds,
                                hunt.combinations(),
                                hunt.isCutShort() ? "at least " : "",
                                hunt.fitting(),
                                hunt.overBudget() > 0
                                        ? String.format(
                                                Locale.ROOT,
                                                "; %,d more ways cost more than the budget, the cheapest %s",
                                                hunt.overBudget(),
                                                Money.words(
                                                        hunt.cheapestOver()
                                                                .map(Found::price)
                                                                .orElse(0L),
                                                        Money.currency(build, catalogue)))
                                        : ""),
                        ""));
        defaults.add(new DefaultUsed(
                ORDER,
                Ranking.words(build),
                build.fit().order().isEmpty() ? "a judgement; write fit: order: to change it" : "the owner"));
        if (build.fit().choose().isEmpty()) {
            defaults.add(new DefaultUsed(
                    "fit.choose",
                    "may be bought: " + kinds,
                    "what the build does not have; write fit: choose: to change it"));
        }
        if (!build.aims().containsKey(Term.SQUISH)
                && shortlist.best().stream().anyMatch(f -> f.rod().isMade())) {
            defaults.add(new DefaultUsed(
                    "aims." + Term.SQUISH.path(),
                    "a rod to order is made for the middle of the squish that your rules allow",
                    "no squish is aimed at; write one under aims:"));
        }
        if (catalogue.parts().stream().anyMatch(p -> p.invented())) {
            findings.add(new Finding(
                    Finding.Kind.NOTE, "catalogue", "parts of the catalogue are invented; it says so itself", ""));
        }
        if (hunt.isCutShort()) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    "search",
                    String.format(
                            Locale.ROOT,
                            "left off after %,d ways that go together, the cheaper crankshafts and pistons first; there may be better ones behind them",
                            Hunt.MOST_VISITED),
                    "narrow it: fewer kinds under fit: choose:, codes under keep:, tighter aims or rules"));
        }
        if (!hunt.isCounted()) {
            findings.add(new Finding(
                    Finding.Kind.NOTE,
                    "search",
                    "too many combinations to count why each of the others does not fit",
                    "ask about one part: --why CODE"));
        }
        if (shortlist.isCutShort()) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    "search",
                    "the best " + shortlist.judged()
                            + " were held against every rule and too few keep them all; there may be others behind them",
                    "look at the rules that are broken, or narrow the search with fit: keep:"));
        }
        notSearched(assembly);
    }

    private void notSearched(Assembly assembly) {
        String others = assembly.kinds().stream()
                .filter(k -> !Assembly.STACK.containsKey(k) && !Followers.KINDS.contains(k))
                .map(PartKind::label)
                .collect(Collectors.joining(", "));
        if (!others.isEmpty()) {
            findings.add(new Finding(
                    Finding.Kind.NOTE,
                    "search",
                    others + ": nothing of the stack depends on them, so they are not searched",
                    ""));
        }
    }

    // ---- candidates

    private Candidate candidate(Found found, Found best, Shortlist shortlist, Followers followers) {
        Appraisal after = shortlist.appraise(found);
        Consequences consequences = new Consequences(build, own, after, found);
        List<Candidate.Piece> pieces = new ArrayList<>(found.pieces());
        List<Finding> forces = new ArrayList<>(consequences.forces());
        List<Finding> unknowns = new ArrayList<>(shortlist.notJudged(found));
        unknowns.addAll(consequences.unknowns());
        pieces.addAll(followers.pieces());
        forces.addAll(followers.findings());
        if (!found.equals(best)) {
            after.stops().stream()
                    .filter(stop -> !shortlist.appraise(best).stops().contains(stop))
                    .map(Consequences::needed)
                    .forEach(forces::add);
        }
        List<Verdict> verdicts = AsPlanned.told(build, after.verdicts(), after.values()).stream()
                .filter(v -> v.chosen() || v.state() != Verdict.State.UNKNOWN)
                .filter(v -> SHOWN.contains(v.term()) || (isFailed(v) && v.term() != Term.WANTED_SPEED))
                .filter(v -> !isOfWhatIsReplaced(v.term(), followers))
                .toList();
        List<Unknown> notKnown = new NotKnown(build, after, shortlist.bySizes(found)).figures();
        return new Candidate(
                found.title(),
                shortlist.sureness(found),
                shortlist.isOpen(found),
                pieces,
                total(found, pieces),
                after.values().stream().filter(v -> SHOWN.contains(v.term())).toList(),
                verdicts,
                aims(after, verdicts, notKnown),
                MildestSource.splits(build, verdicts),
                consequences.changes(),
                forces,
                unknowns,
                notKnown);
    }

    /** The figures aimed at, then the owner's own limits. */
    private List<Aimed> aims(Appraisal after, List<Verdict> verdicts, List<Unknown> notKnown) {
        FigurePrinter printer = new FigurePrinter(build.units());
        List<Aimed> aims = new ArrayList<>();
        build.aims().forEach((term, aim) -> {
            String why = notKnown.stream()
                    .filter(u -> u.term() == term)
                    .map(Unknown::why)
                    .findFirst()
                    .orElse("");
            aims.add(Aimed.at(term, aim, after.figure(term), why, printer));
        });
        verdicts.stream()
                .filter(v -> v.rule().startsWith(Judge.OWN) && SHOWN.contains(v.term()))
                .forEach(v -> aims.add(Aimed.limit(v, after.figure(v.term()))));
        return aims;
    }

    /** The old wheel or clutch is judged no more where another is bought, which was chosen to suit. */
    private static boolean isOfWhatIsReplaced(Term term, Followers followers) {
        return (List.of(Term.FLYWHEEL_ON_TAPER, Term.FLYWHEEL_KEY_STEP).contains(term)
                        && followers.buys(PartKind.FLYWHEEL))
                || (List.of(Term.CLUTCH_ON_SHAFT, Term.CLUTCH_KEY_STEP, Term.CLUTCH_OVERHANG)
                                .contains(term)
                        && followers.buys(PartKind.CLUTCH));
    }

    static boolean isFailed(Verdict verdict) {
        return verdict.chosen() && verdict.state() == Verdict.State.FAILS;
    }

    private Candidate.Total total(Found found, List<Candidate.Piece> pieces) {
        long known = pieces.stream().mapToLong(p -> p.price().orElse(0)).sum();
        String currency = pieces.stream()
                .map(Candidate.Piece::currency)
                .filter(c -> !c.isEmpty())
                .findFirst()
                .orElse("");
        List<String> notPriced = pieces.stream()
                .filter(p -> p.price().isEmpty())
                .map(Candidate.Piece::code)
                .toList();
        OptionalLong budget = Money.budget(build, catalogue);
        return new Candidate.Total(
                known, currency, notPriced, Forgotten.with(found), budget, Money.toSpend(build, catalogue));
    }

    // ---- rejections

    /** What would fit if there were more to spend. */
    private Optional<Rejection> overBudget(Hunt hunt, Assembly assembly) {
        return hunt.cheapestOver().map(found -> {
            String currency = Money.currency(build, catalogue);
            long over = found.price() - assembly.budget().orElse(0);
            return new Rejection(
                    Obstacle.BUDGET.label(),
                    hunt.overBudget(),
                    found.title(),
                    "the cheapest of them costs " + Money.words(found.price(), currency) + ", of "
                            + Money.toSpend(build, catalogue) + " to spend",
                    "spend " + Money.words(over, currency) + " more");
        });
    }

    private List<Rejection> rejections(Hunt hunt) {
        List<Rejection> rejections = new ArrayList<>();
        if (!hunt.rejectedOnes().isEmpty()) {
            hunt.rejectedOnes().forEach((found, obstacle) -> rejections.add(rejection(obstacle, 1, found)));
            return rejections;
        }
        hunt.rejected()
                .forEach((obstacle, count) -> rejections.add(
                        rejection(obstacle, count, hunt.examples().get(obstacle))));
        return rejections;
    }

    private Rejection rejection(Obstacle obstacle, long count, @Nullable Found example) {
        if (example == null) {
            return new Rejection(obstacle.label(), count, "", "", "");
        }
        return new Rejections(build, own, example).of(obstacle, count);
    }

    /** What keeps a row from the best place it could have, for the asker who names its code; empty when no row has it. */
    public static Answer why(Build build, Catalogue catalogue, String code) {
        List<String> keep = new ArrayList<>(build.fit().keep());
        keep.add(code);
        List<PartKind> choose = new ArrayList<>(build.fit().choose());
        catalogue.parts().stream()
                .filter(p -> p.code().equals(code) && !choose.isEmpty() && !choose.contains(p.kind()))
                .forEach(p -> choose.add(p.kind()));
        Build asked = build.withFit(new FitWish(
                choose,
                keep,
                build.fit().budget(),
                build.fit().currency(),
                build.fit().machining(),
                build.fit().order(),
                build.fit().airPressure()));
        if (catalogue.parts().stream().noneMatch(p -> p.code().equals(code))) {
            String codes =
                    catalogue.parts().stream().map(p -> p.code()).limit(12).collect(Collectors.joining(", "));
            return nothing(
                    build,
                    "no row of the catalogue has the code '" + code + "'",
                    codes.isEmpty() ? "'longthrow catalogue' shows what there is" : "codes that begin alike: " + codes);
        }
        return of(asked, catalogue);
    }
}

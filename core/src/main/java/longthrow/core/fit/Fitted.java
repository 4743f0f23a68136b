package longthrow.core.fit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.Operation;
import longthrow.core.measure.Appraisal;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.Units;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** The build as it would be with the parts of a combination in it: readings of parts that go are taken out, what sheets say of the new ones is put in. */
final class Fitted {
    /** How far the piston comes: of no worth once crank, rod, piston or deck is another. */
    private static final Set<Term> REACH = Set.of(
            Term.DECK_CLEARANCE,
            Term.DECK_CLEARANCE_THRUST,
            Term.DECK_CLEARANCE_ANTITHRUST,
            Term.DECK_CLEARANCE_FLYWHEEL_END,
            Term.DECK_CLEARANCE_OUTPUT_END);

    /** What is left under the head: of no worth once any part of the stack is another. */
    private static final Set<Term> UNDER_THE_HEAD =
            Set.of(Term.SQUISH_FLYWHEEL_END, Term.SQUISH_OUTPUT_END, Term.VOLUME_IN_ASSEMBLY, Term.VALVE_TO_HEAD);

    /** Of the engine as it was put together: of no worth once it was apart. */
    private static final Set<Term> PUT_TOGETHER = Set.of(Term.CRANKING_PRESSURE, Term.LEAK_DOWN);

    /** Read between two parts: of no worth once either is another. */
    private static final Map<Term, Set<Part>> BETWEEN = Map.of(
            Term.ROD_SIDE_CLEARANCE, EnumSet.of(Part.CRANKSHAFT, Part.ROD),
            Term.BIG_END_STRIP, EnumSet.of(Part.CRANKSHAFT, Part.ROD),
            Term.CRANK_END_PLAY, EnumSet.of(Part.CRANKSHAFT),
            Term.TOP_RING_GAP, EnumSet.of(Part.PISTON, Part.CYLINDER),
            Term.SECOND_RING_GAP, EnumSet.of(Part.PISTON, Part.CYLINDER),
            Term.TOP_RING_SIDE_CLEARANCE, EnumSet.of(Part.PISTON));

    /** By the sizes alone a length is taken as good to half its usual last digit [mm]. */
    private static final String AS_STATED = "0.005";

    private final Build build;
    private final Appraisal own;
    private final boolean bySizes;
    private final Map<Term, List<Given>> given = new EnumMap<>(Term.class);
    private final Map<Choice, String> words = new LinkedHashMap<>();

    private Fitted(Build build, Appraisal own, boolean bySizes) {
        this.bySizes = bySizes;
        this.build = build;
        this.own = own;
        given.putAll(build.given());
        words.putAll(build.choices());
    }

    /** By the sizes alone: as if those without a tolerance were exactly what they say. */
    static Build bySizes(Build build, Appraisal own, Found found) {
        return new Fitted(build, own, true).put(found);
    }

    static Build with(Build build, Appraisal own, Found found) {
        boolean asItIs = found.rows().allMatch(r -> r.isOwn() && r.cuts().isEmpty())
                && found.deckCut() == null
                && found.honed().isEmpty();
        return asItIs ? build : new Fitted(build, own, false).put(found);
    }

    private Build put(Found found) {
        keepDonorStroke(found);
        takeOutWhatWasRead(found);
        found.rows().forEach(this::put);
        found.honed().forEach(this::hone);
        shiftCam(found);
        moveGapOfOpenValves(found);
        shortenSleeve(found.deckCut());
        return build.withGiven(given).withChoices(words);
    }

    /** What was read of parts that stay as they are stands: a reading is not thrown away for a part it says nothing of. */
    private void takeOutWhatWasRead(Found found) {
        Set<Part> other = EnumSet.noneOf(Part.class);
        found.rows()
                .filter(r -> !r.isOwn() || !r.cuts().isEmpty())
                .forEach(r -> other.add(r.kind().part()));
        found.honed().forEach(h -> other.add(h.operation().kind().changes().part()));
        boolean reachIsOther = found.deckCut() != null
                || other.contains(Part.CRANKSHAFT)
                || other.contains(Part.ROD)
                || other.contains(Part.PISTON);
        boolean reachWasRead = build.has(Term.DECK_HEIGHT) || REACH.stream().anyMatch(build::has);
        if (reachIsOther || !reachWasRead) {
            keep(Term.DECK_HEIGHT, found.deckCut());
            REACH.forEach(given::remove);
        }
        UNDER_THE_HEAD.forEach(given::remove);
        PUT_TOGETHER.forEach(given::remove);
        BETWEEN.forEach((term, parts) -> {
            if (parts.stream().anyMatch(other::contains)) {
                given.remove(term);
            }
        });
    }

    private void keepDonorStroke(Found found) {
        boolean newCrank = !found.crank().isOwn() || !found.crank().cuts().isEmpty();
        if (newCrank && !build.has(Term.DONOR_STROKE)) {
            own.figure(Term.STROKE).ifPresent(s -> given.put(Term.DONOR_STROKE, typed(Term.DONOR_STROKE, s)));
        }
    }

    /** An overhead camshaft on chain or belt runs ahead or behind once its head has moved; where that is not known, its events are not. */
    private void shiftCam(Found found) {
        HeadMove move = HeadMove.of(own, found);
        if (!HeadMove.isOverheadCam(build) || (move.stands() && !move.isOpen())) {
            return;
        }
        Optional<Measured> advance = move.isVague() && !bySizes ? Optional.empty() : move.advance(own);
        for (Term event : HeadMove.EVENTS) {
            Optional<Measured> shifted =
                    advance.flatMap(a -> own.figure(event).map(old -> HeadMove.event(event, old, a)));
            boolean wasRead = given.remove(event) != null;
            if (wasRead && shifted.isPresent()) {
                given.put(event, typed(event, shifted.get(), "the head moved, and with it the chain or belt"));
            }
        }
    }

    /** On a side-valve the open valves keep their place in the block, so their gap to the head moves with it; under another head it is not known. */
    private void moveGapOfOpenValves(Found found) {
        HeadMove move = HeadMove.of(own, found);
        Optional<Measured> gap = own.figure(Term.VALVE_TO_HEAD);
        if (!build.chose(Choice.VALVE_LAYOUT, "side")
                || gap.isEmpty()
                || !found.head().isOwn()
                || move.isOpen()) {
            return;
        }
        Measured now = HeadMove.sum(gap.get(), 1, move.up(), 1);
        String why = "as it was before the head moved";
        given.put(
                Term.VALVE_TO_HEAD,
                move.isVague() && !bySizes
                        ? specified(Term.VALVE_TO_HEAD, new Dim(now.value(), 0, 0, true), why)
                        : typed(Term.VALVE_TO_HEAD, now, why));
    }

    /** The sleeve is read from the deck: what comes off the deck comes off its upper end, and the lower end stays. */
    private void shortenSleeve(Row.@Nullable Cut deckCut) {
        Optional<Measured> sleeve = own.figure(Term.SLEEVE_LENGTH);
        if (deckCut != null && sleeve.isPresent()) {
            Measured left = HeadMove.sum(sleeve.get(), 1, Measured.exact(deckCut.amount()), -1);
            given.put(Term.SLEEVE_LENGTH, typed(Term.SLEEVE_LENGTH, left, deckCut.text()));
        }
    }

    /** What was found of it from all readings, so that those of the old stack may go. */
    private void keep(Term term, Row.@Nullable Cut cut) {
        own.figure(term).ifPresent(figure -> {
            if (cut == null) {
                given.put(term, typed(term, figure));
            } else {
                Dim after = Dim.of(figure)
                        .machined(cut.amount(), -1, cut.operation().tolerance());
                given.put(term, specified(term, after, cut.text()));
            }
        });
    }

    private static List<Given> typed(Term term, Measured figure) {
        return typed(term, figure, "as found before the change");
    }

    private static List<Given> typed(Term term, Measured figure, String note) {
        Quantity value = quantity(term, figure.value());
        return List.of(new Given.Typed(value, quantity(term, figure.expanded()), note));
    }

    private void put(Row row) {
        CataloguePart part = row.part();
        if (part != null) {
            given.keySet().removeIf(t -> replaces(part, t));
            words.keySet().removeIf(c -> c.part() == part.kind().part());
            words.putAll(row.words());
            part.figures().forEach((term, figure) -> {
                if (term.isRead()) {
                    given.put(term, List.of(entry(part, figure)));
                }
            });
        }
        row.cuts().forEach(cut -> machined(row, cut));
    }

    private Given entry(CataloguePart part, CataloguePart.Figure figure) {
        Quantity tolerance = figure.tolerance();
        if (tolerance == null && bySizes) {
            tolerance = figure.value().dimension() == Dimension.LENGTH
                    ? Quantity.of(AS_STATED, Units.MILLIMETRE)
                    : Quantity.of("0", figure.value().unit());
        }
        return tolerance == null || figure.isLimit()
                ? new Given.Specified(figure.value(), tolerance, part.code(), true, "")
                : new Given.Typed(figure.value(), tolerance, part.code());
    }

    /** The donor's throw is what the new one is compared with, and valves stay where only the head's casting goes. */
    private static boolean replaces(CataloguePart part, Term term) {
        return part.kind().mayState(term)
                && term != Term.DONOR_STROKE
                && (term.part() == part.kind().part() || part.figures().containsKey(term));
    }

    private void machined(Row row, Row.Cut cut) {
        for (Term term : changed(cut.operation().kind())) {
            row.dim(term).ifPresent(dim -> given.put(term, specified(term, dim, cut.text())));
        }
        if (cut.operation().kind() == Operation.Kind.CROWN_CUT) {
            given.remove(Term.PIN_TOP_TO_CROWN);
            if (row.dim(Term.CROWN_VOLUME).isEmpty()) {
                given.remove(Term.CROWN_VOLUME);
            }
            given.remove(Term.PIN_BOTTOM_TO_CROWN);
        }
        if (cut.operation().kind() == Operation.Kind.CRANKPIN_OFFSET_GRIND) {
            given.remove(Term.THROW);
            given.remove(Term.CRANKPIN_LARGEST);
            given.remove(Term.CRANKPIN_SMALLEST);
        }
    }

    private static List<Term> changed(Operation.Kind kind) {
        return switch (kind) {
            case CROWN_CUT ->
                List.of(Term.COMPRESSION_HEIGHT, Term.TOP_LAND_HEIGHT, Term.OIL_GROOVE_TO_CROWN, Term.CROWN_VOLUME);
            case CRANKPIN_OFFSET_GRIND -> List.of(Term.STROKE, Term.CRANKPIN_DIAMETER);
            default -> List.of(kind.changes());
        };
    }

    /** Honing and facing of pairs, boring to the piston: from the figure that stands there now. */
    private void hone(Row.Cut cut) {
        Term term = cut.operation().kind().changes();
        List<Given> now = given.getOrDefault(term, List.of());
        boolean toSize = !cut.operation().kind().takesOff();
        if (toSize) {
            given.keySet().removeIf(t -> t.path().startsWith("cylinder.bore"));
            Dim size = new Dim(cut.amount(), 0, 0, false)
                    .machined(0, 1, cut.operation().tolerance());
            given.put(term, specified(term, size, cut.text()));
        } else if (!now.isEmpty() && now.get(0).figure().isPresent()) {
            double sign = cut.operation().kind() == Operation.Kind.BIG_END_FACE ? -1 : 1;
            Dim before = stated(now.get(0))
                    .orElseGet(() -> own.figure(term).map(Dim::of).orElseThrow());
            given.put(
                    term,
                    specified(
                            term,
                            before.machined(cut.amount(), sign, cut.operation().tolerance()),
                            cut.text()));
        }
    }

    private static Optional<Dim> stated(Given given) {
        if (given instanceof Given.Specified s) {
            return Optional.of(Dim.of(new CataloguePart.Figure(s.value(), s.tolerance(), true)));
        }
        return given instanceof Given.Typed t
                ? Optional.of(Dim.of(new CataloguePart.Figure(t.value(), t.plusMinus(), false)))
                : Optional.empty();
    }

    private List<Given> specified(Term term, Dim dim, String by) {
        return List.of(new Given.Specified(
                quantity(term, dim.value()),
                dim.isVague() && !bySizes ? null : quantity(term, dim.half()),
                "after machining: " + by,
                false,
                ""));
    }

    /** To a nanometre, a thousandth of a cubic millimetre, a millionth of a degree: far finer than anything that is made. */
    static Quantity quantity(Term term, double si) {
        Unit unit = switch (term.dimension()) {
            case LENGTH -> Units.MILLIMETRE;
            case VOLUME -> Units.CUBIC_CENTIMETRE;
            case ANGLE -> Units.DEGREE;
            default ->
                throw new IllegalArgumentException(term.path() + " is neither a length nor a volume nor an angle");
        };
        BigDecimal number = BigDecimal.valueOf(unit.fromSi(si)).setScale(6, RoundingMode.HALF_EVEN);
        return Quantity.of(number.stripTrailingZeros(), unit);
    }
}

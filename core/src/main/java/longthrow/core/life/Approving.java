package longthrow.core.life;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.answer.Approval;
import longthrow.core.answer.Approval.Unlock;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.State;
import longthrow.core.answer.Rung.Weight;
import longthrow.core.answer.Stop;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.Damage;
import longthrow.core.build.Decided;
import longthrow.core.build.Whose;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.PartKind;
import longthrow.core.engine.GapStops;
import longthrow.core.engine.Rule;
import longthrow.core.engine.Stops;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Units;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * From rungs and stops to the verdict of the whole. A maker's governed or rated speed approves an undamaged engine up to itself, and of one with another throw
 * only what the throw does not load; past it the ratings of rod and wheel are asked for. Refused is a limit passed or damage seen, not approved is data missing or too uncertain.
 */
final class Approving {
    private static final String PRICE_UNKNOWN = "price not known";

    /** Speeds that are approved are rounded down to this [rad/s]: 10 rpm. */
    private static final double STEP = Units.RPM.toSi(10);

    private static final String BOLT_USES = "rod_bolts_uses";

    private final Known known;
    private final List<Stop> stops;
    private final List<Clearance> pairs;
    private final boolean isThrowAsMade;
    private final List<Finding> suspects;
    private final Catalogue catalogue;
    private final RungMaker maker;

    /**
     * Of one engine.
     * @param stops with those of its gaps
     * @param pairs of its parts
     */
    Approving(
            Known known,
            List<Stop> stops,
            List<Clearance> pairs,
            List<Finding> suspects,
            Catalogue catalogue,
            RungMaker maker) {
        this.known = known;
        this.stops = stops;
        this.pairs = List.copyOf(pairs);
        this.isThrowAsMade = Stops.isThrowAsMade(known.build(), known::figure);
        this.suspects = suspects;
        this.catalogue = catalogue;
        this.maker = maker;
    }

    private boolean covers(Term rating) {
        return Stops.covers(known.build(), known::figure, rating);
    }

    /** The rungs with those that a maker's word stands over. */
    List<Rung> covered(List<Rung> rungs) {
        boolean byEngine = covers(Term.GOVERNED_SPEED);
        boolean byRod = covers(Term.ROD_RATED_SPEED);
        boolean byWheel = covers(Term.FLYWHEEL_RATED_SPEED);
        return rungs.stream()
                .map(r -> {
                    if ((r.kind() == Rung.Kind.RATING && r.state() == State.HOLDS)
                            || isTheOwnersOwn(r)
                            || (lacksOneAlone(r) && !isMockedUp(r))) {
                        return r;
                    }
                    if (isMockedUp(r)) {
                        return r.covered("its mock-up");
                    }
                    if (byRod && isOfTheRod(r) && !isOfBoltsAsDrawnUp(r) && r.kind() != Rung.Kind.RATING) {
                        return r.covered("the rod's rating");
                    }
                    if (byWheel && r.kind() == Rung.Kind.RIM) {
                        return r.covered("the flywheel's rating");
                    }
                    return byEngine && isForTheEngineToCover(r) && isAsMade(r)
                            ? r.covered("the maker's governed speed")
                            : r;
                })
                .toList();
    }

    /** What wears, what holds the speed, how often bolts were drawn up, and a duty that does not go with the speed is as the owner has it: no maker speaks of that. */
    private static boolean isTheOwnersOwn(Rung rung) {
        return rung.kind() == Rung.Kind.WEAR
                || rung.kind() == Rung.Kind.HELD
                || rung.key().equals(BOLT_USES)
                || rung.missing().stream().anyMatch(m -> m.where().equals(RodRungs.DUTY));
    }

    /** To what bolts were drawn up is the owner's doing too; the rod's maker speaks of bolts drawn up as he says. */
    private static boolean isOfBoltsAsDrawnUp(Rung rung) {
        return rung.key().startsWith("rod_bolts_") && rung.isRefused();
    }

    /**
     * Of a part of which its owner tells, a limit that refuses and for which one thing alone is missing: that one might be the bad one, so leaving it out must not
     * do better than writing it down.
     */
    private boolean lacksOneAlone(Rung rung) {
        return rung.state() == State.UNKNOWN
                && rung.weight() == Weight.REFUSES
                && rung.kind() != Rung.Kind.RATING
                && rung.missing().size() == 1
                && (rung.hangsOn().size() == 1 || isTold(rung.part()));
    }

    /** Room over the seal at full lift that was read as a gap is as good as read as a travel. */
    private boolean isMockedUp(Rung rung) {
        return rung.state() == State.UNKNOWN
                && RETAINERS.contains(rung.key())
                && pairs.stream()
                        .anyMatch(p -> p.key().equals(rung.key() + "_to_seal")
                                && (p.state() == Clearance.State.CLEARS || p.state() == Clearance.State.CLEARS_COLD));
    }

    private static final Set<String> RETAINERS = Set.of("intake_retainer", "exhaust_retainer");

    private boolean isTold(Part part) {
        Build build = known.build();
        return build.given().keySet().stream().anyMatch(t -> t.part() == part && build.has(t))
                || build.choices().keySet().stream().anyMatch(c -> c.part() == part);
    }

    /** Limits that by the sum alone are passed, and that a maker's word stands over. */
    private static List<String> overruled(List<Rung> reckoned, List<Rung> covered) {
        Set<String> byWord = covered.stream()
                .filter(r -> r.state() == State.COVERED)
                .map(Rung::key)
                .collect(Collectors.toSet());
        return reckoned.stream()
                .filter(r -> r.state() == State.EXCEEDED && byWord.contains(r.key()))
                .map(Rung::label)
                .toList();
    }

    /** Whether the maker's word on the engine reaches so far: of another throw, or a wheel nobody named, he said nothing. */
    private boolean isAsMade(Rung rung) {
        boolean isNamedWheel = rung.kind() != Rung.Kind.RIM
                || known.build().choice(Choice.FLYWHEEL_KIND).isPresent();
        return isNamedWheel
                && !known.build().chose(Choice.DUTY, "boosted") // gas is pressed in that he did not reckon with
                && Stops.isMakersOwn(known.build(), rung.part())
                && (isThrowAsMade || !isLoadedByThrow(rung));
    }

    private boolean isDonorKnown() {
        return Stops.isDonorKnown(known.build(), known::figure);
    }

    private boolean isOfAnotherThrow() {
        return Stops.isOfAnotherThrow(known.build(), known::figure);
    }

    /** What touches, or comes too close, or is not known. */
    private List<Stop> ofGaps() {
        return stops.stream().filter(GapStops::isOfGaps).toList();
    }

    private boolean isHeldByGapsAtAnySpeed() {
        return pairs.stream().anyMatch(p -> p.hold() == Clearance.Hold.ANY_RUN);
    }

    /** Damage that was seen, on any part: a maker spoke of an undamaged engine, and no sum knows of it. */
    private List<Damage> damaged() {
        return known.build().damageSeen().stream()
                .filter(d -> !Stops.isStopFor(d))
                .toList();
    }

    /** Of those, the ones that nobody says were looked over and found sound. */
    private List<Part> notLookedOver() {
        return Life.LOOKED_OVER.stream()
                .filter(p -> known.build().lookedOver(p).isEmpty()
                        && known.build().damageSeen().stream().noneMatch(d -> d.part() == p))
                .toList();
    }

    private static String named(List<Part> parts) {
        List<String> names = parts.stream().map(Part::label).toList();
        return names.size() == 1
                ? names.get(0)
                : String.join(", ", names.subList(0, names.size() - 1)) + " and " + names.get(names.size() - 1);
    }

    private static String nobodySays(List<Part> parts) {
        return "nobody says that " + named(parts) + (parts.size() == 1 ? " was" : " were")
                + " looked over and found sound, and every word and sum here is of sound parts";
    }

    /** How and where it is looked over, as an example. */
    private static String lookedOver(Part part) {
        return switch (part) {
            case ROD -> "dyed, both ends, beam and bolts";
            case CRANKSHAFT -> "dyed, fillets, taper and keyway";
            case PISTON -> "by eye, skirt, crown and pin bosses";
            default -> "dyed, hub and rim";
        };
    }

    private static Unlock lookOver(List<Part> parts) {
        return new Unlock(
                "look over " + named(parts)
                        + " first, by eye and with penetrant dye: cracks, dents, pits, scores, bends, keyway and bolts; write what was found, such as seen: [{part: "
                        + parts.get(0).key() + ", damage: none, where: '" + lookedOver(parts.get(0)) + "'}]",
                "a maker speaks of undamaged parts, and no sum sees a crack",
                "",
                "");
    }

    private String foundSound() {
        return "looked over and found sound: "
                + Life.LOOKED_OVER.stream()
                        .flatMap(p -> known.build().lookedOver(p).stream())
                        .map(d -> d.part().label() + " (" + d.where() + ")")
                        .collect(Collectors.joining(", "));
    }

    /** Ratings of which one that is written is under the wanted speed, though together they are set aside: the lowest counts until it is settled. */
    private List<String> lowestRatings(double asked) {
        List<String> low = new ArrayList<>();
        for (Term rating : Stops.RATINGS) {
            if (known.build().of(rating).size() > 1) {
                known.build().of(rating).stream()
                        .flatMap(g -> g.figure().stream())
                        .filter(f -> f.si() < asked * (1 - 1e-9))
                        .forEach(
                                f -> low.add(
                                        rating.label() + ": " + f.written()
                                                + " is written beside another, and the lowest counts until it is settled which is right"));
            }
        }
        return low;
    }

    /** What holds an approval back beside stops and rungs. */
    private List<Held> held(OptionalDouble asked) {
        List<Held> held = new ArrayList<>();
        damaged()
                .forEach(
                        d -> held.add(
                                new Held(
                                        d.part().label() + ": " + d.kind().label()
                                                + " was seen, and every word and sum here is of sound parts",
                                        "replace it, or have it judged by a qualified machinist, and take the entry out of what was seen")));
        if (covers(Term.GOVERNED_SPEED)
                && !(covers(Term.ROD_RATED_SPEED) && covers(Term.FLYWHEEL_RATED_SPEED))
                && !isOfAnotherThrow()
                && !isDonorKnown()) {
            held.add(
                    new Held(
                            "nobody says which throw its maker gave it (" + Term.DONOR_STROKE.path()
                                    + "), and his word is of that one",
                            "read or ask: " + Term.DONOR_STROKE.label() + " (" + Term.DONOR_STROKE.path()
                                    + "); off the maker's sheet, or the crankshaft's own stroke where it is the one he fitted"));
        }
        known.verdicts().stream()
                .filter(v -> Rule.of(v).isEmpty() && v.chosen())
                .filter(v -> v.state() == Verdict.State.FAILS || v.state() == Verdict.State.NEAR)
                .forEach(v -> held.add(new Held("your own rule, " + v.label() + ": " + v.why(), v.cure())));
        suspects.forEach(s -> held.add(new Held(s.where() + " is suspect: " + s.message(), s.mend())));
        asked.ifPresent(speed -> lowestRatings(speed)
                .forEach(
                        words -> held.add(new Held(words, "find the plate or sheet, and keep the one that is right"))));
        return held;
    }

    private record Held(String why, String unlock) {}

    /** As far as the limits go that decide, and a maker's word where it is by that; what is asked for at least. */
    private double upTo(List<Rung> rungs, double asked) {
        return covers(Term.GOVERNED_SPEED) ? asked : Math.max(asked, highest(rungs));
    }

    /** Where only a limiter holds the speed it must cut at what can be approved, or the engine runs past that unloaded whatever is wanted of it. */
    private Optional<Held> limiterAbove(double upTo) {
        boolean isHeldByIt = !covers(Term.GOVERNED_SPEED) || known.build().chose(Choice.GOVERNOR, "removed");
        Optional<Measured> limiter = known.figure(Term.LIMITER_SPEED).filter(cuts -> isHeldByIt);
        if (limiter.isPresent() && !Stops.isReadOrMakers(known.build(), known::figure, Term.LIMITER_SPEED)) {
            return Optional.of(
                    new Held(
                            "the speed at which the limiter cuts (" + Term.LIMITER_SPEED.path()
                                    + ") is a guess or a seller's claim, and nothing else holds the engine",
                            "read where it cuts, with the engine unloaded and from a low setting up, or take its maker's sheet"));
        }
        return limiter.filter(cuts -> cuts.value() > upTo * (1 + 1e-9) + STEP
                        || cuts.value() + cuts.expanded() > upTo * LIMITER_OVERSHOOT)
                .map(cuts -> new Held(
                        "the limiter cuts at " + maker.printed(cuts) + ", and what can be approved ends at "
                                + maker.speed(upTo) + ": nothing holds the engine there",
                        "set the limiter to " + maker.speed(upTo) + " at most, and read where it cuts"));
    }

    /** A limiter that is read cuts a little over what it is set to; more than this over what is approved is not taken for reading error. Common practice, no source. */
    private static final double LIMITER_OVERSHOOT = 1.05;

    /** Loads on these grow with the throw at one speed, and a crankshaft of another throw is another maker's. */
    private static boolean isLoadedByThrow(Rung rung) {
        return switch (rung.part()) {
            case ROD, CRANKSHAFT, PISTON, RINGS, CYLINDER -> true;
            default -> false;
        };
    }

    private static boolean isOfTheRod(Rung rung) {
        return rung.part() == Part.ROD;
    }

    /** What is not known or not sure is the maker's to vouch for; what is surely passed stays, for then this is not the engine he made. */
    private static boolean isForTheEngineToCover(Rung rung) {
        return switch (rung.state()) {
            case UNKNOWN, NEAR -> true;
            case EXCEEDED -> rung.weight() != Weight.REFUSES;
            case HOLDS, COVERED, NOT_ASKED -> false;
        };
    }

    /**
     * The verdict.
     * @param reckoned rungs by the sums alone
     * @param rungs    the same with what is covered
     */
    Approval verdict(List<Rung> reckoned, List<Rung> rungs) {
        Optional<Measured> wanted = known.figure(Term.WANTED_SPEED);
        List<String> reasons = new ArrayList<>();
        stops.stream().filter(Stop::refused).forEach(s -> reasons.add(s.what() + ": " + s.why()));
        rungs.stream().filter(Rung::isRefused).forEach(r -> reasons.add(r.label() + ": " + r.why()));
        boolean isRefused = !reasons.isEmpty();
        stops.stream().filter(s -> !s.refused()).forEach(s -> reasons.add(s.what() + ": " + s.why()));
        rungs.stream()
                .filter(r -> r.isInTheWay() && !r.isRefused())
                .sorted(Comparator.comparing((Rung r) -> r.state() == State.UNKNOWN))
                .forEach(r -> reasons.add(r.label() + ": " + r.why()));
        held(wanted.isPresent() ? OptionalDouble.of(wanted.get().value()) : OptionalDouble.empty())
                .forEach(h -> reasons.add(h.why()));
        wanted.flatMap(speed -> limiterAbove(upTo(rungs, speed.value()))).ifPresent(h -> reasons.add(h.why()));
        List<Part> unseen = notLookedOver();
        boolean isToLookOverAlone =
                reasons.isEmpty() && !unseen.isEmpty() && pending().isEmpty();
        boolean isHeldUpByWorkAlone =
                reasons.isEmpty() && unseen.isEmpty() && !pending().isEmpty();
        if (!unseen.isEmpty()) {
            reasons.add(nobodySays(unseen));
        }
        pending()
                .forEach(work -> reasons.add(work.job() + " is planned, not done yet: the limits stand as if it were"));
        OptionalDouble have = canHave(rungs);
        if (wanted.isEmpty()) {
            reasons.add(0, "no wanted speed (" + Term.WANTED_SPEED.path() + ") is known to hold the limits against");
            return new Approval(
                    isRefused ? Approval.State.REFUSED : Approval.State.NOT_APPROVED,
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    have,
                    isRefused ? "refused as it is" : "not approved: no speed is asked for",
                    reasons,
                    List.of(new Unlock("write " + Term.WANTED_SPEED.path(), "every limit is held against it", "", "")),
                    instead(have, OptionalDouble.empty(), isToLookOverAlone));
        }
        double asked = wanted.get().value();
        if (reasons.isEmpty()) {
            // the limits were held against the speed asked for, and a maker's word hides which of them end soon after
            double upTo = upTo(rungs, asked);
            return new Approval(
                    Approval.State.APPROVED,
                    OptionalDouble.of(asked),
                    OptionalDouble.of(upTo),
                    have,
                    "approved up to " + maker.speed(upTo) + ", as far as these limits go; " + foundSound()
                            + onWhoseWord(rungs, overruled(reckoned, rungs)),
                    List.of(),
                    List.of(),
                    "");
        }
        String speed = maker.speed(asked);
        return new Approval(
                isRefused ? Approval.State.REFUSED : Approval.State.NOT_APPROVED,
                OptionalDouble.of(asked),
                OptionalDouble.empty(),
                have,
                isRefused
                        ? refusedSaid(rungs, speed)
                        : isToLookOverAlone
                                ? "not approved at " + speed + " yet: " + nobodySays(unseen)
                                : isHeldUpByWorkAlone
                                        ? "not approved at " + speed
                                                + " yet: every limit that decides holds as planned, and the work is not done"
                                        : notApprovedSaid(reasons, speed),
                reasons,
                unlocks(rungs, asked),
                instead(have, OptionalDouble.of(asked), isToLookOverAlone));
    }

    private String refusedSaid(List<Rung> rungs, String speed) {
        boolean touches = stops.stream().anyMatch(s -> s.refused() && GapStops.isOfTouching(s));
        return touches
                ? "refused: parts of it touch"
                : isRefusedAtAnySpeed(rungs) ? "refused at any speed" : "refused at " + speed;
    }

    /** In one line what is to be done where gaps alone hold it back. */
    private String notApprovedSaid(List<String> reasons, String speed) {
        List<Stop> gaps = ofGaps();
        boolean isOfGapsAlone = !gaps.isEmpty() && reasons.size() == gaps.size();
        if (!isOfGapsAlone) {
            return "not approved at " + speed + ": not refused, but not shown to hold";
        }
        return gaps.stream().anyMatch(GapStops::isOfTouching)
                ? "not approved: parts of it may touch"
                : gaps.stream().anyMatch(GapStops::isOfAGap)
                        ? gaps.stream().allMatch(s -> GapStops.isReadPoorly(s) || GapStops.isOfTheUnknown(s))
                                ? "not approved: gaps of it are not read well enough"
                                : "not approved: parts of it come too close, or may"
                        : "not approved at " + speed + " before it has been mocked up: gaps are not known";
    }

    /** Damage, or a limit that no speed decides. */
    private boolean isRefusedAtAnySpeed(List<Rung> rungs) {
        return stops.stream().anyMatch(s -> s.refused() && Stops.isOfDamage(s))
                || rungs.stream().anyMatch(r -> r.isRefused() && r.speed().isEmpty());
    }

    /** What an approval rests on beside sums. */
    private String onWhoseWord(List<Rung> rungs, List<String> overruled) {
        String guides = rungs.stream()
                .filter(r -> r.state() == State.EXCEEDED && r.weight() == Weight.TELLS)
                .map(Rung::label)
                .collect(Collectors.joining(", "));
        long gaps = pairs.stream()
                .filter(p -> p.state() == Clearance.State.UNKNOWN && p.hold() == Clearance.Hold.NOTHING)
                .count();
        String unproven = rungs.stream()
                .filter(r -> r.state() == State.NEAR && r.weight() == Weight.TELLS)
                .map(Rung::label)
                .collect(Collectors.joining(", "));
        long unknown = rungs.stream()
                .filter(r -> r.state() == State.UNKNOWN && r.weight() == Weight.TELLS)
                .count();
        long coldOnly = pairs.stream()
                .filter(p -> p.state() == Clearance.State.CLEARS_COLD)
                .count();
        long covered = rungs.stream().filter(r -> r.state() == State.COVERED).count();
        return (covered == 0
                        ? ""
                        : "; " + covered + (covered == 1 ? " limit rests" : " limits rest")
                                + " on a maker's word and not on a sum, which is for sound parts in the engine as it was made")
                + (gaps == 0
                        ? ""
                        : "; " + gaps + (gaps == 1 ? " gap that nobody read rests" : " gaps that nobody read rest")
                                + " on it too")
                + (unproven.isEmpty() ? "" : "; not proven, which decides nothing: " + unproven)
                + (unknown == 0 ? "" : "; " + unknown + " more not known")
                + (coldOnly == 0
                        ? ""
                        : "; " + coldOnly + " of " + pairs.size() + " gaps known cold only, not warm at speed")
                + (guides.isEmpty() ? "" : "; past what the trade advises, which decides nothing: " + guides)
                + (overruled.isEmpty()
                        ? ""
                        : "; by the sum alone these give up before that speed, and only a maker's word stands against it: "
                                + String.join(", ", overruled));
    }

    private List<Decided.Work> pending() {
        return known.build().pending();
    }

    /** Past the maker's governed speed: what every limit which decides keeps with 95 in 100, and no rating is passed. */
    private double highest(List<Rung> rungs) {
        double most = Double.POSITIVE_INFINITY;
        for (Term rating : List.of(Term.ROD_RATED_SPEED, Term.FLYWHEEL_RATED_SPEED)) {
            if (covers(rating)) {
                most = Math.min(most, known.figure(rating).orElseThrow().value());
            }
        }
        for (Rung rung : rungs) {
            if (rung.state() == State.HOLDS && rung.weight() != Weight.TELLS && rung.kind() != Rung.Kind.RATING) {
                most = Math.min(most, rung.speed().map(Approving::surely).orElse(Double.POSITIVE_INFINITY));
            }
        }
        return Math.floor(most / STEP * (1 + 1e-9)) * STEP;
    }

    /** One-sided: all but 5 in 100. */
    private static double surely(Measured speed) {
        return speed.value() - speed.expanded(2 * Verdict.SURE - 1);
    }

    /** The maker's speed, where nothing that refuses comes before it and the engine has the throw he made it with. */
    private OptionalDouble canHave(List<Rung> rungs) {
        if (isOfAnotherThrow() || isHeldByGapsAtAnySpeed()) {
            return OptionalDouble.empty();
        }
        Optional<Measured> governed =
                known.figure(Term.GOVERNED_SPEED).filter(g -> Stops.isVouched(known.build(), Term.GOVERNED_SPEED));
        if (governed.isEmpty()) {
            return OptionalDouble.empty();
        }
        if (rungs.stream().anyMatch(r -> r.isRefused() && r.speed().isEmpty())) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(belowWhatIsPassed(rungs, governed.get().value()));
    }

    /** A maker's speed stands over what is not sure; what is surely passed at it stands over him: then this is not the engine he made. */
    private static double belowWhatIsPassed(List<Rung> rungs, double makers) {
        double most = makers;
        for (Rung rung : rungs) {
            if (rung.weight() == Weight.REFUSES && rung.kind() != Rung.Kind.RATING) {
                Optional<Measured> passed =
                        rung.speed().filter(s -> s.probabilityAtLeast(makers * (1 - 1e-9)) <= 1 - Verdict.SURE);
                if (passed.isPresent()) {
                    most = Math.min(most, Math.max(0, Math.floor(surely(passed.get()) / STEP) * STEP));
                }
            }
        }
        return most;
    }

    private String instead(OptionalDouble have, OptionalDouble asked, boolean isToLookOverAlone) {
        Optional<Stop> damage =
                stops.stream().filter(s -> s.refused() && Stops.isOfDamage(s)).findFirst();
        if (damage.isPresent()) {
            return damage.get().wayRound();
        }
        if (isToLookOverAlone && have.isPresent()) {
            return "hold " + maker.speed(have.getAsDouble())
                    + ", which the maker vouches for in an undamaged engine, once these parts are looked over and found so";
        }
        Optional<Stop> gap = stops.stream().filter(GapStops::isOfAGap).findFirst();
        if (gap.isPresent()) {
            return (GapStops.isReadPoorly(gap.get())
                            ? "nothing at any speed before it is read better: "
                            : "nothing at any speed before nothing touches and there is room: ")
                    + GapStops.pair(gap.get());
        }
        if (isHeldByGapsAtAnySpeed() && !isOfAnotherThrow()) {
            return "nothing at any speed before it has been mocked up: see clear";
        }
        if (isOfAnotherThrow()) {
            return (isHeldByGapsAtAnySpeed()
                            ? "nothing before it has been mocked up: "
                            : "nothing on the maker's word: ")
                    + known.figure(Term.GOVERNED_SPEED)
                            .map(g -> "the maker's " + maker.speed(g.value()) + " is for the throw he made it with")
                            .orElse("no maker's speed is known, and it would be for the throw he made it with")
                    + ", so at any speed rod, crankshaft and piston rest on what is read and rated of them";
        }
        if (have.isPresent() && asked.isPresent() && have.getAsDouble() >= asked.getAsDouble() * (1 - 1e-9)) {
            return "nothing faster or slower: it is the maker's own speed that is asked for, and what would lift it stands in its way";
        }
        if (have.isPresent()) {
            return "hold " + maker.speed(have.getAsDouble()) + ", which the maker vouches for in an undamaged engine";
        }
        return known.figure(Term.GOVERNED_SPEED)
                        .filter(g -> Stops.isVouched(known.build(), Term.GOVERNED_SPEED))
                        .isEmpty()
                ? "nothing as it stands: no maker's governed speed is known that it could be held to"
                : "nothing as it stands: a limit is passed at any speed";
    }

    // ---- what would lift it

    private List<Unlock> unlocks(List<Rung> rungs, double asked) {
        List<Unlock> unlocks = new ArrayList<>();
        boolean isPastMaker = !covers(Term.GOVERNED_SPEED);
        if (!isPastMaker && !notLookedOver().isEmpty()) {
            unlocks.add(lookOver(notLookedOver()));
        }
        for (Stop stop : stops) {
            if (!stop.what().contains(maker.speed(asked)) && !GapStops.isOfTheUnknown(stop)) {
                unlocks.add(new Unlock(stop.wayRound(), stop.what(), "", ""));
            }
        }
        if (isPastMaker && !covers(Term.FLYWHEEL_RATED_SPEED)) {
            unlocks.add(bought(
                    PartKind.FLYWHEEL,
                    Term.FLYWHEEL_RATED_SPEED,
                    asked,
                    "flywheel rated by its maker for " + maker.speed(asked) + ", behind a shield",
                    "a wheel bursts through everything near it"));
        }
        if (isPastMaker && !covers(Term.ROD_RATED_SPEED)) {
            unlocks.add(bought(
                    PartKind.CONNECTING_ROD,
                    Term.ROD_RATED_SPEED,
                    asked,
                    "rod rated by its maker for " + maker.speed(asked) + " with this stroke and piston, with new bolts",
                    "rod and bolts let go through the case"));
        }
        boolean isUngoverned = isPastMaker || known.build().chose(Choice.GOVERNOR, "removed");
        if (isUngoverned && known.figure(Term.LIMITER_SPEED).isEmpty() && !isRefusedAtAnySpeed(rungs)) {
            unlocks.add(bought(
                    PartKind.LIMITER,
                    Term.LIMITER_SPEED,
                    0,
                    "speed limiter that cuts the spark at " + maker.speed(asked) + "; the governor out completely"
                            + (isPastMaker ? "" : ", or back whole and set as its maker set it"),
                    "an engine without governor runs past any limit unloaded"));
        }
        held(OptionalDouble.of(asked)).forEach(h -> unlocks.add(new Unlock(h.unlock(), h.why(), "", "")));
        limiterAbove(upTo(rungs, asked)).ifPresent(h -> unlocks.add(new Unlock(h.unlock(), h.why(), "", "")));
        springs(rungs, asked).ifPresent(unlocks::add);
        stops.stream() // with the parts that are to run, all of them in
                .filter(GapStops::isOfTheUnknown)
                .forEach(stop -> unlocks.add(new Unlock(stop.wayRound(), stop.what(), "", "")));
        if (isPastMaker && !notLookedOver().isEmpty()) { // the parts that are to run, once they are there
            unlocks.add(lookOver(notLookedOver()));
        }
        rungs.stream()
                .filter(r -> r.isInTheWay() && r.state() != State.UNKNOWN && !isSaidAbove(r))
                .forEach(r -> unlocks.add(new Unlock(r.unlock(), r.label(), PRICE_UNKNOWN, "")));
        rungs.stream()
                .filter(r -> r.isInTheWay() && r.state() == State.UNKNOWN && !isSaidAbove(r))
                .forEach(r -> unlocks.add(new Unlock(r.unlock(), r.label(), "", "")));
        pending()
                .forEach(work -> unlocks.add(new Unlock(
                        "have it done, and read " + work.kind().changes().label() + " after the job",
                        work.job() + " is planned",
                        "",
                        "")));
        return unlocks;
    }

    private static boolean isSpring(Rung rung) {
        return rung.kind() == Rung.Kind.FLOAT || rung.key().equals("coil_bind");
    }

    /** Ratings, rims and rods by a part that is bought, springs by theirs. */
    private boolean isSaidAbove(Rung rung) {
        boolean isPastMaker = !covers(Term.GOVERNED_SPEED);
        return (isPastMaker && (rung.kind() == Rung.Kind.RATING || rung.kind() == Rung.Kind.RIM))
                || (isPastMaker && rung.kind() == Rung.Kind.HELD && rung.state() == State.UNKNOWN)
                || rung.key().equals("cast_rod_trade")
                || (isSpring(rung) && rung.state() != State.UNKNOWN);
    }

    private Optional<Unlock> springs(List<Rung> rungs, double asked) {
        List<Rung> weak = rungs.stream()
                .filter(r -> isSpring(r) && r.isInTheWay() && r.state() != State.UNKNOWN)
                .toList();
        if (weak.isEmpty()) {
            return Optional.empty();
        }
        boolean isDoubtAlone = weak.stream()
                .allMatch(r -> r.speed().filter(speed -> speed.value() >= asked).isPresent());
        return Optional.of(new Unlock(
                isDoubtAlone
                        ? "read the lift again, every 5 degrees to 0.01 mm or better, and the springs at two heights: by the best estimates they follow, and the doubt is what is in the way; other springs only if they then do not"
                        : "valve springs that follow with 20 % in hand and do not bind: last, for they are no use before the parts above",
                weak.stream().map(Rung::label).collect(Collectors.joining(", ")),
                isDoubtAlone ? "" : PRICE_UNKNOWN,
                ""));
    }

    /** The cheapest part on offer that states such a speed, or what to look for. */
    private Unlock bought(PartKind kind, Term rating, double least, String what, String why) {
        Optional<CataloguePart> best = catalogue.of(kind).stream()
                .filter(p -> p.figure(rating)
                        .filter(f -> f.value().si() * (1 + 1e-9) >= least)
                        .isPresent())
                .min(Comparator.comparingLong(p -> price(p).orElse(Long.MAX_VALUE)));
        return best.map(p -> new Unlock(
                        what + ": " + p.code() + " " + p.name()
                                + (Stops.RATINGS.contains(rating) && Whose.of(p) != Whose.MAKERS
                                        ? ", its seller's figure: ask for its maker's sheet"
                                        : ""),
                        why,
                        printed(p),
                        p.code()))
                .orElseGet(() -> new Unlock(what, why, PRICE_UNKNOWN, ""));
    }

    private static OptionalLong price(CataloguePart part) {
        return part.offer().price().isPresent()
                ? OptionalLong.of(part.offer().price().getAsLong()
                        + part.offer().shipping().orElse(0))
                : OptionalLong.empty();
    }

    private static String printed(CataloguePart part) {
        OptionalLong price = price(part);
        return price.isEmpty()
                ? PRICE_UNKNOWN
                : String.format(
                                        java.util.Locale.ROOT,
                                        "%d.%02d %s",
                                        price.getAsLong() / 100,
                                        price.getAsLong() % 100,
                                        part.offer().currency())
                                .strip()
                        + (part.offer().shipping().isPresent() ? " with shipping" : ", shipping not known");
    }
}

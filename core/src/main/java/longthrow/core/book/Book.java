package longthrow.core.book;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Approval;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.answer.LimitLadder;
import longthrow.core.answer.Rejection;
import longthrow.core.answer.Stop;
import longthrow.core.answer.Unknown;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.engine.FirstStart;
import longthrow.core.engine.GapStops;
import longthrow.core.quantity.UnitSystem;

/**
 * One engine on paper.
 * @param engine     name of the build
 * @param invented   whether the build says that it is made up
 * @param units      which units come first
 * @param approval   what may be run, the one verdict of this sheet: that of what lets go first, up to what and on whose word, where no stop stands against it
 * @param stops      what must not be done, refused before not approved
 * @param headline   the figures that say what engine it is
 * @param chosen     parts that are taken, by their codes, and work that is planned, in the order of the file
 * @param recipe     words and figures, part by part
 * @param again      what to measure again before anything is bought, and what when it arrives
 * @param readings   as they were written, with instrument and doubt
 * @param unread     what was said not to be known, part by part
 * @param parts      whose figures stand on somebody's sheet, and verdicts on parts
 * @param ways       parts that go together, best first; empty where nothing was searched
 * @param refused    why others do not
 * @param searched   whether a catalogue was searched
 * @param tickets    for the machine shop
 * @param targets    gaps and clearances to set and to keep
 * @param torques    joints, each with its torque or that it is unknown
 * @param damage     that was seen, part by part, as far as no stop names it
 * @param touching   what touches; empty where that was not asked
 * @param limits     what lets go first; empty where that was not asked
 * @param shaking    where the shake goes; empty where that was not asked
 * @param proved     what was proved on the dynamometer, by each sheet of runs that was handed in; empty while that is not worked out
 * @param steps      from before the first start to the end of running in
 * @param cautions   what to mind where it can hurt someone
 * @param findings   what else was noticed, suspects first
 * @param unknowns   what cannot be said yet
 * @param defaults   every default and assumption behind what is said here
 * @param signatures who signs for what
 * @param cost       what it costs as far as prices are known
 * @param leftOut    what was taken out before it was shared; empty where nothing was
 */
public record Book(
        String engine,
        boolean invented,
        UnitSystem units,
        String approval,
        List<Stop> stops,
        List<RecipeLine> headline,
        List<String> chosen,
        List<RecipeLine> recipe,
        List<ReadAgain> again,
        List<ReadingLine> readings,
        List<Unread> unread,
        List<PartLine> parts,
        List<Way> ways,
        List<Rejection> refused,
        boolean searched,
        List<Ticket> tickets,
        List<Target> targets,
        List<Torque> torques,
        List<String> damage,
        Optional<TouchChapter> touching,
        Optional<LimitChapter> limits,
        Optional<ShakeChapter> shaking,
        Optional<List<ProvedChapter>> proved,
        List<FirstStart> steps,
        List<Finding> cautions,
        List<Finding> findings,
        List<Unknown> unknowns,
        List<DefaultUsed> defaults,
        List<String> signatures,
        Cost cost,
        List<String> leftOut) {

    /** What the stop that is there until an engine is mocked up has its owner sign for. */
    public static final String MOCKED_UP_BY = "mocked up, every gap read or tried free through two turns by hand, by";

    /** Who signs; each with name, date and hand. */
    private static final List<String> SIGNATURES = List.of(
            "measured by",
            "machined by",
            MOCKED_UP_BY,
            "assembled by",
            "torques and gaps checked by, another than who assembled",
            "guards, kill switch and throttle return checked by",
            "first start stood by",
            "owner, who has read the stops");

    public Book {
        stops = List.copyOf(stops);
        headline = List.copyOf(headline);
        chosen = List.copyOf(chosen);
        recipe = List.copyOf(recipe);
        again = List.copyOf(again);
        readings = List.copyOf(readings);
        unread = List.copyOf(unread);
        parts = List.copyOf(parts);
        ways = List.copyOf(ways);
        refused = List.copyOf(refused);
        tickets = List.copyOf(tickets);
        targets = List.copyOf(targets);
        torques = List.copyOf(torques);
        damage = List.copyOf(damage);
        proved = proved.map(List::copyOf);
        steps = List.copyOf(steps);
        cautions = List.copyOf(cautions);
        findings = List.copyOf(findings);
        unknowns = List.copyOf(unknowns);
        defaults = List.copyOf(defaults);
        signatures = List.copyOf(signatures);
        leftOut = List.copyOf(leftOut);
    }

    /** A figure with its doubt, in both units. */
    public record Figure(String label, String words) {}

    /**
     * A line of the recipe.
     * @param part   it belongs to
     * @param label  what it is
     * @param figure value and doubt, or the word chosen
     * @param other  in the other bench's unit; empty where there is none
     * @param how    measured, guessed, by a sheet, worked out, in dispute
     * @param sound  whether it may be built on as it is
     */
    public record RecipeLine(String part, String label, String figure, String other, String how, boolean sound) {}

    /**
     * A reading to take before money is spent, or once what was paid for is there.
     * @param what  is read
     * @param why   it is not enough as it is
     * @param how   it is taken, and with what; empty where nothing is said
     * @param later whether it waits for a part that is not there yet, or for work on it
     */
    public record ReadAgain(String what, String why, String how, boolean later) {}

    /** What is read before anything is bought. */
    public List<ReadAgain> before() {
        return again.stream().filter(a -> !a.later()).toList();
    }

    /** What is read when parts arrive and work is done. */
    public List<ReadAgain> onArrival() {
        return again.stream().filter(ReadAgain::later).toList();
    }

    /**
     * One entry of the build file.
     * @param part       it was read on
     * @param label      what was read
     * @param written    as it was written
     * @param instrument or whose word it is
     * @param result     the figure with its doubt; empty where none came of it
     * @param remark     temperature, who, when, photograph, note; empty for none
     */
    public record ReadingLine(
            String part, String label, String written, String instrument, String result, String remark) {}

    /**
     * What is not read of a part.
     * @param part which
     * @param what by their names
     */
    public record Unread(String part, List<String> what) {
        public Unread {
            what = List.copyOf(what);
        }
    }

    /**
     * A part of the engine.
     * @param part  which
     * @param words whose sheet stands behind it, or what becomes of it and why
     */
    public record PartLine(String part, String words) {}

    /**
     * One way that goes together.
     * @param title  parts by their codes
     * @param fits   how surely
     * @param total  what it costs as far as is known
     * @param pieces bought or machined, each with its price
     * @param fails  rules it fails or nearly fails, with why
     * @param forces what else it makes necessary
     * @param open   what stays unknown
     */
    public record Way(
            String title,
            String fits,
            String total,
            List<String> pieces,
            List<String> fails,
            List<String> forces,
            List<String> open) {
        public Way {
            pieces = List.copyOf(pieces);
            fails = List.copyOf(fails);
            forces = List.copyOf(forces);
            open = List.copyOf(open);
        }
    }

    /**
     * A job for the machine shop.
     * @param part      worked on
     * @param work      what is done
     * @param from      size before
     * @param to        size after, or the window it must end in
     * @param tolerance held to
     * @param datum     measured from
     * @param inspect   what is read afterwards, and how
     * @param source    why it is asked for
     */
    public record Ticket(
            String part,
            String work,
            String from,
            String to,
            String tolerance,
            String datum,
            String inspect,
            String source) {}

    /**
     * A gap or clearance.
     * @param part   it is read on
     * @param label  what it is
     * @param how    it is read; empty where the figure's own card says it
     * @param limits one, or several where the trade disagrees
     * @param now    as read, in the units that come first; empty where it is not
     * @param other  the same in both; empty where it is not read
     * @param limit  whether it is a limit of wear rather than a figure to set
     * @param whose  by whom it is, and whether the owner's stands before it
     */
    public record Target(
            String part,
            String label,
            String how,
            List<Limit> limits,
            String now,
            String other,
            boolean limit,
            Whose whose) {
        /** By whom it is. */
        public enum Whose {
            /** The owner's own. */
            OWNERS,
            /** A maker's rating, or worked out from one, with none of the owner's on the same side. */
            MAKERS,
            /** The trade's, with none of the owner's on the same side. */
            TRADES,
            /** The trade's, behind one of the owner's on the same side. */
            BEHIND_OWNERS
        }

        public Target {
            limits = List.copyOf(limits);
        }

        /** The limits that count, or all where none was chosen. */
        public List<Limit> counting() {
            List<Limit> chosen = limits.stream().filter(Limit::inForce).toList();
            return chosen.isEmpty() ? limits : chosen;
        }
    }

    /**
     * A limit as one source has it.
     * @param label   for what it is meant
     * @param window  in words, worked out for this engine where that can be done
     * @param by      what it was worked out by; empty for a stated limit
     * @param source  where it comes from
     * @param inForce whether it counts for this engine: the owner chose it, or there is no other
     * @param state   how the engine stands to it; {@code UNKNOWN} where nothing is read
     */
    public record Limit(String label, String window, String by, String source, boolean inForce, Verdict.State state) {}

    /**
     * A joint.
     * @param joint     what is tightened
     * @param torque    or that it is unknown
     * @param lubricant or that it is unknown
     * @param how       what to mind
     * @param source    where that comes from
     */
    public record Torque(String joint, String torque, String lubricant, String how, String source) {}

    /**
     * What it costs.
     * @param lines    pieces of the best way, each with its price or that none is said
     * @param total    of what is priced; empty where nothing is
     * @param budget   empty where none was set
     * @param unpriced what is usually forgotten, no price said: to be asked for
     */
    public record Cost(List<CostLine> lines, String total, String budget, List<String> unpriced) {
        public Cost {
            lines = List.copyOf(lines);
            unpriced = List.copyOf(unpriced);
        }
    }

    /** One piece and its price. */
    public record CostLine(String piece, String price) {}

    /**
     * The Book of a build.
     * @param answers   about it
     * @param catalogue that was searched; empty for none
     * @param leftOut   what was taken out of the build before it was asked about
     */
    public static Book of(Build build, Answers answers, Catalogue catalogue, List<String> leftOut) {
        Words words = new Words(build.units());
        Answer measure = answers.measure();
        Optional<Answer> fit = answers.fit();
        Recipe recipe = new Recipe(build, measure, words);
        List<Stop> stops = stops(answers);
        Targets targets = new Targets(build, answers, words);
        List<Finding> cautions = longthrow.core.engine.Stops.cautions(build);
        return new Book(
                build.name(),
                build.invented(),
                build.units(),
                approval(stops, answers),
                stops,
                recipe.headline(),
                new Chosen(build, words).lines(),
                recipe.lines(),
                recipe.again(),
                new Readings(build, measure, words).lines(),
                new Readings(build, measure, words).unread(),
                parts(build, measure),
                fit.map(f -> Ways.of(build, f, words)).orElse(List.of()),
                fit.map(Answer::rejections).orElse(List.of()),
                fit.isPresent(),
                new Tickets(build, measure, fit, catalogue, words).all(),
                targets.all(),
                targets.torques(),
                damage(build),
                answers.clear().map(clear -> TouchChapter.of(clear, words)),
                answers.life().flatMap(Answer::ladder).map(ladder -> LimitChapter.of(ladder, words)),
                answers.shake().map(shake -> ShakeChapter.of(shake.shaking(), words)),
                answers.dyno().map(sheets -> proved(sheets, words)),
                FirstStart.of(build),
                cautions,
                answers.findings().stream()
                        .filter(f -> !cautions.contains(f) && f.kind() != Finding.Kind.PART)
                        .toList(),
                answers.each(Answer::unknowns),
                answers.defaults(),
                SIGNATURES,
                Ways.cost(build, fit),
                leftOut);
    }

    private static List<ProvedChapter> proved(List<Answers.Ran> sheets, Words words) {
        return sheets.stream()
                .flatMap(ran -> ProvedChapter.of(ran, words).stream())
                .toList();
    }

    /** Whether what touches, what lets go, where the shake goes and what runs came to were all asked. */
    public boolean isWhole() {
        return touching.isPresent() && limits.isPresent() && shaking.isPresent() && proved.isPresent();
    }

    /** Whether a limit is exceeded or damage was seen. */
    public boolean isRefused() {
        return stops.stream().anyMatch(Stop::refused);
    }

    private static String approval(List<Stop> stops, Answers answers) {
        if (stops.stream().anyMatch(Stop::refused)) {
            return "REFUSED. This sheet approves nothing until the stop is gone.";
        }
        if (!stops.isEmpty()) {
            return "NOT APPROVED: data is missing. This sheet approves nothing until it is there.";
        }
        Optional<Approval> limits = answers.life().flatMap(Answer::ladder).map(LimitLadder::approval);
        if (limits.isEmpty() || answers.clear().isEmpty()) {
            return "NOT APPROVED yet: no stop is known of, and "
                    + (answers.clear().isEmpty() ? "what touches" : "what lets go first")
                    + " is not worked out. This sheet approves nothing until it is.";
        }
        String said = limits.get().said();
        return limits.get().verdict() == Approval.State.APPROVED
                ? limits.get().verdict().label() + said.substring(said.indexOf(' ')) + ". "
                        + notKnown(answers.each(Answer::unknowns).size())
                        + "Makers' sheets, class rules and those who sign stand before it."
                : "NOT APPROVED: " + said.replaceFirst("^not approved ?:? ?", "")
                        + ". This sheet approves nothing until that is lifted.";
    }

    private static String notKnown(int figures) {
        return figures == 0
                ? ""
                : figures == 1
                        ? "Not known: one figure, which the full sheet names. "
                        : "Not known: " + figures + " figures, which the full sheet names. ";
    }

    private static List<String> damage(Build build) {
        return build.damageSeen().stream()
                .filter(seen -> !longthrow.core.engine.Stops.isStopFor(seen))
                .map(seen -> seen.part().label() + ", " + seen.kind().label()
                        + (seen.where().isEmpty() ? "" : " (" + seen.where() + ")"))
                .toList();
    }

    private static List<Stop> stops(Answers answers) {
        List<Stop> all = answers.each(Answer::stops);
        Optional<List<Stop>> gaps = answers.clear().map(Answer::stops);
        if (gaps.isPresent() && !answers.clear().orElseThrow().clearances().isEmpty()) {
            // what clear says of gaps stands for what the others say without having asked
            all.removeIf(s -> GapStops.isOfTheUnknown(s) && !gaps.get().contains(s));
        }
        return Stream.concat(all.stream().filter(Stop::refused), all.stream().filter(s -> !s.refused()))
                .toList();
    }

    private static List<PartLine> parts(Build build, Answer measure) {
        List<PartLine> lines = new ArrayList<>();
        measure.findings().stream().filter(f -> f.kind() == Finding.Kind.PART).forEach(f -> {
            int colon = f.message().indexOf(": "); // a verdict on a part begins with the part's name
            lines.add(new PartLine(
                    f.message().substring(0, Math.max(0, colon)),
                    f.message().substring(colon < 0 ? 0 : colon + 2) + (f.mend().isEmpty() ? "" : ". " + f.mend())));
        });
        lines.addAll(Readings.onASheet(build));
        return lines;
    }
}

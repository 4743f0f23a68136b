package longthrow.core.dyno;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.Finding;
import longthrow.core.gain.Campaign;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;

/** Every run of a sheet brought to figures, in order; what could not be read is told. */
final class Reading {
    /**
     * One run.
     * @param session in which
     * @param pull    as its owner wrote it
     * @param name    each once in its session
     * @param figures empty where nothing could be read
     * @param aside   why its owner sets it aside; empty where it counts
     * @param slipped whether the clutch was seen slipping
     * @param trouble why there are no figures, or why they are not used
     */
    record Ran(
            DynoSheet.Session session,
            DynoSheet.Pull pull,
            String name,
            Optional<RunFigures> figures,
            String aside,
            boolean slipped,
            String trouble) {}

    private final DynoSheet sheet;
    private final LoggedRuns logged;
    /** Share of the crank's power that reached what was written down; empty where it is not told. */
    private final Optional<Measured> handedOn;

    private final List<Ran> all = new ArrayList<>();
    private final boolean isPeaks;
    private final Dimension figure;

    Reading(DynoSheet sheet, Logs logs, List<Finding> findings, Set<DefaultUsed> defaults) {
        this.sheet = sheet;
        this.handedOn = Optional.ofNullable(sheet.bench().figures().get(BenchFigure.DRIVE_EFFICIENCY))
                .map(e -> RunFigures.measured(e, BenchFigure.DRIVE_EFFICIENCY.meaning()));
        if (handedOn.filter(e -> e.standardUncertainty() == 0 && e.value() != 1).isPresent()) {
            defaults.add(Benches.withoutDoubt(BenchFigure.DRIVE_EFFICIENCY));
        }
        this.logged = new LoggedRuns(sheet, logs, handedOn, defaults);
        for (DynoSheet.Session session : sheet.sessions()) {
            int number = 0;
            for (DynoSheet.Pull pull : session.pulls()) {
                number++;
                all.addAll(ran(session, pull, pull.name().isEmpty() ? String.valueOf(number) : pull.name()));
            }
        }
        findings.addAll(logged.findings());
        List<Ran> once = new Twice(findings).without(all);
        all.clear();
        all.addAll(once);
        List<Ran> meant = all.stream().filter(this::isMeant).toList();
        Optional<Dimension> ofPeaks = meant.stream()
                .map(Ran::pull)
                .filter(p -> p.evidence() instanceof DynoSheet.Peak)
                .map(p -> ((DynoSheet.Peak) p.evidence()).figure().value().dimension())
                .findFirst();
        this.isPeaks = ofPeaks.isPresent();
        this.figure = ofPeaks.orElse(Dimension.TORQUE);
        if (isPeaks
                && meant.stream()
                        .anyMatch(r -> r.figures().filter(RunFigures::isCurve).isPresent())) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    "runs",
                    "some runs are a peak alone, so of the others only the peak is used, and what happens beside it is not seen",
                    "write rows or logs of all runs"));
        }
    }

    private List<Ran> ran(DynoSheet.Session session, DynoSheet.Pull pull, String name) {
        DynoSheet.Evidence evidence = pull.evidence();
        if (evidence instanceof DynoSheet.Log log) {
            return logged.of(session, pull, log, name);
        }
        RunFigures figures = evidence instanceof DynoSheet.Table table
                ? new TableFigures(table, handedOn)
                : RunFigures.ofPeak(((DynoSheet.Peak) evidence).figure(), handedOn);
        return List.of(new Ran(session, pull, name, Optional.of(figures), pull.aside(), false, ""));
    }

    List<Ran> all() {
        return all;
    }

    /** Whether runs are held against each other by their peaks. */
    boolean isPeaks() {
        return isPeaks;
    }

    /** Torque, or power where runs are peaks of power. */
    Dimension figure() {
        return figure;
    }

    /** Neither warm-up nor set aside by its owner nor of the reference engine: by such runs it is decided what is held beside what. */
    private boolean isMeant(Ran ran) {
        return ran.aside().isEmpty() && !ran.session().check() && !isFirst(ran);
    }

    /** Warm-up, which does not count. */
    static boolean isFirst(Ran ran) {
        for (int i = 0; i < Math.min(Campaign.WARM_UP, ran.session().pulls().size()); i++) {
            String name = ran.session().pulls().get(i).name();
            String first = name.isEmpty() ? String.valueOf(i + 1) : name;
            if (ran.name().equals(first) || ran.name().equals(first + " #1")) {
                return true;
            }
        }
        return false;
    }

    /** Runs that can be held beside each other, those that their owner sets aside among them. */
    List<Ran> alike() {
        return all.stream()
                .filter(r -> !r.session().check())
                .filter(r -> r.figures()
                        .filter(f -> isPeaks ? f.peak(figure).isPresent() && f.hasPeakInside(figure) : f.isCurve())
                        .isPresent())
                .toList();
    }

    /** Why a run with figures is not held beside the others. */
    String unlike(Ran ran) {
        boolean isAtEnd = isPeaks
                && ran.figures()
                        .filter(f -> f.peak(figure).isPresent() && !f.hasPeakInside(figure))
                        .isPresent();
        return isAtEnd
                ? "its highest figure stands at the end of what it read and may lie beyond: it is no peak to hold beside peaks"
                : "its figure is of another kind than those of the other runs";
    }

    /** Files of loggers. */
    List<DynoRuns.Log> logs() {
        return logged.told();
    }

    /** Where torque and power are told. */
    String place() {
        boolean isTable = sheet.bench().kind() == BenchKind.TABLE;
        if (logged.taken().isPresent() && !isTable) {
            return logged.taken().get().words();
        }
        return switch (sheet.bench().kind()) {
            case TABLE -> handedOn.isPresent() ? at("the crank") : "where the dynamometer told them";
            case BRAKE -> at("the brake's shaft");
            case INERTIA_DRUM -> at("the drum");
            case ROAD -> at("the driven wheel");
        };
    }

    /** The same, for what is reckoned with it. What a table tells, logged or written down, is of whatever the dynamometer means. */
    DynoRuns.Where where() {
        if (sheet.bench().kind() == BenchKind.TABLE) {
            return handedOn.isPresent() ? DynoRuns.Where.CRANK : DynoRuns.Where.NOT_SAID;
        }
        if (logged.taken().isEmpty()) {
            return handedOn.isPresent() ? DynoRuns.Where.CRANK : DynoRuns.Where.BEHIND_DRIVE;
        }
        return switch (logged.taken().get()) {
            case CRANK -> DynoRuns.Where.CRANK;
            case BEHIND_DRIVE -> DynoRuns.Where.BEHIND_DRIVE;
            case DRUM, WHEEL -> DynoRuns.Where.OWN_SPEED;
        };
    }

    private String at(String shaft) {
        return handedOn.isPresent()
                ? "at the crank, by the efficiency of the drive that was told"
                : "at " + shaft + " and counted at the crank's speed; what the drive takes is not known and not added";
    }
}

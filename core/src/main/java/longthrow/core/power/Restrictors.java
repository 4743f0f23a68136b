package longthrow.core.power;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.cycle.Restrictor;
import longthrow.core.gas.PublishedValue;
import longthrow.core.life.Known;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/** Restrictor plates that were read, as the plain holes that pass as much. */
final class Restrictors {
    private final Known known;
    private final Figures first;
    private final Map<Needed, Measured> read = new EnumMap<>(Needed.class);
    private final List<Finding> findings = new ArrayList<>();
    private final List<DefaultUsed> taken = new ArrayList<>();

    /**
     * What the readings come to.
     * @param first all figures without them
     */
    Restrictors(Known known, Figures first) {
        this.known = known;
        this.first = first;
        of(Needed.INTAKE_RESTRICTOR, Term.INTAKE_RESTRICTOR, Choice.INTAKE_RESTRICTOR_EDGE, Needed.INTAKE_BORE);
        of(Needed.EXHAUST_RESTRICTOR, Term.EXHAUST_RESTRICTOR, Choice.EXHAUST_RESTRICTOR_EDGE, Needed.PRIMARY_BORE);
    }

    /** Plates that narrow the way. */
    Map<Needed, Measured> read() {
        return read;
    }

    List<Finding> findings() {
        return findings;
    }

    List<DefaultUsed> taken() {
        return taken;
    }

    private void of(Needed needed, Term term, Choice edge, Needed pipe) {
        Optional<Measured> bore = known.figure(term);
        if (bore.isEmpty()) {
            taken.add(new DefaultUsed(term.path(), "no " + needed.place(), "none was told"));
            if (known.build().choice(edge).isPresent()) {
                findings.add(new Finding(
                        Finding.Kind.WARNING,
                        edge.path(),
                        "an edge is told of a " + needed.place() + " whose hole is not known: it does not count",
                        "read " + term.path()));
            }
            return;
        }
        double wide = first.number(pipe);
        if (bore.get().value() >= wide) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    term.path(),
                    "the hole of the " + needed.place()
                            + " is as wide as the way it stands in, or wider: it does not count",
                    "read it again, and the way: " + pipe.label()));
            return;
        }
        double share = bore.get().value() / wide;
        PublishedValue coefficient = Restrictor.coefficient(said(edge), share * share);
        taken.add(new DefaultUsed(
                known.build().choice(edge).isPresent() ? term.path() : edge.path(),
                String.format(
                        java.util.Locale.ROOT,
                        "coefficient of the %s %.2f, from %.2f to %.2f%s",
                        needed.place(),
                        coefficient.value(),
                        coefficient.low(),
                        coefficient.high(),
                        known.build().choice(edge).isPresent() ? "" : ", for how its edge is made is not told"),
                coefficient.source()));
        read.put(needed, plain(bore.get(), coefficient, needed.place()));
    }

    private Restrictor.Edge said(Choice edge) {
        return known.build()
                .choice(edge)
                .map(word -> switch (word) {
                    case "thin" -> Restrictor.Edge.THIN;
                    case "thick" -> Restrictor.Edge.THICK;
                    case "rounded" -> Restrictor.Edge.ROUNDED;
                    default -> throw new IllegalStateException("no edge is called " + word);
                })
                .orElse(Restrictor.Edge.NOT_SAID);
    }

    /** Diameter times the root of the coefficient. */
    static Measured plain(Measured bore, PublishedValue coefficient, String what) {
        double root = Math.sqrt(coefficient.value());
        Map<Source, Double> contributions = new LinkedHashMap<>();
        bore.contributions().forEach((source, c) -> contributions.put(source, root * c));
        Source doubt = Source.rectangular(
                "coefficient of the " + what,
                Source.Kind.ASSUMED,
                "coefficient of the " + what,
                0.5 * (coefficient.high() - coefficient.low()));
        contributions.put(doubt, 0.5 * bore.value() / root * doubt.standardUncertainty());
        return Measured.withContributions(bore.value() * root, contributions);
    }
}

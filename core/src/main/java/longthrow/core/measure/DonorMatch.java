package longthrow.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.Finding;
import longthrow.core.build.Donor;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * Which version of a donor this is: each version's key figures against the engine's own, by Bayes' rule with every version equally likely before, and a
 * place kept for "none of these".
 */
final class DonorMatch {
    /** Named as the version from this posterior share on. */
    private static final double SURE = 0.95;
    /** "None of these" is worth so many standard deviations of misfit in each figure compared. */
    private static final double NONE_AT = 3;
    /** Checking lifts nearer than this are the same, written in another unit or to fewer digits [m]. */
    private static final double SAME_LIFT = 5e-6;

    private DonorMatch() {}

    /** One version: its log-likelihood, how many of its figures the engine has, and which it has not. */
    private record Fit(Donor donor, double log, int compared, List<Term> unread) {}

    static List<Finding> findings(Figures figures, List<Donor> donors) {
        if (donors.isEmpty()) {
            return List.of();
        }
        Set<Term> comparable = comparable(donors);
        Set<Term> checkedApart = checkedApart(figures, donors);
        comparable.removeAll(checkedApart);
        if (comparable.isEmpty() && !checkedApart.isEmpty()) {
            return leftOut(donors, comparable, checkedApart);
        }
        if (comparable.isEmpty()) {
            return List.of(new Finding(
                    Finding.Kind.WARNING,
                    "donor",
                    "the versions have no figure in common whose spread is known for each, so none can be told from another",
                    "write the same figures for every version, each with its ±"));
        }
        List<Fit> fits = donors.stream().map(d -> fit(figures, d, comparable)).toList();
        int most = fits.stream().mapToInt(Fit::compared).max().orElse(0);
        if (most == 0) {
            return List.of(new Finding(
                    Finding.Kind.NOTE,
                    "donor",
                    "none of the figures that tell the known versions apart has been read",
                    "read " + labels(fits.get(0).unread())));
        }
        double none = -0.5 * NONE_AT * NONE_AT * most;
        double best = Math.max(none, fits.stream().mapToDouble(Fit::log).max().orElse(none));
        double total = Math.exp(none - best);
        for (Fit fit : fits) {
            total += Math.exp(fit.log() - best);
        }
        List<Finding> findings = new ArrayList<>(leftOut(donors, comparable, checkedApart));
        double sum = total;
        List<Fit> ranked = fits.stream()
                .sorted(Comparator.comparingDouble(Fit::log).reversed())
                .toList();
        Fit first = ranked.get(0);
        double share = Math.exp(first.log() - best) / sum;
        double noneShare = Math.exp(none - best) / sum;
        if (noneShare > 1 - SURE && noneShare >= share) {
            findings.add(new Finding(
                    Finding.Kind.NOTE,
                    "donor",
                    "it is none of the " + donors.size() + " versions known (" + Measure.percent(noneShare) + ")",
                    "do not order parts by the name; measure what they must fit"));
        } else if (share >= SURE) {
            String note =
                    first.donor().note().isEmpty() ? "" : ": " + first.donor().note();
            findings.add(new Finding(
                    Finding.Kind.NOTE,
                    "donor",
                    "it is the version " + first.donor().name() + " (" + Measure.percent(share) + ")" + note,
                    "measure again what each part must fit before you order it: versions differ by batch"));
        } else {
            StringBuilder could = new StringBuilder();
            for (Fit fit : ranked) {
                double one = Math.exp(fit.log() - best) / sum;
                if (one > 1 - SURE) {
                    could.append(could.isEmpty() ? "" : ", ")
                            .append(fit.donor().name())
                            .append(" (")
                            .append(Measure.percent(one))
                            .append(')');
                }
            }
            findings.add(new Finding(
                    Finding.Kind.NOTE,
                    "donor",
                    "it could be " + could,
                    telling(figures, ranked, checkedApart)
                            .map(t -> "read " + t.label() + ": it tells them apart best")
                            .orElse("no figure of the catalogue that is still unread tells them apart")));
        }
        return findings;
    }

    /** Figures that every version gives with a spread: only on these can they be weighed against each other fairly. */
    private static Set<Term> comparable(List<Donor> donors) {
        Set<Term> terms = EnumSet.allOf(Term.class);
        for (Donor donor : donors) {
            terms.removeIf(term -> {
                Donor.Figure figure = donor.figures().get(term);
                return figure == null || figure.spread() == null;
            });
        }
        return terms;
    }

    /** Angles of the cam that the versions give, and the checking lift, where their cards, or this engine's readings, are not all at one: none otherwise. */
    private static Set<Term> checkedApart(Figures figures, List<Donor> donors) {
        double highest = Double.NEGATIVE_INFINITY;
        double lowest = Double.POSITIVE_INFINITY;
        Optional<Measured> own = figures.figure(Term.CHECKING_LIFT);
        if (own.isPresent()) {
            highest = own.get().low();
            lowest = own.get().high();
        }
        Set<Term> angles = EnumSet.noneOf(Term.class);
        for (Donor donor : donors) {
            donor.figures().keySet().stream()
                    .filter(t -> t.part() == Part.CAMSHAFT && t.dimension() == Dimension.ANGLE)
                    .forEach(angles::add);
            Donor.Figure checking = donor.figures().get(Term.CHECKING_LIFT);
            if (checking != null) {
                Quantity spread = checking.spread();
                double half = spread == null ? 0 : spread.si();
                highest = Math.max(highest, checking.nominal().si() - half);
                lowest = Math.min(lowest, checking.nominal().si() + half);
            }
        }
        if (angles.isEmpty() || highest <= lowest + SAME_LIFT) {
            return EnumSet.noneOf(Term.class);
        }
        angles.add(Term.CHECKING_LIFT); // a custom of the card, not of the engine
        return angles;
    }

    /** Says which figures of the catalogue were not compared. */
    private static List<Finding> leftOut(List<Donor> donors, Set<Term> comparable, Set<Term> checkedApart) {
        List<Finding> findings = new ArrayList<>();
        if (!checkedApart.isEmpty()) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    "donor",
                    "not compared, because not all are at one checking lift: " + labels(List.copyOf(checkedApart)),
                    "find cards at one checking lift, or read the events at the lift of the card"));
        }
        Set<Term> left = EnumSet.noneOf(Term.class);
        donors.forEach(d -> left.addAll(d.figures().keySet()));
        left.removeAll(comparable);
        left.removeAll(checkedApart);
        if (!left.isEmpty()) {
            findings.add(withoutSpread(left));
        }
        return findings;
    }

    private static Finding withoutSpread(Set<Term> left) {
        return new Finding(
                Finding.Kind.WARNING,
                "donor",
                "not compared, because not every version gives it with a spread: " + labels(List.copyOf(left)),
                "write it for every version, with its ±");
    }

    private static Fit fit(Figures figures, Donor donor, Set<Term> comparable) {
        double log = 0;
        int compared = 0;
        List<Term> unread = new ArrayList<>();
        for (Term term : comparable) {
            Donor.Figure figure =
                    java.util.Objects.requireNonNull(donor.figures().get(term));
            Optional<Measured> own = figures.figure(term);
            if (own.isEmpty()) {
                unread.add(term);
                continue;
            }
            compared++;
            double spread = spread(figure);
            double u = Math.hypot(own.get().standardUncertainty(), spread);
            double off = (own.get().value() - figure.nominal().si()) / Math.max(u, 1e-12);
            log -= 0.5 * off * off;
        }
        return new Fit(donor, log, compared, unread);
    }

    /** The spread as a standard deviation (rectangular), of a figure that has one. */
    private static double spread(Donor.Figure figure) {
        Quantity spread = java.util.Objects.requireNonNull(figure.spread());
        return spread.si() / Math.sqrt(3);
    }

    /** The unread figure by which the two likeliest versions differ most, in their own spreads. */
    private static Optional<Term> telling(Figures figures, List<Fit> ranked, Set<Term> checkedApart) {
        if (ranked.size() < 2) {
            return Optional.empty();
        }
        Donor a = ranked.get(0).donor();
        Donor b = ranked.get(1).donor();
        Term best = null;
        double widest = 1;
        for (Map.Entry<Term, Donor.Figure> e : a.figures().entrySet()) {
            Donor.Figure other = b.figures().get(e.getKey());
            boolean vague = e.getValue().spread() == null || other == null || other.spread() == null;
            boolean apartBy = checkedApart.contains(e.getKey());
            if (other == null || vague || apartBy || figures.figure(e.getKey()).isPresent()) {
                continue;
            }
            double apart =
                    Math.abs(e.getValue().nominal().si() - other.nominal().si())
                            / Math.max(Math.hypot(spread(e.getValue()), spread(other)), 1e-12);
            if (apart > widest) {
                widest = apart;
                best = e.getKey();
            }
        }
        return Optional.ofNullable(best);
    }

    private static String labels(List<Term> terms) {
        return String.join(", ", terms.stream().map(Term::label).toList());
    }
}

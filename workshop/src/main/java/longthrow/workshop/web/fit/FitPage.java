package longthrow.workshop.web.fit;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.Answer;
import longthrow.core.term.Term;
import longthrow.workshop.draw.CrossSection;
import longthrow.workshop.web.Frame;

/**
 * What is aimed at and what may be bought, and what comes of it.
 * @param section    of the engine as it is
 * @param catalogues what is searched, in words
 * @param searched   whether there is something to search
 * @param answer     empty while it is not worked out; then the page asks for it afterwards
 * @param faults     of what was sent
 * @param commas     two ways to read figures of what was sent, one of which is to be chosen; empty for none
 */
public record FitPage(
        Frame frame,
        Form form,
        Section section,
        String catalogues,
        boolean searched,
        Optional<FitAnswer> answer,
        List<String> faults,
        List<Comma> commas) {
    public FitPage {
        faults = List.copyOf(faults);
        commas = List.copyOf(commas);
    }

    /**
     * One of two ways to read the commas of what was sent.
     * @param comma what the form says of them
     * @param words the figures as they are then
     */
    public record Comma(String comma, String words) {}

    /**
     * The cross-section at a crank angle.
     * @param angle   from top dead centre [degrees]
     * @param drawing as SVG; empty where it cannot be drawn
     * @param trouble why not; empty where it can
     */
    public record Section(int angle, String drawing, String trouble) {
        static Section of(Optional<Answer> measure, int angle) {
            if (measure.isEmpty()) {
                return new Section(angle, "", "the build cannot be read");
            }
            try {
                return new Section(angle, CrossSection.of(measure.get()).at(Math.toRadians(angle), "section"), "");
            } catch (IllegalArgumentException cannotTurn) {
                return new Section(angle, "", String.valueOf(cannotTurn.getMessage()));
            }
        }
    }

    /**
     * What is aimed at of a figure: the figure itself, by a field that takes anything and, with script, a slider beside it; and a
     * least and a most of the owner's own.
     * @param unit   that bare numbers take; empty where the figure has none
     * @param units  to choose from
     * @param least  empty for none
     * @param most   empty for none
     * @param others limits on this figure that stand under other names, in words
     * @param slide  span of the slider, in {@link #slideUnit}; empty where the unit has none
     */
    public record Aim(
            String path,
            String label,
            String value,
            String unit,
            List<String> units,
            String least,
            String most,
            List<String> others,
            String slideUnit,
            Optional<Slide> slide) {
        public Aim {
            units = List.copyOf(units);
            others = List.copyOf(others);
        }

        /**
         * The fields of a term.
         * @param usual the unit of the owner's bench
         */
        static Aim of(Term term, Wanted wanted, String usual, List<String> others) {
            Set<String> units = new LinkedHashSet<>();
            if (!usual.isEmpty()) {
                units.add(usual);
                units.addAll(term.dimension().fittingUnits());
            }
            return new Aim(
                    term.path(),
                    term.label(),
                    wanted.value(),
                    wanted.unit().isEmpty() ? usual : wanted.unit(),
                    List.copyOf(units),
                    wanted.least(),
                    wanted.most(),
                    others,
                    usual,
                    Optional.ofNullable(SLIDES.get(term.path() + " " + usual)));
        }
    }

    /** What stands in the fields of an aim. */
    record Wanted(String value, String unit, String least, String most) {}

    /** Least, most and step of a slider, in the unit of its aim. */
    public record Slide(String least, String most, String step) {}

    /** Layout: room on either side of what rules of the trade ask for; the field takes any other figure. */
    private static final Map<String, Slide> SLIDES = Map.of(
            Term.SQUISH.path() + " mm", new Slide("0.50", "3.00", "0.01"),
            Term.SQUISH.path() + " in", new Slide("0.020", "0.120", "0.001"),
            Term.COMPRESSION_RATIO.path() + " ", new Slide("5.0", "14.0", "0.1"));

    /** A kind of part that may be bought. */
    public record Kind(String key, String label, boolean chosen) {}

    /** What may count when ways that go together are put in order. */
    public record Preference(String key, String meaning, boolean chosen) {}

    /** First, second and so on: what counts there, one of them chosen or none. */
    public record Rank(int number, List<Preference> preferences) {
        public Rank {
            preferences = List.copyOf(preferences);
        }
    }

    /**
     * The form.
     * @param based revision that it was begun on
     * @param key   of the edit, for once
     * @param order what counts first, second and so on
     * @param usual what counts where none is chosen, in words
     */
    public record Form(
            int based,
            String key,
            List<Aim> aims,
            List<Kind> kinds,
            String keep,
            String budget,
            boolean machining,
            List<Rank> order,
            String usual) {
        public Form {
            aims = List.copyOf(aims);
            kinds = List.copyOf(kinds);
            order = List.copyOf(order);
        }
    }
}

package longthrow.workshop.print;

import java.util.Locale;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Shaking;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;

/** Where the shake goes: what it comes to, the figures, what each balance factor trades, holes, other pistons. */
final class ShakingList {
    private static final int INDENT = 2;

    private final Answer answer;
    private final Page page;
    private final FigurePrinter printer;
    private final boolean all;

    ShakingList(Answer answer, Page page, FigurePrinter printer, boolean all) {
        this.answer = answer;
        this.page = page;
        this.printer = printer;
        this.all = all;
    }

    void print() {
        answer.shaking().ifPresent(this::print);
    }

    private void print(Shaking shaking) {
        page.heading(
                Ink.STRONG,
                "SHAKE",
                Double.isNaN(shaking.speed())
                        ? "no speed is known"
                        : "at " + exact(Dimension.ROTATIONAL_SPEED, shaking.speed()));
        shaking.sentences().forEach(s -> page.paragraph(INDENT, s));
        shaking.figures()
                .forEach(f ->
                        page.hanging(INDENT, Ink.STRONG, f.label() + ":", Ink.PLAIN, words(f.dimension(), f.figure())));
        if (!shaking.trade().isEmpty()) {
            page.heading(Ink.STRONG, "WHAT A COUNTERWEIGHT TRADES", "once a turn: along the cylinder, across it");
            shaking.trade()
                    .forEach(t -> page.hanging(
                            INDENT,
                            Ink.STRONG,
                            String.format(Locale.ROOT, "%.0f %%:", 100 * t.factor()),
                            Ink.PLAIN,
                            words(Dimension.FORCE, t.along()) + " along, " + words(Dimension.FORCE, t.across())
                                    + " across"));
        }
        if (!shaking.drilling().isEmpty()) {
            page.heading(
                    Ink.STRONG, "HOLES THAT WOULD LIGHTEN IT", "any one of these; a machinist judges the web first");
            shaking.drilling()
                    .forEach(h -> page.hanging(
                            INDENT,
                            Ink.STRONG,
                            h.count() + " of " + exact(Dimension.LENGTH, h.diameter()) + ", "
                                    + h.aim().label() + ":",
                            Ink.PLAIN,
                            "centres " + exact(Dimension.LENGTH, h.radius()) + " from the shaft, "
                                    + words(Dimension.LENGTH, h.depth()) + " deep to the full diameter, "
                                    + words(Dimension.LENGTH, h.wall()) + " left behind the tip; factor then "
                                    + words(Dimension.RATIO, h.result())));
        }
        if (!shaking.pistons().isEmpty()) {
            page.heading(Ink.STRONG, "OTHER PISTONS", "balance factor with them, the crankshaft left as it is");
            shaking.pistons()
                    .forEach(p -> page.hanging(
                            INDENT,
                            Ink.STRONG,
                            p.code() + ":",
                            Ink.PLAIN,
                            words(Dimension.RATIO, p.factor()) + ", " + p.name()));
        }
        if (!shaking.missing().isEmpty()) {
            page.heading(Ink.DOUBTFUL, "UNKNOWN", "until it is measured");
            if (all) {
                shaking.missing()
                        .forEach(m -> page.hanging(
                                INDENT, Ink.STRONG, m.what() + " (" + m.where() + "):", Ink.PLAIN, m.how()));
            } else {
                page.paragraph(
                        INDENT,
                        "read "
                                + shaking.missing().stream()
                                        .map(m -> m.what() + " (" + m.where() + ")")
                                        .collect(Collectors.joining("; ")));
            }
        }
    }

    private String words(Dimension dimension, Measured figure) {
        return printer.print(dimension, figure.value(), figure.expanded()).line();
    }

    private String exact(Dimension dimension, double si) {
        return printer.print(dimension, si, 0).line();
    }
}

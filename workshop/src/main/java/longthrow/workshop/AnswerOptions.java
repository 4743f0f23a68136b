package longthrow.workshop;

import java.io.PrintWriter;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.quantity.UnitSystem;
import longthrow.workshop.json.AnswerJson;
import longthrow.workshop.print.AnswerText;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;

/** The options of every command that prints an answer, and the printing. */
final class AnswerOptions {
    private static final int LEAST_WIDTH = AnswerText.LEAST_WIDTH;
    private static final int MOST_WIDTH = 200;
    private static final int USUAL_WIDTH = 80;
    /** Longer lines tire the eye: what the terminal offers beyond is left empty unless asked for. */
    private static final int MOST_WIDTH_UNASKED = 120;

    @Option(names = "--json", description = "One JSON document in SI units; its schema: docs/answer.schema.json.")
    private boolean json;

    @Option(
            names = "--units",
            paramLabel = "metric|inch",
            converter = Units.class,
            completionCandidates = Units.class,
            description = "Which units come first; else as the build file says.")
    private @Nullable UnitSystem units;

    @Option(names = "--all", description = "Also every reading, every share of a doubt, every default.")
    private boolean all;

    @Option(
            names = "--width",
            paramLabel = "COLUMNS",
            description = "Width of the text, 60 to 200; else that of the terminal.")
    private @Nullable Integer width;

    boolean isJson() {
        return json;
    }

    /** For an empty sheet, which is no answer: only its units can be chosen. */
    void refuseOnASheet(CommandLine sheet) {
        Optional<String> option = json
                ? Optional.of("--json")
                : all ? Optional.of("--all") : Optional.ofNullable(width).map(w -> "--width");
        option.ifPresent(name -> {
            throw new ParameterException(
                    sheet,
                    "--blank prints an empty sheet, always in one form, and takes no " + name + "; leave one out");
        });
    }

    /** The units asked for, else these. */
    UnitSystem unitsOr(UnitSystem otherwise) {
        return units == null ? otherwise : units;
    }

    /** The build, with the units asked for. */
    Build inUnits(Build build) {
        return build.withUnits(unitsOr(build.units()));
    }

    /** Prints the answer in the form asked for. */
    void print(Answer answer, CommandLine line) {
        PrintWriter out = line.getOut();
        if (json) {
            out.print(AnswerJson.of(answer));
        } else {
            boolean colour = line.getColorScheme().ansi().enabled();
            out.print(AnswerText.of(answer, columns(line), colour, all));
        }
        out.flush();
    }

    private int columns(CommandLine line) {
        if (width == null) {
            return ofTerminal(System.getenv("COLUMNS"));
        }
        if (width < LEAST_WIDTH || width > MOST_WIDTH) {
            throw new ParameterException(
                    line, "--width is " + width + "; allowed: " + LEAST_WIDTH + " to " + MOST_WIDTH + " columns");
        }
        return width;
    }

    /** @param columns as the shell or the launcher says, if it does */
    static int ofTerminal(@Nullable String columns) {
        return Optional.ofNullable(columns)
                .filter(text -> text.matches("[0-9]{1,5}"))
                .map(Integer::parseInt)
                .filter(number -> number > 0)
                .map(number -> Math.max(LEAST_WIDTH, Math.min(MOST_WIDTH_UNASKED, number)))
                .orElse(USUAL_WIDTH);
    }

    /** The words for {@code --units}. */
    static final class Units implements ITypeConverter<UnitSystem>, Iterable<String> {
        @Override
        public UnitSystem convert(String word) {
            return switch (word.toLowerCase(Locale.ROOT)) {
                case "metric" -> UnitSystem.METRIC_FIRST;
                case "inch" -> UnitSystem.INCH_FIRST;
                default -> throw new TypeConversionException("'" + word + "' is not one of: metric, inch");
            };
        }

        @Override
        public Iterator<String> iterator() {
            return List.of("metric", "inch").iterator();
        }
    }
}

package longthrow.workshop;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.clear.Clear;
import longthrow.core.dyno.Dyno;
import longthrow.core.life.Life;
import longthrow.core.overlay.Overlays;
import longthrow.core.power.Prediction;
import longthrow.core.power.Speeds;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Parsed;
import longthrow.core.quantity.QuantityParser;
import longthrow.core.quantity.Units;
import longthrow.core.term.Believable;
import longthrow.core.term.Term;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code longthrow power}: what torque over what speeds. */
@Command(
        name = "power",
        description = "What torque over what speeds, how sure, and what keeps it down at each.",
        footer = {
            "%nExamples:",
            "  longthrow power my-engine.yaml",
            "  longthrow power my-engine.yaml --all",
            "  longthrow power my-engine.yaml --speed 2400rpm --speed 3600rpm",
            "  longthrow power my-engine.yaml --catalogue parts.yaml",
            "  longthrow power my-engine.yaml --dyno examples/dyno/muffler.yaml",
            "  longthrow power --json my-engine.yaml > answer.json"
        })
final class PowerCommand extends BuildQuestion {
    @Mixin
    private CatalogueOption catalogues;

    @Mixin
    private RunsOption runs;

    @Option(
            names = "--speed",
            paramLabel = "SPEED",
            description = "At this crank speed alone, such as 3600rpm; may be given up to " + Speeds.MOST
                    + " times. Else from idle to the speed wanted.")
    private List<String> chosen = new ArrayList<>();

    @Spec
    private CommandSpec spec;

    PowerCommand() {
        super("breathing");
    }

    @Override
    Optional<Function<Build, Answer>> question(PrintWriter err) {
        Speeds speeds = speeds();
        Optional<List<RunsOption.Read>> sheets = runs.read(err);
        return catalogues
                .read(err)
                .filter(catalogue -> sheets.isPresent())
                .map(catalogue -> build -> Overlays.onto(
                        Prediction.of(
                                        build,
                                        Life.of(
                                                build,
                                                catalogue,
                                                Clear.of(build).clearances()),
                                        speeds,
                                        PowerRunner.onAll(() -> true))
                                .orElseThrow(() -> new IllegalStateException("the sums were ended from outside")),
                        sheets.orElseThrow().stream()
                                .map(read -> Dyno.of(read.sheet(), read.logs()))
                                .toList()));
    }

    private Speeds speeds() {
        if (chosen.isEmpty()) {
            return Speeds.usual();
        }
        List<Double> speeds = chosen.stream().map(this::speed).distinct().toList();
        if (speeds.size() > Speeds.MOST) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--speed was given " + speeds.size() + " times; allowed: up to " + Speeds.MOST
                            + " speeds; leave some out");
        }
        return Speeds.of(speeds);
    }

    private double speed(String text) {
        Believable range = Term.WANTED_SPEED.believable();
        Parsed parsed = QuantityParser.parse(text, Dimension.ROTATIONAL_SPEED);
        if (parsed instanceof Parsed.Understood understood
                && understood.stated().expandedDoubt().isEmpty()
                && range.holds(understood.stated().value().si())) {
            return understood.stated().value().si();
        }
        throw new ParameterException(
                spec.commandLine(),
                String.format(
                        Locale.ROOT,
                        "--speed is '%s'; allowed: a crank speed from %.0f to %.0f rpm with its unit, such as 3600rpm",
                        text,
                        Units.RPM.fromSi(range.least()),
                        Units.RPM.fromSi(range.most())));
    }
}

package longthrow.workshop;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.Edited;
import longthrow.buildfile.ReadBuild;
import longthrow.workshop.print.PlainText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code longthrow set}: one value in a build file, everything else in it untouched. */
@Command(
        name = "set",
        description =
                "Write one value into a build file; comments and order stay. What would not read is refused and the file "
                        + "left as it was.",
        footer = {
            "%nExamples:",
            "  longthrow set my-engine.yaml cylinder.bore_top_thrust '66.01 mm'",
            "  longthrow set my-engine.yaml head.chamber_volume '[16.2 cc, 16.3 cc, 16.2 cc]'",
            "  longthrow set my-engine.yaml cylinder.deck_clearance_flywheel_end '-0.10 mm'",
            "  longthrow set my-engine.yaml mocked_up '[{pair: rod_to_skirt, way: clay, gap: 2.0 mm, both_ways: yes}]'"
        })
final class SetCommand implements Callable<ExitCode> {
    @Parameters(index = "0", paramLabel = "FILE", description = "The build file.")
    private String file = "";

    @Parameters(index = "1", paramLabel = "KEY", description = "Section and key, such as gasket.thickness.")
    private String key = "";

    @Parameters(index = "2", paramLabel = "VALUE", description = "With its unit.")
    private String value = "";

    @Parameters(index = "3..*", hidden = true)
    private List<String> furtherWords = new ArrayList<>();

    @Spec
    private CommandSpec spec;

    @Override
    public ExitCode call() {
        PrintWriter err = spec.commandLine().getErr();
        refuseStrayWords();
        if (file.equals(InputFile.STANDARD_INPUT)) {
            throw new ParameterException(
                    spec.commandLine(), "a value can be set in a file only, not in standard input");
        }
        InputFile input = new InputFile(file, InputFile.Holds.BUILD_TO_CHANGE, err);
        if (input.isStream()) {
            input.refuse("is no plain file but a stream; a value can be set in a file only");
            return refused(err);
        }
        Optional<byte[]> before = input.read();
        if (before.isEmpty()) {
            return refused(err);
        }
        ReadBuild read = BuildFile.read(before.get());
        if (read.build().isEmpty()) {
            input.say(read.faults(), read.notes());
            return refused(err);
        }
        Edited edited = BuildFile.edit(new String(before.get(), StandardCharsets.UTF_8), key, value);
        if (edited.text().isEmpty()) {
            input.say(edited.faults(), read.notes());
            return refused(err);
        }
        byte[] after = edited.text().get().getBytes(StandardCharsets.UTF_8);
        if (Arrays.equals(before.get(), after)) {
            say("nothing to change: " + PlainText.of(key + " is " + value) + " already");
            return ExitCode.ANSWERED;
        }
        try {
            FileOnDisk.replace(Path.of(file).toRealPath(), before.get(), after);
        } catch (IOException failed) {
            input.refuse("is left as it was: " + SystemWords.plain(failed));
            return refused(err);
        }
        sayWhatChanged(
                new String(before.get(), StandardCharsets.UTF_8), edited.text().get());
        return ExitCode.ANSWERED;
    }

    private void say(String words) {
        spec.commandLine().getOut().println(words);
        spec.commandLine().getOut().flush();
    }

    /** The lines that went and the lines that came, so that nothing is replaced unseen. */
    private void sayWhatChanged(String before, String after) {
        List<String> old = before.lines().toList();
        List<String> fresh = after.lines().toList();
        int shorter = Math.min(old.size(), fresh.size());
        int head = 0;
        while (head < shorter && old.get(head).equals(fresh.get(head))) {
            head++;
        }
        int tail = 0;
        while (tail < shorter - head && old.get(old.size() - 1 - tail).equals(fresh.get(fresh.size() - 1 - tail))) {
            tail++;
        }
        PrintWriter out = spec.commandLine().getOut();
        old.subList(head, old.size() - tail).forEach(line -> out.println("was: " + line.strip()));
        fresh.subList(head, fresh.size() - tail).forEach(line -> out.println("now: " + line.strip()));
        out.flush();
    }

    /** A value may begin with a minus, so the parser takes what it does not know as a positional argument. */
    private void refuseStrayWords() {
        for (String word : List.of(file, key)) {
            if (word.startsWith("-") && !word.equals(InputFile.STANDARD_INPUT)) {
                throw new ParameterException(spec.commandLine(), "has no option '" + word + "'");
            }
        }
        if (value.startsWith("--")) {
            throw new ParameterException(
                    spec.commandLine(), "has no option '" + value + "'; as a text put it in quotation marks twice");
        }
        if (!furtherWords.isEmpty()) {
            throw new ParameterException(
                    spec.commandLine(),
                    "VALUE is one word; put quotation marks around it: '" + value + " " + String.join(" ", furtherWords)
                            + "'");
        }
    }

    private static ExitCode refused(PrintWriter err) {
        err.flush();
        return ExitCode.INPUT_REFUSED;
    }
}

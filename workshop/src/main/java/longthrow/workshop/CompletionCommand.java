package longthrow.workshop;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code longthrow completion}: what a shell needs to complete commands and options. */
@Command(
        name = "completion",
        description = "Print the completion script for bash and zsh.",
        footer = {"%nExample:", "  source <(longthrow completion)"})
final class CompletionCommand implements Callable<ExitCode> {
    @Spec
    private CommandSpec spec;

    @Override
    public ExitCode call() {
        CommandLine root = spec.root().commandLine();
        root.getOut().println(AutoComplete.bash(root.getCommandName(), root));
        return ExitCode.ANSWERED;
    }
}

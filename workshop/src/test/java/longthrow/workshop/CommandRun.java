package longthrow.workshop;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine.Help.Ansi;

/** One call of the program, end to end but for the process around it. */
record CommandRun(int code, String out, String err) {
    static CommandRun of(String... arguments) {
        return of(Ansi.OFF, arguments);
    }

    static CommandRun of(Ansi colour, String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Longthrow.run(new PrintWriter(out), new PrintWriter(err), colour, arguments);
        return new CommandRun(code, out.toString(), err.toString());
    }

    /** With this on standard input. */
    static CommandRun reading(String input, String... arguments) {
        InputStream before = System.in;
        System.setIn(new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)));
        try {
            return of(arguments);
        } finally {
            System.setIn(before);
        }
    }
}

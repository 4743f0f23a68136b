package longthrow.workshop.web.outline;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.core.build.TracedOutline;
import longthrow.core.build.TracedOutline.Form;
import longthrow.core.clear.Tracing;
import longthrow.core.clearance.OutlineText;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Parsed;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.QuantityParser;
import longthrow.core.term.OutlinedPart;
import longthrow.workshop.web.BareNumber;
import org.jspecify.annotations.Nullable;

/** What stands in the boxes of the form for an outline, and the outline it makes. */
public record Typed(
        String text,
        String unit,
        String datumX,
        String datumY,
        boolean mirrored,
        String from,
        String to,
        String doubt,
        String note) {
    private static final Pattern PATH = Pattern.compile("[Mm]\\s*[-+.0-9].*", Pattern.DOTALL);
    private static final Pattern LINE = Pattern.compile("line (\\d+)(.*)");
    /** Characters of a piece of a path in the build file; layout. */
    private static final int PIECE = 120;

    /** Nothing of it yet. */
    static final Typed NOTHING = new Typed("", "1 mm", "", "", false, "", "", "", "");

    /**
     * What it makes.
     * @param outline empty where something is wrong
     * @param faults  in words; empty where nothing is
     */
    record Made(Optional<TracedOutline> outline, List<String> faults) {
        Made {
            faults = List.copyOf(faults);
        }
    }

    /** As it stands in the build. */
    static Typed of(TracedOutline traced) {
        return new Typed(
                String.join("\n", traced.lines()),
                traced.unit().written(),
                written(traced.datumX()),
                written(traced.datumY()),
                traced.mirrored(),
                written(traced.from()),
                written(traced.to()),
                written(traced.doubt()),
                traced.note());
    }

    private static String written(@Nullable Quantity quantity) {
        return quantity == null ? "" : quantity.written();
    }

    /** With another text, as out of a file; its unit where the file tells it. */
    Typed with(String other, Optional<String> otherUnit) {
        return new Typed(other, otherUnit.orElse(unit), datumX, datumY, mirrored, from, to, doubt, note);
    }

    /**
     * The outline of it.
     * @param bare unit of lengths that have none; the length of one unit of the drawing always has its own, for it is what all others hang on
     */
    Made make(OutlinedPart part, String bare) {
        List<String> faults = new ArrayList<>();
        List<Integer> numbers = new ArrayList<>();
        boolean isPath = PATH.matcher(text.strip()).matches();
        List<String> lines = isPath ? pieces(text) : points(text, numbers);
        if (lines.isEmpty()) {
            faults.add("No outline is there yet: paste its points or a path, or choose a file.");
        }
        Quantity ofUnit = length("Unit", unit, faults); // of all boxes the one that is never guessed
        if (unit.isBlank()) {
            faults.add("Unit: it is never guessed; write the length of one unit of the drawing, such as 1 mm.");
        }
        Quantity x = length("Datum, across", BareNumber.with(datumX, bare), faults);
        Quantity y = length("Datum, up", BareNumber.with(datumY, bare), faults);
        Quantity begins = length("From", BareNumber.with(from, bare), faults);
        Quantity ends = length("To", BareNumber.with(to, bare), faults);
        Quantity off = length("±", BareNumber.with(doubt, bare), faults);
        if (!faults.isEmpty() || ofUnit == null) {
            return new Made(Optional.empty(), faults);
        }
        try {
            TracedOutline traced = new TracedOutline(
                    part, ofUnit, isPath ? Form.SVG_PATH : Form.POINTS, lines, x, y, mirrored, begins, ends, off, note);
            if (Tracing.read(traced) instanceof OutlineText.Refused refused) {
                refused.faults().stream().map(f -> said(f, numbers)).forEach(faults::add);
                return new Made(Optional.empty(), faults);
            }
            return new Made(Optional.of(traced), List.of());
        } catch (IllegalArgumentException refused) {
            return new Made(Optional.empty(), List.of(capital(String.valueOf(refused.getMessage()))));
        }
    }

    private static String said(OutlineText.Fault fault, List<Integer> numbers) {
        Matcher line = LINE.matcher(fault.place());
        String place = fault.place();
        if (line.matches() && Integer.parseInt(line.group(1)) <= numbers.size()) {
            place = "line " + numbers.get(Integer.parseInt(line.group(1)) - 1) + line.group(2);
        }
        return capital(new OutlineText.Fault(place, fault.found(), fault.why(), fault.mend()).message()) + ".";
    }

    private static String capital(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private static @Nullable Quantity length(String name, String typed, List<String> faults) {
        if (typed.isBlank()) {
            return null;
        }
        Parsed parsed = QuantityParser.parse(typed.strip(), Dimension.LENGTH);
        if (parsed instanceof Parsed.Refused refused) {
            faults.add(name + ": " + refused.message() + ".");
            return null;
        }
        Parsed.Understood understood = (Parsed.Understood) parsed;
        if (understood.stated().expandedDoubt().isPresent()) {
            faults.add(name + ": '" + typed.strip() + "' has a ±; write one length.");
        }
        return understood.stated().value();
    }

    /** Points one a line as the build file holds them; which lines they were is kept, to name the one that is wrong. */
    private static List<String> points(String text, List<Integer> numbers) {
        List<String> lines = new ArrayList<>();
        String[] all = text.split("\\R", -1);
        for (int i = 0; i < all.length; i++) {
            String line = all[i].replace("\uFEFF", "").strip();
            boolean isHeading = lines.isEmpty() && line.matches("\\p{L}[^,;\t]*[,;\t]\\s*\\p{L}[^,;\t]*");
            if (!line.isEmpty() && !line.startsWith("#") && !isHeading) {
                lines.add(line.replaceAll("\\s*[,;\t]\\s*", ", "));
                numbers.add(i + 1);
            }
        }
        return lines;
    }

    /** A path in pieces that end where white space or a command stands. */
    private static List<String> pieces(String text) {
        String spaced = text.strip().replaceAll("(?<=[0-9.zZ])(?=[MmLlHhVvCcQqAaSsTtZz])", " ");
        List<String> pieces = new ArrayList<>();
        StringBuilder piece = new StringBuilder();
        for (String word : spaced.split("\\s+", -1)) {
            if (piece.length() > 0 && piece.length() + word.length() >= PIECE) {
                pieces.add(piece.toString());
                piece.setLength(0);
            }
            piece.append(piece.length() == 0 ? "" : " ").append(word);
        }
        if (piece.length() > 0) {
            pieces.add(piece.toString());
        }
        return pieces;
    }
}

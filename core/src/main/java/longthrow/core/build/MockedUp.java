package longthrow.core.build;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.MovingPair;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * What the mock-up told of two parts that may touch: read cold, turned by hand. It holds for the parts it was read with.
 * @param pair    of parts
 * @param way     it was read
 * @param found   what was found
 * @param endPlay which ways the shafts were pushed
 * @param with    sizes of the parts that were in it, as far as they were said, in the order of {@link #SIZES}
 * @param note    in the owner's words; empty for none
 */
public record MockedUp(MovingPair pair, Way way, Found found, EndPlay endPlay, Map<Term, Quantity> with, String note) {
    /** Sizes by which the parts of a mock-up are known again: of the stack, then of the camshaft. */
    public static final List<Term> SIZES = List.of(
            Term.STROKE,
            Term.ROD_LENGTH,
            Term.COMPRESSION_HEIGHT,
            Term.GASKET_THICKNESS,
            Term.INTAKE_LIFT,
            Term.EXHAUST_LIFT,
            Term.CAM_CORE);

    /** Word in an entry for one of {@link #SIZES}. */
    public static String key(Term size) {
        return switch (size) {
            case STROKE -> "with_stroke";
            case ROD_LENGTH -> "with_rod_length";
            case COMPRESSION_HEIGHT -> "with_compression_height";
            case GASKET_THICKNESS -> "with_gasket";
            case INTAKE_LIFT -> "with_intake_lift";
            case EXHAUST_LIFT -> "with_exhaust_lift";
            case CAM_CORE -> "with_cam_core";
            default -> throw new IllegalArgumentException(size.path() + " is no size of a mock-up");
        };
    }

    /** Those of {@link #SIZES} that have to do with a pair. */
    public static List<Term> sizes(MovingPair pair) {
        List<Term> sizes = new ArrayList<>();
        if (pair.hangsOnStack()) {
            sizes.addAll(List.of(Term.STROKE, Term.ROD_LENGTH, Term.COMPRESSION_HEIGHT));
            if (!pair.hangsOnEndPlay()) {
                sizes.add(Term.GASKET_THICKNESS);
            }
        }
        sizes.addAll(pair.camshaftBy());
        return List.copyOf(sizes);
    }

    public MockedUp {
        Map<Term, Quantity> copy = new EnumMap<>(Term.class);
        with.forEach((term, size) -> {
            if (!SIZES.contains(term)) {
                throw new IllegalArgumentException(term.path() + " is none of the sizes a mock-up is known again by");
            }
            copy.put(term, size);
        });
        with = Collections.unmodifiableMap(copy);
        if (pair.isAtOverlap() && found instanceof Curve curve && curve.isAboutFiring()) {
            throw new IllegalArgumentException(
                    "rows at firing top dead centre tell nothing of " + pair.label() + ": both valves are shut there");
        }
        if (!way.reads(pair)) {
            throw new IllegalArgumentException(
                    way.label() + "s stand in the place of valve springs; they read no " + pair.label());
        }
        if (way == Way.BLUE
                && !(found instanceof Touching)
                && !(found instanceof Free free && free.atLeast().si() == 0)) {
            throw new IllegalArgumentException(
                    "marking blue tells whether two parts touch, and not how far they stay apart");
        }
    }

    /** How it was read; what may be expected of each is with its kind of reading. */
    public enum Way {
        CLAY(ReadingKind.CLAY),
        WIRE(ReadingKind.WIRE),
        SOFT_SPRING(ReadingKind.SOFT_SPRING),
        FEELER(ReadingKind.GAP),
        /** Tells whether they touch, and no more. */
        BLUE(null);

        private final @Nullable ReadingKind reading;

        Way(@Nullable ReadingKind reading) {
            this.reading = reading;
        }

        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }

        /** Whether two parts can be read so: soft springs stand in the place of valve springs, anything else goes in anywhere. */
        public boolean reads(MovingPair pair) {
            return this != SOFT_SPRING || pair.isMetByValve();
        }

        public String label() {
            return this == BLUE ? "marking blue" : key().replace('_', ' ');
        }

        /** What kind of reading it is; empty where it reads no gap. */
        public Optional<ReadingKind> reading() {
            return Optional.ofNullable(reading);
        }
    }

    /** Which ways crankshaft and camshaft were pushed in their end play. */
    public enum EndPlay {
        BOTH_WAYS,
        ONE_WAY,
        NOT_SAID
    }

    /** What was found. */
    public sealed interface Found {
        /** As it was written, for people. */
        String written();
    }

    /**
     * A gap was read.
     * @param gaps      one or more of the same gap, each as written
     * @param plusMinus 95 % half-width as its owner states it, then of one gap alone; null where the way of reading says it
     */
    public record Read(List<Quantity> gaps, @Nullable Quantity plusMinus) implements Found {
        public Read {
            gaps = List.copyOf(gaps);
            if (gaps.isEmpty() || (plusMinus != null && gaps.size() > 1)) {
                throw new IllegalArgumentException("a gap that was read is one or more readings, or one with its ±");
            }
        }

        @Override
        public String written() {
            String all = gaps.stream().map(Quantity::written).collect(Collectors.joining(", "));
            return plusMinus == null ? all : all + " ± " + plusMinus.written();
        }
    }

    /** They touched, or one left a mark on the other. */
    public record Touching() implements Found {
        @Override
        public String written() {
            return "touches";
        }
    }

    /**
     * They passed free of each other.
     * @param atLeast what went through between them; 0 where nothing was tried and nothing left a mark
     */
    public record Free(Quantity atLeast) implements Found {
        @Override
        public String written() {
            return atLeast.si() == 0 ? "free of each other, by how much not read" : "at least " + atLeast.written();
        }
    }

    /**
     * Gaps read at several angles.
     * @param rows in order of angle, three or more
     */
    public record Curve(List<Row> rows) implements Found {
        public Curve {
            rows = List.copyOf(rows);
            if (rows.size() < LEAST_ROWS) {
                throw new IllegalArgumentException("a gap by angle needs at least " + LEAST_ROWS + " rows");
            }
        }

        /** Whether every row is nearer to firing top dead centre than to the overlap, which is at 360°. */
        public boolean isAboutFiring() {
            return rows.stream().allMatch(row -> Math.cos(row.angle().si() / 2) > Math.cos(Math.PI / 4));
        }

        @Override
        public String written() {
            return rows.stream()
                    .map(row -> row.gap().written() + " at " + row.angle().written())
                    .collect(Collectors.joining(", "));
        }
    }

    /** Fewer show neither where a gap is least nor whether they agree. */
    public static final int LEAST_ROWS = 3;

    /**
     * One line.
     * @param angle of the crank after firing top dead centre; overlap is at 360°
     * @param gap   0 or more
     */
    public record Row(Quantity angle, Quantity gap) {}
}

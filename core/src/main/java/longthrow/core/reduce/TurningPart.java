package longthrow.core.reduce;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;

/** A part whose inertia about its own axis follows from its shape or is known. Discs and shafts are tubes without a hole. */
public sealed interface TurningPart {
    /** About its axis [kg m2]. */
    Measured inertia();

    /**
     * Walls square to the axis, weighed.
     * @param mass        [kg], above 0
     * @param innerRadius of the hole [m], 0 for a disc
     * @param outerRadius [m], above the inner one
     */
    record Weighed(Measured mass, Measured innerRadius, Measured outerRadius) implements TurningPart {
        private static final Formula INERTIA = Formula.of(
                "inertia of a weighed tube",
                Rotation.inertiaOfTube(Expression.input("mass"), Expression.input("inner"), Expression.input("outer")));

        public Weighed {
            radii(innerRadius, outerRadius);
            positive("mass [kg]", mass);
        }

        @Override
        public Measured inertia() {
            Map<String, Measured> inputs = Map.of("mass", mass, "inner", innerRadius, "outer", outerRadius);
            return Measured.through(INERTIA, name -> Objects.requireNonNull(inputs.get(name)));
        }
    }

    /**
     * Walls square to the axis, of a known material.
     * @param density     [kg/m3], above 0
     * @param length      along the axis [m], above 0
     * @param innerRadius of the hole [m], 0 for a disc
     * @param outerRadius [m], above the inner one
     */
    record OfMaterial(Measured density, Measured length, Measured innerRadius, Measured outerRadius)
            implements TurningPart {
        private static final Formula INERTIA = Formula.of(
                "inertia of a tube of a material",
                Rotation.inertiaOfTube(
                        Rotation.massOfTube(
                                Expression.input("density"),
                                Expression.input("inner"),
                                Expression.input("outer"),
                                Expression.input("length")),
                        Expression.input("inner"),
                        Expression.input("outer")));

        public OfMaterial {
            radii(innerRadius, outerRadius);
            positive("density [kg/m3]", density);
            positive("length [m]", length);
        }

        @Override
        public Measured inertia() {
            Map<String, Measured> inputs =
                    Map.of("density", density, "length", length, "inner", innerRadius, "outer", outerRadius);
            return Measured.through(INERTIA, name -> Objects.requireNonNull(inputs.get(name)));
        }
    }

    /** By its maker's word, or measured apart [kg m2]. */
    record Known(Measured inertia) implements TurningPart {
        public Known {
            positive("inertia [kg m2]", inertia);
        }
    }

    /** Of all that turn together at one speed; doubt that they share is counted once. */
    static Measured together(List<TurningPart> parts) {
        if (parts.isEmpty()) {
            throw new IllegalArgumentException("no part, so no inertia");
        }
        Expression sum = Expression.constant(0);
        for (int i = 0; i < parts.size(); i++) {
            sum = sum.plus(Expression.input("part " + i));
        }
        return Measured.through(
                Formula.of("inertia together", sum),
                name -> parts.get(Integer.parseInt(name.substring(5))).inertia());
    }

    private static void positive(String what, Measured figure) {
        if (!(figure.value() > 0)) {
            throw new IllegalArgumentException(what + " is " + figure.value() + "; it must be above 0");
        }
    }

    private static void radii(Measured inner, Measured outer) {
        if (!(inner.value() >= 0 && inner.value() < outer.value())) {
            throw new IllegalArgumentException("radii are " + inner.value() + " and " + outer.value()
                    + " m; the inner must be 0 or more and the outer above it");
        }
    }
}

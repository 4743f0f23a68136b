package longthrow.core.pipe;

import java.util.function.DoubleUnaryOperator;

/** Two gases of one gamma that meet, exactly (Toro, Riemann Solvers, 3rd ed., 4.2 to 4.5): what the sums of cells are held against. */
record RiemannProblem(double gamma, State left, State right) {
    record State(double density, double velocity, double pressure) {
        double sound(double gamma) {
            return Math.sqrt(gamma * pressure / density);
        }
    }

    double starPressure() {
        DoubleUnaryOperator f = p -> pull(p, left) + pull(p, right) + right.velocity - left.velocity;
        double low = 1e-14;
        double high = 1e6 * Math.max(left.pressure, right.pressure);
        for (int k = 0; k < 400; k++) {
            double middle = Math.sqrt(low * high);
            if (f.applyAsDouble(middle) > 0) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return Math.sqrt(low * high);
    }

    double starVelocity() {
        double p = starPressure();
        return 0.5 * (left.velocity + right.velocity) + 0.5 * (pull(p, right) - pull(p, left));
    }

    double starDensity(State side) {
        double ratio = starPressure() / side.pressure;
        double g = (gamma - 1) / (gamma + 1);
        return ratio > 1 ? side.density * (ratio + g) / (g * ratio + 1) : side.density * Math.pow(ratio, 1 / gamma);
    }

    /** Speed of a shock into this side, away from it; not a number where it is an expansion. */
    double shockSpeed(State side) {
        double ratio = starPressure() / side.pressure;
        return ratio > 1
                ? side.sound(gamma) * Math.sqrt((gamma + 1) / (2 * gamma) * ratio + (gamma - 1) / (2 * gamma))
                : Double.NaN;
    }

    private double pull(double p, State side) {
        if (p > side.pressure) {
            double a = 2 / ((gamma + 1) * side.density);
            double b = (gamma - 1) / (gamma + 1) * side.pressure;
            return (p - side.pressure) * Math.sqrt(a / (p + b));
        }
        return 2 * side.sound(gamma) / (gamma - 1) * (Math.pow(p / side.pressure, (gamma - 1) / (2 * gamma)) - 1);
    }

    /** At a place over time since they met. */
    State at(double speed) {
        double u = starVelocity();
        return speed < u ? fan(left, speed, 1) : fan(right, speed, -1);
    }

    private State fan(State side, double speed, double sign) {
        double p = starPressure();
        double u = starVelocity();
        double sound = side.sound(gamma);
        if (p > side.pressure) {
            double shock = side.velocity - sign * shockSpeed(side);
            return sign * speed < sign * shock ? side : new State(starDensity(side), u, p);
        }
        double head = side.velocity - sign * sound;
        double tail = u - sign * sound * Math.pow(p / side.pressure, (gamma - 1) / (2 * gamma));
        if (sign * speed <= sign * head) {
            return side;
        }
        if (sign * speed >= sign * tail) {
            return new State(starDensity(side), u, p);
        }
        double c = 2 / (gamma + 1) * (sound + sign * 0.5 * (gamma - 1) * (side.velocity - speed));
        return new State(
                side.density * Math.pow(c / sound, 2 / (gamma - 1)),
                speed + sign * c,
                side.pressure * Math.pow(c / sound, 2 * gamma / (gamma - 1)));
    }
}

package longthrow.core.pipe;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Objects;
import longthrow.core.ReferenceRows;
import longthrow.core.pipe.RiemannProblem.State;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The exact solution itself, against rows GAS-09 to GAS-14 (Toro, tables 4.1 to 4.3, and two invented openings of a port), before anything is held against it. */
class RiemannProblemTest {
    private static final Map<String, RiemannProblem> PROBLEMS = Map.of(
            "GAS-09", new RiemannProblem(1.4, new State(1, 0, 1), new State(0.125, 0, 0.1)),
            "GAS-10", new RiemannProblem(1.4, new State(1, -2, 0.4), new State(1, 2, 0.4)),
            "GAS-11", new RiemannProblem(1.4, new State(1, 0, 1000), new State(1, 0, 0.01)),
            "GAS-12",
                    new RiemannProblem(1.4, new State(5.99924, 19.5975, 460.894), new State(5.99242, -6.19633, 46.095)),
            "GAS-13",
                    new RiemannProblem(
                            1.35,
                            new State(400000 / (287 * 1100.0), 0, 400000),
                            new State(102000 / (287 * 500.0), 0, 102000)),
            "GAS-14",
                    new RiemannProblem(
                            1.4,
                            new State(70000 / (287 * 350.0), 0, 70000),
                            new State(100000 / (287 * 300.0), 20, 100000)));

    static RiemannProblem problem(String id) {
        return Objects.requireNonNull(PROBLEMS.get(id), id);
    }

    @ParameterizedTest
    @ValueSource(strings = {"GAS-09", "GAS-10", "GAS-11", "GAS-12", "GAS-13", "GAS-14"})
    void starsAreThoseOfTheTables(String id) {
        RiemannProblem problem = problem(id);
        int checked = 0;
        for (ReferenceRows.Row row : ReferenceRows.of("06_gas_dynamics").cases(id)) {
            double got = switch (row.quantity()) {
                case "p*" -> problem.starPressure();
                case "u*" -> problem.starVelocity();
                case "rho*L" -> problem.starDensity(problem.left());
                case "rho*R" -> problem.starDensity(problem.right());
                case "left wave: shock speed" -> problem.left().velocity() - problem.shockSpeed(problem.left());
                case "right wave: shock speed" -> problem.right().velocity() + problem.shockSpeed(problem.right());
                default -> Double.NaN;
            };
            if (!Double.isNaN(got)) {
                row.check(got);
                checked++;
            }
        }
        assertThat(checked).isGreaterThanOrEqualTo(4);
    }
}

package longthrow.core.measurement;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Which readings check each other, and in what order the others fix one figure each. A reading is peeled off with a figure that no other
 * reading left speaks of; then the next, until none can be. What stays is solved together, the peeled ones follow, last peeled first.
 */
final class Peeling {
    /** One reading fixes one figure, all other figures it depends on being known. */
    record Step(int reading, int figure) {}

    private final int[][] inputs;
    private final List<Step> steps = new ArrayList<>();
    private final int[] checkedReadings;
    private final int[] checkedFigures;

    /**
     * @param peel false to leave all readings to be solved together
     */
    Peeling(List<Observation> observations, List<Reconciliation.Sought> sought, boolean peel) {
        int n = observations.size();
        Map<String, Integer> index = new HashMap<>();
        for (int j = 0; j < sought.size(); j++) {
            index.put(sought.get(j).name(), j);
        }
        inputs = new int[n][];
        List<List<Integer>> readingsOf = new ArrayList<>();
        sought.forEach(s -> readingsOf.add(new ArrayList<>()));
        for (int i = 0; i < n; i++) {
            List<String> names = observations.get(i).formula().inputs();
            inputs[i] = new int[names.size()];
            for (int k = 0; k < names.size(); k++) {
                int j = java.util.Objects.requireNonNull(index.get(names.get(k)));
                inputs[i][k] = j;
                readingsOf.get(j).add(i);
            }
        }
        int[] left = readingsOf.stream().mapToInt(List::size).toArray();
        boolean[] peeled = new boolean[n];
        Deque<Integer> lone = new ArrayDeque<>();
        for (int j = 0; peel && j < left.length; j++) {
            if (left[j] == 1) {
                lone.add(j);
            }
        }
        while (!lone.isEmpty()) {
            int j = lone.remove();
            if (left[j] != 1) {
                continue; // its only reading went with another figure
            }
            int reading = readingsOf.get(j).stream()
                    .filter(i -> !peeled[i])
                    .findFirst()
                    .orElseThrow();
            peeled[reading] = true;
            steps.add(0, new Step(reading, j));
            for (int k : inputs[reading]) {
                if (--left[k] == 1) {
                    lone.add(k);
                }
            }
        }
        List<Integer> readings = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            if (!peeled[i]) {
                readings.add(i);
            }
        }
        checkedReadings = readings.stream().mapToInt(Integer::intValue).toArray();
        List<Integer> figures = new ArrayList<>();
        for (int j = 0; j < left.length; j++) {
            if (left[j] > 0) {
                figures.add(j);
            }
        }
        checkedFigures = figures.stream().mapToInt(Integer::intValue).toArray();
    }

    /** Readings that check each other, by index. */
    int[] checkedReadings() {
        return checkedReadings;
    }

    /** Figures those depend on, by index. */
    int[] checkedFigures() {
        return checkedFigures;
    }

    /** The others, in the order in which they are to be solved. */
    List<Step> steps() {
        return steps;
    }

    /** Indices of the figures that a reading's formula depends on, in order of its inputs. */
    int[] inputs(int reading) {
        return inputs[reading];
    }
}

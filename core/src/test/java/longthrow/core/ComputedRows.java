package longthrow.core;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Numbers the product computed for the rows of a topic, by id; knows which rows nothing was computed for. */
public final class ComputedRows {
    private final ReferenceRows rows;
    private final Map<String, Double> computed = new LinkedHashMap<>();

    public ComputedRows(ReferenceRows rows) {
        this.rows = rows;
    }

    /** Files what was computed for the row; each id once, and only ids of the topic. */
    public void put(String id, double number) {
        rows.row(id);
        if (computed.putIfAbsent(id, number) != null) {
            throw new IllegalStateException(id + " was computed twice");
        }
    }

    /** {@code putFrom("UNC-01", 1, 2.0, 3.0)} files UNC-01.1 and UNC-01.2. */
    public void putFrom(String caseId, int first, double... numbers) {
        for (int i = 0; i < numbers.length; i++) {
            put(caseId + "." + (first + i), numbers[i]);
        }
    }

    /** The rows something was computed for, in the order of the topic. */
    public List<ReferenceRows.Row> rows() {
        return rows.all().stream().filter(row -> computed.containsKey(row.id())).toList();
    }

    /** Fails unless the number is the row's within its tolerance. */
    public void check(ReferenceRows.Row row) {
        check(row, row.allowed());
    }

    /** The same where the row's tolerance says in words what is allowed. */
    public void check(ReferenceRows.Row row, double allowed) {
        Double got = computed.get(row.id());
        if (got == null) {
            throw new AssertionError("nothing was computed for " + row + ", expected " + row.value());
        }
        row.check(got, allowed);
    }

    /** Ids of the topic that were neither computed nor named, or both. */
    public List<String> leftOut(Set<String> named) {
        List<String> left = new ArrayList<>();
        for (ReferenceRows.Row row : rows.all()) {
            if (computed.containsKey(row.id()) == named.contains(row.id())) {
                left.add(row.id());
            }
        }
        return left;
    }
}

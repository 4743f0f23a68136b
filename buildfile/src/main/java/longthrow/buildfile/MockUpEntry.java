package longthrow.buildfile;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.build.MockedUp;

/**
 * One entry of the mock-up as somebody typed it, not yet understood.
 * @param words by key, without gaps and rows
 * @param gaps  read; empty for none
 * @param rows  gap by angle; empty for none
 */
public record MockUpEntry(Map<String, String> words, List<String> gaps, Map<String, String> rows) {
    public MockUpEntry {
        words = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(words));
        gaps = List.copyOf(gaps);
        rows = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(rows));
    }

    /** The text with this entry behind those there are. */
    Edited behind(String text) {
        ReadBuild read = BuildFile.read(text);
        if (read.build().isEmpty()) {
            return new Edited(Optional.empty(), read.faults());
        }
        String all = FlowEntry.ofMockedUp(read.build().get().mockedUp());
        String before = all.substring(0, all.length() - 1);
        return BuildFile.edit(text, Layout.MOCKED_UP, before + (before.length() > 1 ? ", " : "") + flow() + "]");
    }

    private String flow() {
        List<String> fields = new ArrayList<>();
        words.forEach((key, value) -> fields.add(key + ": " + BuildFile.quoted(value)));
        if (gaps.size() == 1) {
            fields.add("gap: " + BuildFile.quoted(gaps.get(0)));
        } else if (!gaps.isEmpty()) {
            fields.add("gap: " + gaps.stream().map(BuildFile::quoted).collect(joining(", ", "[", "]")));
        }
        if (!rows.isEmpty()) {
            fields.add("rows: "
                    + rows.entrySet().stream()
                            .map(row -> BuildFile.quoted(row.getKey()) + ": " + BuildFile.quoted(row.getValue()))
                            .collect(joining(", ", "{", "}")));
        }
        return fields.stream().collect(joining(", ", "{", "}"));
    }

    /**
     * The text without one entry.
     * @param index from 0
     * @param was   as it was seen, see {@link BuildFile#mockedUp}
     */
    static Edited without(String text, int index, String was) {
        ReadBuild read = BuildFile.read(text);
        if (read.build().isEmpty()) {
            return new Edited(Optional.empty(), read.faults());
        }
        List<MockedUp> left = new ArrayList<>(read.build().get().mockedUp());
        if (index < 0
                || index >= left.size()
                || !FlowEntry.ofMockedUp(List.of(left.get(index))).equals(was)) {
            Fault gone = new Fault(
                    0, 0, Layout.MOCKED_UP, "", "this entry is not there any more", "", "look at the page again");
            return new Edited(Optional.empty(), List.of(gone));
        }
        left.remove(index);
        return BuildFile.edit(text, Layout.MOCKED_UP, FlowEntry.ofMockedUp(left));
    }
}

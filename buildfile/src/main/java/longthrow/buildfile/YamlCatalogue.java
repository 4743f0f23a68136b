package longthrow.buildfile;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.buildfile.Node.Entry;
import longthrow.buildfile.Node.Mapping;
import longthrow.buildfile.Node.Scalar;
import longthrow.buildfile.Node.Sequence;

/**
 * A catalogue of several kinds: {@code catalogue: 1}, {@code invented: yes} where it is made up, and a list for each kind, such as
 * <code>crankshafts: [{code: M-1, stroke: 56.50 mm ± 0.02 mm, price: 120 EUR}]</code>. Keys are those of the CSV columns.
 */
final class YamlCatalogue {
    private final String file;
    private final Faults faults;
    private final Rows rows = new Rows();

    private YamlCatalogue(String file, Faults faults) {
        this.file = file;
        this.faults = faults;
    }

    static Imported read(String file, byte[] utf8) {
        Faults faults = new Faults();
        if (FileKind.isNoTable(utf8, faults)) {
            return Imported.refused(faults.all());
        }
        Optional<Mapping> root = PlainText.decode(utf8, faults)
                .flatMap(text -> TreeReader.read(text, faults))
                .filter(r -> VersionLine.isReadable(r, CatalogueFile.VERSION, CatalogueFile.FORMAT_VERSION, faults));
        if (root.isEmpty() || !faults.isEmpty()) {
            return Imported.refused(faults.all());
        }
        return new YamlCatalogue(file, faults).read(root.get());
    }

    private Imported read(Mapping root) {
        List<Shelf> shelves = Shelf.all();
        List<String> known = Stream.concat(
                        Stream.of(CatalogueFile.VERSION, Layout.INVENTED),
                        shelves.stream().map(Shelf::plural))
                .toList();
        Optional<Fields> top = Fields.of(root, "", known, faults);
        boolean invented = top.flatMap(f -> f.yesOrNo(Layout.INVENTED)).orElse(false);
        for (Entry entry : root.entries()) {
            shelves.stream()
                    .filter(s -> s.plural().equals(entry.key().text()))
                    .findFirst()
                    .ifPresent(shelf -> readList(shelf, entry.value(), invented));
        }
        return rows.imported(faults.all(), faults.notes());
    }

    private void readList(Shelf shelf, Node node, boolean invented) {
        if (!(node instanceof Sequence list)) {
            Fields.wrongShape(node, shelf.plural(), "a list", faults);
            return;
        }
        CatalogueColumns columns = CatalogueColumns.keyed(shelf);
        Map<String, Optional<CatalogueColumn>> asked = new HashMap<>();
        CatalogueRow row = new CatalogueRow(shelf, file, invented);
        List<Node> items = list.items();
        for (int i = 0; i < items.size(); i++) {
            Node item = items.get(i);
            String path = shelf.plural() + "[" + (i + 1) + "]";
            if (!(item instanceof Mapping map)) {
                Fields.wrongShape(item, path, "lines of key: value", faults);
                continue;
            }
            row.begin(item.place().line());
            for (Entry entry : map.entries()) {
                String key = entry.key().text();
                Optional<CatalogueColumn> column = asked.computeIfAbsent(key, columns::exact);
                row.at(entry.value().place().line(), entry.value().place().column(), path);
                if (column.isEmpty()) {
                    row.refuse(
                            key,
                            key,
                            "is not a key of a " + shelf.label(),
                            String.join(", ", columns.canonical()),
                            columns.didYouMean(key));
                } else {
                    read(entry.value(), column.get(), row);
                }
            }
            row.at(item.place().line(), item.place().column(), path);
            rows.add(row, shelf, file);
        }
    }

    private void read(Node value, CatalogueColumn column, CatalogueRow row) {
        if (value instanceof Scalar scalar) {
            char[] cell = scalar.text().toCharArray();
            column.cell(cell, 0, cell.length, row);
        } else {
            row.refuse(
                    column.header(),
                    "",
                    "is " + value.plainName() + "; a single value is wanted here",
                    "",
                    "write one value");
        }
    }
}

package longthrow.core.catalogue;

import java.util.List;

/**
 * All that can be bought or machined for one build.
 * @param parts      in the order of their files
 * @param operations in the order of their files
 */
public record Catalogue(List<CataloguePart> parts, List<Operation> operations) {
    public static final Catalogue EMPTY = new Catalogue(List.of(), List.of());

    public Catalogue {
        parts = List.copyOf(parts);
        operations = List.copyOf(operations);
    }

    public List<CataloguePart> of(PartKind kind) {
        return parts.stream().filter(p -> p.kind() == kind).toList();
    }
}

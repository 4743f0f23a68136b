package longthrow.workshop.web;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** A form of a page of ours from before the workshop was started anew: its token is past, what was typed is not lost. */
public final class FromBefore extends RuntimeException {
    private static final long serialVersionUID = 1L;

    FromBefore() {
        super("The page is from before the workshop was started anew; nothing was changed yet");
    }

    /**
     * What is shown of it.
     * @param action where it is sent once more
     * @param fields of the form but its token, in their order
     */
    public record Page(Frame frame, String action, List<OutdatedPage.Field> fields) {
        /** That a form carries and nobody types. */
        private static final Set<String> NOT_TYPED = Set.of("key", "based");

        public Page {
            fields = List.copyOf(fields);
        }

        static Page of(Context request, Workbench bench) {
            List<OutdatedPage.Field> fields = new ArrayList<>();
            for (Map.Entry<String, List<String>> field : request.formParamMap().entrySet()) {
                if (!field.getKey().equals(Guards.TOKEN_FIELD)) {
                    field.getValue().forEach(value -> fields.add(new OutdatedPage.Field(field.getKey(), value)));
                }
            }
            String query = request.queryString();
            return new Page(
                    Frame.plain("Not kept yet", bench.token(), "", bench.damage()),
                    request.path() + (query == null ? "" : "?" + query),
                    fields);
        }

        /** What somebody typed or chose, to be read over. */
        public List<OutdatedPage.Field> typed() {
            return fields.stream()
                    .filter(f -> !NOT_TYPED.contains(f.name()) && !f.value().isBlank())
                    .toList();
        }
    }
}

package longthrow.workshop.web;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.javalin.http.Context;
import java.util.Map;

/** Pages from their templates, which were made into classes when the program was built. */
public final class View {
    private static final String PAGES = "longthrow.workshop.web.pages";

    private final TemplateEngine engine =
            TemplateEngine.createPrecompiled(null, ContentType.Html, View.class.getClassLoader(), PAGES);

    /** Answers with a page whose template has one parameter called {@code page}. */
    public void show(Context request, String template, Object page) {
        show(request, template, Map.of("page", page));
    }

    /** Answers with a page. */
    public void show(Context request, String template, Map<String, Object> parameters) {
        StringOutput out = new StringOutput();
        engine.render(template + ".jte", parameters, out);
        request.html(out.toString());
    }
}

package longthrow.workshop.web.book;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.buildfile.BuildFile;
import longthrow.core.answer.Answer;
import longthrow.core.book.Answers;
import longthrow.core.book.Shared;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.measure.Measure;
import longthrow.workshop.book.BookPdf;
import longthrow.workshop.book.Sheet;
import longthrow.workshop.book.Wall;
import longthrow.workshop.store.CatalogueEntry;
import longthrow.workshop.web.Catalogues;
import longthrow.workshop.web.Clearances;
import longthrow.workshop.web.Dynos;
import longthrow.workshop.web.FileName;
import longthrow.workshop.web.Loaded;
import longthrow.workshop.web.Rail.Question;
import longthrow.workshop.web.Refused;
import longthrow.workshop.web.Routes;
import longthrow.workshop.web.Searches;
import longthrow.workshop.web.Workbench;

/** Addresses of the Book. */
public final class BookRoutes implements Routes {
    /** All that an address of the Book may say. */
    private static final List<String> KEYS = List.of("view", "share", "names", "now");

    private final Workbench bench;
    private final Catalogues catalogues;
    private final Searches searches;
    private final MovingAnswers moving;
    private final Dynos dynos;

    /**
     * Over a store.
     * @param searches   remembered with the page Fit
     * @param clearances remembered with the page Clear
     * @param loaded     remembered with the pages Life and Shake
     * @param dynos      remembered with the page Dyno
     */
    public BookRoutes(
            Workbench bench,
            Catalogues catalogues,
            Searches searches,
            Clearances clearances,
            Loaded loaded,
            Dynos dynos) {
        this.bench = bench;
        this.catalogues = catalogues;
        this.searches = searches;
        this.dynos = dynos;
        this.moving = new MovingAnswers(catalogues, clearances, loaded);
    }

    @Override
    public void add(RoutesConfig routes) {
        routes.get("/b/{id}/book", this::page);
        routes.get("/b/{id}/book/sheet", this::sheet);
        routes.get("/b/{id}/book.pdf", this::pdf);
    }

    /** A word that is not known is refused: passed over, it would give out the names that somebody meant to leave out. */
    private static BookPage.Asked asked(Context request) {
        request.queryParamMap().keySet().stream()
                .filter(key -> !KEYS.contains(key))
                .findFirst()
                .ifPresent(key -> {
                    throw notKnown(key, "a Book is asked for with " + String.join(", ", KEYS));
                });
        return new BookPage.Asked(
                word(request, "view", "sheet", "wall"),
                word(request, "share", "no", "yes"),
                word(request, "names", "no", "yes"));
    }

    /** Whether it is the second word; it is the first where nothing is said. */
    private static boolean word(Context request, String key, String first, String second) {
        List<String> said = request.queryParams(key);
        String word = said.isEmpty() || said.get(0).isEmpty() ? first : said.get(0);
        if (said.size() > 1 || !List.of(first, second).contains(word)) {
            throw notKnown(
                    key + "=" + String.join(" and " + key + "=", said),
                    key + " is " + first + " or " + second + ", once");
        }
        return word.equals(second);
    }

    private static Refused notKnown(String said, String allowed) {
        return new Refused(
                HttpStatus.BAD_REQUEST,
                "The address says '" + said + "', and " + allowed + "; nothing was shown, lest names go out unmeant",
                "Mend the address, or go to the Book by its button.");
    }

    /**
     * At once where nothing is to be searched, or the search is remembered; else the page asks for the sheet when it is there. What is not worked out of
     * the moving engine it asks for in any case, and says so until that is there.
     */
    private void page(Context request) {
        Workbench.Open open = bench.open(request);
        open.build();
        BookPage.Asked asked = asked(request);
        List<CatalogueEntry> active = catalogues.active();
        boolean now = isNow(request);
        String text = open.revision().text();
        boolean known = active.isEmpty()
                || (asked.stripped() ? searches.ifKnownShared(text, active) : searches.ifKnown(text, active))
                        .isPresent();
        Optional<Sheet> sheet = now || known ? Optional.of(laidOut(open, asked, active, now)) : Optional.empty();
        if (bench.sentOn(request, open)) {
            return;
        }
        bench.view()
                .show(request, "book", new BookPage(bench.frame(request, open, "Book", Question.BOOK), sheet, asked));
    }

    private static boolean isNow(Context request) {
        return request.queryParam("now") != null;
    }

    /** The part of the page that takes a while: first what waits for the search alone, then all of it. */
    private void sheet(Context request) {
        Workbench.Open open = bench.open(request);
        BookPage.Asked asked = asked(request);
        Sheet sheet = laidOut(open, asked, catalogues.active(), isNow(request));
        if (bench.sentOn(request, open)) {
            return;
        }
        String asks = sheet.book().isWhole() ? "" : asked.query();
        if (asked.wall()) {
            bench.view()
                    .show(
                            request,
                            "bookwall",
                            Map.of("sheet", sheet, "wall", Wall.of(sheet.book()), "base", open.base(), "asks", asks));
        } else {
            bench.view().show(request, "booksheet", Map.of("sheet", sheet, "base", open.base(), "asks", asks));
        }
    }

    private void pdf(Context request) {
        Workbench.Open open = bench.open(request);
        BookPage.Asked asked = asked(request);
        Sheet sheet = laidOut(open, asked, catalogues.active(), true);
        if (bench.sentOn(request, open)) {
            return;
        }
        String text = asked.stripped()
                ? BuildFile.write(Shared.of(open.build(), Catalogue.EMPTY).build())
                : open.revision().text();
        request.header(
                "Content-Disposition",
                "attachment; filename=\""
                        + FileName.of(asked.stripped() ? "shared" : open.entry().name())
                        + (asked.wall() ? "-wall" : "-book") + ".pdf\"");
        request.contentType("application/pdf")
                .result(BookPdf.of(sheet, asked.wall(), text.getBytes(StandardCharsets.UTF_8)));
    }

    /**
     * The sheet.
     * @param all whether everything is worked out for it; else what is remembered of the moving engine stands in it
     */
    private Sheet laidOut(Workbench.Open open, BookPage.Asked asked, List<CatalogueEntry> active, boolean all) {
        Build build = open.build();
        Catalogue catalogue =
                active.isEmpty() ? Catalogue.EMPTY : catalogues.together(active).catalogue();
        String text = open.revision().text();
        if (asked.stripped()) {
            Shared shared =
                    Shared.of(build, catalogue).with(dynos.shared(open.entry().id()));
            Optional<Answer> fit = active.isEmpty() ? Optional.empty() : Optional.of(searches.ofShared(text, active));
            MovingAnswers.Asked of = new MovingAnswers.Asked(BuildFile.write(shared.build()), active, true);
            Answers answers = answers(Measure.of(shared.build(), List.of()), fit, of, all)
                    .withRuns(dynos.ran(open.entry().id(), true, all));
            return Sheet.of(shared, answers, moving.drawn(of), moving.cuts(of));
        }
        Optional<Answer> fit = active.isEmpty() ? Optional.empty() : Optional.of(searches.of(text, active));
        MovingAnswers.Asked of = new MovingAnswers.Asked(text, active, false);
        return Sheet.of(
                build,
                catalogue,
                answers(open.measure().orElseThrow(), fit, of, all)
                        .withRuns(dynos.ran(open.entry().id(), false, all)),
                moving.drawn(of),
                moving.cuts(of));
    }

    private Answers answers(Answer measure, Optional<Answer> fit, MovingAnswers.Asked of, boolean all) {
        Answers answers = Answers.of(measure, fit);
        return all ? moving.all(answers, of) : moving.known(answers, of);
    }
}

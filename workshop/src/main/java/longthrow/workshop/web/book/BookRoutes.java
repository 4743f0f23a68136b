package longthrow.workshop.web.book;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.buildfile.BuildFile;
import longthrow.core.answer.Answer;
import longthrow.core.book.Shared;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.workshop.book.BookPdf;
import longthrow.workshop.book.Sheet;
import longthrow.workshop.store.CatalogueEntry;
import longthrow.workshop.web.Catalogues;
import longthrow.workshop.web.FileName;
import longthrow.workshop.web.Rail.Question;
import longthrow.workshop.web.Routes;
import longthrow.workshop.web.Searches;
import longthrow.workshop.web.Workbench;

/** Addresses of the Book. */
public final class BookRoutes implements Routes {
    private final Workbench bench;
    private final Catalogues catalogues;
    private final Searches searches;

    /**
     * Over a store.
     * @param searches remembered with the page Fit
     */
    public BookRoutes(Workbench bench, Catalogues catalogues, Searches searches) {
        this.bench = bench;
        this.catalogues = catalogues;
        this.searches = searches;
    }

    @Override
    public void add(RoutesConfig routes) {
        routes.get("/b/{id}/book", this::page);
        routes.get("/b/{id}/book/sheet", this::sheet);
        routes.get("/b/{id}/book.pdf", this::pdf);
    }

    private static BookPage.Asked asked(Context request) {
        return new BookPage.Asked(
                "wall".equals(request.queryParam("view")),
                "yes".equals(request.queryParam("share")),
                "yes".equals(request.queryParam("names")));
    }

    /** At once where nothing is to be searched, or the search is remembered; else the page asks for the sheet when it is there. */
    private void page(Context request) {
        Workbench.Open open = bench.open(request);
        open.build();
        BookPage.Asked asked = asked(request);
        List<CatalogueEntry> active = catalogues.active();
        boolean now = request.queryParam("now") != null || active.isEmpty();
        boolean known = !asked.stripped()
                && searches.ifKnown(open.revision().text(), active).isPresent();
        bench.view()
                .show(
                        request,
                        "book",
                        new BookPage(
                                bench.frame(request, open, "Book", Question.BOOK),
                                now || known ? Optional.of(laidOut(open, asked, active)) : Optional.empty(),
                                asked));
    }

    /** The part of the page that takes a while. */
    private void sheet(Context request) {
        Workbench.Open open = bench.open(request);
        BookPage.Asked asked = asked(request);
        bench.view()
                .show(
                        request,
                        asked.wall() ? "bookwall" : "booksheet",
                        Map.of("sheet", laidOut(open, asked, catalogues.active())));
    }

    private void pdf(Context request) {
        Workbench.Open open = bench.open(request);
        BookPage.Asked asked = asked(request);
        Sheet sheet = laidOut(open, asked, catalogues.active());
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

    private Sheet laidOut(Workbench.Open open, BookPage.Asked asked, List<CatalogueEntry> active) {
        Build build = open.build();
        Catalogue catalogue =
                active.isEmpty() ? Catalogue.EMPTY : catalogues.together(active).catalogue();
        if (asked.stripped()) {
            return Sheet.of(Shared.of(build, catalogue));
        }
        Optional<Answer> fit = active.isEmpty()
                ? Optional.empty()
                : Optional.of(searches.of(open.revision().text(), active));
        return Sheet.of(build, open.measure().orElseThrow(), fit, catalogue);
    }
}

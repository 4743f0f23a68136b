package longthrow.workshop.web;

import io.javalin.config.RoutesConfig;

/** The addresses of one page. */
@FunctionalInterface
public interface Routes {
    /** Adds them. */
    void add(RoutesConfig routes);
}

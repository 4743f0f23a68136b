package longthrow.workshop.web.life;

import java.util.Optional;
import longthrow.workshop.web.Frame;

/**
 * What lets go first, and whether the speed wanted may be run.
 * @param answer  empty while it is not worked out; then the page asks for it afterwards
 * @param telling what can be told here
 */
public record LifePage(Frame frame, Optional<LifeAnswer> answer, Telling telling) {}

package longthrow.workshop.draw;

import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** A drawing read back by a parser that is not ours, and what is wrong with it. */
final class Drawing {
    /** Mean width of a letter to its size: common sans-serif faces, plain and bold. */
    private static final double PLAIN = 0.52;

    private static final double BOLD = 0.55;

    private final String source;
    private final Element root;

    private Drawing(String source, Element root) {
        this.source = source;
        this.root = root;
    }

    static Drawing of(String source) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            Document document = factory.newDocumentBuilder().parse(new InputSource(new StringReader(source)));
            return new Drawing(source, document.getDocumentElement());
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new AssertionError("does not parse: " + e.getMessage() + "\n" + source, e);
        }
    }

    List<Element> all(String name) {
        NodeList nodes = root.getElementsByTagNameNS("*", name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }

    /** Every word that is seen, in the order of drawing, with single blanks between. */
    String words() {
        return all("text").stream().map(Element::getTextContent).collect(Collectors.joining(" "));
    }

    /** Faults of any drawing: not self-contained, not to be read aloud, text over the edge. */
    List<String> faults(String prefix) {
        List<String> faults = new ArrayList<>();
        for (String forbidden : List.of("<script", "<style", "<image", "href", "url(", "onload", "transform", "NaN")) {
            if (source.contains(forbidden)) {
                faults.add("contains " + forbidden);
            }
        }
        if (!Pattern.compile("<svg [^>]*width=\"\\d+\" height=\"\\d+\" viewBox=\"0 0 \\d+ \\d+\"")
                .matcher(source)
                .find()) {
            faults.add("width, height or viewBox is not whole or not there");
        }
        if (!root.getAttribute("role").equals("img")
                || !root.getAttribute("aria-labelledby").equals(prefix + "-title " + prefix + "-desc")) {
            faults.add("role or aria-labelledby");
        }
        for (String name : List.of("title", "desc")) {
            List<Element> found = all(name);
            if (found.size() != 1
                    || found.get(0).getTextContent().isBlank()
                    || !found.get(0).getAttribute("id").equals(prefix + "-" + name)) {
                faults.add(name);
            }
        }
        List<String> ids = all("*").stream()
                .map(e -> e.getAttribute("id"))
                .filter(id -> !id.isEmpty())
                .toList();
        if (ids.stream().distinct().count() != ids.size()
                || ids.stream().anyMatch(id -> !id.startsWith(prefix + "-"))) {
            faults.add("ids " + ids);
        }
        for (Element text : all("text")) {
            faultOfPlace(text, faults);
        }
        return faults;
    }

    /** The box a text fills, about: {@code over} and {@code below} its base, to its size. */
    static Rectangle2D box(Element text, double over, double below) {
        double size = number(text, "font-size");
        double wide = text.getTextContent().length()
                * size
                * (text.getAttribute("font-weight").equals("bold") ? BOLD : PLAIN);
        double x = number(text, "x");
        double left = switch (text.getAttribute("text-anchor")) {
            case "start" -> x;
            case "middle" -> x - wide / 2;
            case "end" -> x - wide;
            default -> Double.NaN;
        };
        return new Rectangle2D.Double(left, number(text, "y") - over * size, wide, (over + below) * size);
    }

    private void faultOfPlace(Element text, List<String> faults) {
        Rectangle2D box = box(text, 0.8, 0.25);
        boolean inside = box.getMinX() >= 0
                && box.getMaxX() <= number(root, "width")
                && box.getMinY() >= 0
                && box.getMaxY() <= number(root, "height");
        if (!inside) {
            faults.add("text over the edge: " + text.getTextContent() + " at " + box);
        }
    }

    static double number(Element element, String attribute) {
        return Double.parseDouble(element.getAttribute(attribute));
    }
}

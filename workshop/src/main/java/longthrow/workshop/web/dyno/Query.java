package longthrow.workshop.web.dyno;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** What stands behind the question mark of an address: a form that is sent by GET has to carry it in fields. */
public final class Query {
    private Query() {}

    /** One part. */
    public record Field(String name, String value) {}

    /**
     * All parts of an address, in their order.
     * @param keepsChannels whether the channels that were chosen are among them
     */
    public static List<Field> of(String address, boolean keepsChannels) {
        String query = address.substring(address.indexOf('?') + 1);
        return Arrays.stream(query.split("&", -1))
                .filter(part -> part.contains("="))
                .map(part -> new Field(
                        part.substring(0, part.indexOf('=')),
                        URLDecoder.decode(part.substring(part.indexOf('=') + 1), StandardCharsets.UTF_8)))
                .filter(field -> keepsChannels || !field.name().equals("show"))
                .toList();
    }
}

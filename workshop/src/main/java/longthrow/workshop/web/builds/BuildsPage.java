package longthrow.workshop.web.builds;

import java.util.List;
import longthrow.workshop.web.Frame;

/**
 * The builds of this workshop.
 * @param away     those put away
 * @param troubles what the check of the store found
 * @param folder   where it all lies
 * @param key      of a build that is begun here, for once
 * @param mostUpload how large a file may be that comes in
 */
public record BuildsPage(
        Frame frame,
        List<BuildCard> cards,
        List<BuildCard> away,
        List<String> troubles,
        String folder,
        String key,
        String mostUpload) {
    public BuildsPage {
        cards = List.copyOf(cards);
        away = List.copyOf(away);
        troubles = List.copyOf(troubles);
    }
}

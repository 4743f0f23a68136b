package longthrow.workshop.store;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.SplittableRandom;
import java.util.UUID;

/**
 * The process that is killed: two threads that edit as fast as they can, and say so on standard output, a line for each edit
 * once it is acknowledged, that is: after the store returned.
 */
final class KilledWriter {
    private static int left = Integer.MAX_VALUE;

    private KilledWriter() {}

    /** Runs until it is killed. Arguments: folder, seed, and for a rehearsal after how many edits to leave by itself. */
    public static void main(String[] arguments) {
        Store store = Store.open(Path.of(arguments[0]));
        say("opened");
        leaveAfter(arguments.length > 2 ? Integer.parseInt(arguments[2]) : Integer.MAX_VALUE);
        SplittableRandom random = new SplittableRandom(Long.parseLong(arguments[1]));
        new Thread(new Editing(store, random.split())).start();
        new Editing(store, random.split()).run();
    }

    private static synchronized void leaveAfter(int lines) {
        left = lines;
    }

    /** One line in one piece, whichever thread speaks. */
    private static synchronized void say(String line) {
        System.out.print(line + "\n");
        System.out.flush();
        if (left-- == 0) {
            System.exit(0);
        }
    }

    private record Editing(Store store, SplittableRandom random) implements Runnable {
        @Override
        public void run() {
            while (true) {
                BuildId build = store.create("Build", text(), UUID.randomUUID());
                say("revision " + build + " 1 " + store.latest(build).entry().sha256());
                int latest = 1;
                for (int edit = 0; edit < 12; edit++) {
                    if (random.nextInt(4) == 0) {
                        attach(build, latest);
                    }
                    SaveResult result = random.nextInt(6) == 0 && latest == 2
                            ? store.undo(build, latest, UUID.randomUUID())
                            : store.save(build, latest, text(), "edit", UUID.randomUUID());
                    RevisionEntry saved = ((SaveResult.Saved) result).revision();
                    latest = saved.number();
                    say("revision " + build + " " + latest + " " + saved.sha256());
                }
            }
        }

        private void attach(BuildId build, int revision) {
            byte[] photo = new byte[random.nextInt(200_000)];
            random.nextBytes(photo);
            StoredFile file = store.attach(build, revision, "photo.jpg", "image/jpeg", new ByteArrayInputStream(photo));
            say("file " + build + " " + revision + " " + file.sha256());
        }

        private String text() {
            byte[] letters = new byte[200 + random.nextInt(20_000)];
            for (int at = 0; at < letters.length; at++) {
                letters[at] = (byte) (at % 60 == 59 ? '\n' : 'a' + random.nextInt(26));
            }
            return new String(letters, StandardCharsets.US_ASCII);
        }
    }
}

package longthrow.workshop.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.util.LibraryLoaderUtil;

/**
 * A process that writes is killed outright, again and again, at any moment of its life; every edit and every file it had
 * acknowledged is there afterwards, and the database is whole. Kills the process, not the machine: that what is synced
 * outlasts a power cut is the promise of the system. So the data may lie in memory where the system has a folder for that:
 * it is the same to a kill, and a disk shared with others would make the rounds few and slow.
 */
class StoreKillTest {
    private static final int ROUNDS = 200;
    private static final int LANES = 2;

    /** So many rounds one folder lives through; its first may be killed while the tables are being made. */
    private static final int ROUNDS_A_FOLDER = 10;

    /** Before so many lines at most a child is killed, one for each acknowledged edit. */
    private static final int MOST_EDITS = 24;

    /** What the child needs of the class path. */
    private static final List<String> LIBRARIES =
            List.of("sqlite-jdbc", "jdbi3-core", "geantyref", "HikariCP", "slf4j-api", "flyway-core");

    private static final Path IN_MEMORY = Path.of("/dev/shm");

    private Path temporary;
    private final AtomicLong cpuMillis = new AtomicLong();

    @BeforeEach
    void makeFolder(@TempDir Path onDisk) throws IOException {
        temporary = Files.isWritable(IN_MEMORY) ? Files.createTempDirectory(IN_MEMORY, "longthrow") : onDisk;
    }

    @AfterEach
    void deleteFolder() throws IOException {
        try (Stream<Path> all = Files.walk(temporary)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }

    /** What the rounds were like, so that a test in which nothing happened is seen. */
    private record Tally(int beforeOpening, int acknowledged, int files) {
        Tally plus(Tally other) {
            return new Tally(
                    beforeOpening + other.beforeOpening, acknowledged + other.acknowledged, files + other.files);
        }
    }

    @Test
    void everyAcknowledgedEditOutlivesTwoHundredKills() throws Exception {
        Child child = Child.prepared(Files.createDirectory(temporary.resolve("child")));
        ExecutorService lanes = Executors.newFixedThreadPool(LANES);
        try {
            List<Callable<Tally>> work = new ArrayList<>();
            for (int lane = 0; lane < LANES; lane++) {
                int number = lane;
                work.add(() -> lane(number, child));
            }
            Tally tally = new Tally(0, 0, 0);
            for (Future<Tally> done : lanes.invokeAll(work)) {
                tally = tally.plus(result(done));
            }
            System.out.println("StoreKillTest: " + ROUNDS + " kills, " + tally + ", processor time of the killed "
                    + cpuMillis.get() + " ms");
            assertThat(tally.acknowledged()).isGreaterThan(5 * ROUNDS);
            assertThat(tally.files()).isGreaterThan(ROUNDS / 2);
            assertThat(tally.beforeOpening()).isBetween(ROUNDS / 20, ROUNDS / 2);
        } finally {
            lanes.shutdownNow();
        }
    }

    private static Tally result(Future<Tally> done) throws Exception {
        try {
            return done.get();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof AssertionError failed) {
                throw failed;
            }
            throw e;
        }
    }

    private Tally lane(int lane, Child child) throws IOException, InterruptedException {
        SplittableRandom random = new SplittableRandom(20261125 + lane);
        Tally tally = new Tally(0, 0, 0);
        List<Long> opening = new ArrayList<>(List.of(TimeUnit.MILLISECONDS.toNanos(300)));
        Map<String, String> inThisFolder = new HashMap<>();
        Path folder = temporary.resolve("none");
        for (int round = 0; round < ROUNDS / LANES; round++) {
            if (round % ROUNDS_A_FOLDER == 0) {
                checked(folder, inThisFolder);
                inThisFolder.clear();
                folder = temporary.resolve("data-" + lane + "-" + round);
            }
            List<String> said = killed(folder, child, random, opening);
            Map<String, String> acknowledged = new HashMap<>();
            said.stream().skip(1).forEach(line -> {
                String[] words = line.split(" ", -1);
                acknowledged.put(words[0] + " " + words[1] + " " + words[2] + " " + words[3], words[0]);
            });
            checked(folder, acknowledged);
            inThisFolder.putAll(acknowledged);
            tally = tally.plus(new Tally(said.isEmpty() ? 1 : 0, acknowledged.size(), (int)
                    acknowledged.values().stream().filter("file"::equals).count()));
        }
        checked(folder, inThisFolder);
        return tally;
    }

    /** One life of a writer, and the whole lines it said. One in six is killed before it has opened the store, or while. */
    private List<String> killed(Path folder, Child child, SplittableRandom random, List<Long> opening)
            throws IOException, InterruptedException {
        // To a file: what stands in a pipe is gone with the process.
        Path said = folder.resolveSibling(folder.getFileName() + ".said");
        Path errors = folder.resolveSibling(folder.getFileName() + ".errors");
        long started = System.nanoTime();
        Process process = child.start(said, errors, folder.toString(), String.valueOf(random.nextLong()));
        if (random.nextInt(6) == 0) {
            process.waitFor(random.nextLong(opening.get(opening.size() - 1)), TimeUnit.NANOSECONDS);
        } else {
            waitForLines(1, said, process);
            opening.add(System.nanoTime() - started);
            waitForLines(1 + random.nextInt(MOST_EDITS), said, process);
            process.waitFor(random.nextInt(8_000), TimeUnit.MICROSECONDS); // into the middle of the next
        }
        boolean alive = process.isAlive();
        cpuMillis.addAndGet(
                process.info().totalCpuDuration().orElse(Duration.ZERO).toMillis());
        process.destroyForcibly();
        process.waitFor();
        assertThat(alive)
                .as("the child ended by itself: " + Files.readString(errors))
                .isTrue();
        String whole = Files.readString(said, StandardCharsets.US_ASCII);
        return whole.substring(0, whole.lastIndexOf('\n') + 1).lines().toList(); // a line cut off acknowledged nothing
    }

    private static void waitForLines(int lines, Path said, Process process) throws IOException, InterruptedException {
        for (int turn = 0; turn < 30_000 && process.isAlive(); turn++) {
            if (Files.size(said) > 0
                    && Files.readAllLines(said, StandardCharsets.US_ASCII).size() >= lines) {
                return;
            }
            process.waitFor(2, TimeUnit.MILLISECONDS);
        }
    }

    /** The store opens, is whole, and has everything that was acknowledged; what came besides is whole too. */
    private static void checked(Path folder, Map<String, String> acknowledged) {
        if (acknowledged.isEmpty() && !Files.exists(folder.resolve("longthrow.db"))) {
            return;
        }
        try (Store store = Store.open(folder)) {
            assertThat(store.health())
                    .isEqualTo(new Health(List.of(), List.of(), List.of(), java.util.Optional.empty()));
            for (String line : acknowledged.keySet()) {
                String[] words = line.split(" ", -1);
                BuildId build = BuildId.parse(words[1]).orElseThrow();
                int number = Integer.parseInt(words[2]);
                if (words[0].equals("revision")) {
                    assertThat(store.at(build, number).entry().sha256())
                            .as(line)
                            .isEqualTo(words[3]);
                } else {
                    StoredFile file = store.files(build).stream()
                            .filter(one ->
                                    one.revision() == number && one.sha256().equals(words[3]))
                            .findFirst()
                            .orElseThrow(() -> new AssertionError("lost: " + line));
                    assertThat(store.content(file)).as(line).hasSize((int) file.bytes());
                }
            }
            for (BuildEntry build : store.builds()) {
                assertThat(store.history(build.id())).hasSize(build.latest());
            }
        }
    }

    /** How the writer is started: from few jars, with an archive of their classes, so that it is soon at its work. */
    private record Child(List<String> command) {
        static Child prepared(Path folder) throws IOException, InterruptedException {
            String classPath = Stream.concat(Stream.of(ownClasses(folder).toString()), libraries())
                    .collect(Collectors.joining(File.pathSeparator));
            Path library = nativeLibrary(folder);
            List<String> command = List.of(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-XX:TieredStopAtLevel=1",
                    "-XX:+UseSerialGC",
                    "-XX:-UsePerfData",
                    "-Xshare:auto",
                    "-Dorg.sqlite.lib.path=" + library.getParent(),
                    "-Dorg.sqlite.lib.name=" + library.getFileName(),
                    "-cp",
                    classPath,
                    KilledWriter.class.getName());
            Path archive = folder.resolve("classes.jsa");
            Process rehearsal = new Child(with(command, "-XX:ArchiveClassesAtExit=" + archive))
                    .start(
                            folder.resolve("said"),
                            folder.resolve("errors"),
                            folder.resolve("data").toString(),
                            "1",
                            "20");
            int code = rehearsal.waitFor();
            assertThat(code)
                    .as("the rehearsal: " + Files.readString(folder.resolve("errors")))
                    .isZero();
            return new Child(with(command, "-XX:SharedArchiveFile=" + archive));
        }

        private static List<String> with(List<String> command, String option) {
            List<String> longer = new ArrayList<>(command);
            longer.add(1, option);
            return longer;
        }

        Process start(Path said, Path errors, String... arguments) throws IOException {
            List<String> whole = new ArrayList<>(command);
            whole.addAll(List.of(arguments));
            return new ProcessBuilder(whole)
                    .redirectOutput(said.toFile())
                    .redirectError(errors.toFile())
                    .start();
        }

        private static Stream<String> libraries() {
            return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator, -1))
                    .filter(entry -> LIBRARIES.stream()
                            .anyMatch(name ->
                                    String.valueOf(Path.of(entry).getFileName()).startsWith(name)));
        }

        /** This package and its tests as a jar: an archive of classes takes no folders. */
        private static Path ownClasses(Path folder) throws IOException {
            Path jar = folder.resolve("own.jar");
            String place = "longthrow/workshop/store";
            try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(jar))) {
                for (Class<?> one : List.of(Store.class, KilledWriter.class)) {
                    Path root = Path.of(one.getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI());
                    try (Stream<Path> files = Files.walk(root.resolve(place))) {
                        for (Path file : files.toList()) {
                            String name = root.relativize(file).toString().replace(File.separatorChar, '/');
                            if (Files.isRegularFile(file)) {
                                out.putNextEntry(new JarEntry(name));
                                Files.copy(file, out);
                            } else if (one == Store.class) {
                                out.putNextEntry(new JarEntry(name + "/")); // Flyway looks for the folder of the schema
                            }
                        }
                    }
                }
            } catch (URISyntaxException e) {
                throw new IOException(e);
            }
            return jar;
        }

        /** Unpacked once for all children: a killed one could not delete its own copy. */
        private static Path nativeLibrary(Path folder) throws IOException {
            String name = LibraryLoaderUtil.getNativeLibName();
            Path library = folder.resolve(name);
            String resource = LibraryLoaderUtil.getNativeLibResourcePath() + "/" + name;
            try (InputStream in = Objects.requireNonNull(
                    LibraryLoaderUtil.class.getResourceAsStream(resource), "no " + resource + " on the class path")) {
                Files.copy(in, library);
            }
            return library;
        }
    }
}

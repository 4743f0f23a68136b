package longthrow.workshop;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A workshop over data of its own, and somebody who visits its pages over HTTP. */
abstract class OverHttp {
    @TempDir
    Path folder;

    Visitor visitor;

    @BeforeEach
    void open() {
        visitor = Visitor.in(folder);
    }

    @AfterEach
    void close() {
        visitor.close();
    }
}

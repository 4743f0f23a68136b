package longthrow.core.pipe;

/** The kernel that a timing class is asked for by name, as those on vector instructions lie beyond core. */
public final class NamedKernel {
    private NamedKernel() {}

    /** A kernel of the class named by the first argument; the plain one where there is none. */
    public static FlowKernel of(String... arguments) throws ReflectiveOperationException {
        return arguments.length == 0
                ? new PlainKernel()
                : Class.forName(arguments[0])
                        .asSubclass(FlowKernel.class)
                        .getDeclaredConstructor()
                        .newInstance();
    }
}

package longthrow.core.measure;

/**
 * What is set aside until it is read again.
 * @param place   in the build file
 * @param reading index of the one reading of the set there; -1 for all of it
 */
record Aside(String place, int reading) {
    static Aside all(String place) {
        return new Aside(place, -1);
    }

    boolean isWhole() {
        return reading < 0;
    }
}

package longthrow.buildfile.log;

import java.util.Arrays;

/** A growing row of whole numbers. */
final class Numbers {
    private int[] numbers = new int[16];
    private int size;

    void add(int number) {
        if (size == numbers.length) {
            numbers = Arrays.copyOf(numbers, size * 2);
        }
        numbers[size++] = number;
    }

    int size() {
        return size;
    }

    int get(int at) {
        return numbers[at];
    }

    void cutTo(int length) {
        size = length;
    }

    int[] toArray() {
        return Arrays.copyOf(numbers, size);
    }
}

package quietband.motion.signal;

import java.util.Arrays;

/** A stream of numbers with absolute indices: written at its end, read anywhere in what is still kept. */
public final class SignalStream {

    private double[] data = new double[1024];
    private long first;
    private int size;

    /** Index of the next number to be written. */
    public long end() {
        return first + size;
    }

    /** Index of the oldest number kept. */
    long first() {
        return first;
    }

    public void push(double v) {
        if (size == data.length) {
            data = Arrays.copyOf(data, 2 * size);
        }
        data[size++] = v;
    }

    public void push(double[] values, int n) {
        if (size + n > data.length) {
            data = Arrays.copyOf(data, Math.max(2 * data.length, size + n));
        }
        System.arraycopy(values, 0, data, size, n);
        size += n;
    }

    /** Adds to a number already written. */
    void add(long index, double v) {
        data[(int) (index - first)] += v;
    }

    public double get(long index) {
        return data[(int) (index - first)];
    }

    /** Copies n numbers from an index on. */
    public void copy(long index, int n, double[] into) {
        System.arraycopy(data, (int) (index - first), into, 0, n);
    }

    /** Forgets what is before an index, now or later. */
    public void dropBefore(long index) {
        int drop = (int) Math.min(size, index - first);
        if (drop > size / 2 && drop > 0) {
            System.arraycopy(data, drop, data, 0, size - drop);
            first += drop;
            size -= drop;
        }
    }

    /** Starts at an index other than 0; only while empty. */
    public void startAt(long index) {
        first = index;
    }
}

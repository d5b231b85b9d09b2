package quietband.window.bench;

import java.util.ArrayList;
import java.util.List;

/** One step that can be taken back: what it is called and how the variants differ before and after it. */
public sealed interface EditStep {

    /** For the menu, e.g. {@code stiffness x 12 N/mm}. */
    String label();

    /** Names what belongs together, such as all that is seen while dragging; empty when it stands alone. */
    String gesture();

    /** The variants after it. */
    Scene forward(Scene before);

    /** The variants before it. */
    Scene back(Scene after);

    /**
     * The variants and which of them is in view.
     *
     * @param variants at least one
     * @param current  its index
     */
    record Scene(List<DesignVariant> variants, int current) {

        public Scene {
            variants = List.copyOf(variants);
        }

        /** The one in view. */
        DesignVariant now() {
            return variants.get(current);
        }

        /** The same with the one in view replaced. */
        Scene with(DesignVariant changed) {
            List<DesignVariant> all = new ArrayList<>(variants);
            all.set(current, changed);
            return new Scene(all, current);
        }
    }

    /** The step between two scenes, as small as it can be told. */
    static EditStep between(String label, String gesture, Scene before, Scene after) {
        if (before.current() == after.current() && before.variants().size() == after.variants().size()) {
            DesignVariant a = before.now();
            DesignVariant b = after.now();
            if (before.with(b).equals(after) && a.name().equals(b.name()) && a.path().equals(b.path()) && a.files().equals(b.files())) {
                return words(label, gesture, before.current(), a.text(), b.text());
            }
        }
        return new Whole(label, gesture, before, after);
    }

    private static EditStep words(String label, String gesture, int variant, String a, String b) {
        int most = Math.min(a.length(), b.length());
        int head = 0;
        while (head < most && a.charAt(head) == b.charAt(head)) {
            head++;
        }
        int tail = 0;
        while (tail < most - head && a.charAt(a.length() - 1 - tail) == b.charAt(b.length() - 1 - tail)) {
            tail++;
        }
        return new Words(label, gesture, variant, head, a.substring(head, a.length() - tail),
            b.substring(head, b.length() - tail));
    }

    /** A stretch of one variant's text. */
    record Words(String label, String gesture, int variant, int at, String out, String in) implements EditStep {

        @Override
        public Scene forward(Scene before) {
            return swap(before, out, in);
        }

        @Override
        public Scene back(Scene after) {
            return swap(after, in, out);
        }

        private Scene swap(Scene scene, String from, String to) {
            List<DesignVariant> all = new ArrayList<>(scene.variants());
            String text = all.get(variant).text();
            all.set(variant, all.get(variant).withText(text.substring(0, at) + to + text.substring(at + from.length())));
            return new Scene(all, variant);
        }
    }

    /** Anything else: both scenes, which share what is the same. */
    record Whole(String label, String gesture, Scene before, Scene after) implements EditStep {

        @Override
        public Scene forward(Scene scene) {
            return after;
        }

        @Override
        public Scene back(Scene scene) {
            return before;
        }
    }
}

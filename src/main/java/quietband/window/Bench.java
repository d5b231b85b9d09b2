package quietband.window;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quietband.model.ModelException;
import quietband.model.ModelFile;
import quietband.platform.Assembly;

/**
 * All that is worked on in a window, without the window: the variants of a design, which of them is in view, every step that
 * led there, every step taken back, and what the files held when they were last read or written. Immutable.
 */
final class Bench {

    private final Step.Scene scene;
    private final ModelFile model;
    private final Trail past;
    private final Trail future;
    private final Map<Path, String> filed;

    private Bench(Step.Scene scene, ModelFile model, Trail past, Trail future, Map<Path, String> filed) {
        this.scene = scene;
        this.model = model;
        this.past = past;
        this.future = future;
        this.filed = Map.copyOf(filed);
    }

    /** A bench with the model of a file on it. */
    static Bench of(ModelFile file) {
        return of(file, true);
    }

    /** @param onDisk whether a file holds this text already */
    static Bench of(ModelFile file, boolean onDisk) {
        checkComputable(file);
        Variant first = new Variant("as filed", file.path(), file.text(), Map.of());
        return new Bench(new Step.Scene(List.of(first), 0), file, null, null,
            onDisk ? Map.of(file.path(), file.text()) : Map.of());
    }

    /** A platform that cannot be computed is refused like a value that cannot be read. */
    private static void checkComputable(ModelFile file) {
        file.design().platform().ifPresent(Assembly::new);
    }

    /** The model in view. */
    ModelFile model() {
        return model;
    }

    /** Every variant. */
    List<Variant> variants() {
        return scene.variants();
    }

    /** Index of the variant in view. */
    int current() {
        return scene.current();
    }

    /** The variant in view. */
    Variant variant() {
        return scene.now();
    }

    /** What undoing would take back; empty when there is nothing. */
    Optional<Step> undoable() {
        return Optional.ofNullable(past).map(Trail::step);
    }

    /** What redoing would bring back; empty when there is nothing. */
    Optional<Step> redoable() {
        return Optional.ofNullable(future).map(Trail::step);
    }

    /** How many steps can be taken back. */
    int depth() {
        return past == null ? 0 : past.size();
    }

    /** Whether a variant differs from its file, or has none. */
    boolean unsaved(Variant v) {
        return !v.text().equals(filed.get(v.path())) || !v.files().isEmpty();
    }

    /** Whether anything is unsaved. */
    boolean unsaved() {
        return scene.variants().stream().anyMatch(this::unsaved);
    }

    /** The text a file held when it was last read or written; empty for one that is not written yet. */
    Optional<String> filed(Path path) {
        return Optional.ofNullable(filed.get(path));
    }

    /**
     * The bench with what a path names set to a piece of YAML.
     *
     * @param gesture edits in a row with the same name, not empty, are one step
     * @throws ModelException                               when the changed model is wrong
     * @throws quietband.model.BadPath                      when the path leads nowhere
     * @throws quietband.platform.SingularPlatformException when its platform cannot be computed
     */
    Bench edit(String label, String gesture, String path, String yaml) {
        return take(label, gesture, model.withValue(path, yaml));
    }

    /** The bench with another model in the variant in view, such as one that was proposed. */
    Bench take(String label, String gesture, ModelFile changed) {
        if (changed.text().equals(model.text())) {
            return this;
        }
        checkComputable(changed);
        Variant v = variant();
        return step(label, gesture, scene.with(new Variant(v.name(), v.path(), changed.text(), v.files())), changed);
    }

    /** The same with files the changed model refers to that are not written yet. */
    Bench take(String label, ModelFile changed, Map<String, byte[]> files) {
        checkComputable(changed);
        Variant v = variant();
        Map<String, byte[]> all = new LinkedHashMap<>(v.files());
        all.putAll(files);
        return step(label, "", scene.with(new Variant(v.name(), v.path(), changed.text(), all)), changed.withFiles(all));
    }

    private Bench step(String label, String gesture, Step.Scene after, ModelFile now) {
        boolean same = !gesture.isEmpty() && past != null && past.step().gesture().equals(gesture);
        Step.Scene from = same ? past.step().back(scene) : scene;
        Step step = Step.between(label, gesture, from, after);
        return new Bench(after, now, Trail.plus(same ? past.rest() : past, step), null, filed);
    }

    /** The bench one step earlier; the same when there is none. */
    Bench undo() {
        return past == null ? this
            : at(past.step().back(scene), past.rest(), Trail.plus(future, past.step()));
    }

    /** The bench with the last step taken back done again; the same when there is none. */
    Bench redo() {
        return future == null ? this
            : at(future.step().forward(scene), Trail.plus(past, future.step()), future.rest());
    }

    private Bench at(Step.Scene to, Trail before, Trail behind) {
        return new Bench(to, to.now().equals(variant()) ? model : to.now().model(), before, behind, filed);
    }

    /**
     * A copy of the variant in view under a name of its own, in view from now on. What is not saved goes with it: the variant it was
     * copied from is again what its file holds, so that the two can be compared.
     */
    Bench keep(String name, Path path) {
        if (scene.variants().stream().anyMatch(v -> v.name().equals(name))) {
            throw new IllegalArgumentException("there is a variant '" + name + "' already; choose another name");
        }
        List<Variant> all = new ArrayList<>(scene.variants());
        Variant now = variant();
        all.add(new Variant(name, path, now.text(), now.files()));
        filed(now.path()).ifPresent(text -> all.set(current(), new Variant(now.name(), now.path(), text, Map.of())));
        Step.Scene after = new Step.Scene(all, all.size() - 1);
        return step("variant " + name, "", after, after.now().model());
    }

    /** The bench without a variant; the last one stays. */
    Bench drop(int index) {
        if (scene.variants().size() == 1) {
            return this;
        }
        List<Variant> all = new ArrayList<>(scene.variants());
        String name = all.remove(index).name();
        Step.Scene after = new Step.Scene(all, Math.min(scene.current() > index ? scene.current() - 1 : scene.current(),
            all.size() - 1));
        return step("drop " + name, "", after, after.now().equals(variant()) ? model : after.now().model());
    }

    /** The bench with another variant in view. Looking is no step: it is not undone. */
    Bench look(int index) {
        return index == scene.current() ? this
            : new Bench(new Step.Scene(scene.variants(), index), scene.variants().get(index).model(), past, future, filed);
    }

    /** The bench with variants that were kept from an earlier sitting, as one step that can be undone. */
    Bench recovered(Step.Scene kept) {
        ModelFile now = kept.now().model();
        checkComputable(now);
        return step("unsaved work taken up", "", kept, now);
    }

    /** The bench after a file was written or read anew. */
    Bench saved(Path path, String text) {
        Map<Path, String> now = new LinkedHashMap<>(filed);
        now.put(path, text);
        Step.Scene written = variant().path().equals(path) && !variant().files().isEmpty()
            ? scene.with(new Variant(variant().name(), path, variant().text(), Map.of())) : scene;
        return new Bench(written, model, past, future, now);
    }
}

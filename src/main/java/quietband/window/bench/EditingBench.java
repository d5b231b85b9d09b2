package quietband.window.bench;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import quietband.model.edit.ModelFile;
import quietband.platform.Assembly;

/**
 * All that is worked on in a window, without the window: the variants of a design, which of them is in view, every step that
 * led there, every step taken back, and what the files held when they were last read or written. Immutable.
 */
public final class EditingBench {

    private final EditStep.Scene scene;
    private final ModelFile model;
    private final EditHistory past;
    private final EditHistory future;
    private final Map<Path, String> filed;

    private EditingBench(EditStep.Scene scene, ModelFile model, EditHistory past, EditHistory future, Map<Path, String> filed) {
        this.scene = scene;
        this.model = model;
        this.past = past;
        this.future = future;
        this.filed = Map.copyOf(filed);
    }

    /** A bench with the model of a file on it. */
    public static EditingBench of(ModelFile file) {
        return of(file, true);
    }

    /** A bench with one variant; onDisk: a file holds this text already. */
    public static EditingBench of(ModelFile file, boolean onDisk) {
        checkComputable(file);
        DesignVariant first = new DesignVariant("saved", file.path(), file.text(), Map.of());
        return new EditingBench(new EditStep.Scene(List.of(first), 0), file, null, null,
            onDisk ? Map.of(file.path(), file.text()) : Map.of());
    }

    /** A platform that cannot be computed is refused like a value that cannot be read. */
    private static void checkComputable(ModelFile file) {
        file.design().platform().ifPresent(Assembly::new);
    }

    /** The model in view. */
    public ModelFile model() {
        return model;
    }

    /** Every variant. */
    public List<DesignVariant> variants() {
        return scene.variants();
    }

    /** Index of the variant in view. */
    public int current() {
        return scene.current();
    }

    /** The variant in view. */
    public DesignVariant variant() {
        return scene.now();
    }

    /** What undoing would take back; empty when there is nothing. */
    public Optional<EditStep> undoable() {
        return Optional.ofNullable(past).map(EditHistory::step);
    }

    /** What redoing would bring back; empty when there is nothing. */
    public Optional<EditStep> redoable() {
        return Optional.ofNullable(future).map(EditHistory::step);
    }

    /** How many steps can be taken back. */
    public int depth() {
        return past == null ? 0 : past.size();
    }

    /** Whether a variant differs from its file, or has none. */
    public boolean unsaved(DesignVariant v) {
        return !v.text().equals(filed.get(v.path())) || !v.files().isEmpty();
    }

    /** Whether anything is unsaved. */
    public boolean unsaved() {
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
    EditingBench edit(String label, String gesture, String path, String yaml) {
        return take(label, gesture, model.withValue(path, yaml));
    }

    /** The bench with another model in the variant in view, such as one that was proposed. */
    public EditingBench take(String label, String gesture, ModelFile changed) {
        if (changed.text().equals(model.text())) {
            return this;
        }
        checkComputable(changed);
        DesignVariant v = variant();
        return step(label, gesture, scene.with(new DesignVariant(v.name(), v.path(), changed.text(), v.files())), changed);
    }

    /** The same with files the changed model refers to that are not written yet. */
    public EditingBench take(String label, ModelFile changed, Map<String, byte[]> files) {
        checkComputable(changed);
        DesignVariant v = variant();
        Map<String, byte[]> all = new LinkedHashMap<>(v.files());
        all.putAll(files);
        return step(label, "", scene.with(new DesignVariant(v.name(), v.path(), changed.text(), all)), changed.withFiles(all));
    }

    private EditingBench step(String label, String gesture, EditStep.Scene after, ModelFile now) {
        boolean same = !gesture.isEmpty() && past != null && past.step().gesture().equals(gesture);
        EditStep.Scene from = same ? past.step().back(scene) : scene;
        EditStep step = EditStep.between(label, gesture, from, after);
        return new EditingBench(after, now, EditHistory.plus(same ? past.rest() : past, step), null, filed);
    }

    /** The bench one step earlier; the same when there is none. */
    public EditingBench undo() {
        return past == null ? this
            : at(past.step().back(scene), past.rest(), EditHistory.plus(future, past.step()));
    }

    /** The bench with the last step taken back done again; the same when there is none. */
    public EditingBench redo() {
        return future == null ? this
            : at(future.step().forward(scene), EditHistory.plus(past, future.step()), future.rest());
    }

    private EditingBench at(EditStep.Scene to, EditHistory before, EditHistory behind) {
        return new EditingBench(to, to.now().equals(variant()) ? model : to.now().model(), before, behind, filed);
    }

    /**
     * A copy of the variant in view under a name of its own, in view from now on. What is not saved goes with it: the variant it was
     * copied from is again what its file holds, so that the two can be compared.
     */
    public EditingBench keep(String name, Path path) {
        if (scene.variants().stream().anyMatch(v -> v.name().equals(name))) {
            throw new IllegalArgumentException("there is a variant '" + name + "' already; choose another name");
        }
        List<DesignVariant> all = new ArrayList<>(scene.variants());
        DesignVariant now = variant();
        all.add(new DesignVariant(name, path, now.text(), now.files()));
        filed(now.path()).ifPresent(text -> all.set(current(), new DesignVariant(now.name(), now.path(), text, Map.of())));
        EditStep.Scene after = new EditStep.Scene(all, all.size() - 1);
        return step("variant " + name, "", after, after.now().model());
    }

    /** The bench without a variant; the last one stays. */
    public EditingBench drop(int index) {
        if (scene.variants().size() == 1) {
            return this;
        }
        List<DesignVariant> all = new ArrayList<>(scene.variants());
        String name = all.remove(index).name();
        EditStep.Scene after = new EditStep.Scene(all, Math.min(scene.current() > index ? scene.current() - 1 : scene.current(),
            all.size() - 1));
        return step("drop " + name, "", after, after.now().equals(variant()) ? model : after.now().model());
    }

    /** The bench with another variant in view. Looking is no step: it is not undone. */
    public EditingBench look(int index) {
        return index == scene.current() ? this
            : new EditingBench(new EditStep.Scene(scene.variants(), index), scene.variants().get(index).model(), past, future, filed);
    }

    /** The bench with variants that were kept from an earlier sitting, as one step that can be undone. */
    public EditingBench recovered(EditStep.Scene kept) {
        ModelFile now = kept.now().model();
        checkComputable(now);
        return step("unsaved work restored", "", kept, now);
    }

    /** The bench after a file was written or read anew. */
    EditingBench saved(Path path, String text) {
        Map<Path, String> now = new LinkedHashMap<>(filed);
        now.put(path, text);
        EditStep.Scene written = variant().path().equals(path) && !variant().files().isEmpty()
            ? scene.with(new DesignVariant(variant().name(), path, variant().text(), Map.of())) : scene;
        return new EditingBench(written, model, past, future, now);
    }
}

package quietband.window.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.CRC32;

/** Keeps unsaved work in a folder of the user's own, so that it can be taken up again after a crash. */
public final class Recovery {

    private static final String HEAD = "quietband unsaved work 1";

    private final Path folder;

    /** Keeps unsaved work in a folder, a file for each model. */
    public Recovery(Path folder) {
        this.folder = folder;
    }

    /** The place of one model's unsaved work. */
    private Path file(Path model) {
        String whole = model.toAbsolutePath().normalize().toString();
        CRC32 sum = new CRC32();
        sum.update(whole.getBytes(StandardCharsets.UTF_8));
        return folder.resolve(model.getFileName() + "-" + Long.toHexString(sum.getValue()) + ".unsaved");
    }

    /** The user's own folder for such things. */
    public static Path usualFolder() {
        String state = System.getenv("XDG_STATE_HOME");
        String local = System.getenv("LOCALAPPDATA");
        Path base = state != null ? Path.of(state) : local != null ? Path.of(local)
            : Path.of(System.getProperty("user.home"), ".local", "state");
        return base.resolve("quietband");
    }

    /** Keeps the variants of a bench, or forgets them when nothing is unsaved. */
    public void keep(EditingBench bench) {
        Path model = bench.variants().get(0).path();
        if (!bench.unsaved()) {
            forget(model);
            return;
        }
        StringBuilder text = new StringBuilder(HEAD).append('\n').append(bench.current()).append('\n');
        for (DesignVariant v : bench.variants()) {
            text.append("variant\t").append(coded(v.name())).append('\t').append(coded(v.path().toString())).append('\t')
                .append(coded(v.text())).append('\n');
            v.files().forEach((name, bytes) -> text.append("file\t").append(coded(name)).append('\t')
                .append(Base64.getEncoder().encodeToString(bytes)).append('\n'));
        }
        ModelStore.writePrivate(file(model), text.append("end\n").toString().getBytes(StandardCharsets.UTF_8));
    }

    /**
     * What was kept of a model.
     *
     * @param scene     empty when there is nothing that can be read whole
     * @param setAside  where a damaged file now is; empty when there was none
     */
    public record Kept(Optional<EditStep.Scene> scene, Optional<Path> setAside) { }

    /** What was kept of a model; a file that cannot be read is set aside under another name. */
    public Kept kept(Path model) {
        Path file = file(model);
        try {
            Optional<String> text = ModelStore.text(file);
            return new Kept(text.map(t -> scene(t.lines().toList())), Optional.empty());
        } catch (IllegalArgumentException | IndexOutOfBoundsException | UncheckedIOException e) {
            return new Kept(Optional.empty(), Optional.of(setAside(file)));
        }
    }

    /** Renames a damaged file, so that it is neither in the way nor lost; where that cannot be done it stays. */
    private static Path setAside(Path file) {
        Path aside = file.resolveSibling(file.getFileName() + "." + System.currentTimeMillis() + ".damaged");
        try {
            return Files.move(file, aside);
        } catch (IOException e) {
            return file;
        }
    }

    private static EditStep.Scene scene(List<String> lines) {
        if (lines.size() < 4 || !lines.get(0).equals(HEAD) || !lines.get(lines.size() - 1).equals("end")) {
            throw new IllegalArgumentException("not whole");
        }
        List<DesignVariant> variants = new ArrayList<>();
        for (String line : lines.subList(2, lines.size() - 1)) {
            String[] part = line.split("\t", -1);
            if (part[0].equals("variant")) {
                variants.add(new DesignVariant(plain(part[1]), Path.of(plain(part[2])), plain(part[3]), Map.of()));
            } else {
                DesignVariant v = variants.remove(variants.size() - 1);
                Map<String, byte[]> files = new java.util.LinkedHashMap<>(v.files());
                files.put(plain(part[1]), Base64.getDecoder().decode(part[2]));
                variants.add(new DesignVariant(v.name(), v.path(), v.text(), files));
            }
        }
        int current = Integer.parseInt(lines.get(1));
        return new EditStep.Scene(variants, Math.max(0, Math.min(current, variants.size() - 1)));
    }

    /** Forgets what was kept of a model. */
    public void forget(Path model) {
        Path file = file(model);
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            throw new UncheckedIOException(file + " cannot be deleted: " + e.getMessage(), e);
        }
    }

    private static String coded(String text) {
        return Base64.getEncoder().encodeToString(text.getBytes(StandardCharsets.UTF_8));
    }

    private static String plain(String coded) {
        return new String(Base64.getDecoder().decode(coded), StandardCharsets.UTF_8);
    }
}

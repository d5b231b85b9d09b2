package quietband.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A small command line that reads a file of one kind, which is damaged.
 *
 * @param damaged the file, as the folder of the case names it
 * @param args    words; a word that is a file's name becomes its path, {@code OUT} the target
 */
record Recipe(String damaged, List<String> args) {

    private static final Path MODELS = Path.of("models");
    private static final String STIFFNESS = "platform.springs.corners.stiffness";

    /** A design of every block, small enough that an accident hits something that counts. */
    private static final String MODEL = """
        quietband: 1
        title: Fuzz
        oscillator:
          carrier: 10 MHz
          static_phase_noise: [{offset: 10 Hz, level: -138 dBc/Hz}, {offset: 1 kHz, level: -162 dBc/Hz}]
          resonator:
            sensitivity: {x: 0.35 ppb/g, y: -0.22 ppb/g, z: 0.48 ppb/g}
            support_resonance: {frequency: 6.2 kHz, q: 40}
        platform:
          mass: 210 g
          size: {x: 62 mm, y: 62 mm, z: 24 mm}
          springs:
            - name: corners
              at: [{x: 24 mm, y: 24 mm, z: 0 mm}, {x: -24 mm, y: 24 mm, z: 0 mm}, {x: -24 mm, y: -24 mm, z: 0 mm}, {x: 24 mm, y: -24 mm}]
              stiffness: {x: 16 N/mm, y: 16 N/mm, z: 17 N/mm}
              damping: {x: 4 N*s/m, y: 4 N*s/m, z: 4 N*s/m}
              loss_factor: 28 %
              mass: 0.6 g
          clearance: {x: 2 mm, y: 2 mm, z: 2.5 mm}
          stops: {stiffness: 400 N/mm, damping_ratio: 0.2}
          limits: {mass: 260 g}
        cancellation:
          sensor: {place: platform, bandwidth: 6 kHz, noise: 25 ug/rtHz, range: 20 g, cross_axis: 0.5 %}
          path: {sample_rate: 100 kHz, latency: 8 us, high_pass: {frequency: 0.3 Hz, order: 1}, filter: filter.csv, converter_bits: 16}
          tuning: {slope: 5 ppb/V, bandwidth: 40 kHz, range: 2 V, curvature: 2 %/V}
          error: {gain: 1 %, phase: -0.5 deg, delay: 2 us}
        vibration:
          axes: [x, y, z]
          gravity: -z
          random: {file: profile.csv}
          tones: [{name: rotor, frequency: 17 Hz, peak: 0.6 g, axis: z}]
          shock: {shape: half-sine, peak: 15 g, duration: 11 ms}
        requirement:
          band: {from: 10 Hz, to: 2 kHz}
          by: axis
          residual: [{frequency: 10 Hz, limit: 0.05 ppb/g}, {frequency: 2 kHz, limit: 0.05 ppb/g}]
          phase_noise: [{offset: 10 Hz, limit: -75 dBc/Hz}, {offset: 2 kHz, limit: -105 dBc/Hz}]
          jitter: {limit: 0.5 mrad, from: 10 Hz, to: 2 kHz}
          yield: {share: 90 %, confidence: 90 %}
        tolerances:
          - {name: rate, of: platform.springs.corners.stiffness, scale: 3 %, distribution: truncated, truncate_at: 9 %}
          - {name: gain, of: cancellation.error.gain, add: 0.5 %, distribution: normal}
          - {name: phase, of: cancellation.error.phase, add: 0.15 deg, distribution: normal}
          - {name: crystal, of: oscillator.resonator.sensitivity, lot: lot.csv}
        correlations: [{between: [gain, phase], coefficient: 0.5}]
        conditions:
          - {name: cold, change: [{of: platform.springs.corners.stiffness, scale: +20 %}]}
        """;

    /** Every pristine file, by name. */
    static Map<String, String> files() {
        Map<String, String> files = new LinkedHashMap<>();
        files.put("model.yaml", MODEL);
        files.put("other.yaml", MODEL.replace("16 N/mm", "15 N/mm"));
        files.put("rough.yaml", shipped("rough-ride.yaml", 100));
        files.put("ride.yaml", files.get("rough.yaml").replaceAll("random: .*", "random: {file: profile.csv}"));
        files.put("profile.csv", shipped("profiles/rotor-cabin.csv", 100));
        files.put("lot.csv", shipped("lots/ridge-lot.csv", 100));
        files.put("unsorted.csv", shipped("lots/unsorted-lot.csv", 20));
        files.put("filter.csv", shipped("ridge-relay-filter.csv", 100));
        files.put("coils.csv", shipped("catalogue/coil-springs.csv", 100));
        files.put("supports.csv", shipped("supports.csv", 6));
        files.put("shaker.csv", shipped("runs/ridge-shaker.csv", 60));
        files.put("tip.csv", "serial,axis,sense,output_hz,time_s\nA,x,+,10000000.0035,0\nA,x,-,9999999.9965,10\nA,y,+,9999999.9978,20\n"
            + "A,y,-,10000000.0022,30\nA,z,+,10000000.0048,40\nA,z,-,9999999.9952,50\n");
        files.put("trim-off.csv", unit("runs/trim-off.csv"));
        files.put("trim-on.csv", unit("runs/trim-on.csv"));
        files.put("shelf.csv", shipped("runs/ridge-built-shelf.csv", 30));
        files.put("path.csv", shipped("runs/ridge-built-path.csv", 200));
        files.put("motion.csv", record("time_s,x_g,z_g", 200));
        files.put("record.csv", record("time_s,drive_g,response_g", 1000));
        files.put("summary.json", "{\"command\":\"tolerance\",\"model_hash\":\"HASH\",\"units\":20000,\"yield\":{\"estimate\":0.95,"
            + "\"low\":0.94,\"high\":0.96,\"confidence\":0.95}}");
        return files;
    }

    /** One for every kind of file that a command reads. */
    static List<Recipe> all() {
        List<Recipe> all = new ArrayList<>();
        for (String file : List.of("model.yaml", "model.yaml", "profile.csv", "lot.csv", "filter.csv", "summary.json")) {
            all.add(of(file, "assess model.yaml --points 12 --check --out OUT"));
        }
        all.add(of("rough.yaml", "assess rough.yaml --points 12 --format json --out OUT"));
        all.add(of("rough.yaml", "simulate rough.yaml --drive dwell --axis x --duration;30 ms --out OUT"));
        all.add(of("model.yaml", "simulate model.yaml --drive shock --axis z --points 5 --out OUT"));
        all.add(of("profile.csv", "simulate ride.yaml --drive random --axis x --duration;100 ms --points 5 --out OUT"));
        all.add(of("motion.csv", "simulate rough.yaml --drive record --record motion.csv --points 5 --out OUT"));
        all.add(of("motion.csv", "simulate rough.yaml --drive record --record motion.csv --points 5 --linear --out OUT"));
        all.add(of("model.yaml", "tolerance model.yaml --units 20 --points 5 --check --out OUT"));
        all.add(of("lot.csv", "tolerance model.yaml --units 20 --points 5 --out OUT"));
        all.add(of("model.yaml", "tolerance model.yaml --replay 3 --out OUT"));
        all.add(of("other.yaml", "compare model.yaml other.yaml --points 10 --out OUT"));
        all.add(of("shelf.csv", "compare model.yaml shelf.csv --points 10 --out OUT"));
        all.add(of("path.csv", "compare model.yaml path.csv --points 10 --out OUT"));
        all.add(of("model.yaml", "springs model.yaml --natural-frequency;90 Hz --damping 0.2 --out OUT"));
        all.add(of("model.yaml", "springs model.yaml --measured;71.2, 69.8, 84.0 Hz --out OUT"));
        all.add(of("coils.csv", "springs rough.yaml --natural-frequency;60 Hz --catalogue coils.csv --check --out OUT"));
        all.add(of("model.yaml", "filter model.yaml --count 2 --points 10 --out OUT"));
        all.add(of("filter.csv", "filter model.yaml --count 2 --points 10 --out OUT"));
        all.add(of("path.csv", "filter model.yaml --response path.csv --count 2 --points 10 --out OUT"));
        all.add(of("trim-off.csv", "filter model.yaml --trim trim-off.csv trim-on.csv --out OUT"));
        all.add(of("trim-on.csv", "filter model.yaml --trim trim-off.csv trim-on.csv --out OUT"));
        all.add(of("supports.csv", "orient model.yaml --goal axis --supports supports.csv --points 10 --out OUT"));
        all.add(of("model.yaml", "orient model.yaml --goal axis --points 10 --out OUT"));
        all.add(of("model.yaml", "trade model.yaml --vary;" + STIFFNESS + " = 12 N/mm to 18 N/mm, 2 steps --out OUT"));
        all.add(of("model.yaml", "shaker --plan model.yaml --out OUT"));
        all.add(of("shaker.csv", "shaker shaker.csv --carrier;10 MHz --out OUT"));
        all.add(of("shaker.csv", "shaker shaker.csv tip.csv --carrier;10 MHz --out OUT"));
        all.add(of("tip.csv", "shaker tip.csv --carrier;10 MHz --out OUT"));
        for (String rows : List.of("stop", "refuse", "keep")) {
            all.add(of("unsorted.csv", "sort unsorted.csv --limit;0.6 ppb/g --risk;2 % --bad-rows " + rows + " --out OUT"));
        }
        all.add(of("shelf.csv", "fit model.yaml shelf.csv --measured transmissibility --free " + STIFFNESS + " --out OUT"));
        all.add(of("path.csv", "fit model.yaml path.csv --measured path --free cancellation.error.gain --out OUT"));
        all.add(of("record.csv", "fit model.yaml record.csv --measured transmissibility --axis x --free " + STIFFNESS + " --out OUT"));
        all.add(of("model.yaml", "fit model.yaml shelf.csv --measured transmissibility --free " + STIFFNESS + " --out OUT"));
        return all;
    }

    /** Whether the command line, or the model it names, reads this file. */
    boolean reads(String file) {
        return args.contains(file) || List.of(damaged, "profile.csv", "lot.csv", "filter.csv").contains(file);
    }

    /** An option that is followed by a semicolon has all up to the next option as one value. */
    private static Recipe of(String damaged, String line) {
        List<String> words = new ArrayList<>();
        for (String part : line.split(" (?=--)")) {
            int value = part.indexOf(';');
            if (value < 0) {
                words.addAll(List.of(part.split(" ")));
            } else {
                words.addAll(List.of(part.substring(0, value), part.substring(value + 1)));
            }
        }
        return new Recipe(damaged, words);
    }

    private static String shipped(String name, int lines) {
        try {
            return Files.readAllLines(MODELS.resolve(name)).stream().limit(lines).collect(Collectors.joining("\n", "", "\n"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The rows of one unit of a trim, three for each axis. */
    private static String unit(String name) {
        String[] lines = shipped(name, Integer.MAX_VALUE).split("\n");
        String header = lines[1];
        StringBuilder text = new StringBuilder(header).append('\n');
        for (String axis : List.of("x", "y", "z")) {
            java.util.Arrays.stream(lines).filter(l -> l.startsWith("RR-07," + axis)).limit(12).forEach(l -> text.append(l).append('\n'));
        }
        return text.toString();
    }

    private static String record(String header, int rows) {
        StringBuilder text = new StringBuilder(header).append('\n');
        for (int i = 0; i < rows; i++) {
            double t = i / 5000.0;
            double turn = 900 * t * (1 + t);
            text.append(String.format(Locale.ROOT, "%.5f,%.6f,%.6f\n", t, Math.sin(turn), 0.6 * Math.sin(turn - 0.4)));
        }
        return text.toString();
    }
}

package quietband.identification.trim;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import quietband.identification.FitException;
import quietband.model.Axis;
import quietband.model.Design;
import quietband.model.Rotation;
import quietband.model.Vec;
import quietband.model.edit.ModelFile;
import quietband.response.verdict.Assessor;
import quietband.response.verdict.StackVerdict;
import quietband.units.Amounts;
import quietband.units.Dimension;
import quietband.units.Unit;

/**
 * Trims a cancellation from two shaker runs with phase, cancellation off and on: gain, phase and delay error of each sensor's path,
 * and the weights that leave least.
 *
 * @param model  the units were built to
 * @param bolted whether they stood on the shaker without their platform
 * @param units  in the order of the file
 * @param notes  notes, sentences without a full stop
 */
public record PathTrim(ModelFile model, boolean bolted, List<TrimmedUnit> units, List<String> notes) {

    public PathTrim {
        units = List.copyOf(units);
        notes = List.copyOf(notes);
    }

    /**
     * Reads two runs and trims every unit in them.
     *
     * @throws FitException                  when the model or the runs do not allow it
     * @throws quietband.model.ModelException with every problem of a file
     */
    public static PathTrim of(ModelFile model, Path off, Path on, boolean bolted) {
        Design design = model.design();
        if (design.cancellation().isEmpty()) {
            throw new FitException("the model has no cancellation to trim; add a cancellation block with sensor and path");
        }
        if (bolted && design.platform().isEmpty()) {
            throw new FitException("--bolted: the model has no platform to leave out; drop the option");
        }
        TrimRun without = TrimRun.read(off);
        TrimRun with = TrimRun.read(on);
        TrimRun.check(without, with);
        List<TrimmedUnit> units = new ArrayList<>();
        for (String serial : without.units().keySet()) {
            units.add(TrimSolver.of(design, bolted, serial, without.units().get(serial), with.units().get(serial)));
        }
        List<String> notes = new ArrayList<>();
        boolean told = with.units().values().stream().anyMatch(u -> !Double.isNaN(u.get(Axis.X).get(0).weightPerG()));
        if (units.size() > 1 && !told) {
            notes.add("every unit is taken to have run with the weights of the model; where each had its own, give them in "
                + with.file() + " as weight_ppb_per_g");
        }
        return new PathTrim(model, bolted, units, notes);
    }

    /** The model of a unit: errors, weights in the run and sensitivity as found. */
    public ModelFile found(TrimmedUnit unit) {
        return written(unit, unit.axes().stream().mapToDouble(TrimmedUnit.Sensor::weightPerG).toArray(), true);
    }

    /** The same with the new weights. */
    public ModelFile trimmed(TrimmedUnit unit) {
        return written(unit, unit.axes().stream().mapToDouble(s -> s.newWeight().value()).toArray(), true);
    }

    /** The same without any error and with the unit's own sensitivity as weights: what a filter that absorbs the errors leaves. */
    public ModelFile absorbed(TrimmedUnit unit) {
        return written(unit, unit.sensitivityPerG().toArray(), false);
    }

    /** What the fullest stack of a model does. */
    public static StackVerdict verdict(ModelFile model) {
        var assessment = Assessor.assess(model.design());
        return assessment.verdict(assessment.fullest());
    }

    private ModelFile written(TrimmedUnit unit, double[] weights, boolean errors) {
        List<TrimmedUnit.Sensor> axes = unit.axes();
        Rotation turn = model.design().oscillator().resonator().orientation();
        Map<String, String> values = new LinkedHashMap<>();
        values.put("oscillator.resonator.sensitivity", map(turnedBack(turn, unit.sensitivityPerG()).toArray(), Dimension.SENSITIVITY,
            "ppb/g"));
        values.put("cancellation.weights", map(weights, Dimension.SENSITIVITY, "ppb/g"));
        values.put("cancellation.error.gain", map(axes.stream().mapToDouble(s -> errors ? known(s.gain()) : 0).toArray(),
            Dimension.RATIO, "%"));
        values.put("cancellation.error.phase", map(axes.stream().mapToDouble(s -> errors ? known(s.phase()) : 0).toArray(),
            Dimension.ANGLE, "deg"));
        values.put("cancellation.error.delay", map(axes.stream().mapToDouble(s -> errors ? known(s.delay()) : 0).toArray(),
            Dimension.TIME, "us"));
        return model.withValues(values);
    }

    private static double known(TrimmedUnit.Found found) {
        return Double.isNaN(found.value()) ? 0 : found.value();
    }

    private static Vec turnedBack(Rotation turn, Vec mounted) {
        return turn.isNone() ? mounted : new Rotation(turn.axis(), -turn.angle()).apply(mounted);
    }

    private static String map(double[] v, Dimension dimension, String name) {
        Unit unit = dimension.unit(name).orElseThrow();
        return "{x: " + Amounts.print(v[0], unit) + ", y: " + Amounts.print(v[1], unit) + ", z: " + Amounts.print(v[2], unit) + "}";
    }
}

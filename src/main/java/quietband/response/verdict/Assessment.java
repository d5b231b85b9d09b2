package quietband.response.verdict;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import quietband.demand.RequirementResult;
import quietband.model.Design;
import quietband.model.Stack;
import quietband.response.ModeProperties;
import quietband.response.travel.Travel;

/**
 * Everything that the frequency domain says of one design.
 *
 * @param design        what was assessed
 * @param verdicts      coverage and worst point per stack, fullest last
 * @param requirements  each requirement
 * @param modes         of the platform; empty without one
 * @param travel        of the platform; empty without one
 * @param rmsG          overall level of the driven axes x, y, z, g (length 3)
 * @param jitter        integrated phase noise per row, x, y, z or all
 * @param tones         sidebands of tones
 * @param warnings      where the linear figures stop holding
 */
public record Assessment(Design design, List<StackVerdict> verdicts, List<RequirementResult> requirements,
                         List<ModeProperties> modes, Optional<Travel> travel, double[] rmsG, List<RowJitter> jitter,
                         List<ToneSideband> tones, List<String> warnings) {

    public Assessment {
        verdicts = List.copyOf(verdicts);
        requirements = List.copyOf(requirements);
        modes = List.copyOf(modes);
        jitter = List.copyOf(jitter);
        tones = List.copyOf(tones);
        warnings = List.copyOf(warnings);
    }

    /** Integrated phase noise of the fullest stack on a row (x, y, z or all), rad rms. */
    public record RowJitter(String row, double rmsRad) { }

    /** The same with warnings that come before its own, such as what is odd in the model's file. */
    public Assessment after(List<String> first) {
        return new Assessment(design, verdicts, requirements, modes, travel, rmsG, jitter, tones,
            Stream.concat(first.stream(), warnings.stream()).toList());
    }

    /** The fullest stack. */
    public Stack fullest() {
        return Stack.fullest(design);
    }

    /** The verdict of a stack. */
    public StackVerdict verdict(Stack stack) {
        return verdicts.stream().filter(v -> v.stack() == stack).findFirst().orElseThrow();
    }

    /** Whether every requirement is met; empty when nothing is stated. */
    public Optional<Boolean> requirementMet() {
        return requirements.isEmpty() ? Optional.empty()
            : Optional.of(requirements.stream().allMatch(RequirementResult::met));
    }

    /** The largest jitter over the rows, rad rms; 0 when there is no row. */
    public double worstJitterRad() {
        return jitter.stream().mapToDouble(RowJitter::rmsRad).max().orElse(0);
    }
}

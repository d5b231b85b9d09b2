package quietband.tuning;

import java.util.List;

/**
 * Three networks found for a task.
 *
 * @param task     what was asked; its count is the number of poles
 * @param networks for x, y and z
 * @param ideal    the goal with parts of any value: norm (1/g), ratio to the limit, or integrated noise (rad)
 * @param value    the goal with the parts as they are made
 */
public record AnalogFound(FilterTask task, List<AnalogNetwork> networks, double ideal, double value) {

    public AnalogFound {
        networks = List.copyOf(networks);
    }
}

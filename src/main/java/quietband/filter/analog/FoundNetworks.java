package quietband.filter.analog;

import java.util.List;
import quietband.filter.AnalogNetwork;
import quietband.filter.FilterTask;
import quietband.model.Vec;

/**
 * Three networks found for a task.
 *
 * @param task     what was asked; its count is the number of poles
 * @param networks for x, y and z
 * @param ideal    the goal with parts of any value: norm (1/g), ratio to the limit, or integrated noise (rad)
 * @param value    the goal with the parts as they are made
 * @param factor   by which each weight should change, to make up for the steps of the parts' gain
 * @param weighted the goal with the weights changed so
 */
public record FoundNetworks(FilterTask task, List<AnalogNetwork> networks, double ideal, double value, Vec factor, double weighted) {

    public FoundNetworks {
        networks = List.copyOf(networks);
    }
}

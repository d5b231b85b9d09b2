package quietband.window;

import java.util.List;
import java.util.Optional;
import quietband.response.Assessment;
import quietband.response.FrequencyTable;
import quietband.tuning.Gap;

/**
 * What is computed behind the first picture: the same figures that {@code assess} gives for the model.
 *
 * @param view       what they are of
 * @param assessment the verdict
 * @param gaps       with causes and cures; empty while they are searched
 * @param table      phase noise and causes over frequency; empty while it is computed
 */
record Figures(View view, Assessment assessment, Optional<List<Gap>> gaps, Optional<FrequencyTable> table) { }

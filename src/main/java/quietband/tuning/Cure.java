package quietband.tuning;

import java.util.List;

/**
 * A change of some values with which a gap just closes.
 *
 * @param key      what is changed, as files name it; with + between two
 * @param words    the same for people
 * @param settings each value as it is and as it would just hold
 * @param marginDb least margin in the gap and around it with the change, dB: 0 within what a search can do
 * @param breaks   requirements that are met as the design is and not with the change
 */
public record Cure(String key, String words, List<Setting> settings, double marginDb, List<String> breaks) {

    public Cure {
        settings = List.copyOf(settings);
        breaks = List.copyOf(breaks);
    }
}

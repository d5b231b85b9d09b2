package quietband.tuning.springs;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import quietband.model.edit.ModelFile;
import quietband.numerics.BoundedSearch;
import quietband.response.verdict.DesignMargins;

/** The search over twelve free values, on a model that is judged quickly; {@link HoldSearchWork} does ten targets and a longer search. */
class HoldSearchTest {

    @Test
    void a_target_made_from_a_known_design_is_met() {
        ModelFile target = HoldSearchWork.target(HoldSearchWork.plain(), 2);
        BoundedSearch.Result r = HoldSearchWork.searched(target, 2);
        DesignMargins margins = DesignMargins.of(new HoldSearch(target.design(), true).design(r.best().x()));
        assertThat(margins.worstOver()).isLessThanOrEqualTo(0);
        assertThat(margins.marginDb()).isGreaterThanOrEqualTo(0);
    }

    @Test
    void a_random_search_as_long_finds_nothing_better_by_more_than_a_hundredth() {
        BoundedSearch.Result r = HoldSearchWork.searched(HoldSearchWork.plain(), 1);
        BoundedSearch.Score random = HoldSearchWork.random(HoldSearchWork.plain(), r.looks(), 1);
        // 1 % of a residual is 0.086 dB
        assertThat(r.best().score().cost()).isLessThan(random.cost() + 0.086);
        assertThat(r.best().score().over()).isLessThanOrEqualTo(0);
    }
}

package quietband.model.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pieces of text: edits by offset, one-line YAML that reads back, aliases written out, words that were meant. */
class TextEditsTest {

    @Test
    void edits_are_made_together_and_everything_else_stays() {
        TextEdits edits = new TextEdits("mass: 1 kg # light\r\nsize: 2 m\r\n");
        edits.replace(26, 29, "3 m");
        edits.replace(6, 10, "4\nkg");
        assertThat(edits.exchangesOneValue()).isFalse();
        // line ends are those of the text
        assertThat(edits.apply()).isEqualTo("mass: 4\r\nkg # light\r\nsize: 3 m\r\n");
        assertThat(edits.replaced()).contains("2 m");
    }

    @Test
    void edits_that_touch_are_not_joined_and_leave_the_first_as_they_were() {
        String text = "a: 1, b: 2, c: 3";
        TextEdits first = edit(text, 3, 4, "10");
        assertThat(first.join(edit(text, 9, 10, "20"))).isTrue();
        assertThat(first.join(edit(text, 4, 5, ";"))).isFalse();
        assertThat(first.apply()).isEqualTo("a: 10, b: 20, c: 3");
        assertThat(edit(text, 3, 4, "10").exchangesOneValue()).isTrue();
        assertThat(edit(text, 3, 4, "{x: 1}").exchangesOneValue()).isFalse();
        assertThat(edit(text, 3, 3, "10").exchangesOneValue()).isFalse();
    }

    private static TextEdits edit(String text, int start, int end, String value) {
        TextEdits edits = new TextEdits(text);
        edits.replace(start, end, value);
        return edits;
    }

    @Test
    void a_key_is_added_behind_those_before_it_and_taken_out_with_its_comment() {
        String text = "a: 1\n# of its own\nc: 3   # three\nd:\n  e: 5\n";
        YamlNode map = YamlReader.read("m.yaml", text);
        TextEdits insert = new TextEdits(text);
        insert.insert(map, List.of("a", "b", "c", "d"), "b", "2");
        assertThat(insert.apply()).isEqualTo("a: 1\nb: 2\n# of its own\nc: 3   # three\nd:\n  e: 5\n");
        TextEdits remove = new TextEdits(text);
        remove.remove(map, 1);
        assertThat(remove.apply()).isEqualTo("a: 1\n# of its own\nd:\n  e: 5\n");
        TextEdits last = new TextEdits(text);
        last.remove(map.get("d"), 0);
        assertThat(YamlReader.read("m.yaml", last.apply()).get("d").pairs()).isEmpty();
        String flow = "{a: 1, b: 2, c: 3}";
        for (int i = 0; i < 3; i++) {
            TextEdits out = new TextEdits(flow);
            out.remove(YamlReader.read("m.yaml", flow), i);
            assertThat(out.apply()).isEqualTo(List.of("{b: 2, c: 3}", "{a: 1, c: 3}", "{a: 1, b: 2}").get(i));
        }
    }

    /** Whatever is quoted reads back as itself, and stands on one line. */
    @Test
    void any_text_in_quotes_reads_back_as_itself() {
        Random random = new Random(3);
        String odd = "\"\\\n\t\u0085\u2028\u00a0\u007f #:,[]{}&*!|>'%@`~-?äµ\u0007";
        for (int i = 0; i < 500; i++) {
            StringBuilder text = new StringBuilder();
            for (int k = random.nextInt(12); k >= 0; k--) {
                text.append(odd.charAt(random.nextInt(odd.length())));
            }
            String quoted = FlowText.quoted(text.toString());
            assertThat(quoted).doesNotContain("\n");
            assertThat(YamlReader.read("m.yaml", "k: " + quoted).get("k").text()).isEqualTo(text.toString());
        }
    }

    @Test
    void a_node_on_one_line_means_the_same_and_aliases_are_written_out() {
        String text = "base: &b\n  x: 1 mm   # one\n  y: 'two, three'\nother: *b\nlist:\n  - *b\n  - plain text\n";
        YamlNode root = YamlReader.read("m.yaml", text);
        assertThat(FlowText.of(root.get("base"), text)).isEqualTo("{x: 1 mm, y: 'two, three'}");
        String expanded = YamlAliases.expand(text, root);
        assertThat(expanded).doesNotContain("*b").doesNotContain("&b").contains("# one");
        YamlNode again = YamlReader.read("m.yaml", expanded);
        assertThat(FlowText.of(again, expanded)).isEqualTo("{base: {x: 1 mm, y: 'two, three'}, other: {x: 1 mm, y: 'two, three'}, "
            + "list: [{x: 1 mm, y: 'two, three'}, plain text]}");
    }

    @ParameterizedTest
    @CsvSource({"stifness, stiffness", "Stiffness, stiffness", "stiffenss, stiffness", "loss-factor, loss_factor", "masss, mass",
        "turn, orientation", "sitffness, stiffness"})
    void a_slip_of_the_pen_or_a_former_name_is_known_again(String written, String meant) {
        assertThat(SpellingSuggestion.advice(written, List.of("stiffness", "mass", "loss_factor", "orientation"), "none"))
            .contains("'" + meant + "'");
    }

    // a third of the letters may be wrong, three at the most; two letters are no word to guess from
    @ParameterizedTest
    @CsvSource({"damping", "stfnsx", "ms", "stiffness_of_springs"})
    void what_is_too_far_from_every_word_gets_the_other_advice(String written) {
        assertThat(SpellingSuggestion.advice(written, List.of("stiffness", "mass", "loss_factor"), "none")).isEqualTo("none");
    }

    @Test
    void problems_come_in_the_order_of_the_file_once_each_and_a_hundred_at_the_most() {
        FileProblems problems = new FileProblems("m.yaml");
        for (int i = 150; i > 0; i--) {
            problems.add(new FileProblem("m.yaml", i, 2, "a.b", "is wrong", "mend it"));
            problems.add(new FileProblem("m.yaml", i, 2, "a.b", "is wrong", "mend it"));
        }
        assertThat(problems.full()).isTrue();
        ModelException e = org.assertj.core.api.Assertions.catchThrowableOfType(ModelException.class, problems::check);
        assertThat(e.problems()).hasSize(100);
        assertThat(e.problems().get(0).toString()).isEqualTo("m.yaml:51:2: a.b: is wrong; mend it");
        assertThat(new FileProblem("m.yaml", 0, 0, "", "is empty", "").toString()).isEqualTo("m.yaml: is empty");
        assertThat(FormerNames.now("seated", List.of("bonded", "compression_only"))).isEqualTo(Optional.of("compression_only"));
        assertThat(FormerNames.now("limits", List.of("limits", "truncate_at"))).isEmpty();
    }
}

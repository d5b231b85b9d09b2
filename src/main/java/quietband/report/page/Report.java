package quietband.report.page;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import quietband.model.Design;
import quietband.model.edit.ModelBundle;
import quietband.report.file.CsvWriter;
import quietband.report.file.Json;
import quietband.report.file.NumberFormat;
import quietband.report.file.Provenance;
import quietband.report.file.ResultDirectory;
import quietband.report.svg.Picture;
import quietband.response.verdict.Assessment;
import quietband.work.ParallelWork;

/**
 * What a finished result says, and the one writer of it: models, tables, pictures, {@code summary.json} and {@code report.html} go
 * into the result's directory, the summary or a text to the terminal. Every page has head and caution, summary and text end with
 * what the figures are no proof of.
 */
public final class Report {

    private final String title;
    private final Provenance from;
    private final Map<String, ResultDirectory.Content> files = new LinkedHashMap<>();
    private final List<Part> parts = new ArrayList<>();
    private final List<String> lines = new ArrayList<>();
    private String note = Caution.PREDICTION;
    private boolean readings;
    private Optional<Design> design = Optional.empty();
    private PageHead head;
    private String summary = "";

    /**
     * An empty one.
     *
     * @param title what the page is headed with; the input's name when it is empty
     */
    public Report(String title, Provenance from) {
        this.title = title.isEmpty() ? from.input() : title;
        this.from = from;
    }

    /** Writes the cells of all rows of a table and ends each row. */
    @FunctionalInterface
    public interface Rows {
        /** Called once, after the header. */
        void to(CsvWriter table) throws IOException;
    }

    /** Writes the cells of one row, which is ended afterwards. */
    @FunctionalInterface
    public interface Row<T> {
        /** Called for each row in order. */
        void to(CsvWriter table, T of) throws IOException;
    }

    /** What the page is headed with. */
    public String title() {
        return title;
    }

    /** The design that the figures are of: its assumptions and resonances are told. */
    public Report of(Design of) {
        design = Optional.of(of);
        return this;
    }

    /** Its figures come from readings, not from a model. */
    public Report fromReadings() {
        readings = true;
        note = Caution.READINGS;
        return this;
    }

    /** Cautions of the page, paragraph by paragraph. */
    public List<String> cautions() {
        return readings ? List.of("Caution. " + Caution.READINGS) : design.map(Caution::paragraphs)
            .orElse(List.of("Caution. " + Caution.TEXT));
    }

    /** What the model assumes; empty for readings. */
    public String assumptions() {
        return readings ? "" : design.map(Caution::assumptions).orElse("");
    }

    /** Says nothing of a prediction at the end of summary and text: for what predicts nothing, or says more itself. */
    public Report withoutNote() {
        note = "";
        return this;
    }

    /** A file of any content; it is written when the result is, perhaps by a thread beside. */
    public Report file(String name, ResultDirectory.Content content) {
        files.put(name, content);
        return this;
    }

    /** A model with the files it refers to, as {@code model.yaml} in a folder of the result; empty: in the result itself. */
    public Report model(String folder, ModelBundle bundle) {
        file(folder + "model.yaml", w -> w.write(bundle.text()));
        bundle.files().forEach((name, bytes) -> file(folder + name, w -> w.write(new String(bytes, StandardCharsets.UTF_8))));
        return this;
    }

    /** A CSV file. */
    public Report table(String name, List<String> columns, Rows rows) {
        return file(name, w -> rows.to(new CsvWriter(w, columns)));
    }

    /**
     * A CSV file with a row for each of some things.
     *
     * @param columns their names, separated by commas
     */
    public <T> Report table(String name, String columns, Iterable<T> of, Row<T> row) {
        return table(name, List.of(columns.split(",")), of, row);
    }

    /** A CSV file with a row for each of some things. */
    public <T> Report table(String name, List<String> columns, Iterable<T> of, Row<T> row) {
        return table(name, columns, table -> {
            for (T each : of) {
                row.to(table, each);
                table.end();
            }
        });
    }

    /** The fields of the summary between provenance and note. */
    public Report summary(Consumer<Json> fields) {
        Json json = new Json();
        json.object(() -> {
            from.fields(json);
            fields.accept(json);
            if (!note.isEmpty()) {
                json.field("note", note);
            }
        });
        summary = json.text();
        return file("summary.json", w -> w.write(summary));
    }

    /**
     * The head of the page.
     *
     * @param verdict in capitals
     * @param kind    holds, fails or none: how the verdict looks
     * @param why     what is tightest or broken
     */
    public Report head(String verdict, String kind, String why) {
        head = new PageHead(title, verdict, kind, why, from, PageHead.today());
        return page(() -> PageTemplates.render("plain.jte", this));
    }

    /** The head of a page whose verdict is an assessment's. */
    public Report verdict(Assessment a, String why) {
        return head(VerdictSentence.words(a), VerdictSentence.kind(a), why);
    }

    /** A page of another template. */
    public Report page(Supplier<String> html) {
        return file("report.html", w -> w.write(html.get()));
    }

    /** A picture that is a file only. */
    public Report picture(Picture picture) {
        return file(picture.name() + ".svg", w -> w.write(picture.svg()));
    }

    /** Begins the next part of the page. */
    public Part part(String heading) {
        Part part = new Part(heading);
        parts.add(part);
        return part;
    }

    /** A part of the page under a heading of its own. */
    public final class Part {

        private final String heading;
        private final List<String> paragraphs = new ArrayList<>();
        private final List<PageTable> tables = new ArrayList<>();
        private final List<String> svgs = new ArrayList<>();

        private Part(String heading) {
            this.heading = heading;
        }

        /** Paragraphs of text. */
        public Part say(String... texts) {
            return say(List.of(texts));
        }

        /** Paragraphs of text. */
        public Part say(Collection<String> texts) {
            paragraphs.addAll(texts);
            return this;
        }

        /** A table. */
        public Part table(PageTable table) {
            tables.add(table);
            return this;
        }

        /** A table: what it shows, head of the columns, cells row by row. */
        public Part table(String caption, List<String> columns, List<List<String>> rows) {
            return table(new PageTable(caption, columns, rows));
        }

        /** Pictures that are files of their own too. */
        public Part charts(Collection<? extends Picture> pictures) {
            pictures.forEach(this::chart);
            return this;
        }

        /** A picture that is a file of its own too. */
        public Part chart(Picture picture) {
            Picture drawn = Picture.of(picture.name(), picture.svg());
            picture(drawn);
            return inline(drawn.svg());
        }

        /** A picture of our own making, put in as it is. */
        public Part inline(String svg) {
            svgs.add(svg);
            return this;
        }

        /** Its heading. */
        public String heading() {
            return heading;
        }

        /** Its text. */
        public List<String> paragraphs() {
            return List.copyOf(paragraphs);
        }

        /** Its tables. */
        public List<PageTable> tables() {
            return List.copyOf(tables);
        }

        /** Its pictures. */
        public List<String> svgs() {
            return List.copyOf(svgs);
        }
    }

    /** A line for the terminal. */
    public Report line(String format, Object... values) {
        lines.add(values.length == 0 ? format : NumberFormat.text(format, values).stripTrailing());
        return this;
    }

    /** Lines for the terminal. */
    public Report lines(Collection<String> more) {
        lines.addAll(more);
        return this;
    }

    /** Words for the terminal, at most 80 columns wide, what is longer goes on below, indented as far as the head. */
    public Report hang(String indented, String words) {
        TerminalText.hang(indented, words, lines);
        return this;
    }

    /** Breaks every line so far to at most 80 columns; what is longer goes on below, indented by two. */
    public Report wrapped() {
        lines.replaceAll(TerminalText::wrapped);
        return this;
    }

    /** A line that says where the figures come from. */
    public Report origin() {
        return line("model %s, quietband %s", from.shortHash(), from.version());
    }

    /** Head of the page. */
    public PageHead head() {
        return head;
    }

    /** Parts of the page in order. */
    public List<Part> parts() {
        return List.copyOf(parts);
    }

    /** What the figures are no proof of. */
    public String basis() {
        return readings ? Caution.READINGS : Caution.PREDICTION;
    }

    /** What the names of the stacks mean, where there can be some. */
    public String stacks() {
        return readings ? "" : StackName.EXPLAINED;
    }

    /** The summary as JSON; empty when there is none. */
    public String json() {
        return summary;
    }

    /** The summary for a terminal; empty when there is none. */
    public String text() {
        return lines.isEmpty() ? "" : String.join("\n", lines) + "\n" + (note.isEmpty() ? "" : note + "\n");
    }

    /**
     * Writes every file.
     *
     * @param threads how many share the work; changes no file
     */
    public void writeTo(ResultDirectory directory, int threads) {
        ParallelWork.all(files.entrySet().stream().<Supplier<String>>map(file -> () -> {
            directory.write(file.getKey(), file.getValue());
            return file.getKey();
        }).toList(), threads);
    }
}

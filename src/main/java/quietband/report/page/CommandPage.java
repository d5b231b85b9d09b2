package quietband.report.page;

import java.util.List;

/**
 * A page of any command: a head, then parts in order.
 *
 * @param head  title, origin, verdict
 * @param parts in order
 */
public record CommandPage(PageHead head, List<Part> parts) {

    public CommandPage {
        parts = List.copyOf(parts);
    }

    /** Whether it predicts from a model; a page of readings does not. */
    public boolean predicts() {
        return !head.verdict().equals("MEASURED");
    }

    /**
     * A part under a heading of its own; what it does not have is empty.
     *
     * @param heading    of the part
     * @param paragraphs text
     * @param tables     tables
     * @param svgs       pictures of our own making, put in as they are
     */
    public record Part(String heading, List<String> paragraphs, List<PageTable> tables, List<String> svgs) {

        public Part {
            paragraphs = List.copyOf(paragraphs);
            tables = List.copyOf(tables);
            svgs = List.copyOf(svgs);
        }
    }
}

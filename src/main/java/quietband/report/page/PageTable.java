package quietband.report.page;

import java.util.List;

/**
 * A table of a page.
 *
 * @param caption what it shows
 * @param head    of the columns
 * @param rows    cells, as many as columns; the first names the row
 */
public record PageTable(String caption, List<String> head, List<List<String>> rows) {

    public PageTable {
        head = List.copyOf(head);
        rows = List.copyOf(rows);
    }
}

package quietband.report.svg;

/** A picture of a result. */
public interface Picture {

    /** Name of its file without the ending; letters, digits and hyphens. */
    String name();

    /** The picture as SVG. */
    String svg();

    /** One that is drawn already. */
    static Picture of(String name, String svg) {
        return new Drawn(name, svg);
    }

    /** A name and a picture. */
    record Drawn(String name, String svg) implements Picture { }
}

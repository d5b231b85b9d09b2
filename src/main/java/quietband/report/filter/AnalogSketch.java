package quietband.report.filter;

import quietband.report.file.NumberFormat;


/** The circuit of a lead-lag network as a picture: one inverting stage with a lead before it and a lag around it. */
final class AnalogSketch {

    private static final String STYLE = "fill='none' stroke='#18222B' stroke-width='1.6'";

    private final StringBuilder svg = new StringBuilder();

    private AnalogSketch() { }

    /**
     * The picture.
     *
     * @param lead whether r3 and c1 are there
     * @param lag  whether r4 and c2 are there
     */
    static String svg(boolean lead, boolean lag) {
        return new AnalogSketch().draw(lead, lag);
    }

    private String draw(boolean lead, boolean lag) {
        svg.append("<svg xmlns='http://www.w3.org/2000/svg' viewBox='-110 -30 800 300' width='800' height='300' role='img' "
            + "font-family='sans-serif' font-size='13'><title>Lead-lag network: one inverting amplifier stage</title>");
        // the stage, its output, its input at ground
        line("M330 130 L330 210 L410 170 Z");
        text(338, 154, "-");
        text(338, 198, "+");
        line("M330 190 H305 V215 M293 215 H317 M297 219 H313 M301 223 H309");
        line("M410 170 H500");
        text(504, 174, "onward");
        // before it
        text(4, 146, "from the");
        text(4, 162, "sensor");
        line("M60 150 H90");
        resistor(150, 150, "r1");
        line("M90 150 H120 M180 150 H330");
        if (lead) {
            line("M90 150 V205 H100");
            resistor(130, 205, "r3");
            line("M160 205 H181");
            capacitor(185, 205, "c1");
            line("M189 205 H230 V150");
        }
        // around it
        line("M260 150 V70 H310 M370 70 H450 V170");
        resistor(340, 70, "r2");
        if (lag) {
            line("M260 70 V28 H295 M355 28 H386 M394 28 H450 V70");
            resistor(325, 28, "r4");
            capacitor(390, 28, "c2");
        }
        return svg.append("</svg>").toString();
    }

    private void line(String path) {
        svg.append("<path d='").append(path).append("' ").append(STYLE).append("/>");
    }

    private void text(int x, int y, String text) {
        svg.append(NumberFormat.text("<text x='%d' y='%d' fill='#18222B'>%s</text>", x, y, text));
    }

    private void resistor(int x, int y, String name) {
        svg.append(NumberFormat.text("<rect x='%d' y='%d' width='60' height='16' %s/>", x - 30, y - 8, STYLE));
        text(x - 6, y + 4, name);
    }

    private void capacitor(int x, int y, String name) {
        line(NumberFormat.text("M%d %d V%d M%d %d V%d", x - 4, y - 11, y + 11, x + 4, y - 11, y + 11));
        text(x - 6, y + 25, name);
    }
}

package quietband.report.assess;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import quietband.model.Axis;
import quietband.model.Stack;
import quietband.report.file.CsvWriter;
import quietband.report.file.ResultDirectory;
import quietband.response.Contribution;
import quietband.response.FrequencyTable;
import quietband.response.ModeProperties;
import quietband.response.travel.Travel;
import quietband.response.verdict.Assessment;
import quietband.response.verdict.StackVerdict;
import quietband.response.verdict.ToneSideband;
import quietband.work.ParallelWork;

/** The CSV files of an assessment. */
public final class AssessmentTables {

    private static final double PPB = 1e9;
    private static final double MM = 1e3;

    private final Assessment assessment;
    private final FrequencyTable table;

    /** For an assessment and its values at the table's frequencies. */
    public AssessmentTables(Assessment assessment, FrequencyTable table) {
        this.assessment = assessment;
        this.table = table;
    }

    /** Writes all of them, the largest beside the others when there is more than one thread. */
    public void writeTo(ResultDirectory directory, int threads) {
        Runnable largest = () -> directory.write("contributions.csv", this::contributions);
        CompletableFuture<Void> beside = threads > 1 ? CompletableFuture.runAsync(largest) : null;
        directory.write("response.csv", this::response);
        directory.write("coverage.csv", this::coverage);
        directory.write("phase_noise.csv", this::phaseNoise);
        directory.write("tones.csv", this::tones);
        directory.write("modes.csv", this::modes);
        directory.write("travel.csv", this::travel);
        if (beside == null) {
            largest.run();
        } else {
            ParallelWork.get(beside);
        }
    }

    private void response(Writer writer) throws IOException {
        List<String> header = new ArrayList<>(List.of("frequency_hz"));
        for (Stack s : table.stacks()) {
            for (String of : List.of("x", "y", "z", "vector")) {
                header.add(s.key() + "_" + of + "_ppb_per_g");
            }
        }
        CsvWriter csv = new CsvWriter(writer, header);
        for (FrequencyTable.Row r : table.rows()) {
            csv.cell(r.frequencyHz());
            for (int s = 0; s < table.stacks().size(); s++) {
                for (double y : r.residualPerG()[s]) {
                    csv.cell(y * PPB);
                }
                csv.cell(r.vectorPerG(s) * PPB);
            }
            csv.end();
        }
    }

    private void coverage(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "stack", "from_hz", "to_hz");
        for (StackVerdict v : assessment.verdicts()) {
            for (double[] i : v.intervals()) {
                csv.cell(v.stack().key()).cell(i[0]).cell(i[1]).end();
            }
        }
    }

    private void phaseNoise(Writer writer) throws IOException {
        List<String> header = new ArrayList<>(List.of("offset_hz", "axis"));
        for (Stack s : table.stacks()) {
            header.add(s.key() + "_vibration_dbc_hz");
            header.add(s.key() + "_total_dbc_hz");
        }
        header.addAll(List.of("static_dbc_hz", "sensor_dbc_hz", "tuning_dbc_hz", "limit_dbc_hz", "allowed_ppb_per_g"));
        CsvWriter csv = new CsvWriter(writer, header);
        for (FrequencyTable.Row r : table.rows()) {
            for (int k = 0; k < table.noiseRows().size(); k++) {
                csv.cell(r.frequencyHz()).cell(table.noiseRows().get(k).label());
                for (int s = 0; s < table.stacks().size(); s++) {
                    csv.cell(dbc(r.vibration()[s][k])).cell(dbc(r.vibration()[s][k] + r.floor()[s]));
                }
                csv.cell(dbc(r.staticNoise())).cell(dbc(r.sensor())).cell(dbc(r.tuning())).cell(r.limitDbc())
                    .cell(r.allowedPerG()[k] * PPB).end();
            }
        }
    }

    private static double dbc(double power) {
        return 10 * StrictMath.log10(power);
    }

    private void tones(Writer writer) throws IOException {
        List<String> header = new ArrayList<>(List.of("tone", "frequency_hz", "axis", "peak_g"));
        for (Stack s : table.stacks()) {
            header.add(s.key() + "_index_rad");
            header.add(s.key() + "_level_dbc");
        }
        header.add("limit_dbc");
        CsvWriter csv = new CsvWriter(writer, header);
        for (ToneSideband t : assessment.tones()) {
            csv.cell(t.name()).cell(t.frequencyHz()).cell(t.axis().letter()).cell(t.peakG());
            for (Stack s : table.stacks()) {
                csv.cell(t.index().get(s)).cell(t.levelDbc().get(s));
            }
            csv.cell(t.limitDbc()).end();
        }
    }

    private void modes(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "mode", "frequency_hz", "damping_ratio", "shape", "translation_x_share", "translation_y_share",
            "translation_z_share", "rotation_x_share", "rotation_y_share", "rotation_z_share");
        int n = 1;
        for (ModeProperties m : assessment.modes()) {
            csv.cell(Integer.toString(n++)).cell(m.frequencyHz()).cell(m.dampingRatio()).cell(m.shape());
            for (double share : m.energyShares()) {
                csv.cell(share);
            }
            csv.end();
        }
    }

    private void travel(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "axis", "sag_mm", "sustained_mm", "shock_mm", "random_3sigma_mm", "counted_mm",
            "clearance_mm");
        if (assessment.travel().isEmpty()) {
            return;
        }
        Travel t = assessment.travel().get();
        for (Axis a : Axis.ALL) {
            double clearance = assessment.design().platform().orElseThrow().clearance().map(c -> c.get(a))
                .orElse(Double.NaN);
            csv.cell(a.letter()).cell(t.sag().get(a) * MM).cell(t.sustained().get(a) * MM).cell(t.shock().get(a) * MM)
                .cell(t.random3Sigma().get(a) * MM).cell(t.counted().get(a) * MM).cell(clearance * MM).end();
        }
    }

    private void contributions(Writer writer) throws IOException {
        CsvWriter csv = new CsvWriter(writer, "frequency_hz", "axis", "cause", "alone_ppb_per_g", "without_ppb_per_g");
        for (FrequencyTable.Row r : table.rows()) {
            for (Axis a : Axis.ALL) {
                for (Contribution c : r.contributions()) {
                    csv.cell(r.frequencyHz()).cell(a.letter()).cell(c.cause().key())
                        .cell(c.alone()[a.ordinal()] * PPB).cell(c.without()[a.ordinal()] * PPB).end();
                }
            }
        }
    }
}

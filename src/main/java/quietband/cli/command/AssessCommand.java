package quietband.cli.command;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import quietband.model.edit.ModelFile;
import quietband.report.assess.AssessmentReport;
import quietband.report.file.Provenance;
import quietband.study.assess.DesignAssessment;

/** The main job: what a design leaves, where it holds, where not. */
@Command(name = "assess", mixinStandardHelpOptions = true,
    description = "Computes residual sensitivity, phase noise, coverage and verdict of a model.")
public final class AssessCommand extends TableCommand implements Callable<Integer> {

    @Option(names = "--check", description = "end with status 1 when a requirement is not met")
    private boolean check;


    @Override
    public Integer call() {
        ModelFile file = ModelFile.read(model);
        double[] f = frequencies.frequencies(file.design().requirement());
        Provenance from = output.provenance("assess", file);
        DesignAssessment[] found = new DesignAssessment[1];
        output.write(spec, output.directory(model, "assess"), from, directory -> {
            found[0] = DesignAssessment.of(file, f, output.threads(), directory.target());
            return AssessmentReport.of(found[0], from);
        });
        return check && !found[0].assessment().requirementMet().orElse(true) ? 1 : 0;
    }
}

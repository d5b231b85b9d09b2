package quietband.identification.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import quietband.identification.FitException;
import quietband.identification.MeasuredFile;
import quietband.identification.doubt.DampingAlternatives;
import quietband.identification.doubt.DampingKind;
import quietband.identification.doubt.MeasurementChecks;
import quietband.identification.doubt.MiswrittenData;
import quietband.identification.doubt.ResolutionBlur;
import quietband.identification.search.FitEstimate;
import quietband.identification.search.FreeValues;
import quietband.identification.search.MeasuredPoints;
import quietband.identification.search.ResponseEvaluator;
import quietband.identification.search.RobustFit;
import quietband.model.Design;
import quietband.model.edit.ModelFile;
import quietband.model.text.ModelException;

/** From measured responses to the model's numbers: the way in. */
public final class ModelFit {

    private static final int SEARCHES = 8;
    private static final int SHARPER = 2;
    private static final double CLEARLY = 10;

    /**
     * How to fit.
     *
     * @param outliers whether points far off are left out
     * @param kinds    whether other kinds of damping are tried when one is free
     * @param damping  which kind to take in place of the one that is free; empty to leave it, AS_FREED for the likeliest
     */
    public record Settings(boolean outliers, boolean kinds, Optional<DampingKind> damping) {

        /** What is usual. */
        public static final Settings USUAL = new Settings(true, true, Optional.empty());
    }

    private final ModelFile file;
    private MeasuredPoints seen;
    private final List<String> paths;
    private final Settings settings;

    private ModelFit(ModelFile file, MeasuredPoints seen, List<String> paths, Settings settings) {
        this.file = file;
        this.seen = seen;
        this.paths = paths;
        this.settings = settings;
    }

    /**
     * Fits.
     *
     * @param sources what was measured
     * @param paths   of the numbers to be found
     * @throws FitException when the measurement cannot serve
     */
    public static FitResult of(ModelFile file, List<MeasuredFile> sources, List<String> paths, Settings settings) {
        MeasurementChecks.sources(file.design(), sources);
        return new ModelFit(file, MeasuredPoints.of(sources), paths, settings).run();
    }

    private FitResult run() {
        FreeValues free = FreeValues.of(file.design().quantities(), paths);
        DampingAlternatives kinds = new DampingAlternatives(file, paths);
        if (settings.damping().isPresent() && kinds.own().isEmpty()) {
            throw new FitException("--damping: no damping is free; name one with --free, e.g. platform.springs.damping");
        }
        FitEstimate first = new RobustFit(new ResponseEvaluator(file.design(), free, seen)).run(SEARCHES, null, settings.outliers());
        if (ResolutionBlur.any(seen)) {
            MeasuredPoints raw = seen;
            for (int round = 0; round < SHARPER; round++) {
                seen = ResolutionBlur.removed(raw, new ResponseEvaluator(file.design(), free, raw), first.u());
                first = new RobustFit(new ResponseEvaluator(file.design(), free, seen)).from(first.u()).run(1, null, settings.outliers());
            }
        }
        return chosen(kinds, first);
    }

    @SuppressWarnings("ReferenceEquality") // the very estimate, not one like it
    private FitResult chosen(DampingAlternatives kinds, FitEstimate first) {
        List<Tried> tried = new ArrayList<>();
        if (kinds.own().isPresent() && (settings.kinds() || settings.damping().isPresent())) {
            tried.add(new Tried(new DampingAlternatives.Variant(kinds.own().get(), file, paths), first));
            for (DampingKind kind : List.of(DampingKind.VISCOUS, DampingKind.LOSS, DampingKind.RELAXATION, DampingKind.MODAL)) {
                // who names a kind wants no other
                boolean wanted = settings.damping().isEmpty() || settings.damping().get() == DampingKind.AS_FREED
                    || settings.damping().get() == kind;
                if (wanted && kind != kinds.own().get()) {
                    attempt(kinds, kind, first).ifPresent(tried::add);
                }
            }
            tried.sort(Comparator.comparingDouble(t -> t.estimate().aicc()));
        }
        Tried own = tried.stream().filter(t -> t.estimate() == first).findFirst()
            .orElse(new Tried(new DampingAlternatives.Variant(DampingKind.AS_FREED, file, paths), first));
        Tried taken = settings.damping().map(d -> d == DampingKind.AS_FREED ? tried.get(0)
            : tried.stream().filter(t -> t.variant().kind() == d).findFirst().orElseThrow(() ->
                new FitException("--damping: " + d.words() + " damping cannot be fitted to this measurement"))).orElse(own);
        List<String> told = new ArrayList<>(MiswrittenData.of(
            new ResponseEvaluator(taken.variant().model().design(), taken.estimate().free(), seen), taken.estimate()));
        told.addAll(advice(tried, taken));
        return new FitResultBuilder(file, taken.variant().model(), seen, taken.estimate()).fitted(tried, told);
    }

    /** A variant and what came out. */
    record Tried(DampingAlternatives.Variant variant, FitEstimate estimate) { }

    private Optional<Tried> attempt(DampingAlternatives kinds, DampingKind kind, FitEstimate first) {
        try {
            DampingAlternatives.Variant variant = kinds.with(kind);
            Design design = variant.model().design();
            FreeValues free = FreeValues.of(design.quantities(), variant.free());
            return Optional.of(new Tried(variant,
                new RobustFit(new ResponseEvaluator(design, free, seen)).run(2, first.outlier(), settings.outliers())));
        } catch (ModelException | FitException e) {
            // this kind is not possible with these springs or data: the others remain
            return Optional.empty();
        }
    }

    @SuppressWarnings("ReferenceEquality") // the very trial, not one like it
    private static List<String> advice(List<Tried> tried, Tried taken) {
        if (tried.isEmpty()) {
            return List.of();
        }
        Tried best = tried.get(0);
        double behind = taken.estimate().aicc() - best.estimate().aicc();
        return best == taken || behind < CLEARLY ? List.of() : List.of(String.format(Locale.ROOT,
            "%s damping describes these data better than what was freed (AICc lower by %.1f); --damping %s takes it",
            best.variant().kind().words(), behind, best.variant().kind().name().toLowerCase(Locale.ROOT)));
    }
}

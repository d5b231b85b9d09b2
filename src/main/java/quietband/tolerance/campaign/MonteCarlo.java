package quietband.tolerance.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.LongConsumer;
import quietband.demand.Decibels;
import quietband.demand.ResidualDemand;
import quietband.model.Stack;
import quietband.model.quantity.Quantities;
import quietband.tolerance.draw.ImpossibleUnitException;
import quietband.tolerance.judge.MonteCarloPlan;
import quietband.tolerance.judge.UnitJudge;
import quietband.tolerance.judge.UnitVerdict;
import quietband.tolerance.kernel.BlockedGrid;
import quietband.tolerance.kernel.FrequencyBlock;
import quietband.work.ParallelWork;

/**
 * The Monte Carlo: units in chunks shared by threads, rows handed over in the order of their index. Everything kept of a unit is a
 * whole count, so that figures depend neither on the number of threads nor on who came first.
 */
public final class MonteCarlo {

    private static final int CHUNK = 64;

    private final MonteCarloPlan plan;
    private final double[] table;
    private final int threads;
    /** The nominal table's frequencies. */
    private final BlockedGrid nodes;

    /** Some units, and what was made of their rows. */
    private record Chunk<T>(List<UnitRow> rows, T ready) { }

    /**
     * Prepares a run.
     *
     * @param table   frequencies of the percentiles, Hz
     * @param threads how many share the work; changes no figure
     */
    public MonteCarlo(MonteCarloPlan plan, double[] table, int threads) {
        this.plan = plan;
        this.table = table.clone();
        this.threads = threads;
        this.nodes = new BlockedGrid(table, plan.nominal());
    }

    /**
     * Runs.
     *
     * @param units    how many
     * @param stop     asked between chunks; when true the units so far are the result
     * @param progress told how many units are done
     */
    public MonteCarloResult run(long units, BooleanSupplier stop, LongConsumer progress) {
        return run(units, stop, progress, rows -> rows, rows -> { });
    }

    /**
     * Runs, and hands the rows over.
     *
     * @param ready makes something of the rows of some neighbouring units; called by any of the threads
     * @param take  is handed that in the order of the units; called by one thread
     */
    public <T> MonteCarloResult run(long units, BooleanSupplier stop, LongConsumer progress, Function<List<UnitRow>, T> ready,
        Consumer<T> take) {
        MonteCarloResult outcome = new MonteCarloResult(plan, table);
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            BlockingQueue<Worker> idle = new ArrayBlockingQueue<>(threads);
            List<Worker> workers = new ArrayList<>();
            for (int t = 0; t < threads; t++) {
                workers.add(new Worker());
            }
            idle.addAll(workers);
            ArrayBlockingQueue<Future<Chunk<T>>> running = new ArrayBlockingQueue<>(4 * threads);
            long next = 0;
            while (next < units || !running.isEmpty()) {
                while (next < units && !stop.getAsBoolean() && running.remainingCapacity() > 0) {
                    long from = next;
                    long to = Math.min(units, from + CHUNK);
                    running.add(pool.submit(() -> {
                        List<UnitRow> rows = rows(idle, from, to);
                        return new Chunk<>(rows, ready.apply(rows));
                    }));
                    next = to;
                }
                if (running.isEmpty()) {
                    break;
                }
                Chunk<T> chunk = ParallelWork.get(running.remove());
                chunk.rows().forEach(outcome::add);
                take.accept(chunk.ready());
                progress.accept(outcome.units());
            }
            workers.forEach(w -> outcome.add(w.cells.levels()));
            outcome.finish(outcome.units() < units);
            return outcome;
        } finally {
            pool.shutdownNow();
        }
    }

    private static List<UnitRow> rows(BlockingQueue<Worker> idle, long from, long to) throws InterruptedException {
        Worker worker = idle.take();
        try {
            List<UnitRow> rows = new ArrayList<>();
            for (long u = from; u < to; u++) {
                rows.add(worker.unit(u));
            }
            return rows;
        } finally {
            idle.add(worker);
        }
    }

    /** One thread's tools and counts. */
    private final class Worker {

        private final List<UnitJudge> judges = plan.judges();
        private final List<Stack> stacks = Stack.of(plan.nominal());
        private final CellBuffer cells = new CellBuffer(stacks.size(), table.length);
        private final ResidualDemand demand = new ResidualDemand(plan.nominal());
        private double evenly;

        UnitRow unit(long index) {
            for (int attempt = 0; attempt <= ImpossibleUnitException.MOST_ATTEMPTS; attempt++) {
                Quantities drawn = plan.draw(plan.scatter(), index, attempt);
                if (drawn != null) {
                    try {
                        return judged(index, attempt, drawn);
                    } catch (ImpossibleUnitException e) {
                        // the next attempt follows
                    }
                }
            }
            throw ImpossibleUnitException.hopeless();
        }

        private UnitRow judged(long index, int attempt, Quantities drawn) {
            List<UnitVerdict> verdicts = new ArrayList<>(judges.size());
            for (int c = 1; c < judges.size(); c++) {
                verdicts.add(judges.get(c).judge(plan.unit(c, drawn)));
            }
            // the nominal condition last: nothing is counted of a unit that is impossible in another
            verdicts.add(0, judges.get(0).judge(plan.unit(0, drawn)));
            evenly = 0;
            BlockedGrid own = plan.conditions().get(0).varied.shared() ? new BlockedGrid(table, plan.unit(0, drawn)) : nodes;
            judges.get(0).table(own, this::count);
            cells.next();
            return new UnitRow(index, attempt, verdicts, demand.asked() ? -Decibels.ofPower(evenly) : Double.NaN);
        }

        private void count(FrequencyBlock b, int at, double[][][] power) {
            for (int s = 0; s < stacks.size(); s++) {
                double[][] p = power[stacks.get(s).ordinal()];
                cells.put(s, at, p[0], p[1], p[2], b.n);
            }
            double[][] p = power[stacks.get(stacks.size() - 1).ordinal()];
            for (int t = 0; t < b.n; t++) {
                evenly = Math.max(evenly, demand.joined(p[0][t] * b.overLimit[0][t], p[1][t] * b.overLimit[1][t],
                    p[2][t] * b.overLimit[2][t]));
            }
        }
    }
}

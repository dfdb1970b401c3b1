using MathNet.Numerics.Distributions;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>One calibration, step by step: sort the readings, leaks by closed form, least squares, figures a fault has moved, contradictions, what stays unknown.</summary>
internal sealed class Calibration
{
    // Share of honest sets of readings whose sum of squares is larger: a figure is looked for that a fault has moved; the readings contradict each other.
    private const double Suspicious = 0.01;
    private const double Contradicting = 0.001;
    private static readonly double Quantile = Normal.InvCDF(0, 1, (1 + MachineCalibration.Coverage) / 2);

    private readonly Machine machine;
    private readonly IReadOnlyList<MachineReading> readings;
    private readonly IReadOnlyList<UncertainFigure> figures;
    private readonly SortedReadings sorted;
    private readonly LeakEstimates leaks;
    private readonly CalibrationFit fit;

    public Calibration(Machine machine, IReadOnlyList<MachineReading> readings)
    {
        this.machine = machine;
        this.readings = readings;
        figures = UncertainFigures.Of(machine);
        sorted = SortedReadings.Of(machine, ModelParameters.From(machine), readings);
        leaks = LeakEstimates.Of(sorted);
        fit = new CalibrationFit(figures, sorted.Fitted, leaks.Applied);
    }

    public CalibrationResult Run()
    {
        var estimate = Estimate();
        var told = new bool[figures.Count];
        List<CalibratedFigure> calibrated = [];
        var after = machine;
        for (var j = 0; j < figures.Count; j++)
        {
            var figure = figures[j];
            double off = estimate.Z[j] * estimate.Sigmas[j],
                sigma = estimate.Left(j) * estimate.Sigmas[j];
            told[j] = estimate.Left(j) < MachineCalibration.ToldBelow;
            var tellers = told[j] ? Tellers(estimate, j) : [];
            calibrated.Add(
                new CalibratedFigure(
                    figure.Id,
                    figure.Written(machine),
                    figure.At(machine, off),
                    figure.At(machine, off - (Quantile * sigma)),
                    figure.At(machine, off + (Quantile * sigma)),
                    told[j],
                    tellers
                )
            );
        }

        for (var j = 0; j < figures.Count; j++)
        {
            after = told[j] ? Told(after, estimate, j, calibrated[j].Readings) : after;
        }

        calibrated.AddRange(leaks.Figures(Quantile));
        return new CalibrationResult(after, calibrated, Unknown(estimate, told), Fits(estimate), Contradictions(estimate), sorted.Problems);
    }

    // First a machine in order: every figure may be off by what is usual of it. Where that does not give the readings, the figure is let go that a fault would have moved,
    // as few of them as will do; only those that a reading is there to tell.
    private Estimate Estimate()
    {
        var sigmas = new double[figures.Count];
        for (var j = 0; j < sigmas.Length; j++)
        {
            sigmas[j] = figures[j].Sigma(machine);
        }

        var best = fit.Solve(sigmas, new double[sigmas.Length]);
        var open = FirstValues.Told(figures, sorted.Fitted, leaks.Applied);
        while (best.Sum > Limit(Suspicious) && open.Count > 0)
        {
            var (figure, tried) = (-1, best);
            foreach (var j in open)
            {
                var with = Widened(best, j);
                if (with.Sum < tried.Sum - 1)
                {
                    (figure, tried) = (j, with);
                }
            }

            if (figure < 0)
            {
                break;
            }

            open.Remove(figure);
            best = tried;
        }

        return best;
    }

    private Estimate Widened(Estimate from, params ReadOnlySpan<int> widened)
    {
        var sigmas = (double[])from.Sigmas.Clone();
        var guess = (double[])from.Z.Clone();
        foreach (var j in widened)
        {
            sigmas[j] = Math.Max(sigmas[j], figures[j].Scatter.Fault);
            guess[j] = FirstValues.Of(figures[j], leaks.Applied, sorted.Fitted) is { } off
                ? off / sigmas[j]
                : guess[j] * from.Sigmas[j] / sigmas[j];
        }

        return fit.Solve(sigmas, guess);
    }

    private double Limit(double share) =>
        sorted.Fitted.Count > 0 ? ChiSquared.InvCDF(sorted.Fitted.Count, 1 - share) : double.PositiveInfinity;

    private Machine Told(Machine current, Estimate estimate, int j, IReadOnlyList<int> tellers)
    {
        var figure = figures[j];
        var latest = DateOnly.MinValue;
        List<string> kinds = [];
        foreach (var place in tellers)
        {
            latest = readings[place].On > latest ? readings[place].On : latest;
            var name = readings[place].Part is { } part ? $"{part}.{readings[place].Kind}" : readings[place].Kind;
            if (!kinds.Contains(name))
            {
                kinds.Add(name);
            }
        }

        return figure.Measured(
            current,
            estimate.Z[j] * estimate.Sigmas[j],
            estimate.Left(j) * estimate.Sigmas[j],
            string.Join(", ", kinds),
            latest
        );
    }

    // The readings that move a figure, weightiest first: what each adds to the knowledge of it, against all of them together.
    private List<int> Tellers(Estimate estimate, int j)
    {
        List<(double Weight, IReadOnlyList<int> Places)> weights = [];
        for (var k = 0; k < sorted.Fitted.Count; k++)
        {
            var pull = (estimate.Covariance * estimate.Slopes.Row(k))[j];
            weights.Add((pull * pull, sorted.Fitted[k].Places));
        }

        var most = weights.Max(w => w.Weight);
        return [.. weights.Where(w => w.Weight > 0.1 * most).OrderByDescending(w => w.Weight).SelectMany(w => w.Places)];
    }

    private List<ReadingFit> Fits(Estimate estimate)
    {
        var p = fit.At(estimate.Z, estimate.Sigmas);
        var model = new ReadingModel(p.Tanks.Length);
        List<ReadingFit> fits = [];
        for (var k = 0; k < sorted.Fitted.Count; k++)
        {
            var reading = sorted.Fitted[k];
            var own = reading.Places.Count == 1 ? readings[reading.Places[0]].Value.Unit : null;
            var expected = ReadingModel.InUnit(reading, model.Expected(p, reading));
            foreach (var place in reading.Places)
            {
                fits.Add(new ReadingFit(place, own is null ? null : expected.In(own), estimate.Residuals[k]));
            }
        }

        fits.Sort((a, b) => a.Reading.CompareTo(b.Reading));
        return fits;
    }

    private List<Contradiction> Contradictions(Estimate estimate)
    {
        var found = HeatBalance.Contradictions(leaks.Applied, sorted.Fitted);
        if (estimate.Sum > Limit(Contradicting))
        {
            found.Add(new Contradiction(ContradictionKind.Misfit, Suspects(estimate), estimate.Sum / Limit(Contradicting)));
        }

        return found;
    }

    // Judged with every figure let go that a reading is there to tell: a machine out of order and a wrong reading are then equally likely.
    private List<int> Suspects(Estimate healthy)
    {
        var estimate = Widened(healthy, [.. FirstValues.Told(figures, sorted.Fitted, leaks.Applied)]);
        var count = sorted.Fitted.Count;
        var order = Enumerable.Range(0, count).OrderByDescending(estimate.FallWithout).ToList();
        var enough = count > 1 ? ChiSquared.InvCDF(count - 1, 1 - Suspicious) : double.PositiveInfinity;
        var single = order.Where(k => estimate.Sum - estimate.FallWithout(k) <= enough).ToList();
        var suspects = single.Count > 0 ? single : order.Where(k => estimate.FallWithout(k) > Quantile * Quantile).ToList();
        return [.. suspects.SelectMany(k => sorted.Fitted[k].Places)];
    }

    private List<UnknownFigure> Unknown(Estimate estimate, bool[] told)
    {
        var candidates = CandidateReadings.Of(fit.At(estimate.Z, estimate.Sigmas));
        var slopes = fit.SlopesOf([.. candidates.Select(c => c.Reading)], estimate.Z, estimate.Sigmas);
        List<UnknownFigure> unknown = [];
        for (var j = 0; j < figures.Count; j++)
        {
            if (told[j])
            {
                continue;
            }

            var (best, left) = (-1, MachineCalibration.ToldBelow);
            for (var k = 0; k < candidates.Count; k++)
            {
                var with = estimate.LeftWith(j, slopes.Row(k));
                (best, left) = with < left ? (k, with) : (best, left);
            }

            unknown.Add(
                best < 0
                    ? new UnknownFigure(figures[j].Id, null, null, estimate.Left(j))
                    : new UnknownFigure(figures[j].Id, candidates[best].Reading.Kind.Id, candidates[best].Part, left)
            );
        }

        unknown.AddRange(leaks.Unknown());
        return unknown;
    }
}

using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using MathNet.Numerics.Optimization;

namespace Rinsewright.Engine.Machines;

/// <summary>Least squares of readings and figures. Equation K16: Σ (reading off in its uncertainties)² + Σ (figure off in its σ)² becomes least.</summary>
/// <param name="figures">Figures that may be off.</param>
/// <param name="readings">Readings.</param>
/// <param name="start">What the model computes with when no figure is off.</param>
internal sealed class CalibrationFit(IReadOnlyList<UncertainFigure> figures, IReadOnlyList<UsableReading> readings, ModelParameters start)
{
    // Step of the differences, in σ of the figure: small against what bends, large against what the steady solve leaves open.
    private const double Step = 1e-2;

    private readonly ReadingModel model = new(start.Tanks.Length);

    /// <summary>The estimate for given σ of the figures.</summary>
    /// <param name="sigmas">One for each figure.</param>
    /// <param name="guess">Where to begin, in σ.</param>
    public Estimate Solve(double[] sigmas, double[] guess)
    {
        int n = figures.Count,
            m = readings.Count + n;
        var objective = ObjectiveFunction.NonlinearModel(
            (z, _) => Residuals(z, sigmas),
            (z, _) => Slopes(z, sigmas),
            new DenseVector(m),
            new DenseVector(m)
        );
        var minimizer = new LevenbergMarquardtMinimizer(1e-3, 1e-9, 1e-9, 1e-12, 200);
        var best = minimizer.FindMinimum(objective, DenseVector.OfArray(guess)).MinimizingPoint;
        var slopes = Slopes(best, sigmas);
        var residuals = Residuals(best, sigmas);
        var covariance = slopes.TransposeThisAndMultiply(slopes).Cholesky().Solve(DenseMatrix.CreateIdentity(n));
        return new Estimate(best.ToArray(), residuals.ToArray(), slopes, covariance, sigmas);
    }

    /// <summary>What the model computes with, figures off by so many σ.</summary>
    public ModelParameters At(IReadOnlyList<double> z, double[] sigmas)
    {
        var p = start;
        for (var i = 0; i < figures.Count; i++)
        {
            p = figures[i].Change(p, z[i] * sigmas[i]);
        }

        return p;
    }

    /// <summary>What readings expect at an estimate, changed by each figure in turn: row by reading, column by figure, in the uncertainties of the reading.</summary>
    public Matrix<double> SlopesOf(IReadOnlyList<UsableReading> candidates, double[] z, double[] sigmas)
    {
        var slopes = new DenseMatrix(candidates.Count, figures.Count);
        var moved = (double[])z.Clone();
        for (var j = 0; j < figures.Count; j++)
        {
            moved[j] = z[j] + Step;
            var up = At(moved, sigmas);
            for (var k = 0; k < candidates.Count; k++)
            {
                slopes[k, j] = candidates[k].Off(model.Expected(up, candidates[k]));
            }

            moved[j] = z[j] - Step;
            var down = At(moved, sigmas);
            for (var k = 0; k < candidates.Count; k++)
            {
                slopes[k, j] = (slopes[k, j] - candidates[k].Off(model.Expected(down, candidates[k]))) / (2 * Step);
            }

            moved[j] = z[j];
        }

        return slopes;
    }

    private DenseVector Residuals(Vector<double> z, double[] sigmas)
    {
        var p = At(z.AsArray() ?? z.ToArray(), sigmas);
        var residuals = new double[readings.Count + figures.Count];
        for (var k = 0; k < readings.Count; k++)
        {
            residuals[k] = readings[k].Off(model.Expected(p, readings[k]));
        }

        for (var j = 0; j < figures.Count; j++)
        {
            residuals[readings.Count + j] = z[j];
        }

        return new DenseVector(residuals);
    }

    private DenseMatrix Slopes(Vector<double> z, double[] sigmas)
    {
        var slopes = new DenseMatrix(readings.Count + figures.Count, figures.Count);
        slopes.SetSubMatrix(0, 0, SlopesOf(readings, z.ToArray(), sigmas));
        for (var j = 0; j < figures.Count; j++)
        {
            slopes[readings.Count + j, j] = 1;
        }

        return slopes;
    }
}

/// <summary>An estimate.</summary>
/// <param name="Z">Figures, in σ off what is written.</param>
/// <param name="Residuals">Readings, then figures.</param>
/// <param name="Slopes">Of the residuals.</param>
/// <param name="Covariance">Of <paramref name="Z"/>.</param>
/// <param name="Sigmas">σ the figures were given.</param>
internal sealed record Estimate(double[] Z, double[] Residuals, Matrix<double> Slopes, Matrix<double> Covariance, double[] Sigmas)
{
    /// <summary>The sum of squares.</summary>
    public double Sum
    {
        get
        {
            double sum = 0;
            foreach (var residual in Residuals)
            {
                sum += residual * residual;
            }

            return sum;
        }
    }

    /// <summary>Standard uncertainty of a figure, in the σ it was given: 1 where the readings say nothing of it.</summary>
    public double Left(int figure) => Math.Sqrt(Covariance[figure, figure]);

    /// <summary>What is left of that with one more reading, whose slopes are given.</summary>
    public double LeftWith(int figure, Vector<double> slopes)
    {
        var across = Covariance * slopes;
        return Math.Sqrt(Math.Max(0, Covariance[figure, figure] - (across[figure] * across[figure] / (1 + (slopes * across)))));
    }

    /// <summary>By how much the sum of squares would fall without a reading; first order.</summary>
    public double FallWithout(int reading)
    {
        var row = Slopes.Row(reading);
        return Residuals[reading] * Residuals[reading] / Math.Max(1e-9, 1 - (row * (Covariance * row)));
    }
}

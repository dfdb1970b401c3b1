using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>How far a figure may be from what is written: a share of it, or steps of a temperature.</summary>
/// <param name="Proportional">The figure times exp(σ z), else plus σ z kelvin; z is standard normal.</param>
/// <param name="Typical">σ of a figure nobody has looked at.</param>
/// <param name="Fault">σ before a reading that is there to tell it: wide enough for what a fault makes of it.</param>
internal readonly record struct Scatter(bool Proportional, double Typical, double Fault);

/// <summary>One figure of a machine that is not known exactly, with its place in the description and in what the model computes with.</summary>
internal abstract class UncertainFigure(string id, Scatter scatter, Func<ModelParameters, double, ModelParameters> change)
{
    /// <summary>Name, stable.</summary>
    public string Id { get; } = id;

    /// <summary>How far it may be off.</summary>
    public Scatter Scatter { get; } = scatter;

    /// <summary>σ of the figure as it stands: its own uncertainty where it was measured, what is usual where not.</summary>
    public abstract double Sigma(Machine machine);

    /// <summary>What is written; null where the machine has no such figure.</summary>
    public abstract Amount? Written(Machine machine);

    /// <summary>What would be written if it were off by so much.</summary>
    public abstract Amount At(Machine machine, double off);

    /// <summary>The machine with the figure off by so much and measured, σ with it.</summary>
    public abstract Machine Measured(Machine machine, double off, double sigma, string source, DateOnly on);

    /// <summary>What the model computes with, off by so much: a logarithm of a factor, or kelvins.</summary>
    public ModelParameters Change(ModelParameters parameters, double off) =>
        off == 0 ? parameters : change(parameters, Scatter.Proportional ? Math.Exp(off) : off);
}

/// <summary>A figure of one quantity.</summary>
internal sealed class UncertainFigure<T>(
    string id,
    Scatter scatter,
    Func<Machine, Figure<T>?> get,
    Func<Machine, Figure<T>, Machine> set,
    Func<ModelParameters, double, ModelParameters> change
) : UncertainFigure(id, scatter, change)
    where T : struct, IQuantity<T>
{
    public override Amount? Written(Machine machine) => get(machine)?.Written;

    public override double Sigma(Machine machine) =>
        get(machine) is { Uncertainty: { } steps, Written: var written } && written.SI != 0
            ? steps / 2 * Step(written.Unit) / (Scatter.Proportional ? Math.Abs(written.SI) : 1)
            : Scatter.Typical;

    public override Amount At(Machine machine, double off)
    {
        var written = get(machine)!.Value.Written;
        return Scatter.Proportional
            ? written with
            {
                Value = written.Value * Math.Exp(off),
            }
            : written with
            {
                Value = written.Value + (off / Step(written.Unit)),
            };
    }

    public override Machine Measured(Machine machine, double off, double sigma, string source, DateOnly on)
    {
        var value = At(machine, off);
        // Written as ±: two standard uncertainties.
        var steps = 2 * (Scatter.Proportional ? Math.Abs(value.Value) * sigma : sigma / Step(value.Unit));
        return set(machine, new Figure<T>(value, Provenance.Measured, source, on, steps));
    }

    // One step of the unit in SI: 5/9 K of a °F.
    private static double Step(Unit unit) => unit.Numerator / unit.Denominator;
}

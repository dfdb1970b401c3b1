using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>
/// A fault the model can play, as a change of its figures. The sizes are guesses: they show direction and order of magnitude, not what a given torn seal will do.
/// </summary>
public sealed class MachineFault
{
    private readonly Func<ModelParameters, double, ModelParameters> change;
    private readonly Func<ModelParameters, bool> applies;

    internal MachineFault(
        string id,
        string catalogue,
        FaultScale scale,
        Func<ModelParameters, bool> applies,
        Func<ModelParameters, double, ModelParameters> change,
        bool setsInHot = false
    )
    {
        Id = id;
        Catalogue = catalogue;
        Scale = scale;
        SetsInHot = setsInHot;
        this.change = change;
        this.applies = applies;
    }

    /// <summary>Id, lower case with hyphens, as the knowledge of faults names it where it has this fault.</summary>
    public string Id { get; }

    /// <summary>Id in the catalogue of simulated faults.</summary>
    public string Catalogue { get; }

    /// <summary>What its size is counted in.</summary>
    public FaultScale Scale { get; }

    /// <summary>Whether it is put into a machine that is already hot: cold, it would never get there.</summary>
    public bool SetsInHot { get; }

    /// <summary>Whether a machine can have it.</summary>
    /// <exception cref="ArgumentException">The description does not fit together.</exception>
    public bool AppliesTo(Machine machine) => applies(ModelParameters.From(machine));

    /// <summary>The fault at a severity: 0 none, 1 as in the catalogue. Between them its figure goes in a straight line; a state is there or not.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not from 0 to 1.</exception>
    public FaultAtSeverity At(double severity) =>
        severity is >= 0 and <= 1
            ? new FaultAtSeverity(this, severity)
            : throw new ArgumentOutOfRangeException(nameof(severity), severity, "A severity from 0 to 1.");

    /// <summary>The fault at a size in its own unit, between <see cref="FaultScale.Least"/> and <see cref="FaultScale.Most"/>; it may be worse than in the catalogue.</summary>
    /// <exception cref="ArgumentException">The fault is a state, or the unit measures something else.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Outside the typical range.</exception>
    public FaultAtSeverity Sized(Amount size)
    {
        if (Scale.Unit is not { } unit)
        {
            throw new ArgumentException($"{Id} is there or not; it has no size.", nameof(size));
        }

        var value = size.In(unit).Value;
        return value >= Scale.Least && value <= Scale.Most
            ? new FaultAtSeverity(this, (value - Scale.Sound) / (Scale.Catalogue - Scale.Sound))
            : throw new ArgumentOutOfRangeException(nameof(size), value, $"{Id} is between {Scale.Least} and {Scale.Most} {unit.Symbol}.");
    }

    internal bool AppliesTo(ModelParameters parameters) => applies(parameters);

    internal ModelParameters Change(ModelParameters parameters, double severity) =>
        severity == 0 ? parameters : change(parameters, severity);
}

/// <summary>What the size of a fault is counted in.</summary>
/// <param name="Unit">Unit; null where the fault is there or not.</param>
/// <param name="Sound">Its figure on a sound machine.</param>
/// <param name="Catalogue">Its figure at severity 1.</param>
/// <param name="Least">Least the figure typically is (estimate, from memory).</param>
/// <param name="Most">Most it typically is (estimate, from memory).</param>
public sealed record FaultScale(Unit? Unit, double Sound, double Catalogue, double Least, double Most)
{
    /// <summary>Of a fault that is there or not.</summary>
    public static FaultScale State { get; } = new(null, 0, 1, 0, 1);
}

/// <summary>A fault and how bad it is.</summary>
/// <param name="Fault">Fault.</param>
/// <param name="Severity">0 none, 1 as in the catalogue; above 1 only by a size in its own unit.</param>
public sealed record FaultAtSeverity(MachineFault Fault, double Severity);

using Rinsewright.Client.Shell;
using Rinsewright.Drawing.Section;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Client.Machines;

/// <summary>What the section shows of a reading.</summary>
/// <param name="Water">Temperatures by tank id and <c>booster</c>.</param>
/// <param name="Levels">Water as share of full, by tank; null where as described.</param>
/// <param name="Figures">Figures of flows by flow id.</param>
/// <param name="Faulty">States of the parts a fault shows on.</param>
public sealed record SectionView(
    IReadOnlyDictionary<string, Temperature> Water,
    IReadOnlyDictionary<string, double>? Levels,
    IReadOnlyDictionary<string, string> Figures,
    IReadOnlyDictionary<string, PartState> Faulty
)
{
    private static readonly (string Tank, Observable Reading)[] Temperatures =
    [
        ("prewash", Observables.PrewashTankTemperature),
        ("wash", Observables.WashTankTemperature),
        ("rinse", Observables.RinseTankTemperature),
        ("booster", Observables.FinalRinseTemperature),
    ];

    private static readonly (string Flow, Observable Reading)[] Flows =
    [
        ("fill", Observables.MakeUpWater),
        ("drain", Observables.DrainWater),
        ("final-rinse", Observables.RinseVolumePerRack),
    ];

    /// <summary>Nothing computed yet.</summary>
    public static SectionView Empty { get; } = new(Map<Temperature>(), null, Map<string>(), Map<PartState>());

    /// <summary>A reading, and the fault that made it.</summary>
    /// <param name="reading">Reading; null while there is none.</param>
    /// <param name="changed">Whether it is another than the machine's as described.</param>
    /// <param name="fault">Fault shown; null for none.</param>
    /// <param name="plan">The drawing.</param>
    /// <param name="voice">Language and units.</param>
    public static SectionView Of(SteadyReading? reading, bool changed, string? fault, SectionPlan plan, Voice voice)
    {
        double? Value(Observable o) => reading?.Of(o.Id)?.Value?.Value;
        var water = Map<Temperature>();
        foreach (var (tank, observable) in Temperatures)
        {
            if (Value(observable) is { } fahrenheit)
            {
                water[tank] = Temperature.FromFahrenheit(fahrenheit);
            }
        }

        var levels = changed && Value(Observables.WashTankLevel) is not null ? Map<double>() : null;
        levels?.Add("wash", Value(Observables.WashTankLevel)!.Value / 100);
        var figures = Map<string>();
        foreach (var (flow, observable) in Flows)
        {
            if (Value(observable) is > 0.001)
            {
                figures[flow] = ReadingText.Show(voice, reading!.Of(observable.Id));
            }
        }

        return new SectionView(water, levels, figures, fault is null ? Map<PartState>() : FaultParts.Of(fault, plan));
    }

    private static Dictionary<string, T> Map<T>() => new(StringComparer.Ordinal);
}

/// <summary>Where the rack is.</summary>
/// <param name="At">Load-side edge, mm from the load-end face; null where it stands in its place.</param>
/// <param name="Moment">Entry of the ride that the middle of the rack is at; null where there is no ride.</param>
public sealed record RackPlace(double? At, int? Moment);

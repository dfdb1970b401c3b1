using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Machines;

/// <summary>A machine in use.</summary>
/// <param name="Machine">Machine.</param>
/// <param name="RacksPerHour">Racks an hour asked for, above 0.</param>
/// <param name="Faults">Faults, none or several; they act together.</param>
public sealed record Situation(Machine Machine, double RacksPerHour, IReadOnlyList<FaultAtSeverity>? Faults = null);

/// <summary>What situations are held against.</summary>
/// <param name="Rules">Rule set in force; null for the one taken where nobody chose.</param>
/// <param name="Day">A day's use; null where cost is not asked for.</param>
/// <param name="Tariff">Prices; null where nobody has said them.</param>
public sealed record WhatIfTerms(RuleSet? Rules = null, DayOfUse? Day = null, Tariff? Tariff = null);

/// <summary>What one rack takes; stand-by and fills not counted.</summary>
/// <param name="WaterLitre">Water, L.</param>
/// <param name="EnergyKilowattHour">Electricity and heat from steam or gas, kWh.</param>
/// <param name="DetergentGram">Detergent, g.</param>
/// <param name="RinseAdditiveGram">Rinse additive, g.</param>
/// <param name="SanitizerGram">Sanitizer, g of the substance that counts.</param>
public sealed record PerRack(
    double WaterLitre,
    double EnergyKilowattHour,
    double DetergentGram,
    double RinseAdditiveGram,
    double SanitizerGram
);

/// <summary>What a situation comes to.</summary>
/// <param name="Reading">What the machine reads.</param>
/// <param name="PerRack">What one rack takes.</param>
/// <param name="Limits">Limits in force and whether what was computed keeps them. A model's word: it ranks and teaches, and proves nothing.</param>
/// <param name="Day">What a day takes and costs; null where not asked for.</param>
public sealed record WhatIfSide(SteadyReading Reading, PerRack PerRack, IReadOnlyList<LimitCheck> Limits, DayCost? Day);

/// <summary>An observable before and after.</summary>
/// <param name="Observable">What.</param>
/// <param name="Before">Before; null where the machine did not have it.</param>
/// <param name="After">After; null where it does not have it.</param>
/// <param name="Shows">Whether gauges and eyes tell the difference: at least <see cref="Observable.Threshold"/>.</param>
public sealed record Difference(Observable Observable, Observed? Before, Observed? After, bool Shows);

/// <summary>Two situations side by side.</summary>
/// <param name="Before">Before.</param>
/// <param name="After">After.</param>
/// <param name="Differences">Every observable of either, in the order they are shown.</param>
public sealed record WhatIfResult(WhatIfSide Before, WhatIfSide After, IReadOnlyList<Difference> Differences);

/// <summary>
/// Compares a machine before and after a change: pressure, speed, incoming temperature, a heater, a curtain, the number of plates, or anything else of the description, or faults. From the steady
/// state, so that an answer comes at once.
/// </summary>
public static class WhatIf
{
    /// <summary>Works out one situation.</summary>
    /// <exception cref="ArgumentException">The description does not fit together, or the machine cannot have one of the faults.</exception>
    /// <exception cref="ArgumentOutOfRangeException">No rate above 0, or a negative figure of the day.</exception>
    public static WhatIfSide Of(Situation situation, WhatIfTerms? terms = null)
    {
        return Of(situation, SteadyState.Of(situation.Machine, situation.RacksPerHour, situation.Faults), terms);
    }

    /// <summary>Works out one situation in parts, so that a screen stays live between: null until the last, which is what <see cref="Of(Situation, WhatIfTerms?)"/> gives.</summary>
    /// <exception cref="ArgumentException">The description does not fit together, or the machine cannot have one of the faults.</exception>
    /// <exception cref="ArgumentOutOfRangeException">No rate above 0, or a negative figure of the day.</exception>
    public static IEnumerable<WhatIfSide?> InParts(Situation situation, WhatIfTerms? terms = null) =>
        SteadyState
            .InParts(situation.Machine, situation.RacksPerHour, situation.Faults)
            .Select(reading => reading is null ? null : Of(situation, reading, terms));

    /// <summary>Works out a situation at once from one that was worked out, for a figure that follows a slider; see <see cref="SteadyNear"/>.</summary>
    /// <param name="situation">Situation.</param>
    /// <param name="known">A machine that was read.</param>
    /// <param name="terms">What it is held against.</param>
    /// <exception cref="ArgumentException">The description does not fit together, or the machine cannot have one of the faults.</exception>
    /// <exception cref="ArgumentOutOfRangeException">No rate above 0, or a negative figure of the day.</exception>
    public static WhatIfSide Near(Situation situation, SteadyNear known, WhatIfTerms? terms = null) =>
        Of(situation, known.Of(situation.Machine, situation.RacksPerHour, situation.Faults), terms);

    private static WhatIfSide Of(Situation situation, SteadyReading reading, WhatIfTerms? terms)
    {
        var racks = reading.Of(Observables.RacksPerHour.Id)?.Value?.Value ?? situation.RacksPerHour;
        var load = reading.Load;
        return new WhatIfSide(
            reading,
            new PerRack(
                load.WaterLitrePerHour / racks,
                (load.ElectricKilowatt + load.FuelKilowatt) / racks,
                load.DetergentGramPerHour / racks,
                load.RinseAdditiveGramPerHour / racks,
                load.SanitizerGramPerHour / racks
            ),
            LimitCheck.All(situation.Machine, terms?.Rules ?? RuleSets.Find(RuleSets.DefaultId)!, reading.Of),
            terms?.Day is { } day
                ? DayCost.Of(
                    MachineFaults.Changed(ModelParameters.From(situation.Machine), situation.Faults ?? []),
                    reading,
                    day,
                    terms.Tariff ?? new Tariff()
                )
                : null
        );
    }

    /// <summary>Works out both and compares them.</summary>
    /// <exception cref="ArgumentException">A description does not fit together, or a machine cannot have one of the faults.</exception>
    /// <exception cref="ArgumentOutOfRangeException">No rate above 0, or a negative figure of the day.</exception>
    public static WhatIfResult Compare(Situation before, Situation after, WhatIfTerms? terms = null) =>
        Compare(Of(before, terms), Of(after, terms));

    /// <summary>Compares two that were worked out.</summary>
    public static WhatIfResult Compare(WhatIfSide before, WhatIfSide after)
    {
        var differences = new List<Difference>();
        foreach (var observable in Observables.All)
        {
            var (was, now) = (before.Reading.Of(observable.Id), after.Reading.Of(observable.Id));
            if (was is not null || now is not null)
            {
                differences.Add(new Difference(observable, was, now, Shows(observable, was, now)));
            }
        }

        return new WhatIfResult(before, after, differences);
    }

    /// <summary>Whether gauges and eyes tell two readings of an observable apart.</summary>
    public static bool Shows(Observable observable, Observed? before, Observed? after) =>
        (before?.Value, after?.Value) switch
        {
            ({ } was, { } now) => Math.Abs(now.Value - was.Value) >= observable.Threshold,
            (null, null) => before?.Absence != after?.Absence,
            _ => true,
        };
}

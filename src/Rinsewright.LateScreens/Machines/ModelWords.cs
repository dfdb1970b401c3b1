using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Client.Machines;

/// <summary>Where limits and observables meet on the screen.</summary>
internal static class ModelWords
{
    /// <summary>The reading beside which a limit is drawn; null where the model has none.</summary>
    public static Observable? PointOf(Limit limit) =>
        (limit.Point, limit.Dimension) switch
        {
            (MeasuringPoint.WashTank, Dimension.Temperature) => Observables.WashTankTemperature,
            (MeasuringPoint.PumpedRinseTank, Dimension.Temperature) => Observables.RinseTankTemperature,
            (MeasuringPoint.FinalRinseManifold, Dimension.Temperature) => Observables.FinalRinseTemperature,
            (MeasuringPoint.FinalRinseLine, Dimension.GaugePressure) => Observables.FinalRinsePressure,
            (MeasuringPoint.SanitizingSolution, Dimension.MassConcentration) => Observables.SanitizerOnWare,
            (MeasuringPoint.WareSurface, Dimension.Temperature) => Observables.PlatePeakTemperature,
            _ => null,
        };

    /// <summary>Every observable before and after.</summary>
    public static IReadOnlyList<Difference> Compare(SteadyReading before, SteadyReading after) =>
        [
            .. Observables
                .All.Select(o => (Observable: o, Before: before.Of(o.Id), After: after.Of(o.Id)))
                .Where(p => p.Before is not null || p.After is not null)
                .Select(p => new Difference(p.Observable, p.Before, p.After, WhatIf.Shows(p.Observable, p.Before, p.After))),
        ];
}

using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Visits;
using Rinsewright.Engine.Visits.History;
using Rinsewright.Knowledge;
using static Rinsewright.Engine.Tests.Visits.InventedVisit;

namespace Rinsewright.Engine.Tests.Visits.History;

/// <summary>Invented runs of visits to one machine.</summary>
internal static class InventedHistory
{
    public static readonly DateOnly Today = new(2027, 12, 1);

    /// <summary>A visit so many days after the first, that reads one thing under load as found.</summary>
    public static Visit On(
        int day,
        double? value,
        string kind = "rd-final-rinse-temp",
        Unit? unit = null,
        VisitMoment moment = VisitMoment.AsFound
    ) => Conveyor() with { Began = Morning.AddDays(day), Readings = value is { } v ? [At(day, v, kind, unit, moment)] : [], Photos = [] };

    public static VisitReading At(
        int day,
        double value,
        string kind = "rd-final-rinse-temp",
        Unit? unit = null,
        VisitMoment moment = VisitMoment.AsFound
    ) =>
        new(kind, new Amount(value, unit ?? Units.Fahrenheit), moment, OperatingState.Load)
        {
            Instrument = kind == "rd-rinse-pressure" ? "gauge" : "probe",
            At = Morning.AddDays(day).AddMinutes(moment == VisitMoment.AsLeft ? 60 : 5),
        };

    public static MachineHistory Of(IEnumerable<Visit> visits, DateOnly? today = null) =>
        MachineHistory.Of(
            visits.Select((v, i) => new HistoryVisit($"v{v.Began:yyyyMMddHHmm}-{v.Readings.Count}", v, Judge(v))),
            BuiltInKnowledge.Trade,
            today ?? Today
        );

    /// <summary>Final rinse of monthly visits.</summary>
    public static MachineHistory Rinse(params double[] values) => Of(values.Select((v, i) => On(30 * i, v)));

    public static ReadingSeries Series(MachineHistory history, string kind = "rd-final-rinse-temp") =>
        Assert.Single(history.Series, s => s.Kind == kind && s.State == OperatingState.Load);
}

using Rinsewright.Engine.Numerics;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits;

// The same number again and again (V15, V16).
public static partial class CrewLogJudgement
{
    // Most of an own band is what is not known of this machine, the same every day; this share moves from reading to reading, besides the thermostat (estimate, no source).
    private const double DayShare = 1.0 / 3;

    // An own band reaches from the 5 to the 95 % point.
    private const double BandDeviations = 2 * 1.6448536269514722;

    private static readonly double[] Steps = [10, 5, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01];

    // Standard deviation from reading to reading, in the unit of the log; null where the model reads no such thing in that state. A thermostat's water is met anywhere between its ends.
    private static double? Spread(Visit visit, CrewLog log, VisitReadingKind kind, OwnBands bands)
    {
        if (bands.Find(kind, log.State) is not { } band)
        {
            return null;
        }

        var tank = visit.Machine.Tanks.FirstOrDefault(t => t.Duty == kind.Tank)?.Thermostat;
        var thermostat = tank ?? (kind.Id == "rd-final-rinse-temp" ? visit.Machine.Booster?.Thermostat : null);
        var swing = thermostat is { } t ? (log.Unit == Units.Fahrenheit ? t.Band.Value.InFahrenheit : t.Band.Value.InCelsius) : 0;
        // The band of a tank holds its thermostat's already.
        var width = band.High.In(log.Unit).Value - band.Low.In(log.Unit).Value - (tank is null ? 0 : swing);
        var spread = Math.Sqrt(Math.Pow(Math.Max(0, width) / BandDeviations * DayShare, 2) + (swing * swing / 12));
        return spread > 0 ? spread : null;
    }

    private static SameNumber? Same(CrewLog log, IReadOnlyList<CrewEntry> entries, RuleSet rules, double? spread)
    {
        if (entries.Count < Least)
        {
            return null;
        }

        var step = StepOf(log, entries, rules);
        var all = Most(entries, null, 1);
        if (all.Likely || log.ShiftsPerDay == 1)
        {
            return all;
        }

        // Every shift is looked at as well, and each look may find something by chance.
        return entries
                .GroupBy(e => e.Shift)
                .Where(g => g.Count() >= Least)
                .Select(g => Most([.. g], g.Key, log.ShiftsPerDay))
                .Where(s => s.Likely)
                .MinBy(s => s.Chance)
            ?? all;

        SameNumber Most(IReadOnlyList<CrewEntry> of, int? shift, int looks)
        {
            var most = of.GroupBy(e => e.Value).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).First();
            return new SameNumber(
                new Amount(most.Key, log.Unit),
                most.Count(),
                of.Count,
                shift,
                new Amount(step, log.Unit),
                spread is { } s ? Math.Min(1, looks * Chance(of.Count, most.Count(), NormalShare.Within(step / 2 / s))) : null
            );
        }
    }

    /// <summary>V15: any k of n alike, each at most as likely as the fullest cell: C(n, k) p^(k − 1), and p^(n − 1) where all are.</summary>
    internal static double Chance(int n, int k, double p)
    {
        var ways = 0.0;
        for (var i = 1; i <= n - k; i++)
        {
            ways += Math.Log((double)(k + i) / i);
        }

        return Math.Min(1, Math.Exp(ways + ((k - 1) * Math.Log(p))));
    }

    // As coarse as everything written allows; where all is one number, no coarser than a gauge may be divided.
    private static double StepOf(CrewLog log, IReadOnlyList<CrewEntry> entries, RuleSet rules)
    {
        var seen = Array.Find(Steps, s => entries.All(e => Math.Abs((e.Value / s) - Math.Round(e.Value / s)) < 1e-6));
        seen = seen > 0 ? seen : Steps[^1];
        var difference = DifferenceUnit(log.Unit);
        return
            entries.All(e => e.Value == entries[0].Value)
            && rules.Instruments.FirstOrDefault(i => i.Measures == log.Unit.Dimension && i.Aspect == InstrumentAspect.Division) is { } rule
            ? Math.Min(
                seen,
                rule.Maximum.FirstOrDefault(m => m.Unit == difference) is { Value: > 0 } printed
                    ? printed.Value
                    : rule.Maximum[0].In(difference).Value
            )
            : seen;
    }

    private static void SaySame(SameNumber? same, int written, Action<Statement, bool> say)
    {
        if (same is not { } s)
        {
            if (written > 0)
            {
                say(Statement.Of("visit.log.few", ("count", (long)written), ("least", (long)Least)), false);
            }

            return;
        }

        List<(string, object)> values = [("value", s.Value), ("count", (long)s.Count), ("of", (long)s.Of)];
        switch (s.Chance)
        {
            case null when s.Count >= Least && 2 * s.Count > s.Of:
                say(Statement.Of("visit.log.same-unknown", [.. values]), false);
                break;
            case null:
            case not null when s.Count < 2: // no number stands twice: nothing to say of it
                break;
            case < Risk and var chance:
                values.AddRange([("step", s.Step), ("odds", Odds(chance)), ("shift", (long)(s.Shift ?? 0))]);
                say(Statement.Of(s.Shift is null ? "visit.log.same" : "visit.log.same-shift", [.. values]), true);
                break;
            default:
                say(Statement.Of("visit.log.varies", [.. values]), false);
                break;
        }
    }

    // "Less than once in so many", the figure cut to one digit and to a million.
    private static double Odds(double chance)
    {
        var odds = Math.Min(1e6, 1 / chance);
        var digit = Math.Pow(10, Math.Floor(Math.Log10(odds)));
        return Math.Floor(odds / digit) * digit;
    }
}

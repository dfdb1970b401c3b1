using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits;

/// <summary>Holds every line against rule, own band and what is usual; adds a line for whatever a whole visit reads and nobody read.</summary>
internal static class ReadingLines
{
    public static IReadOnlyList<JudgedReading> Of(Visit visit, TradeKnowledge knowledge, VisitProofs proofs, OwnBands bands)
    {
        var known = knowledge.Observables.Readings.ToDictionary(r => r.Id, StringComparer.Ordinal);
        var order = VisitReadingKinds.Usual(knowledge, visit.Machine);
        var lines = visit.Readings.Concat(NotRead(visit, order));
        return
        [
            .. lines
                .OrderBy(r => order.ToList().IndexOf(r.Kind) is >= 0 and var place ? place : order.Count)
                .ThenBy(r => r.Kind, StringComparer.Ordinal)
                .ThenBy(r => r.Moment)
                .ThenBy(r => r.At ?? DateTimeOffset.MaxValue)
                .ThenBy(r => r.Value?.SI ?? double.MaxValue)
                .Select(r => Judge(visit, r, known.GetValueOrDefault(r.Kind), knowledge, proofs, bands)),
        ];
    }

    private static IEnumerable<VisitReading> NotRead(Visit visit, IReadOnlyList<string> usual) =>
        usual
            .Where(id => !visit.Readings.Any(r => r.Kind == id))
            .Select(id => new VisitReading(id, null, visit.Touched ? VisitMoment.AsLeft : VisitMoment.AsFound));

    private static JudgedReading Judge(
        Visit visit,
        VisitReading reading,
        KnownReading? known,
        TradeKnowledge knowledge,
        VisitProofs proofs,
        OwnBands bands
    )
    {
        var kind = VisitReadingKinds.Find(reading.Kind);
        if (reading.Value is not { } value)
        {
            return new JudgedReading(
                reading,
                known,
                null,
                BandStanding.NotRead,
                null,
                null,
                [],
                reading.NotReadBecause is { } why ? [Statement.Of("visit.reading.not-read-because", ("why", why))] : []
            );
        }

        if (VisitProofs.Refused(visit, reading) is { } refused || kind is null)
        {
            var why = VisitProofs.Refused(visit, reading);
            return new JudgedReading(reading, known, null, BandStanding.NoBand, null, null, [], why is null ? [] : [why]);
        }

        List<Statement> says = [];
        var check = proofs.Of(reading);
        if (check is { Status: not (ReadingStatus.InRange or ReadingStatus.NoLimit) })
        {
            says.Add(check.Because);
        }

        var (standing, own) = Against(visit, reading, kind, value, bands, says);
        // The knowledge's usual range stands in only where nothing better speaks.
        var usual =
            check is { Status: not ReadingStatus.NoLimit } || own is not null ? null : Usual(visit, known, kind, value.Unit, knowledge);
        if (usual is { } range && Outside(value, range.Range))
        {
            says.Add(
                Statement.Of(
                    "visit.reading.unusual",
                    ("value", value),
                    ("low", range.Range.Low ?? range.Range.High!.Value),
                    ("high", range.Range.High ?? range.Range.Low!.Value)
                )
            );
        }

        return new JudgedReading(reading, known, check, standing, own, usual?.Range, usual?.Source ?? [], says);
    }

    private static (BandStanding, OwnBand?) Against(
        Visit visit,
        VisitReading reading,
        VisitReadingKind kind,
        Amount value,
        OwnBands bands,
        List<Statement> says
    )
    {
        // A label says only that a temperature was passed or not; no band holds that.
        if (reading.Method == ReadingMethod.IrreversibleLabel || bands.Find(kind, reading.State, reading.RacksPerHour) is not { } found)
        {
            if (reading.State == OperatingState.Unknown && (kind.UnderLoad ?? kind.WithoutRacks) is not null)
            {
                says.Add(Statement.Of("visit.reading.state-not-said"));
            }

            return (BandStanding.NoBand, null);
        }

        var own = found with { Low = found.Low.In(value.Unit), High = found.High.In(value.Unit) };
        var off = HalfWidth(visit, reading, value.Unit);
        var standing =
            value.Value >= own.Low.Value && value.Value <= own.High.Value ? BandStanding.Inside
            : value.Value >= own.Low.Value - off && value.Value <= own.High.Value + off ? BandStanding.Edge
            : value.Value < own.Low.Value ? BandStanding.Below
            : BandStanding.Above;
        if (standing is BandStanding.Below or BandStanding.Above)
        {
            says.Add(
                Statement.Of(
                    standing == BandStanding.Below ? "visit.reading.below-band" : "visit.reading.above-band",
                    ("value", value),
                    ("low", own.Low),
                    ("high", own.High),
                    ("state", reading.State)
                )
            );
        }

        return (standing, own);
    }

    /// <summary>What a reading may be off by, in its unit: as its instrument says, else what a service instrument usually is; 0 where nobody knows.</summary>
    internal static double HalfWidth(Visit visit, VisitReading reading, Unit unit)
    {
        if (VisitProofs.InstrumentOf(visit, reading)?.Uncertainty is { } stated)
        {
            return stated.SI * unit.Denominator / unit.Numerator;
        }

        return VisitReadingKinds.Find(reading.Kind)?.Figure is { } figure
            ? figure.Proportional
                ? figure.Uncertainty * Math.Abs(reading.Value?.Value ?? 0)
                : figure.Uncertainty * figure.Unit.Numerator / figure.Unit.Denominator * unit.Denominator / unit.Numerator
            : 0;
    }

    private static ((Amount? Low, Amount? High) Range, IReadOnlyList<string> Source)? Usual(
        Visit visit,
        KnownReading? known,
        VisitReadingKind kind,
        Unit unit,
        TradeKnowledge knowledge
    )
    {
        var type = PartOrder.TypeOf(visit.Machine.Kind);
        var chemical = visit.Machine.Sanitizing != SanitizingMethod.HotWater;
        // Rows of a fitting nobody has said are left out; so is a row of the other way of sanitizing.
        var row = known?.Normal.FirstOrDefault(n =>
            knowledge.Fits(n.Machines, type)
            && n.Mode is var mode
            && (mode is "any" or "fresh-rinse" || (mode == "chemical" ? chemical : mode is "hot" or "hot-dual-temperature" && !chemical))
        );
        if (row is null || (row.Min is null && row.Max is null))
        {
            return null;
        }

        Amount? Written(double? figure) => figure is { } f ? new Amount(f * kind.UsualScale, kind.Unit).In(unit) : null;
        return ((Written(row.Min), Written(row.Max)), row.Src);
    }

    private static bool Outside(Amount value, (Amount? Low, Amount? High) range) =>
        (range.Low is { } low && value.SI < low.SI) || (range.High is { } high && value.SI > high.SI);
}

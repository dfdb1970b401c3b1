using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits;

/// <summary>What is missing before a visit is signed: what blocks it, and what it is signed with.</summary>
internal static class MissingBeforeSigning
{
    public static IReadOnlyList<Lacking> Of(
        Visit visit,
        Proof after,
        IReadOnlyList<JudgedReading> lines,
        IReadOnlyList<PartLine> parts,
        IReadOnlyList<AcceptanceLine> acceptance
    )
    {
        List<Lacking> missing = [];
        void Block(Statement says) => missing.Add(new Lacking(says, true));
        void Say(Statement says) => missing.Add(new Lacking(says, false));

        if (string.IsNullOrWhiteSpace(visit.Technician))
        {
            Block(Statement.Of("visit.missing.technician"));
        }

        var seen =
            visit.Photos.Any(p => p.Moment == VisitMoment.AsFound)
            || visit.Readings.Any(r => r is { Moment: VisitMoment.AsFound, Value: not null })
            || visit.Proofs.Any(p => p.Moment == VisitMoment.AsFound);
        if (!seen)
        {
            // Once it was touched nobody can read it as it was found any more.
            missing.Add(
                new Lacking(Statement.Of(visit.Touched ? "visit.missing.as-found-lost" : "visit.missing.as-found"), !visit.Touched)
            );
        }

        foreach (var line in acceptance.Where(a => a.Standing == AcceptanceStanding.NotRun))
        {
            Block(Statement.Of("visit.missing.acceptance", ("area", line.Area), ("says", line.Because)));
        }

        foreach (
            var change in visit.Changes.Where(c => c is { Kind: ChangeKind.Set, After: null }).OrderBy(c => c.What, StringComparer.Ordinal)
        )
        {
            Block(Statement.Of("visit.missing.setting-after", ("what", change.What)));
        }

        foreach (
            var change in visit.Changes.Where(c => c is { Kind: ChangeKind.Set, Before: null }).OrderBy(c => c.What, StringComparer.Ordinal)
        )
        {
            Say(Statement.Of("visit.missing.setting-before", ("what", change.What)));
        }

        foreach (
            var supply in visit
                .Supplies.Where(s => s is { Changed: true, Primed: false, Feeds: not null })
                .OrderBy(s => s.Product, StringComparer.Ordinal)
        )
        {
            Block(Statement.Of("visit.missing.primed", ("product", supply.Product)));
        }

        // A heat dose is another way of the same proof, read by a logger only.
        foreach (
            var check in after.Checks.Where(c =>
                c.Status == ReadingStatus.NotRead && c.Limit?.Dimension is not (Dimension.HeatUnits or Dimension.EquivalentTime)
            )
        )
        {
            Say(check.Because);
        }

        foreach (var strip in lines.Where(l => NeedsSupply(visit, l.Reading)))
        {
            Say(Statement.Of("visit.missing.strip", ("reading", UnexplainedChanges.Name(strip))));
        }

        Count("visit.missing.instrument", lines.Count(l => NeedsInstrument(l.Reading)));
        foreach (var line in lines.Where(l => l.Reading is { Value: not null, Instrument: not null }))
        {
            // It is judged as if nobody had said what it was read with.
            if (VisitProofs.InstrumentOf(visit, line.Reading) is null)
            {
                Say(
                    Statement.Of(
                        "visit.missing.other-instrument",
                        ("reading", UnexplainedChanges.Name(line)),
                        ("instrument", visit.Instruments[line.Reading.Instrument!].Name)
                    )
                );
            }
        }

        Count(
            "visit.missing.readings",
            lines.Select(l => l.Reading.Kind).Distinct().Count(k => lines.All(l => l.Reading.Kind != k || l.Reading.Value is null))
        );
        Count("visit.missing.parts", parts.Count(p => p.State == PartState.NotLookedAt));
        if (!visit.CrewLogs.Any(l => l.LookedThrough))
        {
            Say(Statement.Of("visit.missing.crew-log"));
        }

        Count("visit.missing.crew-unread", visit.CrewLogs.Sum(l => l.LookedUnread.Count));

        if (visit is { Complaint: not null, Cause: null })
        {
            Say(Statement.Of("visit.missing.cause"));
        }

        foreach (var side in Enum.GetValues<SignedFor>().Where(s => visit.Signatures.All(n => n.For != s)))
        {
            Say(Statement.Of("visit.missing.signature", ("side", side)));
        }

        return [.. missing.OrderByDescending(m => m.Blocks)];

        void Count(string key, int count)
        {
            if (count > 0)
            {
                Say(new Statement(key, [new StatementValue("count", (long)count)]));
            }
        }
    }

    private static bool NeedsSupply(Visit visit, VisitReading r) =>
        r is { Value: not null, Method: ReadingMethod.Strip or ReadingMethod.IrreversibleLabel }
        && VisitProofs.Supply(visit, r) is not { Lot: not null, Expires: not null };

    private static bool NeedsInstrument(VisitReading r) =>
        r is { Value: not null, Instrument: null, Method: ReadingMethod.Probe or ReadingMethod.MaximumThermometer or ReadingMethod.Logger };
}

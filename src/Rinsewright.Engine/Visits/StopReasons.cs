using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits;

/// <summary>What stops the use of a machine (V5): not left to probability. It stands until the same thing was looked for when everything was done, and was gone.</summary>
internal static class StopReasons
{
    private const string Safety = "safety";

    public static IReadOnlyList<StopReason> Of(Visit visit, TradeKnowledge knowledge, Outcome asLeft)
    {
        List<StopReason> stops = [];
        foreach (var group in visit.Findings.GroupBy(f => f.Id).Where(g => g.Any(f => f.Found)))
        {
            var open = Open(group);
            if (knowledge.FindSymptom(group.Key) is { First: true } symptom)
            {
                stops.Add(Acted(symptom, knowledge, open));
            }

            var name = knowledge.FindCheck(group.Key)?.Name ?? knowledge.FindState(group.Key)?.Kind.Name;
            if (name is not { } by)
            {
                continue;
            }

            var found = Statement.Of("visit.stop.found", ("finding", by));
            var confirmed = Fitting(visit, knowledge).Where(f => f.Confirm.By.Contains(group.Key, StringComparer.Ordinal)).ToList();
            stops.AddRange(confirmed.Select(f => Stop(f, knowledge, found, open, asLeft)).OfType<StopReason>());
            // Marked to be asked before any ranking: it stops, whether a fault is confirmed by it or not.
            if (knowledge.FindCheck(group.Key) is { First: true } check && confirmed.Count == 0)
            {
                stops.Add(
                    new StopReason(
                        StopKind.Danger,
                        check.Id,
                        check.Name,
                        found,
                        open,
                        [knowledge.HazardOf(check.Risk)],
                        knowledge.Common.People.FirstOrDefault(p => p.Id == check.Who),
                        null,
                        [check.How]
                    )
                );
            }
        }

        foreach (var group in visit.Parts.GroupBy(p => p.Part).Where(g => g.Any(p => p.Fault is not null)))
        {
            var open =
                group.Where(p => p.Moment == VisitMoment.AsLeft).ToList() is not { Count: > 0 } left
                || left.Exists(p => p.State != PartState.Sound);
            var part = knowledge.Anatomy.Parts.FirstOrDefault(p => p.Id == group.Key);
            var found = Statement.Of("visit.stop.found", ("finding", part?.Name ?? new Phrase(group.Key, group.Key)));
            stops.AddRange(
                group
                    .Select(p => p.Fault)
                    .OfType<string>()
                    .Distinct(StringComparer.Ordinal)
                    .Where(knowledge.Faults.ContainsKey)
                    .Select(id => Stop(knowledge.Faults[id], knowledge, found, open, asLeft))
                    .OfType<StopReason>()
            );
        }

        return
        [
            .. stops
                .GroupBy(s => s.Id)
                .Select(g => g.FirstOrDefault(s => s.Open) ?? g.First())
                .OrderBy(s => s.Open ? 0 : 1)
                .ThenBy(s => s.Kind)
                .ThenBy(s => s.Id, StringComparer.Ordinal),
        ];
    }

    // Gone is only what was looked for at the end and not found.
    private static bool Open(IEnumerable<VisitFinding> looks)
    {
        var left = looks.Where(f => f.Moment == VisitMoment.AsLeft).ToList();
        return left.Count == 0 || left.Exists(f => f.Found);
    }

    private static IEnumerable<TradeFault> Fitting(Visit visit, TradeKnowledge knowledge)
    {
        var type = PartOrder.TypeOf(visit.Machine.Kind);
        var mode = visit.Machine.Sanitizing == SanitizingMethod.HotWater ? "hot" : "chemical";
        return knowledge
            .Faults.Values.Where(f => knowledge.Fits(f.Machines, type) && (f.Sanitizing is null || f.Sanitizing == mode))
            .OrderBy(f => f.Id, StringComparer.Ordinal);
    }

    private static StopReason? Stop(TradeFault fault, TradeKnowledge knowledge, Statement found, bool open, Outcome asLeft)
    {
        // Something that can hurt somebody stops whatever the knowledge says of the ware.
        var danger = fault is { Impact: Safety, StopUse: "yes" };
        if (!danger && fault.StopUse != "yes" && !(fault.StopUse == "if-proof-fails" && asLeft != Outcome.Proven))
        {
            return null;
        }

        return new StopReason(
            danger ? StopKind.Danger : StopKind.Sanitizing,
            fault.Id,
            fault.Name,
            found,
            open,
            [.. fault.Safety.Where(s => s != "none").Select(knowledge.HazardOf)],
            knowledge.Common.People.FirstOrDefault(p => p.Id == fault.Who),
            fault.Cure,
            [.. fault.Confirm.By.Select(b => knowledge.FindCheck(b)?.How).OfType<Phrase>()]
        );
    }

    private static StopReason Acted(Symptom symptom, TradeKnowledge knowledge, bool open)
    {
        var asks = symptom.AskNext.Select(knowledge.FindCheck).OfType<TradeCheck>().ToList();
        return new StopReason(
            StopKind.Danger,
            symptom.Id,
            symptom.Name,
            Statement.Of("visit.stop.said", ("symptom", symptom.Name)),
            open,
            [.. asks.Select(c => c.Risk).Distinct(StringComparer.Ordinal).Where(r => r != "none").Select(knowledge.HazardOf)],
            asks.Count > 0 ? knowledge.Common.People.FirstOrDefault(p => p.Id == asks[0].Who) : null,
            null,
            [.. asks.Select(c => c.How)]
        );
    }
}

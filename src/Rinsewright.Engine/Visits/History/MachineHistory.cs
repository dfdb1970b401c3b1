using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits.History;

/// <summary>How a proof stood at one time.</summary>
/// <param name="At">When.</param>
/// <param name="Visit">Place of the visit; null for a proof made apart.</param>
/// <param name="Proof">Id of the proof's document; null for one of a visit.</param>
/// <param name="Moment">As found or as left; null for a proof made apart.</param>
/// <param name="Outcome">What it amounts to.</param>
public sealed record ProofAt(DateTimeOffset At, int? Visit, string? Proof, VisitMoment? Moment, Outcome Outcome);

/// <summary>A sum that was kept with the machine.</summary>
/// <param name="Visit">Place of the first visit that has it.</param>
/// <param name="SetUp">The sum.</param>
public sealed record KeptSum(int Visit, SetUp SetUp);

/// <summary>What the visits of one machine tell together. Nothing in it depends on the order in which they were handed over.</summary>
public sealed class MachineHistory
{
    private MachineHistory(
        IReadOnlyList<HistoryVisit> visits,
        TradeKnowledge knowledge,
        DateOnly today,
        IReadOnlyList<HistoryProof> proofs,
        IReadOnlyList<HistoryWater> water
    )
    {
        Visits = visits;
        Today = today;
        Series = SeriesBuilding.Of(visits, knowledge);
        CrewLogs = CrewSeries.Of(visits, knowledge);
        Water = SeriesBuilding.Of(water, knowledge);
        Findings = FindingHistories.Of(visits, knowledge, today);
        Owed = PartHistories.Owed(visits, today);
        Lives = PartHistories.Lives(visits, today);
        Declined = PartHistories.Declined(visits);
        Proofs = Timeline(visits, proofs);
        Sums = Kept(visits);
        ChangedSinceLast = ChangedSince.Of(this);
    }

    /// <summary>The visits, the earliest first.</summary>
    public IReadOnlyList<HistoryVisit> Visits { get; }

    /// <summary>Day that ages are counted to.</summary>
    public DateOnly Today { get; }

    /// <summary>Readings over time, in the order of the stations of a visit.</summary>
    public IReadOnlyList<ReadingSeries> Series { get; }

    /// <summary>What the crew wrote in the logs that were copied on visits. Beside the readings of the visits, not among them: a number on a paper may never have been read.</summary>
    public IReadOnlyList<ReadingSeries> CrewLogs { get; }

    /// <summary>Readings of the kitchen's water.</summary>
    public IReadOnlyList<ReadingSeries> Water { get; }

    /// <summary>What was found, what is open first, dangers first.</summary>
    public IReadOnlyList<FindingHistory> Findings { get; }

    /// <summary>Parts that are owed.</summary>
    public IReadOnlyList<OwedPart> Owed { get; }

    /// <summary>How long parts lasted.</summary>
    public IReadOnlyList<PartLife> Lives { get; }

    /// <summary>Parts of acceptance tests that were declined.</summary>
    public IReadOnlyList<DeclinedTest> Declined { get; }

    /// <summary>Proofs, the earliest first.</summary>
    public IReadOnlyList<ProofAt> Proofs { get; }

    /// <summary>Sums kept with the machine, the earliest first.</summary>
    public IReadOnlyList<KeptSum> Sums { get; }

    /// <summary>What is different at the last visit from the one before it; empty with fewer than two.</summary>
    public IReadOnlyList<Records.Statement> ChangedSinceLast { get; }

    /// <summary>The last visit; null for none.</summary>
    public HistoryVisit? Last => Visits.Count > 0 ? Visits[^1] : null;

    /// <summary>Series that drift, those that reach a limit first.</summary>
    public IReadOnlyList<ReadingSeries> Drifting =>
        [
            .. Series
                .Where(s => s.Trend.Drifts)
                .OrderBy(s => s.Forecast?.Kind is ForecastKind.There ? 0 : 1)
                .ThenBy(s => s.Forecast?.Earliest ?? DateOnly.MaxValue),
        ];

    /// <summary>History of a machine.</summary>
    /// <param name="visits">Its visits, in any order.</param>
    /// <param name="knowledge">What the trade knows.</param>
    /// <param name="today">Day that ages are counted to.</param>
    /// <param name="proofs">Proofs made apart from visits.</param>
    /// <param name="water">Readings of the kitchen's water.</param>
    public static MachineHistory Of(
        IEnumerable<HistoryVisit> visits,
        TradeKnowledge knowledge,
        DateOnly today,
        IReadOnlyList<HistoryProof>? proofs = null,
        IReadOnlyList<HistoryWater>? water = null
    ) =>
        new([.. visits.OrderBy(v => v.Visit.Began).ThenBy(v => v.Id, StringComparer.Ordinal)], knowledge, today, proofs ?? [], water ?? []);

    private static IReadOnlyList<ProofAt> Timeline(IReadOnlyList<HistoryVisit> visits, IReadOnlyList<HistoryProof> proofs) =>
        [
            .. visits
                .SelectMany(
                    (v, place) =>
                        (ProofAt[])
                            [
                                .. (
                                    v.Visit.Touched
                                        ? (ProofAt[])[new(v.Visit.Began, place, null, VisitMoment.AsFound, v.Result.Before.Verdict.Outcome)]
                                        : []
                                ),
                                new(v.Visit.Ended ?? v.Visit.Began, place, null, VisitMoment.AsLeft, v.Result.After.Verdict.Outcome),
                            ]
                )
                .Concat(proofs.Select(p => new ProofAt(p.At, null, p.Id, null, p.Outcome)))
                .OrderBy(p => p.At)
                .ThenBy(p => p.Visit ?? -1)
                .ThenBy(p => p.Moment)
                .ThenBy(p => p.Proof, StringComparer.Ordinal),
        ];

    // A visit carries the machine file of its day: a sum that a later one carries as well is the same sum.
    private static IReadOnlyList<KeptSum> Kept(IReadOnlyList<HistoryVisit> visits) =>
        [
            .. visits
                .SelectMany((v, place) => v.Visit.Machine.SetUps.Select(s => new KeptSum(place, s)))
                .GroupBy(s =>
                    (s.SetUp.Tool, s.SetUp.On, s.SetUp.By, Found: string.Join('|', s.SetUp.Found.Select(f => $"{f.Key} {f.Value}")))
                )
                .Select(g => g.First())
                .OrderBy(s => s.SetUp.On)
                .ThenBy(s => s.SetUp.Tool, StringComparer.Ordinal),
        ];
}

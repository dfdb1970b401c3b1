using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits.History;

/// <summary>A visit of the machine with what came of it.</summary>
/// <param name="Id">What it is called: id of its document, or the name of its file.</param>
/// <param name="Visit">The visit.</param>
/// <param name="Result">Its judgement, by the rules and bands of that day.</param>
public sealed record HistoryVisit(string Id, Visit Visit, VisitResult Result);

/// <summary>A proof made apart from a visit, for example from a logger file.</summary>
/// <param name="Id">Id of its document.</param>
/// <param name="At">When.</param>
/// <param name="Outcome">What it amounts to.</param>
public sealed record HistoryProof(string Id, DateTimeOffset At, Outcome Outcome);

/// <summary>A reading of the kitchen's water.</summary>
/// <param name="Kind">Id of the reading it is like: <c>rd-hardness</c>, <c>rd-tds</c>, <c>rd-incoming-temp</c> or <c>water-ph</c>.</param>
/// <param name="Value">Value.</param>
/// <param name="On">Day.</param>
public sealed record HistoryWater(string Kind, Amount Value, DateOnly On);

/// <summary>What one visit read of one thing at one moment; of several racks their median, with the verdict of the worst.</summary>
/// <param name="Visit">Place of the visit in <see cref="MachineHistory.Visits"/>; null for a reading made apart from a visit.</param>
/// <param name="At">When; the visit's beginning where nobody said.</param>
/// <param name="Moment">As found or as left.</param>
/// <param name="Value">Value, in the unit of the series.</param>
/// <param name="Count">Readings it is the median of, from 1.</param>
/// <param name="Low">Least of them.</param>
/// <param name="High">Greatest of them.</param>
/// <param name="Method">How it was read.</param>
/// <param name="Instrument">Instrument; null where not said.</param>
/// <param name="Off">What it may be off by, in the unit of the series; null where nobody knows.</param>
/// <param name="Own">The machine's own band on that day, in the unit of the series; null where there is none.</param>
/// <param name="LeastLimit">Least that was in force on that day; null for none.</param>
/// <param name="MostLimit">Most that was in force on that day; null for none.</param>
/// <param name="Status">Verdict of that day, the worst of the readings.</param>
/// <param name="Band">Against the own band, the worst likewise.</param>
/// <param name="BeforeChange">Whether something was changed at that visit after it was read; where nothing was, what was found is what was left.</param>
public sealed record HistoryPoint(
    int? Visit,
    DateTimeOffset At,
    VisitMoment Moment,
    Amount Value,
    int Count,
    Amount Low,
    Amount High,
    ReadingMethod Method,
    Instrument? Instrument,
    double? Off,
    OwnBand? Own,
    SeriesLimit? LeastLimit,
    SeriesLimit? MostLimit,
    ReadingStatus Status,
    BandStanding Band,
    bool BeforeChange = false
)
{
    /// <summary>Whether the crew wrote it in their log: a day or a week of entries.</summary>
    public bool ByCrew { get; init; }

    /// <summary>Whether the machine's own gauge said it: shown, and left out of trends.</summary>
    public bool ByGauge => Method == ReadingMethod.MachineGauge;
}

/// <summary>A limit as it stood on a day.</summary>
/// <param name="Limit">The limit with its citation.</param>
/// <param name="Figure">Its figure in the unit of the series.</param>
public sealed record SeriesLimit(Limit Limit, Amount Figure);

/// <summary>How readings move between two changes.</summary>
public enum TrendKind
{
    /// <summary>Too few readings to tell.</summary>
    TooFew,

    /// <summary>No trend shown: the readings fit one that stays where it is.</summary>
    None,

    /// <summary>They move, by less than the instruments may be off.</summary>
    Small,

    /// <summary>They rise.</summary>
    Rising,

    /// <summary>They fall.</summary>
    Falling,
}

/// <summary>Trend of the readings between two changes (H3).</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Count">Readings it is from.</param>
/// <param name="Needs">Readings it needs at least.</param>
/// <param name="PerDay">Slope a day in the unit of the series; null where there are too few readings.</param>
/// <param name="Slowest">End of its interval nearer to standing still; null where the interval has no such end.</param>
/// <param name="Fastest">The other end.</param>
/// <param name="Chance">Chance of such readings where nothing moves, 0 to 1; null where there are too few.</param>
/// <param name="Days">Days from the first to the last of them.</param>
public sealed record SeriesTrend(
    TrendKind Kind,
    int Count,
    int Needs,
    double? PerDay = null,
    double? Slowest = null,
    double? Fastest = null,
    double? Chance = null,
    double Days = 0
)
{
    /// <summary>Whether it drifts.</summary>
    public bool Drifts => Kind is TrendKind.Rising or TrendKind.Falling;
}

/// <summary>How a forecast ends.</summary>
public enum ForecastKind
{
    /// <summary>Between two days.</summary>
    Between,

    /// <summary>Not before a day; how late is not told.</summary>
    NotBefore,

    /// <summary>Not as far ahead as can be told.</summary>
    FarOff,

    /// <summary>It is there already.</summary>
    There,
}

/// <summary>When a drift reaches a limit (H5). A line drawn on: it says nothing of a sudden failure.</summary>
/// <param name="Kind">How it ends.</param>
/// <param name="Figure">The limit or the end of the band that is reached.</param>
/// <param name="Rule">The limit; null where it is an end of the machine's own band.</param>
/// <param name="Earliest">Earliest day; null where it is there.</param>
/// <param name="Latest">Latest day; null where that is not told.</param>
/// <param name="Until">Day up to which anything is told.</param>
public sealed record LimitForecast(ForecastKind Kind, Amount Figure, Limit? Rule, DateOnly? Earliest, DateOnly? Latest, DateOnly Until);

/// <summary>Something done that touches a series: what was read before and after it is not one run.</summary>
/// <param name="Visit">Place of the visit.</param>
/// <param name="At">When; the visit's beginning where nobody said.</param>
/// <param name="What">What, in the technician's words.</param>
/// <param name="Kind">Kind of change; null for a part or a container.</param>
/// <param name="Before">Setting before; null where it has no figure.</param>
/// <param name="After">Setting after.</param>
public sealed record SeriesBreak(int Visit, DateTimeOffset At, string What, ChangeKind? Kind, Amount? Before, Amount? After);

/// <summary>A run of readings between two changes.</summary>
/// <param name="Points">Places in <see cref="ReadingSeries.Points"/> that the trend is made of, in order of time.</param>
/// <param name="Trend">Their trend.</param>
public sealed record SeriesSegment(IReadOnlyList<int> Points, SeriesTrend Trend);

/// <summary>A reading that moved between two visits with no change on record (V9).</summary>
/// <param name="From">Place of the earlier point.</param>
/// <param name="To">Place of the later point.</param>
public sealed record SeriesStep(int From, int To);

/// <summary>One thing read in one state over time.</summary>
/// <param name="Kind">Id of the reading.</param>
/// <param name="Known">The knowledge's entry; null for readings of our own.</param>
/// <param name="State">What the machine did.</param>
/// <param name="Place">Place whose limits apply.</param>
/// <param name="Unit">Unit of every figure in it.</param>
/// <param name="Points">Points in order of time.</param>
/// <param name="Segments">Runs between changes, the earliest first; the last is how it goes now.</param>
/// <param name="Breaks">What parts them.</param>
/// <param name="Steps">Unexplained moves.</param>
/// <param name="Forecast">When the last run reaches a limit; null where it shows no trend or has no limit in its way.</param>
public sealed record ReadingSeries(
    string Kind,
    KnownReading? Known,
    OperatingState State,
    MeasuringPoint Place,
    Unit Unit,
    IReadOnlyList<HistoryPoint> Points,
    IReadOnlyList<SeriesSegment> Segments,
    IReadOnlyList<SeriesBreak> Breaks,
    IReadOnlyList<SeriesStep> Steps,
    LimitForecast? Forecast
)
{
    /// <summary>Whether it is of the crew's logs: what they wrote, not what was measured on visits.</summary>
    public bool ByCrew => Points[^1].ByCrew;

    /// <summary>How it goes now.</summary>
    public SeriesTrend Trend => Segments[^1].Trend;

    /// <summary>Whether it drifts and has a limit or the end of its band in its way.</summary>
    public bool DriftsToLimit => Trend.Drifts && Forecast is not null;
}

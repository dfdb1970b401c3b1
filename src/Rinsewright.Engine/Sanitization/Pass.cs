using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Sanitization;

/// <summary>One pass of ware through the machine. Zones, checks and verdict are worked out when first asked for: a long file has thousands of passes.</summary>
public sealed class Pass
{
    private readonly Lazy<PassDetail> detail;

    internal Pass(
        int number,
        int first,
        int last,
        double startSeconds,
        double peakSeconds,
        double endSeconds,
        Amount peak,
        Bounded heatUnits,
        Bounded a0,
        Outcome outcome,
        Func<PassDetail> explain
    )
    {
        Number = number;
        First = first;
        Last = last;
        StartSeconds = startSeconds;
        PeakSeconds = peakSeconds;
        EndSeconds = endSeconds;
        Peak = peak;
        HeatUnits = heatUnits;
        A0 = a0;
        Outcome = outcome;
        detail = new Lazy<PassDetail>(explain, LazyThreadSafetyMode.PublicationOnly);
    }

    /// <summary>From 1, in time order.</summary>
    public int Number { get; }

    /// <summary>Index of its first sample.</summary>
    public int First { get; }

    /// <summary>Index of its last sample.</summary>
    public int Last { get; }

    /// <summary>Start, s in the trace.</summary>
    public double StartSeconds { get; }

    /// <summary>Peak, s in the trace.</summary>
    public double PeakSeconds { get; }

    /// <summary>End, s in the trace.</summary>
    public double EndSeconds { get; }

    /// <summary>Highest sample.</summary>
    public Amount Peak { get; }

    /// <summary>Heat unit equivalents with bounds.</summary>
    public Bounded HeatUnits { get; }

    /// <summary>A0 with bounds.</summary>
    public Bounded A0 { get; }

    /// <summary>What the pass amounts to: the outcome of <see cref="Verdict"/>.</summary>
    public Outcome Outcome { get; }

    /// <summary>Heating legs, in order.</summary>
    public IReadOnlyList<ZoneSeen> Zones => detail.Value.Zones;

    /// <summary>Each proof on its own line.</summary>
    public IReadOnlyList<Check> Checks => detail.Value.Checks;

    /// <summary>Verdict on this pass.</summary>
    public Verdict Verdict => detail.Value.Verdict;
}

/// <summary>What is worked out for a pass when somebody asks.</summary>
internal sealed record PassDetail(IReadOnlyList<ZoneSeen> Zones, IReadOnlyList<Check> Checks, Verdict Verdict);

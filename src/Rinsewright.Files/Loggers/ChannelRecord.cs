using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>Samples and marks of one channel while the file is read, and the counts that later judgements need.</summary>
internal sealed class ChannelRecord(int column)
{
    /// <summary>Outside this span no place on a dish machine is, in any unit.</summary>
    public const double PlausibleLow = -60;

    /// <summary>Upper end of the same.</summary>
    public const double PlausibleHigh = 450;

    /// <summary>Between these a value is an everyday one and needs no look.</summary>
    public const double PlainLow = 5;

    private const int MostMarks = 200_000;
    private TraceBuilder samples = new();

    public int Column { get; } = column;

    public TraceBuilder Samples => samples;

    public List<TraceMark> Marks { get; private set; } = [];

    /// <summary>Exact zeros and exact minus ones among the samples.</summary>
    public long Zeros { get; private set; }

    public long MinusOnes { get; private set; }

    /// <summary>Other values within 5 of zero.</summary>
    public long NearZero { get; private set; }

    /// <summary>Rows with a fault mark.</summary>
    public long Faults { get; private set; }

    /// <summary>Different fault marks met, at most ten.</summary>
    public List<string> FaultTexts { get; } = [];

    /// <summary>Adds a sample between <see cref="PlainLow"/> and <see cref="PlausibleHigh"/>.</summary>
    public void AddPlain(long milliseconds, double value) => samples.Add(milliseconds, value);

    /// <summary>Adds a sample.</summary>
    public void Add(long milliseconds, double value, long line)
    {
        if (value is not (>= PlainLow and <= PlausibleHigh))
        {
            if (value is 0 or -1)
            {
                Zeros += value == 0 ? 1 : 0;
                MinusOnes += value == 0 ? 0 : 1;
            }
            else if (value is > -PlainLow and < PlainLow)
            {
                NearZero++;
            }
            else if (value is < PlausibleLow or > PlausibleHigh)
            {
                Mark(TraceMarkKind.Implausible, "", line, 1);
            }
        }

        samples.Add(milliseconds, value);
    }

    /// <summary>Notes a row whose cell said "no reading".</summary>
    public void Fault(string mark, long line)
    {
        Faults++;
        if (FaultTexts.Count < 10 && !FaultTexts.Contains(mark))
        {
            FaultTexts.Add(mark);
        }

        Mark(TraceMarkKind.Fault, mark, line, 0);
    }

    /// <summary>Marks a stretch that starts at the next sample; joined with its neighbour of the same kind.</summary>
    public void Mark(TraceMarkKind kind, string reason, long? line, int count, long rows = 1)
    {
        for (var i = Marks.Count - 1; i >= Math.Max(0, Marks.Count - 2); i--)
        {
            var last = Marks[i];
            if (
                last.Kind == kind
                && last.First + last.Count == samples.Count
                && string.Equals(last.Reason, reason, StringComparison.Ordinal)
            )
            {
                Marks[i] = last with { Count = last.Count + count, Rows = last.Rows + rows };
                return;
            }
        }

        if (Marks.Count < MostMarks)
        {
            Marks.Add(new TraceMark(kind, samples.Count, count, rows, line, reason));
        }
    }

    /// <summary>Replaces samples and marks, after a judgement over the whole column.</summary>
    public void Replace(TraceBuilder builder, List<TraceMark> marks)
    {
        samples = builder;
        Marks = marks;
    }
}

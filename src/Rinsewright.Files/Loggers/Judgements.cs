using System.Globalization;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>What only the whole recording shows: fault marks that look like values, a logger that wrapped around, frozen channels, clock changes.</summary>
internal static class Judgements
{
    /// <summary>Judges, finishes every channel and adds the decisions.</summary>
    public static List<LoggerChannel> Finish(TableReader reader, IReadOnlyList<ChannelPlan> plans, Clock clock, List<Decision> decisions)
    {
        var recording = reader.Recording;
        var origin = recording.Origin;
        if (recording.NewestFirst)
        {
            Array.ForEach(recording.Channels, c => Retrace.Reverse(c, recording.LastAt));
            origin = -(recording.Origin + recording.LastAt);
            decisions.Add(new Decision("row-order", "newest-first", Statement.Of("files.newest-first"), DecisionBasis.Inferred, []));
        }
        else
        {
            origin += Unwrap(recording, decisions);
        }

        foreach (var channel in recording.Channels)
        {
            ZerosAndOnes(channel, decisions);
            if (channel.Faults > 0)
            {
                var texts = string.Join(", ", channel.FaultTexts.Select(t => t.Length == 0 ? "\"\"" : t));
                decisions.Add(
                    new Decision(
                        $"faults[{channel.Column}]",
                        texts,
                        Statement.Of("files.faults", ("rows", channel.Faults), ("marks", texts)),
                        DecisionBasis.Read,
                        []
                    )
                );
            }
        }

        Clocks(recording, decisions);
        var start = clock.HasDate ? new DateTime(origin * TimeSpan.TicksPerMillisecond, DateTimeKind.Unspecified) : (DateTime?)null;
        return Build(recording, plans, start, clock.Offset, decisions);
    }

    private static List<LoggerChannel> Build(
        Recording recording,
        IReadOnlyList<ChannelPlan> plans,
        DateTime? start,
        int? offset,
        List<Decision> decisions
    )
    {
        var bare = recording.Channels.Select(c => c.Samples.Build(Units.Celsius)).ToList();
        var channels = new List<LoggerChannel>();
        for (var i = 0; i < plans.Count; i++)
        {
            var channel = recording.Channels[i];
            if (bare[i].Count == 0)
            {
                decisions.RemoveAll(d =>
                    d.Id.EndsWith($"[{channel.Column}]", StringComparison.Ordinal) && !d.Id.StartsWith("faults", StringComparison.Ordinal)
                );
                decisions.Add(
                    new Decision(
                        $"channel[{channel.Column}]",
                        "ignore",
                        Statement.Of("files.channel-not-fitted", ("marks", string.Join(", ", channel.FaultTexts))),
                        DecisionBasis.Inferred,
                        []
                    )
                );
                continue;
            }

            var neighbours = bare.Where((t, n) => n != i && t.Count > 1).ToList();
            foreach (var (first, count) in Frozen.Find(bare[i], neighbours))
            {
                var value = bare[i].ValueAt(first).ToString("0.######", CultureInfo.InvariantCulture);
                channel.Marks.Add(new TraceMark(TraceMarkKind.Frozen, first, count, count, null, value));
                decisions.Add(
                    new Decision(
                        $"frozen[{channel.Column}]",
                        value,
                        Statement.Of(neighbours.Count > 0 ? "files.frozen" : "files.frozen-alone", ("rows", (long)count), ("value", value)),
                        DecisionBasis.Inferred,
                        []
                    )
                );
            }

            channel.Samples.Name = plans[i].Name;
            foreach (var mark in channel.Marks)
            {
                channel.Samples.Mark(mark);
            }

            channels.Add(
                new LoggerChannel(
                    channel.Column,
                    channel.Samples.Build(plans[i].Unit, start, offset is { } minutes ? TimeSpan.FromMinutes(minutes) : null),
                    plans[i].Role
                )
            );
        }

        return channels;
    }

    // Exact zeros (or minus ones) are an open sensor where the channel never comes near them otherwise: a real tank passes through 4, 3, 2.
    private static void ZerosAndOnes(ChannelRecord channel, List<Decision> decisions)
    {
        foreach (var (value, count) in ((double, long)[])[(0, channel.Zeros), (-1, channel.MinusOnes)])
        {
            if (count == 0)
            {
                continue;
            }

            var text = value.ToString(CultureInfo.InvariantCulture);
            var others = channel.Samples.Count - channel.Zeros - channel.MinusOnes;
            if (others > 0 && channel.NearZero == 0 && !(channel.Zeros > 0 && channel.MinusOnes > 0))
            {
                Retrace.WithoutValue(channel, value, text);
                decisions.Add(
                    new Decision(
                        $"faults[{channel.Column}]",
                        text,
                        Statement.Of("files.fault-judged", ("value", text), ("rows", count)),
                        DecisionBasis.Inferred,
                        []
                    )
                );
            }
            else
            {
                decisions.Add(
                    new Decision(
                        $"kept[{channel.Column}]",
                        text,
                        Statement.Of(others == 0 ? "files.value-alone" : "files.value-kept", ("value", text), ("rows", count)),
                        DecisionBasis.Assumed,
                        []
                    )
                );
            }
        }
    }

    // One great step back whose later part ends before the first part begins: the memory was full and the logger went on at its start.
    private static long Unwrap(Recording recording, List<Decision> decisions)
    {
        if (
            recording.StepsBack != 1
            || recording.LastStamp > recording.Origin
            || recording.FirstBack.Milliseconds < 2 * 3_600_000L && recording.LastBeforeBack - recording.Origin > 2 * 3_600_000L
        )
        {
            return 0;
        }

        var first = recording.LastBeforeBack - recording.FirstBack.Milliseconds;
        var move = first - recording.Origin;
        for (var i = 0; i < recording.Channels.Length; i++)
        {
            Retrace.Rotate(recording.Channels[i], recording.CountsAtFirstBack[i], recording.ShiftAtFirstBack, move);
        }

        decisions.Add(
            new Decision(
                "wrapped",
                "rotated",
                Statement.Of("files.wrapped", ("line", recording.FirstBack.Line)),
                DecisionBasis.Inferred,
                []
            )
        );
        return move;
    }

    private static void Clocks(Recording recording, List<Decision> decisions)
    {
        if (recording.StepsBack > 0 && !decisions.Exists(d => d.Id == "wrapped"))
        {
            var hour = Math.Abs(recording.FirstBack.Milliseconds - 3_600_000L) <= 600_000;
            decisions.Add(
                new Decision(
                    "clock-back",
                    recording.StepsBack.ToString(CultureInfo.InvariantCulture),
                    Statement.Of(
                        hour ? "files.clock-back-hour" : "files.clock-back",
                        ("count", recording.StepsBack),
                        ("line", recording.FirstBack.Line),
                        ("by", TimeSpan.FromMilliseconds(recording.FirstBack.Milliseconds))
                    ),
                    DecisionBasis.Inferred,
                    []
                )
            );
        }

        if (recording.Equal > 0)
        {
            decisions.Add(
                new Decision(
                    "equal-stamps",
                    recording.Equal.ToString(CultureInfo.InvariantCulture),
                    Statement.Of("files.equal-stamps", ("count", recording.Equal), ("line", recording.FirstEqualLine)),
                    DecisionBasis.Read,
                    []
                )
            );
        }
    }
}

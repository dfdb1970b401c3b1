using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Contracts.Sanitization;

/// <summary>The engine's proof in its travelling form, with texts in one language.</summary>
public sealed class ProofReportMapping(Words words)
{
    /// <summary>
    /// Passes that carry their curve and their working; more would make a long file's report too heavy to draw or send. Later proven passes carry
    /// figures and verdict only; of later ones that are not proven as many again carry their checks and reasons.
    /// </summary>
    public const int DetailedAtMost = 200;

    /// <summary>Points of a channel's whole-file drawing at most.</summary>
    public const int PointsAtMost = 4000;

    private const int CurvePointsAtMost = 600;

    private static readonly CurveDto NoCurve = new([], [], []);

    /// <summary>A statement's text.</summary>
    public string Text(Statement s) => words.Say(Wire.From(s));

    /// <summary>A citation-bearing limit.</summary>
    public static LimitDto Limit(Limit l) =>
        new(l.Id, Wire.Name(l.Point), Wire.Name(l.Sense), [.. l.Printed.Select(Wire.From)], Wire.Name(l.Force), Wire.From(l.Citation));

    /// <summary>The report of a proof, as it is where no file was read.</summary>
    public ProofReport Report(Proof proof, TermsDto terms) =>
        new(
            ProofReport.CurrentSchema,
            null,
            0,
            0,
            [],
            [],
            [.. proof.Channels.Select(Channel)],
            Passes(proof),
            [.. proof.Checks.Select(Check)],
            [.. proof.Limits.Select(Limit)],
            Wire.Name(proof.Verdict.Outcome),
            [.. proof.Verdict.Because.Select(Text)],
            [.. proof.Verdict.WouldSettle.Select(Text)],
            [.. proof.Verdict.Because.Select(Wire.From)],
            [.. proof.Verdict.WouldSettle.Select(Wire.From)],
            terms
        );

    /// <summary>Every pass of every channel, in the order of the channels.</summary>
    public List<PassDto> Passes(Proof proof)
    {
        var options = proof.Terms.HeatUnits ?? HeatUnitOptions.Default;
        var dose = HeatDose.HeatUnits(options);
        var passes = new List<PassDto>();
        var failed = 0;
        foreach (var channel in proof.Channels)
        {
            foreach (var pass in channel.Passes)
            {
                var detailed = passes.Count < DetailedAtMost;
                var withChecks = detailed || (pass.Outcome != Outcome.Proven && ++failed <= DetailedAtMost);
                passes.Add(Pass(channel.Trace, pass, withChecks, detailed ? Curve(channel.Trace, pass, dose) : NoCurve));
            }
        }

        return passes;
    }

    /// <summary>One channel.</summary>
    public ChannelDto Channel(ChannelProof c)
    {
        var (seconds, values) = Thin(c.Trace);
        return new ChannelDto(
            c.Trace.Name,
            c.Trace.Unit.Ucum,
            c.Trace.Count,
            c.Trace.IntervalSeconds is { } s ? new AmountDto(s, Units.Second.Ucum) : null,
            Wire.Name(c.Role),
            c.Trace.Start,
            c.Trace.UtcOffset,
            [.. c.Trace.Marks.Take(500).Select(m => Mark(c.Trace, m))],
            [.. c.Notes.Select(Text)],
            [.. c.Notes.Select(Wire.From)],
            seconds,
            values
        );
    }

    /// <summary>One check with its working.</summary>
    public CheckDto Check(Check c) =>
        new(
            c.Id,
            Wire.Name(c.Outcome),
            Wire.Name(c.Status),
            Wire.From(c.Value),
            Wire.From(c.Low),
            Wire.From(c.High),
            c.Limit is { } l ? Limit(l) : null,
            Text(c.Because),
            Wire.From(c.Because),
            [.. c.WouldSettle.Select(Wire.From)],
            [
                .. c.Derivation.Select(s => new StepDto(
                    s.Equation,
                    Text(s.Says),
                    Wire.From(s.Says),
                    Wire.From(s.Result),
                    s.Citation is { } q ? Wire.From(q) : null
                )),
            ],
            c.Reading is { } r ? Wire.From(r) : null
        );

    /// <summary>What it was judged against.</summary>
    public static TermsDto Terms(ProofTerms t, Amount uncertaintyUsed, bool stated)
    {
        var options = t.HeatUnits ?? HeatUnitOptions.Default;
        return new TermsDto(
            Wire.Name(t.Machine),
            Wire.Name(t.Method),
            t.Rules.Id,
            t.Rules.Title,
            t.Rules.Edition,
            t.Instrument is { } i ? Wire.From(i) : null,
            Wire.From(uncertaintyUsed),
            stated,
            Fahrenheit(options.Cap),
            Fahrenheit(options.Floor)
        );
    }

    private static AmountDto? Fahrenheit(Temperature? t) =>
        t is { } x ? new AmountDto(Math.Round(x.InFahrenheit, 6), Units.Fahrenheit.Ucum) : null;

    private PassDto Pass(Trace trace, Pass p, bool withChecks, CurveDto curve) =>
        new(
            trace.Name,
            p.Number,
            trace.TimeAt(p.First),
            trace.TimeAt(p.Last),
            p.StartSeconds,
            p.PeakSeconds,
            p.EndSeconds,
            Wire.From(p.Peak),
            Bounded(p.HeatUnits),
            Bounded(p.A0),
            !withChecks ? [] : [.. p.Zones.Select(z => new ZoneDto(z.Name, z.StartSeconds, z.PeakSeconds, Wire.From(z.Peak)))],
            withChecks ? [.. p.Checks.Select(Check)] : [],
            Wire.Name(p.Outcome),
            withChecks ? [.. p.Verdict.Because.Select(Text)] : [],
            withChecks ? [.. p.Verdict.Because.Select(Wire.From)] : [],
            curve
        );

    private static BoundedDto Bounded(Bounded b) => new(Math.Round(b.Value, 3), Math.Round(b.Low, 3), Math.Round(b.High, 3));

    private static MarkDto Mark(Trace trace, TraceMark m)
    {
        int from = Math.Clamp(m.Count == 0 ? m.First - 1 : m.First, 0, Math.Max(trace.Count - 1, 0)),
            to = Math.Clamp(m.Count == 0 ? m.First : m.First + m.Count - 1, 0, Math.Max(trace.Count - 1, 0));
        return trace.Count == 0
            ? new MarkDto(Wire.Name(m.Kind), 0, 0, m.Rows, m.Line, m.Reason)
            : new MarkDto(Wire.Name(m.Kind), trace.SecondsAt(from), trace.SecondsAt(to), m.Rows, m.Line, m.Reason);
    }

    private static CurveDto Curve(Trace trace, Pass p, HeatDose dose)
    {
        var n = p.Last - p.First + 1;
        var gathered = dose.Gathered(trace, p.First, p.Last);
        var stride = Math.Max(1, (int)Math.Ceiling(n / (double)CurvePointsAtMost));
        List<double> t = [],
            v = [],
            d = [];
        for (var i = 0; i < n; i++)
        {
            if (i % stride == 0 || i == n - 1 || trace.SecondsAt(p.First + i) == p.PeakSeconds)
            {
                t.Add(Math.Round(trace.SecondsAt(p.First + i) - p.StartSeconds, 3));
                v.Add(trace.ValueAt(p.First + i));
                d.Add(Math.Round(gathered[i], 2));
            }
        }

        return new CurveDto([.. t], [.. v], [.. d]);
    }

    // Lowest and highest of each stretch, so that no peak is lost in the drawing.
    private static (double[] Seconds, double[] Values) Thin(Trace trace)
    {
        var stretch = Math.Max(1, (int)Math.Ceiling(trace.Count / (PointsAtMost / 2.0)));
        List<double> seconds = [],
            values = [];
        var samples = new double[stretch];
        for (var start = 0; start < trace.Count; start += stretch)
        {
            var part = samples.AsSpan(0, Math.Min(stretch, trace.Count - start));
            trace.CopyTo(start, part);
            int low = 0,
                high = 0;
            for (var i = 1; i < part.Length; i++)
            {
                low = part[i] < part[low] ? i : low;
                high = part[i] > part[high] ? i : high;
            }

            foreach (var i in low == high ? [low] : new[] { Math.Min(low, high), Math.Max(low, high) })
            {
                seconds.Add(trace.SecondsAt(start + i));
                values.Add(part[i]);
            }
        }

        return ([.. seconds], [.. values]);
    }
}

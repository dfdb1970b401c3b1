using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Contracts.Visits;

public static partial class VisitMapping
{
    // A logger whose clock lies further from the visit than this was not set; it says nothing of when it rode.
    private static readonly TimeSpan NotSet = TimeSpan.FromHours(12);

    /// <summary>A saved proof as one that counts with a visit.</summary>
    /// <param name="proof">The proof.</param>
    /// <param name="moment"><c>asFound</c>, <c>between</c> or <c>asLeft</c>.</param>
    /// <param name="visit">The visit.</param>
    public static CountedProofDto Counted(ProofDocument proof, string moment, VisitDocument visit)
    {
        var report = proof.Report;
        return new CountedProofDto(
            report.File ?? (proof.Files is [var original, ..] ? original.Name : proof.Machine),
            moment,
            report.Verdict,
            report.Passes.Count,
            report.Terms.Machine,
            report.Terms.Method,
            report.Terms.RuleSet,
            proof.Id,
            Rode(report, visit),
            false,
            // By the amount, whatever unit each channel logs in.
            report.Passes.MinBy(p => Wire.To(p.Peak, "peak").SI)?.Peak
        );
    }

    // The first pass is the one that may lie before a change.
    private static DateTimeOffset? Rode(ProofReport report, VisitDocument visit)
    {
        if (report.Passes.Where(p => p.Start is not null).MinBy(p => p.Start) is not { Start: { } start } first)
        {
            return null;
        }

        var offset = report.Channels.FirstOrDefault(c => c.Name == first.Channel)?.UtcOffset ?? visit.Began.Offset;
        var at = new DateTimeOffset(DateTime.SpecifyKind(start, DateTimeKind.Unspecified), offset);
        return (at - visit.Began).Duration() > NotSet ? null : at;
    }

    private static CountedProof Counted(CountedProofDto p, string field) =>
        p.Passes >= 0
            ? new CountedProof(
                Filled(p.Name, field + ".name", "the name of its file"),
                Wire.Parse<VisitMoment>(p.Moment, field + ".moment"),
                Wire.Parse<Outcome>(p.Outcome, field + ".outcome"),
                p.Passes,
                Wire.Parse<MachineType>(p.Machine, field + ".machine"),
                Wire.Parse<SanitizingMethod>(p.Method, field + ".method"),
                Filled(p.RuleSet, field + ".ruleSet", "the id of the rules it was judged by")
            )
            {
                Proof = p.Proof,
                At = p.At,
                ClockOff = p.ClockOff,
                LowestPeak =
                    p.LowestPeak is { } peak && Wire.To(peak, field + ".lowestPeak") is var read
                        ? read.Unit.Dimension == Dimension.Temperature
                            ? read
                            : throw new ContractException(field + ".lowestPeak", $"a temperature, not {read.Unit.Ucum}")
                        : null,
            }
            : throw new ContractException(field + ".passes", "a number, 0 or more");

    private static CountedProofDto From(CountedProof p) =>
        new(
            p.Name,
            Wire.Name(p.Moment),
            Wire.Name(p.Outcome),
            p.Passes,
            Wire.Name(p.Type),
            Wire.Name(p.Method),
            p.RuleSet,
            p.Proof,
            p.At,
            p.ClockOff,
            p.LowestPeak is { } peak ? Wire.From(peak) : null
        );
}

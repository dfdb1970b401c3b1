using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Records;

/// <summary>A saved proof in one line of the list.</summary>
public sealed record ProofLine(
    Guid Id,
    string Kitchen,
    string Machine,
    string Technician,
    DateTimeOffset At,
    string Verdict,
    int Passes,
    string? File,
    Guid? KitchenId = null,
    Guid? MachineId = null
)
{
    /// <summary>Verdict of one whose report does not answer what is asked.</summary>
    public const string NotJudged = "unjudged";

    /// <summary>Whether it is such a one: whoever opens it has it judged.</summary>
    public bool Unjudged => Verdict == NotJudged;

    /// <summary>The line of a document.</summary>
    public static ProofLine Of(ProofDocument d) =>
        new(
            d.Id,
            d.Kitchen,
            d.Machine,
            d.Technician,
            d.At,
            d.Unjudged is true ? NotJudged : d.Report.Verdict,
            d.Report.Passes.Count,
            d.Report.File,
            d.KitchenId,
            d.MachineId
        );

    /// <summary>Whether every word searched for stands somewhere in the line.</summary>
    public bool Matches(string search) =>
        search
            .Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .All(word =>
                $"{Kitchen} {Machine} {Technician} {File} {At:yyyy-MM-dd}".Contains(word, StringComparison.CurrentCultureIgnoreCase)
            );
}

using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits;

/// <summary>
/// A proof of its own on this machine, of a logger that rode through it most often, counted with the visit (V12). It keeps what it was judged as: judged otherwise than this machine, by other rules,
/// or made before the last change, it proves nothing here and is said.
/// </summary>
/// <param name="Name">Name of the file.</param>
/// <param name="Moment">Of which state of the machine it speaks.</param>
/// <param name="Outcome">What it proves.</param>
/// <param name="Passes">Passes of the ware in it, 0 or more.</param>
/// <param name="Type">Kind of machine it was judged as.</param>
/// <param name="Method">Sanitizing it was judged as.</param>
/// <param name="RuleSet">Id of the rules it was judged by.</param>
public sealed record CountedProof(
    string Name,
    VisitMoment Moment,
    Outcome Outcome,
    int Passes,
    MachineType Type,
    SanitizingMethod Method,
    string RuleSet
)
{
    /// <summary>Id of its document; null where it came from elsewhere.</summary>
    public Guid? Proof { get; init; }

    /// <summary>When the logger rode by its own clock; null where the file has none.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>Whether the technician says that the logger's clock is off, so that <see cref="At"/> decides nothing.</summary>
    public bool ClockOff { get; init; }

    /// <summary>Lowest peak of all passes, in the unit of the file; null without a pass.</summary>
    public Amount? LowestPeak { get; init; }

    /// <summary>Why it proves nothing here; null where it counts.</summary>
    /// <param name="visit">The visit it is counted with.</param>
    /// <param name="rules">Rules in force there.</param>
    public Statement? Refusal(Visit visit, RuleSet rules)
    {
        var machine = visit.Machine;
        return Type != LimitCheck.TypeOf(machine.Kind) || Method != machine.Sanitizing
                ? Statement.Of("visit.proof.other-machine", ("file", Name))
            : RuleSet != rules.Id ? Statement.Of("visit.proof.other-rules", ("file", Name))
            : Moment == VisitMoment.AsLeft && !ClockOff && At < visit.Changes.Max(c => c.At)
                ? Statement.Of("visit.proof.before-change", ("file", Name))
            : null;
    }

    /// <summary>Whether it shows the surface of the ware here.</summary>
    internal bool ShowsWare(Visit visit, RuleSet rules) =>
        Method == SanitizingMethod.HotWater && Passes > 0 && Refusal(visit, rules) is null;

    /// <summary>What it says of the machine, as evidence beside the readings.</summary>
    internal Carried Says(Visit visit, RuleSet rules) =>
        Refusal(visit, rules) is { } refusal
            ? new Carried(Outcome.Undetermined, refusal, false)
            : new Carried(
                Outcome,
                Statement.Of(
                    Outcome switch
                    {
                        Outcome.Proven => "visit.proof.proven",
                        Outcome.NotProven => "visit.proof.not-proven",
                        _ => "visit.proof.undetermined",
                    },
                    ("file", Name),
                    ("passes", (long)Passes)
                ),
                ShowsWare(visit, rules)
            );
}

/// <summary>A result looked for on the ware.</summary>
/// <param name="Result">Id of the knowledge's ware result.</param>
/// <param name="Found">Whether it was there; false where it was looked for and was gone.</param>
/// <param name="Moment">When.</param>
/// <param name="Note">On which ware, in a few words; null for none.</param>
public sealed record WareSeen(string Result, bool Found, VisitMoment Moment, string? Note = null);

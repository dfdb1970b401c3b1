using Rinsewright.Engine.Knowledge;

namespace Rinsewright.Engine.Ware;

/// <summary>A step of a cure.</summary>
/// <param name="Action">What is done.</param>
/// <param name="Hazards">Ids of the hazards at this step.</param>
/// <param name="Agents">What it puts on the ware, in order.</param>
/// <param name="IsRinse">Whether it is the rinse between agents.</param>
public sealed record WareCureStep(Phrase Action, IReadOnlyList<string> Hazards, IReadOnlyList<string> Agents, bool IsRinse = false);

/// <summary>Cures under the law of <see cref="WareTrail"/>.</summary>
internal static class WareCure
{
    public static IReadOnlyList<WareCureStep> Of(
        WareInquiry inquiry,
        IReadOnlyList<Phrase> actions,
        IReadOnlyList<string> agents,
        IReadOnlyList<string> safety
    )
    {
        var rinse = new WareCureStep(inquiry.Knowledge.Common.Rinse.Action, ["toxic-gas"], ["rinse"], true);
        var steps = new List<WareCureStep>();
        if (inquiry.Trail.OnPiece.Count > 0)
        {
            steps.Add(rinse);
        }

        // Which of several actions brings the agent is not said, so that all carry it and its hazards.
        steps.AddRange(actions.Select(a => new WareCureStep(a, safety, agents)));
        if (agents.Count > 0 && agents[^1] != "rinse")
        {
            steps.Add(rinse);
        }

        return steps;
    }
}

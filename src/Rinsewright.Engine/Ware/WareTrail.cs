using Rinsewright.Engine.Knowledge;

namespace Rinsewright.Engine.Ware;

/// <summary>Something that was done with the piece in hand.</summary>
public abstract record WareMove
{
    private protected WareMove() { }
}

/// <summary>A check or reading was taken.</summary>
/// <param name="Finding">Id of the check, or of the state of a reading.</param>
/// <param name="Found">Whether it was found.</param>
public sealed record Tested(string Finding, bool Found) : WareMove;

/// <summary>Piece, vessel, gloves and sink were rinsed.</summary>
public sealed record Rinsed : WareMove;

/// <summary>A move that would bring two agents together.</summary>
public sealed class AgentsMeetException : InvalidOperationException
{
    /// <summary>Made without saying which.</summary>
    public AgentsMeetException() { }

    /// <summary>Made with a message.</summary>
    public AgentsMeetException(string message)
        : base(message) { }

    /// <summary>Made with a message and a cause.</summary>
    public AgentsMeetException(string message, Exception inner)
        : base(message, inner) { }
}

/// <summary>
/// What was done with the piece, in order. It is the law of this folder: no agent is put on a piece that still carries another one, so acid and chlorine
/// never follow each other without a rinse between. A trail that breaks it cannot be made.
/// </summary>
public sealed class WareTrail
{
    private const string Rinse = "rinse";
    private readonly TradeKnowledge knowledge;

    private WareTrail(TradeKnowledge knowledge, IReadOnlyList<WareMove> moves, IReadOnlyList<string> onPiece)
    {
        this.knowledge = knowledge;
        Moves = moves;
        OnPiece = onPiece;
    }

    /// <summary>Moves, the first one first.</summary>
    public IReadOnlyList<WareMove> Moves { get; }

    /// <summary>Ids of agents put on the piece since it was last rinsed.</summary>
    public IReadOnlyList<string> OnPiece { get; }

    /// <summary>A clean piece.</summary>
    public static WareTrail Begin(TradeKnowledge knowledge) => new(knowledge, [], []);

    /// <summary>What a finding puts on the piece, in order; nothing for a look or a reading.</summary>
    public static IReadOnlyList<string> AgentsOf(TradeKnowledge knowledge, string finding) => knowledge.FindCheck(finding)?.Agents ?? [];

    /// <summary>Whether agents may follow what is on the piece, each after the one before.</summary>
    public bool Allows(IReadOnlyList<string> agents) => After(agents) is not null;

    /// <summary>The trail with one more move.</summary>
    /// <exception cref="AgentsMeetException">It would put an agent on a piece that carries another one.</exception>
    public WareTrail Then(WareMove move)
    {
        var agents = move is Tested tested ? AgentsOf(knowledge, tested.Finding) : [Rinse];
        return new WareTrail(
            knowledge,
            [.. Moves, move],
            After(agents)
                ?? throw new AgentsMeetException(
                    $"{string.Join(", ", agents)} on a piece that carries {string.Join(", ", OnPiece)}: rinse between."
                )
        );
    }

    // What is on the piece afterwards; null where two different agents would meet. Stricter than need be for some pairs, and simple to trust.
    private IReadOnlyList<string>? After(IReadOnlyList<string> agents)
    {
        var on = OnPiece.ToList();
        foreach (var agent in agents)
        {
            if (agent == Rinse)
            {
                on.Clear();
            }
            else if (on.Exists(o => o != agent))
            {
                return null;
            }
            else if (on.Count == 0)
            {
                on.Add(agent);
            }
        }

        return on;
    }
}

using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Ware;

namespace Rinsewright.Client.Bench;

/// <summary>What was seen and answered, kept while the person looks elsewhere.</summary>
public sealed class WareDraft
{
    private readonly List<string> pictures = [];
    private readonly Stack<WareInquiry> history = new();

    /// <summary>Pictures tapped, in order.</summary>
    public IReadOnlyList<string> Pictures => pictures;

    /// <summary>Where, and who looks.</summary>
    public WareSetting Setting { get; private set; } = new();

    /// <summary>How it stands; null while nothing is seen.</summary>
    public WareInquiry? Now => history.TryPeek(out var now) ? now : null;

    /// <summary>Whether there is an answer to take back.</summary>
    public bool CanTakeBack => history.Count > 1;

    /// <summary>A picture was tapped: it is seen, or no longer.</summary>
    public void Tap(TradeKnowledge knowledge, string picture)
    {
        if (!pictures.Remove(picture))
        {
            pictures.Add(picture);
        }

        Again(knowledge);
    }

    /// <summary>Another machine, way of sanitizing or person. What was answered stays where it still can be.</summary>
    public void Set(TradeKnowledge knowledge, WareSetting setting)
    {
        Setting = setting;
        Again(knowledge);
    }

    /// <summary>Takes an answer.</summary>
    public void Take(WareInquiry next) => history.Push(next);

    /// <summary>Takes the last answer back.</summary>
    public void TakeBack()
    {
        if (CanTakeBack)
        {
            history.Pop();
        }
    }

    /// <summary>Forgets everything.</summary>
    public void Forget()
    {
        pictures.Clear();
        history.Clear();
    }

    // Answers are given again in their order; one that is no longer open is left out, and with an agent on the piece the rinse stays.
    private void Again(TradeKnowledge knowledge)
    {
        var moves = Now?.Trail.Moves ?? [];
        history.Clear();
        if (pictures.Count == 0)
        {
            return;
        }

        var inquiry = WareInquiry.Begin(knowledge, pictures, Setting);
        history.Push(inquiry);
        foreach (var move in moves)
        {
            if (move is Rinsed)
            {
                history.Push(inquiry = inquiry.Rinse());
            }
            else if (move is Tested tested && inquiry.Offers.Any(o => o.Finding == tested.Finding))
            {
                history.Push(inquiry = inquiry.Answer(tested.Finding, tested.Found));
            }
        }
    }
}

using System.Runtime.CompilerServices;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Client.Visits;

/// <summary>The visit on the screen: every change is kept at once and judged.</summary>
public sealed class VisitWork(VisitShelf shelf, TradeKnowledge trade, VisitDocument document, Func<Words> words, TimeProvider clock)
{
    private OwnBands? bands;
    private Task writing = Task.CompletedTask;

    /// <summary>It was changed or judged.</summary>
    public event Action? Changed;

    /// <summary>What the trade knows.</summary>
    public TradeKnowledge Trade => trade;

    /// <summary>The visit as entered.</summary>
    public VisitDocument Document { get; private set; } = document;

    /// <summary>The visit as the engine has it; null where something entered cannot be.</summary>
    public Visit? Visit { get; private set; }

    /// <summary>What it amounts to; null likewise.</summary>
    public VisitResult? Result { get; private set; }

    /// <summary>What cannot be, in words; null where everything can.</summary>
    public string? Problem { get; private set; }

    /// <summary>Words in the language shown.</summary>
    public Words Words => words();

    /// <summary>The moment now, for what is entered.</summary>
    public DateTimeOffset Now => clock.GetLocalNow();

    /// <summary>Judges, keeps, tells.</summary>
    public Task ChangeAsync(Func<VisitDocument, VisitDocument> change)
    {
        Document = change(Document);
        Judge();
        Changed?.Invoke();
        // One after the other, so that a slow device never writes the earlier one last.
        var (now, result) = (Document, Result);
        return writing = AfterAsync(writing, now, result);
    }

    /// <summary>Judges what stands here.</summary>
    public void Judge()
    {
        try
        {
            Visit = Document.ToVisit(trade);
            bands ??= OwnBands.Of(Visit.Machine);
            Result = VisitJudgement.Judge(Visit, trade, Document.Rules(), bands);
            Problem = null;
        }
        catch (Exception e) when (e is ContractException or RuleSetException or ArgumentException)
        {
            (Visit, Result) = (null, null);
            Problem = e is ContractException { Says: { } says } c ? $"{c.Field}: {Words.Say(Wire.From(says))}" : e.Message;
        }
    }

    private async Task AfterAsync(Task before, VisitDocument now, VisitResult? result)
    {
        await before;
        await shelf.SaveAsync(now, result);
    }

    /// <summary>The built-in knowledge; of its own, so that its library is not asked for before it is here.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static TradeKnowledge BuiltIn() => Rinsewright.Knowledge.BuiltInKnowledge.Trade;
}

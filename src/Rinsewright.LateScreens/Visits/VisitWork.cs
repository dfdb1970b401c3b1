using System.Runtime.CompilerServices;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Client.Visits;

/// <summary>The visit on the screen: every change is kept at once, and judged when the typing rests.</summary>
public sealed class VisitWork(VisitShelf shelf, TradeKnowledge trade, VisitDocument document, Func<Words> words, TimeProvider clock)
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(250);
    private VisitDocument kept = document;
    private OwnBands? bands;
    private Task writing = Task.CompletedTask;
    private Task settling = Task.CompletedTask;
    private int changes;
    private int judged;
    private bool marked;

    /// <summary>It was changed or judged.</summary>
    public event Action? Changed;

    /// <summary>What the trade knows.</summary>
    public TradeKnowledge Trade => trade;

    /// <summary>The visit as entered.</summary>
    public VisitDocument Document { get; private set; } = document;

    /// <summary>The visit as the engine has it; where something entered cannot be, as it last could, so that every field stays to be mended. Null where the machine itself cannot be read.</summary>
    public Visit? Visit { get; private set; }

    /// <summary>Parts to look at, as judged last.</summary>
    public IReadOnlyList<PartLine> Parts { get; private set; } = [];

    /// <summary>What it amounts to; null where something entered cannot be.</summary>
    public VisitResult? Result { get; private set; }

    /// <summary>What cannot be, in words; null where everything can.</summary>
    public string? Problem { get; private set; }

    /// <summary>Words in the language shown.</summary>
    public Words Words => words();

    /// <summary>The moment now, for what is entered.</summary>
    public DateTimeOffset Now => clock.GetLocalNow();

    /// <summary>Whether something was entered that is not judged yet.</summary>
    public bool Judging => judged != changes;

    /// <summary>Keeps a change at once and judges when the typing rests.</summary>
    /// <returns>Done when it is judged and kept.</returns>
    public Task ChangeAsync(Func<VisitDocument, VisitDocument> change)
    {
        Document = change(Document);
        changes++;
        Keep(null);
        Changed?.Invoke();
        return settling.IsCompleted ? settling = SettleAsync() : settling;
    }

    /// <summary>Done when everything entered is judged and kept.</summary>
    public Task SettledAsync() => settling;

    /// <summary>Judges anew and keeps what it amounts to, where the page was left between a reading and its judgement.</summary>
    public async Task MendAsync()
    {
        if (await shelf.IsUnjudgedAsync(Document.Id) && !Judging)
        {
            Judge();
            Keep(Result);
            await writing;
        }
    }

    /// <summary>Works out the machine's own bands a little at a time, so that the page stays live, and judges by them.</summary>
    public async Task WarmAsync()
    {
        while (bands?.Next() == true)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(1), clock);
        }

        if (!Judging)
        {
            Judge();
            Changed?.Invoke();
        }
    }

    // What is entered while the last of it is still being written is judged too.
    private async Task SettleAsync()
    {
        do
        {
            await RestAsync();
            await writing;
        } while (Judging);
    }

    private async Task RestAsync()
    {
        while (Judging)
        {
            var now = changes;
            await Task.Delay(Pause, clock);
            await writing.HoweverItEnds(); // no judgement stands on the screen for what the device may yet lose
            if (now == changes)
            {
                Judge();
                judged = now;
                Keep(Result);
                Changed?.Invoke();
            }
        }
    }

    // One after the other, so that a slow device never writes the earlier one last.
    private void Keep(VisitResult? result)
    {
        shelf.Work.Remember(Kinds.Visit, Document.Id, () => VisitFields.Changed(Document, kept));
        writing = shelf.Writing(Document.Id, AfterAsync(writing, Document, result));
    }

    /// <summary>Judges what stands here.</summary>
    public void Judge()
    {
        try
        {
            Visit = Document.ToVisit(trade);
            bands ??= OwnBands.Coming(Visit.Machine);
            Result = VisitJudgement.Judge(Visit, trade, Document.Rules(), bands);
            Parts = Result.Parts;
            Problem = null;
        }
        catch (Exception e) when (e is ContractException or RuleSetException or ArgumentException)
        {
            Result = null;
            Visit ??= Bare();
            Problem = e is ContractException { Says: { } says } c ? $"{c.Field}: {Words.Say(Wire.From(says))}" : e.Message;
        }
    }

    // What was kept cannot be, and the program has only just started: the machine alone, so that there are fields to mend it in.
    private Visit? Bare()
    {
        try
        {
            return new VisitDocument(Document.Id, Document.Version, Document.Kitchen, Document.Machine, Document.Began).ToVisit(trade);
        }
        catch (Exception e) when (e is ContractException or ArgumentException)
        {
            return null;
        }
    }

    // What was typed on meanwhile is in the write that follows; what the device did not take is in the next.
    private async Task AfterAsync(Task before, VisitDocument now, VisitResult? result)
    {
        await before.HoweverItEnds();
        if (!ReferenceEquals(now, Document))
        {
            return;
        }

        if (result is null && !marked)
        {
            marked = true;
            await shelf.UnjudgedAsync(now.Id);
        }

        if (await shelf.SaveAsync(now, kept, result))
        {
            kept = now;
            if (ReferenceEquals(now, Document))
            {
                shelf.Work.Unwritten.Remove(now.Id);
            }

            if (result is not null && !Judging)
            {
                marked = false;
                await shelf.JudgedAsync(now.Id);
            }
        }
    }

    /// <summary>The built-in knowledge; of its own, so that its library is not asked for before it is here.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static TradeKnowledge BuiltIn() => Rinsewright.Knowledge.BuiltInKnowledge.Trade;
}

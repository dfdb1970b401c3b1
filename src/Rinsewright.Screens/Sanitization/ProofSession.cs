using Rinsewright.Client.Records;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Client.Sanitization;

/// <summary>
/// The proof on the screen. Whatever changes is judged again and saved on the device at once; one run at a time, the last wish wins. Nothing is saved
/// before the person gave something.
/// </summary>
public sealed partial class ProofSession(IComputing computing, Work work, Preferences preferences, TimeProvider clock)
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(250);
    private int wishes;
    private int writes;
    private int openings;
    private ProofRequest? judged; // what the report on the screen answers
    private Task settling = Task.CompletedTask;
    private Task keeping = Task.CompletedTask;
    private Task judgement = Task.CompletedTask;
    private bool judging;
    private bool stale; // opened with a report that is older than what is asked
    private bool unkept; // a file is judged that is not kept yet
    private ProofReport? standing; // what is kept as the report until that is done
    private Task taking = Task.CompletedTask;

    /// <summary>Something on the screen changed.</summary>
    public event Action? Changed;

    /// <summary>The proof; null before the first report.</summary>
    public ProofDocument? Proof { get; private set; }

    /// <summary>The file it stands on; null for typed readings alone.</summary>
    public TakenFile? File { get; private set; }

    /// <summary>A file is being read.</summary>
    public bool Running { get; private set; }

    /// <summary>How far; null before the first word of it.</summary>
    public ComputeProgress? Progress { get; private set; }

    /// <summary>The typed readings judged by themselves, so that a field says at once how it stands while a long file is still read; null before the first change.</summary>
    public ProofReport? Spot { get; private set; }

    /// <summary>Why there is no report, in words to come.</summary>
    public StatementDto? Failure { get; private set; }

    /// <summary>What cannot be used of what was set.</summary>
    public string? Problem { get; private set; }

    /// <summary>Whether the person stopped the reading.</summary>
    public bool Cancelled { get; private set; }

    /// <summary>Whether the person gave anything: a file, a reading, a name.</summary>
    public bool Begun { get; private set; }

    /// <summary>Proofs made from the same drop, this one included, when there were several files.</summary>
    public IReadOnlyList<ProofLine> Together { get; private set; } = [];

    /// <summary>Files given last that could not be used, each with its reason.</summary>
    public IReadOnlyList<RefusedFile> Refused { get; private set; } = [];

    /// <summary>The thermometer in the technician's hand, put beside every temperature typed; null where nothing is said of it.</summary>
    public InstrumentDto? Probe { get; set; }

    /// <summary>Whether a file is being read that nothing is known of yet.</summary>
    public bool Reading => Running && Proof?.Report.File is null;

    /// <summary>Whether there is no verdict to show and to print: none yet, none that is kept, or none of what is asked now: the person stopped the reading it would stand on, or something in it cannot be used.</summary>
    public bool HasNoVerdict => Reading || Cancelled || stale || unkept || Failure is not null || Problem is not null;

    /// <summary>Done when the file given last is read and what was asked last is judged and saved.</summary>
    public async Task SettledAsync()
    {
        await taking.HoweverItEnds();
        await settling;
    }

    /// <summary>A fresh proof, empty but for the technician.</summary>
    /// <returns>Whether it stands there; not where the person has asked for another meanwhile.</returns>
    public async Task<bool> NewAsync()
    {
        var mine = ++openings;
        await OverAsync(taking);
        if (mine != openings)
        {
            return false;
        }

        await FreshAsync();
        return true;
    }

    /// <summary>Stops what still goes on in the proof and puts it away: it is deleted, or somebody else takes over the device. What was kept of it stays kept.</summary>
    public async Task CloseAsync()
    {
        openings++;
        if (Running)
        {
            await computing.CancelAsync();
        }

        await OverAsync(taking);
        Clear();
        Changed?.Invoke();
    }

    // Over, however it ended: a device that refused the last write must not keep the next proof from being opened.
    private async Task OverAsync(Task before)
    {
        await before.HoweverItEnds();
        await settling.HoweverItEnds();
    }

    private async Task FreshAsync()
    {
        Clear();
        var request = new ProofRequest(Language: preferences.Language);
        var answer = await computing.RunAsync(request, null);
        var now = clock.GetLocalNow();
        Proof = answer.Report is { } report
            ? new ProofDocument(
                Guid.CreateVersion7(),
                ProofDocument.CurrentVersion,
                "",
                "",
                preferences.Settings.Technician,
                now,
                request,
                report,
                []
            )
            : null;
        Problem = answer.Problem;
        judged = request;
        Changed?.Invoke();
    }

    /// <summary>A saved proof; false where it is not on this device.</summary>
    public async Task<bool> OpenAsync(Guid id)
    {
        if (Proof?.Id == id)
        {
            return true;
        }

        var mine = ++openings;
        ProofDocument? found;
        do
        {
            await OverAsync(taking); // a file that is still being read goes into its own proof, not into this one
            found = await work.OpenAsync(id);
            if (mine != openings)
            {
                return true; // the person has asked for another meanwhile
            }
        } while (!taking.IsCompleted || !settling.IsCompleted);

        if (found is not { } proof)
        {
            return false;
        }

        var (together, refused) = Together.Any(l => l.Id == id) ? (Together, Refused) : ([], []);
        Clear();
        (Together, Refused) = (together, refused);
        Begun = true;
        Proof = proof;
        judged = proof.Request;
        File = proof.Files is [var file, ..] ? new TakenFile(file.Sha256, file.Name, file.Size, true) : null;
        if (proof.Unjudged is true)
        {
            (stale, judged) = (true, null);
            Ask(r => r); // the page was left between a change and its judgement
        }

        Changed?.Invoke();
        return true;
    }

    /// <summary>Another setting, reading or decision: judged again and saved.</summary>
    public void Ask(Func<ProofRequest, ProofRequest> change)
    {
        if (Proof is { } proof)
        {
            Change(proof with { Request = change(proof.Request) });
        }
    }

    /// <summary>Another name or note: saved.</summary>
    public void Write(Func<ProofDocument, ProofDocument> change)
    {
        if (Proof is { } proof)
        {
            Change(change(proof));
        }
    }

    /// <summary>Stops the reading of the file.</summary>
    public Task CancelAsync() => computing.CancelAsync();

    /// <summary>Brings a file back after its reading was stopped, or tries again.</summary>
    public void Again()
    {
        judged = null;
        Ask(r => r);
    }

    private void Change(ProofDocument proof)
    {
        Begun = true;
        Proof = proof;
        wishes++;
        _ = SpotAsync(proof.Request);
        Changed?.Invoke();
        _ = KeptAsync();
        if (settling.IsCompleted)
        {
            settling = SettleAsync();
        }
    }

    // What is typed is kept at once: a page left within the pause, or while a long file is judged, loses nothing. Judged is what rests and is written:
    // no verdict stands on the screen for what the device may yet lose. What is typed while the last of it is still being written is judged too.
    private async Task SettleAsync()
    {
        int done;
        do
        {
            await Task.Delay(Pause, clock);
            await judgement.HoweverItEnds(); // of a file that is being taken
            await keeping.HoweverItEnds();
            done = wishes;
            if (!ReferenceEquals(judged, Proof!.Request) || Failure is not null)
            {
                await JudgeAsync();
                await KeptAsync();
            }

            await keeping;
        } while (done != wishes);
    }

    // Done when what stands here now is written. One write at a time, so that an earlier one never comes last; whatever is typed while it runs is in the next.
    private Task KeptAsync()
    {
        writes++;
        var now = ToKeep;
        work.Unwritten[now.Id] = () => work.Left(Kinds.Proof, now.Id, now);
        return keeping.IsCompleted ? keeping = KeepAsync() : keeping;
    }

    private async Task KeepAsync()
    {
        int kept;
        ProofDocument proof;
        do
        {
            kept = writes;
            await work.SaveAsync(proof = ToKeep);
        } while (kept != writes);

        if (work.Trouble is null)
        {
            work.Unwritten.Remove(proof.Id);
        }
    }

    private ProofDocument ToKeep =>
        Proof! with
        {
            Report = standing ?? Proof!.Report,
            Unjudged =
                judging || !ReferenceEquals(judged, Proof!.Request) || Failure is not null || Cancelled || Problem is not null
                    ? true
                    : null,
        };

    // One run at a time: the worker has one answer to give.
    private Task JudgeAsync() => judgement = JudgeAfterAsync(judgement);

    private async Task JudgeAfterAsync(Task before)
    {
        await before.HoweverItEnds();
        judging = true;
        Running = File is not null;
        Progress = null;
        var named = Proof!.Report.File;
        Changed?.Invoke();
        computing.Progressed += OnProgress;
        try
        {
            judged = Proof.Request;

            // A file that was too large to be kept is gone with the page that had it: what was read of it is not thrown away for what is typed beside it.
            var answer =
                File is null && named is not null
                    ? new ComputeAnswer(Failure: new StatementDto("client.file.not-here", [new StatementValueDto("name", Text: named)]))
                    : await computing.RunAsync(judged, File);
            stale = false;
            Failure = answer.Failure;
            Problem = answer.Problem;
            Cancelled = answer.Cancelled;
            if (Cancelled)
            {
                judged = Proof.Request; // what was typed until the person stopped it waits with it, and does not start it again
            }

            if (answer.Report is { } report)
            {
                Proof = Proof with { Report = report };
            }
        }
        catch (Microsoft.JSInterop.JSException e)
        {
            Problem = e.Message;
        }
        finally
        {
            computing.Progressed -= OnProgress;
            judging = false;
            Running = false;
            Changed?.Invoke();
        }
    }

    private async Task SpotAsync(ProofRequest request)
    {
        var report = (await computing.RunAsync(request, null)).Report;

        // Answers may overtake each other: one to what was typed before must not stand under what is typed now.
        if (report is not null && ReferenceEquals(request, Proof?.Request))
        {
            Spot = report;
            Changed?.Invoke();
        }
    }

    private void OnProgress(ComputeProgress progress)
    {
        Progress = progress;
        Changed?.Invoke();
    }

    private void Clear()
    {
        Proof = null;
        File = null;
        Spot = null;
        Failure = null;
        Problem = null;
        Cancelled = false;
        (stale, unkept) = (false, false);
        Begun = false;
        Together = [];
        Refused = [];
    }
}

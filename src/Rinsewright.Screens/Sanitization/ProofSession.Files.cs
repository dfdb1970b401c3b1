using Rinsewright.Client.Records;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Client.Sanitization;

// Files given to it.
public sealed partial class ProofSession
{
    /// <summary>One file goes into this proof; of several, each gets a proof of its own with the same settings.</summary>
    public Task TakeAsync(IReadOnlyList<TakenFile> files) => taking = TakeAllAsync(files, taking);

    /// <summary>An invented proof to try the screen with.</summary>
    public Task TryAsync(Demo demo) => taking = TryDemoAsync(demo, taking);

    private async Task TakeAllAsync(IReadOnlyList<TakenFile> files, Task before)
    {
        await OverAsync(before);
        Refused = [];
        if (Proof is null)
        {
            await FreshAsync();
        }

        var lines = new List<ProofLine>();
        var refused = new List<RefusedFile>();
        var settings = Proof!;
        var hadFile = File is not null;
        foreach (var file in files)
        {
            var stood = (Proof: Proof!, File, Judged: judged, Begun, Wishes: wishes, Failure, Problem, Cancelled);
            if (lines.Count > 0 || hadFile)
            {
                Proof = settings with
                {
                    Id = Guid.CreateVersion7(),
                    At = clock.GetLocalNow(),
                    Files = [],
                    Request = settings.Request with { Dialect = null, Channels = null, Readings = null },
                };
            }

            await TakeOneAsync(file);
            if (Failure is not null || Problem is not null)
            {
                // At once, before anything else goes on: the proof before it stays as it was; a file that cannot be used makes none, and is named with the reason.
                refused.Add(new RefusedFile(file.Name, Failure, Problem));
                var typed = wishes != stood.Wishes; // while it was being read: that stays
                var ghost = typed && Proof!.Id != stood.Proof.Id ? Proof : null;
                Proof =
                    !typed ? stood.Proof
                    : ghost is null ? Proof! with { Report = stood.Proof.Report, Files = stood.Proof.Files }
                    : Carried(stood.Proof, ghost);
                judged =
                    ReferenceEquals(Proof.Request, stood.Proof.Request) ? stood.Judged
                    : stood.Cancelled ? Proof.Request
                    : null;
                (File, Begun) = (stood.File, stood.Begun || typed);
                (Failure, Problem, Cancelled) = (stood.Failure, stood.Problem, stood.Cancelled);
                if (ghost is not null)
                {
                    await keeping.HoweverItEnds();
                    await work.DeleteAsync(ghost.Id);
                    wishes++;
                    await KeptAsync();
                }
            }
            else if (Cancelled)
            {
                break; // the person stopped: what comes after is not read either
            }
            else if (Proof is { } done)
            {
                lines.Add(ProofLine.Of(done));
            }
        }

        Refused = refused;
        Together =
            lines.Count > 1 ? lines
            : files.Count > 1 || lines.Count > 0 ? []
            : Together;
        Changed?.Invoke();
    }

    // A name, note or reading typed beside a file that turned out to be none goes to the proof that stays.
    private static ProofDocument Carried(ProofDocument proof, ProofDocument ghost) =>
        proof with
        {
            Kitchen = ghost.Kitchen,
            KitchenId = ghost.KitchenId,
            Machine = ghost.Machine,
            MachineId = ghost.MachineId,
            Technician = ghost.Technician,
            Note = ghost.Note,
            Request = ghost.Request.Readings is { Count: > 0 } typed
                ? proof.Request with
                {
                    Readings =
                    [
                        .. (proof.Request.Readings ?? []).Where(r => !typed.Any(t => (t.Point, t.Method) == (r.Point, r.Method))),
                        .. typed,
                    ],
                }
                : proof.Request,
        };

    private async Task TryDemoAsync(Demo demo, Task before)
    {
        await OverAsync(before);
        var file = await computing.KeepDemoAsync(demo.File); // first: where it cannot be had, nothing of it stays
        await FreshAsync();
        Proof = Proof! with
        {
            Kitchen = demo.Kitchen,
            Machine = preferences.Words[demo.MachineKey],
            Request = demo.Request with { Language = preferences.Language },
        };
        await TakeOneAsync(file);
    }

    private async Task TakeOneAsync(TakenFile file)
    {
        Begun = true;
        if (file.Sha256.Length == 0)
        {
            Failure = new StatementDto("client.file.not-a-file", [new StatementValueDto("name", Text: file.Name)]);
            Changed?.Invoke();
            return;
        }

        // What was read of a file that was not kept stays in the store until this one is read.
        standing = File is null && Proof!.Report.File is not null ? Proof.Report : null;
        File = file;
        if (Proof!.Report.File is not null && (await computing.RunAsync(Proof.Request, null)).Report is { } empty)
        {
            Proof = Proof with { Report = empty }; // nothing of another file stands under this one's name
        }

        var references = file.Kept ? [new FileReference(file.Sha256, file.Name, file.Size)] : Array.Empty<FileReference>();
        Proof = Proof! with { Files = references };
        unkept = true;
        try
        {
            do
            {
                await JudgeAsync();
                if (Failure is not null || Problem is not null || (Cancelled && !file.Kept))
                {
                    Proof = standing is { } before ? Proof with { Report = before } : Proof;
                    return; // without its file there is nothing to be read when it is opened again
                }

                standing = Cancelled ? standing : null;
                await KeptAsync(); // where the person stopped it, too: opened again it is read
                while (judging)
                {
                    // What was typed while it was written is being judged, as soon as that was over: it is of this file, and its answer is not let into the next.
                    await judgement.HoweverItEnds();
                    await KeptAsync();
                }
            } while (!Cancelled && !ReferenceEquals(judged, Proof.Request)); // what was typed meanwhile is of this file, not of the next
        }
        finally
        {
            (unkept, standing) = (false, null);
            Changed?.Invoke();
        }
    }
}

/// <summary>A file that was given and could not be used.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Failure">What is wrong with it, in words to come; null where the trouble is another.</param>
/// <param name="Problem">What cannot be used of what was set; null where the file is at fault.</param>
public sealed record RefusedFile(string Name, StatementDto? Failure, string? Problem);

using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Files.Loggers;
using Rinsewright.Files.Sanitization;
using Rinsewright.Server.Records;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Demo;

/// <summary>Puts the invented service Tamarack Valley Warewashing into a new store, and takes it out again. Its verdicts are computed, not written down.</summary>
public sealed partial class DemoService(AppDb db, OperationLog log, OriginalFiles files, TimeProvider clock, ILogger<DemoService> logger)
{
    /// <summary>Name under which the demo's operations are kept.</summary>
    public const string Device = "demo";

    /// <summary>Seeds where that was never done; a removed demo does not come back.</summary>
    public async Task SeedOnceAsync(CancellationToken ct)
    {
        if (await db.Store.AnyAsync(s => s.DemoSeededAt != null, ct))
        {
            return;
        }

        var operations = new List<Operation>([.. DemoKitchens.Operations(), .. DemoVisits.Operations()]);
        try
        {
            foreach (var (i, demo) in DemoProofs.All.Index())
            {
                operations.Add(await MakeAsync(demo, i + 1, ct));
            }
        }
        catch (UnreadableFileException e)
        {
            NotMade(logger, e); // a demo that cannot be made must not keep anybody from the work; the next start tries again
            return;
        }

        // Ids are fixed, so a start that was cut short, or several processes that start at once, put each document in once.
        await log.ApplyAsync(operations, Words.For("en"), demo: true, ct);
        var now = clock.GetUtcNow();
        await db.Store.ExecuteUpdateAsync(s => s.SetProperty(r => r.DemoSeededAt, now), ct);
    }

    /// <summary>Removes every document of the demo with its history and files. Devices that hold copies are told by the next changes.</summary>
    /// <returns>How many documents were removed.</returns>
    public async Task<int> RemoveAsync(CancellationToken ct)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(ct);

        // Writing the store row takes its lock, which keeps lists of operations out until this is done. The mark is set also where nothing was ever seeded.
        var now = clock.GetUtcNow();
        await db.Store.ExecuteUpdateAsync(s => s.SetProperty(r => r.DemoSeededAt, now), ct);
        var documents = await db.Documents.Where(d => d.Demo).ToListAsync(ct);
        var present = documents.FindAll(d => d.Json is not null);
        var store = await db.Store.SingleAsync(ct);
        foreach (var document in present)
        {
            document.Json = null;
            document.Revision = ++store.Revision;
        }

        if (present.Count > 0)
        {
            db.Turns.Add(new TurnRow { Number = store.Revision, Tag = Guid.NewGuid() });
        }

        await db.SaveChangesAsync(ct);
        var ids = documents.ConvertAll(d => d.Id);
        await db.Operations.Where(o => ids.Contains(o.DocumentId)).ExecuteUpdateAsync(o => o.SetProperty(r => r.Json, (string?)null), ct);
        await transaction.CommitAsync(ct);
        foreach (var demo in DemoProofs.All.Where(d => d.File is not null))
        {
            files.Delete(Sha256(demo.Content()));
        }

        return present.Count;
    }

    private async Task<Operation> MakeAsync(DemoProof demo, int number, CancellationToken ct)
    {
        var references = new List<FileReference>();
        MemoryStream? stream = null;
        if (demo.File is { } name)
        {
            var content = demo.Content();
            references.Add(new FileReference(Sha256(content), name, content.Length));
            stream = new MemoryStream(content, writable: false);
            await files.PutAsync(references[0].Sha256, stream, ct);
            stream.Position = 0;
        }

        var report = await ProofRun.RunAsync(demo.Request, stream, demo.File, null, ct);
        var document = new ProofDocument(
            demo.Id,
            ProofDocument.CurrentVersion,
            demo.Kitchen,
            demo.Machine,
            demo.Technician,
            demo.At,
            demo.Request,
            report,
            references,
            demo.Note,
            DemoKitchens.KitchenId(number), // kitchens and machines are numbered in the order of the proofs
            DemoKitchens.MachineId(number)
        );
        return new Operation(demo.OperationId, "proof", demo.Id, demo.Technician, Device, demo.At, "put", document);
    }

    [LoggerMessage(LogLevel.Warning, "The demo service could not be made")]
    private static partial void NotMade(ILogger logger, Exception exception);

    private static string Sha256(byte[] content) => Convert.ToHexStringLower(SHA256.HashData(content));
}

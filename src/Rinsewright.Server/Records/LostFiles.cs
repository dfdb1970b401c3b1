using System.Collections.Concurrent;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Rinsewright.Contracts.Records;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Records;

/// <summary>
/// Original files that documents name and the folder of files does not have: a copy of the folder older than that of the database was put back, or a file was lost on the way and its device believes it was
/// kept. Looked for once when the server starts; devices are asked for them with every answer until one that keeps the file has sent it.
/// </summary>
public sealed partial class LostFiles(OriginalFiles files, IServiceScopeFactory scopes, ILogger<LostFiles> log) : BackgroundService
{
    /// <summary>Most files asked for at once.</summary>
    public const int MostAtOnce = 50;

    private const int DocumentsAtOnce = 100;
    private readonly ConcurrentDictionary<string, bool> lost = new(StringComparer.Ordinal);

    /// <summary>Adds those of some files that are not there.</summary>
    /// <returns>Them.</returns>
    public IReadOnlyList<string> Look(IEnumerable<string> named)
    {
        List<string> missing = [.. named.Distinct(StringComparer.Ordinal).Where(f => !files.Has(f))];
        missing.ForEach(f => lost[f] = true);
        return missing;
    }

    /// <summary>Files to ask for, others each time where there are many: some may be nowhere any more. Null for none.</summary>
    public IReadOnlyList<string>? Wanted()
    {
        if (lost.IsEmpty)
        {
            return null;
        }

        var names = lost.Keys.ToArray();
        Random.Shared.Shuffle(names);
        List<string> wanted = [];
        foreach (var name in names)
        {
            if (files.Has(name)) // sent since, to this process or to another
            {
                lost.TryRemove(name, out _);
                continue;
            }

            wanted.Add(name);
            if (wanted.Count == MostAtOnce)
            {
                break;
            }
        }

        return wanted.Count > 0 ? wanted : null;
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield(); // the server does not wait for it
        try
        {
            await LookThroughAsync(stoppingToken);
        }
        catch (Exception e) when (!stoppingToken.IsCancellationRequested)
        {
            NotLooked(log, e); // a server that cannot look still serves; what operations name is looked for as they come
        }
    }

    private async Task LookThroughAsync(CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        string[] kinds = [Kinds.Proof, Kinds.Machine, Kinds.Visit];
        for (var after = 0L; ; )
        {
            var documents = await db
                .Documents.AsNoTracking()
                .Where(d => d.Revision > after && d.Json != null && kinds.Contains(d.Kind))
                .OrderBy(d => d.Revision)
                .Take(DocumentsAtOnce)
                .Select(d => new
                {
                    d.Revision,
                    d.Kind,
                    d.Json,
                })
                .ToListAsync(ct);
            if (documents.Count == 0)
            {
                return;
            }

            after = documents[^1].Revision;
            Look(documents.SelectMany(d => Named(d.Kind, d.Json!)));
        }
    }

    private static IEnumerable<string> Named(string kind, string json)
    {
        try
        {
            return [.. NamedFiles.Of(kind, json)];
        }
        catch (JsonException)
        {
            return []; // what cannot be read names nothing
        }
    }

    [LoggerMessage(LogLevel.Warning, "Files that documents name could not be looked for.")]
    private static partial void NotLooked(ILogger log, Exception e);
}

using System.Text.Json;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Records;

/// <summary>The documents on this device. Every write carries the operation that will reach the office once.</summary>
/// <param name="store">Where they are kept.</param>
/// <param name="preferences">Who works here.</param>
/// <param name="clock">The device's clock.</param>
/// <param name="newId">Makes ids of operations; null for UUID version 7.</param>
/// <param name="newest">Latest schema version of a proof that is known here.</param>
public sealed partial class Work(
    IDeviceStore store,
    Preferences preferences,
    TimeProvider clock,
    Func<Guid>? newId = null,
    int newest = ProofDocument.CurrentVersion
)
{
    /// <summary>Mark of the place reached in the office's changes; js/store.js names it too.</summary>
    internal const string CursorMark = "cursor";

    private const string UnjudgedMark = "unjudged-";

    /// <summary>Something was written.</summary>
    public event Action? Changed;

    /// <summary>A change of a kitchen or machine waits to be sent.</summary>
    public event Action? Queued;

    /// <summary>Operations that wait to be sent.</summary>
    public int Waiting { get; private set; }

    /// <summary>More than 0 while the device has not finished what was given to it.</summary>
    public int Writing { get; private set; }

    /// <summary>Why the last write failed; null where it did not.</summary>
    public string? Trouble { get; private set; }

    /// <summary>Why nothing at all can be kept here; null where it can.</summary>
    public string? Refused { get; private set; }

    /// <summary>How often something was kept since the page was opened.</summary>
    public int Kept { get; private set; }

    /// <summary>Whether anything may be written here; where not, what is asked to be written is left out and what stands is given back.</summary>
    public bool MayWrite => preferences.MayWrite;

    /// <summary>Saves a proof and queues it.</summary>
    /// <param name="proof">The proof.</param>
    public async Task SaveAsync(ProofDocument proof)
    {
        if (!MayWrite)
        {
            return;
        }

        Writing++; // from the first word of it: nobody is told that it is kept before it is
        Changed?.Invoke();
        try
        {
            await WriteAsync(proof.Id, "put", proof);
        }
        catch (Microsoft.JSInterop.JSException e)
        {
            Trouble = e.Message;
        }
        finally
        {
            Writing--;
            Changed?.Invoke();
        }
    }

    /// <summary>Remembers that a visit is asked for more than was judged of it: opening it here judges it again. A write of it follows.</summary>
    public async Task UnjudgedAsync(Guid id)
    {
        if (!MayWrite)
        {
            return;
        }

        Writing++;
        Changed?.Invoke();
        try
        {
            await store.MarkAsync(UnjudgedMark + id, "1");
        }
        catch (Microsoft.JSInterop.JSException e)
        {
            Trouble = e.Message; // the write that follows says the same
        }
        finally
        {
            Writing--; // and tells of it
        }
    }

    /// <summary>Forgets that again.</summary>
    public async Task JudgedAsync(Guid id)
    {
        try
        {
            if (await IsUnjudgedAsync(id))
            {
                await store.MarkAsync(UnjudgedMark + id, "");
            }
        }
        catch (Microsoft.JSInterop.JSException e)
        {
            Trouble = e.Message; // it is judged once more when it is opened
        }
    }

    /// <summary>Whether the page was left between a change of this visit and its judgement.</summary>
    public async Task<bool> IsUnjudgedAsync(Guid id) => await store.MarkAsync(UnjudgedMark + id) == "1";

    /// <summary>Deletes a proof and queues that; returns it so that it can be brought back, null where it was not deleted.</summary>
    public async Task<ProofDocument?> DeleteAsync(Guid id)
    {
        try
        {
            var proof = await OpenAsync(id);
            Unwritten.Remove(id);
            return await WriteAsync(id, "delete", null) ? proof : null;
        }
        catch (Microsoft.JSInterop.JSException e)
        {
            Trouble = e.Message;
            Changed?.Invoke();
            return null;
        }
    }

    /// <summary>A proof; null where it is not on this device.</summary>
    public async Task<ProofDocument?> OpenAsync(Guid id) =>
        await store.ReadAsync(id) is { } json ? JsonSerializer.Deserialize(json, ContractsJson.Default.ProofDocument) : null;

    /// <summary>Every proof in one line, the latest first.</summary>
    public async Task<IReadOnlyList<ProofLine>> ListAsync() =>
        [
            .. (JsonSerializer.Deserialize(await store.ListAsync(Kinds.Proof), ClientJson.Default.ProofLineArray) ?? []).OrderByDescending(
                l => l.At
            ),
        ];

    /// <summary>Takes over a page of what the office has, each document unless a change made here still waits, and the place reached.</summary>
    /// <param name="page">What it has, with its proof as it came: a program that is older than its writer does not know everything in it, and keeps it.</param>
    /// <param name="from">Place asked from.</param>
    /// <param name="to">Place reached.</param>
    /// <returns>Whether it was; not where another tab has fetched meanwhile, and what was given may be older than what stands here.</returns>
    public async Task<bool> TakeOverAsync(IReadOnlyList<(Change Change, string? AsSent)> page, string from, string to)
    {
        List<string?[]> whole = [];
        foreach (var (change, asSent) in page)
        {
            if (change.Document is { } seen && !MayWrite)
            {
                whole.Add([$"{change.DocumentId}", Line(seen), Text(seen)]); // nothing of its own to be joined with
            }
            else if (change.Document is { } document)
            {
                if ((await store.MarkAsync(CursorMark) ?? "") != from)
                {
                    return false; // somebody has signed out meanwhile, or another tab has fetched
                }

                await JoinAsync(document);
            }
            else if (change.Proof is { } proof)
            {
                whole.Add([$"{change.DocumentId}", Line(proof), asSent ?? Text(proof)]);
            }
            else
            {
                whole.Add([$"{change.DocumentId}", null, null]);
            }
        }

        return await store.TakeOverAsync(whole, from, to);
    }

    /// <summary>Counts again what waits; where the device lets nothing be kept, says so in <see cref="Refused"/>.</summary>
    public async Task CountAsync()
    {
        try
        {
            Waiting = await store.WaitingAsync();
            Refused = null;
        }
        catch (Microsoft.JSInterop.JSException e)
        {
            Refused = e.Message;
        }

        Changed?.Invoke();
    }

    /// <summary>Whether the browser has cleared what was kept here, and nobody has said yet that they know.</summary>
    /// <param name="seen">They know now.</param>
    public async Task<bool> ClearedAsync(bool seen = false) => await store.MarkAsync("cleared", seen ? "" : null) == "1";

    // Whether the device took it.
    private async Task<bool> WriteAsync(Guid id, string action, ProofDocument? proof)
    {
        if (!MayWrite)
        {
            return false;
        }

        if (Math.Max(proof?.Version ?? 0, (await OpenAsync(id))?.Version ?? 0) > newest)
        {
            Trouble = preferences.Words["client.saved.newer"]; // written or brought back here it would lose what only a later program knows
            Changed?.Invoke();
            return false;
        }

        var settings = preferences.Settings;
        var operation = new Operation(
            NewId(),
            Kinds.Proof,
            id,
            settings.Technician,
            settings.Device,
            clock.GetLocalNow(),
            action,
            proof,
            Account: settings.Account
        );
        var json = JsonSerializer.Serialize(operation, ContractsJson.Default.Operation);
        var isKept = false;
        Writing++;
        Changed?.Invoke();
        try
        {
            await (proof is null ? store.DeleteAsync(id, json) : store.SaveAsync(id, Line(proof), Text(proof), json));
            isKept = true;
            Kept++;
            Trouble = null;
        }
        catch (Microsoft.JSInterop.JSException e)
        {
            Trouble = e.Message;
        }
        finally
        {
            Writing--;
        }

        await CountAsync();
        return isKept;
    }

    private static string Line(ProofDocument proof) => JsonSerializer.Serialize(ProofLine.Of(proof), ClientJson.Default.ProofLine);

    private static string Text(ProofDocument proof) => JsonSerializer.Serialize(proof, ContractsJson.Default.ProofDocument);
}
